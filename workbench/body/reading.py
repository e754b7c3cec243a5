"""Reading a length as it is typed or pasted: ``9 1/2``, ``37⅜"``, ``24,1 cm``, ``241 mm``."""

from __future__ import annotations

import re
from fractions import Fraction as Rational
from typing import NoReturn

from workbench.body.units import MM_PER, Length, LengthError, LengthUnit, Unit, say_exact

LONGEST_MM = 5080.0
"""200 in: no length about one garment is longer, and it is the longest side a PDF page can have (own
choice; of the page: ISO 32000, read; second-hand)."""

_LONGEST_TEXT = 40
"""Characters that are taken for a length; own choice."""
_BLANKS = " \t\n\r\u00a0\u2007\u2009\u200a\u200b\u202f\ufeff"
_SIGNS = str.maketrans(
    {
        **dict.fromkeys(_BLANKS, " "),
        **dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2212", "-"),
        **dict.fromkeys("\u2032\u2019\u2018\u00b4", "'"),
        **dict.fromkeys("\u2033\u201d\u201c", '"'),
        **dict.fromkeys("\u2044\u2215", "/"),
    }
)
_GLYPHS = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
_SMALL = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789")
_SMALL_FRACTION = re.compile("[⁰¹²³⁴⁵⁶⁷⁸⁹]+ ?[⁄/] ?[₀₁₂₃₄₅₆₇₈₉]+")

_UNIT_WORDS: dict[str, LengthUnit] = {
    '"': "in",
    "''": "in",
    "in": "in",
    "inch": "in",
    "inches": "in",
    "cm": "cm",
    "centimetre": "cm",
    "centimetres": "cm",
    "centimeter": "cm",
    "centimeters": "cm",
    "mm": "mm",
    "millimetre": "mm",
    "millimetres": "mm",
    "millimeter": "mm",
    "millimeters": "mm",
}
_UNIT = re.compile(
    "(?P<unit>" + "|".join(sorted((re.escape(w) for w in _UNIT_WORDS), key=len, reverse=True)) + r")\.?$",
    re.I,
)
_DECIMAL = re.compile(r"[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+")
_FRACTION = re.compile(r"(?:(?P<whole>[0-9]+)(?: | ?- ?))?(?P<above>[0-9]+) ?/ ?(?P<below>[0-9]+)")
_THOUSAND = re.compile(r"[1-9],[0-9]{3}")


def read_length(
    text: str, unit: LengthUnit, *, signed: bool = False, low: float = 0.0, high: float = LONGEST_MM
) -> Length:
    """The length that was typed, in ``unit`` unless it carries a unit mark of its own.

    ``low`` and ``high`` are millimetres; a ``signed`` length may be negative, down to ``low``
    where that is below nothing and otherwise to ``-high``.

    Raises LengthError with one sentence that says what is wrong with the text.
    """
    typed, own = _split_unit(text.strip(_BLANKS))
    if not typed:
        raise LengthError("Nothing was typed.")
    in_unit = own or unit
    negative, number = _split_sign(_plain(typed))
    size = _value(number, typed) * MM_PER[in_unit]
    if negative and not signed:
        raise LengthError(f"A length cannot be negative here: {typed}.")
    if in_unit == "mm" and _THOUSAND.fullmatch(number):
        raise LengthError(f"{typed} mm can be read in two ways: write it without the comma, or with a point.")
    mm = float(-size if negative else size)
    lowest = -high if signed and low >= 0 else low
    if not lowest <= mm <= high:
        _out_of_range(mm, lowest, high, "in" if unit == "in" else "cm")
    return Length(mm, typed, in_unit)


def _split_unit(text: str) -> tuple[str, LengthUnit | None]:
    """What stands before the unit mark, untouched, and the unit; None where there is no mark."""
    found = _UNIT.search(text[-_LONGEST_TEXT:].translate(_SIGNS))
    if found is None:
        return text, None
    before = text[: len(text) - len(found[0])].rstrip(_BLANKS)
    again = _UNIT.search(before[-_LONGEST_TEXT:].translate(_SIGNS))
    if again is not None:
        raise LengthError(f"There are two units: {again['unit']} and {found['unit']}.")
    if not before:
        raise LengthError("There is a unit but no figure before it.")
    return before, _UNIT_WORDS[found["unit"].lower()]


def _plain(typed: str) -> str:
    """The same figure in plain digits, signs and single blanks."""
    if len(typed) > _LONGEST_TEXT:
        _not_a_length(typed)
    plain = _SMALL_FRACTION.sub(lambda found: f" {found[0].translate(_SMALL)} ", typed).translate(_SIGNS)
    for glyph, spelled in _GLYPHS.items():
        plain = plain.replace(glyph, f" {spelled} ")
    return " ".join(plain.split())


def _split_sign(plain: str) -> tuple[bool, str]:
    """Whether the figure is negative, and the figure without its sign."""
    return plain.startswith("-"), plain[1:].lstrip() if plain[:1] in ("-", "+") else plain


def _value(number: str, typed: str) -> Rational:
    """The number without sign, exactly."""
    fraction = _FRACTION.fullmatch(number)
    if fraction is not None:
        return _fraction(fraction, typed)
    if not _DECIMAL.fullmatch(number):
        _not_a_length(typed)
    return Rational(number.replace(",", ".").rstrip("."))


def _fraction(found: re.Match[str], typed: str) -> Rational:
    above, below = int(found["above"]), int(found["below"])
    if below == 0:
        raise LengthError(f"A fraction cannot have 0 below its line: {typed}.")
    if found["whole"] is None:
        return Rational(above, below)
    if above >= below:
        raise LengthError(f"{above}/{below} is 1 or more, so it cannot follow {found['whole']}: {typed}.")
    return int(found["whole"]) + Rational(above, below)


def _not_a_length(typed: str) -> NoReturn:
    if re.fullmatch(r"[+-]?[0-9]*[.,][0-9]*[.,][0-9.,]*", typed.translate(_SIGNS)):
        raise LengthError(f"There is more than one decimal sign in {_short(typed)}.")
    raise LengthError(f"“{_short(typed)}” is not a length: write it like 9 1/2, 9.5 or 24.1 cm.")


def _short(typed: str) -> str:
    return typed if len(typed) <= 24 else f"{typed[:24]}…"


def _out_of_range(mm: float, low: float, high: float, unit: Unit) -> NoReturn:
    figure, least, most = (say_exact(value, unit) for value in (mm, low, high))
    raise LengthError(f"{figure} {unit} is not between {least} and {most} {unit}.")

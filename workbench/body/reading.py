"""Reading a length as it is typed or pasted: ``9 1/2``, ``37⅜"``, ``24,1 cm``, ``241 mm``."""

from __future__ import annotations

import re
from fractions import Fraction as Rational
from typing import NoReturn

from workbench.body.units import MM_PER, Length, LengthError, LengthUnit, Unit, say_exact

LONGEST_MM = 5080.0
"""200 in: no length about one garment is longer, and it is the longest side a PDF page can have."""

_LONGEST_TEXT = 40
_SIGNS = str.maketrans(
    {
        **dict.fromkeys("\u00a0\u2007\u2009\u200a\u202f\t\n\r", " "),
        **dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2212", "-"),
        **dict.fromkeys("\u2032\u2019\u2018\u00b4", "'"),
        **dict.fromkeys("\u2033\u201d\u201c", '"'),
        **dict.fromkeys("\u2044\u2215", "/"),
    }
)
_GLYPHS = {
    "½": " 1/2",
    "¼": " 1/4",
    "¾": " 3/4",
    "⅛": " 1/8",
    "⅜": " 3/8",
    "⅝": " 5/8",
    "⅞": " 7/8",
    "⅓": " 1/3",
    "⅔": " 2/3",
}
_SMALL = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789")
_RAISED_RUN = re.compile("[⁰¹²³⁴-⁹]+")

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
_FRACTION = re.compile(r"(?:(?P<whole>[0-9]+)(?: +| ?- ?))?(?P<above>[0-9]+) ?/ ?(?P<below>[0-9]+)")


def read_length(
    text: str, unit: LengthUnit, *, signed: bool = False, low: float = 0.0, high: float = LONGEST_MM
) -> Length:
    """The length that was typed, in ``unit`` unless it carries a unit mark of its own.

    ``low`` and ``high`` are millimetres; a ``signed`` length may be negative, down to ``low``
    where that is below nothing and otherwise to ``-high``.

    Raises LengthError with one sentence that says what is wrong with the text.
    """
    typed, own = _split_unit(_tidy(text))
    if not typed:
        raise LengthError("Nothing was typed.")
    if own is None and len(typed) > _LONGEST_TEXT:
        _not_a_length(typed)
    in_unit = own or unit
    value = _value(typed)
    if _begins_negative(typed) and not signed:
        raise LengthError(f"A length cannot be negative here: {typed}.")
    mm = float(value * MM_PER[in_unit])
    lowest = -high if signed and low >= 0 else low
    if not lowest <= mm <= high:
        _out_of_range(mm, lowest, high, "in" if unit == "in" else "cm")
    return Length(mm, typed, in_unit)


def _tidy(text: str) -> str:
    """Her own characters, with the blanks at either end and a unit mark's odd quotes made plain."""
    return text.strip().strip("\ufeff\u200b").strip()


def _split_unit(text: str) -> tuple[str, LengthUnit | None]:
    """What stands before the unit mark, untouched, and the unit; None where there is no mark."""
    found = _UNIT.search(text.translate(_SIGNS))
    if found is None:
        return text, None
    own = _UNIT_WORDS[found["unit"].lower()]
    before = text[: found.start()].rstrip()
    again = _UNIT.search(before.translate(_SIGNS))
    if again is not None:
        raise LengthError(f"There are two units: {again['unit']} and {found['unit']}.")
    if not before:
        raise LengthError("There is a unit but no figure before it.")
    return before, own


def _value(typed: str) -> Rational:
    """The number in what was typed, exactly."""
    plain = _RAISED_RUN.sub(r" \g<0>", typed).translate(_SMALL).translate(_SIGNS)
    for glyph, spelled in _GLYPHS.items():
        plain = plain.replace(glyph, spelled)
    sign = -1 if _begins_negative(typed) else 1
    plain = " ".join(plain.lstrip("+- ").split())
    fraction = _FRACTION.fullmatch(plain)
    if fraction is not None and len(plain) <= _LONGEST_TEXT:
        return sign * _fraction(fraction)
    if not _DECIMAL.fullmatch(plain) or len(plain) > _LONGEST_TEXT:
        _not_a_length(typed)
    return sign * Rational(plain.replace(",", ".").rstrip("."))


def _begins_negative(typed: str) -> bool:
    return typed.translate(_SIGNS).lstrip().startswith("-")


def _fraction(found: re.Match[str]) -> Rational:
    above, below = int(found["above"]), int(found["below"])
    if below == 0:
        raise LengthError(f"A fraction cannot have 0 below its line: {found[0]}.")
    if found["whole"] is None:
        return Rational(above, below)
    if above >= below:
        raise LengthError(f"{above}/{below} is a whole inch or more: it cannot follow {found['whole']}.")
    return int(found["whole"]) + Rational(above, below)


def _not_a_length(typed: str) -> NoReturn:
    short = typed if len(typed) <= 24 else f"{typed[:24]}…"
    signs = sum(typed.count(sign) for sign in ",.")
    if signs > 1 and not re.sub(r"[0-9.,]", "", typed):
        raise LengthError(f"There is more than one decimal sign in {short}.")
    raise LengthError(f"“{short}” is not a length: write it like 9 1/2, 9.5 or 24.1 cm.")


def _out_of_range(mm: float, low: float, high: float, unit: Unit) -> NoReturn:
    figure, least, most = (say_exact(value, unit) for value in (mm, low, high))
    raise LengthError(f"{figure} {unit} is not between {least} and {most} {unit}.")

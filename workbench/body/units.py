"""Lengths as a dressmaker says them: inches with fractions, or centimetres; millimetres inside.

Reading is in :mod:`workbench.body.reading`. Nothing here changes a stored length: the
display unit decides how a value looks, never what it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction as Rational
from math import floor, isfinite
from typing import Any, ClassVar, Literal

Unit = Literal["in", "cm"]
"""The unit lengths are shown in."""
LengthUnit = Literal["in", "cm", "mm"]
"""The units a length can be typed in."""
Fraction = Literal[8, 16]
"""The finest part of an inch that is shown."""

MM_PER: dict[LengthUnit, Rational] = {"in": Rational(254, 10), "cm": Rational(10), "mm": Rational(1)}
"""Exact: an inch is 25.4 mm (international yard and pound agreement of 1959, from memory)."""

MM_PER_INCH = 25.4
"""The same as a plain number (from memory)."""
_NUDGE = 1e-9
"""Lifts a tie that floating point has put a hair below the half, in steps of what is shown (own choice)."""
_SAME_INCH = 1e-6
"""An inch figure this close to a sixty-fourth is that sixty-fourth (own choice)."""
_NO_LENGTH = "—"

_GLYPHS = {
    (1, 2): "½",
    (1, 4): "¼",
    (3, 4): "¾",
    (1, 8): "⅛",
    (3, 8): "⅜",
    (5, 8): "⅝",
    (7, 8): "⅞",
}
"""Fractions that have a sign of their own (Unicode; from memory)."""
_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")


class LengthError(ValueError):
    """A length that could not be read; its message is one sentence that leaves the field unnamed."""


@dataclass(frozen=True, slots=True)
class Length:
    """A length together with how it was typed.

    ``typed`` is what was written without its unit mark; read again in ``unit`` it gives
    ``mm``, so that what was typed comes back as typed.
    """

    mm: float
    typed: str
    unit: LengthUnit

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


def say_length(mm: float, unit: Unit, fraction: Fraction = 8) -> str:
    """The length to the nearest eighth or sixteenth of an inch, or tenth of a centimetre, without its unit.

    Halves are rounded away from nothing. A dash stands for what is not a finite number.
    """
    if not isfinite(mm):
        return _NO_LENGTH
    if unit == "cm":
        tenths = _nearest(abs(mm))
        return _signed(f"{tenths // 10}.{tenths % 10}" if tenths else "0", mm, tenths)
    parts = _nearest(abs(mm) / MM_PER_INCH * fraction)
    return _signed(_as_fraction(parts, fraction), mm, parts)


def say_with_unit(mm: float, unit: Unit, fraction: Fraction = 8) -> str:
    """As :func:`say_length`, with the unit behind: ``26¾ in``, ``67.9 cm``."""
    return f"{say_length(mm, unit, fraction)} {unit}"


def say_closely(mm: float, unit: Unit, fraction: Fraction = 8) -> str:
    """As :func:`say_with_unit`, but a whole number of thirty-seconds is said as that.

    A quarter of an eighth is one: rounded again, four quarters would not make the whole.
    """
    parts = _nearest(abs(mm) / MM_PER_INCH * 32) if isfinite(mm) else 0
    if unit == "in" and abs(abs(mm) / MM_PER_INCH - parts / 32) <= _SAME_INCH:
        return f"{say_exact(mm, unit)} {unit}"
    return say_with_unit(mm, unit, fraction)


def say_at_most(mm: float, unit: Unit, fraction: Fraction = 8) -> str:
    """As :func:`say_closely`, but to the mark below: rounded up, a limit would name what passes it."""
    if not isfinite(mm):
        return say_with_unit(mm, unit, fraction)
    down = round_down(mm, unit, fraction)
    exact = unit == "in" and abs(mm / MM_PER_INCH * 32 - _nearest(mm / MM_PER_INCH * 32)) <= 32 * _SAME_INCH
    return say_closely(mm if exact else down, unit, fraction)


def say_exact(mm: float, unit: Unit) -> str:
    """What a field shows for a stored length in millimetres, without its unit.

    Inches as a fraction where the length is a whole number of sixty-fourths, otherwise
    with up to three decimals; centimetres with up to two.
    """
    if not isfinite(mm):
        return _NO_LENGTH
    if unit == "cm":
        return _decimals(mm / 10, 2)
    inches = abs(mm) / MM_PER_INCH
    parts = _nearest(inches * 64)
    if abs(inches - parts / 64) <= _SAME_INCH:
        return _signed(_as_fraction(parts, 64), mm, parts)
    return _decimals(mm / MM_PER_INCH, 3)


def shown(length: Length, unit: Unit, fraction: Fraction = 8) -> str:
    """The length for a field in the display unit: as typed where it was typed in that unit."""
    return length.typed if length.unit == unit else say_length(length.mm, unit, fraction)


def step_mm(unit: Unit, fraction: Fraction = 8) -> float:
    """Millimetres of one step up or down in a field: the fraction of an inch shown, or 2 mm."""
    return MM_PER_INCH / fraction if unit == "in" else 2.0


def snap(mm: float, unit: Unit, fraction: Fraction = 8) -> float:
    """The nearest mark of a ruler in the display unit, in millimetres: a fraction of an inch, or 1 mm."""
    mark = MM_PER_INCH / fraction if unit == "in" else 1.0
    marks = _nearest(abs(mm) / mark)
    return marks * mark if mm >= 0 or not marks else -marks * mark


def round_down(mm: float, unit: Unit, fraction: Fraction = 8) -> float:
    """The mark of a ruler at or below a length, in millimetres; more ease where the length is negative."""
    mark = MM_PER_INCH / fraction if unit == "in" else 1.0
    return floor(mm / mark + _SAME_INCH) * mark


def _nearest(steps: float) -> int:
    return floor(steps + 0.5 + _NUDGE)


def _signed(text: str, mm: float, parts: int) -> str:
    """A true minus before a negative length, never before nothing."""
    return f"−{text}" if mm < 0 and parts else text


def _decimals(value: float, places: int) -> str:
    text = f"{abs(value):.{places}f}".rstrip("0").rstrip(".")
    return f"−{text}" if value < 0 and text != "0" else text


def _as_fraction(parts: int, whole: int) -> str:
    """A number of parts of an inch with a proper fraction sign: 26¾, 9 ³⁄₁₆."""
    inches, rest = divmod(parts, whole)
    if not rest:
        return str(inches)
    lowest = Rational(rest, whole)
    above, below = lowest.numerator, lowest.denominator
    glyph = _GLYPHS.get((above, below))
    if glyph is None:
        built = f"{str(above).translate(_RAISED)}⁄{str(below).translate(_LOWERED)}"
        return f"{inches} {built}" if inches else built
    return f"{inches}{glyph}" if inches else glyph

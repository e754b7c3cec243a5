"""What a hand can mark: distances to an eighth, a sixteenth, half a centimetre or a millimetre.

Marks of one level are rounded together, so that the sum of a girth still closes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor, isfinite
from typing import Literal

from workbench.body import Fraction, Unit, say_exact, say_with_unit

INCH = 25.4
"""International yard and pound agreement of 1959, from memory."""
RoundingName = Literal["eighth", "sixteenth", "half_cm", "mm"]
_HAIR = 1e-9
"""Lifts a tie that floating point has put a hair below the half, in steps (own choice)."""


@dataclass(frozen=True)
class Rounding:
    """How finely a guide is marked; mm."""

    name: RoundingName
    label: str
    unit: Unit
    fraction: Fraction
    step: float
    """The finest part that is said."""
    stride: float
    """Distances along a straight line, at which a curve leaves it, are whole numbers of these."""

    def near(self, mm: float) -> float:
        """The length to the nearest step, halves away from nothing; mm."""
        steps = floor(abs(mm) / self.step + 0.5 + _HAIR)
        return (steps if mm >= 0 else -steps) * self.step if steps else 0.0

    def say(self, mm: float) -> str:
        """A rounded length, whichever way it points, with its unit: ``3⅜ in``, ``8.5 cm``."""
        return say_with_unit(abs(mm), self.unit, self.fraction)

    def say_error(self, mm: float) -> str:
        """An error with its unit, never smaller than it is: to the thirty-second above, or the millimetre."""
        part = INCH / 32 if self.unit == "in" else 1.0
        return f"{say_exact(ceil(abs(mm) / part - 1e-6) * part, self.unit)} {self.unit}"


ROUNDINGS: Mapping[RoundingName, Rounding] = {
    "eighth": Rounding("eighth", "to ⅛ in", "in", 8, INCH / 8, INCH / 2),
    "sixteenth": Rounding("sixteenth", "to ¹⁄₁₆ in", "in", 16, INCH / 16, INCH / 2),
    "half_cm": Rounding("half_cm", "to 0.5 cm", "cm", 8, 5.0, 10.0),
    "mm": Rounding("mm", "to 0.1 cm", "cm", 8, 1.0, 10.0),
}
"""The marks of a tape or a ruler that figures are rounded to; own choice."""


def rounding_of(unit: Unit, fraction: Fraction) -> Rounding:
    """The usual one for who measures in this unit.

    A tape in centimetres has millimetres on it; half centimetres can be chosen, but a girth of a
    dozen panels may then be half a centimetre out.
    """
    if unit == "cm":
        return ROUNDINGS["mm"]
    return ROUNDINGS["eighth" if fraction == 8 else "sixteenth"]


def shared_out(lengths: Sequence[float], step: float) -> list[float]:
    """Each length (mm) to a step below or above, so that their sum is the sum rounded once.

    By the largest remainder: those with most left over are rounded up. Among equals the earlier.
    ValueError where a length is not finite.
    """
    if not all(map(isfinite, lengths)):
        raise ValueError("a length to be rounded is not finite")
    parts = [floor(length / step + _HAIR) for length in lengths]
    wanted = floor(sum(lengths) / step + 0.5 + _HAIR)
    left_over = sorted(range(len(parts)), key=lambda i: parts[i] - lengths[i] / step)
    for place in left_over[: wanted - sum(parts)]:
        parts[place] += 1
    return [part * step for part in parts]

"""How a figure is read, shown and stepped: lengths, parts of a whole, plain weights.

Inside, lengths are millimetres and parts run from 0 to 1; only here and in the table of
units do inches, centimetres and hundredths appear.
"""

from __future__ import annotations

from math import ceil, floor, isfinite
from typing import Protocol

from workbench.body import read_length, say_exact, say_with_unit, step_mm
from workbench.document import Project
from workbench.frozen import dataclass

_NUDGE = 1e-6
"""A value this near to a step stands on it."""


class Kind(Protocol):
    """One way of writing a figure."""

    def read(self, text: str, project: Project) -> float:
        """The stored value; ValueError with one sentence where it is none."""

    def say(self, value: float, project: Project) -> str:
        """What a field shows."""

    def suffix(self, project: Project) -> str:
        """The unit behind it."""

    def step(self, project: Project) -> float:
        """One step, in the stored unit."""


@dataclass(frozen=True)
class LengthKind:
    """Millimetres, in the unit of the project."""

    signed: bool = False

    def read(self, text: str, project: Project) -> float:
        """Millimetres."""
        return read_length(text, project.unit, signed=self.signed).mm

    def say(self, value: float, project: Project) -> str:
        """As a fraction where it is one."""
        return say_exact(value, project.unit)

    def suffix(self, project: Project) -> str:
        """Inches or centimetres."""
        return project.unit

    def step(self, project: Project) -> float:
        """An eighth, a sixteenth, or 2 mm."""
        return step_mm(project.unit, project.fraction)


@dataclass(frozen=True)
class PartKind:
    """A part of a whole, shown in hundredths; ``whole`` is what is stored for all of it."""

    whole: float = 1.0

    def read(self, text: str, project: Project) -> float:
        """The stored part; a sign for hundredths may be left out."""
        return read_number(text.replace("%", " ")) * self.whole / 100

    def say(self, value: float, project: Project) -> str:
        """Hundredths with at most two decimals."""
        return plain(100 * value / self.whole)

    def suffix(self, project: Project) -> str:
        """The sign for hundredths."""
        return "%"

    def step(self, project: Project) -> float:
        """One hundredth."""
        return self.whole / 100


@dataclass(frozen=True)
class WeightKind:
    """A weight among others, shown a hundred times as large so that it needs no decimals."""

    def read(self, text: str, project: Project) -> float:
        """The stored weight."""
        return read_number(text) / 100

    def say(self, value: float, project: Project) -> str:
        """A hundred times the weight."""
        return plain(100 * value)

    def suffix(self, project: Project) -> str:
        """A weight has no unit."""
        return ""

    def step(self, project: Project) -> float:
        """One of a hundred."""
        return 0.01


def in_words(mm: float, project: Project) -> str:
    """A length with its unit for a sentence, not to be broken at the end of a line."""
    return say_with_unit(mm, project.unit, project.fraction).replace(" ", "\N{NO-BREAK SPACE}")


def plain(value: float) -> str:
    """A number with at most two decimals and a true minus."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text.replace("-", "−")


def read_number(text: str) -> float:
    """A plain number; ValueError with one sentence for anything else."""
    typed = text.strip()
    if not typed:
        raise ValueError("Nothing is written here: type a number.")
    try:
        value = float(typed.replace("−", "-").replace(",", "."))
    except ValueError:
        short = typed if len(typed) <= 24 else f"{typed[:24]}…"
        raise ValueError(f"“{short}” is not a number: write it like 42 or 42.5.") from None
    if not isfinite(value):
        raise ValueError(f"“{typed[:24]}” is no usable number.")
    return value


def next_step(value: float, steps: int, step: float) -> float:
    """The value so many marks of a ruler further on; between two marks, the first step is to the next."""
    marks = value / step
    at = floor(marks + _NUDGE) if steps > 0 else ceil(marks - _NUDGE)
    return (at + steps) * step

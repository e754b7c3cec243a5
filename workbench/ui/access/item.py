"""One thing that lies on a canvas, as a screen reader is told of it."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import QRectF

from workbench.body import Fraction, Unit, step_mm

Kind = Literal["handle", "figure", "bar", "piece", "edge", "line"]
"""What can be moved along a line, typed, drawn in, picked, has an allowance, is only to be seen."""
_MM = {"in": 25.4, "cm": 10.0}


@dataclass(frozen=True)
class Amount:
    """A figure that can be heard and set, in the user's unit."""

    now: float
    least: float
    most: float
    step: float
    put: Callable[[float], None]
    """Sets it, as one step to undo."""

    def held(self, value: float) -> float:
        """A value no further than the ends."""
        return min(max(value, self.least), self.most)


@dataclass(frozen=True)
class Item:
    """What is heard of one thing, and what can be done with it."""

    key: Hashable
    """The same from draft to draft."""
    kind: Kind
    name: str
    """What it is."""
    said: str
    """Where it lies or how much it is, in words; empty where the name says all."""
    box: QRectF
    """The pixels of the canvas that it covers."""
    picked: bool = False
    amount: Amount | None = None
    pick: Callable[[], None] | None = None
    deeds: tuple[tuple[str, Callable[[], None]], ...] = ()
    """What else can be done with it: a word, and what does it."""


class Same:
    """Equal where it is about the very same thing, which it keeps, so that no other can take its place."""

    def __init__(self, thing: object) -> None:
        self._thing = thing

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and other._thing is self._thing

    def __hash__(self) -> int:
        return id(self._thing)


def amount_of(
    mm: float, ends: tuple[float, float], unit: Unit, fraction: Fraction, put: Callable[[float], None]
) -> Amount:
    """A length that can be heard and set; ``put`` is given mm."""
    size = _MM[unit]

    def put_in_unit(value: float) -> None:
        put(value * size)

    return Amount(mm / size, ends[0] / size, ends[1] / size, step_mm(unit, fraction) / size, put_in_unit)


def around(x: float, y: float, reach: float) -> QRectF:
    """The box round a point."""
    return QRectF(x - reach, y - reach, 2 * reach, 2 * reach)

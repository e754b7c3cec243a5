"""What is laid, where it lies, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from math import cos, radians, sin

import numpy as np

from workbench.cloth.records import Placed
from workbench.draft import Finding
from workbench.pieces import LayerName

Array = np.ndarray[tuple[int, ...], np.dtype[np.float64]]
CopyKey = tuple[str, int]
"""A piece's key and which of its copies."""


class LayError(ValueError):
    """Why nothing can be laid; ``finding`` is one sentence that reads in any unit."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.text("in"))
        self.finding = finding


@dataclass(frozen=True, eq=False)
class Copy:
    """One shape to lay, drawn the way its piece is drawn; lengths in mm."""

    piece: str
    number: int
    """Counted from 1 within the piece."""
    name: str
    layer: LayerName
    panel: int | None
    mirrored: bool
    """Whether it is laid turned over, so that a left and a right side come out."""
    outline: Array
    """(n, 2) ring, anticlockwise, the first point not repeated."""
    grain: tuple[float, float]
    """Unit vector from the foot of the grain line to its head."""
    on_fold: bool = False
    """Laid as a half, its fold edge on the fold of the cloth."""
    opened: bool = False
    """Cut on the fold by rights, and opened out here."""
    either_side: bool = False
    """Both ways up give the same, as on folded cloth."""
    gives: int = 1
    """How many pieces are had when it is cut out: two through folded cloth."""

    @property
    def key(self) -> CopyKey:
        """What it is found by."""
        return self.piece, self.number


@dataclass(frozen=True)
class Plan:
    """Copies on one cloth, checked. A plan with a finding is shown with it, never as sound."""

    cloth: str
    made_from: str
    """The mark of the copies and the cloth."""
    placed: tuple[Placed, ...]
    length_mm: float
    """From the cut end of the cloth to the farthest point of a piece."""
    utilisation: float
    """The part of that cloth, selvedges included, that lies in pieces: 0 to 1."""
    how: str
    """Which way it was found, in words for the picture."""
    left_over: tuple[CopyKey, ...] = ()
    """Copies there was no room for."""
    findings: tuple[Finding, ...] = ()

    @property
    def sound(self) -> bool:
        """Whether it can be cut as it is."""
        return not self.findings

    def better_than(self, other: Plan) -> bool:
        """Whether it is sound where the other is not, lays more, or is shorter."""
        return self._rank() < other._rank()

    def _rank(self) -> tuple[int, bool, float]:
        return len(self.left_over), not self.sound, self.length_mm


def laid(copy: Copy, placed: Placed) -> Array:
    """(n, 2) outline of a copy where it lies on the cloth, mm: x across, y along."""
    ring = turned(copy.outline, placed.degrees, placed.mirrored)
    ring += (placed.x, placed.y)
    return ring


def turned(points: Array, degrees: float, mirrored: bool) -> Array:
    """Points (n, 2) turned over left to right where ``mirrored``, then anticlockwise about the origin."""
    across = -points[:, 0] if mirrored else points[:, 0]
    c, s = direction(degrees)
    return np.column_stack((c * across - s * points[:, 1], s * across + c * points[:, 1]))


@lru_cache(maxsize=256)
def direction(degrees: float) -> tuple[float, float]:
    """Cosine and sine; exact at quarter turns, so that a straight edge stays straight."""
    quarters = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}
    angle = radians(degrees)
    return quarters.get(degrees % 360, (cos(angle), sin(angle)))


def by_key(copies: Iterable[Copy]) -> dict[CopyKey, Copy]:
    """The copies by what they are found by."""
    return {copy.key: copy for copy in copies}


def area_of(outline: Array) -> float:
    """Area of a ring (n, 2), square mm."""
    x, y = outline.T
    return 0.5 * abs(float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))))


def area_in(copies: Iterable[Copy]) -> float:
    """Area of all the pieces that come out of the copies, one layer of cloth, square mm."""
    return sum(area_of(copy.outline) * (2 if copy.on_fold else copy.gives) for copy in copies)

"""What a marking guide is made of: marks with how each is found, the lines through them, the steps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from workbench.body import LevelName
from workbench.marking.rounding import Rounding
from workbench.marking.smooth import Array
from workbench.pieces import EdgeName, LayerName

Side = Literal[1, -1]
"""1: the piece lies to the right of its upright; −1: to the left, as a centre back does."""


@dataclass(frozen=True)
class Squared:
    """A mark on a line squared from the upright."""

    number: int
    name: str
    up: float
    """Above the base line on the upright, mm; negative below it."""
    out: float
    """To the right of the upright, mm; negative to the left."""


@dataclass(frozen=True)
class Across:
    """A mark on a line squared from the upright, where a straight tape from another mark meets it."""

    number: int
    name: str
    start: int
    """The mark the tape begins at."""
    width: float
    """mm along the tape."""
    up: float
    """Of the line it is found on, above the base line, mm."""


@dataclass(frozen=True)
class Offset:
    """A mark beside the straight line from one mark to another."""

    number: int
    name: str
    start: int
    end: int
    along: float
    """From the first mark on the straight line, mm."""
    out: float
    """Square to it, mm: positive to the left as one looks along it, negative to the right."""


Mark = Squared | Across | Offset


@dataclass(frozen=True)
class Curve:
    """A smooth line through marks, in order: sides from the bottom up, hem and neckline from the left."""

    edge: EdgeName
    marks: tuple[int, ...]


@dataclass(frozen=True)
class Step:
    """One thing the hand does."""

    key: str
    """Of the piece, the number of the step, and what it says: ``marking.fashion.front-1.3.5f2a81``.

    A tick is kept by it, so that none stands for the distances of an earlier draft.
    """
    title: str
    lines: tuple[str, ...]
    """In plain words, lengths in the unit of the guide."""
    marks: tuple[int, ...] = ()
    """Marks that are made in this step."""
    curves: tuple[int, ...] = ()
    """Lines that are drawn in it, by their place among the curves of the piece."""
    cuts: bool = False
    """Whether the cut line is drawn in it."""


@dataclass(frozen=True)
class PieceGuide:
    """How one piece is marked. Places are mm from its corner: right and up."""

    key: str
    name: str
    layer: LayerName
    layer_label: str
    cut_words: str
    base: Literal["waist line", "base line"]
    side: Side
    corner: int
    """The number of the mark all others are measured from."""
    marks: tuple[Mark, ...]
    curves: tuple[Curve, ...]
    steps: tuple[Step, ...]
    levels: tuple[tuple[LevelName, int, int], ...]
    """Marks of each level on the left and on the right."""
    allowances: tuple[tuple[EdgeName, str, float], ...]
    """Edge, what it is sewn to or where it lies, and its allowance in mm."""
    exact: tuple[tuple[EdgeName, Array], ...]
    """The exact stitch line of each edge, from the bottom up or from the left."""
    cut: Array
    """The exact cut line (n, 2)."""
    drawn: tuple[Array, ...]
    """The lines as marked, one for each curve."""
    error: float
    """The largest distance of the outline as marked from the exact one, mm."""

    def place(self, number: int) -> tuple[float, float]:
        """Where a mark lies, mm right of and above the corner; KeyError where there is none."""
        x, y = self.places[number]
        return x, y

    @property
    def places(self) -> dict[int, tuple[float, float]]:
        """Where every mark lies."""
        return places_of(self.marks, self.side)

    @property
    def edge_words(self) -> dict[EdgeName, str]:
        """What each edge is."""
        return {edge: words for edge, words, _ in self.allowances}


@dataclass(frozen=True)
class GirthRow:
    """One level of the half, all its panels: what they measure exactly and as marked; mm."""

    level: LevelName
    widths: tuple[float, ...]
    exact_widths: tuple[float, ...]
    finished: float
    """Exact, round the body, with the opening."""
    whole: bool
    """Whether every panel reaches this level, so that a tape can be laid round it."""

    @property
    def half(self) -> float:
        """Sum of the widths as marked."""
        return sum(self.widths)

    @property
    def error(self) -> float:
        """How much the finished girth as marked is larger than the exact one, round the body."""
        return 2 * (self.half - sum(self.exact_widths))


@dataclass(frozen=True)
class SeamRow:
    """The two sides of one seam as marked, hem to neckline along the line; mm."""

    seam: int
    name: str
    left: float
    right: float
    exact: float


@dataclass(frozen=True)
class Guide:
    """How the pieces of one layer are marked."""

    layer: LayerName
    layer_label: str
    rounding: Rounding
    pieces: tuple[PieceGuide, ...]
    girths: tuple[GirthRow, ...]
    seams: tuple[SeamRow, ...]

    @property
    def error(self) -> float:
        """The largest error of any outline, mm."""
        return max((piece.error for piece in self.pieces), default=0.0)

    @property
    def girth_error(self) -> float:
        """The largest error of a finished girth, whichever way it goes, mm round the body."""
        return max((abs(row.error) for row in self.girths if row.whole), default=0.0)

    @property
    def seam_error(self) -> float:
        """The largest difference between the two sides of a seam, mm."""
        return max((abs(row.left - row.right) for row in self.seams), default=0.0)


def places_of(marks: tuple[Mark, ...], side: Side) -> dict[int, tuple[float, float]]:
    """Where marks lie that are found one after the other, mm right of and above the corner."""
    found: dict[int, tuple[float, float]] = {}
    for mark in marks:
        if isinstance(mark, Squared):
            found[mark.number] = (mark.out, mark.up)
        elif isinstance(mark, Across):
            x, y = found[mark.start]
            reach = max(mark.width**2 - (mark.up - y) ** 2, 0.0) ** 0.5
            found[mark.number] = (x + side * reach, mark.up)
        else:
            found[mark.number] = _beside(found[mark.start], found[mark.end], mark)
    return found


def _beside(start: tuple[float, float], end: tuple[float, float], mark: Offset) -> tuple[float, float]:
    run = np.array(end) - np.array(start)
    dx, dy = (run / max(float(np.hypot(*run)), 1e-9)).tolist()
    return start[0] + mark.along * dx - mark.out * dy, start[1] + mark.along * dy + mark.out * dx

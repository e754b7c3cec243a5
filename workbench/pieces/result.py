"""What lies on the cutting table: pieces, bones, notions, and the last look at the seams."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, NamedTuple

from workbench.body import Fraction, LevelName, Unit, say_at_most, say_with_unit
from workbench.draft import Finding
from workbench.frozen import dataclass
from workbench.pieces.making import BonePlace, BoneStuff, EdgeKind, EdgeName, LayerName
from workbench.pieces.polyline import Array


@dataclass(frozen=True)
class Notch:
    """A mark from the cut edge inwards; its partner is on the piece across the seam at the same walk."""

    at: tuple[float, float]
    """On the cut line."""
    towards: tuple[float, float]
    """Unit vector into the piece."""
    count: int
    """1 in front, 2 in back."""
    edge: EdgeName
    walk: float
    """On the stitch line of its seam, mm from the waist."""
    seam: int
    why: Literal["level", "curve", "centre", "seam"]
    """A level, the end of a curve, the middle of a piece on the fold, a closed seam that a facing lies on."""
    level: LevelName | None = None


@dataclass(frozen=True)
class PieceEdge:
    """One edge of a piece: its stitch line, in the direction of the ring, and its allowance."""

    name: EdgeName
    kind: EdgeKind | Literal["fold", "free"]
    stitch: Array
    allowance: float
    seam: int | None
    """Number of the seam, 0 at the centre front; None for neckline and hem."""


@dataclass(frozen=True)
class MarkLine:
    """A line drawn inside a piece: a bone, the waist, a level, the tape."""

    kind: Literal["waist", "level", "bone", "tape", "fold"]
    points: Array
    label: str = ""


@dataclass(frozen=True)
class Piece:
    """One shape to cut, drawn once; ``count`` of it, half of them turned over where ``mirrored``."""

    key: str
    """Steady from draft to draft, such as ``fashion/Front 1``."""
    name: str
    layer: LayerName
    count: int
    mirrored: bool
    on_fold: bool
    panel: int | None
    """The panel it is cut from, counted from 0 at the centre front; None for strips and facings."""
    stitch: Array
    """(n, 2) ring, anticlockwise, first point not repeated."""
    cut: Array
    """(m, 2) likewise."""
    edges: tuple[PieceEdge, ...]
    notches: tuple[Notch, ...]
    grain: tuple[tuple[float, float], tuple[float, float]]
    marks: tuple[MarkLine, ...]

    @property
    def cut_words(self) -> str:
        """``cut 2 (a left and a right)``, ``cut 1 on the fold``, ``cut 1``."""
        if self.on_fold:
            return f"cut {self.count} on the fold"
        return f"cut {self.count} (left and right)" if self.mirrored else f"cut {self.count}"


@dataclass(frozen=True)
class Layer:
    """One layer and what it is for."""

    name: LayerName
    label: str
    purpose: str
    pieces: tuple[Piece, ...]


@dataclass(frozen=True)
class Bone:
    """One bone of the half, or of the middle. Lengths in mm."""

    place: BonePlace
    where: str
    """``front seam 1``, ``middle of Back 2``."""
    stuff: BoneStuff
    count: int
    """On the whole garment."""
    line: Array
    """(n, 2) on the panel it is drawn on."""
    panel: int
    stitch_length: float
    wanted_length: float
    """Finished length less both clearances."""
    cut_length: float
    """Rounded down to what is sold."""
    shorter: float
    """The next shorter stock length."""
    lost: float
    """What the rounding leaves unboned, both ends together."""
    tightest_radius: float

    @property
    def stock(self) -> str:
        """What to ask for in the shop."""
        return {"flat_steel": "flat steel", "spiral_steel": "spiral steel", "plastic": "plastic"}[self.stuff]

    def say_cut(self, mm: float, unit: Unit, fraction: Fraction) -> str:
        """One of its cut lengths with its unit: steel as it is sold, plastic never longer than it may be."""
        return (say_at_most if self.stuff == "plastic" else say_with_unit)(mm, unit, fraction)


@dataclass(frozen=True)
class BackOpening:
    """Eyelets or loops of one side, and the cord."""

    walks: tuple[float, ...]
    """Walks from the waist along the centre-back edge, bottom to top; the same on both sides."""
    pitches: tuple[float, ...]
    cord_mm: float
    crossings: int
    how: str
    """How the cord length was worked out, lengths as ``{name}``."""
    lengths: Mapping[str, float]


@dataclass(frozen=True)
class Notion:
    """One line of the shopping list."""

    key: str
    name: str
    count: int | None
    length_mm: float | None
    """Total length to buy, where it is bought by length."""
    how: str
    """How it was worked out, with ``{name}`` for each of ``lengths``."""
    lengths: Mapping[str, float]
    at_most: tuple[str, ...] = ()
    """Those of ``lengths`` that are cut: rounded up, a bone would be too long."""

    def worked_out(self, unit: Unit, fraction: Fraction) -> str:
        """How it was worked out, lengths in the user's unit."""
        said = {
            name: (say_at_most if name in self.at_most else say_with_unit)(mm, unit, fraction)
            for name, mm in self.lengths.items()
        }
        return self.how.format(**said)


class WalkRow(NamedTuple):
    """One pair of edges that are sewn together: whole, or from notch to notch. Lengths in mm."""

    layer: LayerName
    seam: int
    name: str
    part: str
    """``whole seam``, or ``waist to underbust``."""
    left: float
    right: float
    holds: bool

    @property
    def difference(self) -> float:
        """Left less right."""
        return self.left - self.right


@dataclass(frozen=True)
class AngleRow:
    """What neckline and hem do where a seam is closed; 180 degrees is smooth."""

    seam: int
    name: str
    line: Literal["neckline", "hem"]
    degrees: float
    wanted: bool
    """Whether the design asks for a smooth run here."""
    holds: bool


@dataclass(frozen=True)
class Cutting:
    """All of it, for one draft and one way of making."""

    layers: tuple[Layer, ...]
    bones: tuple[Bone, ...]
    opening: BackOpening | None
    busk_mm: float | None
    notions: tuple[Notion, ...]
    walks: tuple[WalkRow, ...]
    angles: tuple[AngleRow, ...]
    findings: tuple[Finding, ...]

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """Every piece of every layer."""
        return tuple(piece for layer in self.layers for piece in layer.pieces)

"""What is decided about beads: kinds, runs, scatters and what they keep out of. Frozen, in millimetres."""

from __future__ import annotations

from dataclasses import field
from decimal import Decimal
from typing import Any, ClassVar, Literal

from workbench.draft import ShapePoint
from workbench.frozen import dataclass

BeadMark = Literal["disc", "ring", "diamond", "square", "triangle", "bar"]
"""How a kind is told from the others on the map: by a shape, which brings a hue of its own."""
Along = Literal["neckline", "hem", "seam", "drawn"]
Towards = Literal["front", "back", "both"]
ThinFrom = Literal["none", "neckline", "hem"]

INCH_MM = 25.4
"""International yard and pound agreement of 1959, from memory."""


@dataclass(frozen=True)
class BeadKind:
    """One kind of bead as it is bought, on strands."""

    name: str
    """No two kinds of a plan have the same one; runs and scatters name it."""
    size_mm: float
    """Across, as it lies on the cloth."""
    per_inch: float | None = None
    """How many lie on a strung inch; None for round beads that touch: 25.4 / size."""
    strand_mm: float = 406.4
    """Length of a strand: 16 in is common practice, no source."""
    per_strand: int | None = None
    """Beads on a strand where that was counted; None works it out from the length."""
    price: Decimal = Decimal(0)
    """For a strand; nothing where it is not known yet."""
    mark: BeadMark = "disc"

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class BeadRun:
    """Beads one behind the other along a line, on the half that is drafted; the other half mirrors it."""

    name: str
    along: Along
    pattern: tuple[str, ...]
    """Kinds by name, one after the other and then from the first again."""
    spacing_mm: float
    """From the middle of one bead to the next, along the line."""
    inset_mm: float = 9.525
    """From the stitch line to the first row; the rows of a drawn line lie evenly to both sides of it
    (common practice, no source)."""
    rows: int = 1
    row_mm: float = 6.35
    """From row to row (common practice, no source)."""
    start: float = 0.0
    """Where it begins, as a share of the whole line; a line runs from the front to the back, or upwards."""
    end: float = 1.0
    seam: int = 1
    """Which seam (1 is next to the centre front), where it goes along one."""
    towards: Towards = "both"
    """On which side of its seam it lies."""
    points: tuple[ShapePoint, ...] = ()
    """What a drawn line goes through."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class BeadWeight:
    """How often a kind comes in a scatter, against the others of it."""

    kind: str
    weight: float = 1.0

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class BeadScatter:
    """Beads strewn over panels of the half, evenly without a pattern; the other half mirrors them."""

    name: str
    panels: tuple[int, ...]
    """Counted from 0 at the centre front."""
    mix: tuple[BeadWeight, ...]
    per_square_inch: float
    """Beads to the square inch where they lie thickest, of the cloth that is free for them."""
    seed: int = 1
    """Another one strews them otherwise; the same one strews the same again."""
    thin_from: ThinFrom = "none"
    """The edge at which they lie thickest."""
    thin_to: tuple[ShapePoint, ...] = ()
    """The line at which none are left."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class BeadBands:
    """What is kept free of beads; the widths are common practice, no source. A whole bead stays outside."""

    bone_mm: float = 3.175
    """Beyond either row of stitching of a bone channel: room for the foot, and for a needle beside steel."""
    seam_mm: float = 1.5875
    """Beside every stitched seam; the allowance beyond it is never beaded."""
    edge_mm: float = 3.175
    """From neckline and hem."""
    opening_mm: float = 25.4
    """From whatever opens: the lacing, a zip, a busk."""
    arm_mm: float = 38.1
    """Under the arm, to either side of the side seam."""
    arm_depth_mm: float = 101.6
    """The same, from the neckline down."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class BeadPlan:
    """All the beads of one garment as she plans them."""

    kinds: tuple[BeadKind, ...] = ()
    runs: tuple[BeadRun, ...] = ()
    scatters: tuple[BeadScatter, ...] = ()
    bands: BeadBands = field(default_factory=BeadBands)
    reserve_percent: float = 10.0
    """Bought over what is sewn on (common practice, no source)."""
    per_minute: float = 3.0
    """Beads she sews on in a minute (common practice, no source)."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}

    def kind(self, name: str) -> BeadKind:
        """The kind of that name; KeyError where there is none."""
        for kind in self.kinds:
            if kind.name == name:
                return kind
        raise KeyError(name)

    @property
    def empty(self) -> bool:
        """Whether nothing is to be beaded."""
        return not self.runs and not self.scatters


def per_inch_of(kind: BeadKind) -> float:
    """Beads to the strung inch: her own figure, or of round beads that touch 25.4 mm / size."""
    return INCH_MM / kind.size_mm if kind.per_inch is None else kind.per_inch


def per_strand_of(kind: BeadKind) -> int:
    """Beads on a strand: counted, or as many whole ones as its length holds, at least one."""
    if kind.per_strand is not None:
        return kind.per_strand
    return max(int(kind.strand_mm / INCH_MM * per_inch_of(kind) + 1e-9), 1)


PEARLS: tuple[tuple[float, BeadMark], ...] = ((4.0, "disc"), (6.0, "ring"), (8.0, "diamond"))
"""mm across round pearls as they are sold (common practice, no source), and the mark of each."""
STRAND_MM = 508.0
"""Length of a string of seed beads, 20 in (common practice, no source)."""
SEED_11, SEED_8 = (2.1, 18.0), (3.1, 11.0)
"""mm across and beads to the inch of the sizes 11/0 and 8/0. Sources differ by a third (16 to 20, 10 to 13):
common practice, no source."""


def usual_kinds() -> tuple[BeadKind, ...]:
    """Kinds to begin with, without a price.

    Round pearls follow from their diameter; the figures of seed beads are there to be put right.
    """
    return (
        *(BeadKind(f"Pearl {size:g} mm", size, mark=mark) for size, mark in PEARLS),
        BeadKind("Seed bead 11/0", *SEED_11, STRAND_MM, mark="square"),
        BeadKind("Seed bead 8/0", *SEED_8, STRAND_MM, mark="triangle"),
    )

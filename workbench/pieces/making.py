"""How the bodice is made: what the dressmaker decides once the shape stands.

Frozen values in millimetres, like the design. Figures are common practice, no source,
unless said; each can be changed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Any, ClassVar, Literal

from workbench.frozen import dataclass

LayerName = Literal[
    "fashion",
    "strength",
    "interfacing",
    "lining",
    "top_facing",
    "hem_facing",
    "modesty",
    "strip",
    "waist_tape",
]
EdgeKind = Literal["seam", "side", "centre_back", "centre_front", "neckline", "hem"]
Closing = Literal["loops", "eyelets", "side_zip"]
FrontMade = Literal["fold", "busk"]
BoneStuff = Literal["flat_steel", "spiral_steel", "plastic"]
NotchStyle = Literal["slit", "triangle"]
EdgeName = Literal["left", "right", "neckline", "hem"]
BonePlace = Literal["seams", "mid_panel", "beside_opening", "centre_front"]

LAYERS: tuple[LayerName, ...] = (
    "fashion",
    "strength",
    "interfacing",
    "lining",
    "top_facing",
    "hem_facing",
    "modesty",
    "strip",
    "waist_tape",
)
EDGE_KINDS: tuple[EdgeKind, ...] = ("seam", "side", "centre_back", "centre_front", "neckline", "hem")

INCH = 25.4
"""International yard and pound agreement of 1959, from memory."""


@dataclass(frozen=True)
class Allowances:
    """Seam allowance of each kind of edge, mm; a bound edge has none."""

    seam: float = 0.5 * INCH
    side: float = INCH
    centre_back: float = INCH
    centre_front: float = 0.5 * INCH
    """Only where the centre front is cut apart, for a busk."""
    neckline: float = 0.0
    hem: float = 0.0

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}

    def of(self, kind: EdgeKind) -> float:
        """The allowance of one kind of edge."""
        return float(getattr(self, kind))


@dataclass(frozen=True)
class OwnAllowance:
    """One edge of one piece that differs from its kind."""

    layer: LayerName
    panel: int
    edge: EdgeName
    allowance_mm: float

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class LayerChoice:
    """One layer: whether it is made, of which panels, and how it differs from the shell."""

    layer: LayerName
    made: bool
    left_out: tuple[int, ...] = ()
    """Panels (0 is at the centre front) this layer has no piece of."""
    turn_mm: float = 0.0
    """A hair added at every joining seam for an outer layer, or taken from an inner one (turn of cloth)."""
    net: bool = False
    """Cut without allowance: an interfacing that ends at the stitch line."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Marks:
    """Notches."""

    style: NotchStyle = "slit"
    length_mm: float = 6.35
    at_levels: bool = True
    at_curves: bool = True
    """Also at both ends of a curved stretch of a seam."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


USUAL_SET_IN: Mapping[str, float] = {
    "loops": 0.375 * INCH,
    "eyelets": 0.625 * INCH,
    "side_zip": 0.375 * INCH,
}
"""From the centre-back edge: an eyelet needs room for its rim and the bone beside it."""


@dataclass(frozen=True)
class Opening:
    """How the back closes."""

    closing: Closing = "loops"
    pitch_mm: float = 22.225
    waist_pitch_mm: float = 15.875
    """Closer together within 1 1/2 in of the waist, where the pull is."""
    end_mm: float = 15.875
    """First and last one from the edge."""
    set_in_mm: float = USUAL_SET_IN["loops"]
    """From the centre-back edge to the middle of an eyelet or the foot of a loop."""
    step_in_gap_mm: float = 254.0
    """Widest opening she wants to step in by."""
    tying_mm: float = 1143.0
    """Cord left for tying, both ends together: 1 to 1 1/2 yd."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Boning:
    """Where bones lie, and what they are."""

    places: tuple[BonePlace, ...] = ("seams", "beside_opening", "centre_front")
    stuff: BoneStuff = "spiral_steel"
    opening_stuff: BoneStuff = "flat_steel"
    """Beside the opening, where a bone must not twist."""
    width_mm: float = 6.35
    channel_ease_mm: float = 2.38125
    """How much wider the channel is than the bone: 1/16 to 1/8 in."""
    clearance_mm: float = 9.525
    """At each end of a bone, to the finished edge: 1/4 to 1/2 in."""
    steel_step_mm: float = 12.7
    """Steel is sold by the half inch."""
    flat_radius_mm: float = 254.0
    """A flat steel across a curve tighter than this would stand off or stab."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


def _usual_layers() -> tuple[LayerChoice, ...]:
    made = {"fashion", "strength", "interfacing", "lining", "modesty", "strip", "waist_tape"}
    return tuple(LayerChoice(layer, layer in made, net=layer == "interfacing") for layer in LAYERS)


@dataclass(frozen=True)
class Making:
    """Everything she decides about how one bodice is made."""

    allowances: Allowances = field(default_factory=Allowances)
    own_allowances: tuple[OwnAllowance, ...] = ()
    layers: tuple[LayerChoice, ...] = field(default_factory=_usual_layers)
    marks: Marks = field(default_factory=Marks)
    front: FrontMade = "fold"
    busk_mm: float | None = None
    """Length of the busk she has; None chooses the longest stock length that fits."""
    opening: Opening = field(default_factory=Opening)
    boning: Boning = field(default_factory=Boning)
    facing_depth_mm: float = 50.8
    tape_width_mm: float = 19.05
    binding_join_mm: float = 25.4
    """Added to every length of binding for its join or its turned ends."""
    corner_limit: float = 1.6
    """A corner runs out at most this many allowances before it is cut blunt."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}

    def layer(self, name: LayerName) -> LayerChoice:
        """The choice for one layer; KeyError where there is none."""
        for choice in self.layers:
            if choice.layer == name:
                return choice
        raise KeyError(name)

"""The design: what the dressmaker decides, as opposed to what she measures.

Everything here is a frozen value in millimetres. A quarter is described in the order
in which it is drawn, from centre front to centre back; *left* is always the side
towards the centre front.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any, ClassVar, Literal

from workbench.body import LEVELS, LevelName
from workbench.frozen import dataclass

Style = Literal["under_bust", "over_bust"]
Rule = Literal["one_figure", "own_figure"]
QuarterName = Literal["front", "back"]

FEWEST_PANELS, MOST_PANELS = 2, 4
"""Panels in one quarter (own choice)."""


@dataclass(frozen=True)
class Share:
    """What one taker of intake does at one level, where it differs from its usual share."""

    level: LevelName
    pin_mm: float | None = None
    """A fixed amount; the other takers share what is left."""
    weight: float | None = None
    left_part: float | None = None

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Seam:
    """An inner seam of a quarter: where it stands, how it leans, what it takes in."""

    lower: float
    """Place at the lowest level, as a part of the block quarter, from the quarter's own centre line."""
    upper: float
    """The same at the uppermost level; equal to ``lower`` for an upright seam."""
    weight: float
    left_part: float = 0.5
    """Part of its intake that is taken from the panel to its left (common practice, no source: half
    from either)."""
    through_bust_point: bool = False
    """Shift the seam, keeping its lean, so that it passes the bust point."""
    shares: tuple[Share, ...] = ()

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Quarter:
    """The inner seams of a quarter in drawing order, and its share at the side seam."""

    seams: tuple[Seam, ...]
    side_weight: float
    side_shares: tuple[Share, ...] = ()

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}

    @property
    def panel_count(self) -> int:
        """How many panels the quarter has."""
        return len(self.seams) + 1


@dataclass(frozen=True)
class Reductions:
    """How much smaller than the body the garment is made at each level, round the body.

    Negative is ease. Under the *one figure* rule ``waist`` serves the underbust too.
    """

    top_hip: float = 0.0
    waist: float = 0.0
    underbust: float = 0.0
    bust: float = 0.0
    upper_chest: float = 0.0

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}

    def at(self, level: LevelName) -> float:
        """Millimetres round the body at a level."""
        return float(getattr(self, level))


@dataclass(frozen=True)
class ShapePoint:
    """A point of the neckline or hem.

    ``u`` runs from 0 at the centre front by one a panel to the centre back; ``t`` is the
    walk from the waist. A smooth point at either end leaves the centre line square.
    """

    u: float
    t: float
    smooth: bool = True

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Design:
    """Everything she decides about the shape of one bodice."""

    style: Style
    rule: Rule
    front: Quarter
    back: Quarter
    reductions: Reductions
    opening_mm: float = 50.8
    """Left open at the back when laced, two inches; common practice, no source."""
    front_share: float = 0.5
    """The front's part of the finished half girth (own choice: half)."""
    neckline: tuple[ShapePoint, ...] | None = None
    """Her own line, or None for the line of the style, which follows the body."""
    hem: tuple[ShapePoint, ...] | None = None

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}

    @property
    def panel_count(self) -> int:
        """Panels in the half, centre front to centre back."""
        return self.front.panel_count + self.back.panel_count

    @property
    def levels(self) -> tuple[LevelName, ...]:
        """The levels that shape this style, bottom to top."""
        return LEVELS if self.style == "over_bust" else LEVELS[:-1]


_PLACES = {2: (0.55,), 3: (0.42, 0.74), 4: (0.34, 0.58, 0.80)}
"""Where the seams of a front stand in its quarter; common practice, no source."""
_BACK_PLACES = {2: (0.50,), 3: (0.72, 0.40), 4: (0.80, 0.56, 0.30)}
"""The same in the back; common practice, no source."""
_WEIGHTS = {2: ((0.65,), 0.35), 3: ((0.45, 0.30), 0.25), 4: ((0.38, 0.24, 0.18), 0.20)}
"""What each seam and then the side takes of the intake of a quarter, by its panels; common practice,
no source."""


def usual_quarter(quarter: QuarterName, panels: int, style: Style) -> Quarter:
    """A quarter with evenly placed upright seams: a place to start from (common practice, no source).

    An over-bust front has its first seam through the bust point.
    """
    places = (_PLACES if quarter == "front" else _BACK_PLACES)[panels]
    weights, side = _WEIGHTS[panels]
    if quarter == "back":
        weights = weights[::-1]
    over_front = quarter == "front" and style == "over_bust"
    seams = tuple(
        Seam(lower=place, upper=place, weight=weight, through_bust_point=over_front and number == 0)
        for number, (place, weight) in enumerate(zip(places, weights, strict=True))
    )
    return Quarter(seams=seams, side_weight=side)


USUAL_REDUCTION_MM = 50.8
"""Drawn in at the waist for a first wear, two inches (common practice, no source)."""


def usual_design(style: Style = "under_bust", front_panels: int = 3, back_panels: int = 3) -> Design:
    """A design to start from, with two inches drawn in at the waist and the ribs left alone."""
    return Design(
        style=style,
        rule="own_figure",
        front=usual_quarter("front", front_panels, style),
        back=usual_quarter("back", back_panels, style),
        reductions=Reductions(waist=USUAL_REDUCTION_MM),
    )


def with_panels(design: Design, quarter: QuarterName, panels: int) -> Design:
    """The design with another number of panels in a quarter; drawn lines keep their place in it."""
    old_front, old_back = design.front.panel_count, design.back.panel_count
    fresh = usual_quarter(quarter, panels, design.style)
    changed = replace(design, front=fresh) if quarter == "front" else replace(design, back=fresh)
    new_front, new_back = changed.front.panel_count, changed.back.panel_count

    def moved(points: tuple[ShapePoint, ...] | None) -> tuple[ShapePoint, ...] | None:
        if points is None:
            return None
        return tuple(replace(p, u=_rescaled(p.u, old_front, old_back, new_front, new_back)) for p in points)

    return replace(changed, neckline=moved(design.neckline), hem=moved(design.hem))


def _rescaled(u: float, old_front: int, old_back: int, new_front: int, new_back: int) -> float:
    if u <= old_front:
        return u * new_front / old_front
    return new_front + (u - old_front) * new_back / old_back

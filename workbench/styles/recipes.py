"""The shapes that come with the program, written down in the body’s own measures.

A place of a line is ``(quarters, rungs, smooth)``: 0 is the centre front, 1 the side seam, 2 the
centre back; rungs count the levels from the waist, so 1 is the underbust, 2 the bust, 3 the upper
chest and −1 the top hip. Shapes and words are of this program’s own drawing; what each is good for
is common practice, no source. Figures are own choice: shapes of this program’s own drawing.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from workbench.draft import Style
from workbench.pieces import FrontMade

Spot = tuple[float, float, bool]
Line = tuple[Spot, ...]
Row = tuple[float, float, float, float]
"""A seam: its place at the lowest and at the uppermost level, its weight, the part taken at its left."""


@dataclass(frozen=True)
class Recipe:
    """One shape. ``front`` and ``back`` are the seams in drawing order; the first may pass the bust point."""

    name: str
    purpose: str
    """One line: what it is and what it is for."""
    style: Style
    neckline: Line
    hem: Line
    front: tuple[Row, ...]
    back: tuple[Row, ...]
    side: tuple[float, float] = (0.25, 0.25)
    """Weights of the side seam in front and back."""
    front_made: FrontMade = "fold"
    through_bust: bool = field(default=False)


_UNDER_FRONT: tuple[Row, ...] = ((0.42, 0.40, 0.42, 0.5), (0.72, 0.74, 0.30, 0.5))
_OVER_FRONT: tuple[Row, ...] = ((0.40, 0.44, 0.50, 0.5), (0.72, 0.76, 0.25, 0.5))
_BACK: tuple[Row, ...] = ((0.74, 0.72, 0.28, 0.5), (0.42, 0.38, 0.42, 0.5))
_HIP: Line = ((0.0, -0.95, True), (1.0, -0.50, True), (2.0, -0.80, False))
_OVER_BACK_TOP: Line = ((1.0, 2.18, True), (2.0, 2.05, False))

RECIPES: tuple[Recipe, ...] = (
    Recipe(
        "Waist belt",
        "Short and quick to make: the waist alone, worn over a dress.",
        "under_bust",
        ((0.0, 0.86, True), (1.0, 0.74, True), (2.0, 0.80, False)),
        ((0.0, -0.62, True), (1.0, -0.40, True), (2.0, -0.52, False)),
        ((0.48, 0.48, 0.55, 0.5),),
        ((0.55, 0.55, 0.55, 0.5),),
        (0.45, 0.45),
    ),
    Recipe(
        "Under-bust, level",
        "A quiet line just under the bust, good under clothes and for a first fitting.",
        "under_bust",
        ((0.0, 1.10, True), (1.0, 1.06, True), (2.0, 1.10, False)),
        ((0.0, -0.82, True), (1.0, -0.52, True), (2.0, -0.74, False)),
        _UNDER_FRONT,
        _BACK,
    ),
    Recipe(
        "Under-bust, pointed",
        "Drawn up between the breasts and down over the belly: the front looks longer.",
        "under_bust",
        ((0.0, 1.62, False), (0.42, 1.12, True), (1.0, 1.04, True), (2.0, 1.30, False)),
        ((0.0, -1.45, False), (0.45, -0.72, True), (1.0, -0.46, True), (2.0, -0.86, False)),
        ((0.36, 0.30, 0.42, 0.5), (0.70, 0.70, 0.30, 0.5)),
        _BACK,
    ),
    Recipe(
        "Under-bust, high back",
        "Low in front, raised behind: carries the shoulder blades for long sitting or standing.",
        "under_bust",
        ((0.0, 1.12, True), (0.5, 1.05, True), (1.0, 1.30, True), (1.5, 1.85, True), (2.0, 1.95, True)),
        ((0.0, -0.90, True), (1.0, -0.48, True), (2.0, -0.90, False)),
        _UNDER_FRONT,
        ((0.74, 0.76, 0.28, 0.5), (0.42, 0.44, 0.42, 0.5)),
    ),
    Recipe(
        "Under-bust with a busk",
        "Opens in front, so that she can put it on alone; four panels a quarter for a strong waist.",
        "under_bust",
        ((0.0, 1.30, True), (0.5, 1.16, True), (1.0, 1.08, True), (2.0, 1.25, False)),
        ((0.0, -1.00, True), (0.5, -0.78, True), (1.0, -0.48, True), (2.0, -0.85, False)),
        ((0.30, 0.28, 0.36, 0.5), (0.54, 0.54, 0.26, 0.5), (0.78, 0.79, 0.20, 0.5)),
        ((0.80, 0.80, 0.20, 0.5), (0.56, 0.55, 0.26, 0.5), (0.30, 0.28, 0.36, 0.5)),
        (0.18, 0.18),
        "busk",
    ),
    Recipe(
        "Over-bust, straight",
        "A level top edge from side to side, plain to bind and easy to hang a skirt from.",
        "over_bust",
        ((0.0, 2.50, True), (0.5, 2.55, True), (1.0, 2.18, True), (2.0, 2.15, False)),
        _HIP,
        _OVER_FRONT,
        _BACK,
        through_bust=True,
    ),
    Recipe(
        "Sweetheart",
        "Two soft curves over the bust that meet in a point at the centre front.",
        "over_bust",
        ((0.0, 2.02, False), (0.40, 2.66, True), (1.0, 2.18, True), (2.0, 2.05, False)),
        _HIP,
        _OVER_FRONT,
        _BACK,
        through_bust=True,
    ),
    Recipe(
        "Plunge",
        "Open down to the ribs at the centre front; needs a net or a firm fit to stay in place.",
        "over_bust",
        ((0.0, 1.12, False), (0.16, 1.70, True), (0.46, 2.62, True), (1.0, 2.18, True), (2.0, 1.95, False)),
        ((0.0, -1.05, True), (1.0, -0.50, True), (2.0, -0.80, False)),
        _OVER_FRONT,
        _BACK,
        through_bust=True,
    ),
    Recipe(
        "Half-cup line",
        "Low across the breast and higher at the side, where a strap can be set.",
        "over_bust",
        ((0.0, 1.72, True), (0.36, 2.02, True), (0.68, 2.66, True), (1.0, 2.18, True), (2.0, 1.90, False)),
        _HIP,
        _OVER_FRONT,
        _BACK,
        through_bust=True,
    ),
    Recipe(
        "Square neck",
        "Level across the chest between two upright edges that can carry straps.",
        "over_bust",
        (
            (0.0, 2.12, True),
            (0.40, 2.12, False),
            (0.52, 2.86, False),
            (0.70, 2.72, True),
            (1.0, 2.18, True),
            (2.0, 2.20, False),
        ),
        _HIP,
        ((0.40, 0.44, 0.50, 0.5), (0.72, 0.78, 0.25, 0.5)),
        _BACK,
        through_bust=True,
    ),
    Recipe(
        "Over-bust, high back",
        "Closed up to the shoulder blades behind, for a covered back or a laced gown.",
        "over_bust",
        (
            (0.0, 2.30, True),
            (0.42, 2.62, True),
            (1.0, 2.18, True),
            (1.40, 2.55, True),
            (2.0, 3.00, True),
        ),
        _HIP,
        _OVER_FRONT,
        ((0.74, 0.74, 0.28, 0.5), (0.42, 0.42, 0.42, 0.5)),
        through_bust=True,
    ),
    Recipe(
        "Longline",
        "Well over the hip bones, for a smooth line under a close skirt; try sitting down in it.",
        "over_bust",
        ((0.0, 2.12, False), (0.40, 2.58, True), *_OVER_BACK_TOP),
        ((0.0, -1.75, True), (0.5, -1.55, True), (1.0, -1.30, True), (2.0, -1.60, False)),
        ((0.36, 0.42, 0.46, 0.5), (0.70, 0.76, 0.27, 0.5)),
        ((0.72, 0.72, 0.30, 0.5), (0.40, 0.38, 0.40, 0.5)),
        through_bust=True,
    ),
    Recipe(
        "Basque",
        "The hem runs down to a long point at the centre front, over a gathered skirt.",
        "over_bust",
        ((0.0, 2.20, True), (0.40, 2.55, True), *_OVER_BACK_TOP),
        ((0.0, -1.80, False), (0.42, -0.62, True), (1.0, -0.20, True), (2.0, -0.70, False)),
        ((0.30, 0.42, 0.48, 0.5), (0.70, 0.76, 0.27, 0.5)),
        _BACK,
        through_bust=True,
    ),
    Recipe(
        "Fewest seams",
        "The fewest seams that shape a bust: one through it and one behind. For a plain or dear cloth.",
        "over_bust",
        ((0.0, 2.35, True), (0.45, 2.58, True), *_OVER_BACK_TOP),
        _HIP,
        ((0.42, 0.46, 0.65, 0.5),),
        ((0.48, 0.46, 0.60, 0.5),),
        (0.35, 0.40),
        through_bust=True,
    ),
)

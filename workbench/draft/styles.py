"""The lines of a style: a neckline and a hem that follow the body until she draws her own.

Heights are parts of the way from one level to the next, so a short and a long body both get the
line in the same place. Figures are own choice: shapes of this program's own drawing.
"""

from __future__ import annotations

from workbench.draft.design import Design, ShapePoint
from workbench.draft.result import Level, LineName

_UNDER_NECK = ((0.0, 1.42, True), (0.45, 1.30, True), (1.0, 1.12, True), (2.0, 1.20, False))
_UNDER_HEM = ((0.0, -0.92, True), (0.5, -0.70, True), (1.0, -0.42, True), (2.0, -0.78, False))
_OVER_NECK = ((0.0, 2.05, False), (0.40, 2.60, True), (1.0, 2.30, True), (2.0, 2.05, False))
_OVER_HEM = ((0.0, -0.95, True), (1.0, -0.45, True), (2.0, -0.80, False))
_LINES = {
    ("under_bust", "neckline"): _UNDER_NECK,
    ("under_bust", "hem"): _UNDER_HEM,
    ("over_bust", "neckline"): _OVER_NECK,
    ("over_bust", "hem"): _OVER_HEM,
}


def style_line(name: LineName, design: Design, levels: tuple[Level, ...]) -> tuple[ShapePoint, ...]:
    """Shape points of the style's own neckline or hem on these levels."""
    return tuple(
        ShapePoint(_place(quarters, design), _height(rung, levels), smooth)
        for quarters, rung, smooth in _LINES[design.style, name]
    )


def _place(quarters: float, design: Design) -> float:
    """u of a place given in quarters: 0 centre front, 1 side seam, 2 centre back."""
    front, back = design.front.panel_count, design.back.panel_count
    return quarters * front if quarters <= 1 else front + (quarters - 1) * back


def _height(rung: float, levels: tuple[Level, ...]) -> float:
    """Walk of a height counted in levels from the waist: 1.5 is halfway from underbust to bust."""
    waist = next(i for i, level in enumerate(levels) if level.name == "waist")
    place = rung + waist
    below = min(max(int(place // 1), 0), len(levels) - 2)
    low, high = levels[below].walk, levels[below + 1].walk
    return low + (place - below) * (high - low)

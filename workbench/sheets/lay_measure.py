"""The measures of a corner, written beside it: along and across, each behind an arrow that points so."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import shapely

from workbench.sheets.fonts import text_width
from workbench.sheets.lay_arrow import draw_arrow
from workbench.sheets.pen import SOFT, Pen

Figures = tuple[str, str]
"""Along, across."""

_SIGN = 1.15
"""Room of an arrow before its figure, in sizes of the type."""
_BETWEEN = 0.7
_LINE, _CAPITALS = 1.2, 0.74
_HAIR, _AIR = 0.2, 0.6
_STEPS, _STEP = 17, 0.5


@dataclass(frozen=True)
class Measure:
    """Two figures, one below the other or side by side, with the left end of the upper baseline; mm."""

    figures: Figures
    size: float
    stacked: bool
    x: float
    y: float

    @property
    def room(self) -> shapely.Polygon:
        """The rectangle that it fills, with a little air."""
        width, height = _size(self.figures, self.size, self.stacked)
        top = self.y + _CAPITALS * self.size
        return shapely.box(self.x - _AIR, top - height - _AIR, self.x + width + _AIR, top + _AIR)

    def draw(self, pen: Pen) -> None:
        """Along with an arrow to the right, across with one down."""
        sign, x, y = _SIGN * self.size, self.x, self.y
        level = y + 0.36 * self.size
        draw_arrow(pen, np.array([x, level]), np.array([x + 0.75 * sign, level]), 0.6)
        pen.text(x + sign, y, self.figures[0], self.size, colour=SOFT)
        if self.stacked:
            y -= _LINE * self.size
        else:
            x += sign + text_width(self.figures[0], self.size) + _BETWEEN * self.size
        down = x + 0.4 * sign
        draw_arrow(pen, np.array([down, y + 0.78 * self.size]), np.array([down, y - 0.12 * self.size]), 0.6)
        pen.text(x + sign, y, self.figures[1], self.size, colour=SOFT)


def measure_in(
    inner: shapely.Polygon, corner: tuple[float, float], figures: Figures, size: float, stacked: bool
) -> Measure | None:
    """The measure inside a shape, as near its corner as there is room; None where there is none."""
    width, height = _size(figures, size, stacked)
    places = np.array(list(_beside(corner, width, height)))
    x, y = places.T
    boxes = shapely.box(x - _HAIR, y - _HAIR, x + width, y + height + _HAIR)
    inside = np.flatnonzero(shapely.contains(inner, boxes))
    if not inside.size:
        return None
    left, bottom = places[inside[0]].tolist()
    return Measure(figures, size, stacked, left, bottom + height - _CAPITALS * size)


def _size(figures: Figures, size: float, stacked: bool) -> tuple[float, float]:
    along, across = (_SIGN * size + text_width(figure, size) for figure in figures)
    if stacked:
        return max(along, across), (_LINE + _CAPITALS) * size
    return along + across + _BETWEEN * size, _CAPITALS * size


def _beside(corner: tuple[float, float], width: float, height: float) -> Iterator[tuple[float, float]]:
    """Lower left ends of a rectangle to the right of the corner, farther and farther from it."""
    x, y = corner
    for step in range(1, _STEPS + 1):
        away = _STEP * step
        for part in (0.5, 1.0, 1.6, 2.4, 3.4):
            yield x + away, y - height - 0.6 * part * away
            yield x + away, y + 0.6 * part * away
            yield x + 0.6 * part * away, y - height - away

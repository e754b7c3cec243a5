"""The number and name within a piece on a lay sheet, over an arrow that is its grain."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from workbench.sheets.drawing import Array
from workbench.sheets.fonts import text_width

ARROW_ROOM, ARROW_LONG = 1.7, 5.0
_LINE = 1.2
_CAPITALS, _BELOW = 0.74, 0.22
_ACROSS, _DOWN = 9, 7
"""Places tried in a piece."""


@dataclass(frozen=True)
class Called:
    """What a piece is called on the drawing."""

    number: int
    name: str
    what: str


@dataclass(frozen=True)
class Caption:
    """A number in bold and what stands beside it, lines below, where there is room an arrow under them."""

    x: float
    """Middle of the lines, mm."""
    y: float
    """Baseline of the last line."""
    size: float
    number: str
    lines: tuple[str, ...]
    """The first stands beside the number; it may be empty."""
    width: float
    arrow: bool

    def bases(self) -> tuple[float, ...]:
        """Heights of the baselines, from the top."""
        count = len(self.lines)
        return tuple(self.y + (count - 1 - row) * _LINE * self.size for row in range(count))

    @property
    def arrow_at(self) -> Array:
        """The middle of the arrow."""
        return np.array([self.x, self.y - _BELOW * self.size - 0.5 * ARROW_ROOM])


def caption_in(free: shapely.Polygon, shape: shapely.Polygon, called: Called, size: float) -> Caption | None:
    """The fullest caption that stands in what is free of a shape; None where not even the name does."""
    shapely.prepare(free)
    spots = _spots(shape)
    for lines, arrow in _ways(called):
        caption = _first_inside(free, spots, str(called.number), lines, size, arrow)
        if caption is not None:
            return caption
    return None


def number_alone(shape: shapely.Polygon, called: Called, size: float) -> Caption:
    """The number in the middle of a piece that has no room for more."""
    x, y = _spots(shape)[0].tolist()
    number = str(called.number)
    return Caption(x, y - 0.5 * _CAPITALS * size, size, number, ("",), text_width(number, size, True), False)


def _ways(called: Called) -> Iterator[tuple[tuple[str, ...], bool]]:
    """Lines beside and below the number, and whether with the arrow: the fullest first."""
    if called.what:
        yield (f"{called.name}, {called.what}",), True
        yield (called.name, called.what), True
    if called.name:
        yield (called.name,), True
        yield (called.name,), False


def _first_inside(
    free: shapely.Polygon, spots: Array, number: str, lines: Sequence[str], size: float, arrow: bool
) -> Caption | None:
    width = _width(number, lines, size)
    under = _BELOW * size + (ARROW_ROOM if arrow else 0.0)
    height = under + _LINE * size * (len(lines) - 1) + _CAPITALS * size
    x, y = spots.T
    boxes = shapely.box(x - 0.5 * width, y - 0.5 * height, x + 0.5 * width, y + 0.5 * height)
    inside = np.flatnonzero(shapely.contains_properly(free, boxes))
    if not inside.size:
        return None
    middle_x, middle_y = spots[inside[0]].tolist()
    return Caption(middle_x, middle_y - 0.5 * height + under, size, number, tuple(lines), width, arrow)


def _width(number: str, lines: Sequence[str], size: float) -> float:
    first = text_width(number, size, bold=True) + text_width(f" {lines[0]}", size)
    return max(first, *(text_width(line, size) for line in lines), ARROW_LONG)


def _spots(shape: shapely.Polygon) -> Array:
    """Points of a grid over the shape, those nearest its middle first."""
    inside = shape.contains(shape.centroid)
    middle = np.array((shape.centroid if inside else shape.point_on_surface()).coords[0])
    left, bottom, right, top = shape.bounds
    x, y = np.meshgrid(np.linspace(left, right, _ACROSS + 2)[1:-1], np.linspace(bottom, top, _DOWN + 2)[1:-1])
    spots = np.vstack((middle, np.column_stack((x.ravel(), y.ravel()))))
    order: Array = spots[np.argsort(np.hypot(*(spots - middle).T), kind="stable")]
    return order

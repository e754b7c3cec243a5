"""Beads on paper: each kind by the shape of its mark, in a circle of its true size, without colour."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np

from workbench.beads import BeadMark
from workbench.sheets.drawing import Array
from workbench.sheets.pen import INK, LineStyle, Pen, number

BEAD = LineStyle(0.14, INK)
_ROUND = 0.5522847498
"""How far the handles of four cubics reach that make a circle: 4/3 (√2 − 1), out by 0.03 % of the
radius (derived)."""
_CORNERS: Mapping[BeadMark, tuple[tuple[float, float], ...]] = {
    "diamond": ((0, 0.8), (0.8, 0), (0, -0.8), (-0.8, 0)),
    "square": ((-0.6, -0.6), (0.6, -0.6), (0.6, 0.6), (-0.6, 0.6)),
    "triangle": ((0, 0.8), (0.7, -0.45), (-0.7, -0.45)),
    "bar": ((-0.85, 0.0), (0.85, 0.0)),
}


def bead_code(mark: BeadMark, size: float, points: Array) -> str:
    """Orders that stroke beads of one kind at points (n, 2) in mm: a circle each, and its mark within."""
    radius = 0.5 * size
    shape = [*_circle(radius), *_inside(mark, radius)]
    orders = []
    for x, y in points.tolist():
        orders += [
            " ".join(f"{number(x + dx)} {number(y + dy)}" for dx, dy in places) + f" {order}"
            for places, order in shape
        ]
    return " ".join(orders) + " S"


Order = tuple[tuple[tuple[float, float], ...], str]


def _circle(radius: float) -> Iterator[Order]:
    r, h = radius, _ROUND * radius
    yield ((r, 0.0),), "m"
    yield ((r, h), (h, r), (0.0, r)), "c"
    yield ((-h, r), (-r, h), (-r, 0.0)), "c"
    yield ((-r, -h), (-h, -r), (0.0, -r)), "c"
    yield ((h, -r), (r, -h), (r, 0.0)), "c"


def _inside(mark: BeadMark, radius: float) -> Iterator[Order]:
    if mark == "ring":
        yield from _circle(0.5 * radius)
    corners = _CORNERS.get(mark, ())
    for place, (x, y) in enumerate(corners):
        yield ((x * radius, y * radius),), "m" if place == 0 else "l"
    if len(corners) > 2:
        yield ((corners[0][0] * radius, corners[0][1] * radius),), "l"


def draw_bead(pen: Pen, mark: BeadMark, size: float, x: float, y: float) -> None:
    """One bead of a kind in its true size."""
    pen.style(BEAD)
    pen.code(bead_code(mark, size, np.array([[x, y]])))

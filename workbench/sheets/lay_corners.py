"""The corners of an outline that a tape can be held to."""

from __future__ import annotations

import numpy as np
import shapely

from workbench.sheets.drawing import Array

_SIDE = 10.0
"""A corner is judged by the directions over this length on either side of it, mm."""
_SHARP = 30.0
"""Degrees of turn from which a bend is a corner to the eye."""
_APART = 15.0
"""Corners closer than this, mm, are one: the sharpest stands for them."""
_PLAIN = 0.5
"""Bends smaller than this, mm, are left out of account."""


def corners_of(outline: Array) -> Array:
    """(k, 2) corners of a ring (n, 2), points of the ring itself; none on a round shape."""
    ring = shapely.LinearRing(outline)
    points = shapely.get_coordinates(shapely.simplify(ring, _PLAIN))[:-1]
    at = shapely.line_locate_point(ring, shapely.points(points))
    turns = _turns(ring, at)
    found: list[int] = []
    for number in np.argsort(-turns, kind="stable").tolist():
        if turns[number] < _SHARP:
            break
        if all(_between(at[number], at[other], ring.length) >= _APART for other in found):
            found.append(number)
    corners: Array = points[sorted(found)]
    return corners


def nearest_corner(outline: Array) -> tuple[float, float]:
    """The corner with the least way from the origin, along and across together.

    On a round shape it is the point that lies farthest down.
    """
    corners = corners_of(outline)
    if not len(corners):
        corners = outline[[int(np.argmin(outline[:, 1]))]]
    x, y = corners[int(np.argmin(corners.sum(axis=1)))].tolist()
    return x, y


def farthest_corner(outline: Array, corner: tuple[float, float]) -> tuple[float, float]:
    """The corner farthest from another one, so that the two say how a piece is turned."""
    corners = corners_of(outline)
    choices = corners if len(corners) > 1 else outline
    x, y = choices[int(np.argmax(np.hypot(*(choices - corner).T)))].tolist()
    return x, y


def _turns(ring: shapely.LinearRing, at: Array) -> Array:
    """Degrees by which the ring turns round each place, 0 to 180."""
    side = min(_SIDE, 0.1 * ring.length)
    before, here, after = (
        shapely.get_coordinates(shapely.line_interpolate_point(ring, (at + by) % ring.length))
        for by in (-side, 0.0, side)
    )
    arriving, leaving = here - before, after - here
    cross = arriving[:, 0] * leaving[:, 1] - arriving[:, 1] * leaving[:, 0]
    turned: Array = np.degrees(np.arctan2(np.abs(cross), (arriving * leaving).sum(axis=1)))
    return turned


def _between(one: float, other: float, round_: float) -> float:
    away = abs(one - other)
    return float(min(away, round_ - away))

"""The ends of a side, so placed that the line runs on through a mark close by without a kink.

Figures are own choice, how a line is walked.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

import numpy as np

from workbench.marking.rounding import Rounding
from workbench.marking.smooth import Array, distances, smooth_through

Point = tuple[float, float]
_CLOSE = 3
"""Strides: a mark nearer than these to a corner decides how the line leaves it."""
_STRAIGHT = 1e-6
"""mm that a straight upright line may wander: floating point."""


def ends_of(line: Array, inner: Sequence[Point], rounding: Rounding) -> tuple[Point, Point]:
    """Rounded places of the lower and the upper end of a side, given its marks between them, mm.

    An end is put a step further out or in where the line then runs truer: two marks close together,
    one rounded out and the other in, would throw a smooth line off for inches.
    """
    low, high = (_choices(line, place, inner, rounding) for place in (0, -1))
    pairs = list(product(low, high))
    if len(pairs) == 1:
        return pairs[0]
    # the nearest ones come first, and win a tie
    return min(pairs, key=lambda pair: round(_off(line, (pair[0], *inner, pair[1])), 6))


def _choices(line: Array, place: int, inner: Sequence[Point], rounding: Rounding) -> list[Point]:
    x, y = line[place].tolist()
    usual = (rounding.near(x), rounding.near(y))
    straight = float(np.ptp(line[:, 0])) < _STRAIGHT
    if straight or not inner or _away(inner[place], (x, y)) > _CLOSE * rounding.stride:
        return [usual]
    return [usual, (usual[0] - rounding.step, usual[1]), (usual[0] + rounding.step, usual[1])]


def _away(one: Point, other: Point) -> float:
    return float(np.hypot(one[0] - other[0], one[1] - other[1]))


def _off(line: Array, marks: Sequence[Point]) -> float:
    return float(distances(smooth_through(np.array(marks)), line).max())

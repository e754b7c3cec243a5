"""A shape as narrow columns: one stretch in each column it touches, from its lowest to its highest point.

Figures are own choice, what counts as beside.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, sqrt

import numpy as np

from workbench.cloth.plan import Array, Copy, turned

EDGE = 5e-4
"""Parts of a column by which a shape may run into the next one without being in it."""
_UPRIGHT = 1e-6
"""mm; a side no wider than this crosses no column."""


@dataclass(frozen=True)
class Span:
    """Lowest and highest point in each of a run of columns, mm."""

    first: int
    """The number of its first column."""
    lows: Array
    highs: Array


@dataclass(frozen=True)
class Shape:
    """A copy in one of the ways it may lie, with its lower left corner at the origin."""

    degrees: float
    mirrored: bool
    shift: tuple[float, float]
    """From the lower left corner to the copy's own origin."""
    height: float
    bare: Span
    """What it takes itself."""
    guarded: Span
    """With the gap all round: what it takes from others."""


def shape_of(copy: Copy, degrees: float, mirrored: bool, step: float, gap: float) -> Shape:
    """A copy turned, cut into columns ``step`` wide."""
    ring = turned(copy.outline, degrees, mirrored)
    corner = ring.min(axis=0)
    ring = ring - corner
    bare = span_of(ring, step)
    return Shape(
        degrees,
        mirrored,
        (-float(corner[0]), -float(corner[1])),
        float(ring[:, 1].max()),
        bare,
        guarded(bare, step, gap),
    )


def span_of(ring: Array, step: float) -> Span:
    """The columns of a ring (n, 2); column 0 begins at x = 0."""
    points = np.concatenate((ring, _crossings(ring, step)))
    # A point on the line between two columns belongs to both.
    left = np.ceil(points[:, 0] / step - EDGE).astype(int) - 1
    right = np.floor(points[:, 0] / step + EDGE).astype(int)
    first, last = int(right.min()), max(int(left.max()), int(right.min()))
    lows, highs = np.full(last - first + 1, np.inf), np.full(last - first + 1, -np.inf)
    for columns in (left, right):
        inside = (columns >= first) & (columns <= last)
        np.minimum.at(lows, columns[inside] - first, points[inside, 1])
        np.maximum.at(highs, columns[inside] - first, points[inside, 1])
    return Span(first, lows, highs)


def _crossings(ring: Array, step: float) -> Array:
    """(k, 2) points where the sides of a ring cross the lines between columns."""
    ends = np.roll(ring, -1, axis=0)
    low, high = np.minimum(ring[:, 0], ends[:, 0]), np.maximum(ring[:, 0], ends[:, 0])
    lowest = np.ceil(low / step).astype(int)
    counts = np.maximum(np.floor(high / step).astype(int) - lowest + 1, 0)
    counts[high - low < _UPRIGHT] = 0
    side = np.repeat(np.arange(len(ring)), counts)
    number = np.arange(len(side)) - np.repeat(np.cumsum(counts) - counts, counts)
    x = (lowest[side] + number) * step
    share = (x - ring[side, 0]) / (ends[side, 0] - ring[side, 0])
    return np.column_stack((x, ring[side, 1] + share * (ends[side, 1] - ring[side, 1])))


def guarded(span: Span, step: float, gap: float) -> Span:
    """A span with ``gap`` mm kept clear all round it."""
    pad = ceil(gap / step - EDGE)
    lows, highs = (
        np.pad(span.lows, pad, constant_values=np.inf),
        np.pad(span.highs, pad, constant_values=-np.inf),
    )
    low, high = lows.copy(), highs.copy()
    for by in range(-pad, pad + 1):
        reach = sqrt(max(gap**2 - (max(abs(by) - 1, 0) * step) ** 2, 0.0))
        low = np.minimum(low, _moved(lows, by, np.inf) - reach)
        high = np.maximum(high, _moved(highs, by, -np.inf) + reach)
    return Span(span.first - pad, low, high)


def _moved(values: Array, by: int, filled: float) -> Array:
    if by == 0:
        return values
    ends = np.full(abs(by), filled)
    return np.concatenate((ends, values[:-by])) if by > 0 else np.concatenate((values[-by:], ends))

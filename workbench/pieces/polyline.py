"""Lines as points: how long they are, a stretch of one, how tightly they curve.

Many short lines are measured at once, one after the other in a single array: to ask for each by
itself takes many times as long. Figures are own choice, how a curve is judged, unless said.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import inf

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Index = NDArray[np.intp]

SPAN_MM = 25.4
"""Curves are judged over an inch: a bone bridges what is shorter."""
_STRAIGHT = 1e-4
"""Radians over the span that are no curve: a radius of a quarter of a kilometre."""
_PROBES = 97
"""Places along a line at which the span is begun: every few millimetres."""


class Lines:
    """Several lines (n, 2) in one array, with the lengths along them, mm."""

    def __init__(self, lines: Sequence[Array]) -> None:
        self.counts: Index = np.fromiter(map(len, lines), np.intp, len(lines))
        """Points of each line."""
        self.firsts: Index = np.cumsum(self.counts) - self.counts
        """Where in ``points`` each line begins."""
        self.points: Array = np.concatenate(lines) if lines else np.empty((0, 2))
        self.steps: Array = np.zeros_like(self.points)
        """(n, 2) from each point to the next; nothing at the last point of a line."""
        self.steps[:-1] = self.points[1:] - self.points[:-1]
        self.steps[self.firsts + self.counts - 1] = 0.0
        self.lengths: Array = np.hypot(self.steps[:, 0], self.steps[:, 1])
        """(n,) of the steps."""
        self.along: Array = np.cumsum(self.lengths) - self.lengths
        """(n,) length up to each point, those of the lines before it counted in."""

    @property
    def starts(self) -> Array:
        """(lines,) of ``along`` at the first point of each line."""
        found: Array = self.along[self.firsts]
        return found

    @property
    def totals(self) -> Array:
        """(lines,) length of each line."""
        found: Array = self.along[self.firsts + self.counts - 1] - self.starts
        return found

    def bits(self, owner: Index, up: Array) -> Index:
        """Number in ``steps`` of the bit that lies ``up`` mm along the line ``owner``, for each of them."""
        found = np.searchsorted(self.along, self.starts[owner] + up, side="right") - 1
        kept: Index = np.clip(found, self.firsts[owner], self.firsts[owner] + self.counts[owner] - 2)
        return kept

    def turned(self) -> list[float]:
        """Least radius in mm over any inch of each line, which runs upwards; ``inf`` where it is straight."""
        ends = self.firsts + self.counts - 2
        middles = self.along + 0.5 * self.lengths
        low, high = middles[self.firsts], middles[ends]
        span = np.minimum(SPAN_MM, high - low)[:, None]
        starts = low[:, None] + np.linspace(0.0, 1.0, _PROBES) * (high - low)[:, None]
        starts -= np.linspace(0.0, 1.0, _PROBES) * span
        real = np.ones(len(middles), bool)
        real[ends + 1] = False
        headings = np.arctan2(self.steps[real, 0], self.steps[real, 1])
        one, other = (np.interp(place, middles[real], headings) for place in (starts, starts + span))
        most = np.abs(other - one).max(axis=1)
        radius = np.divide(span[:, 0], most, out=np.full(len(most), inf), where=most > _STRAIGHT)
        found: list[float] = radius.tolist()
        return found


def lengths_of(lines: Sequence[Array]) -> list[float]:
    """Length in mm of each line (n, 2)."""
    found: list[float] = Lines(lines).totals.tolist() if lines else []
    return found


def length_of(line: Array) -> float:
    """Length in mm of a line (n, 2)."""
    return float(_steps(line).sum())


def part_of(line: Array, start: float, end: float) -> Array:
    """(m, 2): the stretch of a line between two distances in mm from its first point, with both ends."""
    along = np.empty(len(line))
    along[0] = 0.0
    np.cumsum(_steps(line), out=along[1:])
    first, last = int(along.searchsorted(start, "right")), int(along.searchsorted(end, "left"))
    stretch = np.empty((max(last - first, 0) + 2, 2))
    stretch[0], stretch[-1] = _at(line, along, start), _at(line, along, end)
    stretch[1:-1] = line[first:last]
    return stretch


def _at(line: Array, along: Array, place: float) -> Array:
    """(2,) the point a distance along a line; the nearer end of it beyond either."""
    bit = min(max(int(along.searchsorted(place)) - 1, 0), len(line) - 2)
    start, end = along[bit : bit + 2].tolist()
    part = min(max((place - start) / (end - start), 0.0), 1.0) if end > start else 0.0
    point: Array = line[bit] + part * (line[bit + 1] - line[bit])
    return point


def tightest_radius(line: Array) -> float:
    """Least radius in mm over any inch of an upward line; ``inf`` where it is straight."""
    return Lines([line]).turned()[0]


def _steps(line: Array) -> Array:
    """(n - 1,) distances from point to point."""
    apart = line[1:] - line[:-1]
    steps: Array = np.hypot(apart[:, 0], apart[:, 1])
    return steps

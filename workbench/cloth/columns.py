"""The cloth as narrow columns: what lies in each, and how far down a shape can come.

What is found free is free, for a shape takes all of the columns it touches. Heights are
exact, places across go by columns.
"""

from __future__ import annotations

from math import floor

import numpy as np
import shapely
from numpy.lib.stride_tricks import sliding_window_view

from workbench.cloth.plan import Array
from workbench.cloth.room import Room
from workbench.cloth.spans import EDGE, Span

Columns = np.ndarray[tuple[int, ...], np.dtype[np.intp]]
Rise = tuple[float, float]
"""The repeat of a print, and from the lower left corner of a shape up to its waist line, mm."""

_SAME = 1e-6
"""mm; shapes may touch (own choice)."""
_AT_ONCE, _MOST_AT_ONCE = 60.0, 128
"""Places this much higher than the lowest, mm, and so many, are looked into together (own choice)."""


class Ground:
    """What is taken in every column of a cloth: stretches that overlap or nearly touch are one.

    What lies there only grows. So a height once found to be too low for a shape stays too
    low, and of all places only those that may be the lowest are looked into.
    """

    def __init__(self, room: Room, step: float, joined: float) -> None:
        """``joined``: free stretches lower than so many mm are given up."""
        self.step, self.left = step, room.left
        self._joined = joined
        self.floor = 0.0 if room.shape is None else float(shapely.bounds(room.shape)[1])
        columns = max(floor(room.width / step + EDGE), 1)
        self._lows = np.full((columns, 1), np.inf)
        self._highs = np.full((columns, 1), -np.inf)
        self._least: dict[int, Array] = {}
        if room.shape is not None:
            self._wall_in(room)

    def copy(self) -> Ground:
        """The same ground, to be laid on by itself."""
        other = object.__new__(Ground)
        least = {name: heights.copy() for name, heights in self._least.items()}
        other.__dict__.update(self.__dict__, _lows=self._lows.copy(), _highs=self._highs.copy(), _least=least)
        return other

    def lowest(self, span: Span, rise: Rise | None = None, first_only: bool = False) -> tuple[int, float]:
        """The column in which a shape lies lowest, the leftmost of equal ones, and its height in mm.

        The height is of the shape's lower left corner, infinite where there is no room.
        With ``rise`` the height plus its shift is a whole number of repeats; a span must
        always be asked for in the same way.
        """
        least = self._least.get(id(span))
        if least is None:
            count = 1 if first_only else max(len(self._lows) - len(span.lows) + 1, 0)
            least = self._least[id(span)] = _lifted(np.full(count, self.floor), rise)
        if len(least) == 0 or len(span.lows) > len(self._lows):
            return 0, np.inf
        free = np.zeros(len(least), dtype=bool)
        windows = self._windows(span)
        while True:
            column = int(least.argmin())
            if free[column] or least[column] == np.inf:
                return column, float(least[column])
            near = np.flatnonzero((least <= least[column] + _AT_ONCE) & ~free)[:_MOST_AT_ONCE]
            pushed = _lifted(_pushed(windows, span, least[near], near), rise)
            free[near] = pushed <= least[near]
            least[near] = np.maximum(least[near], pushed)

    def _windows(self, span: Span) -> tuple[Array, Array]:
        """(k, taken, n) what is taken in the columns of a shape, for each column it can begin in."""
        wide = len(span.lows)
        return sliding_window_view(self._lows, wide, axis=0), sliding_window_view(self._highs, wide, axis=0)

    def take(self, span: Span, column: int, height: float) -> None:
        """Mark what a shape takes that begins in a column at a height."""
        first = span.first + column
        begin, end = max(first, 0), min(first + len(span.lows), len(self._lows))
        if begin >= end:
            return
        low, high = (values[begin - first : end - first] + height for values in (span.lows, span.highs))
        self._add(begin, end, low, high)

    def _add(self, begin: int, end: int, low: Array, high: Array) -> None:
        lows, highs = self._lows[begin:end], self._highs[begin:end]
        for _ in range(2):
            near = (lows <= high[:, None] + self._joined) & (highs >= low[:, None] - self._joined)
            low = np.minimum(low, np.where(near, lows, np.inf).min(axis=1))
            high = np.maximum(high, np.where(near, highs, -np.inf).max(axis=1))
            lows[near], highs[near] = np.inf, -np.inf
        # The emptied or empty place that comes first in each column takes it.
        empty = np.isposinf(lows) & np.isneginf(highs)
        if not empty.any(axis=1).all():
            self._lows = np.pad(self._lows, ((0, 0), (0, 1)), constant_values=np.inf)
            self._highs = np.pad(self._highs, ((0, 0), (0, 1)), constant_values=-np.inf)
            lows, highs = self._lows[begin:end], self._highs[begin:end]
            empty = np.isposinf(lows) & np.isneginf(highs)
        rows, place = np.arange(len(low)), empty.argmax(axis=1)
        lows[rows, place], highs[rows, place] = low, high

    def _wall_in(self, room: Room) -> None:
        """Everything outside a remnant is taken."""
        x0, low, x1, high = shapely.bounds(room.shape).tolist()
        outside = shapely.difference(shapely.box(x0 - 1, low - 1, x1 + 1, high + 1), room.shape)
        starts = self.left + self.step * np.arange(len(self._lows))
        boxes = shapely.box(starts, low - 1, starts + self.step, high + 1)
        parts, column = shapely.get_parts(shapely.intersection(boxes, outside), return_index=True)
        walls = shapely.bounds(parts)[:, [1, 3]]
        walls[walls[:, 0] <= low, 0], walls[walls[:, 1] >= high, 1] = -np.inf, np.inf
        # The first stretch of every column, then the second, and so on.
        turn = np.arange(len(column)) - np.searchsorted(column, column)
        for number in range(turn.max() + 1):
            lows, highs = np.full(len(starts), np.inf), np.full(len(starts), -np.inf)
            lows[column[turn == number]], highs[column[turn == number]] = walls[turn == number].T
            self._add(0, len(starts), lows, highs)


def _pushed(windows: tuple[Array, Array], span: Span, heights: Array, columns: Columns) -> Array:
    """(k,) how high a shape must be at least in each column, for what is in the way of these heights."""
    at = heights[:, None, None] + _SAME
    lows, highs = windows[0][columns], windows[1][columns]
    hit = (lows < at + span.highs - 2 * _SAME) & (highs > at + span.lows)
    pushed: Array = np.where(hit, highs - span.lows, -np.inf).max(axis=(1, 2))
    return pushed


def _lifted(heights: Array, rise: Rise | None) -> Array:
    """Heights brought up to the next whole repeat."""
    if rise is None:
        return heights
    repeat, shift = rise
    return np.ceil((heights + shift) / repeat - _SAME) * repeat - shift

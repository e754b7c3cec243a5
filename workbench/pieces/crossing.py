"""Where two lines cross."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from workbench.pieces.polyline import Array

Index = NDArray[np.intp]
Flags = NDArray[np.bool_]

_HAIR = 1e-6
"""mm by which bits may miss each other's box and still be tried (own choice)."""


class Crossing(NamedTuple):
    """A point two lines share, and how far along the bits of each it lies."""

    point: Array
    """(2,)"""
    first: float
    """Number of the bit of the first line, plus the part of it that is passed."""
    second: float


def first_crossing(one: Array, other: Array) -> Crossing | None:
    """The first place along the line ``one`` (n, 2) where it crosses the other; None where there is none."""
    return first_crossings([(one, other)])[0]


def first_crossings(pairs: Sequence[tuple[Array, Array]]) -> list[Crossing | None]:
    """The same for many pairs of lines at once."""
    one, other = _Bits([pair[0] for pair in pairs]), _Bits([pair[1] for pair in pairs])
    # most bits of two lines are nowhere near each other, and to try them all is what takes long
    mine = one.within(*other.boxes(np.ones(len(other.low), bool)))
    theirs = other.within(*one.boxes(mine))
    mine &= one.within(*other.boxes(theirs))
    i, j = _each_with_each(one.owner[mine], other.owner[theirs])
    first, second = np.flatnonzero(mine)[i], np.flatnonzero(theirs)[j]
    step, across, apart = one.steps[first], other.steps[second], other.starts[second] - one.starts[first]
    base = _cross(step, across)
    with np.errstate(divide="ignore", invalid="ignore"):
        s, t = _cross(apart, across) / base, _cross(apart, step) / base
    found: list[Crossing | None] = [None] * len(pairs)
    hits = np.flatnonzero((s >= 0) & (s <= 1) & (t >= 0) & (t <= 1))
    # the first hit of a pair is written last, and so it stays
    for hit in hits[np.argsort(-(first + s)[hits], kind="stable")].tolist():
        bit, beyond = int(first[hit]), int(second[hit])
        point = one.starts[bit] + s[hit] * one.steps[bit]
        along = float(one.number[bit] + s[hit]), float(other.number[beyond] + t[hit])
        found[one.owner[bit]] = Crossing(point, *along)
    return found


class _Bits:
    """The straight bits of several lines, one line after the other."""

    def __init__(self, lines: Sequence[Array]) -> None:
        counts = np.fromiter(map(len, lines), np.intp, len(lines))
        points = np.concatenate(lines)
        bits = np.ones(len(points), bool)
        bits[np.cumsum(counts) - 1] = False
        place = np.flatnonzero(bits)
        self.owner: Index = np.repeat(np.arange(len(lines)), counts - 1)
        self.firsts: Index = np.cumsum(counts - 1) - (counts - 1)
        self.number: Index = np.arange(len(place)) - self.firsts[self.owner]
        """Of each bit in its own line."""
        self.starts: Array = points[place]
        ends = points[place + 1]
        self.steps: Array = ends - self.starts
        self.low, self.high = np.minimum(self.starts, ends), np.maximum(self.starts, ends)

    def boxes(self, bits: Flags) -> tuple[Array, Array]:
        """Low and high corner (lines, 2) of a box round those bits of each line."""
        low = np.minimum.reduceat(np.where(bits[:, None], self.low, np.inf), self.firsts)
        return low, np.maximum.reduceat(np.where(bits[:, None], self.high, -np.inf), self.firsts)

    def within(self, low: Array, high: Array) -> Flags:
        """Which bits reach into the box of their line."""
        reach = (self.low <= high[self.owner] + _HAIR) & (self.high >= low[self.owner] - _HAIR)
        found: Flags = reach[:, 0] & reach[:, 1]
        return found


def _each_with_each(ours: Index, theirs: Index) -> tuple[Index, Index]:
    """Places in two rising lists of owners, every one of ours with every one of theirs of its owner."""
    first = theirs.searchsorted(ours)
    counts = theirs.searchsorted(ours, side="right") - first
    one = np.repeat(np.arange(len(ours)), counts)
    begins = np.cumsum(counts) - counts
    return one, np.arange(len(one)) - np.repeat(begins - first, counts)


def without_loops(line: Array) -> Array:
    """The line (n, 2) without what it runs round to come back to where it has been."""
    import shapely  # hardly any line has a loop, and a window that opens shall not wait for it

    place = 0 if not shapely.is_simple(shapely.linestrings(line)) else len(line)
    while place < len(line) - 3:
        back = first_crossing(line[place : place + 2], line[:place:-1][:-1])
        if back is None:
            place += 1
            continue
        after = len(line) - 1 - int(back.second)
        line = np.concatenate((line[: place + 1], back.point[None], line[after:]))
        place += 1
    return line


def _cross(a: Array, b: Array) -> Array:
    product: Array = a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0]
    return product


def ray_reach(ring: Array, foot: Array, out: Array) -> float | None:
    """How far from ``foot`` (2,) along the unit vector ``out`` a closed ring (n, 2) is met first, mm."""
    step = np.roll(ring, -1, axis=0) - ring
    apart = ring - foot
    base = _cross(out, step)
    # a step along the ray, or a hair from it, meets it nowhere or beyond all numbers
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        reach, part = _cross(apart, step) / base, _cross(apart, out) / base
    hit = (part >= 0) & (part <= 1) & (reach > 1e-6)
    return float(reach[hit].min()) if hit.any() else None

"""Where two lines cross."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from workbench.pieces.result import Array

Bits = NDArray[np.intp]

_HAIR = 1e-6
"""mm by which bits may miss each other's box and still be tried."""


class Crossing(NamedTuple):
    """A point two lines share, and how far along the bits of each it lies."""

    point: Array
    """(2,)"""
    first: float
    """Number of the bit of the first line, plus the part of it that is passed."""
    second: float


def first_crossing(one: Array, other: Array) -> Crossing | None:
    """The first place along the line ``one`` (n, 2) where it crosses the other; None where there is none."""
    # most bits of two lines are nowhere near each other, and to try them all is what takes long
    mine = _bits_in(one, np.arange(len(one) - 1), other)
    theirs = _bits_in(other, np.arange(len(other) - 1), _ends_of(one, mine))
    mine = _bits_in(one, mine, _ends_of(other, theirs))
    start, begin = one[mine], other[theirs]
    step, across = (one[mine + 1] - start)[:, None], (other[theirs + 1] - begin)[None]
    apart = begin[None] - start[:, None]
    base = _cross(step, across)
    with np.errstate(divide="ignore", invalid="ignore"):
        s, t = _cross(apart, across) / base, _cross(apart, step) / base
    hit = (s >= 0) & (s <= 1) & (t >= 0) & (t <= 1)
    if not hit.any():
        return None
    i, j = min(np.argwhere(hit).tolist(), key=lambda ij: mine[ij[0]] + s[ij[0], ij[1]])
    point = start[i] + s[i, j] * step[i, 0]
    return Crossing(point, int(mine[i]) + float(s[i, j]), int(theirs[j]) + float(t[i, j]))


def _bits_in(line: Array, bits: Bits, points: Array) -> Bits:
    """Those of some bits of a line that reach into the box round the points (n, 2), in their order."""
    if not len(bits) or not len(points):
        return bits[:0]
    low, high = points.min(axis=0) - _HAIR, points.max(axis=0) + _HAIR
    start, end = line[bits], line[bits + 1]
    reach: Bits = bits[((np.minimum(start, end) <= high) & (np.maximum(start, end) >= low)).all(axis=1)]
    return reach


def _ends_of(line: Array, bits: Bits) -> Array:
    """Both ends of some bits of a line."""
    return np.concatenate((line[bits], line[bits + 1]))


def without_loops(line: Array) -> Array:
    """The line (n, 2) without what it runs round to come back to where it has been."""
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
    with np.errstate(divide="ignore", invalid="ignore"):
        reach, part = _cross(apart, step) / base, _cross(apart, out) / base
    hit = (part >= 0) & (part <= 1) & (reach > 1e-6)
    return float(reach[hit].min()) if hit.any() else None

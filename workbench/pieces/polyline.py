"""A line as points: its length, a stretch of it, how tightly it curves."""

from __future__ import annotations

from math import inf

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

SPAN_MM = 25.4
"""Curves are judged over an inch: a bone bridges what is shorter."""
_STRAIGHT = 1e-4
"""Radians over the span that are no curve: a radius of a quarter of a kilometre."""
_PROBES = 97
"""Places along a line at which the span is begun: every few millimetres."""


def length_of(line: Array) -> float:
    """Length in mm of a line (n, 2)."""
    return float(_steps(line).sum())


def part_of(line: Array, start: float, end: float) -> Array:
    """(m, 2): the stretch of a line between two distances in mm from its first point, with both ends."""
    along = np.concatenate(([0.0], np.cumsum(_steps(line))))
    inside = (along > start) & (along < end)
    ends = np.array([start, end])
    x, y = (np.interp(ends, along, axis) for axis in line.T)
    stretch: Array = np.concatenate(([[x[0], y[0]]], line[inside], [[x[1], y[1]]]))
    return stretch


def tightest_radius(line: Array) -> float:
    """Least radius in mm over any inch of an upward line; ``inf`` where it is straight."""
    steps = _steps(line)
    middles = np.cumsum(steps) - 0.5 * steps
    span = min(SPAN_MM, float(middles[-1] - middles[0]))
    starts = np.linspace(middles[0], middles[-1] - span, _PROBES)
    headings = _headings(line)
    turned = np.interp(starts + span, middles, headings) - np.interp(starts, middles, headings)
    most = float(np.abs(turned).max())
    return span / most if most > _STRAIGHT else inf


def _steps(line: Array) -> Array:
    """(n - 1,) distances from point to point."""
    dx, dy = (line[1:] - line[:-1]).T
    steps: Array = np.hypot(dx, dy)
    return steps


def _headings(line: Array) -> Array:
    """(n - 1,) radians away from straight up."""
    dx, dy = (line[1:] - line[:-1]).T
    headings: Array = np.arctan2(dx, dy)
    return headings

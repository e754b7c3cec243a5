"""A smooth line through marks, as a hand draws it along a curve, and how far it lies from another."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

_PER_SPAN = 12
"""Points drawn from one mark to the next (own choice)."""


def smooth_through(points: Array) -> Array:
    """(m, 2) of a smooth line through points (n, 2): straight through two, else cubics from each to the next.

    The slope at a point is that of the parabola through it and its two neighbours, with the straight
    distances between the points as the parameter (three-point rule, textbook).
    """
    if len(points) < 3:
        return points.copy()
    steps = np.maximum(np.hypot(*np.diff(points, axis=0).T), 1e-9)[:, None]
    slopes = _slopes(np.diff(points, axis=0) / steps, steps)
    v = (np.arange(_PER_SPAN) / _PER_SPAN)[None, :, None]
    start, end, span = points[:-1, None], points[1:, None], steps[:, None]
    first, second = slopes[:-1, None] * span, slopes[1:, None] * span
    rise = end - start
    drawn = start + v * (first + v * (3 * rise - 2 * first - second + v * (first + second - 2 * rise)))
    return np.concatenate((drawn.reshape(-1, 2), points[-1:]))


def _slopes(chords: Array, steps: Array) -> Array:
    slopes = np.empty((len(chords) + 1, 2))
    before, after = steps[:-1], steps[1:]
    slopes[1:-1] = (after * chords[:-1] + before * chords[1:]) / (before + after)
    slopes[0] = 2 * chords[0] - slopes[1]
    slopes[-1] = 2 * chords[-1] - slopes[-2]
    return slopes


def distances(points: Array, line: Array) -> Array:
    """(n,) mm from each point (n, 2) to the nearest place of a polyline (m, 2)."""
    start, run = line[:-1], np.diff(line, axis=0)
    length = np.maximum((run * run).sum(axis=1), 1e-18)
    away = points[:, None] - start
    share = np.clip((away * run).sum(axis=2) / length, 0.0, 1.0)
    near = away - share[..., None] * run
    nearest: Array = np.sqrt((near * near).sum(axis=2).min(axis=1))
    return nearest


def apart(one: Array, other: Array) -> float:
    """The largest distance, mm, of either line from the other."""
    return float(max(distances(one, other).max(), distances(other, one).max()))


def along(line: Array) -> Array:
    """(n,) length in mm from the first point of a polyline to each of its points."""
    lengths = np.zeros(len(line))
    np.cumsum(np.hypot(*np.diff(line, axis=0).T), out=lengths[1:])
    return lengths

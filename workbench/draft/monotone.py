"""Slopes of the monotone piecewise cubic through given points: no overshoot between them.

Interior slopes are the weighted harmonic mean of the neighbouring chords, end slopes the
three-point rule, as published by Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5, 1984;
from memory). Written here because importing a library for it costs more than a redraft.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]


def monotone_slopes(x: Array, y: Array) -> Array:
    """Slopes (..., k) at the abscissae ``x`` (k,), strictly rising, for each row of ``y`` (..., k); k >= 2."""
    steps = np.diff(x)
    chords = np.diff(y, axis=-1) / steps
    if len(x) == 2:
        return np.concatenate((chords, chords), axis=-1)
    slopes = np.empty_like(y)
    slopes[..., 1:-1] = _inner(steps, chords)
    slopes[..., 0] = _end(steps[0], steps[1], chords[..., 0], chords[..., 1])
    slopes[..., -1] = _end(steps[-1], steps[-2], chords[..., -1], chords[..., -2])
    return slopes


def _inner(steps: Array, chords: Array) -> Array:
    """Weighted harmonic mean where the chords agree in sign, else level."""
    before, after = chords[..., :-1], chords[..., 1:]
    near, far = 2 * steps[1:] + steps[:-1], steps[1:] + 2 * steps[:-1]
    same = before * after > 0
    spread = near * after + far * before
    return np.where(same, (near + far) * before * after / np.where(same, spread, 1.0), 0.0)


def _end(step: float, next_step: float, chord: Array, next_chord: Array) -> Array:
    """Three-point end slope, held to the sign of its chord and to three times its size."""
    slope = ((2 * step + next_step) * chord - step * next_chord) / (step + next_step)
    slope = np.where(slope * chord <= 0, 0.0, slope)
    too_steep = (chord * next_chord < 0) & (np.abs(slope) > 3 * np.abs(chord))
    return np.where(too_steep, 3 * chord, slope)


def cubic_at(x: Array, y: Array, slopes: Array, at: Array) -> tuple[Array, Array]:
    """Value and slope at ``at`` (m,) of the piecewise cubic with one row of ``y`` and ``slopes`` (k,)."""
    piece = np.clip(np.searchsorted(x, at, side="right") - 1, 0, len(x) - 2)
    step = x[piece + 1] - x[piece]
    return hermite((at - x[piece]) / step, step, y[piece], slopes[piece], y[piece + 1], slopes[piece + 1])


def hermite(
    v: Array, step: Array, start: Array, start_slope: Array, end: Array, end_slope: Array
) -> tuple[Array, Array]:
    """Value and slope of one cubic at ``v`` in 0..1 of a step; slopes are per unit of the step."""
    rise = end - start
    quad = 3 * rise - step * (2 * start_slope + end_slope)
    cube = step * (start_slope + end_slope) - 2 * rise
    value = start + v * (step * start_slope + v * (quad + v * cube))
    slope = start_slope + v * (2 * quad + 3 * v * cube) / step
    return value, slope

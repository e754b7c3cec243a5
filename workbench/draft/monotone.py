"""Slopes of the monotone piecewise cubic through given points: no overshoot between them.

Interior slopes are the weighted harmonic mean of the neighbouring chords, end slopes the
three-point rule, as published by Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5, 1984;
from memory). Written here because importing a library for it costs more than a redraft.
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]


class Spacing:
    """The abscissae (k,) that a family of curves shares, k >= 3, and what their slopes need of them."""

    __slots__ = ("_far", "_near", "_own", "_whole", "_yonder", "steps", "x")

    def __init__(self, x: Array) -> None:
        self.x = x
        self.steps = x[1:] - x[:-1]
        before, after = self.steps[:-1], self.steps[1:]
        self._near, self._far = 2 * after + before, after + 2 * before
        self._whole = self._near + self._far
        end, inward = self.steps[[0, -1]], self.steps[[1, -2]]
        self._yonder = end / (end + inward)
        self._own = 1 + self._yonder

    def chords(self, y: Array) -> Array:
        """Slopes (e, k - 1) from point to point of each row of ``y`` (e, k)."""
        chords: Array = (y[:, 1:] - y[:, :-1]) / self.steps
        return chords

    def slopes(self, chords: Array) -> Array:
        """Slopes (e, k) of the monotone cubics at the points."""
        slopes = np.zeros((len(chords), len(self.x)))
        before, after = chords[:, :-1], chords[:, 1:]
        product = before * after
        spread = self._near * after + self._far * before
        np.divide(self._whole * product, spread, out=slopes[:, 1:-1], where=product > 0)
        slopes[:, :: len(self.steps)] = self._ends(chords[:, [0, -1]], chords[:, [1, -2]])
        return slopes

    def _ends(self, chord: Array, inward: Array) -> Array:
        """Three-point end slopes, held to the sign of their chord and to three times its size."""
        slope = self._own * chord - self._yonder * inward
        most = 3 * np.abs(chord)
        slope = np.where(chord * inward < 0, np.clip(slope, -most, most), slope)
        return np.where(slope * chord > 0, slope, 0.0)


def slopes_of_few(x: list[float], y: list[float]) -> list[float]:
    """The same slopes for one short list of points; x strictly rising, at least two."""
    steps = [b - a for a, b in pairwise(x)]
    chords = [(b - a) / step for (a, b), step in zip(pairwise(y), steps, strict=True)]
    if len(chords) == 1:
        return chords * 2
    inner = list(map(_inner, steps, steps[1:], chords, chords[1:]))
    first = _end(steps[0], steps[1], chords[0], chords[1])
    return [first, *inner, _end(steps[-1], steps[-2], chords[-1], chords[-2])]


def _inner(step: float, next_step: float, chord: float, next_chord: float) -> float:
    if chord * next_chord <= 0:
        return 0.0
    near, far = 2 * next_step + step, next_step + 2 * step
    return (near + far) / (near / chord + far / next_chord)


def _end(step: float, next_step: float, chord: float, next_chord: float) -> float:
    slope = ((2 * step + next_step) * chord - step * next_chord) / (step + next_step)
    if slope * chord <= 0:
        return 0.0
    if chord * next_chord < 0 and abs(slope) > 3 * abs(chord):
        return 3 * chord
    return slope


def hermite(v: Array, step: Array, start: Array, start_slope: Array, end: Array, end_slope: Array) -> Array:
    """Value of one cubic at ``v`` in 0..1 of a step; slopes are per unit of the step."""
    rise = end - start
    quad = 3 * rise - step * (2 * start_slope + end_slope)
    cube = step * (start_slope + end_slope) - 2 * rise
    return start + v * (step * start_slope + v * (quad + v * cube))


def hermite_of_few(
    v: float, step: float, start: float, start_slope: float, end: float, end_slope: float
) -> tuple[float, float]:
    """Value and slope of the same cubic, for plain numbers."""
    rise = end - start
    quad = 3 * rise - step * (2 * start_slope + end_slope)
    cube = step * (start_slope + end_slope) - 2 * rise
    value = start + v * (step * start_slope + v * (quad + v * cube))
    return value, start_slope + v * (2 * quad + 3 * v * cube) / step

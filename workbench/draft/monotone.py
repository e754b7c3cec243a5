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

    __slots__ = ("_far", "_near", "_own", "_yonder", "from_waist", "halves", "steps", "x")

    def __init__(self, x: Array) -> None:
        self.x = x
        self.steps = x[1:] - x[:-1]
        self.halves = 0.5 * self.steps
        self.from_waist = _from_zero(x)
        before, after = self.steps[:-1], self.steps[1:]
        whole = 3 * (before + after)
        self._near, self._far = (2 * after + before) / whole, (after + 2 * before) / whole
        end, inward = self.steps.take(_OUTER), self.steps.take(_NEXT)
        self._yonder = end / (end + inward)
        self._own = 1 + self._yonder

    def chords(self, y: Array) -> Array:
        """Slopes (e, k - 1) from point to point of each row of ``y`` (e, k)."""
        chords: Array = y[:, 1:] - y[:, :-1]
        chords /= self.steps
        return chords

    def slopes(self, chords: Array) -> Array:
        """Slopes (e, k) of the monotone cubics at the points."""
        slopes = np.zeros((len(chords), len(self.x)))
        before, after = chords[:, :-1], chords[:, 1:]
        product = before * after
        spread = self._near * after
        spread += self._far * before
        np.divide(product, spread, out=slopes[:, 1:-1], where=product > 0)
        slopes[:, :: len(self.steps)] = self._ends(chords.take(_OUTER, axis=1), chords.take(_NEXT, axis=1))
        return slopes

    def _ends(self, chord: Array, inward: Array) -> Array:
        """Three-point end slopes, held between nothing and three times their chord.

        Where the two chords agree in sign the rule itself stays below twice the chord.
        """
        slope = self._own * chord
        slope -= self._yonder * inward
        most = 3 * chord
        held: Array = np.maximum(slope, np.minimum(most, 0.0))
        return np.minimum(held, np.maximum(most, 0.0), out=held)


_OUTER, _NEXT = np.array([0, -1]), np.array([1, -2])
"""The first and last of some steps or chords, and those next to them."""


def _from_zero(x: Array) -> Array:
    """(k - 1, k): rises from point to point to heights at the points, nothing where x is 0."""
    zero = int(np.abs(x).argmin())
    point, step = np.arange(len(x)), np.arange(len(x) - 1)[:, None]
    return np.where(step < zero, -1.0 * (point <= step), 1.0 * (point > step))


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


def hermite_weights(v: Array) -> tuple[Array, Array, Array, Array]:
    """What a cubic at ``v`` in 0..1 takes of its start, its end, and its slopes at start and end.

    The slopes are those per whole step, not per unit of length.
    """
    square, r = v * v, 1 - v
    near = square * (3 - 2 * v)
    return 1 - near, near, v * r * r, -square * r


def cubic_of_few(
    step: float, start: float, start_slope: float, end: float, end_slope: float
) -> tuple[float, float, float, float]:
    """Ascending coefficients, in the length from its start, of one cubic given by plain numbers."""
    chord = (end - start) / step
    quad = (3 * chord - 2 * start_slope - end_slope) / step
    cube = (start_slope + end_slope - 2 * chord) / (step * step)
    return start, start_slope, quad, cube

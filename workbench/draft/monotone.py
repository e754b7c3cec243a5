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

    __slots__ = ("_weights", "from_waist", "halves", "steps", "x")

    def __init__(self, x: Array) -> None:
        self.x = x
        self.steps = x[1:] - x[:-1]
        self.halves = 0.5 * self.steps
        self.from_waist = _from_zero(x.tolist())
        self._weights = _slope_weights(self.steps.tolist())

    def chords(self, y: Array) -> Array:
        """Slopes (e, k - 1) from point to point of each row of ``y`` (e, k)."""
        chords: Array = y[:, 1:] - y[:, :-1]
        chords /= self.steps
        return chords

    def slopes(self, chords: Array) -> Array:
        """Slopes (e, k) of the monotone cubics at the points."""
        last = len(self.steps)
        slopes = np.zeros((len(chords), last + 1))
        weighed = chords @ self._weights
        product = chords[:, :-1] * chords[:, 1:]
        np.divide(product, weighed[:, 1:-1], out=slopes[:, 1:-1], where=product > 0)
        # an end slope is held between nothing and three times its chord; where the two chords
        # there agree in sign the rule itself stays below twice the chord
        most = 3 * chords[:, :: last - 1]
        held = np.maximum(weighed[:, ::last], np.minimum(most, 0.0))
        np.minimum(held, np.maximum(most, 0.0), out=slopes[:, ::last])
        return slopes


def _slope_weights(steps: list[float]) -> Array:
    """(k - 1, k): chords to what the slopes are made of.

    At the ends that is the three-point slope, between them what the product of two chords
    is divided by to give their weighted harmonic mean.
    """
    weights = [[0.0] * (len(steps) + 1) for _ in steps]
    for i, (before, after) in enumerate(pairwise(steps)):
        whole = 3 * (before + after)
        weights[i][i + 1], weights[i + 1][i + 1] = (after + 2 * before) / whole, (2 * after + before) / whole
    for end, inward in ((0, 1), (-1, -2)):
        yonder = steps[end] / (steps[end] + steps[inward])
        weights[end][end], weights[inward][end] = 1 + yonder, -yonder
    return np.array(weights)


def _from_zero(x: list[float]) -> Array:
    """(k - 1, k): rises from point to point to heights at the points, nothing where x is nearest to 0."""
    zero = min(range(len(x)), key=lambda point: abs(x[point]))
    return np.array(
        [
            [float(step < point) if step >= zero else -float(point <= step) for point in range(len(x))]
            for step in range(len(x) - 1)
        ]
    )


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

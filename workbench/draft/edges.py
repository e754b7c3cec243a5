"""Panel edges in walk coordinates.

An edge is x(t), a monotone cubic through its level points, with the walk t as its arc
length: y(t) is the integral of sqrt(1 - x'^2). All edges of a bodice share their levels
and are handled together, one row each.

On every piece between two levels the integrand is interpolated at Chebyshev points and
integrated exactly, so y is a polynomial too and can be asked for at any walk.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.draft.monotone import Array, Spacing

Index = NDArray[np.intp]

REACH = 1500.0
"""How far an edge runs on straight beyond its outermost levels, mm: further than any body."""
STEEPEST = 0.9
"""Largest run per walk an edge is drawn with. At 1 it would lie across the body; already at 0.95 three
rounds no longer hold the girth to a millimetre."""

_NODES = 9
_LEAN = 4 + _NODES + 1
"""Where the coefficients of dx/dt begin."""


def _integration_matrix() -> Array:
    """(nodes, nodes + 1): values at the points to ascending coefficients of the integral from -1."""
    matrix = np.zeros((_NODES, _NODES + 1))
    points = _chebyshev_points()
    for row, unit in enumerate(np.eye(_NODES)):
        series = np.polynomial.chebyshev.Chebyshev.fit(points, unit, _NODES - 1, domain=[-1, 1])
        matrix[row] = series.integ(lbnd=-1).convert(kind=np.polynomial.Polynomial).coef
    return matrix


def _chebyshev_points() -> Array:
    return np.cos(np.pi * (np.arange(_NODES) + 0.5) / _NODES)


def _slope_weights() -> tuple[Array, Array, Array]:
    """What the chord and the slopes at start and end of a piece give to dx/dt at the points."""
    s = 0.5 * (_chebyshev_points() + 1)
    return 6 * s * (1 - s), (1 - s) * (1 - 3 * s), s * (3 * s - 2)


_SLOPE_WEIGHTS = _slope_weights()
_INTEGRATE = _integration_matrix()
_WHOLE = _INTEGRATE.sum(axis=1)
"""Weights of the integral over a whole piece: the polynomial at +1."""
_ONE_TWO_THREE = np.array([1.0, 2.0, 3.0])


@dataclass(frozen=True)
class Edges:
    """Edges (e of them) through their levels (k), ready to be asked for any point."""

    walks: Array
    """(k + 2,) the levels, with one far knot at either end."""
    coefficients: Array
    """(4 + nodes + 1 + 3, e * (k + 1)): x, y, dx/dt of every piece, ascending powers of the place -1..1."""
    steepest: Array
    """(e, k - 1): largest run per walk, absolute, between two levels."""
    at_levels: tuple[Array, Array, Array]
    """x, y and dx/dt (e, k) at the levels."""

    def xy(self, edge: Index, t: Array) -> tuple[Array, Array]:
        """x and y in mm of edge number ``edge`` at walk ``t``; of one shape, or broadcast together."""
        rows, place = self._rows(edge, t)
        return _polynomial(rows[:4], place), _polynomial(rows[4:_LEAN], place)

    def at(self, edge: Index, t: Array) -> tuple[Array, Array, Array]:
        """x, y and dx/dt, likewise."""
        rows, place = self._rows(edge, t)
        return (
            _polynomial(rows[:4], place),
            _polynomial(rows[4:_LEAN], place),
            _polynomial(rows[_LEAN:], place),
        )

    def _rows(self, edge: Index, t: Array) -> tuple[Array, Array]:
        """The coefficients of the pieces asked for, first axis, and the places in them."""
        piece = np.searchsorted(self.walks[1:-1], t, side="right")
        start, end = self.walks[piece], self.walks[piece + 1]
        rows = self.coefficients.take(edge * (len(self.walks) - 1) + piece, axis=1)
        return rows, (2 * t - start - end) / (end - start)


def _polynomial(coefficients: Array, place: Array) -> Array:
    """Horner's rule, ascending coefficients first axis."""
    total: Array = coefficients[-1] * place
    total += coefficients[-2]
    for power in coefficients[-3::-1]:
        total *= place
        total += power
    return total


def edges_through(levels: Spacing, x: Array) -> Edges:
    """Edges for level walks (k,) rising, one of them 0, and x (e, k), in mm."""
    inner = levels.slopes(levels.chords(x))
    low, high = inner[:, :1], inner[:, -1:]
    ends = np.concatenate((x[:, :1] - REACH * low, x, x[:, -1:] + REACH * high), axis=1)
    slopes = np.concatenate((low, inner, high), axis=1)
    half = 0.5 * np.concatenate(([REACH], levels.steps, [REACH]))
    leans = _leans_at_points(0.5 * (ends[:, 1:] - ends[:, :-1]) / half, slopes)
    arc = half[:, None] * (_upright(leans) @ _INTEGRATE)
    rises = arc.sum(axis=-1)
    heights = _from_waist(levels, rises[:, 1:-1])
    arc[:, 1:, 0] += heights
    arc[:, 0, 0] += heights[:, 0] - rises[:, 0]
    cubic = _cubic_coefficients(half, ends, slopes)
    lean = cubic[..., 1:] * (_ONE_TWO_THREE / half[:, None])
    table = np.concatenate((cubic, arc, lean), axis=-1).reshape(-1, _LEAN + 3).T
    return Edges(
        np.concatenate(([levels.x[0] - REACH], levels.x, [levels.x[-1] + REACH])),
        np.ascontiguousarray(table),
        np.abs(leans[:, 1:-1]).max(axis=-1),
        (x, heights, inner),
    )


def heights_at_levels(levels: Spacing, x: Array) -> Array:
    """y (e, k) in mm at the levels alone: what the girth correction asks for at every round."""
    chords = levels.chords(x)
    leans = _leans_at_points(chords, levels.slopes(chords))
    return _from_waist(levels, 0.5 * levels.steps * (_upright(leans) @ _WHOLE))


def _from_waist(levels: Spacing, rises: Array) -> Array:
    """y (e, k) at the levels, 0 at the waist, from the rise of each piece (e, k - 1) between them."""
    heights = np.zeros((len(rises), len(levels.x)))
    np.cumsum(rises, axis=1, out=heights[:, 1:])
    waist = int(np.abs(levels.x).argmin())
    return heights - heights[:, waist : waist + 1]


def _cubic_coefficients(half: Array, x: Array, slopes: Array) -> Array:
    """(e, pieces, 4) of the Hermite cubics, in the place -1..1."""
    start, end = x[:, :-1], x[:, 1:]
    rise_in, rise_out = half * slopes[:, :-1], half * slopes[:, 1:]
    reach, bend, twist = end - start, 0.25 * (rise_out - rise_in), 0.25 * (rise_in + rise_out)
    return np.stack((0.5 * (start + end) - bend, 0.75 * reach - twist, bend, twist - 0.25 * reach), axis=-1)


def _leans_at_points(chords: Array, slopes: Array) -> Array:
    """(e, pieces, nodes) of dx/dt at the Chebyshev points, from chord and end slopes of each piece."""
    by_chord, by_start, by_end = _SLOPE_WEIGHTS
    leans: Array = chords[..., None] * by_chord
    leans += slopes[:, :-1, None] * by_start
    leans += slopes[:, 1:, None] * by_end
    return leans


def _upright(slopes: Array) -> Array:
    """dy/dt; a slope past the steepest is held there, and refused elsewhere by name."""
    upright: Array = np.sqrt(1 - np.minimum(slopes * slopes, STEEPEST * STEEPEST))
    return upright

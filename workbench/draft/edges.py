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

from workbench.draft.monotone import Array, monotone_slopes

Index = NDArray[np.intp]

REACH = 1500.0
"""How far an edge runs on straight beyond its outermost levels, mm: further than any body."""
STEEPEST = 0.98
"""Largest run per walk an edge can be drawn with; at 1 it would lie across the body."""

_NODES = 12


def _integration_matrix() -> Array:
    """(nodes, nodes + 1): values at the Chebyshev points to ascending coefficients of the integral from -1."""
    matrix = np.zeros((_NODES, _NODES + 1))
    points = _chebyshev_points()
    for row, unit in enumerate(np.eye(_NODES)):
        series = np.polynomial.chebyshev.Chebyshev.fit(points, unit, _NODES - 1, domain=[-1, 1])
        matrix[row] = series.integ(lbnd=-1).convert(kind=np.polynomial.Polynomial).coef
    return matrix


def _chebyshev_points() -> Array:
    return np.cos(np.pi * (np.arange(_NODES) + 0.5) / _NODES)


_POINTS = _chebyshev_points()
_INTEGRATE = _integration_matrix()
_WHOLE = _INTEGRATE.sum(axis=1)
"""Weights of the integral over a whole piece: the polynomial at +1."""


@dataclass(frozen=True)
class Edges:
    """Edges (e of them) through their levels (k), ready to be asked for any point."""

    walks: Array
    """(k + 2,) the levels, with one far knot at either end."""
    x_coefficients: Array
    """(4, e, k + 1), ascending powers of the place -1..1 in the piece."""
    y_coefficients: Array
    """(nodes + 1, e, k + 1), likewise."""

    def at(self, edge: Index, t: Array) -> tuple[Array, Array]:
        """x and y in mm of edge number ``edge`` at walk ``t``; both of one shape, or broadcast together."""
        piece, place = self._place(t)
        row = edge * (len(self.walks) - 1) + piece
        x = _polynomial(self.x_coefficients, row, place)
        y = _polynomial(self.y_coefficients, row, place)
        return x, y

    def slope(self, edge: Index, t: Array) -> Array:
        """Run per walk, dx/dt, of edge number ``edge`` at walk ``t``."""
        piece, place = self._place(t)
        row = edge * (len(self.walks) - 1) + piece
        one, two, three = (np.take(c, row) for c in self.x_coefficients[1:])
        return (one + place * (2 * two + 3 * place * three)) / (0.5 * np.diff(self.walks)[piece])

    def _place(self, t: Array) -> tuple[Index, Array]:
        piece = np.searchsorted(self.walks[1:-1], t, side="right")
        start, end = self.walks[piece], self.walks[piece + 1]
        return piece, (2 * t - start - end) / (end - start)


def _polynomial(coefficients: Array, row: Index, place: Array) -> Array:
    """Horner's rule; the rows are gathered power by power, which keeps every array small."""
    total = np.take(coefficients[-1], row)
    for power in coefficients[-2::-1]:
        total = total * place + np.take(power, row)
    return total


def edges_through(walks: Array, x: Array) -> Edges:
    """Edges for level walks (k,) rising, one of them 0, and x (e, k), in mm."""
    knots, ends, slopes = _with_far_knots(walks, x)
    half = 0.5 * np.diff(knots)
    x_coefficients = _cubic_coefficients(half, ends, slopes)
    arc = half[:, None] * _upright(_slopes_at_points(x_coefficients, half)) @ _INTEGRATE
    arc[..., 0] += _heights(walks, arc.sum(axis=-1))
    return Edges(knots, x_coefficients, np.ascontiguousarray(np.moveaxis(arc, -1, 0)))


def heights_at_levels(walks: Array, x: Array) -> Array:
    """y (e, k) in mm at the levels alone: what the girth correction asks for at every round."""
    half = 0.5 * np.diff(walks)
    coefficients = _cubic_coefficients(half, x, monotone_slopes(walks, x))
    pieces = half * (_upright(_slopes_at_points(coefficients, half)) @ _WHOLE)
    heights = np.zeros_like(x)
    np.cumsum(pieces, axis=1, out=heights[:, 1:])
    return heights - heights[:, [_waist(walks)]]


def _waist(walks: Array) -> int:
    return int(np.argmin(np.abs(walks)))


def _with_far_knots(walks: Array, x: Array) -> tuple[Array, Array, Array]:
    """Knots, values and slopes with a straight piece added at either end."""
    inner = monotone_slopes(walks, x)
    knots = np.concatenate(([walks[0] - REACH], walks, [walks[-1] + REACH]))
    low, high = inner[:, :1], inner[:, -1:]
    ends = np.concatenate((x[:, :1] - REACH * low, x, x[:, -1:] + REACH * high), axis=1)
    return knots, ends, np.concatenate((low, inner, high), axis=1)


def _cubic_coefficients(half: Array, x: Array, slopes: Array) -> Array:
    """(4, e, pieces) of the Hermite cubics, in the place -1..1."""
    start, end = x[:, :-1], x[:, 1:]
    rise_in, rise_out = half * slopes[:, :-1], half * slopes[:, 1:]
    middle, reach = 0.5 * (start + end), end - start
    bend, twist = rise_out - rise_in, rise_in + rise_out
    return np.stack(
        (middle - 0.25 * bend, 0.75 * reach - 0.25 * twist, 0.25 * bend, 0.25 * (twist - reach))
    )


def _slopes_at_points(coefficients: Array, half: Array) -> Array:
    """(e, pieces, nodes) of dx/dt at the Chebyshev points."""
    _, one, two, three = coefficients[..., None] / half[:, None]
    return one + _POINTS * (2 * two + 3 * _POINTS * three)


def _upright(slopes: Array) -> Array:
    """dy/dt; a slope past the steepest is held there, and refused elsewhere by name."""
    return np.sqrt(1 - np.minimum(slopes * slopes, STEEPEST * STEEPEST))


def _heights(walks: Array, pieces: Array) -> Array:
    """y at the lower end of each piece, with the waist at 0; ``pieces`` includes the far ones."""
    below = np.cumsum(pieces, axis=1) - pieces
    return below - below[:, [_waist(walks) + 1]]

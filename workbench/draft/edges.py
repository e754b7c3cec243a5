"""Panel edges in walk coordinates.

An edge is x(t), a monotone cubic through its level points, with the walk t as its arc
length: y(t) is the integral of sqrt(1 - x'^2). All edges of a bodice share their levels
and are handled together, one row each.

On every piece between two levels the integrand is interpolated at Chebyshev points and integrated
exactly, so y is a polynomial too and can be asked for at any walk. Figures are own choice, how
exactly an edge is drawn, unless said.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from workbench.draft.monotone import Array, Spacing
from workbench.frozen import dataclass

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
    powers = np.arange(_NODES)
    # numpy's own polynomials would say the same in more words, and take as long to read as all of the draft
    coefficients = np.linalg.inv(_chebyshev_points()[:, None] ** powers).T / (powers + 1)
    at_minus_one = coefficients @ (-1.0) ** (powers + 1)
    return np.column_stack((-at_minus_one, coefficients))


def _chebyshev_points() -> Array:
    return np.cos(np.pi * (np.arange(_NODES) + 0.5) / _NODES)


def _slope_weights() -> Array:
    """(nodes + 3, 3): what chord, start slope and end slope of a piece give to dx/dt.

    First to its values at the points, then to its ascending coefficients in the place -1..1.
    """
    s = 0.5 * (_chebyshev_points() + 1)
    values = np.stack((6 * s * (1 - s), (1 - s) * (1 - 3 * s), s * (3 * s - 2)), axis=1)
    return np.concatenate((values, [[1.5, -0.25, -0.25], [0.0, -0.5, 0.5], [-1.5, 0.75, 0.75]]))


_LEANS = _slope_weights()
_INTEGRATE = _integration_matrix()
_TO_COEFFICIENTS = np.ascontiguousarray(_INTEGRATE.T)
_WHOLE = _INTEGRATE.sum(axis=1)
"""Weights of the integral over a whole piece: the polynomial at +1."""
_OF_POWERS = np.array([1.0, 1 / 2, 1 / 3])[:, None, None]
"""From the coefficients of dx/dt to those of x, but for the length of the piece."""


@dataclass(frozen=True)
class Edges:
    """Edges (e of them) through their levels (k), ready to be asked for any point."""

    inner: Array
    """(k,) the walks of the levels."""
    middles: Array
    """(k + 1,) the middle of each piece; the outermost reach far beyond the levels."""
    halves: Array
    """(k + 1,) and half its length."""
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
        piece = self.inner.searchsorted(t, side="right")
        place = t - self.middles.take(piece)
        place /= self.halves.take(piece)
        return self.coefficients.take(edge * len(self.halves) + piece, axis=1), place


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
    slopes, inside = _pieces(levels, x)
    pieces = _straight_beyond(inside, slopes)
    knots = np.concatenate((levels.x[:1] - REACH, levels.x, levels.x[-1:] + REACH))
    half = 0.5 * (knots[1:] - knots[:-1])
    leans = (_LEANS @ pieces.reshape(3, -1)).reshape(-1, *pieces.shape[1:])
    table = np.empty((_LEAN + 3, *pieces.shape[1:]))
    cubic, arc, lean = table[:4], table[4:_LEAN], table[_LEAN:]
    lean[:] = leans[_NODES:]
    np.multiply(lean, _OF_POWERS * half, out=cubic[1:])
    # in the middle of a piece x is the mean of its ends, less what the even power gives there
    np.subtract(_middles(x, slopes), cubic[2], out=cubic[0])
    upright = _upright(leans[:_NODES]).reshape(_NODES, -1)
    np.matmul(_TO_COEFFICIENTS, upright, out=arc.reshape(_NODES + 1, -1))
    arc *= half
    rises = np.add.reduce(arc)
    heights = rises[:, 1:-1] @ levels.from_waist
    arc[0, :, 1:] += heights
    arc[0, :, 0] += heights[:, 0] - rises[:, 0]
    return Edges(
        levels.x,
        knots[:-1] + half,
        half,
        table.reshape(_LEAN + 3, -1),
        np.abs(leans[:_NODES, :, 1:-1]).max(axis=0),
        (x, heights, slopes),
    )


def heights_at_levels(levels: Spacing, x: Array) -> Array:
    """y (e, k) in mm at the levels alone: what the girth correction asks for at every round."""
    _, pieces = _pieces(levels, x)
    upright = _upright(_LEANS[:_NODES] @ pieces.reshape(3, -1))
    rises = (_WHOLE @ upright).reshape(len(x), -1)
    rises *= levels.halves
    heights: Array = rises @ levels.from_waist
    return heights


def _pieces(levels: Spacing, x: Array) -> tuple[Array, Array]:
    """Slopes (e, k) at the levels; chord, slope at start and slope at end (3, e, k - 1) of every piece."""
    chords = levels.chords(x)
    slopes = levels.slopes(chords)
    pieces = np.empty((3, *chords.shape))
    pieces[0], pieces[1], pieces[2] = chords, slopes[:, :-1], slopes[:, 1:]
    return slopes, pieces


def _straight_beyond(pieces: Array, slopes: Array) -> Array:
    """The pieces with one more at either end, which runs on as the edge does at its outermost level."""
    count, edges, inside = pieces.shape
    more = np.empty((count, edges, inside + 2))
    more[..., 0], more[..., 1:-1], more[..., -1] = slopes[:, 0], pieces, slopes[:, -1]
    return more


def _middles(x: Array, slopes: Array) -> Array:
    """Halfway between the ends of every piece (e, k + 1), the straight ones beyond the levels among them."""
    middles = np.empty((len(x), x.shape[1] + 1))
    middles[:, 0] = x[:, 0] - 0.5 * REACH * slopes[:, 0]
    middles[:, 1:-1] = 0.5 * (x[:, :-1] + x[:, 1:])
    middles[:, -1] = x[:, -1] + 0.5 * REACH * slopes[:, -1]
    return middles


def _upright(slopes: Array) -> Array:
    """dy/dt; a slope past the steepest is held there, and refused elsewhere by name."""
    upright = slopes * slopes
    np.minimum(upright, STEEPEST * STEEPEST, out=upright)
    np.subtract(1.0, upright, out=upright)
    return np.sqrt(upright, out=upright)

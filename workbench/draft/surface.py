"""The half bodice as one surface: from a place on the body (u, t) to a point on the flat, and back.

``u`` runs from 0 at the centre front, by one a panel, to the centre back; ``t`` is the
walk from the waist. Lines of equal walk meet every seam square.
"""

from __future__ import annotations

from functools import cached_property

import numpy as np

from workbench.draft.edges import Edges, Index
from workbench.draft.monotone import Array, hermite_weights
from workbench.frozen import dataclass

_FOUND = 1e-7
"""mm: near enough to the point that was asked for (own choice)."""
_STARTS = (0.0, 8.0, -8.0, 16.0, -16.0, 30.0, -30.0)
"""mm up or down from the height of the point (own choice)."""


@dataclass(frozen=True)
class Surface:
    """Panels between their edges; edge 2j is the left one of panel j, edge 2j + 1 the right one."""

    edges: Edges
    panel_count: int

    def chords(self, t: Array) -> Array:
        """Width (panels, m) in mm of every panel at each of the walks ``t`` (m,)."""
        return _apart(*self.edges.xy(self._all_edges, t))

    def widths(self, panel: Index, t: Array) -> Array:
        """Width in mm of ``panel`` at walk ``t``; of one shape, or broadcast together."""
        return _apart(*self.edges.xy(_both_edges(panel), t))

    @cached_property
    def _all_edges(self) -> Index:
        """(2, panels, 1) numbers of all left and all right edges."""
        return _both_edges(np.arange(self.panel_count)[:, None])

    def shares(self, u: Array) -> Array:
        """(panels, m) how much of the width of each panel lies before each place ``u`` (m,)."""
        shares: Array = np.minimum(np.maximum(u - np.arange(self.panel_count)[:, None], 0.0), 1.0)
        return shares

    def runs(self, shares: Array, t: Array) -> Array:
        """Distance (m,) in mm from the centre front across the panels to each place, at walk ``t`` (m,).

        The places are given as :meth:`shares` gives them.
        """
        total: Array = np.add.reduce(shares * self.chords(t))
        return total

    def points(self, panel: Index, v: Array, t: Array) -> Array:
        """(..., 2) flat points of places across (0..1) and up ``panel``, all of one shape."""
        return across(hermite_weights(v), *self.edges.at(_both_edges(panel), t))

    def point(self, u: float, t: float) -> tuple[float, float, int]:
        """x, y in mm and the panel (the left one at a seam) of a place on the body."""
        panel = min(max(int(np.ceil(u)) - 1, 0), self.panel_count - 1)
        x, y = self.points(np.array([panel]), np.array([u - panel]), np.array([t]))[0]
        return float(x), float(y), panel

    def locate(self, panel: int, x: float, y: float) -> tuple[float, float]:
        """(u, t) of a flat point in or near a panel: the map above undone.

        Across, the answer is held to the panel; up, to the reach of its edges. Where a sharp
        flare crowds the level lines the search can stall, and is begun again beside that.
        """
        best = (np.inf, 0.5, y)
        for beside in _STARTS:
            best = min(best, self._searched(panel, x, y, y + beside))
            if best[0] < _FOUND:
                break
        return panel + min(max(best[1], 0.0), 1.0), best[2]

    def _searched(self, panel: int, x: float, y: float, t: float) -> tuple[float, float, float]:
        """Distance left, v and t, by Newton's method; half a step where a whole one leads away."""
        v, share = 0.5, 1.0
        best, step = (np.inf, v, t), (0.0, 0.0)
        for _ in range(40):
            here = self._with_tangents(panel, v, t)
            miss = np.array([x, y]) - here[:, 0]
            far = float(np.hypot(*miss))
            if far < best[0]:
                best, share = (far, v, t), 1.0
                across, up = np.linalg.solve(here[:, 1:], miss).tolist()
                step = (min(max(across, -0.5), 0.5), min(max(up, -100.0), 100.0))
            else:
                share *= 0.5
            if far < _FOUND or share < 1e-3:
                break
            v = min(max(best[1] + share * step[0], -0.5), 1.5)
            t = best[2] + share * step[1]
        return best

    def _with_tangents(self, panel: int, v: float, t: float) -> Array:
        """(2, 3): the point, and its change with v and with t, by central differences."""
        dv, dt = 1e-4, 1e-2
        vs = np.array([v, v + dv, v - dv, v, v])
        ts = np.array([t, t, t, t + dt, t - dt])
        p = self.points(np.full(5, panel), vs, ts)
        return np.stack((p[0], (p[1] - p[2]) / (2 * dv), (p[3] - p[4]) / (2 * dt)), axis=1)


def _both_edges(panel: Index) -> Index:
    """(2, ...) the left and the right edge of each panel."""
    left = 2 * panel
    return np.array((left, left + 1))


def _apart(x: Array, y: Array) -> Array:
    """Distance in mm from left to right, which lie along the first axis (2, ...)."""
    apart: Array = np.hypot(x[1] - x[0], y[1] - y[0])
    return apart


Weights = tuple[Array, Array, Array, Array]


def across(weights: Weights, x: Array, y: Array, lean: Array) -> Array:
    """(..., 2) of the cubic from a left to a right edge point, square to both edges.

    ``x``, ``y`` and ``lean``, which is dx/dt, hold left and right along their first axis
    (2, ...); ``weights`` are those of the places across. The end tangents are as long as
    the chord.
    """
    far, near, out, back = weights
    chord, up = _apart(x, y), np.sqrt(np.maximum(1 - lean * lean, 0.0))
    out, back = chord * out, chord * back
    points = np.empty((*out.shape, 2))
    np.add(far * x[0] + near * x[1], out * up[0] + back * up[1], out=points[..., 0])
    np.subtract(far * y[0] + near * y[1], out * lean[0] + back * lean[1], out=points[..., 1])
    return points

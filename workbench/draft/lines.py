"""Neckline and hem: one curve round the body, cut by the seams.

The curve is walk as a function of the run, the real distance across the panels. Every
seam is met at one walk with one rise per run, so that the edge runs on over a closed seam.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from workbench.draft.design import ShapePoint
from workbench.draft.edges import Index
from workbench.draft.monotone import Array, cubic_at, hermite, monotone_slopes
from workbench.draft.surface import Surface

SAMPLES = 25
"""Points of one piece of a line, from one node to the next."""

_ROUNDS = 12
_CLOSE = 1e-9


class LineError(ValueError):
    """A line that cannot be drawn; ``point`` is the shape point at fault."""

    def __init__(self, message: str, point: int | None = None) -> None:
        super().__init__(message)
        self.point = point


@dataclass(frozen=True)
class _Curve:
    """Pieces between corners, each a monotone cubic of its own."""

    runs: Array
    walks: Array
    slope_in: Array
    """Rise per run at each point as the line arrives; differs from ``slope_out`` at corners."""
    slope_out: Array

    def at(self, run: Array) -> tuple[Array, Array]:
        """Walk and rise per run; straight on beyond the ends."""
        piece = np.clip(np.searchsorted(self.runs, run, side="right") - 1, 0, len(self.runs) - 2)
        start, end = self.runs[piece], self.runs[piece + 1]
        step = end - start
        held = np.clip(run, self.runs[0], self.runs[-1])
        walk, rise = hermite(
            (held - start) / step,
            step,
            self.walks[piece],
            self.slope_out[piece],
            self.walks[piece + 1],
            self.slope_in[piece + 1],
        )
        return walk + (run - held) * rise, rise


@dataclass(frozen=True)
class Nodes:
    """Where a line has a node: at the centre lines, the seams and the shape points, front to back."""

    u: Array
    walks: Array
    slope_in: Array
    slope_out: Array

    def at_seams(self) -> Array:
        """Walks (panels + 1,) at the centre front, the seams and the centre back."""
        return self.walks[self.u == np.round(self.u)]

    def smooth_at_seams(self) -> Array:
        """Whether the line runs through each of them without a corner."""
        whole = self.u == np.round(self.u)
        return np.abs(self.slope_in - self.slope_out)[whole] < _CLOSE

    def sampled(self, surface: Surface) -> Sampled:
        """Every piece from node to node, as places across and up its panel."""
        start, end = self.u[:-1], self.u[1:]
        panel = np.minimum(start.astype(np.intp), surface.panel_count - 1)
        chords = surface.chords(self.walks)
        piece = np.arange(len(panel))
        share = np.linspace(0.0, 1.0, SAMPLES)
        v = (start - panel)[:, None] + (end - start)[:, None] * share
        # rise per run, times the run of a whole panel here, is rise per panel
        t, _ = hermite(
            share,
            (end - start)[:, None],
            self.walks[:-1, None],
            (self.slope_out[:-1] * chords[panel, piece])[:, None],
            self.walks[1:, None],
            (self.slope_in[1:] * chords[panel, piece + 1])[:, None],
        )
        return Sampled(panel, v, t)


@dataclass(frozen=True)
class Sampled:
    """A line in pieces (p): panel (p,), places across and walks (p, SAMPLES)."""

    panel: Index
    v: Array
    t: Array

    def of_panel(self, panel: int, points: Array) -> Array:
        """(k, 2) of one panel out of ``points`` (p, SAMPLES, 2), joints once."""
        own = points[self.panel == panel]
        return np.concatenate((own[:, :-1].reshape(-1, 2), own[-1, -1:]))


def nodes_of(points: tuple[ShapePoint, ...], surface: Surface) -> Nodes:
    """The nodes of the line through shape points; LineError names a point that is out of order."""
    u = np.array([p.u for p in points])
    t = np.array([p.t for p in points])
    curve = _curve(surface.runs(u, t), t, [p.smooth for p in points])
    inner = np.setdiff1d(np.arange(surface.panel_count + 1, dtype=float), u)
    walks, slopes = _crossings(curve, surface, inner)
    order = np.argsort(np.concatenate((u, inner)))

    def merged(own: Array, crossing: Array) -> Array:
        return np.concatenate((own, crossing))[order]

    return Nodes(
        merged(u, inner), merged(t, walks), merged(curve.slope_in, slopes), merged(curve.slope_out, slopes)
    )


def _curve(runs: Array, walks: Array, smooth: list[bool]) -> _Curve:
    """Monotone cubics from corner to corner; a smooth end is level."""
    behind = np.flatnonzero(np.diff(runs) <= 1e-6)
    if len(behind):
        raise LineError("lies level with or behind the point before it", int(behind[0]) + 1)
    slope_in, slope_out = np.zeros_like(runs), np.zeros_like(runs)
    corners = [0, *(i for i in range(1, len(runs) - 1) if not smooth[i]), len(runs) - 1]
    for first, last in zip(corners[:-1], corners[1:], strict=True):
        part = slice(first, last + 1)
        slopes = monotone_slopes(runs[part], walks[part])
        slope_out[first:last] = slopes[:-1]
        slope_in[first + 1 : last + 1] = slopes[1:]
    for end in (0, -1):
        slope = 0.0 if smooth[end] else (slope_out[0] if end == 0 else slope_in[-1])
        slope_in[end] = slope_out[end] = slope
    return _Curve(runs, walks, slope_in, slope_out)


def _crossings(curve: _Curve, surface: Surface, seams: Array) -> tuple[Array, Array]:
    """Walk and rise per run where the curve crosses the seams: run and walk must agree there.

    A secant step each round, from the run at the waist; it settles in four or five.
    """
    if not len(seams):
        return np.empty(0), np.empty(0)
    walk = curve.at(surface.runs(seams, np.zeros_like(seams)))[0]
    found, rise = curve.at(surface.runs(seams, walk))
    miss = found - walk
    before, miss_before = walk, miss
    walk = found
    for _ in range(_ROUNDS):
        found, rise = curve.at(surface.runs(seams, walk))
        miss = found - walk
        if np.abs(miss).max() < _CLOSE:
            break
        turn = miss - miss_before
        small = np.abs(turn) < 1e-12
        step = np.where(small, miss, -miss * (walk - before) / np.where(small, 1.0, turn))
        before, miss_before = walk, miss
        walk = walk + np.clip(step, -80.0, 80.0)
    else:
        if np.abs(miss).max() > 0.01:
            raise LineError("is too steep to be followed across the seams")
    return walk, rise

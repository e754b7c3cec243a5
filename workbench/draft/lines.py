"""Neckline and hem: curves round the body, cut by the seams.

A line is walk as a function of the run, the real distance across the panels. Every seam
is met at one walk with one rise per run, so that the edge runs on over a closed seam.

The few points of a line are handled as plain numbers: an array costs more than it saves
below a dozen. What needs the surface is asked for all lines at once.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from workbench.draft.design import ShapePoint
from workbench.draft.edges import Index
from workbench.draft.monotone import Array, hermite, hermite_of_few, slopes_of_few
from workbench.draft.surface import Surface

SAMPLES = 29
"""Points of one piece of a line, from one node to the next; closer together towards its ends."""

_ROUNDS = 40
_CLOSE = 0.1
"""mm: from here Newton's next step lands within a thousandth."""
_BEYOND = 100.0
_PROBE = 1.0
_SHARE = 0.5 - 0.5 * np.cos(np.linspace(0.0, np.pi, SAMPLES))


class LineError(ValueError):
    """A line that cannot be drawn; ``line`` counts the lines given, ``point`` is the shape point at fault."""

    def __init__(self, message: str, line: int, point: int | None = None) -> None:
        super().__init__(message)
        self.line = line
        self.point = point


@dataclass(frozen=True)
class _Curve:
    """Monotone cubics from corner to corner: walk over run."""

    runs: list[float]
    walks: list[float]
    slope_in: list[float]
    """Rise per run at each point as the line arrives; differs from ``slope_out`` at corners."""
    slope_out: list[float]

    def at(self, run: float) -> tuple[float, float]:
        """Walk and rise per run; straight on beyond the ends."""
        piece = min(max(bisect_right(self.runs, run) - 1, 0), len(self.runs) - 2)
        start, end = self.runs[piece], self.runs[piece + 1]
        held = min(max(run, self.runs[0]), self.runs[-1])
        walk, rise = hermite_of_few(
            (held - start) / (end - start),
            end - start,
            self.walks[piece],
            self.slope_out[piece],
            self.walks[piece + 1],
            self.slope_in[piece + 1],
        )
        return walk + (run - held) * rise, rise


@dataclass(frozen=True)
class Node:
    """Where a line has a node: at the centre lines, the seams and the shape points."""

    u: float
    walk: float
    slope_in: float
    slope_out: float

    @property
    def smooth(self) -> bool:
        """Whether the line runs through without a corner."""
        return abs(self.slope_in - self.slope_out) < 1e-9


Nodes = tuple[Node, ...]
"""The nodes of one line, front to back."""


def at_seams(nodes: Nodes) -> tuple[Node, ...]:
    """The nodes (panels + 1) at the centre front, the seams and the centre back."""
    return tuple(node for node in nodes if node.u == int(node.u))


def seam_walks(nodes: Nodes) -> tuple[float, ...]:
    """The walks (panels + 1) at the centre front, the seams and the centre back."""
    return tuple(node.walk for node in at_seams(nodes))


def nodes_of(lines: Sequence[tuple[ShapePoint, ...]], surface: Surface) -> tuple[Nodes, ...]:
    """The nodes of each line through its shape points; LineError names a point that is out of order."""
    u = np.array([point.u for points in lines for point in points])
    t = np.array([point.t for points in lines for point in points])
    runs = iter(surface.runs(u, t).tolist())
    curves = [_curve(number, points, [next(runs) for _ in points]) for number, points in enumerate(lines)]
    free = [_free_seams(points, surface.panel_count) for points in lines]
    crossings = iter(_crossings(lines, curves, free, surface))
    nodes = []
    for points, curve, seams in zip(lines, curves, free, strict=True):
        own = [
            Node(point.u, *rest)
            for point, *rest in zip(points, curve.walks, curve.slope_in, curve.slope_out, strict=True)
        ]
        crossed = [Node(float(seam), *next(crossings)) for seam in seams]
        nodes.append(tuple(sorted((*own, *crossed), key=lambda node: node.u)))
    return tuple(nodes)


def _free_seams(points: tuple[ShapePoint, ...], panel_count: int) -> list[int]:
    """Seams without a shape point of their own."""
    taken = {point.u for point in points}
    return [seam for seam in range(1, panel_count) if seam not in taken]


def _curve(number: int, points: tuple[ShapePoint, ...], runs: list[float]) -> _Curve:
    """Monotone cubics from corner to corner; a smooth end is level."""
    for place, (run, next_run) in enumerate(pairwise(runs)):
        if not next_run - run > 1e-6:
            raise LineError("lies level with or behind the point before it", number, place + 1)
    walks = [point.t for point in points]
    last = len(points) - 1
    slope_in, slope_out = [0.0] * (last + 1), [0.0] * (last + 1)
    corners = [0, *(i for i in range(1, last) if not points[i].smooth), last]
    for first, end in pairwise(corners):
        slopes = slopes_of_few(runs[first : end + 1], walks[first : end + 1])
        slope_out[first:end] = slopes[:-1]
        slope_in[first + 1 : end + 1] = slopes[1:]
    slope_in[0] = slope_out[0] = 0.0 if points[0].smooth else slope_out[0]
    slope_in[last] = slope_out[last] = 0.0 if points[last].smooth else slope_in[last]
    return _Curve(runs, walks, slope_in, slope_out)


def _crossings(
    lines: Sequence[tuple[ShapePoint, ...]],
    curves: list[_Curve],
    free: list[list[int]],
    surface: Surface,
) -> list[tuple[float, float, float]]:
    """Walk and rise per run, in and out, where each line crosses its free seams, one line after the other.

    Run and walk must agree there. Newton's method, from where they would meet if the run
    grew evenly between the shape points; how it changes with the walk is felt a millimetre
    further up.
    """
    seams = [_Crossing(curves[n], lines[n], seam) for n, own in enumerate(free) for seam in own]
    if not seams:
        return []
    u = np.array([crossing.seam for crossing in seams] * 2, dtype=float)
    for _ in range(_ROUNDS):
        walks = [crossing.walk for crossing in seams]
        runs = surface.runs(u, np.array([*walks, *(walk + _PROBE for walk in walks)])).tolist()
        misses = map(_Crossing.step, seams, runs[: len(seams)], runs[len(seams) :])
        if max(map(abs, list(misses))) < _CLOSE:
            return [(crossing.walk, crossing.rise, crossing.rise) for crossing in seams]
    worst = max(seams, key=lambda crossing: abs(crossing.miss))
    raise LineError("is too steep to be followed across the seams", curves.index(worst.curve))


class _Crossing:
    """One seam on its way to where a line crosses it."""

    __slots__ = ("curve", "high", "low", "miss", "rise", "seam", "walk")

    def __init__(self, curve: _Curve, points: tuple[ShapePoint, ...], seam: int) -> None:
        self.curve, self.seam = curve, seam
        self.walk = _first_guess(points, curve, seam)
        self.low, self.high = min(curve.walks) - _BEYOND, max(curve.walks) + _BEYOND
        self.miss = self.rise = 0.0

    def step(self, run: float, run_above: float) -> float:
        """How far the line misses the walk, before going on to a better one.

        Newton's step, or half of what is left where that would leave it.
        """
        found, self.rise = self.curve.at(run)
        self.miss = found - self.walk
        if self.miss > 0:
            self.low = self.walk
        else:
            self.high = self.walk
        turn = self.rise * (run_above - run) / _PROBE - 1
        walk = self.walk - self.miss / turn if turn else self.low
        self.walk = walk if self.low <= walk <= self.high else 0.5 * (self.low + self.high)
        return self.miss


def _first_guess(points: tuple[ShapePoint, ...], curve: _Curve, u: float) -> float:
    """Walk at u, the run taken as even between the neighbouring shape points."""
    after = next(i for i, point in enumerate(points) if point.u > u)
    share = (u - points[after - 1].u) / (points[after].u - points[after - 1].u)
    low, high = curve.runs[after - 1], curve.runs[after]
    return curve.at(low + share * (high - low))[0]


@dataclass(frozen=True)
class Sampled:
    """Lines in pieces (p) from node to node: panel and run (p,), places across and walks (p, SAMPLES)."""

    panel: Index
    run: Array
    """Mean distance across the panel, in mm."""
    v: Array
    t: Array

    def part(self, pieces: slice) -> Sampled:
        """Some of the pieces: those of one line."""
        return Sampled(self.panel[pieces], self.run[pieces], self.v[pieces], self.t[pieces])


def sampled(lines: Sequence[Nodes], surface: Surface) -> Sampled:
    """Every piece of every line, one line after the other, as places across and up its panel."""
    pairs = [pair for nodes in lines for pair in pairwise(nodes)]
    ends = np.array([[(a.u, a.walk, a.slope_out), (b.u, b.walk, b.slope_in)] for a, b in pairs])
    u, walk, slope = np.moveaxis(ends, -1, 0)
    panel = u[:, 0].astype(np.intp)
    x, y = surface.edges.xy(np.stack((2 * panel, 2 * panel + 1))[..., None], walk)
    chords = np.hypot(x[1] - x[0], y[1] - y[0])
    step = (u[:, 1] - u[:, 0])[:, None]
    v = (u[:, 0] - panel)[:, None] + step * _SHARE
    # rise per run, times the run of a whole panel here, is rise per panel
    rise = slope * chords
    t = hermite(_SHARE, step, walk[:, :1], rise[:, :1], walk[:, 1:], rise[:, 1:])
    return Sampled(panel, step[:, 0] * chords.mean(axis=1), v, t)

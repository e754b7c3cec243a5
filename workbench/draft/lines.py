"""Neckline and hem: curves round the body, cut by the seams.

A line is walk as a function of the run, the real distance across the panels. Every seam
is met at one walk with one rise per run, so that the edge runs on over a closed seam.

The few points of a line are handled as plain numbers: an array costs more than it saves below a
dozen. What needs the surface is asked for all lines at once. Figures are own choice, how exactly a
line is drawn, unless said.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from itertools import islice, pairwise
from math import ceil
from operator import attrgetter
from typing import NamedTuple

import numpy as np

from workbench.draft.design import ShapePoint
from workbench.draft.edges import Index
from workbench.draft.monotone import Array, cubic_of_few, hermite_weights, slopes_of_few
from workbench.draft.surface import Surface
from workbench.frozen import dataclass

SAMPLES = 29
"""Points of one piece of a line, from one node to the next; closer together towards its ends."""

_ROUNDS = 40
_CLOSE = 0.3
"""mm: from here the next step lands within two thousandths."""
_INNER_ROUNDS = 3
_MET = 1e-4
"""mm: the run itself is not known better between two rounds."""
_BEYOND = 100.0
_PROBE = 1.0
_SHARE = 0.5 - 0.5 * np.cos(np.linspace(0.0, np.pi, SAMPLES))
_SHARE_WEIGHTS = np.stack(hermite_weights(_SHARE))


class LineError(ValueError):
    """A line that cannot be drawn; ``line`` counts the lines given, ``point`` is the shape point at fault."""

    def __init__(self, message: str, line: int, point: int | None = None) -> None:
        super().__init__(message)
        self.line = line
        self.point = point


@dataclass(frozen=True)
class Curve:
    """Monotone cubics from corner to corner: walk over run."""

    runs: list[float]
    cubics: list[tuple[float, float, float, float]]
    """From each point to the next, ascending powers of the run since the point."""
    slope_in: list[float]
    """Rise per run at each point as the line arrives; differs from ``slope_out`` at corners."""
    slope_out: list[float]

    def at(self, run: float) -> tuple[float, float]:
        """Walk and rise per run; straight on beyond the ends."""
        piece = bisect_right(self.runs, run, 1, len(self.runs) - 1) - 1
        held = min(max(run, self.runs[0]), self.runs[-1])
        a, b, c, d = self.cubics[piece]
        r = held - self.runs[piece]
        rise = b + r * (2 * c + 3 * d * r)
        return a + r * (b + r * (c + r * d)) + (run - held) * rise, rise


class Node(NamedTuple):
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

_place_of = attrgetter("u")


def at_seams(nodes: Nodes) -> tuple[Node, ...]:
    """The nodes (panels + 1) at the centre front, the seams and the centre back."""
    return tuple(node for node in nodes if node.u == int(node.u))


def seam_walks(nodes: Nodes) -> tuple[float, ...]:
    """The walks (panels + 1) at the centre front, the seams and the centre back."""
    return tuple(node.walk for node in at_seams(nodes))


def nodes_of(lines: Sequence[tuple[ShapePoint, ...]], surface: Surface) -> tuple[Nodes, ...]:
    """The nodes of each line through its shape points; LineError names a point that is out of order."""
    crossings = [found for number, points in enumerate(lines) for found in seam_crossings(number, points)]
    own = [point for points in lines for point in points]
    places = [point.u for point in own] + [crossing.u for crossing in crossings] * 2
    shares = surface.shares(np.array(places))
    walks = [point.t for point in own] + probed(crossings)
    runs = iter(surface.runs(shares, np.array(walks)).tolist())
    curves = [curve_through(n, points, list(islice(runs, len(points)))) for n, points in enumerate(lines)]
    if crossings:
        follow(crossings, curves, list(runs), shares[:, len(own) :], surface)
    return tuple(
        in_order(points, curve, [crossing for crossing in crossings if crossing.line == number])
        for number, (points, curve) in enumerate(zip(lines, curves, strict=True))
    )


def in_order(points: tuple[ShapePoint, ...], curve: Curve, crossings: list[Crossing]) -> Nodes:
    """The nodes of one line at its shape points and crossings, front to back."""
    own = [
        Node(point.u, point.t, slope_in, slope_out)
        for point, slope_in, slope_out in zip(points, curve.slope_in, curve.slope_out, strict=True)
    ]
    crossed = [Node(crossing.u, crossing.walk, crossing.rise, crossing.rise) for crossing in crossings]
    return tuple(sorted(own + crossed, key=_place_of))


def curve_through(number: int, points: tuple[ShapePoint, ...], runs: list[float]) -> Curve:
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
    return curve_of(runs, walks, slope_in, slope_out)


def curve_of(runs: list[float], walks: list[float], slope_in: list[float], slope_out: list[float]) -> Curve:
    """The curve through known points with known slopes."""
    steps = [next_run - run for run, next_run in pairwise(runs)]
    cubics = list(map(cubic_of_few, steps, walks, slope_out, walks[1:], slope_in[1:]))
    return Curve(runs, cubics, slope_in, slope_out)


def probed(crossings: list[Crossing]) -> list[float]:
    """The walks of the crossings, and those a probe further up."""
    walks = [crossing.walk for crossing in crossings]
    return [*walks, *(walk + _PROBE for walk in walks)]


def follow(
    crossings: list[Crossing],
    curves: Sequence[Curve],
    runs: list[float],
    shares: Array,
    surface: Surface,
) -> None:
    """Lead every crossing to the walk at which its line meets the seam; LineError where none is found.

    Run and walk must agree there. ``runs`` and ``shares`` (panels, m) are those of the first
    guesses, and then of the same a probe further up.
    """
    count = len(crossings)
    for _ in range(_ROUNDS):
        misses = [
            crossing.step(curves[crossing.line], run, above)
            for crossing, run, above in zip(crossings, runs[:count], runs[count:], strict=True)
        ]
        if max(misses) < _CLOSE:
            return
        runs = surface.runs(shares, np.array(probed(crossings))).tolist()
    worst = max(crossings, key=lambda crossing: abs(crossing.miss))
    raise LineError("is too steep to be followed across the seams", worst.line)


def seam_crossings(line: int, points: tuple[ShapePoint, ...]) -> list[Crossing]:
    """Where a line crosses the seams without a shape point of their own, were it straight between points."""
    reach = reach_of(points)
    return [
        crossing_between(line, seam, before, after, reach)
        for before, after in pairwise(points)
        for seam in range(int(before.u) + 1, ceil(after.u))
    ]


def reach_of(points: tuple[ShapePoint, ...]) -> tuple[float, float]:
    """The walks between which a line is looked for."""
    walks = [point.t for point in points]
    return min(walks) - _BEYOND, max(walks) + _BEYOND


def crossing_between(
    line: int, u: float, before: ShapePoint, after: ShapePoint, reach: tuple[float, float]
) -> Crossing:
    """Where a line is looked for at u, between two of its points: first as if it were straight there."""
    share = (u - before.u) / (after.u - before.u)
    return Crossing(line, float(u), before.t + share * (after.t - before.t), *reach)


class Crossing:
    """One seam on its way to where a line crosses it, at a walk between ``low`` and ``high``."""

    __slots__ = ("high", "line", "low", "miss", "rise", "run", "u", "walk")

    def __init__(self, line: int, u: float, walk: float, low: float, high: float) -> None:
        self.line, self.u = line, u
        self.walk, self.low, self.high = walk, low, high
        self.miss = self.rise = self.run = 0.0

    def step(self, curve: Curve, run: float, run_above: float) -> float:
        """How far the line misses the walk, mm, before going on to a better one.

        The run is taken to grow evenly with the walk, which it nearly does; where the line
        meets such a seam is found by Newton's method, or halved where that would leave it.
        """
        found, self.rise = curve.at(run)
        self.miss = miss = found - self.walk
        if miss > 0:
            self.low = self.walk
        else:
            self.high = self.walk
        growth, start = (run_above - run) / _PROBE, self.walk
        for _ in range(_INNER_ROUNDS):
            turn = self.rise * growth - 1
            walk = self.walk - miss / turn if turn else self.low
            if not self.low <= walk <= self.high:
                self.walk = 0.5 * (self.low + self.high)
                break
            self.run = run + growth * (walk - start)
            found, self.rise = curve.at(self.run)
            self.walk, miss = walk, found - walk
            if abs(miss) < _MET:
                break
        return abs(self.miss)


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
    ends = np.array(
        [(a.u, b.u, a.walk, b.walk, a.slope_out, b.slope_in) for nodes in lines for a, b in pairwise(nodes)]
    )
    panel = ends[:, 0].astype(np.intp)
    chords = surface.widths(panel[:, None], ends[:, 2:4])
    step = ends[:, 1] - ends[:, 0]
    v = (ends[:, 0] - panel)[:, None] + step[:, None] * _SHARE
    # rise per run, times the run of a whole panel here, is rise per panel
    ends[:, 4:] *= chords
    ends[:, 4:] *= step[:, None]
    return Sampled(panel, 0.5 * step * (chords[:, 0] + chords[:, 1]), v, ends[:, 2:] @ _SHARE_WEIGHTS)

"""Neckline and hem raised at some places: what fittings did to a line, on top of its shape points.

A place that was raised is a point of the line from then on. From there the lift dies away
smoothly to the next point on either side, with the slope that the line has there: beyond it
the line is as it was. A point that is too near to make an end of it goes along in part.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import islice, pairwise
from typing import NamedTuple

import numpy as np

from workbench.draft.design import ShapePoint
from workbench.draft.lines import (
    Crossing,
    Curve,
    LineError,
    Nodes,
    crossing_between,
    curve_of,
    curve_through,
    follow,
    in_order,
    probed,
    reach_of,
    seam_crossings,
)
from workbench.draft.surface import Surface

Lifts = Mapping[float, float]
"""So much higher, in mm, at each of some places (u)."""
NEAREST = 50.8
"""mm along the line, two inches: a lift dies away over no less than that (our own choice, no source)."""
_SAME_PLACE = 0.02
"""In u, which runs by one a panel: a lift that close to a point moves that point (own choice)."""


def raised_nodes_of(
    lines: Sequence[tuple[ShapePoint, ...]], raised: Sequence[Sequence[Lifts]], surface: Surface
) -> tuple[Nodes, ...]:
    """The nodes of each line with its groups of lifts, each group on top of the ones before.

    LineError as for lines that nobody raised, and where one was moved so far that it turns back.
    """
    runs = _runs(lines, surface)
    held = [_Line(n, points, curve_through(n, points, runs[n])) for n, points in enumerate(lines)]
    held = _all_raised(held, raised, surface)
    crossings = [seam_crossings(line.number, line.points) for line in held]
    _meet([crossing for own in crossings for crossing in own], held, surface)
    return tuple(in_order(line.points, line.curve, own) for line, own in zip(held, crossings, strict=True))


def on_nodes(points: tuple[ShapePoint, ...], nodes: Nodes) -> tuple[ShapePoint, ...]:
    """The shape points of a line where its nodes have them: some may have been raised."""
    walks = {node.u: node.walk for node in nodes}
    return tuple(replace(point, t=walks[point.u]) for point in points)


class _Line(NamedTuple):
    """A line before or after its lifts."""

    number: int
    points: tuple[ShapePoint, ...]
    curve: Curve


def _all_raised(lines: list[_Line], raised: Sequence[Sequence[Lifts]], surface: Surface) -> list[_Line]:
    """Every line with its lifts: its points, those raised among them, and the curve through all.

    What needs the surface is asked for all lines and all lifts at once.
    """
    spots = [_spots(line) for line in lines]
    placed = [_placed(groups, at) for groups, at in zip(raised, spots, strict=True)]
    fresh = [
        _crossing_at(line, u)
        for line, groups, at in zip(lines, placed, spots, strict=True)
        for u in dict.fromkeys(u for lifts in groups for u in lifts)
        if u not in at
    ]
    _meet(fresh, lines, surface)
    found = {(one.line, one.u): one for one in fresh}
    lifted = [
        _lifted(groups, at, {u: one for (line, u), one in found.items() if line == number})
        for number, (groups, at) in enumerate(zip(placed, spots, strict=True))
    ]
    runs = _runs([[spot.point for spot in own] for own in lifted], surface)
    return [_line(line.number, own, runs[line.number]) for line, own in zip(lines, lifted, strict=True)]


def _line(number: int, spots: list[_Spot], runs: list[float]) -> _Line:
    """The line through spots with their slopes."""
    if any(not after - before > 1e-6 for before, after in pairwise(runs)):
        raise LineError("was moved so far at a fitting that it turns back", number)
    points = tuple(spot.point for spot in spots)
    slope_in, slope_out = [spot.slope_in for spot in spots], [spot.slope_out for spot in spots]
    return _Line(number, points, curve_of(runs, [point.t for point in points], slope_in, slope_out))


class _Spot(NamedTuple):
    """A point of a line where it runs before it is raised."""

    point: ShapePoint
    run: float
    slope_in: float
    slope_out: float
    end: bool


def _spots(line: _Line) -> dict[float, _Spot]:
    """The points there are, by u."""
    points, curve = line.points, line.curve
    ends = (points[0].u, points[-1].u)
    known = zip(points, curve.runs, curve.slope_in, curve.slope_out, strict=True)
    return {p.u: _Spot(p, run, arrives, leaves, p.u in ends) for p, run, arrives, leaves in known}


class _Bump(NamedTuple):
    """A lift that dies away to nothing at ``low`` and ``high``, runs in mm."""

    low: float
    top: float
    high: float
    amount: float

    def at(self, run: float) -> tuple[float, float]:
        """How much higher a line is there, and how much steeper."""
        if not self.low < run < self.high:
            return 0.0, 0.0
        foot = self.low if run < self.top else self.high
        share = (run - foot) / (self.top - foot)
        steeper = 6 * share * (1 - share) / (self.top - foot)
        return self.amount * share * share * (3 - 2 * share), self.amount * steeper


def _bumps(lifts: Lifts, at: Mapping[float, _Spot]) -> list[_Bump]:
    """A bump for each lift, from the next point to the next that is far enough off or raised itself."""
    bumps = []
    for u, amount in lifts.items():
        top = at[u].run
        others = [spot.run for spot in at.values() if spot.point.u != u]
        own = [at[other].run for other in lifts if other != u]
        lower = [run for run in others if run <= top - NEAREST] + [run for run in own if run < top]
        upper = [run for run in others if run >= top + NEAREST] + [run for run in own if run > top]
        bumps.append(_Bump(max(lower, default=top - NEAREST), top, min(upper, default=top + NEAREST), amount))
    return bumps


def _lifted(groups: Sequence[Lifts], at: dict[float, _Spot], fresh: Mapping[float, Crossing]) -> list[_Spot]:
    """The spots in order, with what every lift does to each; a place that is raised is one from then on."""
    bumps: list[_Bump] = []
    for lifts in groups:
        for u in lifts:
            if u not in at:
                found = fresh[u]
                at[u] = _Spot(ShapePoint(u, found.walk), found.run, found.rise, found.rise, end=False)
        bumps += _bumps(lifts, at)
    return [_with_bumps(at[u], bumps) for u in sorted(at)]


def _with_bumps(spot: _Spot, bumps: list[_Bump]) -> _Spot:
    """A line keeps its slope where it ends."""
    higher = steeper = 0.0
    for bump in bumps:
        height, slope = bump.at(spot.run)
        higher += height
        steeper += slope
    if not higher and not steeper:
        return spot
    steeper = 0.0 if spot.end else steeper
    u, t, smooth = spot.point.u, spot.point.t, spot.point.smooth
    point = ShapePoint(u, t + higher, smooth)
    return _Spot(point, spot.run, spot.slope_in + steeper, spot.slope_out + steeper, spot.end)


def _placed(groups: Sequence[Lifts], taken: Iterable[float]) -> list[dict[float, float]]:
    """The groups of lifts, each moved onto a point or an earlier place where it is hardly beside one."""
    known, placed = list(taken), []
    for lifts in groups:
        own: dict[float, float] = {}
        for u, amount in lifts.items():
            near = min(known, key=lambda other: abs(other - u))
            at = near if abs(near - u) < _SAME_PLACE else u
            own[at] = own.get(at, 0.0) + amount
            if at not in known:
                known.append(at)
        placed.append(own)
    return placed


def _crossing_at(line: _Line, u: float) -> Crossing:
    """Where a line is to be found at any place between its ends."""
    points = line.points
    after = next(i for i, point in enumerate(points) if point.u > u)
    return crossing_between(line.number, u, points[after - 1], points[after], reach_of(points))


def _meet(crossings: list[Crossing], lines: Sequence[_Line], surface: Surface) -> None:
    """Find the walk of every crossing on the line it belongs to."""
    if crossings:
        shares = surface.shares(np.array([crossing.u for crossing in crossings] * 2))
        runs = surface.runs(shares, np.array(probed(crossings))).tolist()
        follow(crossings, [line.curve for line in lines], runs, shares, surface)


def _runs(lines: Sequence[Sequence[ShapePoint]], surface: Surface) -> list[list[float]]:
    """How far round each point of each line lies, in mm."""
    points = [point for line in lines for point in line]
    shares = surface.shares(np.array([point.u for point in points]))
    runs = iter(surface.runs(shares, np.array([point.t for point in points])).tolist())
    return [list(islice(runs, len(line))) for line in lines]

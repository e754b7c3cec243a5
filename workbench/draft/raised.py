"""Neckline and hem raised at some places: what fittings did to a line, on top of its shape points.

A place that was raised is a point of the line from then on. From there the lift dies away
smoothly to the next point on either side, with the slope that the line has there: beyond it
the line is as it was. A point that is too near to make an end of it goes along in part.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise
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
"""In u, which runs by one a panel: a lift that close to a point moves that point."""


def raised_nodes_of(
    lines: Sequence[tuple[ShapePoint, ...]], raised: Sequence[Sequence[Lifts]], surface: Surface
) -> tuple[Nodes, ...]:
    """The nodes of each line with its groups of lifts, each group on top of the one before.

    LineError as for lines that nobody raised, and where one was moved so far that it turns back.
    """
    return tuple(
        _nodes(number, points, groups, surface)
        for number, (points, groups) in enumerate(zip(lines, raised, strict=True))
    )


def on_nodes(points: tuple[ShapePoint, ...], nodes: Nodes) -> tuple[ShapePoint, ...]:
    """The shape points of a line where its nodes have them: some may have been raised."""
    walks = {node.u: node.walk for node in nodes}
    return tuple(replace(point, t=walks[point.u]) for point in points)


def _nodes(number: int, points: tuple[ShapePoint, ...], groups: Sequence[Lifts], surface: Surface) -> Nodes:
    curve = curve_through(number, points, _runs(points, surface))
    for lifts in groups:
        points, curve = _raised(number, points, curve, lifts, surface)
    crossings = seam_crossings(number, points)
    _meet(crossings, curve, surface)
    return in_order(points, curve, crossings)


def _raised(
    number: int, points: tuple[ShapePoint, ...], curve: Curve, lifts: Lifts, surface: Surface
) -> tuple[tuple[ShapePoint, ...], Curve]:
    """The points of a line with those raised among them, and the curve through all of them."""
    at = _spots(points, curve)
    lifts = _on_points(lifts, at)
    fresh = [_crossing_at(number, u, points) for u in lifts if u not in at]
    _meet(fresh, curve, surface)
    where = _runs([ShapePoint(crossing.u, crossing.walk) for crossing in fresh], surface)
    for crossing, run in zip(fresh, where, strict=True):
        at[crossing.u] = _Spot(
            ShapePoint(crossing.u, crossing.walk), run, crossing.rise, crossing.rise, end=False
        )
    bumps = _bumps(lifts, at)
    spots = [_lifted(at[u], bumps) for u in sorted(at)]
    found = tuple(spot.point for spot in spots)
    runs = _runs(found, surface)
    if any(not after - before > 1e-6 for before, after in pairwise(runs)):
        raise LineError("was moved so far at a fitting that it turns back", number)
    slope_in, slope_out = [spot.slope_in for spot in spots], [spot.slope_out for spot in spots]
    return found, curve_of(runs, [point.t for point in found], slope_in, slope_out)


class _Spot(NamedTuple):
    """A point of a line where it runs before it is raised."""

    point: ShapePoint
    run: float
    slope_in: float
    slope_out: float
    end: bool


def _spots(points: tuple[ShapePoint, ...], curve: Curve) -> dict[float, _Spot]:
    """The points there are, by u."""
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


def _lifted(spot: _Spot, bumps: list[_Bump]) -> _Spot:
    """The point with what every bump does to it; a line keeps its slope where it ends."""
    lifts = [bump.at(spot.run) for bump in bumps]
    higher = sum(height for height, _ in lifts)
    steeper = 0.0 if spot.end else sum(slope for _, slope in lifts)
    point = replace(spot.point, t=spot.point.t + higher)
    return spot._replace(point=point, slope_in=spot.slope_in + steeper, slope_out=spot.slope_out + steeper)


def _on_points(lifts: Lifts, taken: Iterable[float]) -> dict[float, float]:
    """The lifts, those hardly beside a point moved onto it."""
    placed: dict[float, float] = {}
    for u, amount in lifts.items():
        near = min((*taken, *placed), key=lambda other: abs(other - u))
        at = near if abs(near - u) < _SAME_PLACE else u
        placed[at] = placed.get(at, 0.0) + amount
    return placed


def _crossing_at(line: int, u: float, points: tuple[ShapePoint, ...]) -> Crossing:
    """Where a line is to be found at any place between its ends."""
    after = next(i for i, point in enumerate(points) if point.u > u)
    return crossing_between(line, u, points[after - 1], points[after], reach_of(points))


def _meet(crossings: list[Crossing], curve: Curve, surface: Surface) -> None:
    """Find the walk of every crossing on one curve."""
    if crossings:
        shares = surface.shares(np.array([crossing.u for crossing in crossings] * 2))
        runs = surface.runs(shares, np.array(probed(crossings))).tolist()
        follow(crossings, {crossings[0].line: curve}, runs, shares, surface)


def _runs(points: Sequence[ShapePoint], surface: Surface) -> list[float]:
    """How far round each point lies, in mm."""
    if not points:
        return []
    shares = surface.shares(np.array([point.u for point in points]))
    runs: list[float] = surface.runs(shares, np.array([point.t for point in points])).tolist()
    return runs

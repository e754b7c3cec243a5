"""A neckline or hem of her own on another body: each height keeps its place between the levels."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace

from workbench.draft import Level, ShapePoint

Line = tuple[ShapePoint, ...]


def carried_line(points: Line | None, old: Sequence[Level], new: Sequence[Level]) -> Line | None:
    """The shape points at the heights they have on the new levels; None stays the line of the style.

    Both are the levels that shape the style, bottom to top. On the same levels nothing moves.
    """
    before, after = [level.walk for level in old], [level.walk for level in new]
    if points is None or before == after:
        return points
    return tuple(replace(point, t=carried_walk(point.t, before, after)) for point in points)


def carried_walk(t: float, before: Sequence[float], after: Sequence[float]) -> float:
    """The walk, mm, that ``t`` becomes when the levels at walks ``before`` lie at ``after``.

    Between two levels it keeps its proportion, beyond the outermost ones its distance: a hem
    two inches below the top hip is meant as two inches, and there is no level below it to be
    in proportion to.
    """
    if t <= before[0]:
        return after[0] + (t - before[0])
    if t >= before[-1]:
        return after[-1] + (t - before[-1])
    low = bisect_right(before, t) - 1
    share = (t - before[low]) / (before[low + 1] - before[low])
    return after[low] + share * (after[low + 1] - after[low])

"""Notches: where two pieces meet, marked at the same walk on both sides of their seam.

One in the front quarter and at the side, two in the back, so that two pieces cannot be
swapped; at every level, and where a curve begins and ends (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice, pairwise
from typing import Literal

import numpy as np

from workbench.body import LevelName
from workbench.draft import Draft, Outcome
from workbench.frozen import dataclass
from workbench.pieces.crossing import ray_reach
from workbench.pieces.cutline import CutShape
from workbench.pieces.making import EdgeName, Making
from workbench.pieces.outline import IN_RING
from workbench.pieces.polyline import Array, Index, Lines
from workbench.pieces.result import Notch

CURVE_RADIUS = 300.0
"""mm; a seam that bends tighter than this is curved: the radius of a common hip curve (common
practice, no source)."""
SHORTEST_CURVE = 20.0
"""mm of seam below which a curve is not marked (own choice)."""
APART = 12.7
"""mm from a level's notch, or from an end of the seam, within which a curve's end is not marked (own
choice)."""
_LEVEL_FROM_END = 2.0
"""mm from an end of the seam within which a level has no notch; own choice."""

Why = Literal["level", "curve"]


@dataclass(frozen=True)
class Stop:
    """A walk at which a seam is notched."""

    walk: float
    why: Why
    level: LevelName | None = None


Stops = tuple[Stop, ...]


def stops_of(outcome: Outcome, draft: Draft, making: Making) -> tuple[Stops, ...]:
    """Where each seam is notched, from the centre front (0) to the centre back, bottom to top."""
    ends = list(zip(draft.hem.seam_walks, draft.neckline.seam_walks, strict=True))
    curved = _curve_ends(draft, ends) if making.marks.at_curves else [()] * len(ends)
    found = []
    for (low, high), bends in zip(ends, curved, strict=True):
        stops = [
            Stop(level.walk, "level", level.name)
            for level in outcome.levels
            if making.marks.at_levels and low + _LEVEL_FROM_END < level.walk < high - _LEVEL_FROM_END
        ]
        taken = [low, high, *(stop.walk for stop in stops)]
        for walk in bends:
            if min(abs(walk - other) for other in taken) >= APART:
                stops.append(Stop(walk, "curve"))
                taken.append(walk)
        found.append(tuple(sorted(stops, key=lambda stop: stop.walk)))
    return tuple(found)


def _curve_ends(draft: Draft, ends: list[tuple[float, float]]) -> list[tuple[float, ...]]:
    """Walks at which each seam begins or ends to be curved, from the mean bend of its two sides."""
    sides = np.stack([side for panel in draft.panels for side in (panel.left, panel.right)])
    steps = np.diff(sides, axis=1)
    lengths = np.hypot(steps[..., 0], steps[..., 1])
    heading = np.arctan2(steps[..., 0], steps[..., 1])
    bend = 2 * np.abs(np.diff(heading, axis=1)) / (lengths[:, 1:] + lengths[:, :-1])
    both = _by_seam(bend)
    walks = _by_seam(np.cumsum(lengths, axis=1)[:, :-1]) + np.array(ends)[:, :1]
    curved = np.diff((both > 1 / CURVE_RADIUS).astype(np.int8), axis=1)
    return [_changes(walk, *pair) for walk, *pair in zip(walks, both, curved, strict=True)]


def _by_seam(sides: Array) -> Array:
    """(seams, n) mean of the two sides of each seam, from (2 * panels, n) of the panels' sides in order."""
    return np.concatenate((sides[:1], 0.5 * (sides[1:-1:2] + sides[2:-1:2]), sides[-1:]))


def _changes(walks: Array, bend: Array, change: Array) -> tuple[float, ...]:
    """Where the bend passes the threshold, for every stretch that is long enough."""
    places = np.flatnonzero(change).tolist()
    if not places:
        return ()
    at = [_passed(place, walks, bend) for place in places]
    starts = [float(walks[0]), *at, float(walks[-1])]
    long = {
        walk
        for (one, other), inside in zip(
            pairwise(starts), _inside(int(change[places[0]]), len(starts)), strict=True
        )
        if inside and other - one >= SHORTEST_CURVE
        for walk in (one, other)
    }
    return tuple(walk for walk in at if walk in long)


def _inside(first_change: int, count: int) -> list[bool]:
    """Of the stretches between so many walks, which are curved."""
    return [(number % 2 == 0) == (first_change < 0) for number in range(count - 1)]


def _passed(place: int, walks: Array, bend: Array) -> float:
    """The walk between two probes at which the bend is at the threshold."""
    one, other = bend[place] - 1 / CURVE_RADIUS, bend[place + 1] - 1 / CURVE_RADIUS
    return float(walks[place] + (walks[place + 1] - walks[place]) * one / (one - other))


@dataclass(frozen=True)
class Side:
    """The left or right side of a piece, which begins at walk ``low`` and is notched at its stops."""

    edge: EdgeName
    seam: int
    low: float
    stops: Stops

    @property
    def place(self) -> int:
        """Its number in the ring."""
        return IN_RING.index(self.edge)


_Own = tuple[CutShape, Side]


@dataclass(frozen=True)
class _Feet:
    """Places on stitch lines: the bit each lies on, the point, and straight out of the piece, unit vector."""

    bits: list[int]
    points: Array
    out: Array


def notches_on(
    shapes: Sequence[CutShape], sides: Sequence[tuple[Side, ...]], front: int
) -> list[tuple[Notch, ...]]:
    """The notches of each piece on those of its sides that are given; ``front`` is the side seam's number."""
    owns = [(shape, side) for shape, own in zip(shapes, sides, strict=True) for side in own if side.stops]
    found = _notches(owns, front) if owns else iter(())
    return [tuple(islice(found, sum(len(side.stops) for side in own))) for own in sides]


def _notches(owns: list[_Own], front: int) -> Iterator[Notch]:
    """All of them, one side after the other."""
    owner = np.repeat(np.arange(len(owns)), [len(side.stops) for _, side in owns])
    feet = _feet(owns, owner)
    widths = np.array([shape.widths[side.place] for shape, side in owns])
    tops = (feet.points + widths[owner, None] * feet.out).tolist()
    inwards = (-feet.out).tolist()
    number = 0
    for shape, side in owns:
        count, edge, seam = count_at(side.seam, front), side.edge, side.seam
        for stop in side.stops:
            x, y = tops[number]
            if not _on_cut_line(shape, side, feet.bits[number]):
                x, y = _on_ring(shape, feet.points[number], feet.out[number], tops[number])
            ix, iy = inwards[number]
            yield Notch((x, y), (ix, iy), count, edge, stop.walk, seam, stop.why, stop.level)
            number += 1


def _feet(owns: list[_Own], owner: Index) -> _Feet:
    """The feet of all stops, one side after the other, counted along the stitch line as it was drawn."""
    lines = Lines([shape.outline.edge(side.edge) for shape, side in owns])
    up = np.array([stop.walk - side.low for _, side in owns for stop in side.stops])
    bits = lines.bits(owner, up)
    length, step = lines.lengths[bits], lines.steps[bits]
    part = (lines.starts[owner] + up - lines.along[bits]) / length
    right = np.array([1.0 if side.edge == "right" else -1.0 for _, side in owns])[owner] / length
    out = np.stack((step[:, 1] * right, -step[:, 0] * right), axis=1)
    points = lines.points[bits] + part[:, None] * step
    return _Feet((bits - lines.firsts[owner]).tolist(), points, out)


def count_at(seam: int, front: int) -> int:
    """One notch in front and at the side, two in back."""
    return 1 if seam <= front else 2


def _on_cut_line(shape: CutShape, side: Side, bit: int) -> bool:
    """Whether the cut line runs straight out from a bit of a side, counted from the hem."""
    first, end = shape.kept[side.place]
    place = bit if side.edge == "right" else len(shape.outline.left) - 2 - bit
    return first <= place and place + 1 < end


def _on_ring(shape: CutShape, foot: Array, out: Array, usual: list[float]) -> list[float]:
    """Where the cut line is met straight out from a foot: nearer at a folded end, further in a hollow."""
    if float(np.abs(np.array(usual) - foot).max()) == 0:
        return usual
    reach = ray_reach(shape.ring, foot, out)
    at: list[float] = (foot + reach * out).tolist() if reach is not None else usual
    return at

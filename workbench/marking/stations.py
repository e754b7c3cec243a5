"""Where along a line marks are needed, so that a smooth line through them comes near enough.

Figures are own choice, where marks are set.
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from workbench.marking.rounding import Rounding
from workbench.marking.smooth import Array, along, distances, smooth_through

_PART, _LEAST = 0.3, 0.6
"""A line through exact marks may lie off by so many steps, or by so many mm (own choice)."""
_MOST_ROUNDS = 10
_KINK = 0.2
"""Radians a line turns at a corner that is meant: 11 degrees, more than a sampled curve ever does."""
_STEEP = 0.4
"""A line that leaves the straight between two marks by more than this part of it wants a mark of its own."""
_APART = 8.0
"""mm: no two marks of one line stand closer."""


def kinks_of(line: Array) -> list[int]:
    """The points of a polyline at which it has a corner, without its ends."""
    run = np.diff(line, axis=0)
    length = np.hypot(*run.T)
    heading = run / np.maximum(length, 1e-12)[:, None]
    turn = np.abs(np.arctan2(_cross(heading[:-1], heading[1:]), (heading[:-1] * heading[1:]).sum(axis=1)))
    lengths = along(line)
    return [
        int(place) + 1
        for place in np.flatnonzero(turn > _KINK)
        if _APART < lengths[place + 1] < lengths[-1] - _APART
    ]


def _cross(one: Array, other: Array) -> Array:
    product: Array = one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0]
    return product


def at_lengths(line: Array, lengths: Array) -> Array:
    """(k, 2) places of a polyline so far along it, mm."""
    own = along(line)
    return np.stack((np.interp(lengths, own, line[:, 0]), np.interp(lengths, own, line[:, 1])), axis=1)


def length_at(line: Array, point: Array) -> float:
    """How far along a polyline the place nearest to a point lies, mm."""
    start, run = line[:-1], np.diff(line, axis=0)
    squared = np.maximum((run * run).sum(axis=1), 1e-18)
    share = np.clip(((point - start) * run).sum(axis=1) / squared, 0.0, 1.0)
    miss = np.hypot(*(point - start - share[:, None] * run).T)
    best = int(miss.argmin())
    return float(along(line)[best] + share[best] * np.sqrt(squared[best]))


def with_turns(line: Array, nodes: list[float]) -> list[float]:
    """The nodes (lengths along the line, first to last) with one more wherever the line bows out too far."""
    found = [nodes[0]]
    for end in nodes[1:]:
        found += [*_turns(line, found[-1], end), end]
    return found


def _turns(line: Array, start: float, end: float) -> list[float]:
    if end - start < 4 * _APART:
        return []
    lengths = np.linspace(start, end, 41)
    points = at_lengths(line, lengths)
    chord = points[-1] - points[0]
    far = float(np.hypot(*chord))
    off = np.abs(_cross(np.broadcast_to(chord, (len(points), 2)), points - points[0])) / max(far, 1e-9)
    worst = int(off.argmax())
    if off[worst] <= _STEEP * far and far > 0:
        return []
    middle = float(lengths[worst])
    return [*_turns(line, start, middle), middle, *_turns(line, middle, end)]


def counts_between(line: Array, nodes: list[float], rounding: Rounding) -> list[int]:
    """How many marks are wanted between each node and the next, lengths along the line given."""
    near_enough = max(_PART * rounding.step, _LEAST)
    counts = [0] * (len(nodes) - 1)
    own = along(line)
    for _ in range(_MOST_ROUNDS):
        drawn = smooth_through(at_lengths(line, np.array(_lengths(nodes, counts))))
        off = distances(line, drawn)
        more = False
        for span, (start, end) in enumerate(pairwise(nodes)):
            within = off[(own >= start) & (own <= end)]
            room = end - start > (counts[span] + 2) * rounding.stride
            if len(within) and float(within.max()) > near_enough and room:
                counts[span] += 1
                more = True
        if not more:
            break
    return counts


def _lengths(nodes: list[float], counts: list[int]) -> list[float]:
    found = [nodes[0]]
    for start, end, count in zip(nodes, nodes[1:], counts, strict=False):
        found += np.linspace(start, end, count + 2)[1:].tolist()
    return found


def offsets(
    line: Array, start: tuple[float, float], end: tuple[float, float], count: int, rounding: Rounding
) -> list[tuple[float, float]]:
    """Distances along the straight from one mark to another, and how far out the line lies there; mm.

    Rounded; positive is to the left as one looks along it. Fewer than ``count`` where they would coincide.
    """
    run = np.array(end) - np.array(start)
    far = float(np.hypot(*run))
    if not count or far < 2 * _APART:
        return []
    heading = run / far
    beyond = line - np.array(start)
    across, out = beyond @ heading, beyond @ np.array([-heading[1], heading[0]])
    found: dict[float, float] = {}
    for number in range(1, count + 1):
        place = _strides(far * number / (count + 1), rounding)
        if _APART <= place <= far - _APART and place not in found:
            met = _met(across, out, place)
            if met is not None:
                found[place] = rounding.near(met)
    return sorted(found.items())


def _strides(mm: float, rounding: Rounding) -> float:
    return round(mm / rounding.stride) * rounding.stride


def _met(across: Array, out: Array, place: float) -> float | None:
    """How far out a line lies at a distance along, where it is nearest to the straight."""
    before, after = across[:-1] - place, across[1:] - place
    crossing = np.flatnonzero(before * after <= 0)
    if not len(crossing):
        return None
    rise = across[crossing + 1] - across[crossing]
    share = np.where(rise == 0, 0.0, (place - across[crossing]) / np.where(rise == 0, 1.0, rise))
    met = out[crossing] + share * (out[crossing + 1] - out[crossing])
    return float(met[np.abs(met).argmin()])

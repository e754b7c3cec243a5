"""The marks of one piece, in the order the hand makes them, and the lines through them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import hypot

import numpy as np

from workbench.body import LEVEL_LABEL, LevelName
from workbench.draft import LineName
from workbench.marking.ends import Point, ends_of
from workbench.marking.frame import Frame
from workbench.marking.records import Across, Curve, Mark, Offset, Squared, places_of
from workbench.marking.rounding import Rounding
from workbench.marking.smooth import Array
from workbench.marking.stations import at_lengths, counts_between, kinks_of, length_at, offsets, with_turns
from workbench.pieces import EdgeName

_ENDS: tuple[tuple[LineName, int], ...] = (("hem", 0), ("neckline", -1))
"""The end of a side that lies on each line."""
_STRAIGHT = 1e-6
"""mm (own choice: what a straight line may wander)."""
Node = tuple[float, int]
"""How far along the exact line it lies, mm, and the number of its mark."""


@dataclass
class Marked:
    """Marks as they are added, each in its group."""

    frame: Frame
    rounding: Rounding
    widths: Mapping[LevelName, float]
    """Of the levels, rounded together with those of the other panels; mm."""
    marks: list[Mark] = field(default_factory=list)
    curves: list[Curve] = field(default_factory=list)
    levels: dict[LevelName, tuple[int, int]] = field(default_factory=dict)
    """Marks on the left and on the right."""
    groups: dict[str, list[int]] = field(default_factory=dict)
    """Numbers of the marks made together."""
    drawn: dict[EdgeName, list[int]] = field(default_factory=dict)
    """Places among the curves of each edge's lines."""

    def add(self, group: str, mark: Mark) -> int:
        """Take a mark in; its number."""
        self.marks.append(mark)
        self.groups.setdefault(group, []).append(mark.number)
        return mark.number

    @property
    def next(self) -> int:
        """The number of the next mark."""
        return len(self.marks) + 1

    def place(self, number: int) -> tuple[float, float]:
        """Where a mark lies."""
        return places_of(tuple(self.marks), self.frame.side)[number]


def marked(frame: Frame, rounding: Rounding, widths: Mapping[LevelName, float]) -> Marked:
    """All marks and lines of a piece."""
    found = Marked(frame, rounding, widths)
    found.add("corner", Squared(1, "corner", 0.0, 0.0))
    if frame.on_waist:
        number = found.add("waist", Across(2, f"waist, {frame.far} side", 1, widths["waist"], 0.0))
        found.levels["waist"] = (1, number) if frame.side > 0 else (number, 1)
    upright = _at_upright(found)
    _across(found, upright)
    corners = _corners(found, upright)
    for edge in (frame.near, frame.far):
        _side(found, edge, corners)
    for line, _ in reversed(_ENDS):
        _line(found, line, corners)
    return found


def _at_upright(found: Marked) -> dict[LevelName | LineName, int]:
    """Marks of the near side, from the bottom up, by level or line."""
    frame = found.frame
    levels = {level: _near_place(found, level) for level in frame.levels}
    inner = list(levels.values()) + ([(0.0, 0.0)] if frame.on_waist else [])
    low, high = ends_of(frame.edges[frame.near], sorted(inner, key=lambda place: place[1]), found.rounding)
    numbers: dict[LevelName | LineName, int] = {
        "hem": _squared(found, "upright", f"hem, {frame.near} side", low) if frame.on_waist else 1
    }
    for level, place in levels.items():
        name = f"{LEVEL_LABEL[level].lower()}, {frame.near} side"
        numbers[level] = _squared(found, "upright", name, place)
    numbers["neckline"] = _squared(found, "upright", f"neckline, {frame.near} side", high)
    return numbers


def _near_place(found: Marked, level: LevelName) -> Point:
    """Where a level is marked at the upright: out by so much that neither side of the piece is far off."""
    frame, rounding = found.frame, found.rounding
    left, right = frame.levels[level]
    near = left if frame.side > 0 else right
    extra = frame.side * (found.widths[level] - float(np.hypot(*(right - left))))
    exact = float(near[0])
    usual = rounding.near(exact)
    steps = (usual,) if abs(exact) < _STRAIGHT else (usual, usual + rounding.step, usual - rounding.step)
    out = min(steps, key=lambda x: (max(abs(x - exact), abs(x + extra - exact)), abs(x - exact)))
    return out, rounding.near(float(near[1]))


def _across(found: Marked, upright: Mapping[LevelName | LineName, int]) -> None:
    """The far end of every level but the waist."""
    frame = found.frame
    for level, ends in frame.levels.items():
        name = f"{LEVEL_LABEL[level].lower()}, {frame.far} side"
        up = found.rounding.near(float(ends[1 if frame.side > 0 else 0][1]))
        start = upright[level]
        number = found.add("across", Across(found.next, name, start, found.widths[level], up))
        found.levels[level] = (start, number) if frame.side > 0 else (number, start)


def _corners(
    found: Marked, upright: Mapping[LevelName | LineName, int]
) -> dict[tuple[EdgeName, LineName], int]:
    """Marks of the four corners, by side and line."""
    frame = found.frame
    which = 1 if frame.side > 0 else 0
    inner = sorted((found.place(ends[which]) for ends in found.levels.values()), key=lambda place: place[1])
    places = ends_of(frame.edges[frame.far], inner, found.rounding)
    numbers: dict[tuple[EdgeName, LineName], int] = {}
    for (line, _), place in zip(_ENDS, places, strict=True):
        numbers[frame.near, line] = upright[line]
        numbers[frame.far, line] = _squared(found, "corners", f"{line}, {frame.far} side", place)
    return numbers


def _side(found: Marked, edge: EdgeName, corners: Mapping[tuple[EdgeName, LineName], int]) -> None:
    line = found.frame.edges[edge]
    which = 0 if edge == "left" else 1
    nodes: list[Node] = [(0.0, corners[edge, "hem"])]
    for level, marks in found.levels.items():
        exact = _waist(found.frame, edge) if level == "waist" else found.frame.levels[level][which]
        nodes.append((length_at(line, exact), marks[which]))
    nodes.append((length_at(line, line[-1]), corners[edge, "neckline"]))
    _draw(found, edge, line, sorted(nodes))


def _waist(frame: Frame, edge: EdgeName) -> Array:
    """Where a side crosses the base line."""
    line = frame.edges[edge]
    return np.array([float(np.interp(0.0, line[:, 1], line[:, 0])), 0.0])


def _line(found: Marked, edge: LineName, corners: Mapping[tuple[EdgeName, LineName], int]) -> None:
    """Hem or neckline, from corner to corner of it."""
    line = found.frame.edges[edge]
    bends = [0, *kinks_of(line), len(line) - 1]
    numbers = [corners["left", edge]]
    numbers += [_squared(found, edge, f"{edge}, bend", _rounded(found, line[bend])) for bend in bends[1:-1]]
    numbers.append(corners["right", edge])
    for first, last, start, stop in zip(bends, bends[1:], numbers, numbers[1:], strict=False):
        part = line[first : last + 1]
        _draw(found, edge, part, [(0.0, start), (length_at(part, part[-1]), stop)])


def _squared(found: Marked, group: str, name: str, place: Point) -> int:
    """A mark on a line squared from the upright; its number."""
    return found.add(group, Squared(found.next, name, place[1], place[0]))


def _rounded(found: Marked, point: Array) -> Point:
    return found.rounding.near(float(point[0])), found.rounding.near(float(point[1]))


def _draw(found: Marked, edge: EdgeName, line: Array, nodes: list[Node]) -> None:
    """One smooth line through its nodes and as many marks between them as it needs."""
    lengths = with_turns(line, [length for length, _ in nodes])
    known = dict(nodes)
    numbers = [
        known[length]
        if length in known
        else _squared(found, edge, f"{edge}, turn", _rounded(found, _at(line, length)))
        for length in lengths
    ]
    through = [numbers[0]]
    counts = counts_between(line, lengths, found.rounding)
    for start, end, count in zip(numbers, numbers[1:], counts, strict=False):
        through += [*_between(found, edge, line, start, end, count), end]
    found.drawn.setdefault(edge, []).append(len(found.curves))
    found.curves.append(Curve(edge, tuple(through)))


def _at(line: Array, length: float) -> Array:
    place: Array = at_lengths(line, np.array([length]))[0]
    return place


def _between(found: Marked, edge: EdgeName, line: Array, start: int, end: int, count: int) -> list[int]:
    first, last = found.place(start), found.place(end)
    if hypot(last[0] - first[0], last[1] - first[1]) < 1e-6:
        return []
    return [
        found.add(edge, Offset(found.next, f"{edge}, between {start} and {end}", start, end, place, out))
        for place, out in offsets(line, first, last, count, found.rounding)
    ]

"""Bands along neckline or hem, laid together from panels whose seams are closed.

Panels are moved, never bent. Where a seam curves so that the panels gape or overlap at the
far edge of the band, a new piece begins there.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import atan2, cos, sin
from typing import Literal

import numpy as np
import shapely

from workbench.frozen import dataclass
from workbench.pieces.crossing import Crossing, first_crossings
from workbench.pieces.offset import set_out
from workbench.pieces.outline import Outline, distinct, lengths_along
from workbench.pieces.polyline import Array, length_of, part_of

Line = Literal["neckline", "hem"]

WIDEST_GAP = 4.7625
"""mm that two panels may gape or overlap at the far edge of a facing and still be cut in one: 3/16 in.

The far edge is sewn to nothing, and this is about a twentieth of the width of a panel, which woven
cloth takes in or gives when it is pressed (common practice, no source). The edge that is sewn is not
touched by it: there the panels always meet."""
_ROUND = 10.0
"""A facing's far edge follows the edge itself; its corners run out freely (own choice)."""
_CLEAR = 1.0
"""mm from an end of the edge within which nothing is looked at; own choice."""


@dataclass(frozen=True)
class Part:
    """What one panel gives to a facing, where it lies in its piece; sides run from the edge inwards."""

    panel: int
    line: Array
    """(k, 2) from left to right."""
    left: Array
    right: Array

    def moved(self, angle: float, start: Array, end: Array) -> Part:
        """Turned by ``angle`` about ``start``, which comes to lie on ``end``."""
        turn = np.array([[cos(angle), sin(angle)], [-sin(angle), cos(angle)]])
        return Part(self.panel, *((line - start) @ turn + end for line in (self.line, self.left, self.right)))


@dataclass(frozen=True)
class Band:
    """One piece of a facing before it has allowances."""

    parts: tuple[Part, ...]
    outer: Array
    """The edge, left to right."""
    inner: Array
    """The far edge at its full depth, left to right, run on at both ends."""
    span: tuple[float, float]
    """Where the far edge meets the left and the right side, counted in its bits."""
    left_depth: float
    """How far down the left side that is, mm."""
    right_depth: float
    moved: float = 0.0
    """How far an end was moved since, mm, to agree with the piece beyond the seam."""

    @property
    def seams(self) -> tuple[int, int]:
        """The seams at its left and its right end."""
        return self.parts[0].panel, self.parts[-1].panel + 1


def joined_parts(parts: list[Part], depth: float) -> list[tuple[Part, ...]]:
    """Neighbours laid against each other, seam closed at the edge, for as long as they fit to the depth."""
    found: list[list[Part]] = []
    for part in parts:
        placed = _laid_against(found[-1][-1], part) if found else None
        if placed and _gap(found[-1][-1], placed, depth) <= WIDEST_GAP:
            found[-1].append(placed)
        else:
            found.append([part])
    return [tuple(own) for own in found]


def _laid_against(before: Part, part: Part) -> Part | None:
    """The part moved so that its left side lies along the right side of the one before it."""
    if part.panel != before.panel + 1:
        return None
    wanted, own = before.right[1] - before.right[0], part.left[1] - part.left[0]
    angle = atan2(wanted[1], wanted[0]) - atan2(own[1], own[0])
    return part.moved(angle, part.left[0], before.right[0])


def _gap(before: Part, part: Part, depth: float) -> float:
    """How far apart the two sides of a seam lie at the far edge, mm."""
    one, other = _down(before.right, depth), _down(part.left, depth)
    return float(np.hypot(*(one - other)))


def _down(side: Array, depth: float) -> Array:
    along = lengths_along(side)
    return np.array([np.interp(depth, along, axis) for axis in side.T])


def bands_of(joined: list[tuple[Part, ...]], depth: float, line: Line) -> list[Band] | None:
    """The pieces with their far edges; None where one does not meet its sides."""
    outers = [np.concatenate([own[0].line, *(part.line[1:] for part in own[1:])]) for own in joined]
    turned = 1 if line == "neckline" else -1
    inners = set_out([outer[::turned] for outer in outers], [depth] * len(outers), _ROUND)
    ends = [run_on(inner.points[::turned], 4 * depth) for inner in inners]
    sides = [(own[0].left, own[-1].right) for own in joined]
    met = first_crossings([(side, inner) for pair, inner in zip(sides, ends, strict=True) for side in pair])
    bands = list(map(_band, joined, outers, ends, met[::2], met[1::2]))
    found = [band for band in bands if band]
    return _levelled(found) if len(found) == len(bands) else None


def _band(
    parts: tuple[Part, ...], outer: Array, inner: Array, left: Crossing | None, right: Crossing | None
) -> Band | None:
    if left is None or right is None or left.second >= right.second:
        return None
    depths = _length_to(parts[0].left, left.first), _length_to(parts[-1].right, right.first)
    return Band(parts, outer, inner, (left.second, right.second), *depths)


def run_on(line: Array, by: float) -> Array:
    """The line with a straight bit more at either end."""
    ahead, back = line[-1] - line[-2], line[0] - line[1]
    start, end = line[0] + by * back / np.hypot(*back), line[-1] + by * ahead / np.hypot(*ahead)
    return np.concatenate((start[None], line, end[None]))


def _length_to(side: Array, place: float) -> float:
    """Length in mm up to a place counted in bits."""
    bit = min(int(place), len(side) - 2)
    return length_of(side[: bit + 1]) + (place - bit) * length_of(side[bit : bit + 2])


def _levelled(bands: list[Band]) -> list[Band]:
    """Bands that meet at a seam get the same depth there, so that the seam's two sides are equal."""
    level = list(bands)
    for number, (before, after) in enumerate(pairwise(bands)):
        if after.parts[0].panel == before.parts[-1].panel + 1:
            depth = 0.5 * (before.right_depth + after.left_depth)
            moved = abs(depth - before.right_depth)
            here, beyond = level[number], level[number + 1]
            level[number] = replace(here, right_depth=depth, moved=max(here.moved, moved))
            level[number + 1] = replace(beyond, left_depth=depth, moved=moved)
    return level


def outline_in(band: Band, line: Line) -> Outline | None:
    """The stitch lines of a piece; None where its far edge runs into its sides."""
    left = distinct(part_of(band.parts[0].left, 0.0, band.left_depth))
    right = distinct(part_of(band.parts[-1].right, 0.0, band.right_depth))
    ends = np.stack((left[-1], right[-1]))
    along = band.inner[int(band.span[0]) + 1 : int(np.ceil(band.span[1]))]
    clear = np.hypot(*(along[:, None] - ends).T).min(axis=0) > _CLEAR + 2 * band.moved
    inner = distinct(np.concatenate((ends[:1], along[clear], ends[1:])))
    upper = line == "neckline"
    outline = (
        Outline(inner, right[::-1], band.outer, left[::-1])
        if upper
        else Outline(band.outer, right, inner, left)
    )
    return outline if shapely.is_simple(shapely.linearrings(outline.ring)) else None

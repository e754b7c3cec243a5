"""Facings of neckline and hem: the tops or feet of the panels, laid edge to edge with their seams closed.

Panels are moved, never bent. Where a seam curves so that the panels gape or overlap at the
far edge of the facing, a new piece begins there.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from math import atan2, cos, sin
from typing import Literal

import numpy as np

from workbench.draft import Finding, Panel
from workbench.pieces.crossing import first_crossing
from workbench.pieces.cutline import CutShape, Widths
from workbench.pieces.kinds import Kinds, choice_of, panels_in
from workbench.pieces.making import LayerChoice
from workbench.pieces.marks import fold_mark, grain_inside
from workbench.pieces.notches import Side, Stop, count_at, notches_on
from workbench.pieces.offset import set_out
from workbench.pieces.outline import Outline, distinct, lengths_along, outline_of
from workbench.pieces.panel_pieces import Bench, edges_of
from workbench.pieces.polyline import part_of
from workbench.pieces.result import Array, Notch, Piece

Line = Literal["neckline", "hem"]

WIDEST_GAP = 1.5
"""mm that two panels may gape or overlap at the far edge of a facing and still be cut in one
(common practice, no source)."""
_ROUND = 10.0
"""A facing's far edge follows the edge itself; its corners run out freely."""
_CLEAR = 1.0


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
    left_depth: float
    """How far down the left side the far edge meets it, mm."""
    right_depth: float


def facing_pieces(bench: Bench, line: Line) -> tuple[Piece, ...]:
    """The pieces of one facing; none, and a finding, where it is deeper than a panel is high."""
    choice = choice_of(bench.making, "top_facing" if line == "neckline" else "hem_facing")
    depth = bench.making.facing_depth_mm
    if not 0 < depth < float("inf"):
        bench.findings.append(_no_depth(line))
        return ()
    parts = [_part(bench, choice, panel, line) for panel in panels_in(choice, bench.draft)]
    bands = [_band(joined, depth, line) for joined in joined_parts(parts, depth)]
    if not all(bands):
        bench.findings.append(_too_deep(line, depth))
        return ()
    level = _levelled([band for band in bands if band])
    return tuple(_piece(bench, choice, band, line, number, len(level)) for number, band in enumerate(level))


def _part(bench: Bench, choice: LayerChoice, panel: Panel, line: Line) -> Part:
    own = outline_of(panel, *bench.turns(panel.index, choice.turn_mm))
    if line == "neckline":
        return Part(panel.index, own.neckline, own.left[::-1], own.right[::-1])
    return Part(panel.index, own.hem, own.left, own.right)


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


def _band(parts: tuple[Part, ...], depth: float, line: Line) -> Band | None:
    """The piece with its far edge; None where that does not meet the sides."""
    outer = np.concatenate([parts[0].line, *(part.line[1:] for part in parts[1:])])
    forward = outer if line == "neckline" else outer[::-1]
    inner = set_out([forward], [depth], _ROUND)[0].points
    inner = run_on(inner if line == "neckline" else inner[::-1], 4 * depth)
    left, right = first_crossing(parts[0].left, inner), first_crossing(parts[-1].right, inner)
    if left is None or right is None or left.second >= right.second:
        return None
    return Band(
        parts, outer, inner, _length_to(parts[0].left, left.first), _length_to(parts[-1].right, right.first)
    )


def run_on(line: Array, by: float) -> Array:
    """The line with a straight bit more at either end."""
    ahead, back = line[-1] - line[-2], line[0] - line[1]
    start, end = line[0] + by * back / np.hypot(*back), line[-1] + by * ahead / np.hypot(*ahead)
    return np.concatenate((start[None], line, end[None]))


def _length_to(side: Array, place: float) -> float:
    """Length in mm up to a place counted in bits."""
    return float(np.interp(place, np.arange(len(side)), lengths_along(side)))


def _levelled(bands: list[Band]) -> list[Band]:
    """Bands that meet at a seam get the same depth there, so that the seam's two sides are equal."""
    level = list(bands)
    for number, (before, after) in enumerate(pairwise(bands)):
        if after.parts[0].panel == before.parts[-1].panel + 1:
            depth = 0.5 * (before.right_depth + after.left_depth)
            level[number] = replace(level[number], right_depth=depth)
            level[number + 1] = replace(level[number + 1], left_depth=depth)
    return level


def _outline(band: Band, line: Line) -> Outline:
    left = part_of(band.parts[0].left, 0.0, band.left_depth)
    right = part_of(band.parts[-1].right, 0.0, band.right_depth)
    ends = np.stack((left[-1], right[-1]))
    along = band.inner[1:-1]
    run = ends[1] - ends[0]
    inside = ((along - ends[0]) @ run > 0) & ((along - ends[1]) @ run < 0)
    clear = np.hypot(*(along[:, None] - ends).T).min(axis=0) > _CLEAR
    inner = distinct(np.concatenate((ends[:1], along[inside & clear], ends[1:])))
    left, right = distinct(left), distinct(right)
    if line == "neckline":
        return Outline(inner, right[::-1], band.outer, left[::-1])
    return Outline(band.outer, right, inner, left)


def _piece(bench: Bench, choice: LayerChoice, band: Band, line: Line, number: int, count: int) -> Piece:
    first, last = band.parts[0].panel, band.parts[-1].panel
    kinds = _kinds(bench, first, last, line)
    folded = "fold" in kinds
    name = f"{'Top' if line == 'neckline' else 'Hem'} facing"
    if count > 1:
        name = f"{name} {number + 1}"
    shape = bench.cut([_outline(band, line)], [_widths(bench, choice, first, last, kinds)], [name])[0]
    return Piece(
        key=f"{choice.layer}/{name}",
        name=name,
        layer=choice.layer,
        count=1 if folded else 2,
        mirrored=not folded,
        on_fold=folded,
        panel=None,
        stitch=shape.outline.ring,
        cut=shape.ring,
        edges=edges_of(shape, kinds, first, last + 1),
        notches=(*_side_notches(bench, shape, band, line), *_seam_notches(bench, shape, band, line)),
        grain=grain_inside(shape.outline),
        marks=(fold_mark(shape.outline),) if folded else (),
    )


def _kinds(bench: Bench, first: int, last: int, line: Line) -> Kinds:
    left, right = bench.edging.side(first), bench.edging.side(last + 1)
    return ("free", right, "neckline", left) if line == "neckline" else ("hem", right, "free", left)


def _widths(bench: Bench, choice: LayerChoice, first: int, last: int, kinds: Kinds) -> Widths:
    def width(place: int, panel: int) -> float:
        return bench.edging.width(
            choice.layer, panel, ("hem", "right", "neckline", "left")[place], kinds[place]
        )

    return width(0, first), width(1, last), width(2, first), width(3, first)


def _side_notches(bench: Bench, shape: CutShape, band: Band, line: Line) -> tuple[Notch, ...]:
    """Levels on the two ends of the piece, where its seams are sewn."""
    first, last = band.parts[0].panel, band.parts[-1].panel + 1
    left = _stops(bench, first, band.left_depth, line) if bench.edging.side(first) != "fold" else (0.0, ())
    right = _stops(bench, last, band.right_depth, line)
    sides = [Side(shape, "left", first, *left), Side(shape, "right", last, *right)]
    one, other = notches_on(sides, bench.front)
    return one + other


def _stops(bench: Bench, seam: int, depth: float, line: Line) -> tuple[float, tuple[Stop, ...]]:
    """The walk at which a facing's side begins, and the stops of its seam that lie on it."""
    if line == "neckline":
        high = bench.draft.neckline.seam_walks[seam]
        low = high - depth
    else:
        low = bench.draft.hem.seam_walks[seam]
        high = low + depth
    return low, tuple(stop for stop in bench.stops[seam] if low + _CLEAR < stop.walk < high - _CLEAR)


def _seam_notches(bench: Bench, shape: CutShape, band: Band, line: Line) -> tuple[Notch, ...]:
    """Where the facing meets the closed seams of the panels it was joined from."""
    upper = line == "neckline"
    width = shape.widths[2 if upper else 0]
    walks = bench.draft.neckline.seam_walks if upper else bench.draft.hem.seam_walks
    found, place = [], 0
    for part in band.parts[:-1]:
        place += len(part.line) - 1
        seam = part.panel + 1
        ahead = band.outer[place + 1] - band.outer[place - 1]
        out = np.array([-ahead[1], ahead[0]] if upper else [ahead[1], -ahead[0]]) / np.hypot(*ahead)
        (x, y), (dx, dy) = (band.outer[place] + width * out).tolist(), (-out).tolist()
        found.append(Notch((x, y), (dx, dy), count_at(seam, bench.front), line, walks[seam], seam, "seam"))
    return tuple(found)


def _too_deep(line: Line, depth: float) -> Finding:
    return Finding(
        "attend",
        "facing_too_deep",
        "A facing {depth} deep does not fit at the {line}; it is left out.",
        {"depth": depth},
        {"line": line},
        remedy="Make the facing less deep, or leave out the panels that are too low for it.",
    )


def _no_depth(line: Line) -> Finding:
    return Finding(
        "attend",
        "facing_no_depth",
        "The facing of the {line} has no depth; it is left out.",
        words={"line": line},
        remedy="Give the facings a depth.",
    )

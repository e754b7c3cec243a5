"""Cut lines: four edges set out, and the corners between them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

import numpy as np

from workbench.frozen import dataclass
from workbench.pieces.corners import Corner, Frame, Points, folded_back
from workbench.pieces.crossing import first_crossing
from workbench.pieces.offset import SetOut, set_out
from workbench.pieces.outline import Outline
from workbench.pieces.polyline import Array

Widths = tuple[float, float, float, float]
"""Allowances in the order of the ring: hem, right, neckline, left, mm."""
Range = tuple[int, int]
T = TypeVar("T")

Corners = tuple[Corner, Corner, Corner, Corner]

_NONE = (0.0, 0.0, 0.0, 0.0)
_LEAST_LIMIT = 1.05
"""Below one, even a straight line would be cut off (own choice)."""


@dataclass(frozen=True)
class CutShape:
    """One piece with its cut line."""

    outline: Outline
    widths: Widths
    ring: Array
    """(n, 2) closed, anticlockwise, the first point not repeated."""
    kept: tuple[Range, Range, Range, Range]
    """Of each edge, the points of its stitch line (first, one past the last, as the ring runs) that have a
    point of the cut line straight out from them; (0, 0) where the line was mended."""
    spans: tuple[Range, Range, Range, Range]
    """Of each edge, the points of ``ring`` (first, one past the last) that were set out from it."""
    cornered: tuple[bool, bool, bool, bool]
    """Edges with an outward corner, at which the cut line lies further out than the allowance."""
    hollow: tuple[bool, bool, bool, bool]
    """Edges more hollow than their allowance can follow."""
    corners: Corners
    """After hem, right, neckline and left."""


def cut_shapes(outlines: Sequence[Outline], widths: Sequence[Widths], limit: float) -> list[CutShape]:
    """The cut line of every piece; a corner runs out at most ``limit`` allowances."""
    if not outlines:
        return []
    limit = max(limit, _LEAST_LIMIT)
    wide = [row for row, four in enumerate(widths) if any(four)]
    lines = [line for row in wide for line in outlines[row].in_ring]
    moved = set_out(lines, [width for row in wide for width in widths[row]], limit)
    cut = {
        row: _shape(outlines[row], widths[row], moved[4 * place : 4 * place + 4], limit)
        for place, row in enumerate(wide)
    }
    return [cut.get(row) or _net(outline) for row, outline in enumerate(outlines)]


def _net(outline: Outline) -> CutShape:
    """A piece without allowance: it is cut along its stitch line, begun after the first corner."""
    ring = np.concatenate((outline.ring[1:], outline.ring[:1]))
    kept, spans, corners, place = [], [], [], 0
    for edge in outline.in_ring:
        last = len(edge) - 1
        kept.append((1, last))
        spans.append((place, place + last - 1))
        place += last
        x, y = edge[-1].tolist()
        corners.append(Corner([(x, y)], 1, 1))
    none = (False, False, False, False)
    return CutShape(outline, _NONE, ring, _four(kept), _four(spans), none, none, _four(corners))


def _shape(outline: Outline, widths: Widths, moved: list[SetOut], limit: float) -> CutShape:
    hem, right, neckline, left = (edge.points.tolist() for edge in moved)
    wide_hem, wide_right, wide_neckline, wide_left = widths
    frames = _frames(outline, moved)
    corners = (
        folded_back(frames[0], hem[::-1], wide_hem, right, wide_right, limit),
        folded_back(frames[1], neckline, wide_neckline, right[::-1], wide_right, limit),
        folded_back(frames[2], neckline[::-1], wide_neckline, left, wide_left, limit),
        folded_back(frames[3], hem, wide_hem, left[::-1], wide_left, limit),
    )
    corners = _not_past_each_other(corners, len(right), len(left))
    ranges = (
        (corners[3].line_from, len(hem) - corners[0].line_from),
        (corners[0].seam_from, len(right) - corners[1].seam_from),
        (corners[1].line_from, len(neckline) - corners[2].line_from),
        (corners[2].seam_from, len(left) - corners[3].seam_from),
    )
    ring, spans = _ring(moved, ranges, corners)
    return CutShape(
        outline,
        widths,
        ring,
        _four([(0, 0) if edge.mended else own for edge, own in zip(moved, ranges, strict=True)]),
        _four(spans),
        _four([edge.cornered for edge in moved]),
        _four([edge.hollow for edge in moved]),
        corners,
    )


def _four(values: Sequence[T]) -> tuple[T, T, T, T]:
    one, two, three, four = values
    return one, two, three, four


def _not_past_each_other(corners: Corners, right: int, left: int) -> Corners:
    """On a short side the folded ends may cross before they reach its cut line; both end there."""
    low_right, high_right, high_left, low_left = corners
    if low_right.seam_from + high_right.seam_from > right:
        low_right, high_right = _ended(low_right, high_right)
    if low_left.seam_from + high_left.seam_from > left:
        low_left, high_left = _ended(low_left, high_left)
    return low_right, high_right, high_left, low_left


def _ended(one: Corner, other: Corner) -> tuple[Corner, Corner]:
    if min(len(one.points), len(other.points)) < 2:
        return one, other
    found = first_crossing(np.array(one.points), np.array(other.points))
    if found is None:
        return one, other
    tip: Points = [(float(found.point[0]), float(found.point[1]))]
    return (
        one._replace(points=one.points[: int(found.first) + 1] + tip),
        other._replace(points=other.points[: int(found.second) + 1]),
    )


def _frames(outline: Outline, moved: list[SetOut]) -> tuple[Frame, Frame, Frame, Frame]:
    """At either end of the right side, then of the left one, as the ring runs."""
    _, right, _, left = moved
    low_right, high_right = outline.right[0].tolist(), outline.right[-1].tolist()
    low_left, high_left = outline.left[0].tolist(), outline.left[-1].tolist()
    return (
        Frame(low_right, _backward(right.start), right.start),
        Frame(high_right, _forward(right.end), right.end),
        Frame(high_left, _backward(left.start), left.start),
        Frame(low_left, _forward(left.end), left.end),
    )


def _forward(out: tuple[float, float]) -> tuple[float, float]:
    """As the ring runs, from straight out."""
    return -out[1], out[0]


def _backward(out: tuple[float, float]) -> tuple[float, float]:
    return out[1], -out[0]


def _ring(
    moved: list[SetOut], ranges: Sequence[Range], corners: Sequence[Corner]
) -> tuple[Array, list[Range]]:
    """The ring, and where in it each edge lies."""
    parts: list[Array | Points] = []
    spans, place = [], 0
    for number, (edge, (first, end), corner) in enumerate(zip(moved, ranges, corners, strict=True)):
        own = edge.points[first : max(end, first)]
        # a corner is listed from neckline or hem to the seam; the ring leaves every second one the other way
        round_it = corner.points[::-1] if number % 2 else corner.points
        parts += [own, round_it]
        spans.append((place, place + len(own)))
        place += len(own) + len(round_it)
    return np.concatenate(parts), spans

"""The end of a seam allowance, folded back true.

Pressed open, an allowance lies under the cloth; its end must then run edge to edge with the
neckline or hem above it. So it is cut along the mirror image of that cut line in the stitch
line of the seam (common practice, no source). A corner that would run out far is cut blunt.

Worked in plain numbers in a frame at the corner: ``s`` runs along the seam out of the piece, ``h``
across it, away from the panel. A corner has few points; arrays would cost more. Figures are own
choice, what counts as met, unless said.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot
from typing import NamedTuple

Point = tuple[float, float]
Points = list[Point]

_FAR = 1000.0
"""mm a line is run on where it is too short to be met."""
_LEVEL = 1e-9
_CLOSE = 1e-6
"""mm within which two points of a cut line are one."""


class Frame(NamedTuple):
    """Where a seam ends: the corner of the stitch lines, along the seam, and across it, unit vectors."""

    corner: Point
    along: Point
    across: Point

    def into(self, x: float, y: float) -> Point:
        """(s, h) of a point on the flat."""
        (cx, cy), (ax, ay), (bx, by) = self
        dx, dy = x - cx, y - cy
        return dx * ax + dy * ay, dx * bx + dy * by


class Corner(NamedTuple):
    """Cut line round a corner."""

    points: Points
    """From the line (neckline or hem) to the seam."""
    line_from: int
    """The first point that is kept of the line's cut line, counted from the corner."""
    seam_from: int
    """The same of the seam's."""


class _Seam:
    """The seam's cut line as a height over s; straight on beyond either end."""

    def __init__(self, frame: Frame, points: Points) -> None:
        self._frame, self._points, self._last = frame, points, len(points) - 1
        self._known = [frame.into(*points[0])]
        self._place = 0
        self.end = frame.into(*points[-1])[0]
        """s of its last point, at the other end of the seam."""

    def height(self, s: float) -> float:
        """h of the seam's cut line at s."""
        place, known, beyond = self._place, self._known, s - _CLOSE
        # as a rule it is asked a little further in than before; what lies ahead is looked at elsewhere
        if known[place][0] > beyond or (place > 0 and known[place - 1][0] <= beyond):
            place = self.after(s)
        if place == 0:
            return known[0][1]
        (s0, h0), (s1, h1) = known[place - 1], known[place]
        return h0 + (h1 - h0) * (s0 - s) / (s0 - s1) if s0 > s1 else h1

    def after(self, s: float) -> int:
        """The first point of the cut line that lies further in than s; the last one where none does."""
        place, known, beyond = self._place, self._known, s - _CLOSE
        while place < self._last and known[place][0] > beyond:
            place += 1
            if place == len(known):
                x, y = self._points[place]
                known.append(self._frame.into(x, y))
        while place > 0 and known[place - 1][0] <= beyond:
            place -= 1
        self._place = place
        return place


def folded_back(
    frame: Frame, line: Points, line_width: float, seam: Points, seam_width: float, limit: float
) -> Corner:
    """The corner between a line and a seam, from their cut lines, each listed from the corner inwards.

    A corner may run out ``limit`` times as far from the corner of the stitch lines as the far
    corner of a rectangle of the two allowances would; a peak, ``limit`` times the line's own.
    """
    if line_width == 0 and seam_width == 0:
        return Corner([frame.corner], 1, 1)
    middle, kept = _on_seam_line(frame, line, line_width)
    cut = _Seam(frame, seam)
    path = [middle, *_mirrored(frame, line, kept, middle, cut)] if seam_width > 0 else [middle]
    peak, reach = limit * line_width, limit * hypot(line_width, seam_width)
    if middle[0] > peak and kept == 0:
        path, kept = _without_peak(frame, line, path, peak, cut)
    if seam_width == 0:
        return Corner([*_out_of(frame, path), frame.corner], kept, 1)
    if path[-1][0] > 0 and hypot(*path[-1]) > reach:
        path, kept = _without_spike(frame, line, kept, path, reach)
    return Corner(_out_of(frame, path), kept, cut.after(path[-1][0]))


def _out_of(frame: Frame, path: Points) -> Points:
    """The points of a path on the flat."""
    (cx, cy), (ax, ay), (bx, by) = frame
    return [(cx + s * ax + h * bx, cy + s * ay + h * by) for s, h in path]


def _on_seam_line(frame: Frame, line: Points, width: float) -> tuple[Point, int]:
    """Where the line's cut line, run on straight, meets the seam's stitch line, run on straight."""
    if width == 0:
        return (0.0, 0.0), 1
    before = frame.into(*line[0])
    if before[1] <= _LEVEL:
        return _level(frame.into(*line[1]), before), 0
    for place in range(1, len(line)):
        here = frame.into(*line[place])
        if here[1] <= 0:
            return _level(before, here), place
        before = here
    return _level(frame.into(*line[-2]), before), len(line)


def _level(one: Point, other: Point) -> Point:
    """Where the straight line through two points has h = 0."""
    rise = other[1] - one[1]
    return other[0] - (other[0] - one[0]) * other[1] / rise if abs(rise) > _LEVEL else other[0], 0.0


def _mirrored(frame: Frame, line: Points, kept: int, middle: Point, seam: _Seam) -> Points:
    """The mirror image of the line's cut line in the seam, from its middle out to the seam's cut line."""
    path: Points = []
    before, end, height = middle, seam.end, seam.height
    for here in _images(frame, line, kept, middle):
        s, h = here
        if h >= height(s):
            path.append(_met(before, here, seam))
            return path
        if s < end < before[0]:
            # it tapers off past the other end of a short seam
            path.append((end, _height_at(end, before, here)))
            return path
        path.append(here)
        before = here
    # it runs away along the seam: end the allowance square
    return [*path, (0.0, seam.height(0.0))]


def _images(frame: Frame, line: Points, kept: int, middle: Point) -> Iterator[Point]:
    """The mirror image, point by point, run on straight beyond its last one."""
    (cx, cy), (ax, ay), (bx, by) = frame
    for place in range(kept, len(line)):
        x, y = line[place]
        dx, dy = x - cx, y - cy
        yield dx * ax + dy * ay, -(dx * bx + dy * by)
    before, here = _mirror(frame.into(*line[-2])), _mirror(frame.into(*line[-1]))
    ds, dh = here[0] - before[0], here[1] - before[1]
    start, long = here if kept < len(line) else middle, hypot(ds, dh)
    yield start[0] + _FAR * ds / long, start[1] + _FAR * dh / long


def _mirror(point: Point) -> Point:
    return point[0], -point[1]


def _met(inside: Point, beyond: Point, seam: _Seam) -> Point:
    """Where the straight line between two points meets the seam's cut line (false position, Illinois)."""
    low, high = 0.0, 1.0
    gap_low, gap_high = inside[1] - seam.height(inside[0]), beyond[1] - seam.height(beyond[0])
    s, h = beyond
    for turn in range(60):
        part = low - gap_low * (high - low) / (gap_high - gap_low) if gap_high > gap_low else high
        s = inside[0] + part * (beyond[0] - inside[0])
        h = inside[1] + part * (beyond[1] - inside[1])
        gap = h - seam.height(s)
        if abs(gap) < _LEVEL:
            break
        if gap > 0:
            high, gap_high, gap_low = part, gap, gap_low * (0.5 if turn else 1.0)
        else:
            low, gap_low, gap_high = part, gap, gap_high * (0.5 if turn else 1.0)
    return s, h


def _without_peak(frame: Frame, line: Points, path: Points, peak: float, seam: _Seam) -> tuple[Points, int]:
    """A corner that rises to a point over the seam, cut level at ``peak``."""
    before, passed = path[0], 0
    for here in _images(frame, line, 0, path[0]):
        if here[0] <= peak:
            break
        before, passed = here, passed + 1
    else:
        return path, 0
    h, kept = _height_at(peak, before, here), min(passed, len(line))
    if h >= seam.height(peak):
        return [(peak, -h), (peak, seam.height(peak))], kept
    return [(peak, -h), (peak, h), *(point for point in path if point[0] < peak)], kept


def _without_spike(frame: Frame, line: Points, kept: int, path: Points, reach: float) -> tuple[Points, int]:
    """A corner that runs out along the seam, cut square to its own direction at ``reach``."""
    tip = path[-1]
    far = hypot(*tip)
    s, h = tip[0] / far, tip[1] / far
    while len(path) > 1 and _beyond(path[-2], s, h, reach):
        path = path[:-1]
    side = ((reach - h * tip[1]) / s, tip[1])
    if len(path) > 1:
        return [*path[:-1], _cut_at(path[-2], path[-1], s, h, reach), side], kept
    # even the middle is too far out: back along the line's own cut line
    beyond = path[0]
    while kept > 0:
        kept -= 1
        here = frame.into(*line[kept])
        if here[1] >= tip[1]:
            part = (tip[1] - beyond[1]) / (here[1] - beyond[1])
            return [(beyond[0] + part * (here[0] - beyond[0]), tip[1])], kept + 1
        if not _beyond(here, s, h, reach):
            return [_cut_at(here, beyond, s, h, reach), side], kept + 1
        beyond = here
    return [side], 0


def _height_at(s: float, high: Point, low: Point) -> float:
    """h at s on the straight line between two points that lie on either side of it."""
    return high[1] + (low[1] - high[1]) * (high[0] - s) / (high[0] - low[0])


def _beyond(point: Point, s: float, h: float, reach: float) -> bool:
    return point[0] * s + point[1] * h > reach


def _cut_at(inside: Point, beyond: Point, s: float, h: float, reach: float) -> Point:
    """Where the straight line between two points is ``reach`` away along (s, h)."""
    near, far = inside[0] * s + inside[1] * h, beyond[0] * s + beyond[1] * h
    part = (reach - near) / (far - near)
    return inside[0] + part * (beyond[0] - inside[0]), inside[1] + part * (beyond[1] - inside[1])

"""The bodice on the body seen from one side: shapes and lines on the picture, mm, y up from the waist.

The eye is far away and looks level, or down on her a little. Each section is convex and lies level,
so what faces the eye hides nothing and is hidden by nothing: the near half of every section is what
is seen, from one horizon to the other. Shapes are held to it, lines end at it. Figures are own
choice, what is seen and how it is lit.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import cos, pi, radians, sin
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import NDArray

from workbench.body import LevelName
from workbench.worn.sections import RING, ROWS, Sections
from workbench.worn.torso import Array
from workbench.worn.worn import Track, Worn

LineRole = Literal["seam", "centre", "edge", "neckline", "hem", "bone", "lacing"]
Box = tuple[float, float, float, float]
Numbers = NDArray[np.intp]

FRONT, THREE_QUARTER, SIDE, BACK = 0.0, 45.0, 90.0, 180.0
"""Degrees that the eye has walked round her, towards her left."""

_QUARTER = 0.25
"""Of the girth: from the middle of what is seen to either horizon."""
_LIGHT = 0.05
"""The light falls from so far beside the eye, as a share of the girth."""
_ARC = np.linspace(-_QUARTER, _QUARTER, 29)
_FINE_ARC = np.linspace(-_QUARTER, _QUARTER, 145)


class Eye(NamedTuple):
    """From where she is looked at, in degrees: how far round her from the front, and down on her."""

    degrees: float = FRONT
    down: float = 0.0


class SeenPanel(NamedTuple):
    """What is seen of one panel."""

    number: int
    """Counted from 0 at the centre front."""
    mirrored: bool
    """Whether it is the one on the wearer's right."""
    ring: Array
    """(n, 2)"""
    facing: float
    """1 where it faces the light, 0 where it turns away."""


class SeenLine(NamedTuple):
    """What is seen of one line, in one piece."""

    role: LineRole
    points: Array
    """(n, 2)"""
    seam: int | None = None
    """Number of the seam, 0 at the centre front; None for what is none."""


@dataclass(frozen=True, eq=False, repr=False)
class Seen:
    """All that is seen, nearest last."""

    eye: Eye
    body: Array
    """(n, 2) ring round the body as it is worn."""
    rim: Array
    """(n, 2) the near edge of its top."""
    before: tuple[Array, Array]
    """(rows, 2) left and right outline of the body as it was measured."""
    worn: tuple[Array, Array]
    """(rows, 2) the same as it is worn."""
    levels: dict[LevelName, Array]
    """(n, 2) each level line, from the left horizon to the right one."""
    panels: tuple[SeenPanel, ...]
    lines: tuple[SeenLine, ...]

    @property
    def box(self) -> Box:
        """Left, bottom, right, top of body and garment, before and after."""
        points = np.concatenate((self.body, *self.before))
        left, bottom = points.min(axis=0).tolist()
        right, top = points.max(axis=0).tolist()
        return left, bottom, right, top


class Sight:
    """One bodice from one side: places on it to points of the picture, and back."""

    def __init__(self, worn: Worn, eye: Eye) -> None:
        self.worn, self.eye = worn, eye
        turned = eye.degrees % 360.0
        self._across, self._deep, horizon = _turned(worn.stand.sections, turned)
        self._horizon = horizon
        self._sin, self._cos = sin(radians(turned)), cos(radians(turned))
        self._down, self._level = sin(radians(eye.down)), cos(radians(eye.down))

    @cached_property
    def middle(self) -> Array:
        """(rows,) the share of the girth in the middle of what is seen; it runs on past the whole."""
        return self._horizon - _QUARTER

    def points(self, row: Array, share: Array, girths: Array | None = None) -> Array:
        """(n, 2) of the picture: shares of the girth at rows, for the body as worn or of other girths."""
        low, part = _split(row)
        around = (share - np.floor(share)) * RING
        step = np.minimum(around.astype(np.intp), RING - 1)
        along = around - step
        at = low * (RING + 1) + step
        stand = self.worn.stand
        girth = _between(self.worn.girths if girths is None else girths, low, part)
        forward = _between(stand.forward, low, part)
        across = _four(self._across, at, part, along) * girth - forward * self._sin
        deep = _four(self._deep, at, part, along) * girth + forward * self._cos
        height = _between(stand.heights, low, part)
        return np.stack((across, height * self._level - deep * self._down), axis=1)

    def aside(self, row: Array, share: Array) -> Array:
        """How far to the right of the middle of what is seen each place lies, in shares of the girth.

        A quarter is the horizon. May be off by a whole round.
        """
        low, part = _split(row)
        aside: Array = share - _between(self.middle, low, part)
        return aside

    def faces(self, row: float, share: float) -> bool:
        """Whether a place is on the near half."""
        aside = float(self.aside(np.array([row]), np.array([share]))[0])
        return abs(aside - round(aside)) <= _QUARTER

    def place_at(self, x: float, y: float) -> tuple[float, float] | None:
        """Row and share of the near half under a point of the picture; None beside the body.

        The height is known only when the depth is, and the depth hangs on the height: a few
        rounds agree to a hundredth of a millimetre, as she is looked down on but a little.
        """
        stand, rows = self.worn.stand, np.arange(ROWS, dtype=np.float64)
        heights = stand.heights * self._level
        row = float(np.interp(y, heights, rows))
        share, near = 0.0, np.zeros((2, 2))
        for _ in range(_ROUNDS):
            shares = _FINE_ARC + float(np.interp(row, rows, self.middle))
            near = self.points(np.full(len(_FINE_ARC), row), shares)
            share = float(np.interp(x, near[:, 0], shares))
            drop = float(np.interp(row, rows, heights)) - float(np.interp(x, near[:, 0], near[:, 1]))
            before, row = row, float(np.interp(y + drop, heights, rows))
            if abs(row - before) < _SAME_ROW:
                break
        reach = self.points(
            np.full(2, row), np.array([-_QUARTER, _QUARTER]) + float(np.interp(row, rows, self.middle))
        )
        return (row, share) if reach[0, 0] - _BESIDE <= x <= reach[1, 0] + _BESIDE else None


_ROUNDS, _SAME_ROW = 40, 1e-4
_BESIDE = 12.0
"""mm beside the horizon that still count as on it."""


def seen_from(worn: Worn, eye: Eye) -> Seen:
    """What is seen of a bodice on its body."""
    sight = Sight(worn, eye)
    rings, lines = _all_of(worn)
    shapes, panels = _near_shapes(sight, rings)
    strokes, runs = _near_lines(sight, lines)
    rows = np.arange(ROWS, dtype=np.float64)
    levels = list(worn.levels)
    level_rows = np.repeat([worn.levels[name] for name in levels], len(_ARC))
    level_shares = (sight.middle[level_rows.astype(np.intp)].reshape(-1, len(_ARC)) + _ARC).ravel()
    sides = np.concatenate((sight.middle - _QUARTER, sight.middle + _QUARTER))
    top = np.full(2 * len(_ARC), rows[-1])
    rims = np.concatenate((sight.middle[-1] + _ARC, sight.middle[-1] + 0.5 + _ARC))
    foot = sight.middle[0] + _ARC
    parts = (
        shapes,
        strokes,
        Track(level_rows, level_shares),
        Track(np.tile(rows, 2), sides),
        Track(top, rims),
        Track(np.zeros(len(foot)), foot),
    )
    points = sight.points(
        np.concatenate([part.row for part in parts]), np.concatenate([part.share for part in parts])
    )
    ring_points, line_points, level_points, side_points, rim_points, foot_points = np.split(
        points, np.cumsum([len(part.row) for part in parts])[:-1]
    )
    near, far = np.split(rim_points, 2)
    left, right = np.split(side_points, 2)
    before = sight.points(np.tile(rows, 2), sides, worn.stand.girths)
    return Seen(
        eye=eye,
        body=np.concatenate((left, far[::-1], right[::-1], foot_points[::-1])),
        rim=near,
        before=(before[:ROWS], before[ROWS:]),
        worn=(left, right),
        levels=dict(zip(levels, np.split(level_points, len(levels)), strict=True)),
        panels=tuple(
            SeenPanel(number, mirrored, ring_points[part], facing)
            for number, mirrored, part, facing in panels
        ),
        lines=tuple(SeenLine(role, line_points[part], seam) for role, seam, part in runs),
    )


_What = tuple[LineRole, int | None]


@dataclass(frozen=True, eq=False, repr=False)
class _Bundle:
    """Many tracks in one, of both halves; each is followed by its mirror image."""

    track: Track
    starts: Numbers
    """Where each begins."""
    counts: Numbers
    group: Numbers
    """(n,) which one each point belongs to."""
    what: tuple[_What, ...] = ()
    """Of each line, both halves together."""


@lru_cache(maxsize=2)
def _all_of(worn: Worn) -> tuple[_Bundle, _Bundle]:
    """The rings and the lines of a bodice, which are the same from every side."""
    first, *inner, last = worn.seams
    lines: list[tuple[LineRole, int | None, Track]] = [("bone", None, bone) for bone in worn.bones]
    lines += [("lacing", None, strand) for strand in worn.lacing]
    lines += [("seam", number, seam) for number, seam in enumerate(inner, start=1)]
    lines += [("centre", 0, first), ("edge", len(inner) + 1, last)]
    lines += [("hem", None, worn.lines["hem"]), ("neckline", None, worn.lines["neckline"])]
    what = tuple((role, number) for role, number, _ in lines)
    return _bundle(worn.outlines), _bundle([track for *_, track in lines], what)


def _bundle(tracks: Sequence[Track], what: tuple[_What, ...] = ()) -> _Bundle:
    counts = np.repeat([len(track.row) for track in tracks], 2)
    return _Bundle(
        Track(
            np.concatenate([track.row for track in tracks for _ in range(2)]),
            np.concatenate([side for track in tracks for side in (track.share, -track.share)]),
        ),
        np.concatenate(([0], np.cumsum(counts)[:-1])),
        counts,
        np.repeat(np.arange(len(counts)), counts),
        what,
    )


_Shapes = list[tuple[int, bool, slice, float]]


def _near_shapes(sight: Sight, rings: _Bundle) -> tuple[Track, _Shapes]:
    """The rings that are seen at all, held to the near half, and which part is which panel."""
    row = rings.track.row
    aside = sight.aside(row, rings.track.share)
    mean = np.add.reduceat(aside, rings.starts) / rings.counts
    aside -= np.repeat(np.round(mean), rings.counts)
    held = np.clip(aside, -_QUARTER, _QUARTER)
    near = np.logical_or.reduceat(held == aside, rings.starts)
    facing = np.cos(2 * pi * (np.add.reduceat(held, rings.starts) / rings.counts + _LIGHT)).tolist()
    kept = np.repeat(near, rings.counts)
    shown = Track(row[kept], (rings.track.share - aside + held)[kept])
    shapes: _Shapes = []
    at = 0
    for number in np.flatnonzero(near).tolist():
        count = int(rings.counts[number])
        shapes.append((number // 2, number % 2 == 1, slice(at, at + count), facing[number]))
        at += count
    return shown, shapes


def _near_lines(sight: Sight, lines: _Bundle) -> tuple[Track, list[tuple[LineRole, int | None, slice]]]:
    """The pieces of lines that are seen, to the horizon, and the role of each."""
    row, share = lines.track.row, lines.track.share
    aside = sight.aside(row, share)
    aside -= np.round(aside)
    held = np.clip(aside, -_QUARTER, _QUARTER)
    near = held == aside
    drawn = (near[:-1] | near[1:]) & (lines.group[:-1] == lines.group[1:])
    ends = np.flatnonzero(np.diff(np.concatenate(([False], drawn, [False])).astype(np.int8)))
    # a piece may begin where another of the same line ends, so points are taken piece by piece
    pieces = list(zip(ends[::2].tolist(), ends[1::2].tolist(), strict=True))
    if not pieces:
        return Track(row[:0], share[:0]), []
    taken = np.concatenate([np.arange(first, last + 1) for first, last in pieces])
    row = _cut_at_horizon(row, aside, ends[::2], ends[1::2])
    runs: list[tuple[LineRole, int | None, slice]] = []
    at = 0
    for first, last in pieces:
        count = last + 1 - first
        runs.append((*lines.what[int(lines.group[first]) // 2], slice(at, at + count)))
        at += count
    return Track(row[taken], (share - aside + held)[taken]), runs


def _cut_at_horizon(row: Array, aside: Array, first: Numbers, last: Numbers) -> Array:
    """The rows, with the ends of the pieces that lie beyond the horizon brought back to it."""
    row = row.copy()
    for end, inward in ((first, 1), (last, -1)):
        beyond = end[np.abs(aside[end]) > _QUARTER]
        out, within = np.abs(aside[beyond]), np.abs(aside[beyond + inward])
        part = (_QUARTER - within) / np.maximum(out - within, 1e-9)
        row[beyond] = row[beyond + inward] + part * (row[beyond] - row[beyond + inward])
    return row


@lru_cache(maxsize=4)
def _turned(sections: Sections, degrees: float) -> tuple[Array, Array, Array]:
    """Across and deep (rows * (RING + 1),) of unit sections, and the share (rows,) at the right horizon."""
    s, c = sin(radians(degrees)), cos(radians(degrees))
    across, deep = sections.x * c - sections.z * s, sections.x * s + sections.z * c
    return across.ravel(), deep.ravel(), _horizon_of(across[:, :-1], degrees / 360.0)


def _horizon_of(across: Array, turned: float) -> Array:
    """The share at which each ring reaches furthest to the right, between two of its points by a parabola."""
    number = np.arange(len(across))
    most = across.argmax(axis=1)
    left, here, right = (across[number, (most + step) % RING] for step in (-1, 0, 1))
    bend = np.minimum(left + right - 2 * here, -1e-12)
    share = (most + 0.5 * (left - right) / bend) / RING
    expected = _QUARTER + turned
    horizon: Array = share - np.round(share - expected)
    return horizon


def _split(row: Array) -> tuple[Numbers, Array]:
    low = np.minimum(row.astype(np.intp), ROWS - 2)
    return low, row - low


def _between(values: Array, low: Numbers, part: Array) -> Array:
    here = values[low]
    found: Array = here + part * (values[low + 1] - here)
    return found


def _four(table: Array, at: Numbers, part: Array, along: Array) -> Array:
    """Between the four places of a table of rows round about."""
    here, beyond = table[at], table[at + RING + 1]
    low = here + along * (table[at + 1] - here)
    high = beyond + along * (table[at + RING + 2] - beyond)
    found: Array = low + part * (high - low)
    return found

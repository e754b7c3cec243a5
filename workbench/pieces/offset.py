"""Lines set out by their allowance, each edge by its own.

A point of a line is moved so that every straight bit of it lands at exactly the allowance. Where a
line is hollow and tighter than its allowance the moved bits run backwards; there it is cut off
where its two arms meet. Where a line has a sharp outward corner, it is cut blunt. Figures are own
choice, what counts as a corner or as met, unless said.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from workbench.frozen import dataclass
from workbench.pieces.crossing import first_crossing, without_loops
from workbench.pieces.outline import distinct
from workbench.pieces.polyline import Array

_NEAR = 1e-6
"""mm by which a point of the cut line may lie nearer to its stitch line than the allowance."""
_POINTED = 0.05
"""mm by which a corner must run out further than the allowance to count as one."""
_TURNED_BACK = -0.9999
_ARM = 4
"""Bits of either arm that are looked at for the place where they meet."""


@dataclass(frozen=True)
class SetOut:
    """One line at its allowance."""

    points: Array
    """(m, 2); point for point with the stitch line unless it is mended."""
    start: tuple[float, float]
    """Unit vector straight out at the first point of the stitch line."""
    end: tuple[float, float]
    mended: bool = False
    """Cut off in a hollow, or cut blunt at a corner."""
    cornered: bool = False
    """Has an outward corner, at which its cut line lies further out than the allowance."""
    hollow: bool = False
    """Cut off because the line is more hollow than its allowance can follow."""


def set_out(lines: Sequence[Array], widths: Sequence[float], limit: float) -> list[SetOut]:
    """Each line (n, 2) moved to its right, as it runs, by its width in mm.

    A corner inside a line runs out at most ``limit`` widths. All lines are handled at once.
    """
    if not lines:
        return []
    counts = np.array([len(line) for line in lines])
    lasts = np.cumsum(counts) - 1
    firsts = lasts - counts + 1
    points = np.concatenate(lines)
    before, after = _normals(points, firsts, lasts)
    # a line that turned right back would have its corner infinitely far out
    cosine = np.maximum(np.einsum("ij,ij->i", before, after), _TURNED_BACK)
    width = np.repeat(np.array(widths), counts)
    moved = points + (before + after) * (width / (1 + cosine))[:, None]
    back = np.einsum("ij,ij->i", np.diff(moved, axis=0), np.diff(points, axis=0)) < 0
    back[lasts[:-1]] = False
    turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    sharp = (cosine < 2 / (limit * limit) - 1) & (turn > 0) & (width > 0)
    hollow = set(np.searchsorted(lasts, np.flatnonzero(back)).tolist())
    pointed = (width * (np.sqrt(2 / (1 + cosine)) - 1) > _POINTED) & (turn > 0)
    cornered = set(np.searchsorted(lasts, np.flatnonzero(pointed)).tolist())
    mend = hollow | set(np.searchsorted(lasts, np.flatnonzero(sharp)).tolist())
    starts, ends = after[firsts].tolist(), before[lasts].tolist()
    found = []
    for row, (first, last) in enumerate(zip(firsts.tolist(), lasts.tolist(), strict=True)):
        own = slice(first, last + 1)
        cut = moved[own]
        if row in mend:
            cut = _blunted(points[own], cut, sharp[own], cosine[own], widths[row], limit)
            if row in hollow:
                cut = distinct(without_loops(_cut_off(points[own], cut, widths[row])))
        (sx, sy), (ex, ey) = starts[row], ends[row]
        found.append(SetOut(cut, (sx, sy), (ex, ey), row in mend, row in cornered, row in hollow))
    return found


def _normals(points: Array, firsts: Array, lasts: Array) -> tuple[Array, Array]:
    """Unit vectors (n, 2) to the right of the bit before and the bit after each point."""
    steps = np.diff(points, axis=0)
    length = np.hypot(steps[:, 0], steps[:, 1])
    length[lasts[:-1]] = 1.0
    right = np.stack((steps[:, 1], -steps[:, 0]), axis=1) / length[:, None]
    before, after = np.empty_like(points), np.empty_like(points)
    before[1:], after[:-1] = right, right
    before[firsts] = after[firsts]
    after[lasts] = before[lasts]
    return before, after


def _blunted(points: Array, moved: Array, sharp: Array, cosine: Array, width: float, limit: float) -> Array:
    """The moved line with two points in place of each corner that runs out too far."""
    parts, done = [], 0
    for place in np.flatnonzero(sharp).tolist():
        out = moved[place] - points[place]
        reach = float(np.hypot(*out))
        out = out / reach
        half = (reach - limit * width) * np.sqrt((1 + cosine[place]) / (1 - cosine[place]))
        along = np.array([-out[1], out[0]])
        middle = points[place] + limit * width * out
        parts += [moved[done:place], [middle - half * along, middle + half * along]]
        done = place + 1
    return np.concatenate([*parts, moved[done:]]) if parts else moved


def _cut_off(stitch: Array, moved: Array, width: float) -> Array:
    """The moved line without what lies nearer to the stitch line than its width."""
    import shapely  # hardly any line is so hollow, and a window that opens shall not wait for it

    away = shapely.distance(shapely.points(moved), shapely.linestrings(stitch))
    far = away >= width - _NEAR
    # the corner of a hollow stays by itself; its arms meet nearby, and truly
    far[1:-1] &= far[:-2] | far[2:]
    good = np.flatnonzero(far)
    if len(good) < 2:
        return moved
    breaks = np.flatnonzero(np.diff(good) > 1)
    parts, start = [], int(good[0])
    for last, following in zip(good[breaks].tolist(), good[breaks + 1].tolist(), strict=True):
        parts += [moved[start : last + 1], _meeting(moved, last, following)]
        start = following
    return np.concatenate([*parts, moved[start : int(good[-1]) + 1]])


def _meeting(moved: Array, last: int, following: int) -> Array:
    """(1, 2) where the arm that ends after ``last`` meets the one that begins before ``following``."""
    one = moved[last : last + _ARM]
    other = moved[max(following - _ARM + 1, 0) : following + 1][::-1]
    found = first_crossing(one, other)
    return np.empty((0, 2)) if found is None else found.point[None]

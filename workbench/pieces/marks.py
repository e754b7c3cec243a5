"""What is drawn inside a piece: grain, levels, fold, the place of the tape, bones.

Figures are own choice, where marks stand on a piece, unless said.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from workbench.body import LEVEL_LABEL
from workbench.draft import Draft, Panel
from workbench.pieces.outline import Outline, widened
from workbench.pieces.polyline import Array
from workbench.pieces.result import Bone, MarkLine

Grain = tuple[tuple[float, float], tuple[float, float]]

_GRAIN_SHARES = (0.35, 0.25, 0.15, 0.08, 0.03)
"""How far a grain line runs up and down from the middle of a piece, as parts of its height."""
_FROM_ENDS = 0.15
"""Of its height, that a grain line across a piece stops short of either end."""
_NARROW = 1e-6
_ACROSS = np.linspace(0.0, 1.0, 13)


def grain_of(outline: Outline) -> Grain:
    """Straight grain, square to the waist line, as long as fits between the sides."""
    left, right = outline.left, outline.right
    low = max(float(outline.hem[:, 1].max()), float(left[0, 1]), float(right[0, 1]))
    high = min(float(outline.neckline[:, 1].min()), float(left[-1, 1]), float(right[-1, 1]))
    middle, height = 0.5 * (low + high), high - low
    for share in _GRAIN_SHARES if height > 0 else ():
        foot, head = middle - share * height, middle + share * height
        inner, outer = float(_between(left, foot, head).max()), float(_between(right, foot, head).min())
        if inner < outer:
            return (0.5 * (inner + outer), foot), (0.5 * (inner + outer), head)
    return grain_inside(outline)


def grain_inside(outline: Outline) -> Grain:
    """Straight grain where a piece has most room for it near its middle."""
    return grains_inside([outline])[0]


def grains_inside(outlines: Sequence[Outline]) -> list[Grain]:
    """The same for each of several pieces."""
    boxes = np.array([(*ring.min(axis=0), *ring.max(axis=0)) for ring in (own.ring for own in outlines)])
    # one that is narrower than its turn of cloth crosses itself; that is told where it is cut
    cloths = shapely.make_valid([shapely.Polygon(outline.ring) for outline in outlines])
    x = shapely.get_x(shapely.point_on_surface(cloths))
    upright = np.stack((np.stack((x, boxes[:, 1]), axis=1), np.stack((x, boxes[:, 3]), axis=1)), axis=1)
    inside = shapely.intersection(cloths, shapely.linestrings(upright))
    return [_grain_on(place, line) for place, line in zip(x.tolist(), inside.tolist(), strict=True)]


def _grain_on(x: float, inside: shapely.Geometry) -> Grain:
    """The longest of the bits of an upright line that lie inside a piece, not quite to its ends."""
    longest = max(shapely.get_parts(inside), key=shapely.length)
    heights = shapely.get_coordinates(longest)[:, 1].tolist()
    foot, head = min(heights), max(heights)
    inset = _FROM_ENDS * (head - foot)
    return (x, foot + inset), (x, head - inset)


def _between(side: Array, low: float, high: float) -> Array:
    """x of a side, hem to neckline, between two heights, both included."""
    y = side[:, 1]
    first, last = np.searchsorted(y, (low, high)).tolist()
    x: Array = side[max(first - 1, 0) : last + 1, 0]
    return x


def level_marks(panel: Panel, left: float, right: float) -> Iterator[MarkLine]:
    """The levels that cross a panel, the waist among them, on a piece whose sides are set out so far."""
    for name, line in panel.level_lines.items():
        moved = widened(line, left, right)
        yield MarkLine("waist" if name == "waist" else "level", moved, LEVEL_LABEL[name])


def fold_mark(outline: Outline) -> MarkLine:
    """The fold along the left side."""
    return MarkLine("fold", outline.left, "Fold")


def tape_marks(draft: Draft, width: float) -> dict[int, tuple[MarkLine, ...]]:
    """The two edges of the waist tape on each panel they cross, by the panel's number, as it is drafted."""
    walks = np.array([-0.5 * width, 0.5 * width])
    count = len(draft.panels)
    rows = np.arange(count)[:, None, None]
    lines = draft.surface.points(rows, _ACROSS, walks[:, None])
    found = {}
    for panel in draft.panels:
        seams = slice(panel.index, panel.index + 2)
        low, high = max(draft.hem.seam_walks[seams]), min(draft.neckline.seam_walks[seams])
        inside = [line for line, walk in zip(lines[panel.index], walks, strict=True) if low < walk < high]
        found[panel.index] = tuple(MarkLine("tape", line, "Waist tape") for line in inside)
    return found


def bone_marks(bones: Sequence[Bone], panel: Panel, left: float, right: float) -> Iterator[MarkLine]:
    """The bones that are drawn on a panel, on a piece whose sides are set out so far."""
    for bone in bones:
        if bone.panel == panel.index:
            yield MarkLine("bone", carried_along(bone.line, panel, left, right), bone.where)


def carried_along(line: Array, panel: Panel, left: float, right: float) -> Array:
    """A line (n, 2) on a panel as its sides are set out so far, mm: at a side with it, between them in part.

    It moves as neckline, hem and levels do, so that a bone on a seam stays on its seam.
    """
    if left == 0 and right == 0:
        return line
    x, y = line.T
    inner, outer = (np.interp(y, side[:, 1], side[:, 0]) for side in (panel.left, panel.right))
    share = np.clip((x - inner) / np.maximum(outer - inner, _NARROW), 0.0, 1.0)
    moved = line.copy()
    moved[:, 0] += (left + right) * share * share * (3 - 2 * share) - left
    return moved

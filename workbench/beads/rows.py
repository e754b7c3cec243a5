"""The lines that runs of beads lie on: rows beside neckline, hem and seams, or a drawn line, in the flat.

Figures are own choice, how exactly rows are drawn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
import shapely

from workbench.beads.drawn import Part, drawn_parts
from workbench.beads.records import BeadRun
from workbench.beads.result import Array, Ints
from workbench.draft import Draft

_SPECK_MM = 0.05
_ARC_SEGMENTS = 16
_LEAVES_MM = 0.5
"""A drawn line that lies this far outside the panels, all told, is said to leave them."""


@dataclass(frozen=True)
class Row:
    """One row: its parts panel by panel, one after the other along it."""

    parts: tuple[Part, ...]

    @property
    def length(self) -> float:
        """Millimetres along all its parts."""
        return sum(_length(line) for _, line in self.parts)

    def at(self, along: Array) -> tuple[Array, Ints]:
        """Points (n, 2) and their panels at distances ``along`` in mm from the first point."""
        starts = np.concatenate(([0.0], np.cumsum([_length(line) for _, line in self.parts])))
        own = np.clip(np.searchsorted(starts[:-1], along, side="right") - 1, 0, len(self.parts) - 1)
        points = np.zeros((len(along), 2))
        for number, (_, line) in enumerate(self.parts):
            here = own == number
            points[here] = _points_at(line, along[here] - starts[number])
        panels = np.array([panel for panel, _ in self.parts], dtype=np.intp)
        return points, panels[own]


def rows_of(run: BeadRun, draft: Draft) -> tuple[list[Row], bool]:
    """The rows of a run, and whether a drawn line leaves the panels.

    A row that has no room is left out. A run along a seam that the draft has not, or through fewer
    than two points, has no rows.
    """
    if run.along == "drawn":
        return _drawn_rows(run, draft)
    offsets = [run.inset_mm + number * run.row_mm for number in range(run.rows)]
    lines = list(_lines(run, draft))
    rows = [Row(tuple(_moved(parts, sign * offset, draft))) for parts, sign in lines for offset in offsets]
    return [row for row in rows if row.parts], False


def _lines(run: BeadRun, draft: Draft) -> Iterator[tuple[list[Part], int]]:
    """Stitch lines panel by panel, and the side their panels lie on: +1 to the left of their direction."""
    if run.along == "neckline":
        yield [(panel.index, panel.neckline) for panel in draft.panels], -1
    elif run.along == "hem":
        yield [(panel.index, panel.hem) for panel in draft.panels], 1
    elif run.seam < len(draft.panels):
        if run.towards in ("front", "both"):
            yield [(run.seam - 1, draft.panels[run.seam - 1].right)], 1
        if run.towards in ("back", "both"):
            yield [(run.seam, draft.panels[run.seam].left)], -1


def _drawn_rows(run: BeadRun, draft: Draft) -> tuple[list[Row], bool]:
    """Rows to either side of the drawn line, the first one to its left."""
    parts, past = drawn_parts(run.points, draft.surface)
    within = list(_moved(parts, 0.0, draft))
    lost = sum(_length(line) for _, line in parts) - sum(_length(line) for _, line in within)
    middle = 0.5 * (run.rows - 1)
    rows = [Row(tuple(_moved(parts, (middle - n) * run.row_mm, draft))) for n in range(run.rows)]
    return [row for row in rows if row.parts], past or lost > _LEAVES_MM


def _moved(parts: list[Part], offset: float, draft: Draft) -> Iterator[Part]:
    """Parallels at a distance in mm, to the left where above nothing, cut by the outlines of their panels.

    Moved to the side, a part would end short of a seam that it meets aslant; it is drawn on to it,
    and the part beyond the seam comes to the same place there.
    """
    for panel, line in parts:
        if abs(offset) < 1e-9:
            moved: Any = shapely.linestrings(line)
        else:
            far = 2 * abs(offset) + 10.0
            moved = shapely.offset_curve(
                shapely.linestrings(_drawn_on(line, far)), offset, quad_segs=_ARC_SEGMENTS
            )
        # the width of a hair more, so that a line along the outline itself is not cut to pieces
        outline = shapely.buffer(shapely.polygons(draft.panels[panel].outline), 1e-4)
        for piece in _in_order(shapely.intersection(moved, outline), line):
            yield panel, piece


def _drawn_on(line: Array, far: float) -> Array:
    """The line with a straight piece more at either end."""
    start, end = line[0] - line[1], line[-1] - line[-2]
    return np.vstack((line[0] + far * start / np.hypot(*start), line, line[-1] + far * end / np.hypot(*end)))


def _in_order(cut: Any, line: Array) -> list[Array]:
    """The pieces of a cut parallel in the direction and the order of the line they are beside."""
    base = shapely.linestrings(line)
    pieces = []
    for piece in shapely.get_parts(shapely.line_merge(cut)):
        if shapely.length(piece) > _SPECK_MM and shapely.get_type_id(piece) == 1:
            points = shapely.get_coordinates(piece)
            start, end = shapely.line_locate_point(base, shapely.points(points[[0, -1]])).tolist()
            pieces.append((min(start, end), points if start <= end else points[::-1]))
    return [points for _, points in sorted(pieces, key=lambda each: each[0])]


def _length(line: Array) -> float:
    return float(np.hypot(*np.diff(line, axis=0).T).sum())


def _points_at(line: Array, along: Array) -> Array:
    """(n, 2) at distances from the first point of a line."""
    reached = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))))
    return np.stack([np.interp(along, reached, axis) for axis in line.T], axis=1)

"""Panels as shapes on the canvas: where each lies, and its outline as Qt draws it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np
from PySide6.QtGui import QPolygonF

from workbench.body import LevelName
from workbench.draft import Draft, LineName, Outcome, Panel
from workbench.pieces import cut_outlines
from workbench.sheets import GAP, Layout, Placement, placements
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.view import Bounds

_GAP, _CUT_GAP = 14.0, 6.0
"""mm between stitch lines, or between cut lines: closer than on paper, to see the panels larger."""


@dataclass(frozen=True)
class Shape:
    """One panel where it is shown."""

    panel: Panel
    placement: Placement
    outline: QPolygonF
    cut: QPolygonF | None
    levels: Mapping[LevelName, QPolygonF]
    box: Bounds

    def edge(self, name: str) -> Array:
        """(n, 2) of its ``left`` or ``right`` side, ``neckline`` or ``hem``, where they are shown."""
        points: Array = self.placement.put(getattr(self.panel, name))
        return points

    def side_of(self, seam: int) -> str | None:
        """Which of its sides lies on a seam."""
        if seam == self.panel.index:
            return "left"
        return "right" if seam == self.panel.index + 1 else None


def placed_for(outcome: Outcome, layout: Layout, allowance: float) -> tuple[Placement, ...]:
    """Where the panels lie on the canvas: closer to each other than on paper, unless on the block."""
    placed = placements(outcome, layout)
    if layout == "block":
        return placed
    less = GAP - (2 * allowance + _CUT_GAP if allowance > 0 else _GAP)
    return tuple(replace(p, dx=p.dx + (less if p.flip else -less) * p.panel) for p in placed)


def shapes_of(
    draft: Draft, placed: tuple[Placement, ...], allowance: float, before: tuple[Shape, ...]
) -> tuple[Shape, ...]:
    """The shapes where they are placed; a panel that is the same as ``before`` keeps its polygons.

    While a neckline is dragged, most panels stay as they are, and their cut lines are the
    dearest part of a scene.
    """
    kept = {shape.placement: shape for shape in before}
    rings = {panel.index: panel.outline for panel in draft.panels}
    same = {
        placement
        for placement in placed
        if placement in kept and np.array_equal(kept[placement].panel.outline, rings[placement.panel])
    }
    changed = {placement.panel for placement in placed if placement not in same}
    cuts = _cut_lines([panel for panel in draft.panels if panel.index in changed], allowance)
    return tuple(
        replace(kept[placement], panel=draft.panels[placement.panel])
        if placement in same
        else _shape(draft.panels[placement.panel], placement, rings[placement.panel], cuts)
        for placement in placed
    )


def _cut_lines(panels: list[Panel], allowance: float) -> dict[int, Array]:
    """The cut line of each panel by its number; none where no allowance is shown."""
    if allowance <= 0 or not panels:
        return {}
    cuts = cut_outlines(tuple(panels), allowance)
    return {panel.index: cut for panel, cut in zip(panels, cuts, strict=True)}


def _shape(panel: Panel, placement: Placement, ring: Array, cuts: dict[int, Array]) -> Shape:
    outline = placement.put(ring)
    left, bottom = outline.min(axis=0).tolist()
    right, top = outline.max(axis=0).tolist()
    return Shape(
        panel,
        placement,
        polygon(outline),
        polygon(placement.put(cuts[panel.index])) if panel.index in cuts else None,
        {name: polygon(placement.put(line)) for name, line in panel.level_lines.items()},
        (left, bottom, right, top),
    )


def edge_names(line: LineName | None, seam: int | None, shape: Shape) -> Iterator[str]:
    """The edges of a shape that belong to a line or lie on a seam."""
    if line is not None:
        yield line
    elif seam is not None:
        side = shape.side_of(seam)
        if side is not None:
            yield side

"""Panels as shapes on the canvas: where each lies, and its outline as Qt draws it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np
from PySide6.QtGui import QPolygonF

from workbench.body import LevelName
from workbench.draft import Draft, LineName, Outcome, Panel
from workbench.frozen import dataclass
from workbench.pieces import Making, cut_lines
from workbench.sheets import Layout, Placement, placements
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
    cut_ring: Array | None
    """The cut line in the panel's own coordinates."""
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


def cuts_of(outcome: Outcome, making: Making) -> dict[int, Array]:
    """The cut line (n, 2) of each panel in the fashion cloth, by its number."""
    return cut_lines(outcome, making)


def placed_for(outcome: Outcome, layout: Layout, cuts: Mapping[int, Array]) -> tuple[Placement, ...]:
    """Where the panels lie on the canvas: closer to each other than on paper, unless on the block."""
    if layout == "block" or outcome.draft is None:
        return placements(outcome, layout)
    half: list[Placement] = []
    edge, gap = 0.0, _CUT_GAP if cuts else _GAP
    for panel in outcome.draft.panels:
        # one that is left out of the fashion cloth has no cut line
        x = cuts.get(panel.index, panel.outline)[:, 0]
        # the first panel's centre front stands at 0, whatever lies beyond it
        start = edge - float(x.min()) if half else 0.0
        half.append(Placement(panel.index, start))
        edge = start + float(x.max()) + gap
    if layout == "apart":
        return tuple(half)
    return (*(Placement(p.panel, -p.dx, flip=True) for p in reversed(half)), *half)


def shapes_of(
    draft: Draft,
    placed: tuple[Placement, ...],
    cuts: Mapping[int, Array],
    before: tuple[Shape, ...],
) -> tuple[Shape, ...]:
    """The shapes where they are placed; a panel that is the same as ``before`` keeps its polygons.

    While a neckline is dragged, most panels stay as they are.
    """
    kept = {shape.placement: shape for shape in before}
    rings = {panel.index: panel.outline for panel in draft.panels}

    def same(placement: Placement) -> bool:
        shape = kept.get(placement)
        return (
            shape is not None
            and np.array_equal(shape.panel.outline, rings[placement.panel])
            and _same_cut(shape.cut_ring, cuts.get(placement.panel))
        )

    return tuple(
        replace(kept[placement], panel=draft.panels[placement.panel])
        if same(placement)
        else _shape(draft.panels[placement.panel], placement, rings[placement.panel], cuts)
        for placement in placed
    )


def _same_cut(one: Array | None, other: Array | None) -> bool:
    if one is None or other is None:
        return one is other
    return np.array_equal(one, other)


def _shape(panel: Panel, placement: Placement, ring: Array, cuts: Mapping[int, Array]) -> Shape:
    outline = placement.put(ring)
    cut = placement.put(cuts[panel.index]) if panel.index in cuts else None
    left, bottom = outline.min(axis=0).tolist()
    right, top = outline.max(axis=0).tolist()
    return Shape(
        panel,
        placement,
        polygon(outline),
        polygon(cut) if cut is not None else None,
        cuts.get(panel.index),
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

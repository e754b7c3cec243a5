"""The scene: everything one picture puts on the canvas, in mm, ready to be drawn.

It is made once for each draft and replaced as a whole, so that what is painted, what is
hit by the pointer and what is measured can never be of different drafts.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import numpy as np
from PySide6.QtGui import QPolygonF

from workbench.body import Fraction, LevelName, Unit, say_length
from workbench.draft import LineName, Outcome, Panel
from workbench.pieces import cut_outlines
from workbench.sheets import GAP, Layout, Placement, placements
from workbench.ui.board.figures import Figure, figures_of
from workbench.ui.board.handles import Handle, handles_of
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.rows import LevelRow, rows_of
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


@dataclass(frozen=True)
class Scene:
    """What is on the canvas; empty shapes where there is no draft."""

    outcome: Outcome
    """Whose panels are shown."""
    sums: Outcome
    """Whose ledger is shown: the same, unless a finding stops the draft of the project as it stands."""
    layout: Layout
    unit: Unit
    fraction: Fraction
    shapes: tuple[Shape, ...]
    placements: tuple[Placement, ...]
    allowance: float
    """mm between stitch line and cut line; 0 where no cut lines are shown."""

    @property
    def say(self) -> Callable[[float], str]:
        """A length in the user's unit, without the unit."""
        return speaker(self.unit, self.fraction)

    @cached_property
    def rows(self) -> tuple[LevelRow, ...]:
        """The levels, bottom to top."""
        return rows_of(self.sums, self.say)

    @cached_property
    def figures(self) -> tuple[Figure, ...]:
        """The intake figures."""
        return figures_of(self.outcome, self.sums.ledger, self.placements, self.say)

    @cached_property
    def handles(self) -> tuple[Handle, ...]:
        """The shape points."""
        draft = self.outcome.draft
        return handles_of(draft, self.placements) if draft else ()

    @cached_property
    def intakes(self) -> tuple[QPolygonF, ...]:
        """What is taken out between the panels, where they stand on the block."""
        return tuple(_intakes(self)) if self.layout == "block" else ()

    @cached_property
    def bounds(self) -> Bounds:
        """All that should be in view: the panels, and every level."""
        walks = [level.walk for level in self.outcome.levels]
        low, high = min(walks), max(walks)
        if not self.shapes:
            return -200.0, low, 200.0, high
        boxes = np.array([shape.box for shape in self.shapes])
        left, bottom = boxes[:, :2].min(axis=0)
        right, top = boxes[:, 2:].max(axis=0)
        if self.layout == "block":
            right = max(right, sum(self.outcome.blocks.values()))
        return float(left), float(min(bottom, low)), float(right), float(max(top, high))

    @property
    def kind(self) -> tuple[object, ...]:
        """What must change for the panels to be laid out and fitted afresh."""
        return self.layout, self.outcome.design.style, len(self.shapes)


@lru_cache(maxsize=8)
def speaker(unit: Unit, fraction: Fraction) -> Callable[[float], str]:
    """A function that says lengths in one unit, and remembers what it has said."""

    @lru_cache(maxsize=20_000)
    def say(mm: float) -> str:
        return say_length(mm, unit, fraction)

    return say


def scene_of(
    outcome: Outcome,
    sums: Outcome,
    layout: Layout,
    unit: Unit,
    fraction: Fraction,
    allowance: float,
    hold: Scene | None = None,
    before: Scene | None = None,
) -> Scene:
    """The scene of an outcome, with the ledger of ``sums``.

    The panels of ``hold`` stay where they lie, so that a drag shows against its start; what
    has not changed since the scene ``before`` is taken over from it.
    """
    placed = _closer(placements(outcome, layout), layout, allowance)
    if hold is not None and hold.layout == layout and len(hold.placements) == len(placed):
        placed = hold.placements
    shown = allowance if layout != "block" else 0.0
    shapes = _shapes(outcome, placed, shown, before)
    alike = sums.design.panel_count == outcome.design.panel_count
    return Scene(outcome, sums if alike else outcome, layout, unit, fraction, shapes, placed, shown)


def _closer(placed: tuple[Placement, ...], layout: Layout, allowance: float) -> tuple[Placement, ...]:
    """The same placements with less between them; those on the block are where they are."""
    if layout == "block":
        return placed
    less = GAP - (2 * allowance + _CUT_GAP if allowance > 0 else _GAP)
    return tuple(replace(p, dx=p.dx + (less if p.flip else -less) * p.panel) for p in placed)


def _shapes(
    outcome: Outcome, placed: tuple[Placement, ...], allowance: float, before: Scene | None
) -> tuple[Shape, ...]:
    """The shapes where they are placed; a panel that has not changed since ``before`` keeps its polygons.

    While a neckline is dragged, most panels stay as they are, and their cut lines are the
    dearest part of a scene.
    """
    draft = outcome.draft
    if draft is None:
        return ()
    kept = (
        {shape.placement: shape for shape in before.shapes}
        if before and before.allowance == allowance
        else {}
    )
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


def _intakes(scene: Scene) -> Iterator[QPolygonF]:
    for before, after in zip(scene.shapes[:-1], scene.shapes[1:], strict=True):
        yield polygon(np.concatenate((before.edge("right"), after.edge("left")[::-1])))


def edge_names(line: LineName | None, seam: int | None, shape: Shape) -> Iterator[str]:
    """The edges of a shape that belong to a line or lie on a seam."""
    if line is not None:
        yield line
    elif seam is not None:
        side = shape.side_of(seam)
        if side is not None:
            yield side

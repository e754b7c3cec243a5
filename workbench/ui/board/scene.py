"""The scene: everything one picture puts on the canvas, in mm, ready to be drawn.

It is made once for each draft and replaced as a whole, so that what is painted, what is
hit by the pointer and what is measured can never be of different drafts.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cached_property, lru_cache

import numpy as np
from PySide6.QtGui import QPolygonF

from workbench.body import Fraction, Unit, say_length
from workbench.document import Picture
from workbench.draft import Design, Outcome
from workbench.frozen import dataclass
from workbench.sheets import Layout, Placement
from workbench.ui.board.figures import Figure, figures_of
from workbench.ui.board.handles import Handle, handles_of
from workbench.ui.board.polygons import polygon
from workbench.ui.board.rows import LevelRow, rows_of
from workbench.ui.board.shapes import Shape, cuts_of, placed_for, shapes_of
from workbench.ui.board.view import Bounds


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
    beside: float
    """mm from one stitch line to the next, at least, where cut lines are shown between them; else 0."""
    editable: bool
    """Whether points and seams count as in the project: not while it is stopped with other panels."""

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

    @lru_cache(maxsize=2048)
    def say(mm: float) -> str:
        return say_length(mm, unit, fraction)

    return say


def scene_of(
    picture: Picture, layout: Layout, *, cut_lines: bool, hold: Scene | None, before: Scene | None
) -> Scene | None:
    """The scene of a picture; None while nothing is known of the body.

    The panels of ``hold`` stay where they lie, so that a drag shows against its start; what
    has not changed since the scene ``before`` is taken over from it.
    """
    outcome = picture.good or picture.outcome
    if outcome is None:
        return None
    project = picture.project
    cuts = cuts_of(outcome, project.making) if cut_lines and layout != "block" else {}
    placed = placed_for(outcome, layout, cuts)
    if hold is not None and hold.layout == layout and len(hold.placements) == len(placed):
        placed = hold.placements
    kept = before.shapes if before is not None else ()
    alike = _counts(project.design) == _counts(outcome.design)
    return Scene(
        outcome=outcome,
        sums=picture.outcome if picture.outcome is not None and alike else outcome,
        layout=layout,
        unit=project.unit,
        fraction=project.fraction,
        shapes=shapes_of(outcome.draft, placed, cuts, kept) if outcome.draft is not None else (),
        placements=placed,
        beside=2 * project.making.allowances.seam if cuts else 0.0,
        editable=alike,
    )


def _counts(design: Design) -> tuple[int, int]:
    """Panels in front and back."""
    return design.front.panel_count, design.back.panel_count


def _intakes(scene: Scene) -> Iterator[QPolygonF]:
    for before, after in zip(scene.shapes[:-1], scene.shapes[1:], strict=True):
        yield polygon(np.concatenate((before.edge("right"), after.edge("left")[::-1])))

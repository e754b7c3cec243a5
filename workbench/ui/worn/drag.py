"""Drags on the worn view: a shape point along the body, or the body round itself."""

from __future__ import annotations

from typing import NamedTuple

from PySide6.QtCore import QPointF

from workbench.body import Fraction, Unit, step_mm
from workbench.document import Project, move_point
from workbench.draft import Outcome, ShapePoint, walk_designed
from workbench.ui.board.shape_edits import Spot, snapped
from workbench.ui.desk import Desk
from workbench.ui.worn.grips import Grip
from workbench.ui.worn.stage import Stage
from workbench.worn import Eye, Sight

_MAGNET = 6.0
"""Pixels within which a seam draws a point onto it."""
_DEGREES = 0.6
"""For each pixel the hand moves."""
MOST_DOWN = 20.0


class OnShow(NamedTuple):
    """The draft a drag began with, and the ruler it is snapped to."""

    outcome: Outcome
    unit: Unit
    fraction: Fraction


class GripDrag:
    """Moves a shape point. Every move starts from the project and draft at the press, so nothing adds up."""

    def __init__(self, desk: Desk, sight: Sight, stage: Stage, grip: Grip, start: QPointF) -> None:
        self.grip = grip
        self._desk, self._sight, self._stage = desk, sight, stage
        self._project = desk.project
        self._hold = stage.pixel(grip.x, grip.y) - start
        desk.begin(f"Move {grip.key.line} point")

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """The point follows the hand over the body, in whole steps unless ``free``."""
        if not self._desk.gesturing:
            return  # undone under the hand: the rest of the drag does nothing
        place = self._sight.place_at(*self._stage.mm(pixel + self._hold))
        if place is None:
            return
        u, t = self._sight.worn.place_at(*place)
        shown = OnShow(self._sight.worn.outcome, self._project.unit, self._project.fraction)
        panels = shown.outcome.design.panel_count
        spot = Spot(u, t, min(int(u), panels - 1))
        if not free:
            spot = snapped(shown, spot, _MAGNET / self._stage.scale)
        self._desk.preview(moved(self._project, shown.outcome, self.grip, spot.u, spot.t))

    def finish(self) -> None:
        """One step to undo."""
        self._desk.commit()

    def cancel(self) -> None:
        """The point goes back."""
        self._desk.cancel()


class TurnDrag:
    """Walks round the body with the hand, and looks down on it more or less."""

    def __init__(self, eye: Eye, start: QPointF) -> None:
        self.start = eye
        """From where she was seen when it began."""
        self._from = start

    def eye_at(self, pixel: QPointF) -> Eye:
        """From where she is seen with the hand at a pixel: what faces the hand goes with it."""
        away = pixel - self._from
        down = min(max(self.start.down + 0.25 * _DEGREES * away.y(), 0.0), MOST_DOWN)
        return Eye((self.start.degrees - _DEGREES * away.x()) % 360.0, down)


def moved(project: Project, outcome: Outcome, grip: Grip, u: float, t: float) -> Project:
    """The project with the point of a grip at a place; an end point keeps to its centre line.

    What is designed is where it lies before what fittings did to it.
    """
    line, number = grip.key.line, grip.key.number
    designed = walk_designed(outcome, t, line, number)
    return move_point(project, line, number, u, designed, _points(outcome, grip))


def nudged(project: Project, outcome: Outcome, grip: Grip, right: int, up: int) -> Project:
    """The project with the point of a grip moved by whole steps of the unit, as seen on the picture."""
    draft = outcome.draft
    if draft is None:
        return project
    step = step_mm(project.unit, project.fraction)
    panel = min(int(grip.point.u), outcome.design.panel_count - 1)
    around = -right if grip.mirrored else right
    u = grip.point.u + around * step / max(float(draft.panels[panel].widths["waist"]), 1.0)
    return moved(project, outcome, grip, u, grip.point.t + up * step)


def _points(outcome: Outcome, grip: Grip) -> tuple[ShapePoint, ...]:
    """The points as they are designed."""
    draft = outcome.draft
    return draft.line(grip.key.line).designed if draft is not None else ()

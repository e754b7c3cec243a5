"""From where the hand is to where a shape point goes: the map of the body, snapped to the tape."""

from __future__ import annotations

from typing import Protocol

import numpy as np

from workbench.body import Fraction, Unit, snap, step_mm
from workbench.document import Project, add_point, move_point
from workbench.draft import Draft, LineName, Outcome, ShapePoint, walk_designed
from workbench.frozen import dataclass
from workbench.ui.board.handles import Handle
from workbench.ui.board.scene import Scene
from workbench.ui.board.shapes import Shape

NEAR_BY = 8.0
"""mm: panels further from the hand than this are not looked at unless none is nearer."""


@dataclass(frozen=True)
class Spot:
    """A place on the body: u runs by one a panel from the centre front, t is the walk from the waist."""

    u: float
    t: float
    panel: int


def spot_at(scene: Scene, x: float, y: float, flip: bool) -> Spot | None:
    """The place on the body under a point in mm, on the panel nearest to it; None without a draft."""
    draft = scene.outcome.draft
    side = [shape for shape in scene.shapes if shape.placement.flip == flip]
    if draft is None or not side:
        return None
    near = [shape for shape in side if _beside(shape, x) < NEAR_BY] or [
        min(side, key=lambda s: _beside(s, x))
    ]
    spots = [_located(draft, shape, x, y) for shape in near]
    if len(spots) == 1:
        return spots[0]
    missed = [_missed(draft, shape, spot, x, y) for shape, spot in zip(near, spots, strict=True)]
    return spots[missed.index(min(missed))]


def _beside(shape: Shape, x: float) -> float:
    """How far x lies outside a shape's box, mm."""
    left, _, right, _ = shape.box
    return max(left - x, x - right, 0.0)


def _located(draft: Draft, shape: Shape, x: float, y: float) -> Spot:
    """The nearest place on one panel."""
    return Spot(*draft.surface.locate(shape.panel.index, *shape.placement.back(x, y)), shape.panel.index)


def _missed(draft: Draft, shape: Shape, spot: Spot, x: float, y: float) -> float:
    """How far the place lies from the point, mm."""
    own = shape.placement.back(x, y)
    index, v = np.array([spot.panel], dtype=np.intp), np.array([spot.u - spot.panel])
    there = draft.surface.points(index, v, np.array([spot.t]))[0]
    return float(np.hypot(there[0] - own[0], there[1] - own[1]))


class OnShow(Protocol):
    """The draft that is shown, and the ruler it is measured with."""

    @property
    def outcome(self) -> Outcome:
        """Whose draft it is."""

    @property
    def unit(self) -> Unit:
        """Inches or centimetres."""

    @property
    def fraction(self) -> Fraction:
        """Of an inch, the finest on the ruler."""


def snapped(scene: OnShow, spot: Spot, magnet: float) -> Spot:
    """The place moved to whole steps from the waist and from the nearest seam, or onto that seam.

    ``magnet`` is how near in mm a seam must be to draw the point onto it.
    """
    draft = scene.outcome.draft
    if draft is None:
        return spot
    t = snap(spot.t, scene.unit, scene.fraction)
    chord = _chord(draft, spot.panel, t)
    seam = round(spot.u)
    run = abs(spot.u - seam) * chord
    if run < magnet:
        return Spot(float(seam), t, spot.panel)
    run = snap(run, scene.unit, scene.fraction)
    return Spot(seam + (run / chord if spot.u > seam else -run / chord), t, spot.panel)


def _chord(draft: Draft, panel: int, t: float) -> float:
    return max(float(draft.surface.chords(np.array([t]))[panel, 0]), 1.0)


def moved(project: Project, scene: Scene, handle: Handle, spot: Spot) -> Project:
    """The project with the handle's point at a place; an end point keeps to its centre line.

    What is designed is where it lies before what fittings did to it.
    """
    line, number = handle.key.line, handle.key.number
    t = walk_designed(scene.outcome, spot.t, line, number)
    return move_point(project, line, number, spot.u, t, _points(scene, line))


def nudged(project: Project, scene: Scene, handle: Handle, right: int, up: int) -> Project:
    """The project with the handle's point moved by whole steps of the unit, as seen on the screen."""
    draft = scene.outcome.draft
    if draft is None:
        return project
    step = step_mm(scene.unit, scene.fraction)
    point = handle.point
    along = (
        (-right if handle.placement.flip else right) * step / _chord(draft, handle.placement.panel, point.t)
    )
    return moved(project, scene, handle, Spot(point.u + along, point.t + up * step, handle.placement.panel))


def added(project: Project, scene: Scene, line: LineName, spot: Spot) -> Project:
    """The project with one more point of a line at a place."""
    return add_point(project, line, spot.u, walk_designed(scene.outcome, spot.t), _points(scene, line))


def _points(scene: Scene, line: LineName) -> tuple[ShapePoint, ...]:
    """The points as they are designed."""
    draft = scene.outcome.draft
    return draft.line(line).designed if draft else ()

"""The half laid out for beading: its panels side by side, and where things come to lie on them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPolygonF

from workbench.beads import drawn_parts
from workbench.body import LEVEL_LABEL, LevelName
from workbench.document import LineOwner, Picture, line_of
from workbench.draft import Draft, Panel, ShapePoint
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.view import Bounds

GAP_MM = 22.0


@dataclass(frozen=True)
class LaidPanel:
    """One panel, moved so far to the right in mm."""

    panel: Panel
    dx: float
    outline: QPolygonF
    levels: tuple[tuple[LevelName, QPolygonF], ...]

    def put(self, points: Array) -> QPolygonF:
        """Points of the panel where it lies here."""
        return polygon(points + np.array([self.dx, 0.0]))


@dataclass(frozen=True)
class Spread:
    """All panels of a draft."""

    draft: Draft
    panels: tuple[LaidPanel, ...]
    levels: tuple[tuple[LevelName, str, float], ...]
    """Names, labels and walks of the levels."""

    @property
    def bounds(self) -> Bounds:
        """Left, bottom, right, top of all panels, mm."""
        boxes = [laid.outline.boundingRect() for laid in self.panels]
        low, high = min(box.top() for box in boxes), max(box.bottom() for box in boxes)
        return boxes[0].left(), low, boxes[-1].right(), high

    @property
    def moves(self) -> Array:
        """(panels,) how far each panel lies to the right of where it was drafted."""
        return np.array([laid.dx for laid in self.panels])

    def point(self, u: float, t: float) -> tuple[float, float, int]:
        """Where a place on the body lies here, mm, and its panel."""
        held = min(max(u, 0.0), float(len(self.panels)))
        x, y, panel = self.draft.surface.point(held, t)
        return x + self.panels[panel].dx, y, panel

    def place(self, x: float, y: float) -> tuple[float, float] | None:
        """(u, t) of a point here; on the nearest panel where it lies beside one, None far from all."""
        panel = self.panel_at(x, y)
        if panel is None:
            return None
        return self.draft.surface.locate(panel, x - self.panels[panel].dx, y)

    def panel_at(self, x: float, y: float) -> int | None:
        """The panel under a point, or the nearest in its column."""
        for number, laid in enumerate(self.panels):
            if laid.outline.containsPoint(QPointF(x, y), Qt.FillRule.OddEvenFill):
                return number
        for number, laid in enumerate(self.panels):
            box = laid.outline.boundingRect()
            if box.left() - 0.5 * GAP_MM <= x <= box.right() + 0.5 * GAP_MM:
                return number
        return None

    def lines(self, points: tuple[ShapePoint, ...]) -> tuple[QPolygonF, ...]:
        """A drawn line, panel by panel."""
        parts, _ = drawn_parts(points, self.draft.surface)
        return tuple(self.panels[panel].put(line) for panel, line in parts)


def spread_of(picture: Picture) -> Spread | None:
    """The panels of the draft on show; None while a finding stops it."""
    outcome = picture.outcome
    if outcome is None or outcome.draft is None:
        return None
    at, laid = 0.0, []
    for panel in outcome.draft.panels:
        left, right = panel.outline[:, 0].min(), panel.outline[:, 0].max()
        move = np.array([at - left, 0.0])
        lines = tuple((name, polygon(line + move)) for name, line in panel.level_lines.items())
        laid.append(LaidPanel(panel, float(at - left), polygon(panel.outline + move), lines))
        at += right - left + GAP_MM
    levels = tuple((level.name, LEVEL_LABEL[level.name], level.walk) for level in outcome.levels)
    return Spread(outcome.draft, tuple(laid), levels)


@dataclass(frozen=True)
class Owner:
    """A run or a scatter by its number in the plan."""

    what: LineOwner
    number: int

    @property
    def field(self) -> str:
        """As findings name it."""
        return f"beads.{self.what}.{self.number}.name"

    def line(self, picture: Picture) -> tuple[ShapePoint, ...]:
        """The points of its line that can be dragged; none where it has none."""
        plan = picture.project.beads
        if self.what == "runs":
            if self.number >= len(plan.runs) or plan.runs[self.number].along != "drawn":
                return ()
        elif self.number >= len(plan.scatters) or plan.scatters[self.number].thin_from == "none":
            return ()
        return line_of(picture.project, self.what, self.number)

    def draws(self, picture: Picture) -> bool:
        """Whether it has a line that she draws."""
        plan = picture.project.beads
        if self.what == "runs":
            return self.number < len(plan.runs) and plan.runs[self.number].along == "drawn"
        return self.number < len(plan.scatters) and plan.scatters[self.number].thin_from != "none"


def owner_of(field: str | None) -> Owner | None:
    """The run or scatter that a field belongs to; None for any other field."""
    parts = (field or "").split(".")
    if len(parts) < 3 or parts[0] != "beads" or not parts[2].isdigit():
        return None
    if parts[1] == "runs":
        return Owner("runs", int(parts[2]))
    return Owner("scatters", int(parts[2])) if parts[1] == "scatters" else None

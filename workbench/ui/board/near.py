"""What lies near a point of the canvas: a line, a seam, a panel."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF, Qt

from workbench.draft import LineName
from workbench.ui.board.handles import LINES
from workbench.ui.board.polygons import Array
from workbench.ui.board.scene import Scene
from workbench.ui.board.shapes import Shape
from workbench.ui.board.view import View

_REACH = 6.0
"""Pixels from a line at which it counts as meant."""


def edge_at(scene: Scene, view: View, pixel: QPointF) -> tuple[LineName, Shape] | None:
    """The neckline or hem under a pixel, and the panel it was met on."""
    x, y = view.mm(pixel)
    reach = _REACH / view.scale
    for shape in _around(scene, x, y, reach):
        for line in LINES:
            if distance(shape.edge(line), x, y) <= reach:
                return line, shape
    return None


def seam_at(scene: Scene, view: View, pixel: QPointF) -> int | None:
    """The number of the seam under a pixel; the centre lines are none."""
    x, y = view.mm(pixel)
    reach = _REACH / view.scale
    last = scene.outcome.design.panel_count
    for shape in _around(scene, x, y, reach):
        for side, seam in (("left", shape.panel.index), ("right", shape.panel.index + 1)):
            if 0 < seam < last and distance(shape.edge(side), x, y) <= reach:
                return seam
    return None


def panel_at(scene: Scene, view: View, pixel: QPointF) -> int | None:
    """The number of the panel under a pixel."""
    point = QPointF(*view.mm(pixel))
    for shape in reversed(scene.shapes):
        if shape.outline.containsPoint(point, Qt.FillRule.OddEvenFill):
            return shape.panel.index
    return None


def _around(scene: Scene, x: float, y: float, reach: float) -> list[Shape]:
    """The shapes whose boxes come within reach."""
    return [
        shape
        for shape in scene.shapes
        if shape.box[0] - reach <= x <= shape.box[2] + reach
        and shape.box[1] - reach <= y <= shape.box[3] + reach
    ]


def distance(line: Array, x: float, y: float) -> float:
    """mm from a point to a polyline (n, 2)."""
    start, step = line[:-1], np.diff(line, axis=0)
    to = np.array([x, y]) - start
    length = np.maximum((step * step).sum(axis=1), 1e-12)
    along = np.clip((to * step).sum(axis=1) / length, 0.0, 1.0)
    return float(np.hypot(*(to - along[:, None] * step).T).min())

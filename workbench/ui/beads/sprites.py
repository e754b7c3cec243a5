"""Beads as small pictures: a shape and a hue for every mark, as large as they are on the cloth."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPixmap, QPolygonF

from workbench.beads import BeadMark
from workbench.ui.board.pens import faint, pen
from workbench.ui.look import look

MARKS: tuple[BeadMark, ...] = ("disc", "ring", "diamond", "square", "triangle", "bar")
MARK_WORDS: Mapping[BeadMark, str] = {
    "disc": "Disc",
    "ring": "Ring",
    "diamond": "Diamond",
    "square": "Square",
    "triangle": "Triangle",
    "bar": "Bar",
}
_LARGEST = 400.0
_CORNERS: Mapping[BeadMark, tuple[tuple[float, float], ...]] = {
    "diamond": ((0, -1), (1, 0), (0, 1), (-1, 0)),
    "square": ((-0.64, -0.64), (0.64, -0.64), (0.64, 0.64), (-0.64, 0.64)),
    "triangle": ((0, -1), (0.87, 0.6), (-0.87, 0.6)),
    "bar": ((-1, -0.42), (1, -0.42), (1, 0.42), (-1, 0.42)),
}


def colour_of(mark: BeadMark) -> QColor:
    """The hue that goes with a mark."""
    return look().beads[MARKS.index(mark)]


def draw_bead(painter: QPainter, mark: BeadMark, middle: QPointF, across: float, soft: bool = False) -> None:
    """One bead, ``across`` wide: its shape filled, in a circle of its true size where there is room."""
    colour = faint(colour_of(mark), 0.35) if soft else colour_of(mark)
    radius = 0.5 * across
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    if mark in _CORNERS:
        painter.drawPolygon(QPolygonF([middle + QPointF(x * radius, y * radius) for x, y in _CORNERS[mark]]))
    elif mark == "ring":
        ring = QPainterPath()
        ring.addEllipse(middle, radius, radius)
        ring.addEllipse(middle, 0.5 * radius, 0.5 * radius)
        painter.drawPath(ring)
    else:
        painter.drawEllipse(middle, radius, radius)
    if across >= 7.0:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(colour))
        painter.drawEllipse(middle, radius - 0.5, radius - 0.5)


def sprite(mark: BeadMark, across: float, ratio: float, soft: bool = False) -> QPixmap:
    """A picture of one bead, ``across`` pixels wide, with its middle in the middle."""
    side = min(max(across, 1.0), _LARGEST) + 2.0
    made = QPixmap(round(side * ratio + 0.5), round(side * ratio + 0.5))
    made.setDevicePixelRatio(ratio)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    middle = QRectF(0, 0, made.width() / ratio, made.height() / ratio).center()
    draw_bead(painter, mark, middle, side - 2.0, soft)
    painter.end()
    return made

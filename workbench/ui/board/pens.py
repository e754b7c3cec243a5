"""Pens and marks that several painters of the board use."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from workbench.draft import Severity, Status


def pen(colour: QColor, width: float = 1.0, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    """A pen of so many pixels at any zoom.

    At one pixel Qt draws long lines thirty times as quickly as at any greater width: what
    has to look stronger is drawn twice.
    """
    made = QPen(colour, width, style)
    made.setCosmetic(True)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return made


def across(painter: QPainter, y: float, left: float, right: float, colour: QColor) -> None:
    """A level hairline, one whole row of pixels: filled, which is fifty times as quick as drawn."""
    painter.fillRect(QRect(round(left), int(y), round(right - left), 1), colour)


def upright(painter: QPainter, x: float, top: float, bottom: float, colour: QColor) -> None:
    """An upright hairline, one whole column of pixels."""
    painter.fillRect(QRect(int(x), round(top), 1, round(bottom - top)), colour)


def faint(colour: QColor, part: float) -> QColor:
    """The colour with only part of its strength."""
    made = QColor(colour)
    made.setAlphaF(made.alphaF() * part)
    return made


def crisp(pixel: float) -> float:
    """The middle of a pixel, so that a hairline covers one row of them and not two."""
    return int(pixel) + 0.5


def triangle(middle: QPointF, size: float) -> QPolygonF:
    """Points up: over a limit, or a sum that does not close."""
    x, y = middle.x(), middle.y()
    return QPolygonF(
        [
            QPointF(x, y - size),
            QPointF(x + 1.05 * size, y + 0.8 * size),
            QPointF(x - 1.05 * size, y + 0.8 * size),
        ]
    )


def diamond(middle: QPointF, size: float) -> QPolygonF:
    """Stands on its point: near a limit."""
    x, y = middle.x(), middle.y()
    return QPolygonF([QPointF(x, y - size), QPointF(x + size, y), QPointF(x, y + size), QPointF(x - size, y)])


def draw_mark(
    painter: QPainter, kind: Status | Severity, middle: QPointF, size: float, colour: QColor
) -> None:
    """The mark of a status: a filled triangle over, a diamond near, an open ring within."""
    painter.setPen(pen(colour, 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if kind in ("over", "stop", "attend"):
        painter.setBrush(colour)
        painter.drawPolygon(triangle(middle, size))
    elif kind == "near":
        painter.drawPolygon(diamond(middle, size + 0.5))
    else:
        painter.drawEllipse(middle, size - 0.5, size - 0.5)

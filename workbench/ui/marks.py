"""Marks of severity: each has a shape and a word of its own, so that colour is never all there is."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPen, QPixmap, QPolygonF

from workbench.draft import Finding, Severity
from workbench.ui.look import look

Mark = Literal[Severity, "within"]

WORDS: dict[Mark, str] = {
    "stop": "Cannot be drafted",
    "over": "Over the limit",
    "near": "Near the limit",
    "attend": "Look at this",
    "note": "Note",
    "within": "Within",
}

_IN_ORDER = ("pieces_within", "cloth_within")
"""Findings that nothing is amiss where there is no limit to keep."""


def mark_of(finding: Finding) -> Mark:
    """The mark of a finding; one that says a limit is kept gets the tick."""
    return "within" if finding.code.endswith("_within") else finding.severity


def word_of(finding: Finding) -> str:
    """The word beside the mark; only a limit can be kept within, anything else is in order."""
    mark = mark_of(finding)
    return "In order" if mark == "within" and finding.code in _IN_ORDER else WORDS[mark]


def mark_colour(mark: Mark) -> QColor:
    """The accent for what wants attention, ink for the rest."""
    return look().soft_ink if mark in ("note", "within") else look().attend


def draw_mark(painter: QPainter, box: QRectF, mark: Mark, ground: QColor) -> None:
    """Draw a mark into a square box; ``ground`` is the colour behind, for what is cut out of it."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    colour = mark_colour(mark)
    painter.setPen(QPen(colour, 1.5, j=Qt.PenJoinStyle.RoundJoin, c=Qt.PenCapStyle.RoundCap))
    painter.setBrush(colour if mark in ("stop", "over") else Qt.BrushStyle.NoBrush)
    _DRAWN[mark](painter, box.adjusted(1, 1, -1, -1), ground)
    painter.restore()


def mark_icon(mark: Mark, size: int = 14) -> QIcon:
    """A mark to stand beside the words of a button."""
    pixmap = QPixmap(2 * size, 2 * size)
    pixmap.setDevicePixelRatio(2)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    draw_mark(painter, QRectF(0, 0, size, size), mark, look().ground)
    painter.end()
    return QIcon(pixmap)


def _at(box: QRectF, x: float, y: float) -> QPointF:
    return QPointF(box.left() + x * box.width(), box.top() + y * box.height())


def _stop(painter: QPainter, box: QRectF, ground: QColor) -> None:
    corners = ((0.3, 0), (0.7, 0), (1, 0.3), (1, 0.7), (0.7, 1), (0.3, 1), (0, 0.7), (0, 0.3))
    painter.drawPolygon(QPolygonF([_at(box, x, y) for x, y in corners]))
    painter.setPen(QPen(ground, 2.0))
    painter.drawLine(_at(box, 0.25, 0.5), _at(box, 0.75, 0.5))


def _triangle(painter: QPainter, box: QRectF) -> None:
    painter.drawPolygon(QPolygonF([_at(box, 0.5, 0.04), _at(box, 1, 0.94), _at(box, 0, 0.94)]))


def _over(painter: QPainter, box: QRectF, ground: QColor) -> None:
    _triangle(painter, box)
    painter.setPen(QPen(ground, 2.0))
    painter.drawLine(_at(box, 0.5, 0.38), _at(box, 0.5, 0.6))
    painter.drawPoint(_at(box, 0.5, 0.79))


def _near(painter: QPainter, box: QRectF, _ground: QColor) -> None:
    _triangle(painter, box)


def _attend(painter: QPainter, box: QRectF, _ground: QColor) -> None:
    painter.drawPolygon(QPolygonF([_at(box, x, y) for x, y in ((0.5, 0), (1, 0.5), (0.5, 1), (0, 0.5))]))
    painter.drawLine(_at(box, 0.5, 0.32), _at(box, 0.5, 0.52))
    painter.drawPoint(_at(box, 0.5, 0.7))


def _note(painter: QPainter, box: QRectF, _ground: QColor) -> None:
    painter.drawEllipse(box.adjusted(0.5, 0.5, -0.5, -0.5))
    painter.drawLine(_at(box, 0.5, 0.48), _at(box, 0.5, 0.74))
    painter.drawPoint(_at(box, 0.5, 0.27))


def _within(painter: QPainter, box: QRectF, _ground: QColor) -> None:
    painter.drawPolyline(QPolygonF([_at(box, 0.08, 0.55), _at(box, 0.38, 0.85), _at(box, 0.95, 0.18)]))


_DRAWN = {
    "stop": _stop,
    "over": _over,
    "near": _near,
    "attend": _attend,
    "note": _note,
    "within": _within,
}

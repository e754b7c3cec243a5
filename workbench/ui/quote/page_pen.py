"""Writes and draws on the client's page, in hundredths of the width of the paper."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QTransform

from workbench.ui.look import fonts
from workbench.ui.quote.page_words import DrawnView, Garment

INK, SOFT, LINE = QColor("#1C1916"), QColor("#5E564C"), QColor("#CFC7B9")
CLOTH = QColor("#F3EFE6")
BODY, SMALL = 1.85, 1.45
_BETWEEN, _NAMED = 6.0, 3.0
_SOFT_LINES = {
    "bone": Qt.PenStyle.DotLine,
    "frame": Qt.PenStyle.SolidLine,
    "fold": Qt.PenStyle.DashLine,
}
_WRAP = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)


class PagePen:
    """Writes and draws in hundredths of the paper's width, from its upper left corner."""

    def __init__(self, painter: QPainter, sheet: QRectF, unit: float) -> None:
        self._painter, self._sheet, self._unit = painter, sheet, unit
        self.factor = 1.0
        """How large words are set, against their usual size."""
        self.dry = False
        """Whether it only measures."""
        self.height = sheet.height() / unit

    def text(
        self,
        words: str,
        x: float,
        y: float,
        wide: float,
        size: float,
        colour: QColor = INK,
        *,
        bold: bool = False,
        right: bool = False,
    ) -> float:
        """Words wrapped in a column; how tall they are."""
        font = QFont(fonts().strong if bold else fonts().body)
        font.setPixelSize(max(round(self.factor * size * self._unit), 1))
        flags = _WRAP if not right else int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        box = self._box(x, y, wide, 500.0)
        self._painter.setFont(font)
        used = self._painter.boundingRect(box, flags, words)
        if not self.dry:
            self._painter.setPen(colour)
            self._painter.drawText(box, flags, words)
        return used.height() / self._unit

    def heading(self, words: str, x: float, y: float, wide: float) -> float:
        """A small bold heading over a rule."""
        high = self.text(words, x, y, wide, BODY, bold=True)
        self.rule(x, y + high + 0.3, wide, strong=False)
        return high + 1.2

    def rule(self, x: float, y: float, wide: float, *, strong: bool) -> None:
        """A level line."""
        if self.dry:
            return
        self._painter.setPen(QPen(INK if strong else LINE, 1.6 if strong else 1.0))
        self._painter.drawLine(self._at(x, y), self._at(x + wide, y))

    def garment(self, garment: Garment, room: QRectF) -> float:
        """The views side by side at one scale, on one waist line; how tall they are with their names."""
        if not garment.views:
            return 0.0
        bounds = [view.bounds for view in garment.views]
        across = sum(box[2] - box[0] for box in bounds)
        low, high = min(box[1] for box in bounds), max(box[3] for box in bounds)
        gaps = _BETWEEN * (len(bounds) - 1)
        scale = min((room.width() - gaps) / across, (room.height() - _NAMED) / (high - low))
        left = room.left() + 0.5 * (room.width() - gaps - scale * across)
        tall = scale * (high - low) + _NAMED
        if self.dry:
            return tall
        for view, (near, _, far, _) in zip(garment.views, bounds, strict=True):
            middle = left - scale * near
            self._view(view, middle, room.top() + scale * high, scale)
            self._named(view.name, middle, room.top() + scale * (high - low) + 2.2)
            left += scale * (far - near) + _BETWEEN
        return tall

    def _named(self, name: str, x: float, y: float) -> None:
        font = QFont(fonts().body)
        font.setPixelSize(max(round(SMALL * self._unit), 1))
        self._painter.setFont(font)
        self._painter.setPen(SOFT)
        box = self._box(x - 15, y - 1.5, 30, 3.0)
        self._painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter), name)

    def _view(self, view: DrawnView, x: float, y: float, scale: float) -> None:
        origin, pixels = self._at(x, y), scale * self._unit
        self._painter.save()
        self._painter.setTransform(QTransform(pixels, 0, 0, -pixels, origin.x(), origin.y()))
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(CLOTH)
        for ring in view.fills:
            self._painter.drawPolygon(ring)
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        for role, line in view.strokes:
            self._painter.setPen(_stroke_pen(role))
            self._painter.drawPolyline(line)
        self._painter.restore()

    def _at(self, x: float, y: float) -> QPointF:
        return QPointF(self._sheet.left() + x * self._unit, self._sheet.top() + y * self._unit)

    def _box(self, x: float, y: float, wide: float, high: float) -> QRectF:
        return QRectF(self._at(x, y), self._at(x + wide, y + high))


def _stroke_pen(role: str) -> QPen:
    soft = role in _SOFT_LINES
    pen = QPen(SOFT if soft else INK, 1.5 if role in ("cut", "tape") else 1.0)
    if soft:
        pen.setStyle(_SOFT_LINES[role])
    pen.setCosmetic(True)
    return pen

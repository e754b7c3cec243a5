"""The sheet map, small: which sheets there are, how they overlap, and what lies on them."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.sheets import SheetMap, Tile
from workbench.ui.look import GRID, fonts, look

_EDGE = 4 * GRID
_LEAST_NAME = 18
"""Pixels a sheet must measure for its name to be written on it."""


class SheetPreview(QWidget):
    """Paints a sheet map as large as there is room for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._map: SheetMap | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(100 * GRID, 90 * GRID)
        self.setAccessibleName("Sheet map")

    def show_map(self, sheets: SheetMap | None) -> None:
        """Show a map, or empty ground."""
        self._map = sheets
        names = ", ".join(tile.name for tile in sheets.tiles) if sheets else "none"
        self.setAccessibleDescription(f"Sheets: {names}")
        self.update()

    def sizeHint(self) -> QSize:
        """A good half of the dialog."""
        return QSize(140 * GRID, 120 * GRID)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look."""
        super().changeEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Sheets and their names, and the panels over them."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().paper)
        if self._map is not None:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            view = self._view(self._map)
            self._paint_sheets(painter, self._map, view)
            for tile in self._map.tiles:
                self._paint_name(painter, tile, view)
            self._paint_panels(painter, self._map, view)
        painter.end()

    def _view(self, sheets: SheetMap) -> QTransform:
        """From millimetres, y up, to pixels, y down: everything in sight, in the middle."""
        boxes = [tile.box for tile in (*sheets.tiles, *sheets.blanks)]
        left, right = min(box.left for box in boxes), max(box.right for box in boxes)
        bottom, top = min(box.bottom for box in boxes), max(box.top for box in boxes)
        room = self.rect().adjusted(_EDGE, _EDGE, -_EDGE, -_EDGE)
        scale = min(room.width() / (right - left), room.height() / (top - bottom))
        view = QTransform()
        view.translate(room.center().x(), room.center().y())
        view.scale(scale, -scale)
        view.translate(-(left + right) / 2, -(bottom + top) / 2)
        return view

    def _paint_sheets(self, painter: QPainter, sheets: SheetMap, view: QTransform) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(look().hairline, 1, Qt.PenStyle.DashLine))
        for tile in sheets.blanks:
            painter.drawRect(_box(tile, view))
        painter.setPen(QPen(look().rule, 1))
        painter.setBrush(look().panel)
        for tile in sheets.tiles:
            painter.drawRect(_box(tile, view))
        # Once more without the ground, so that each overlap shows both of its edges.
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for tile in sheets.tiles:
            painter.drawRect(_box(tile, view))

    def _paint_panels(self, painter: QPainter, sheets: SheetMap, view: QTransform) -> None:
        painter.setPen(QPen(look().ink, 1.2))
        for panel in sheets.panels:
            painter.drawPolygon(view.map(QPolygonF([QPointF(x, y) for x, y in panel.outline.tolist()])))
        painter.setPen(QPen(look().selected, 1))
        if sheets.squares is not None:
            box = sheets.squares
            area = QRectF(QPointF(box.left, box.bottom), QPointF(box.right, box.top))
            painter.drawRect(view.mapRect(area))

    def _paint_name(self, painter: QPainter, tile: Tile, view: QTransform) -> None:
        box = _box(tile, view)
        if min(box.width(), box.height()) < _LEAST_NAME:
            return
        painter.setFont(fonts().strong if box.width() > 3 * _LEAST_NAME else fonts().small)
        painter.setPen(look().selected)
        corner = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop
        painter.drawText(box.adjusted(0, 0, -GRID, 0), corner, tile.name)


def _box(tile: Tile, view: QTransform) -> QRectF:
    box = tile.box
    return view.mapRect(QRectF(QPointF(box.left, box.bottom), QPointF(box.right, box.top)))

"""Rulers along the top and the left, and the grid, in the user's unit."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, floor

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QWidget

from workbench.body import Unit, say_exact
from workbench.ui.board.lettering import put
from workbench.ui.board.paint_levels import GUTTER, RULER, paint_columns
from workbench.ui.board.pens import across, faint, upright
from workbench.ui.board.view import Sight, View
from workbench.ui.look import fonts, look

_STEPS = {
    "in": tuple(25.4 * inches for inches in (0.125, 0.25, 0.5, 1, 2, 4, 8, 16, 32)),
    "cm": tuple(10.0 * cm for cm in (0.1, 0.5, 1, 2, 5, 10, 20, 50, 100)),
}
_NUMBER = 24.0
"""Pixels of a number: one that would be cut off at the edge is left out."""
_LABEL_ROOM, _TICK_ROOM, _GRID_ROOM = 40.0, 5.0, 9.0
"""Pixels between two numbers, two ticks, two lines of the grid."""


def step_for(unit: Unit, scale: float, room: float) -> float:
    """The smallest step of the tape, mm, that takes up at least ``room`` pixels."""
    return next((step for step in _STEPS[unit] if step * scale >= room), _STEPS[unit][-1])


def marks(step: float, low: float, high: float) -> Iterator[float]:
    """The multiples of a step from ``low`` to ``high``, mm."""
    for number in range(ceil(low / step), floor(high / step) + 1):
        yield number * step


def paint_grid(painter: QPainter, view: View, unit: Unit, room: QRectF) -> None:
    """A line for each step, a stronger one for each number of the ruler."""
    shown = look()
    fine = step_for(unit, view.scale, _GRID_ROOM)
    coarse = step_for(unit, view.scale, _LABEL_ROOM)
    for step, colour in ((fine, faint(shown.hairline, 0.5)), (coarse, shown.hairline)):
        _grid(painter, view, step, room, colour)


def _grid(painter: QPainter, view: View, step: float, room: QRectF, colour: QColor) -> None:
    left, top = view.mm(room.topLeft())
    right, bottom = view.mm(room.bottomRight())
    for mm in marks(step, left, right):
        upright(painter, view.x(mm), room.top(), room.bottom(), colour)
    for mm in marks(step, bottom, top):
        across(painter, view.y(mm), room.left(), room.right(), colour)


class _Ruler(QWidget):
    """One ruler: drawn once for a view, a unit and a look, and kept, since the hand moves over it all day."""

    name = "Ruler"

    def __init__(self, sight: Sight, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(self.name)
        self._sight = sight
        self._unit: Unit = "in"
        self._hand: QPointF | None = None
        self._kept: QPixmap | None = None
        self._kept_for: tuple[object, ...] = ()
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def show_unit(self, unit: Unit) -> None:
        """Count in another unit."""
        if unit != self._unit:
            self._unit = unit
            self.update()

    def show_hand(self, pixel: QPointF | None) -> None:
        """Mark where the hand is."""
        if pixel != self._hand:
            self._hand = pixel
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """The kept drawing, and a hairline where the hand is."""
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._drawn())
        if self._hand is not None:
            self._mark_hand(painter, self._hand)

    def _drawn(self) -> QPixmap:
        wanted = (self._sight.view, self._unit, self.size(), self.devicePixelRatioF(), look())
        if self._kept is None or wanted != self._kept_for:
            ratio = self.devicePixelRatioF()
            self._kept = QPixmap(self.size() * ratio)
            self._kept.setDevicePixelRatio(ratio)
            self._kept.fill(look().paper)
            painter = QPainter(self._kept)
            self._draw(painter, self._sight.view)
            painter.end()
            self._kept_for = wanted
        return self._kept

    def _steps(self, scale: float) -> tuple[tuple[float, float], tuple[float, float]]:
        """Two steps of the tape in mm, each with the pixels of its ticks; the larger is numbered."""
        return (step_for(self._unit, scale, _TICK_ROOM), 4.0), (step_for(self._unit, scale, _LABEL_ROOM), 8.0)

    def _draw(self, painter: QPainter, view: View) -> None:
        raise NotImplementedError

    def _mark_hand(self, painter: QPainter, hand: QPointF) -> None:
        raise NotImplementedError


class TopRuler(_Ruler):
    """Runs from the centre front along the top, and heads the columns of the ledger."""

    name = "Ruler along the top"

    def _draw(self, painter: QPainter, view: View) -> None:
        low, high = (GUTTER - view.left) / view.scale, (self.width() - view.left) / view.scale
        painter.setPen(look().soft_ink)
        for step, size in self._steps(view.scale):
            for mm in marks(step, low, high):
                upright(painter, view.x(mm), RULER - size, RULER, look().rule)
        for mm in marks(step, low, high - _NUMBER / view.scale):
            put(painter, say_exact(mm, self._unit), view.x(mm) + 4, 10, fonts().small)
        across(painter, RULER - 1, 0, self.width(), look().hairline)
        painter.fillRect(QRectF(0, 0, GUTTER, RULER - 1), look().paper)
        paint_columns(painter)

    def _mark_hand(self, painter: QPainter, hand: QPointF) -> None:
        if hand.x() > GUTTER:
            upright(painter, hand.x(), 0, RULER, look().selected)


class SideRuler(_Ruler):
    """Runs from the waist along the left."""

    name = "Ruler at the side"

    def _draw(self, painter: QPainter, view: View) -> None:
        painter.translate(0, -RULER)
        bottom = self.height() + RULER
        high, low = (view.waist - RULER) / view.scale, (view.waist - bottom) / view.scale
        painter.setPen(look().soft_ink)
        for step, size in self._steps(view.scale):
            for mm in marks(step, low, high):
                across(painter, view.y(mm), RULER - size, RULER, look().rule)
        for mm in marks(step, low, high):
            put(painter, say_exact(mm, self._unit), RULER - 6, view.y(mm) - 8, fonts().small, "right")
        upright(painter, RULER - 1, RULER, bottom, look().hairline)

    def _mark_hand(self, painter: QPainter, hand: QPointF) -> None:
        across(painter, hand.y() - RULER, 0, RULER, look().selected)

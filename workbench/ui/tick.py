"""A box to tick, with words beside it: drawn in ink, so that it is seen in light and dark."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPoint, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QApplication,
    QCheckBox,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from workbench.ui.look import GRID, fonts, look

_BOX = 16.0
_GAP = 2 * GRID
_TICK = ((0.22, 0.52), (0.42, 0.72), (0.78, 0.28))


class Tick(QCheckBox):
    """Space ticks it, as in any box; so does Enter. Words of a step that is done may fade."""

    def __init__(self, text: str = "", parent: QWidget | None = None, *, fades: bool = False) -> None:
        super().__init__(text, parent)
        self._fades = fades
        self.setFont(fonts().strong if fades else fonts().body)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    @property
    def words(self) -> str:
        """What stands beside the box."""
        return self.text().replace("&&", "&")

    def sizeHint(self) -> QSize:
        """Room for the box and the words."""
        return QSize(int(_BOX) + _GAP + self.fontMetrics().horizontalAdvance(self.words) + GRID, 6 * GRID)

    def minimumSizeHint(self) -> QSize:
        """The words may be cut short, the box never."""
        return QSize(int(_BOX) + _GAP, 6 * GRID)

    def hitButton(self, at: QPoint) -> bool:
        """A click on the words counts, and none beyond them."""
        return self.rect().contains(at) and at.x() <= self.sizeHint().width()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what Space does."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Box, tick, words; a line under the words while it has the focus."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_box(painter)
        left = int(_BOX) + _GAP
        room = self.width() - left
        text = self.fontMetrics().elidedText(self.words, Qt.TextElideMode.ElideRight, room)
        painter.setPen(self._ink())
        painter.drawText(left, 0, room, self.height(), Qt.AlignmentFlag.AlignVCenter, text)
        if self.hasFocus():
            base = 0.5 * (self.height() + self.fontMetrics().height())
            width = min(self.fontMetrics().horizontalAdvance(text), room)
            painter.fillRect(QRectF(left, base, width, 2), look().selected)
        painter.end()

    def _ink(self) -> QColor:
        if not self.isEnabled():
            return look().rule
        return look().soft_ink if self._fades and self.isChecked() else look().ink

    def _paint_box(self, painter: QPainter) -> None:
        box = QRectF(1, 0.5 * (self.height() - _BOX), _BOX, _BOX)
        lit = self.hasFocus() or self.underMouse()
        paint_tick(painter, box, on=self.isChecked(), lit=lit, can=self.isEnabled())


class TickDelegate(QStyledItemDelegate):
    """Rows of a list that are ticked, with the same box in front."""

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """The row, its own box laid over that of the system."""
        super().paint(painter, option, index)
        filled = QStyleOptionViewItem(option)
        self.initStyleOption(filled, index)
        row: Any = filled  # the fields of an option are not declared by the wheel
        style = row.widget.style() if row.widget is not None else QApplication.style()
        place = style.subElementRect(QStyle.SubElement.SE_ItemViewItemCheckIndicator, filled, row.widget)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(place, look().field)
        lit = bool(row.state & QStyle.StateFlag.State_MouseOver)
        paint_tick(painter, QRectF(place), on=row.checkState == Qt.CheckState.Checked, lit=lit)
        painter.restore()

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        """A little air above and below."""
        return super().sizeHint(option, index) + QSize(0, 2 * GRID)


def paint_tick(painter: QPainter, place: QRectF, *, on: bool, lit: bool, can: bool = True) -> None:
    """Draw the box, and the tick in it."""
    box = place.adjusted(1, 1, -1, -1)
    fill = look().selected if can else look().rule
    painter.setPen(QPen(fill if on or not can or lit else look().soft_ink, 1.5))
    painter.setBrush(fill if on else look().field)
    painter.drawRoundedRect(box, 2, 2)
    if on:
        painter.setPen(QPen(look().on_selected, 2))
        side = box.width()
        painter.drawPolyline([QPointF(box.left() + a * side, box.top() + b * side) for a, b in _TICK])

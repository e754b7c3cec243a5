"""A list of lines on the screen: wrapped, lit under the hand, read out by a screen reader."""

from __future__ import annotations

from PySide6.QtCore import (
    QAbstractListModel,
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRect,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import (
    QFont,
    QFontMetrics,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QResizeEvent,
)
from PySide6.QtWidgets import QFrame, QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import draw_mark
from workbench.ui.pieces.lines import Line

Index = QModelIndex | QPersistentModelIndex
_EDGE, _ABOVE, _MARK = 3 * GRID, GRID, 12
_NOWHERE = QModelIndex()
_WRAP = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


class LineModel(QAbstractListModel):
    """The lines on show."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._lines: tuple[Line, ...] = ()

    @property
    def lines(self) -> tuple[Line, ...]:
        """All of them."""
        return self._lines

    def show_lines(self, lines: tuple[Line, ...]) -> bool:
        """Show these; whether their number is what it was, so that the place in the list can be kept."""
        same = len(lines) == len(self._lines)
        if same:
            changed = [n for n, (a, b) in enumerate(zip(lines, self._lines, strict=True)) if a is not b]
            self._lines = lines
            if changed:
                self.dataChanged.emit(self.index(changed[0]), self.index(changed[-1]))
            return True
        self.beginResetModel()
        self._lines = lines
        self.endResetModel()
        return False

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """How many lines."""
        return 0 if parent.isValid() else len(self._lines)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a line; all of them for a screen reader."""
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return self._lines[index.row()].spoken
        return None

    def line(self, index: Index) -> Line | None:
        """The line at an index; None where there is none."""
        return self._lines[index.row()] if index.isValid() and index.row() < len(self._lines) else None


class LineDelegate(QStyledItemDelegate):
    """Draws a line: mark and text at the left, the amount at the right, the note below."""

    def __init__(self, model: LineModel, parent: QWidget) -> None:
        super().__init__(parent)
        self._model, self._view = model, parent

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """As tall as the text and the note need at the width there is."""
        line = self._model.line(index)
        width = self._view.width()
        return QSize(0, _Places(line, width).height) if line is not None else QSize(0, 0)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """The words where they have been measured to fit."""
        line = self._model.line(index)
        if line is None:
            return
        box: QRect = option.rect
        state: QStyle.StateFlag = option.state
        painter.save()
        if state & (QStyle.StateFlag.State_Selected | QStyle.StateFlag.State_MouseOver):
            painter.fillRect(box, look().selected_fill)
        if line.heading:
            painter.fillRect(box.left() + _EDGE, box.top(), box.width() - 2 * _EDGE, 1, look().hairline)
        self._write(painter, line, box)
        painter.restore()

    def _write(self, painter: QPainter, line: Line, box: QRect) -> None:
        places = _Places(line, box.width())
        if line.mark is not None:
            square = QRectF(box.left() + places.mark, box.top() + places.top + 2, _MARK, _MARK)
            draw_mark(painter, square, line.mark, look().ground)
        painter.setFont(places.font)
        painter.setPen(look().ink)
        painter.drawText(places.text.translated(box.topLeft()), _WRAP, line.text)
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop
        painter.drawText(places.amount.translated(box.topLeft()), right, line.amount)
        painter.setFont(fonts().small)
        painter.setPen(look().soft_ink)
        painter.drawText(places.note.translated(box.topLeft()), _WRAP, line.note)


class _Places:
    """Where the parts of a line stand in a row of some width."""

    def __init__(self, line: Line, width: int) -> None:
        self.font: QFont = fonts().strong if line.heading else fonts().small if line.indent else fonts().body
        self.top = 2 * _ABOVE if line.heading else _ABOVE
        metrics, small = QFontMetrics(self.font), QFontMetrics(fonts().small)
        self.mark = _EDGE + (4 * GRID if line.indent else 0)
        left = self.mark + (_MARK + GRID if line.mark is not None else 0)
        taken = metrics.horizontalAdvance(line.amount) if line.amount else 0
        room = max(width - left - _EDGE - (taken + 2 * GRID if taken else 0), 60)
        self.text = metrics.boundingRect(QRect(left, self.top, room, 1000), _WRAP, line.text)
        self.text.setWidth(room)
        self.amount = QRect(width - _EDGE - taken, self.top, taken + 1, metrics.height())
        below = self.text.bottom() + 1
        self.note = QRect(left, below, max(width - left - _EDGE, 60), 0)
        if line.note:
            self.note.setHeight(
                small.boundingRect(QRect(0, 0, self.note.width(), 1000), _WRAP, line.note).height()
            )
        self.height = self.note.bottom() + 1 + _ABOVE


class LineList(QListView):
    """The list; says which line is under the hand, and which was picked."""

    pointed = Signal(object)
    """The :class:`Line` under the hand or at the keys; None when there is none."""
    picked = Signal(object)
    """The :class:`Line` she chose."""
    copying = Signal()
    """The copy key was pressed."""

    def __init__(self, model: LineModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._lines = model
        self.setModel(model)
        self.setItemDelegate(LineDelegate(model, self.viewport()))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setMouseTracking(True)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.viewport().setAutoFillBackground(False)
        self.entered.connect(self.on_entered)
        self.clicked.connect(self.on_clicked)
        self.selectionModel().currentChanged.connect(self.on_current)

    def on_entered(self, index: QModelIndex) -> None:
        """The hand is over a line."""
        self.pointed.emit(self._lines.line(index))

    def on_clicked(self, index: QModelIndex) -> None:
        """A line is chosen."""
        self.picked.emit(self._lines.line(index))

    def on_current(self, current: QModelIndex, _before: QModelIndex) -> None:
        """The keys have come to another line."""
        if self.hasFocus():
            self.pointed.emit(self._lines.line(current))

    def leaveEvent(self, event: QEvent) -> None:
        """The hand is elsewhere."""
        self.pointed.emit(None)
        super().leaveEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter chooses, the copy key copies all of it."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copying.emit()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.picked.emit(self._lines.line(self.currentIndex()))
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lines wrap anew."""
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()


def copy_text(text: str) -> None:
    """Put text on the clipboard."""
    QGuiApplication.clipboard().setText(text)

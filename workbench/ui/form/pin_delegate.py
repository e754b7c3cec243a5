"""How a cell of the ledger is painted and typed into."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPersistentModelIndex, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import QLineEdit, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from workbench.draft import Place
from workbench.ui.form.ledger_cells import Column
from workbench.ui.form.ledger_model import FIRST, GROUPS, Index, LedgerModel
from workbench.ui.look import GRID, fonts, look

_DOT = 5
_PADDING = 6
_AT_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_AT_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_ENDING = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab, Qt.Key.Key_Backtab)


def needed_width(column: Column) -> int:
    """Room for the heading of a column, and for a figure such as “short 1⅛” where it may stand."""
    widest = "short 1⅛" if column.kind == "gap" else column.label
    return max(QFontMetrics(fonts().small).horizontalAdvance(widest) + 2 * _PADDING + 1, 12 * GRID)


class PinDelegate(QStyledItemDelegate):
    """Paints figures and the dot of a pin; keeps an editor open while what it holds cannot be read."""

    refused = Signal(str)
    """One sentence."""
    accepted = Signal()
    """What was typed is pinned, or given up."""

    def __init__(self, model: LedgerModel, parent: QObject) -> None:
        super().__init__(parent)
        self._model = model
        self._index = QPersistentModelIndex()
        self.place: Place | None = None
        """What is lit up."""

    # --- painting --------------------------------------------------------------------------

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Ground, hairlines, the figure, and the dot of a pin."""
        painter.save()
        rect: QRect = option.rect
        painter.fillRect(rect, self._ground(index))
        self._paint_lines(painter, rect, index)
        self._paint_text(painter, rect, index)
        state = option.state
        if state & QStyle.StateFlag.State_Selected:
            painter.setPen(QPen(look().selected, 1 if not state & QStyle.StateFlag.State_HasFocus else 2))
            painter.drawRect(rect.adjusted(1, 1, -2, -2))
        painter.restore()

    def _ground(self, index: Index) -> QColor:
        model, place = self._model, self.place
        if index.row() < FIRST:
            return look().ground
        if place is None:
            return look().field
        same_level = place.level is not None and place.level == model.level(index)
        same_seam = place.seam is not None and place.seam == model.column(index).seam
        lit = same_level if place.seam is None or not model.column(index).seam else same_seam
        return look().selected_fill if lit else look().field

    def _paint_lines(self, painter: QPainter, rect: QRect, index: Index) -> None:
        """A hairline under each level, a firmer one where a group begins."""
        painter.setPen(look().hairline)
        if index.row() >= FIRST - 1:
            painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        if index.column() and index.column() in self._model.firsts:
            painter.setPen(look().rule)
            painter.drawLine(rect.topLeft(), rect.bottomLeft())

    def _paint_text(self, painter: QPainter, rect: QRect, index: Index) -> None:
        model, column = self._model, self._model.column(index)
        pinned = model.is_pinned(index)
        strong = pinned or column.kind == "placed" or index.row() == GROUPS
        head = index.row() == FIRST - 1
        painter.setFont(fonts().small if head else fonts().strong if strong else fonts().body)
        painter.setPen(
            look().attend if model.is_open(index) else look().soft_ink if index.row() < FIRST else look().ink
        )
        left = index.column() == 0 or index.row() == GROUPS
        box = rect.adjusted(_PADDING, 0, -_PADDING, 0)
        painter.drawText(box, _AT_LEFT if left else _AT_RIGHT, model.text(index))
        if pinned:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look().selected)
            painter.drawEllipse(QRectF(rect.left() + 3, rect.center().y() - 2, _DOT, _DOT))

    # --- typing ----------------------------------------------------------------------------

    def createEditor(self, parent: QWidget, _option: QStyleOptionViewItem, index: Index) -> QWidget:
        """A line edit with the figure in it."""
        self._index = QPersistentModelIndex(index)
        editor = QLineEdit(parent)
        editor.setAccessibleName(str(index.data(Qt.ItemDataRole.AccessibleTextRole)))
        editor.setFont(fonts().body)
        editor.setAlignment(Qt.AlignmentFlag.AlignRight)
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """The exact figure, unless she has begun to type: a redraft must not take that away."""
        if isinstance(editor, QLineEdit) and not editor.isModified():
            editor.setText(str(index.data(Qt.ItemDataRole.EditRole)))
            editor.selectAll()

    def setModelData(self, editor: QWidget, _model: object, _index: Index) -> None:
        """Nothing: what was typed is pinned as soon as it could be read."""

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """Enter, Tab and leaving pin what was typed; while it cannot be read the editor stays."""
        if not isinstance(editor, QLineEdit):
            return super().eventFilter(editor, event)
        key = event.key() if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress else None
        leaves = event.type() == QEvent.Type.FocusOut
        if (leaves or key in _ENDING) and not self._pinned(editor):
            return not leaves
        if leaves or key in _ENDING or key == Qt.Key.Key_Escape:
            self.accepted.emit()
        return super().eventFilter(editor, event)

    def _pinned(self, editor: QLineEdit) -> bool:
        """Pin what was typed, if anything was; whether it could be read."""
        if not editor.isModified() or not self._index.isValid():
            return True
        try:
            self._model.pin(self._index, editor.text())
        except ValueError as error:
            self.refused.emit(str(error))
            return False
        editor.setModified(False)
        return True

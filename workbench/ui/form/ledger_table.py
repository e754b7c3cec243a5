"""The ledger as a table: for reading it whole, typing into it, and copying it."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPersistentModelIndex, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QPainter, QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPushButton,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from workbench.document import Picture
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.ledger_model import PINNED_ROLE, Index, LedgerModel
from workbench.ui.form.row import Note
from workbench.ui.look import GRID, fonts, look

ROW_HEIGHT = 7 * GRID
_NAME_WIDTH, _LEVEL_WIDTH = 34 * GRID, 24 * GRID
_HINT = (
    "Type in a cell to pin it, Delete to unpin. Pinned figures are bold and carry a dot; "
    "the weights share the rest."
)
_NOTHING = "The ledger begins when bust and waist are known."
_LEAVING = (QEvent.Type.FocusOut, QEvent.Type.Hide)
_ENDING = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab, Qt.Key.Key_Backtab)


class PinDelegate(QStyledItemDelegate):
    """Draws the dot of a pin, and keeps an editor open while what it holds cannot be read."""

    refused = Signal(str)
    """One sentence."""
    accepted = Signal()
    """What was typed is pinned, or given up."""

    def __init__(self, model: LedgerModel, parent: QObject) -> None:
        super().__init__(parent)
        self._model = model
        self._index = QPersistentModelIndex()

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """The cell as it is, and the dot."""
        super().paint(painter, option, index)
        if index.data(PINNED_ROLE):
            painter.save()
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look().selected)
            box: QRectF = QRectF(option.rect)
            painter.drawEllipse(QRectF(box.left() + 2 * GRID, box.center().y() - 3, 6, 6))
            painter.restore()

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
        """What was typed was pinned when it could be read."""

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """Enter, Tab and leaving pin what was typed; while it cannot be read the editor stays."""
        if not isinstance(editor, QLineEdit):
            return super().eventFilter(editor, event)
        pressed = isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress
        ends = pressed and isinstance(event, QKeyEvent) and event.key() in _ENDING
        if (ends or event.type() == QEvent.Type.FocusOut) and not self._pinned(editor):
            return ends
        if ends or event.type() in _LEAVING:
            self.accepted.emit()
        if isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_Escape:
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


class Cells(QTableView):
    """The table itself: typing edits, Delete unpins, copying copies what is picked."""

    def __init__(self, model: LedgerModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self.setModel(model)
        self.setAccessibleName("Ledger")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setFont(fonts().body)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(triggers.DoubleClicked | triggers.AnyKeyPressed | triggers.EditKeyPressed)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(ROW_HEIGHT)
        self.verticalHeader().setMinimumSectionSize(ROW_HEIGHT)
        header = self.horizontalHeader()
        header.setFont(fonts().strong)
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        header.setMinimumSectionSize(_LEVEL_WIDTH)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)

    def show_rows(self) -> None:
        """Let the headings run across, after the rows have become others."""
        self.clearSpans()
        for number, row in enumerate(self._model.rows):
            if row.kind == "group":
                self.setSpan(number, 0, 1, self._model.columnCount())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete unpins, Enter edits, the copy key copies."""
        index = self.currentIndex()
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            for picked in self.selectedIndexes():
                self._model.unpin(picked)
        elif event.matches(QKeySequence.StandardKey.Copy):
            QGuiApplication.clipboard().setText(self._picked())
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._model.is_editable(index):
            self.edit(index)
        else:
            super().keyPressEvent(event)

    def _picked(self) -> str:
        """The picked cells, apart by tabs and lines."""
        rows: dict[int, list[str]] = {}
        for index in sorted(self.selectedIndexes()):
            rows.setdefault(index.row(), []).append(self._model.text(index))
        return "\n".join("\t".join(cells) for cells in rows.values())


class LedgerTable(QWidget):
    """The table with a word on how to use it, and a button that copies it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.model = LedgerModel(desk, self)
        self.cells = Cells(self.model, self)
        self.delegate = PinDelegate(self.model, self)
        self.cells.setItemDelegate(self.delegate)
        self.note = Note(self)
        self.copy = QPushButton("Copy as text", self)
        self.nothing = QLabel(_NOTHING, self)
        self._assemble()
        desk.drafted.connect(self.show_picture)
        desk.selected.connect(self.model.show_selected)
        self.copy.clicked.connect(self.on_copy)
        self.delegate.refused.connect(self.on_refused)
        self.delegate.accepted.connect(self.on_accepted)
        self.cells.selectionModel().currentChanged.connect(self.on_current_changed)
        self._show(desk.picture)

    def _assemble(self) -> None:
        foot = QHBoxLayout()
        foot.setContentsMargins(3 * GRID, GRID, 3 * GRID, GRID)
        foot.addWidget(self.note, 1)
        foot.addWidget(self.copy, 0, Qt.AlignmentFlag.AlignBottom)
        self.nothing.setAlignment(Qt.AlignmentFlag.AlignCenter)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.nothing, 1)
        column.addWidget(self.cells, 1)
        column.addLayout(foot)
        self.note.show_words(_HINT)

    def sizeHint(self) -> QSize:
        """A dozen rows, and the names of five levels."""
        return QSize(_NAME_WIDTH + 5 * _LEVEL_WIDTH, 13 * ROW_HEIGHT)

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what was drafted while nobody looked."""
        super().showEvent(event)
        self._show(self._desk.picture)

    def show_picture(self, picture: Picture) -> None:
        """Show the ledger, while it is seen."""
        if self.isVisible():
            self._show(picture)

    def _show(self, picture: Picture) -> None:
        known = picture.outcome is not None
        self.cells.setVisible(known)
        self.nothing.setVisible(not known)
        self.copy.setEnabled(known)
        if self.model.show_picture(picture):
            self.cells.show_rows()

    def on_copy(self) -> None:
        """Put the whole table on the clipboard."""
        QGuiApplication.clipboard().setText(self.model.as_text())

    def on_refused(self, sentence: str) -> None:
        """Say why what was typed cannot be read."""
        self.note.show_words(sentence, "attend")
        self._desk.refuse("ledger", f"Ledger: {sentence}")

    def on_accepted(self) -> None:
        """Say how the table is used again."""
        self.note.show_words(_HINT)

    def on_current_changed(self, current: QModelIndex, _before: QModelIndex) -> None:
        """Light up what the cell is about; a heading is about nothing."""
        place: Place | None = self.model.place(current)
        if place is not None:
            self._desk.select(place)

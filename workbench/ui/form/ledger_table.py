"""The ledger as a table: for reading it whole, typing into it, and copying it."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QSize, Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from workbench.document import Picture
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.ledger_model import GROUPS, LedgerModel
from workbench.ui.form.note import Note
from workbench.ui.form.pin_delegate import PinDelegate, needed_width
from workbench.ui.look import GRID, fonts

ROW_HEIGHT = 6 * GRID
_NAME_WIDTH, _MOST_WIDTH = 22 * GRID, 26 * GRID
_HINT = (
    "Type in a cell to pin it, Delete to unpin. Pinned figures are bold and carry a dot; "
    "the weights share the rest."
)
_NOTHING = "The ledger begins when bust and waist are known."


class Cells(QTableView):
    """The table itself: typing edits, Delete unpins, copying copies what is picked."""

    def __init__(self, model: LedgerModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self.setModel(model)
        self.setAccessibleName("Ledger")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setFont(fonts().body)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(triggers.DoubleClicked | triggers.AnyKeyPressed | triggers.EditKeyPressed)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.horizontalHeader().hide()
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(ROW_HEIGHT)
        self.verticalHeader().setMinimumSectionSize(ROW_HEIGHT)

    def show_columns(self) -> None:
        """Let the headings run across, after the columns have become others."""
        self.clearSpans()
        for start, count in self._model.spans():
            if count > 1:
                self.setSpan(GROUPS, start, 1, count)
        self._share_width()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the columns the room there is."""
        super().resizeEvent(event)
        self._share_width()

    def _share_width(self) -> None:
        """The names have their width, the figures share the rest, and none of them gets too little."""
        count = self._model.columnCount() - 1
        if count < 1:
            return
        each = min((self.viewport().width() - _NAME_WIDTH) // count, _MOST_WIDTH)
        self.setColumnWidth(0, _NAME_WIDTH)
        for number, column in enumerate(self._model.columns[1:], 1):
            self.setColumnWidth(number, max(each, needed_width(column)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete unpins, Enter edits, the copy key copies."""
        index = self.currentIndex()
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            for picked in self.selectedIndexes():
                self._model.unpin(picked)
        elif event.matches(QKeySequence.StandardKey.Copy):
            QGuiApplication.clipboard().setText(self._picked())
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            # An editor lets the key through to here once more after it has taken it.
            if self.state() != QAbstractItemView.State.EditingState and self._model.is_editable(index):
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
        desk.selected.connect(self.show_selected)
        self.copy.clicked.connect(self.on_copy)
        self.delegate.refused.connect(self.on_refused)
        self.delegate.accepted.connect(self.on_accepted)
        self.cells.selectionModel().currentChanged.connect(self.on_current_changed)
        self._show(desk.picture)

    def _assemble(self) -> None:
        foot = QHBoxLayout()
        foot.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
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
        """Headings and five levels; a dozen columns."""
        return QSize(_NAME_WIDTH + 12 * 14 * GRID, 7 * ROW_HEIGHT + 12 * GRID)

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
            self.cells.show_columns()

    def show_selected(self, place: Place | None) -> None:
        """Tint the level and the seam of a place."""
        self.delegate.place = place
        self.cells.viewport().update()

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
        place = self.model.place(current)
        if place is not None:
            self._desk.select(place)

"""The table of the book: one row a project, Enter opens, letters search."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QWidget

from workbench.book import Entry
from workbench.ui.book.model import COLUMNS, BookModel, Index
from workbench.ui.book.paint_row import ROW_HEIGHT, RowDelegate
from workbench.ui.look import GRID, fonts

_DATE, _FITTING, _OPEN = 28 * GRID, 32 * GRID, 62 * GRID
_LEAST_OPEN = 44 * GRID
_LEAST_CLIENT = 70 * GRID
_SHEET = (
    "QTableView { background: palette(base); }"
    "QHeaderView { background: palette(window); }"
    "QHeaderView::section { background: palette(window); border: none; padding: 6px 12px; }"
)


class BookTable(QTableView):
    """The rows."""

    opened = Signal(object)
    """The :class:`Entry` she wants to open."""
    pointed = Signal()
    """Another row is the current one."""
    typed = Signal(str)
    """A letter: the beginning of a search."""
    sorted_by = Signal(str)
    """The order of the column whose head was pressed."""
    removing = Signal()
    """The delete key was pressed."""

    def __init__(self, model: BookModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self.setModel(model)
        self.setItemDelegate(RowDelegate(model, self))
        self.setAccessibleName("Client book")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        self.setStyleSheet(_SHEET)
        self._dress_heads()
        self.doubleClicked.connect(self.on_double_clicked)

    def _dress_heads(self) -> None:
        self.verticalHeader().hide()
        # every row is as tall as any other: their heights need not be asked for one by one
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.verticalHeader().setDefaultSectionSize(ROW_HEIGHT)
        head = self.horizontalHeader()
        head.setFont(fonts().strong)
        head.setHighlightSections(False)
        head.setSectionsClickable(True)
        head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        head.sectionClicked.connect(self.on_head_clicked)

    @property
    def entry(self) -> Entry | None:
        """The current row."""
        return self._model.entry(self.currentIndex())

    def show_current(self, place: str, otherwise: int = 0) -> None:
        """Make the row of a file the current one; where it is not on show, another one."""
        row = self._model.row_of(place)
        if row < 0:
            row = min(otherwise, self._model.rowCount() - 1)
        index = self._model.index(row, 0)
        if index.isValid():
            self.setCurrentIndex(index)
            self.scrollTo(index)
        self.pointed.emit()

    def currentChanged(self, current: Index, previous: Index) -> None:
        """Say that it is another row."""
        super().currentChanged(current, previous)
        self.pointed.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The client takes what the others leave."""
        super().resizeEvent(event)
        room = self.viewport().width()
        opened = _OPEN if room - _DATE - _FITTING - _OPEN >= _LEAST_CLIENT else _LEAST_OPEN
        client = max(room - _DATE - _FITTING - opened, _LEAST_CLIENT)
        for column, width in enumerate((client, _DATE, _FITTING, opened)):
            self.setColumnWidth(column, width)

    def on_head_clicked(self, column: int) -> None:
        """The order of a column is wanted."""
        self.sorted_by.emit(COLUMNS[column][0])

    def on_double_clicked(self, index: QModelIndex) -> None:
        """A row is wanted."""
        entry = self._model.entry(index)
        if entry is not None:
            self.opened.emit(entry)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens, Delete asks to remove, a letter begins a search, the rest moves."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.entry is not None:
                self.opened.emit(self.entry)
        elif event.key() == Qt.Key.Key_Delete:
            self.removing.emit()
        elif event.text().strip() and event.text().isprintable() and not _is_command(event):
            self.typed.emit(event.text())
        else:
            super().keyPressEvent(event)


def _is_command(event: QKeyEvent) -> bool:
    held = Qt.KeyboardModifier
    return bool(event.modifiers() & (held.ControlModifier | held.AltModifier | held.MetaModifier))

"""The table of other ways, at the right of the cloth place."""

from __future__ import annotations

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt, QTimer
from PySide6.QtGui import QFont, QGuiApplication, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from workbench.ui.cloth.bench import ClothBench, OnShow
from workbench.ui.cloth.compare import Other, Told, as_text, others_of, told_of
from workbench.ui.desk import Desk
from workbench.ui.form.note import Note
from workbench.ui.look import GRID, fonts, look
from workbench.ui.plain import plain_tip

WIDTH = 84 * GRID
_COLUMNS = ("Way", "Length", "To buy", "Used", "Cost")
_SHARES = (0.29, 0.20, 0.19, 0.13, 0.19)
_ROW = 7 * GRID
_PAUSE_MS = 250
"""The hand must have rested for so long before other ways are laid."""
_NOTE = "All are laid the plain way, so that they compare. A search makes each of them shorter."
_NOTHING = "Other ways are compared as soon as there are pieces."
_SHEET = (
    "QTableView { background: transparent; border: none; }"
    "QTableView::item { padding: 0 2px; border: none; }"
    "QTableView::item:selected { background: palette(highlight); color: palette(highlighted-text); }"
    "QHeaderView { background: transparent; }"
    "QHeaderView::section { background: transparent; border: none; padding: 4px 2px;"
    " border-bottom: 1px solid palette(midlight); }"
)
Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()


class CompareModel(QAbstractTableModel):
    """The ways that have been laid so far."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.rows: tuple[Told, ...] = ()

    def show_rows(self, rows: tuple[Told, ...]) -> None:
        """Show these."""
        if len(rows) == len(self.rows):
            self.rows = rows
            if rows:
                self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, len(_COLUMNS) - 1))
            return
        self.beginResetModel()
        self.rows = rows
        self.endResetModel()

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """How many ways."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Way, length, to buy, used, cost."""
        return 0 if parent.isValid() else len(_COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """The names of the columns."""
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return _COLUMNS[section]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side(section)
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a cell."""
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return (row.other.label, row.length, row.buy, row.used, row.cost)[index.column()]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side(index.column())
        if role == Qt.ItemDataRole.FontRole:
            return self._font(row, index.column())
        if role == Qt.ItemDataRole.ForegroundRole and row.trouble:
            return look().soft_ink
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(row.trouble) or None
        if role == Qt.ItemDataRole.AccessibleDescriptionRole:
            return row.trouble or None
        return None

    @staticmethod
    def _font(row: Told, column: int) -> QFont:
        return fonts().strong if row.other.change is None or column == 2 else fonts().body


def _side(column: int) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignLeft if column == 0 else Qt.AlignmentFlag.AlignRight
    return side | Qt.AlignmentFlag.AlignVCenter


class Ways(QTableView):
    """The table itself."""

    def __init__(self, model: CompareModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setAccessibleName("Other ways to cut it")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setFont(fonts().body)
        self.setWordWrap(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(_ROW)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setHighlightSections(False)
        self.horizontalHeader().setFont(fonts().small)
        self.setTabKeyNavigation(False)
        self.setStyleSheet(_SHEET)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share out the width."""
        super().resizeEvent(event)
        room = self.viewport().width()
        for column, share in enumerate(_SHARES):
            self.setColumnWidth(column, int(share * room))


class ComparePane(QWidget):
    """Lays one way after the other while the hand rests; each can be taken."""

    def __init__(self, desk: Desk, bench: ClothBench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._bench = desk, bench
        self._shown: OnShow | None = None
        self._left: list[Other] = []
        self._found: list[Told] = []
        self.model = CompareModel(self)
        self.view = Ways(self.model, self)
        self.note, self.trouble = Note(self), Note(self)
        self.take = QPushButton("Cut it so", self)
        self.copy = QPushButton("Copy as text", self)
        self.nothing = QLabel(_NOTHING, self)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.on_time)
        self._assemble()
        self.take.clicked.connect(self.on_take)
        self.copy.clicked.connect(self.on_copy)
        self.view.doubleClicked.connect(self.on_take)
        self.view.selectionModel().currentRowChanged.connect(self.show_picked)
        bench.laid.connect(self.show_laid)
        self._show_rows()

    def _assemble(self) -> None:
        title = QLabel("Compare", self)
        title.setFont(fonts().heading)
        title.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, GRID)
        self.nothing.setWordWrap(True)
        self.nothing.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 0)
        self.nothing.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        foot = QHBoxLayout()
        foot.setContentsMargins(3 * GRID, GRID, 3 * GRID, 2 * GRID)
        foot.setSpacing(2 * GRID)
        foot.addWidget(self.take)
        foot.addWidget(self.copy)
        foot.addStretch(1)
        notes = QVBoxLayout()
        notes.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, GRID)
        notes.addWidget(self.trouble)
        notes.addWidget(self.note)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for widget in (title, self.nothing):
            column.addWidget(widget)
        inset = QHBoxLayout()
        inset.setContentsMargins(2 * GRID, 0, 2 * GRID, 0)
        inset.addWidget(self.view)
        column.addLayout(inset, 1)
        column.addLayout(notes)
        column.addLayout(foot)
        self.note.show_words(_NOTE)

    # --- what is shown -------------------------------------------------------------------

    def show_laid(self, shown: OnShow) -> None:
        """Another cloth or another draft: compare anew when the hand rests."""
        before, self._shown = self._shown, shown
        if before is not None and not shown.behind and _same(before, shown):
            return
        self._timer.start(_PAUSE_MS)
        if shown.lay is None or not shown.lay.copies:
            self._found = []
            self._show_rows()

    def set_in_sight(self, in_sight: bool) -> None:
        """Lay nothing that nobody looks at."""
        if not in_sight:
            self._timer.stop()
            self._left = []
        elif self._shown is not None:
            self._timer.start(_PAUSE_MS)

    def on_time(self) -> None:
        """Lay the next way, one at a time, so that the window goes on in between."""
        if not self._left:
            self._begin()
            return
        shown = self._shown
        if shown is None or shown.lay is None or self._desk.gesturing:
            return
        told = told_of(shown.picture, shown.lay.cloth, self._left.pop(0))
        if told is not None:
            self._found.append(told)
        if self._left:
            self._timer.start(0)
        else:
            self._show_rows()

    def _begin(self) -> None:
        shown = self._shown
        lay = shown.lay if shown is not None else None
        if shown is None or lay is None or not lay.copies or shown.behind or not self.isVisible():
            return
        self._left, self._found = list(others_of(shown.picture.project, lay.cloth)), []
        self._timer.start(0)

    def finish(self) -> None:
        """Lay all of them now."""
        self._left = []
        self._begin()
        while self._left:
            self.on_time()
        self._timer.stop()

    def _show_rows(self) -> None:
        rows = tuple(self._found)
        self.model.show_rows(rows)
        self.view.clearSpans()
        for number, row in enumerate(rows):
            if row.trouble:
                self.view.setSpan(number, 1, 1, len(_COLUMNS) - 1)
        for widget in (self.view, self.copy, self.take, self.note):
            widget.setVisible(bool(rows))
        self.nothing.setVisible(not rows)
        self.show_picked()

    def show_picked(self) -> None:
        """Whether the way that is picked can be taken, and why not."""
        row = self._picked()
        self.take.setEnabled(row is not None and row.other.change is not None)
        self.trouble.show_words(row.trouble if row is not None else "", "attend" if row else None)

    def _picked(self) -> Told | None:
        index = self.view.currentIndex()
        return (
            self.model.rows[index.row()] if index.isValid() and index.row() < len(self.model.rows) else None
        )

    # --- what she does -------------------------------------------------------------------

    def on_take(self) -> None:
        """Cut it the way that is picked."""
        row = self._picked()
        if row is not None and row.other.change is not None:
            self._desk.apply(row.other.step_name, row.other.change(self._desk.project))

    def on_copy(self) -> None:
        """Put the table on the clipboard."""
        if self._shown is not None and self._shown.lay is not None:
            QGuiApplication.clipboard().setText(as_text(self._shown.lay.cloth.name, self.model.rows))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter takes, the copy key copies all of it."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.on_copy()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.view.hasFocus():
            self.on_take()
        else:
            super().keyPressEvent(event)


def _same(one: OnShow, other: OnShow) -> bool:
    """Whether nothing that the comparison hangs on has changed."""
    lays = (one.lay, other.lay)
    if any(lay is None for lay in lays) or one.behind:
        return False
    first, second = one.picture.project, other.picture.project
    mine = (
        first.measurements,
        first.design,
        first.making,
        first.unit,
        first.fraction,
        first.quoting.currency,
    )
    theirs = (
        *(second.measurements, second.design, second.making),
        *(second.unit, second.fraction, second.quoting.currency),
    )
    return bool(one.lay and other.lay and one.lay.cloth == other.lay.cloth and mine == theirs)

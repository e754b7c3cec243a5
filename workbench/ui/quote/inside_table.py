"""The inside sheet on the screen: a table that answers what it costs and what to ask."""

from __future__ import annotations

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import QFocusEvent, QFont, QGuiApplication, QKeyEvent, QKeySequence, QResizeEvent
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

from workbench.ui.desk import Desk
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import mark_icon
from workbench.ui.plain import plain_tip
from workbench.ui.quote.bench import QuoteBench, Reckoned
from workbench.ui.quote.headline import Headline
from workbench.ui.quote.inside import Line, answer_words, inside_lines, inside_text

_COLUMNS = ("What", "How it was worked out", "Amount")
_NAME, _AMOUNT, _LEAST = 0.36, 100, 120
_ROW, _HEAD = 6 * GRID, 8 * GRID
_NOTHING = "The quote begins as soon as there are pieces: type bust and waist in the draft."
_SHEET = (
    "QTableView { background: transparent; border: none; }"
    "QTableView::item { padding: 0 4px; border: none; }"
    "QTableView::item:selected { background: palette(highlight); color: palette(highlighted-text); }"
)
Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()


class InsideModel(QAbstractTableModel):
    """The lines on show."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.lines: tuple[Line, ...] = ()

    def show_lines(self, lines: tuple[Line, ...]) -> bool:
        """Show these; whether there are as many as before."""
        same = len(lines) == len(self.lines)
        if same:
            self.lines = lines
            if lines:
                self.dataChanged.emit(self.index(0, 0), self.index(len(lines) - 1, 2))
        else:
            self.beginResetModel()
            self.lines = lines
            self.endResetModel()
        return same

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """How many lines."""
        return 0 if parent.isValid() else len(self.lines)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Name, words, amount."""
        return 0 if parent.isValid() else len(_COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """The names of the columns, for a screen reader: the table says them by its looks."""
        across = orientation == Qt.Orientation.Horizontal
        return _COLUMNS[section] if across and role == Qt.ItemDataRole.DisplayRole else None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a cell, and how they are set."""
        line, column, roles = self.lines[index.row()], index.column(), Qt.ItemDataRole
        if role in (roles.DisplayRole, roles.ToolTipRole):
            words = (line.name, line.words, line.amount)[column]
            if role == roles.DisplayRole:
                return words
            return plain_tip(words) if len(words) > 30 else None
        if role == roles.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if column == 2 else Qt.AlignmentFlag.AlignLeft
            return side | (Qt.AlignmentFlag.AlignBottom if line.heading else Qt.AlignmentFlag.AlignVCenter)
        if role == roles.FontRole:
            return _font(line, column)
        if role == roles.ForegroundRole:
            return _colour(line, column)
        if role == roles.DecorationRole and column == 0 and line.missing:
            return mark_icon("attend")
        return None


def _font(line: Line, column: int) -> QFont:
    if line.total:
        return fonts().heading
    if line.heading:
        return fonts().strong
    font = QFont(fonts().small if column == 1 else fonts().body)
    font.setItalic(line.missing and column > 0)
    return font


def _colour(line: Line, column: int) -> object:
    if line.missing and column > 0:
        return look().attend
    return look().soft_ink if column == 1 else None


class Sheet(QTableView):
    """The table itself."""

    asked = Signal(object)
    """The :class:`Line` she wants to change."""

    def __init__(self, model: InsideModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._lines = model
        self.setModel(model)
        self.setAccessibleName("Inside sheet")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.horizontalHeader().hide()
        self.verticalHeader().setMinimumSectionSize(_ROW)
        self.setStyleSheet(_SHEET)
        self.clicked.connect(self.on_clicked)

    def show_heights(self) -> None:
        """Headings stand a little apart."""
        for number, line in enumerate(self._lines.lines):
            self.setRowHeight(number, _HEAD if line.heading or line.total else _ROW)

    def on_clicked(self, index: QModelIndex) -> None:
        """A line is picked."""
        self.asked.emit(self._lines.lines[index.row()])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter picks the field behind a line, the copy key copies all of it."""
        index = self.currentIndex()
        if event.matches(QKeySequence.StandardKey.Copy):
            QGuiApplication.clipboard().setText(inside_text(self._lines.lines))
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and index.isValid():
            self.asked.emit(self._lines.lines[index.row()])
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Coming here by the tab key begins at the first line; a click picks its own."""
        before = self.currentIndex()
        super().focusInEvent(event)
        if event.reason() not in (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason):
            self.setCurrentIndex(before)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share out the width."""
        super().resizeEvent(event)
        room = self.viewport().width()
        name = max(int(_NAME * room), _LEAST)
        self.setColumnWidth(0, name)
        self.setColumnWidth(1, max(room - name - _AMOUNT, 60))
        self.setColumnWidth(2, _AMOUNT)


class InsidePane(QWidget):
    """What it costs and what she asks, in large letters; below it how that comes about."""

    def __init__(self, desk: Desk, bench: QuoteBench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.headline = Headline(self)
        self.model = InsideModel(self)
        self.sheet = Sheet(self.model, self)
        self.nothing = QLabel(_NOTHING, self)
        self.copy = QPushButton("Copy as text", self)
        self.print = QPushButton("Print the inside sheet…", self)
        self._assemble()
        bench.worked_out.connect(self.show_reckoned)
        self.sheet.asked.connect(self.on_asked)
        self.copy.clicked.connect(self.on_copy)

    def _assemble(self) -> None:
        self.nothing.setWordWrap(True)
        self.nothing.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.nothing.setContentsMargins(3 * GRID, 4 * GRID, 3 * GRID, 0)
        inset = QHBoxLayout()
        inset.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        inset.addWidget(self.sheet)
        foot = QHBoxLayout()
        foot.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 2 * GRID)
        foot.setSpacing(2 * GRID)
        foot.addWidget(self.print)
        foot.addWidget(self.copy)
        foot.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.headline)
        column.addWidget(self.nothing, 1)
        column.addLayout(inset, 1)
        column.addLayout(foot)
        self.setMinimumWidth(90 * GRID)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.setAccessibleName("What it costs her")

    def show_reckoned(self, reckoned: Reckoned) -> None:
        """Show the sheet, or why there is none."""
        quote = reckoned.quote
        for widget in (self.sheet, self.copy, self.print):
            widget.setVisible(quote is not None)
        self.nothing.setVisible(quote is None)
        if quote is None:
            self.model.show_lines(())
            self.headline.show_words("No quote yet", "")
            return
        if not self.model.show_lines(inside_lines(quote, reckoned.picture.project)):
            self.sheet.show_heights()
        head, words = answer_words(quote)
        missing = len(quote.unpriced)
        if missing:
            words += f" {missing} line{'s have' if missing > 1 else ' has'} no price yet."
        self.headline.show_words(head, words, None if quote.complete else "attend")

    def on_asked(self, line: Line) -> None:
        """Light up the field behind a line."""
        if line.place is not None:
            self._desk.select(None)
            self._desk.select(line.place)

    def on_copy(self) -> None:
        """Put the sheet on the clipboard."""
        QGuiApplication.clipboard().setText(inside_text(self.model.lines))

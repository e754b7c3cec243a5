"""The entries on show as a table."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from workbench.book import Entry, Order
from workbench.ui.book.words import days_away, first_line, matters_words, second_line
from workbench.ui.plain import plain_tip

Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()
COLUMNS: tuple[tuple[Order, str], ...] = (
    ("client", "Client"),
    ("date", "Measured"),
    ("next_fitting", "Next fitting"),
    ("open", "What is open"),
)
"""What each column is sorted by and called."""


class BookModel(QAbstractTableModel):
    """One row a file."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.entries: Sequence[Entry] = ()
        self.today = date.today()

    def show_entries(self, entries: Sequence[Entry], today: date) -> None:
        """Show these, in this order."""
        self.beginResetModel()
        self.entries, self.today = entries, today
        self.endResetModel()

    def row_of(self, place: str) -> int:
        """The row of a file; -1 where it is not on show."""
        return next((row for row, entry in enumerate(self.entries) if entry.place == place), -1)

    def entry(self, index: Index) -> Entry | None:
        """The entry of a row."""
        return self.entries[index.row()] if 0 <= index.row() < len(self.entries) else None

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """How many files."""
        return 0 if parent.isValid() else len(self.entries)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Client, date, next fitting, what is open."""
        return 0 if parent.isValid() else len(COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """The names of the columns."""
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        return COLUMNS[section][1] if role == Qt.ItemDataRole.DisplayRole else None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a cell; how they are painted is the delegate's."""
        entry = self.entry(index)
        if entry is None:
            return None
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return _cell(entry, index.column(), self.today)
        if role == Qt.ItemDataRole.ToolTipRole and index.column() == 0:
            return plain_tip(entry.reason or entry.place)
        if role == Qt.ItemDataRole.ToolTipRole and index.column() == 3:
            return plain_tip(matters_words(entry)) or None
        return None


def _cell(entry: Entry, column: int, today: date) -> str:
    if column == 0:
        return f"{first_line(entry)}, {second_line(entry)}"
    if column == 1:
        return entry.date
    if column == 2:
        away = days_away(entry.next_fitting, today)
        return f"{entry.next_fitting}, {away}" if away else entry.next_fitting
    return matters_words(entry)

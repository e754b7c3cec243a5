"""The ledger as a table: the levels down, as they lie on the canvas, and the seams across.

A quarter is drafted and worn four times over, so the sums stand once for each quarter
and once round the body.
"""

from __future__ import annotations

from itertools import groupby
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from workbench.body import LEVEL_LABEL, LevelName, read_length, say_exact, say_length
from workbench.document import Picture, set_pin
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.ledger_cells import CLOSED_MM, Cell, Column, columns_of, figures_at

Index = QModelIndex | QPersistentModelIndex
GROUPS, LABELS, FIRST = 0, 1, 2
"""Rows of the headings, and the first row of a level."""


class LedgerModel(QAbstractTableModel):
    """Reads the picture; an edited cell is pinned through the desk."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._picture = desk.picture
        self.columns: tuple[Column, ...] = ()
        self.levels: tuple[LevelName, ...] = ()
        self.firsts: frozenset[int] = frozenset()
        """Columns at which a group begins."""
        self._cells: list[list[Cell]] = []
        self._written: tuple[object, ...] = ()

    def show_picture(self, picture: Picture) -> bool:
        """Show another picture; whether the columns or levels are others than before."""
        design, known = picture.project.design, picture.outcome is not None
        columns = columns_of(design) if known else ()
        levels = tuple(reversed(design.levels)) if known else ()
        if (columns, levels) != (self.columns, self.levels):
            self.beginResetModel()
            self._picture, self.columns, self.levels = picture, columns, levels
            self.firsts = frozenset(start for start, _ in self.spans())
            self._cells = self._fill([])
            self.endResetModel()
            return True
        self._picture = picture
        self._update()
        return False

    def _update(self) -> None:
        """Write the cells anew, and have those rows painted that have changed."""
        before, self._cells = self._cells, self._fill(self._cells)
        last = len(self.columns) - 1
        for row, (old, new) in enumerate(zip(before, self._cells, strict=True), FIRST):
            if old != new:
                self.dataChanged.emit(self.index(row, 0), self.index(row, last))
        if self._written and before and before[0][0] is not self._cells[0][0]:
            self.dataChanged.emit(self.index(0, 0), self.index(LABELS, last))

    def _fill(self, before: list[list[Cell]]) -> list[list[Cell]]:
        """The cells of every level; a cell whose figure has not changed is kept as it was written."""
        outcome, project = self._picture.outcome, self._picture.project
        if outcome is None:
            return []
        written = (project.unit, project.fraction)
        kept, self._written = (before if written == self._written else []), written
        filled = []
        for number, level in enumerate(self.levels):
            old = kept[number] if kept else [Cell(None, LEVEL_LABEL[level])]
            row = [old[0]]
            for place, (mm, pinned) in enumerate(figures_at(outcome, level, self.columns), 1):
                same = len(old) > 1 and (old[place].mm, old[place].pinned) == (mm, pinned)
                row.append(old[place] if same else self._cell(self.columns[place], mm, pinned))
            filled.append(row)
        return filled

    def _cell(self, column: Column, mm: float, pinned: bool) -> Cell:
        project = self._picture.project
        if column.kind != "gap":
            return Cell(mm, say_length(mm, project.unit, project.fraction), pinned)
        if abs(mm) <= CLOSED_MM:
            return Cell(mm, "yes")
        said = say_length(abs(mm), project.unit, project.fraction)
        said = said if said != "0" else say_exact(abs(mm), project.unit)
        return Cell(mm, f"{'short' if mm < 0 else 'over'} {said}")

    def spans(self) -> list[tuple[int, int]]:
        """First column and number of columns of each group."""
        found, start = [], 0
        for _, members in groupby(self.columns, key=lambda column: column.group):
            count = len(list(members))
            found.append((start, count))
            start += count
        return found

    # --- what Qt asks ----------------------------------------------------------------------

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008  as Qt declares it
        """Two rows of headings, and one for each level."""
        return FIRST + len(self.levels) if self.columns and not parent.isValid() else 0

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008  as Qt declares it
        """Columns of the table."""
        return 0 if parent.isValid() else len(self.columns)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Headings cannot be picked; only what a seam takes in can be edited."""
        if self.level(index) is None or index.column() == 0:
            return Qt.ItemFlag.ItemIsEnabled
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return flags | Qt.ItemFlag.ItemIsEditable if self.is_editable(index) else flags

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell says; how it looks is the painter's business."""
        if not index.isValid() or self._picture.outcome is None:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self.text(index)
        if role == Qt.ItemDataRole.EditRole:
            mm = self.amount(index)
            return self.text(index) if mm is None else say_exact(mm, self._picture.project.unit)
        return self._spoken(index) if role == Qt.ItemDataRole.AccessibleTextRole else None

    # --- cells -----------------------------------------------------------------------------

    def column(self, index: Index) -> Column:
        """The column of a cell."""
        return self.columns[index.column()]

    def level(self, index: Index) -> LevelName | None:
        """The level of a cell; None in the headings."""
        return self.levels[index.row() - FIRST] if index.row() >= FIRST else None

    def is_editable(self, index: Index) -> bool:
        """Whether the cell holds what a seam takes in."""
        return index.isValid() and self.level(index) is not None and self.column(index).kind == "seam"

    def cell(self, index: Index) -> Cell | None:
        """What a cell holds; None in the headings."""
        return self._cells[index.row() - FIRST][index.column()] if index.row() >= FIRST else None

    def amount(self, index: Index) -> float | None:
        """The figure in a cell, in mm."""
        cell = self.cell(index)
        return cell.mm if cell else None

    def text(self, index: Index) -> str:
        """A cell in words or figures."""
        cell = self.cell(index)
        if cell is not None:
            return cell.text
        column = self.column(index)
        unit = "inches" if self._picture.project.unit == "in" else "cm"
        return (column.group or f"In {unit}") if index.row() == GROUPS else column.label

    def is_open(self, index: Index) -> bool:
        """Whether it is a sum that does not close."""
        cell = self.cell(index)
        return cell is not None and cell.open and self.column(index).kind == "gap"

    def is_pinned(self, index: Index) -> bool:
        """Whether she fixed what stands there."""
        cell = self.cell(index)
        return cell is not None and cell.pinned

    def _spoken(self, index: Index) -> str:
        column, level = self.column(index), self.level(index)
        if level is None or index.column() == 0:
            return self.text(index)
        pinned = ", pinned" if self.is_pinned(index) else ""
        what = column.name or f"{column.label} {column.group.lower()}"
        return f"{LEVEL_LABEL[level]}, {what}: {self.text(index)}{pinned}"

    # --- what she does ---------------------------------------------------------------------

    def place(self, index: Index) -> Place | None:
        """What a cell is about; None for a heading."""
        if not index.isValid() or self.level(index) is None:
            return None
        return Place(level=self.level(index), seam=self.column(index).seam or None)

    def pin(self, index: Index, text: str) -> None:
        """Fix what stands in a cell, or with nothing typed let it go; ValueError where it cannot be read.

        Nothing can be taken in by less than nothing, here as on the canvas.
        """
        project = self._desk.project
        mm = read_length(text, project.unit).mm if text.strip() else None
        self._set_pin(index, mm)

    def unpin(self, index: Index) -> None:
        """Let go what was fixed in a cell."""
        if self.is_pinned(index):
            self._set_pin(index, None)

    def _set_pin(self, index: Index, mm: float | None) -> None:
        column, level = self.column(index), self.level(index)
        if column.quarter is None or level is None:
            return
        name = f"{'Unpin' if mm is None else 'Pin'} {column.name} at the {LEVEL_LABEL[level].lower()}"
        pin = None if mm is None else mm - self._fitted(column, level)
        self._desk.apply(name, set_pin(self._desk.project, column.quarter, column.seam, level, pin))

    def _fitted(self, column: Column, level: LevelName) -> float:
        """What of a cell was taken in at fittings: that stays on top of what is pinned."""
        outcome = self._picture.outcome
        if outcome is None or column.quarter is None:
            return 0.0
        takings = outcome.line(column.quarter, level).takings
        return next((taking.fitted for taking in takings if taking.seam == column.seam), 0.0)

    def as_text(self) -> str:
        """The whole table, its cells apart by tabs; a group is named over its first column."""
        lines = []
        for row in range(self.rowCount()):
            cells = [self.index(row, column) for column in range(len(self.columns))]
            lines.append([self._copied(cell) for cell in cells])
        return "\n".join("\t".join(line).rstrip("\t") for line in lines) + "\n"

    def _copied(self, index: Index) -> str:
        if index.row() == GROUPS and index.column() not in self.firsts:
            return ""
        return self.text(index) + (" (pinned)" if self.is_pinned(index) else "")

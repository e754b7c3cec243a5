"""The ledger as a table: the levels down, as they lie on the canvas, and the seams across.

A quarter is drafted and worn four times over, so the sums stand once for each quarter
and once round the body.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import Any, Literal

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from workbench.body import LEVEL_LABEL, LevelName, read_length, say_exact, say_length
from workbench.document import Picture, set_pin
from workbench.draft import Design, LedgerLine, Outcome, Place, QuarterName, Taking, seam_name
from workbench.ui.desk import Desk

Kind = Literal["name", "seam", "placed", "needed", "gap", "body", "reduction", "finished"]
Index = QModelIndex | QPersistentModelIndex
GROUPS, LABELS, FIRST = 0, 1, 2
"""Rows of the headings, and the first row of a level."""

_SUMS: tuple[Kind, ...] = ("placed", "needed", "gap")
_BODY: tuple[Kind, ...] = ("body", "reduction", "finished")
_LABELS: dict[Kind, str] = {
    "placed": "Placed",
    "needed": "Needed",
    "gap": "Closes?",
    "body": "Body",
    "reduction": "Reduction",
    "finished": "Finished",
}
_CLOSED_MM = 0.001


@dataclass(frozen=True)
class Column:
    """One column; ``quarter`` is None round the body."""

    kind: Kind
    label: str
    group: str = ""
    quarter: QuarterName | None = None
    seam: int = 0
    name: str = ""
    """Of the seam, in full."""


def columns_of(design: Design) -> tuple[Column, ...]:
    """The columns for a design: from the centre front to the centre back, then round the body."""
    side, count = design.front.panel_count, design.panel_count
    return (
        Column("name", "Level"),
        *_quarter_columns("front", range(1, side + 1), design),
        *_quarter_columns("back", range(side, count), design),
        *(Column(kind, _LABELS[kind], "Round the body") for kind in (*_SUMS, *_BODY)),
    )


def _quarter_columns(quarter: QuarterName, seams: range, design: Design) -> tuple[Column, ...]:
    group = f"{quarter.capitalize()}, a quarter"
    return (
        *(_seam_column(quarter, seam, group, design) for seam in seams),
        *(Column(kind, _LABELS[kind], group, quarter) for kind in _SUMS),
    )


def _seam_column(quarter: QuarterName, seam: int, group: str, design: Design) -> Column:
    name = seam_name(seam, design)
    if seam == design.front.panel_count:
        return Column("seam", "Side", group, quarter, seam, f"{name}, {quarter}")
    return Column("seam", name.removeprefix(f"{quarter} ").capitalize(), group, quarter, seam, name)


def taking_at(outcome: Outcome, column: Column, level: LevelName) -> Taking | None:
    """What the column's seam takes in at a level; None for a column that is no seam."""
    if column.kind != "seam" or column.quarter is None:
        return None
    takings = outcome.line(column.quarter, level).takings
    return next((taking for taking in takings if taking.seam == column.seam), None)


def amount_at(outcome: Outcome, column: Column, level: LevelName) -> float | None:
    """The figure in mm that stands in a column at a level; None in the column of names."""
    taking = taking_at(outcome, column, level)
    if taking is not None:
        return taking.total
    if column.kind in _BODY:
        return float(getattr(outcome.level(level), column.kind))
    if column.kind not in _SUMS:
        return None
    if column.quarter is not None:
        return _sum(outcome.line(column.quarter, level), column.kind)
    # Each quarter is there twice, left and right.
    return 2 * sum(_sum(outcome.line(quarter, level), column.kind) for quarter in ("front", "back"))


def _sum(line: LedgerLine, kind: Kind) -> float:
    return {"placed": line.placed, "needed": line.needed}.get(kind, line.gap)


class LedgerModel(QAbstractTableModel):
    """Reads the picture; an edited cell is pinned through the desk."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._picture = desk.picture
        self.columns: tuple[Column, ...] = ()
        self.levels: tuple[LevelName, ...] = ()

    def show_picture(self, picture: Picture) -> bool:
        """Show another picture; whether the columns or levels are others than before."""
        design, known = picture.project.design, picture.outcome is not None
        columns = columns_of(design) if known else ()
        levels = tuple(reversed(design.levels)) if known else ()
        if (columns, levels) != (self.columns, self.levels):
            self.beginResetModel()
            self._picture, self.columns, self.levels = picture, columns, levels
            self.endResetModel()
            return True
        self._picture = picture
        if columns:
            self.dataChanged.emit(self.index(0, 0), self.index(self.rowCount() - 1, len(columns) - 1))
        return False

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

    def amount(self, index: Index) -> float | None:
        """The figure in a cell, in mm."""
        outcome, level = self._picture.outcome, self.level(index)
        if outcome is None or level is None:
            return None
        return amount_at(outcome, self.column(index), level)

    def text(self, index: Index) -> str:
        """A cell in words or figures."""
        column, level, project = self.column(index), self.level(index), self._picture.project
        if level is None:
            unit = "inches" if project.unit == "in" else "cm"
            return (column.group or f"In {unit}") if index.row() == GROUPS else column.label
        mm = self.amount(index)
        if mm is None:
            return LEVEL_LABEL[level]
        if column.kind != "gap":
            return say_length(mm, project.unit, project.fraction)
        if abs(mm) <= _CLOSED_MM:
            return "yes"
        said = say_length(abs(mm), project.unit, project.fraction)
        return f"{'short' if mm < 0 else 'over'} {said if said != '0' else say_exact(abs(mm), project.unit)}"

    def is_open(self, index: Index) -> bool:
        """Whether it is a sum that does not close."""
        mm = self.amount(index)
        return mm is not None and self.column(index).kind == "gap" and abs(mm) > _CLOSED_MM

    def is_pinned(self, index: Index) -> bool:
        """Whether she fixed what stands there."""
        outcome, level = self._picture.outcome, self.level(index)
        if outcome is None or level is None:
            return False
        taking = taking_at(outcome, self.column(index), level)
        return taking is not None and taking.pinned

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
        """Fix what stands in a cell, or with nothing typed let it go; ValueError where it cannot be read."""
        project = self._desk.project
        mm = read_length(text, project.unit, signed=True).mm if text.strip() else None
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
        self._desk.apply(name, set_pin(self._desk.project, column.quarter, column.seam, level, mm))

    def as_text(self) -> str:
        """The whole table, its cells apart by tabs; a group is named over its first column."""
        heads = {start for start, _ in self.spans()}
        lines = []
        for row in range(self.rowCount()):
            cells = [self.index(row, column) for column in range(len(self.columns))]
            lines.append([self._copied(cell, heads) for cell in cells])
        return "\n".join("\t".join(line).rstrip("\t") for line in lines) + "\n"

    def _copied(self, index: Index, heads: set[int]) -> str:
        if index.row() == GROUPS and index.column() not in heads:
            return ""
        return self.text(index) + (" (pinned)" if self.is_pinned(index) else "")

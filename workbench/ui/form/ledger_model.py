"""The ledger as rows and columns: the seams down, the levels across, sums below.

A quarter is drafted and worn four times over, so the sums stand once for each quarter
and once round the body.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from workbench.body import LEVEL_LABEL, LevelName, read_length, say_exact, say_length
from workbench.document import Picture, set_pin
from workbench.draft import Design, LedgerLine, Outcome, Place, QuarterName, Taking, seam_name
from workbench.ui.desk import Desk
from workbench.ui.look import fonts, look

RowKind = Literal["group", "seam", "placed", "needed", "gap", "body", "reduction", "finished"]
Index = QModelIndex | QPersistentModelIndex
PINNED_ROLE = Qt.ItemDataRole.UserRole
EXACT_ROLE = Qt.ItemDataRole.UserRole + 1

_SUMS: tuple[RowKind, ...] = ("placed", "needed", "gap")
_LABELS: dict[RowKind, str] = {
    "placed": "Placed",
    "needed": "Needed",
    "gap": "Short or over",
    "body": "Body girth",
    "reduction": "Reduction",
    "finished": "Finished girth",
}
_CLOSED_MM = 0.001


@dataclass(frozen=True)
class LedgerRow:
    """One row; ``quarter`` is None round the body."""

    kind: RowKind
    label: str
    quarter: QuarterName | None = None
    seam: int = 0


def rows_of(design: Design) -> tuple[LedgerRow, ...]:
    """The rows for a design, from the centre front to the centre back, then round the body."""
    side, count = design.front.panel_count, design.panel_count
    return (
        *_quarter_rows("front", range(1, side + 1), design),
        *_quarter_rows("back", range(side, count), design),
        LedgerRow("group", "Round the body"),
        *(LedgerRow(kind, _LABELS[kind]) for kind in _SUMS),
        LedgerRow("body", _LABELS["body"]),
        LedgerRow("reduction", _LABELS["reduction"]),
        LedgerRow("finished", _LABELS["finished"]),
    )


def _quarter_rows(quarter: QuarterName, seams: range, design: Design) -> tuple[LedgerRow, ...]:
    return (
        LedgerRow("group", f"{quarter.capitalize()}, a quarter", quarter),
        *(LedgerRow("seam", seam_name(seam, design).capitalize(), quarter, seam) for seam in seams),
        *(LedgerRow(kind, _LABELS[kind], quarter) for kind in _SUMS),
    )


def taking_at(outcome: Outcome, row: LedgerRow, level: LevelName) -> Taking | None:
    """What the row's seam takes in at a level; None for a row that is no seam."""
    if row.kind != "seam" or row.quarter is None:
        return None
    takings = outcome.line(row.quarter, level).takings
    return next((taking for taking in takings if taking.seam == row.seam), None)


def amount_at(outcome: Outcome, row: LedgerRow, level: LevelName) -> float | None:
    """The figure in mm that stands in a row at a level; None in a group's heading."""
    taking = taking_at(outcome, row, level)
    if taking is not None:
        return taking.total
    if row.kind in ("body", "reduction", "finished"):
        return float(getattr(outcome.level(level), row.kind))
    if row.kind == "group":
        return None
    if row.quarter is not None:
        return _sum(outcome.line(row.quarter, level), row.kind)
    # Each quarter is there twice, left and right.
    return 2 * sum(_sum(outcome.line(quarter, level), row.kind) for quarter in ("front", "back"))


def _sum(line: LedgerLine, kind: RowKind) -> float:
    return {"placed": line.placed, "needed": line.needed}.get(kind, line.gap)


class LedgerModel(QAbstractTableModel):
    """Reads the picture; an edited cell is pinned through the desk."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._picture = desk.picture
        self.rows: tuple[LedgerRow, ...] = ()
        self.levels: tuple[LevelName, ...] = ()
        self._place: Place | None = None

    def show_picture(self, picture: Picture) -> bool:
        """Show another picture; whether the rows or levels are others than before."""
        design, outcome = picture.project.design, picture.outcome
        rows = rows_of(design) if outcome else ()
        levels = tuple(reversed(design.levels)) if outcome else ()
        if (rows, levels) != (self.rows, self.levels):
            self.beginResetModel()
            self._picture, self.rows, self.levels = picture, rows, levels
            self.endResetModel()
            return True
        self._picture = picture
        self._all_changed()
        return False

    def show_selected(self, place: Place | None) -> None:
        """Tint the row and the column of a place."""
        self._place = place
        self._all_changed()

    def _all_changed(self) -> None:
        if self.rows:
            last = self.index(len(self.rows) - 1, len(self.levels))
            self.dataChanged.emit(self.index(0, 0), last)

    # --- what Qt asks ----------------------------------------------------------------------

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008  as Qt declares it
        """Rows of the table."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008  as Qt declares it
        """The names, and the levels."""
        return 0 if parent.isValid() else 1 + len(self.levels)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = 0) -> Any:
        """Names of the levels."""
        if orientation != Qt.Orientation.Horizontal or role != Qt.ItemDataRole.DisplayRole:
            return None
        if section == 0:
            return f"Intake, {self._picture.project.unit}"
        return LEVEL_LABEL[self.levels[section - 1]]

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Only what a seam takes in can be edited."""
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return flags | Qt.ItemFlag.ItemIsEditable if self.is_editable(index) else flags

    def is_editable(self, index: Index) -> bool:
        """Whether the cell holds what a seam takes in."""
        return index.isValid() and index.column() > 0 and self.rows[index.row()].kind == "seam"

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell shows, and how."""
        if not index.isValid() or self._picture.outcome is None:
            return None
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return self.text(index)
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column():
            return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if role == Qt.ItemDataRole.FontRole:
            return (
                fonts().strong if row.kind in ("group", "placed") or self.is_pinned(index) else fonts().body
            )
        if role == Qt.ItemDataRole.ForegroundRole:
            return look().attend if self.is_open(index) else look().ink
        if role == Qt.ItemDataRole.BackgroundRole:
            return self._background(index, row)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return self._spoken(index, row)
        if role == PINNED_ROLE:
            return self.is_pinned(index)
        return self._exact(index) if role in (EXACT_ROLE, Qt.ItemDataRole.EditRole) else None

    def _background(self, index: Index, row: LedgerRow) -> Any:
        if row.kind == "group":
            return look().ground
        place, level = self._place, self._level(index)
        lit = place is not None and (
            (level is not None and place.level == level) or (row.kind == "seam" and place.seam == row.seam)
        )
        return look().selected_fill if lit else look().field

    def _level(self, index: Index) -> LevelName | None:
        return self.levels[index.column() - 1] if index.column() else None

    def _amount(self, index: Index) -> float | None:
        outcome, level = self._picture.outcome, self._level(index)
        if outcome is None or level is None:
            return None
        return amount_at(outcome, self.rows[index.row()], level)

    def text(self, index: Index) -> str:
        """A cell in words or figures."""
        row, project = self.rows[index.row()], self._picture.project
        if index.column() == 0:
            return row.label
        mm = self._amount(index)
        if mm is None:
            return ""
        if row.kind != "gap":
            return say_length(mm, project.unit, project.fraction)
        if abs(mm) <= _CLOSED_MM:
            return "closes"
        said = say_length(abs(mm), project.unit, project.fraction)
        return f"{'short' if mm < 0 else 'over'} {said if said != '0' else say_exact(abs(mm), project.unit)}"

    def is_open(self, index: Index) -> bool:
        """Whether it is a sum that does not close."""
        mm = self._amount(index)
        return self.rows[index.row()].kind == "gap" and mm is not None and abs(mm) > _CLOSED_MM

    def is_pinned(self, index: Index) -> bool:
        """Whether she fixed what stands there."""
        outcome, level = self._picture.outcome, self._level(index)
        if outcome is None or level is None:
            return False
        taking = taking_at(outcome, self.rows[index.row()], level)
        return taking is not None and taking.pinned

    def _exact(self, index: Index) -> str:
        mm = self._amount(index)
        return "" if mm is None else say_exact(mm, self._picture.project.unit)

    def _spoken(self, index: Index, row: LedgerRow) -> str:
        level = self._level(index)
        if level is None:
            return row.label
        pinned = ", pinned" if self.is_pinned(index) else ""
        return f"{row.label}, {LEVEL_LABEL[level].lower()}: {self.text(index)}{pinned}"

    # --- what she does ---------------------------------------------------------------------

    def place(self, index: Index) -> Place | None:
        """What a cell is about; None for a heading."""
        if not index.isValid() or self.rows[index.row()].kind == "group":
            return None
        return Place(level=self._level(index), seam=self.rows[index.row()].seam or None)

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
        row, level = self.rows[index.row()], self._level(index)
        if row.quarter is None or level is None:
            return
        name = f"{'Unpin' if mm is None else 'Pin'} {row.label.lower()} at the {LEVEL_LABEL[level].lower()}"
        self._desk.apply(name, set_pin(self._desk.project, row.quarter, row.seam, level, mm))

    def as_text(self) -> str:
        """The whole table, its cells apart by tabs."""
        columns = range(self.columnCount())
        lines = [[str(self.headerData(column, Qt.Orientation.Horizontal)) for column in columns]]
        for number in range(len(self.rows)):
            cells = [self.index(number, column) for column in columns]
            lines.append([self.text(cell) + (" (pinned)" if self.is_pinned(cell) else "") for cell in cells])
        return "\n".join("\t".join(line).rstrip("\t") for line in lines) + "\n"

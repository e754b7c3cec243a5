"""Two days with the tape as lines of a table: what each says, and what has become of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from workbench.body import BY_KEY, say_closely, say_length, shown
from workbench.document import MeasureChange, Project, Taken, measure_changes
from workbench.ui.look import fonts, look
from workbench.ui.marks import mark_icon

Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()
_HEIGHTS = "Heights above the waist, as the tape walks"
_NOT_TAKEN = "not taken"
_SAME = "same"
_HAIR = 1e-6


@dataclass(frozen=True)
class DaysLine:
    """One line: a measurement, or with nothing but a name a heading."""

    name: str
    then: str = ""
    now: str = ""
    difference: str = ""
    notable: bool = False

    @property
    def heading(self) -> bool:
        """Whether it stands over others."""
        return not self.then


def days_lines(then: Taken, now: Taken, project: Project) -> tuple[DaysLine, ...]:
    """The comparison in the unit on show, under the headings of the form."""
    return tuple(_lines(then, now, project))


def _lines(then: Taken, now: Taken, project: Project) -> Iterator[DaysLine]:
    group = ""
    for change in measure_changes(then, now):
        own = BY_KEY[change.key].group if change.part == "measurement" else _HEIGHTS
        if own != group:
            group = own
            yield DaysLine(group)
        yield DaysLine(
            change.label,
            _figure(change, then, change.then, project),
            _figure(change, now, change.now, project),
            difference_words(change, project),
            change.notable,
        )


def _figure(change: MeasureChange, taken: Taken, mm: float | None, project: Project) -> str:
    """As it was typed where it was typed, in the unit on show."""
    length = taken.measurements.get(change.key)
    if length is not None:
        return shown(length, project.unit, project.fraction)
    return _NOT_TAKEN if mm is None else say_length(mm, project.unit, project.fraction)


def difference_words(change: MeasureChange, project: Project) -> str:
    """How much more or less it is now, with its sign; nothing where one of the two is not there."""
    mm = change.difference
    if mm is None:
        return ""
    if abs(mm) <= _HAIR:
        return _SAME
    said = say_closely(mm, project.unit, project.fraction)
    if said == f"0 {project.unit}":
        return f"under {'1 mm' if project.unit == 'cm' else f'1⁄{project.fraction} in'}"
    return said if mm < 0 else f"+{said}"


def days_text(lines: tuple[DaysLine, ...], then: str, now: str) -> str:
    """The table as text, apart by tabs."""
    rows = [("", then, now, "difference")]
    rows += [(line.name, line.then, line.now, line.difference) for line in lines]
    return "\n".join("\t".join(row).rstrip() for row in rows)


class DaysModel(QAbstractTableModel):
    """The lines on show."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.lines: tuple[DaysLine, ...] = ()
        self._heads = ("", "", "", "")

    def show_lines(self, lines: tuple[DaysLine, ...], then: str, now: str) -> None:
        """Show these under the names of the two days."""
        self.beginResetModel()
        self.lines, self._heads = lines, ("Measurement", then, now, "Difference")
        self.endResetModel()

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """How many lines."""
        return 0 if parent.isValid() else len(self.lines)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Name, then, now, difference."""
        return 0 if parent.isValid() else len(self._heads)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """The names of the columns."""
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side(section)
        return self._heads[section] if role == Qt.ItemDataRole.DisplayRole else None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a cell, and how they are set."""
        line, column, roles = self.lines[index.row()], index.column(), Qt.ItemDataRole
        if role == roles.DisplayRole:
            return (line.name, line.then, line.now, line.difference)[column]
        if role == roles.AccessibleTextRole and column == 3 and line.notable:
            return f"{line.difference}, notable"
        if role == roles.TextAlignmentRole:
            return _side(column)
        if role == roles.FontRole:
            return fonts().strong if line.heading or (line.notable and column == 3) else fonts().body
        if role == roles.ForegroundRole:
            faint = line.then == _NOT_TAKEN if column == 1 else line.now == _NOT_TAKEN and column == 2
            faint = faint or (column == 3 and not line.notable)
            return look().soft_ink if faint else look().ink
        if role == roles.DecorationRole and column == 3 and line.notable:
            return mark_icon("attend")
        return None


def _side(column: int) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if column in (1, 2) else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter

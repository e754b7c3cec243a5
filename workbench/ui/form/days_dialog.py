"""Measurements of two days side by side: what has become of each, and which the draft is made from."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from workbench.document import MeasureChange, Project, Taken, measure_changes, remove_taken, take_back
from workbench.ui.desk import Desk
from workbench.ui.findings import FindingRow
from workbench.ui.form.day_column import NOW, DayColumn, day_names
from workbench.ui.form.days_model import DaysModel, days_lines, days_text, difference_words
from workbench.ui.look import GRID, fonts
from workbench.ui.marks import Mark
from workbench.ui.room import open_at

_ROW = 6 * GRID
_FIGURE, _DIFFERENCE = 34 * GRID, 34 * GRID
_MOST_NAMED = 4


class DaysTable(QTableView):
    """The comparison."""

    def __init__(self, model: DaysModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setAccessibleName("Two days compared")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setFont(fonts().body)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(_ROW)
        self.horizontalHeader().setHighlightSections(False)
        self.horizontalHeader().setFont(fonts().strong)
        self.setStyleSheet(
            "QTableView { background: palette(base); }"
            "QTableView::item { padding: 0 12px; border: none; }"
            "QTableView::item:selected { background: palette(highlight); color: palette(highlighted-text); }"
            "QHeaderView::section { background: palette(window); border: none; padding: 4px 12px; }"
        )

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The names take what the figures leave."""
        super().resizeEvent(event)
        self.share_width()

    def share_width(self) -> None:
        """Give the columns the room there is."""
        room = self.viewport().width()
        for column, width in enumerate(
            (max(room - 2 * _FIGURE - _DIFFERENCE, 40 * GRID), _FIGURE, _FIGURE, _DIFFERENCE)
        ):
            self.setColumnWidth(column, width)


class DaysDialog(QDialog):
    """Two days over one table; every change is a step on the desk, to be undone like any other."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle("Measurements by date")
        self.then, self.now = DayColumn(desk, "Earlier day", self), DayColumn(desk, "Later day", self)
        self.model = DaysModel(self)
        self.table = DaysTable(self.model, self)
        self.said = FindingRow(self, clickable=False)
        self.back, self.remove = QPushButton("Draft from the day at the left"), QPushButton("Remove that day")
        self.copy, self.shut = QPushButton("Copy as text"), QPushButton("Close")
        self._arrange()
        self._connect()
        open_at(self, 180 * GRID, 160 * GRID)
        self.show_project(0, NOW)

    def _arrange(self) -> None:
        days = QHBoxLayout()
        days.setSpacing(6 * GRID)
        for day in (self.then, self.now):
            days.addWidget(day, 1)
        buttons = QHBoxLayout()
        buttons.setSpacing(2 * GRID)
        for button in (self.back, self.remove, self.copy):
            buttons.addWidget(button)
        buttons.addStretch(1)
        buttons.addWidget(self.shut)
        column = QVBoxLayout(self)
        column.setContentsMargins(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        column.setSpacing(3 * GRID)
        column.addLayout(days)
        column.addWidget(self.table, 1)
        column.addWidget(self.said)
        column.addLayout(buttons)
        self.shut.setDefault(True)

    def _connect(self) -> None:
        self._desk.drafted.connect(self.on_drafted)
        for day in (self.then, self.now):
            day.picked.connect(self.on_picked)
            day.refused.connect(self.on_refused)
        self.back.clicked.connect(self.on_back)
        self.remove.clicked.connect(self.on_remove)
        self.copy.clicked.connect(self.on_copy)
        self.shut.clicked.connect(self.reject)

    # --- what is shown ---------------------------------------------------------------------

    def show_project(self, then: int, now: int) -> None:
        """Show the project as it stands, with these days picked."""
        project = self._desk.project
        self.then.show_days(project, then)
        self.now.show_days(project, now)
        self._compare()

    def _compare(self) -> None:
        project = self._desk.project
        old, new = self.then.taken(project), self.now.taken(project)
        names = day_names(project)
        heads = [f"{names[day.number - NOW].split(',')[0]}, {project.unit}" for day in (self.then, self.now)]
        self.model.show_lines(days_lines(old, new, project), *heads)
        self.table.share_width()
        for row, line in enumerate(self.model.lines):
            if line.heading:
                self.table.setSpan(row, 0, 1, 4)
        self.said.show_sentence(*compared_words(old, new, project))
        earlier = self.then.number != NOW
        self.back.setEnabled(earlier)
        self.remove.setEnabled(earlier)

    def on_drafted(self) -> None:
        """The project is another."""
        self.show_project(self.then.number, self.now.number)

    def on_refused(self, sentence: str) -> None:
        """Say why what was written cannot be kept."""
        if sentence:
            self.said.show_sentence("attend", "Not kept", sentence)
        else:
            self._compare()

    # --- what she does ---------------------------------------------------------------------

    def on_picked(self) -> None:
        """Another day."""
        for day in (self.then, self.now):
            day.show_written(self._desk.project)
        self._compare()

    def on_back(self) -> None:
        """Draft from the day at the left; the one drafted from until now takes its place."""
        self._desk.apply("Measurements of another day", take_back(self._desk.project, self.then.number))

    def on_remove(self) -> None:
        """Remove the day at the left, and close when it was the last."""
        self._desk.apply("Day of measuring removed", remove_taken(self._desk.project, self.then.number))
        if not self._desk.project.earlier:
            self.accept()

    def on_copy(self) -> None:
        """Put the table on the clipboard."""
        heads = (str(self.model.headerData(column, Qt.Orientation.Horizontal)) for column in (1, 2))
        QGuiApplication.clipboard().setText(days_text(self.model.lines, *heads))


def compared_words(then: Taken, now: Taken, project: Project) -> tuple[Mark, str, str]:
    """What the comparison comes to in one sentence, the notable first."""
    notable = [change for change in measure_changes(then, now) if change.notable]
    if not notable:
        words = "No measurement differs by more than two measurings of one body may."
        return "within", "In order", f"{words}{_worn(then, now)}"
    named = [f"{_name(change)} {difference_words(change, project)}" for change in notable]
    more = len(named) - _MOST_NAMED
    listed = ", ".join(named[:_MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
    which = "One differs" if len(notable) == 1 else f"{len(notable)} differ"
    return "attend", f"{which} notably", f"{listed}.{_worn(then, now)}"


def _worn(then: Taken, now: Taken) -> str:
    """What is worn under the tape is in the figures."""
    if then.worn.strip().casefold() == now.worn.strip().casefold():
        return ""
    return f" The garment worn is another: {_quoted(then.worn)} then, {_quoted(now.worn)} later."


def _quoted(worn: str) -> str:
    return f"“{worn}”" if worn else "none noted"


def _name(change: MeasureChange) -> str:
    """A girth by its level; a height as one, since the level has a girth too."""
    return f"height of the {change.label.lower()}" if change.part == "walk" else change.label.lower()

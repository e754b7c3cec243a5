"""One of two days on show: which it is, and what is written down about it."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QLabel, QWidget

from workbench.document import Project, Taken, set_client, set_taken, taken_now
from workbench.ui.desk import Desk
from workbench.ui.form.entry import Entry
from workbench.ui.look import GRID, fonts

NOW = -1
"""Stands for the day that the bodice is drafted from; earlier ones go by their number."""
_TEXTS = (("date", "Measured on"), ("measured_by", "Measured by"), ("worn", "Garment worn"))


class DayColumn(QWidget):
    """A choice of days over three fields that can be written in."""

    picked = Signal()
    """Another day is wanted."""
    refused = Signal(str)
    """One sentence; or nothing, when what was written could be read."""

    def __init__(self, desk: Desk, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.choice = QComboBox(self)
        self.choice.setAccessibleName(name)
        self.entries = {key: Entry(f"{name}: {label}", self) for key, label in _TEXTS}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID)
        grid.addWidget(self.choice, 0, 0, 1, 2)
        for row, (key, label) in enumerate(_TEXTS, start=1):
            title = QLabel(label, self)
            title.setFont(fonts().small)
            title.setBuddy(self.entries[key])
            grid.addWidget(title, row, 0)
            grid.addWidget(self.entries[key], row, 1)
            self.entries[key].setFixedWidth(40 * GRID)
            self.entries[key].entered.connect(self.on_entered)
        self.entries["date"].setPlaceholderText("year-month-day")
        grid.setColumnStretch(0, 1)
        self.choice.activated.connect(self.picked)

    @property
    def number(self) -> int:
        """Which day is picked: ``NOW``, or its number among the earlier ones."""
        number = self.choice.currentData()
        return number if isinstance(number, int) else NOW

    def taken(self, project: Project) -> Taken:
        """What was taken on the day that is picked."""
        return taken_now(project) if self.number == NOW else project.earlier[self.number]

    def show_days(self, project: Project, picked: int) -> None:
        """Offer the days of a project, with one of them picked, and show what is written about it."""
        with QSignalBlocker(self.choice):
            self.choice.clear()
            for number, words in enumerate(day_names(project), start=NOW):
                self.choice.addItem(words, number)
            self.choice.setCurrentIndex(min(picked, len(project.earlier) - 1) - NOW)
        self.show_written(project)

    def show_written(self, project: Project) -> None:
        """Show what is written about the day that is picked."""
        taken = self.taken(project)
        for key, entry in self.entries.items():
            text: str = getattr(taken, key)
            entry.show_value((self.number, text), text)

    def on_entered(self, text: str) -> None:
        """Keep what was written, or say why it cannot be."""
        key = next(key for key, entry in self.entries.items() if entry is self.sender())
        entry, project = self.entries[key], self._desk.project
        try:
            if self.number == NOW:
                changed = set_client(project, **{key: text.strip()})
            else:
                changed = set_taken(project, self.number, **{key: text.strip()})
        except ValueError as error:
            entry.show_trouble(True)
            self.refused.emit(str(error))
            return
        entry.show_trouble(False)
        entry.forget()
        self.refused.emit("")
        self._desk.apply("Measured on, by, over what", changed)


def day_names(project: Project) -> Sequence[str]:
    """What the days are called: that of the draft first, then the earlier ones."""
    first = _day(taken_now(project).date)
    return [f"{first}, drafted from", *(_day(taken.date) for taken in project.earlier)]


def _day(date: str) -> str:
    return date or "A day not written down"

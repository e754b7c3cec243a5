"""Who it is for, and what she wants to do in it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QCheckBox, QPlainTextEdit, QWidget

from workbench.document import Picture, Project, set_client
from workbench.ui.desk import Desk
from workbench.ui.form.field import FigureRow
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.section import Section
from workbench.ui.look import GRID, fonts

TextName = Literal["name", "wish", "date", "measured_by", "notes"]
_TEXT_WIDTH = 44 * GRID


@dataclass(frozen=True)
class Written:
    """A line of text about the client, as a figure that is typed and never stepped."""

    attribute: TextName
    label: str

    @property
    def name(self) -> str:
        """As findings and files name it."""
        return f"client.{self.attribute}"

    @property
    def step_name(self) -> str:
        """What undo calls it."""
        return self.label

    def stamp(self, project: Project) -> object:
        """The text."""
        return self.text(project)

    def text(self, project: Project) -> str:
        """The text as it is stored."""
        text: str = getattr(project.client, self.attribute)
        return text

    def suffix(self, project: Project) -> str:
        """None."""
        return ""

    def typed(self, project: Project, text: str) -> Project:
        """The project with another text, without the blanks at either end."""
        return set_client(project, **{self.attribute: text.strip()})

    def moved(self, project: Project, steps: int) -> Project:
        """A text has no next one."""
        return project


_LINES = (Written("name", "Client"), Written("date", "Date"), Written("measured_by", "Measured by"))


class Prose(QPlainTextEdit):
    """A few lines of text, handed in when she leaves them."""

    def __init__(self, desk: Desk, written: Written, row: ProseRow) -> None:
        super().__init__(row)
        self._desk, self._written, self._row = desk, written, row
        self._kept = ""
        self.setAccessibleName(written.label)
        self.setTabChangesFocus(True)
        self.setFont(fonts().body)
        self.setFixedHeight(16 * GRID)

    def show_text(self, text: str) -> None:
        """Show what is stored; what is being written stays while that is the same."""
        if text != self._kept:
            self._kept = text
            self._put(text)

    def forget(self) -> None:
        """Hold on to nothing that was written."""
        self._put(self._kept)

    def commit(self) -> None:
        """Hand in what was written."""
        text = self.toPlainText()
        if text == self._kept:
            return
        try:
            project = self._written.typed(self._desk.project, text)
        except ValueError as error:
            self._row.say(str(error), "attend")
            self._desk.refuse(self._written.name, str(error))
            return
        self._row.say("")
        self._kept = self._written.text(project)
        self._desk.apply(self._written.step_name, project)

    def _put(self, text: str) -> None:
        with QSignalBlocker(self):
            self.setPlainText(text)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape brings back what was there; the rest is writing."""
        if event.key() == Qt.Key.Key_Escape:
            self._put(self._kept)
            self._row.say("")
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving hands in; a menu over the text is not leaving it."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.commit()


class ProseRow(Row):
    """A label over a few lines of text."""

    def __init__(self, desk: Desk, written: Written) -> None:
        super().__init__(written.name, written.label)
        self.written = written
        self.prose = Prose(desk, written, self)
        self.label.setBuddy(self.prose)
        self.column.addWidget(self.prose)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored."""
        self.prose.show_text(self.written.text(picture.project))

    def forget(self) -> None:
        """Hold on to nothing that was written."""
        self.prose.forget()
        self.say("")

    def target(self) -> QWidget | None:
        """The text."""
        return self.prose


class InventedRow(Row):
    """Whether name and figures are made up."""

    def __init__(self, desk: Desk) -> None:
        super().__init__("client.invented", "")
        self._desk = desk
        self.box = QCheckBox("Name and figures are invented", self)
        self.box.setFont(fonts().body)
        self.words = "invented demo"
        self.line.insertWidget(0, self.box)
        self.box.clicked.connect(self.on_clicked)

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored."""
        with QSignalBlocker(self.box):
            self.box.setChecked(picture.project.client.invented)

    def on_clicked(self, checked: bool) -> None:
        """Store it."""
        self._desk.apply("Invented or not", set_client(self._desk.project, invented=checked))

    def target(self) -> QWidget | None:
        """The box."""
        return self.box


class Who(Section):
    """The first section."""

    title = "Who"

    def fill(self) -> None:
        """Name, day, wish, notes."""
        for written in _LINES:
            row = self.add(FigureRow(self.desk, written, width=_TEXT_WIDTH))
            if written.attribute == "date":
                row.field.setPlaceholderText("year-month-day")
        self.add(ProseRow(self.desk, Written("wish", "What she wants to do in it")))
        self.add(ProseRow(self.desk, Written("notes", "Notes")))
        self.add(InventedRow(self.desk))

    def summary(self, picture: Picture) -> str:
        """The name."""
        client = picture.project.client
        said = "invented" in client.name.lower() or not client.name or not client.invented
        return client.name if said else f"{client.name} (invented)"

    def has(self, field: str) -> bool:
        """Particulars of the client."""
        return field.startswith("client.")

"""Who it is for, and what she wants to do in it."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QWidget

from workbench.document import Picture, Project, set_client
from workbench.ui.desk import Desk
from workbench.ui.form.earlier import DaysRow
from workbench.ui.form.field import FigureRow
from workbench.ui.form.prose import ProseRow, Written
from workbench.ui.form.row import Row
from workbench.ui.form.section import Section
from workbench.ui.look import GRID, fonts
from workbench.ui.tick import Tick

TextName = Literal["name", "wish", "date", "measured_by", "worn", "next_fitting", "notes"]
_TEXT_WIDTH = 44 * GRID


def client_text(attribute: TextName, label: str) -> Written:
    """A line of text about the client."""

    def get(project: Project) -> str:
        text: str = getattr(project.client, attribute)
        return text

    def put(project: Project, text: str) -> Project:
        return set_client(project, **{attribute: text})

    return Written(f"client.{attribute}", label, label, get, put)


_LINES = (
    client_text("name", "Client"),
    client_text("next_fitting", "Next fitting"),
    client_text("date", "Measured on"),
    client_text("measured_by", "Measured by"),
    client_text("worn", "Garment worn"),
)
_DATES = ("client.date", "client.next_fitting")


class InventedRow(Row):
    """Whether name and figures are made up."""

    def __init__(self, desk: Desk) -> None:
        super().__init__("client.invented", "")
        self._desk = desk
        self.box = Tick("Name and figures are invented", self)
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
        """Name, days, wish, notes."""
        for written in _LINES:
            row = self.add(FigureRow(self.desk, written, width=_TEXT_WIDTH))
            if written.name in _DATES:
                row.field.setPlaceholderText("year-month-day")
        self.add(DaysRow(self.desk))
        self.add(ProseRow(self.desk, client_text("wish", "What she wants to do in it")))
        self.add(ProseRow(self.desk, client_text("notes", "Notes")))
        self.add(InventedRow(self.desk))

    def summary(self, picture: Picture) -> str:
        """The name."""
        client = picture.project.client
        said = "invented" in client.name.lower() or not client.name or not client.invented
        return client.name if said else f"{client.name} (invented)"

    def has(self, field: str) -> bool:
        """Particulars of the client, and the days she was measured on."""
        return field.startswith("client.") or field == "earlier"

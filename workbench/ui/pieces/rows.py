"""Rows that the sections of the making share: a box to tick, one of a few, a figure with a remark."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QWidget

from workbench.document import Picture, Project
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Figure
from workbench.ui.form.row import EDGE, Row, found_about
from workbench.ui.look import GRID, fonts
from workbench.ui.marks import Mark
from workbench.ui.pieces.figures import Held, Left
from workbench.ui.tick import Tick

FIELD = 25 * GRID
Remark = Callable[[Picture], str]
Get = Callable[[Project], bool]
Put = Callable[[Project, bool], Project]


class CheckRow(Row):
    """A box to tick, with what it means beside it."""

    def __init__(self, desk: Desk, name: str, text: str, step_name: str, get: Get, put: Put) -> None:
        super().__init__(name, "")
        self.desk, self._step_name, self._get, self._put = desk, step_name, get, put
        self.box = Tick(text, self)
        self.box.setFont(fonts().body)
        self.words = text.lower()
        self.line.insertWidget(0, self.box)
        self.box.clicked.connect(self.on_clicked)

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored."""
        with QSignalBlocker(self.box):
            self.box.setChecked(self._get(picture.project))

    def on_clicked(self, checked: bool) -> None:
        """Store it, or say why it cannot be."""
        try:
            project = self._put(self.desk.project, checked)
        except ValueError as error:
            self.desk.refuse(self.name, str(error))
            self.show_picture(self.desk.picture)
            return
        self.desk.apply(self._step_name, project)

    def target(self) -> QWidget | None:
        """The box."""
        return self.box


class ChoiceRow(Row):
    """One of a few, the buttons under the label."""

    def __init__(self, desk: Desk, held: Held, label: str, options: Sequence[tuple[object, str]]) -> None:
        super().__init__(held.name, label)
        self.desk, self.held = desk, held
        self.words = " ".join((label, *(text for _, text in options))).lower()
        self.choice = Choice(label, options, self)
        self.column.addWidget(self.choice)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)
        self.choice.chosen.connect(self.on_chosen)

    def show_picture(self, picture: Picture) -> None:
        """Show which it is."""
        self.choice.show_value(self.held.get(picture.project))

    def on_chosen(self, value: object) -> None:
        """Store it."""
        self.desk.apply(self.label.text(), self.held.put(self.desk.project, value))

    def target(self) -> QWidget | None:
        """The button that is in."""
        return self.choice.button(self.choice.value) if self.choice.value is not None else None


class MakingRow(FigureRow):
    """One figure of the making under a short label, with what is to be known about it."""

    def __init__(self, desk: Desk, figure: Figure, label: str, remark: Remark | None = None) -> None:
        super().__init__(desk, figure, label=label, width=FIELD)
        self.words = f"{label} {figure.label}".lower()
        self._remark = remark

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """A finding about it first, then what is always true of it."""
        found = found_about(self.name, picture)
        if found[0] or self._remark is None:
            return found
        return self._remark(picture), None


class LeftRow(FigureRow):
    """A figure that may be left to the program; what is taken then stands in the field as an estimate."""

    def __init__(self, desk: Desk, figure: Left, label: str, remark: str = "") -> None:
        super().__init__(desk, figure, label=label, width=FIELD)
        self.left, self._remark = figure, remark
        self.words = f"{label} {figure.label}".lower()

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored, or what is taken instead."""
        self.field.show_project(picture, self.left.estimate(picture.project))
        if not self.trouble:
            self.say(*self.remark(picture))

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """What an empty field means."""
        return self._remark, None

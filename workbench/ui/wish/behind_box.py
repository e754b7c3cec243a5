"""How a picture lies behind the panels: whether, how strongly, how large, and where."""

from __future__ import annotations

from math import exp, log

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from workbench.body import LengthError, read_length, say_with_unit
from workbench.document import (
    Behind,
    Project,
    WishPicture,
    lay_behind,
    scale_behind,
    scale_between,
    set_behind,
    take_away_behind,
)
from workbench.ui.board.tracing import tracing_of
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Segment
from workbench.ui.form.entry import Entry
from workbench.ui.form.note import Note
from workbench.ui.look import GRID, fonts
from workbench.ui.tick import Tick
from workbench.ui.wish.lens import Spot
from workbench.ui.wish.slider import DeskSlider

_LEAST_HIGH, _MOST_HIGH = 50.0, 5000.0
"""mm that the whole picture may be high, by its slider."""
_LEAST_STRENGTH = 0.05
_WHERE = "Behind the panels laid apart, and behind both halves; not on the block."
_MOVE = "Drag it on the canvas, or use the arrow keys there. Escape lets it go."
_FIRST = "Click two points in the picture that you know the distance of."
_THEN = "How far apart are they on her, or on the cloth?"


class BehindBox(QWidget):
    """Everything about the picture behind the panels; ``points_wanted`` asks for two points in it."""

    points_wanted = Signal(bool)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._tracing = desk, tracing_of(desk)
        self._wish: WishPicture | None = None
        self._points: tuple[Spot, Spot] | None = None
        self.box = Tick("Lay it behind the panels")
        self.strength = DeskSlider("Strength", "Strength of the picture", desk, _with_strength)
        self.extent = DeskSlider("Size", "Size of the picture", desk, _with_size)
        self.high = QLabel()
        self.measure = Segment("By a known length", "Size by a known length")
        self.move_it = Segment("Move it", "Move it on the canvas")
        self.length = Entry("Distance of the two points")
        self.ask, self.note = QLabel(), Note()
        self._inside = QWidget()
        self._asked = QWidget()
        self._arrange()
        self._connect()

    def _arrange(self) -> None:
        for label in (self.high, self.ask):
            label.setFont(fonts().small)
            label.setWordWrap(label is self.ask)
        self.length.setFixedWidth(22 * GRID)
        asking = QHBoxLayout(self._asked)
        asking.setContentsMargins(0, 0, 0, 0)
        asking.addWidget(self.ask, 1)
        asking.addWidget(self.length)
        grid = QGridLayout(self._inside)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(2 * GRID)
        for row, (words, slider) in enumerate((("Strength", self.strength), ("Size", self.extent))):
            label = QLabel(words)
            label.setBuddy(slider)
            grid.addWidget(label, row, 0)
            grid.addWidget(slider, row, 1)
        grid.addWidget(self.high, 1, 2)
        buttons = QHBoxLayout()
        for button in (self.measure, self.move_it):
            buttons.addWidget(button)
        buttons.addStretch(1)
        grid.addLayout(buttons, 2, 0, 1, 3)
        grid.addWidget(self._asked, 3, 0, 1, 3)
        grid.addWidget(self.note, 4, 0, 1, 3)
        grid.setColumnStretch(1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2 * GRID)
        column.addWidget(self.box)
        column.addWidget(self._inside)

    def _connect(self) -> None:
        self.box.clicked.connect(self.on_laid)
        self.measure.toggled.connect(self.on_measure)
        self.move_it.clicked.connect(self._tracing.set_moving)
        self._tracing.changed.connect(self.show_tracing)
        self.length.entered.connect(self.on_length)

    # --- what is shown ---------------------------------------------------------------------

    def show_wish(self, picture: WishPicture | None, project: Project) -> None:
        """Show how this picture lies in the project."""
        self._wish = picture
        behind = project.behind if picture is not None else None
        here = behind is not None and picture is not None and behind.picture == picture.name
        self.box.setEnabled(picture is not None)
        self.box.setChecked(here)
        self._inside.setVisible(here)
        if here and behind is not None and picture is not None:
            self._show_behind(behind, picture, project)
        elif self.measure.isChecked():
            self.measure.setChecked(False)
        self.length.show_suffix(project.unit)
        self.show_tracing()

    def _show_behind(self, behind: Behind, picture: WishPicture, project: Project) -> None:
        self.strength.show_part((behind.opacity - _LEAST_STRENGTH) / (1 - _LEAST_STRENGTH))
        high = behind.mm_per_pixel * picture.height
        self.extent.show_part(log(high / _LEAST_HIGH) / log(_MOST_HIGH / _LEAST_HIGH))
        said = say_with_unit(high, project.unit, project.fraction)
        self.high.setText(f"{said} high")
        self.extent.setAccessibleDescription(f"The whole picture is {said} high")

    def show_tracing(self) -> None:
        """Show whether it is in the hand, and what is to be done next."""
        self.move_it.setChecked(self._tracing.moving)
        measuring = self.measure.isChecked()
        self._asked.setVisible(measuring)
        self.length.setVisible(measuring and self._points is not None)
        self.ask.setText(_THEN if self._points else _FIRST)
        if not self.note.text() or self.note.text() in (_WHERE, _MOVE):
            self.note.show_words(_MOVE if self._tracing.moving else "" if measuring else _WHERE)

    def show_points(self, one: Spot, other: Spot) -> None:
        """Ask for the distance of the two points."""
        self._points = one, other
        self.note.show_words("")
        self.length.show_value((one, other), "")
        self.show_tracing()
        self.length.setFocus()

    def stop_measuring(self) -> None:
        """No points are wanted any more."""
        self.measure.setChecked(False)

    # --- what she does ---------------------------------------------------------------------

    def on_laid(self, on: bool) -> None:
        """Lay the picture behind the panels, or take it away."""
        if self._wish is None:
            return
        project = self._desk.project
        if on:
            laid = lay_behind(project, self._wish.name, self._tracing.on_show)
            self._desk.apply("Lay picture behind the panels", laid)
        else:
            self._desk.apply("Take picture from behind the panels", take_away_behind(project))

    def on_measure(self, on: bool) -> None:
        """Ask for two points, or leave it."""
        self._points = None
        self.note.show_words("")
        self._tracing.set_moving(self._tracing.moving and not on)
        self.points_wanted.emit(on)
        self.show_tracing()

    def on_length(self, text: str) -> None:
        """Give the picture the size that the distance says."""
        if self._points is None or not text.strip():
            return
        project = self._desk.project
        try:
            mm = read_length(text, project.unit).mm
            scaled = scale_between(project, *self._points, mm)
        except (LengthError, ValueError) as error:
            self.note.show_words(str(error), "attend")
            self.length.show_trouble(True)
            return
        self.length.show_trouble(False)
        self._desk.apply("Size of the picture", scaled)
        self.measure.setChecked(False)


def _with_strength(project: Project, part: float) -> Project:
    return set_behind(project, opacity=_LEAST_STRENGTH + (1 - _LEAST_STRENGTH) * part)


def _with_size(project: Project, part: float) -> Project:
    """So high in all; a step of the slider is the same part everywhere."""
    high = _LEAST_HIGH * exp(part * log(_MOST_HIGH / _LEAST_HIGH))
    behind = project.behind
    picture = next((p for p in project.pictures if behind is not None and p.name == behind.picture), None)
    if picture is None:
        raise ValueError("No picture lies behind the panels.")
    return scale_behind(project, min(high / picture.height, 50.0))

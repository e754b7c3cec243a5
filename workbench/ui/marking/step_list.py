"""The steps of a piece: a box to tick and a title each; a click on the title shows the step."""

from __future__ import annotations

from collections.abc import Collection

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from workbench.marking import PieceGuide
from workbench.ui.look import GRID, fonts
from workbench.ui.tick import Tick


class StepRow(QWidget):
    """One step."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tick = Tick(parent=self, fades=True)
        self.title = QPushButton(self)
        self.title.setObjectName("row")
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(0)
        line.addWidget(self.tick)
        line.addWidget(self.title, 1)

    def show_step(self, number: int, title: str, done: bool, shown: bool) -> None:
        """Show number and title; the one on show is bold."""
        self.tick.setChecked(done)
        self.tick.setAccessibleName(f"Step {number}, {title}: {'done' if done else 'not done yet'}")
        self.title.setText(f"{number}  {title}".replace("&", "&&"))
        self.title.setFont(fonts().strong if shown else fonts().body)
        self.title.setAccessibleName(f"Show step {number}, {title}{', on show' if shown else ''}")


class StepList(QWidget):
    """Rows of steps, kept and refilled."""

    ticked = Signal(int, bool)
    """The step, counted from 0, and whether it is done now."""
    chosen = Signal(int)
    """The step that is to be shown."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: list[StepRow] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(3 * GRID, 0, 2 * GRID, 0)
        self._column.setSpacing(0)

    def show_steps(self, piece: PieceGuide | None, done: Collection[str], shown: int) -> None:
        """Show the steps of a piece, those done ticked."""
        steps = piece.steps if piece is not None else ()
        while len(self.rows) < len(steps):
            self._add_row()
        for number, (row, step) in enumerate(zip(self.rows, steps, strict=False)):
            row.show_step(number + 1, step.title, step.key in done, number == shown)
        for number, row in enumerate(self.rows):
            row.setVisible(number < len(steps))

    def _add_row(self) -> None:
        row = StepRow(self)
        row.tick.clicked.connect(self.on_ticked)
        row.title.clicked.connect(self.on_chosen)
        self._column.addWidget(row)
        self.rows.append(row)

    def on_ticked(self, on: bool) -> None:
        """Say which step was ticked."""
        tick = self.sender()
        for number, row in enumerate(self.rows):
            if row.tick is tick:
                self.ticked.emit(number, on)

    def on_chosen(self) -> None:
        """Say which step is wanted."""
        title = self.sender()
        for number, row in enumerate(self.rows):
            if row.title is title:
                self.chosen.emit(number)

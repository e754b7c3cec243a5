"""The step on show in large type, to be read at arm's length, and the list of all steps below it."""

from __future__ import annotations

from collections.abc import Collection

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from workbench.marking import PieceGuide, Rounding
from workbench.ui.look import GRID, fonts
from workbench.ui.marking.step_list import StepList
from workbench.ui.marking.step_words import step_html

WIDTH = 102 * GRID
_LARGE = 18
"""Height of the type of the step on show, pixels."""


class StepPane(QWidget):
    """Shows one step of one piece; says what is ticked and what is wanted."""

    ticked = Signal(int, bool)
    chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._step, self._count = 0, 0
        self.about = QLabel()
        self.title = QLabel()
        self.words = QLabel()
        self.back, self.onward = QPushButton("Back"), QPushButton("Done, next step")
        self.steps = StepList()
        self._dress()
        self._arrange()
        self.back.clicked.connect(self.on_back)
        self.onward.clicked.connect(self.on_done)
        self.steps.ticked.connect(self.ticked)
        self.steps.chosen.connect(self.chosen)

    def _dress(self) -> None:
        large = QFont(fonts().body)
        large.setPixelSize(_LARGE)
        self.words.setFont(large)
        self.words.setTextFormat(Qt.TextFormat.RichText)
        self.words.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.words.setAccessibleName("What to do in this step")
        self.about.setFont(fonts().small)
        self.title.setFont(fonts().title)
        for label in (self.about, self.title, self.words):
            label.setWordWrap(True)
        self.title.setTextFormat(Qt.TextFormat.PlainText)

    def _arrange(self) -> None:
        buttons = QHBoxLayout()
        buttons.setSpacing(2 * GRID)
        buttons.addWidget(self.back)
        buttons.addWidget(self.onward, 1)
        large = QWidget()
        upper = QVBoxLayout(large)
        upper.setContentsMargins(4 * GRID, 3 * GRID, 3 * GRID, 2 * GRID)
        upper.setSpacing(GRID)
        for label in (self.about, self.title, self.words):
            upper.addWidget(label)
        upper.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(_scrolled("The step", large), 3)
        buttons.setContentsMargins(4 * GRID, 2 * GRID, 3 * GRID, 2 * GRID)
        column.addLayout(buttons)
        self._below = _scrolled("Steps of the piece", self.steps)
        column.addWidget(self._below, 2)

    def show_step(
        self, piece: PieceGuide | None, rounding: Rounding | None, done: Collection[str], step: int
    ) -> None:
        """Show a step, counted from 0; nothing without a piece."""
        self._step, self._count = step, len(piece.steps) if piece is not None else 0
        self.steps.show_steps(piece, done, step)
        for button in (self.back, self.onward):
            button.setEnabled(piece is not None)
        if piece is None or rounding is None:
            for label in (self.about, self.title, self.words):
                label.setText("")
            return
        one = piece.steps[step]
        ticked = " · done" if one.key in done else ""
        self.about.setText(f"{piece.name} · step {step + 1} of {self._count}{ticked}")
        self.title.setText(one.title)
        self.words.setText(step_html(one, piece, rounding))
        self.words.setAccessibleDescription(" ".join(one.lines))
        self.back.setEnabled(step > 0)
        self.onward.setText("Done, next step" if step + 1 < self._count else "Done, next piece")
        self._below.ensureWidgetVisible(self.steps.rows[step], 0, 12 * GRID)

    def on_back(self) -> None:
        """The step before."""
        self.chosen.emit(max(self._step - 1, 0))

    def on_done(self) -> None:
        """Tick this step and show the next."""
        step = self._step
        self.ticked.emit(step, True)
        self.chosen.emit(step + 1)


def _scrolled(name: str, inside: QWidget) -> QScrollArea:
    area = QScrollArea()
    area.setAccessibleName(name)
    area.setWidget(inside)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return area

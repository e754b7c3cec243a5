"""The guide for a new client: one line above the work that says which step is next."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from workbench.document import Picture
from workbench.ui.guide.chip import StepChip
from workbench.ui.guide.steps import STEPS, Step, StepName, sentence_of, steps_of
from workbench.ui.look import GRID, fonts, look

_ROOMY = 1180
"""Pixels from which every step has room for its name."""
_SHOW: dict[StepName, str] = {
    "shape": "Shapes…",
    "measure": "Show me",
    "reduce": "Show me",
    "lines": "Show me",
    "print": "Print…",
}
_KEEP: dict[StepName, str] = {"shape": "Keep it", "reduce": "Keep it", "lines": "Keep them", "print": "Later"}
"""Steps that may be passed without a change; measurements may not."""


class GuideBar(QFrame):
    """Shows the steps of the project on the desk; what is to be done about them is for whoever owns it."""

    wanted = Signal(str)
    """The step that she wants to be shown."""
    kept = Signal(str)
    """The step that she goes on from as it is."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._current: Step | None = None
        self.chips = {name: StepChip(self) for name in STEPS}
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.show_me, self.keep = QPushButton(self), QPushButton(self)
        self.demo, self.away = QPushButton("A finished one", self), QPushButton("Put away", self)
        for button in (self.demo, self.away):
            button.setObjectName("quiet")
            button.setFlat(True)
        self.demo.setAccessibleDescription("Open a demo, to see where this leads")
        self.away.setAccessibleDescription("The Help menu has the guide again")
        self.setAccessibleName("Guide for a new client")
        # the words wrap, and a bar may grow with what wraps: hold it to two lines
        self.setFixedHeight(2 * QFontMetrics(fonts().body).lineSpacing() + 4 * GRID)
        line = QHBoxLayout(self)
        line.setContentsMargins(3 * GRID, GRID, 2 * GRID, GRID + 1)
        line.setSpacing(GRID)
        for chip in self.chips.values():
            line.addWidget(chip)
        line.addSpacing(2 * GRID)
        line.addWidget(self.words, 1)
        for button in (self.show_me, self.keep, self.demo, self.away):
            line.addWidget(button)
        for chip in self.chips.values():
            chip.clicked.connect(self.on_chip)
        self.show_me.clicked.connect(self.on_show_me)
        self.keep.clicked.connect(self.on_keep)

    @property
    def current(self) -> Step | None:
        """The step that is next; None when all are done."""
        return self._current

    def show_picture(self, picture: Picture, kept: frozenset[StepName]) -> None:
        """Show how far a project has come."""
        steps = steps_of(picture, kept)
        self._current = next((step for step in steps if step.current), None)
        for step in steps:
            self.chips[step.name].show_step(step, named=self.width() >= _ROOMY)
        self.words.setText(sentence_of(self._current, picture))
        name = self._current.name if self._current is not None else None
        self.show_me.setVisible(name is not None)
        self.keep.setVisible(name in _KEEP)
        self.demo.setVisible(name in ("shape", "measure"))
        if name is not None:
            self.show_me.setText(_SHOW[name])
            self.keep.setText(_KEEP.get(name, ""))

    def on_chip(self) -> None:
        """Show the step that was clicked."""
        for name, chip in self.chips.items():
            if chip is self.sender():
                self.wanted.emit(name)

    def on_show_me(self) -> None:
        """Show the current step."""
        if self._current is not None:
            self.wanted.emit(self._current.name)

    def on_keep(self) -> None:
        """Go on from the current step."""
        if self._current is not None:
            self.kept.emit(self._current.name)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Names where there is room for them."""
        super().resizeEvent(event)
        for chip in self.chips.values():
            if chip.step is not None:
                chip.show_step(chip.step, named=self.width() >= _ROOMY)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A hairline along the foot."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().ground)
        painter.fillRect(0, self.height() - 1, self.width(), 1, look().hairline)
        painter.end()

"""One step of the work: a box to tick, its name, and what to do in words."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from workbench.document import Project
from workbench.sewing import Step, time_words
from workbench.ui.look import GRID, fonts, look
from workbench.ui.tick import Tick


class StepCard(QWidget):
    """Shows a step; says when it is ticked or no longer."""

    ticked = Signal(str, bool)
    """The key of the step, and whether it is done now."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._key = ""
        self._shown: object = None
        self.tick = Tick(parent=self, fades=True)
        self.time = QLabel(self)
        self.time.setFont(fonts().small)
        self.says = QLabel(self)
        self.watch = QLabel(self)
        for words in (self.says, self.watch):
            words.setTextFormat(Qt.TextFormat.PlainText)
            words.setWordWrap(True)
            words.setFont(fonts().body)
            words.setContentsMargins(6 * GRID, 0, 0, 0)
        self._assemble()
        self.tick.clicked.connect(self.on_clicked)

    def _assemble(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.tick)
        head.addWidget(self.time)
        head.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, GRID, 0, 2 * GRID)
        column.setSpacing(GRID)
        column.addLayout(head)
        column.addWidget(self.says)
        column.addWidget(self.watch)

    def show_step(self, step: Step, done: bool, project: Project) -> None:
        """Show the step in the user's unit; what is done stands back."""
        shown = (step, done, project.unit, project.fraction, look())
        if shown == self._shown:
            return
        self._key, self._shown = step.key, shown
        says = " ".join(say.text(project.unit, project.fraction) for say in step.says)
        watch = " ".join(say.text(project.unit, project.fraction) for say in step.watch)
        self.tick.setText(step.title.replace("&", "&&"))
        self.tick.setChecked(done)
        self.tick.setAccessibleName(f"{step.title}, {'done' if done else 'not done yet'}")
        self.tick.setAccessibleDescription(says)
        self.time.setText(time_words(step.minutes))
        self.says.setText(says)
        self.says.setVisible(not done)
        self.watch.setText(f"Watch: {watch}")
        self.watch.setVisible(bool(watch) and not done)
        self._colour()

    def _colour(self) -> None:
        for label, ink in (
            (self.time, look().soft_ink),
            (self.says, look().ink),
            (self.watch, look().attend),
        ):
            palette = label.palette()
            palette.setColor(QPalette.ColorRole.WindowText, ink)
            label.setPalette(palette)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and self._shown is not None:
            self._colour()

    def on_clicked(self, on: bool) -> None:
        """The box was ticked by hand: what it shows is no longer what it was told to."""
        self._shown = None
        self.ticked.emit(self._key, on)

    def reach(self) -> None:
        """Take the focus."""
        self.tick.setFocus(Qt.FocusReason.TabFocusReason)

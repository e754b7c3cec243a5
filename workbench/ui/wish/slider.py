"""A slider that edits: a drag of it is one step to undo, and so is each key."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QSlider, QWidget

from workbench.document import Project
from workbench.ui.desk import Desk

STEPS = 200

Put = Callable[[Project, float], Project]


class DeskSlider(QSlider):
    """Goes from 0 to 1; ``put`` makes the project with another value."""

    def __init__(
        self, name: str, step_name: str, desk: Desk, put: Put, parent: QWidget | None = None
    ) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._desk, self._step_name, self._put = desk, step_name, put
        self._start: Project | None = None
        self.setAccessibleName(name)
        self.setRange(0, STEPS)
        self.setPageStep(STEPS // 10)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.sliderPressed.connect(self.on_pressed)
        self.sliderReleased.connect(self.on_released)
        self.valueChanged.connect(self.on_changed)

    def show_part(self, part: float) -> None:
        """Show what is stored; never while it is in the hand."""
        if self._start is None:
            with QSignalBlocker(self):
                self.setValue(round(part * STEPS))

    def on_pressed(self) -> None:
        """Begin a gesture."""
        self._start = self._desk.project
        self._desk.begin(self._step_name)

    def on_changed(self, value: int) -> None:
        """Show what it would be, or make it so."""
        start = self._start if self._start is not None else self._desk.project
        try:
            project = self._put(start, value / STEPS)
        except ValueError:
            return  # nothing lies behind the panels any more
        if self._start is None:
            self._desk.apply(self._step_name, project)
        elif self._desk.gesturing:
            self._desk.preview(project)

    def on_released(self) -> None:
        """Keep what the drag did."""
        self._start = None
        if self._desk.gesturing:
            self._desk.commit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Without the focus the wheel belongs to what scrolls."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()

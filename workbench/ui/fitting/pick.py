"""One of many, from a list that drops down; a form that is scrolled never changes it."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QSizePolicy, QWidget

from workbench.ui.look import GRID, fonts


class Pick(QComboBox):
    """Without the focus the wheel belongs to the form."""

    chosen = Signal(object)
    """The value she picked; never said when a value is only shown."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setFont(fonts().body)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setFixedHeight(7 * GRID)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setMaxVisibleItems(16)
        self._options: tuple[tuple[object, str], ...] = ()
        self.activated.connect(self.on_activated)

    @property
    def value(self) -> object:
        """What is picked; None where nothing is."""
        at = self.currentIndex()
        return self._options[at][0] if 0 <= at < len(self._options) else None

    def show_options(self, options: Sequence[tuple[object, str]], value: object) -> None:
        """Show what there is to pick from, and what is picked."""
        with QSignalBlocker(self):
            if tuple(options) != self._options:
                self._options = tuple(options)
                self.clear()
                self.addItems([text for _, text in options])
            at = next((n for n, (known, _) in enumerate(self._options) if known == value), -1)
            if at != self.currentIndex():
                self.setCurrentIndex(at)

    def on_activated(self, at: int) -> None:
        """Say which it is."""
        self.chosen.emit(self._options[at][0])

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Only for a list that has the focus."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()

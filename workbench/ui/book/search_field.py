"""The field that searches the book."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from workbench.ui.look import GRID

_SHEET = (
    "QLineEdit { background: palette(base); border: 1px solid palette(mid); border-radius: 4px; }"
    "QLineEdit:focus { border-color: palette(highlight); }"
)


class SearchField(QLineEdit):
    """Letters search at once; Enter opens the row that is picked, Down goes to the list, Escape ends it."""

    down = Signal()
    """She goes on to the list."""
    entered = Signal()
    """Enter was pressed."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setPlaceholderText("Find a client, style or file")
        self.setAccessibleName("Find a client, style or file")
        self.setClearButtonEnabled(True)
        self.setMaxLength(100)
        self.setFixedHeight(7 * GRID)
        self.setTextMargins(GRID, 0, GRID, 0)
        self.setStyleSheet(_SHEET)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Four keys mean something else here than in other fields."""
        key = event.key()
        if key in (Qt.Key.Key_Down, Qt.Key.Key_PageDown):
            self.down.emit()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.entered.emit()
        elif key == Qt.Key.Key_Escape and self.text():
            self.clear()
        else:
            super().keyPressEvent(event)

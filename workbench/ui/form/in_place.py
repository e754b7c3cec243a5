"""What fields have in common that are laid over a board, where a figure stands that is typed."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QWidget

from workbench.ui.look import GRID


def tab_step(event: QEvent) -> int | None:
    """+1 where a key goes on to the next field, -1 to the one before; None for all other events."""
    if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
        return {Qt.Key.Key_Tab: 1, Qt.Key.Key_Backtab: -1}.get(Qt.Key(event.key()))
    return None


class Complaint(QLabel):
    """Says under such a field why it cannot be read, until she types on; it stays inside the board."""

    def __init__(self, field: QLineEdit, board: QWidget, width: int, edge: int = 0) -> None:
        super().__init__(board)
        self._field, self._board, self._edge = field, board, edge
        # it repeats what was typed
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self.setFixedWidth(width)
        self.hide()
        field.textEdited.connect(self.hide)

    @property
    def said(self) -> str:
        """What it says; empty while there is nothing to say."""
        return "" if self.isHidden() else self.text()

    def say(self, sentence: str) -> None:
        """Say a sentence."""
        self.setText(sentence)
        self.adjustSize()
        left = min(self._field.x(), self._board.width() - self.width() - self._edge)
        self.move(max(left, self._edge), self._field.geometry().bottom() + 1 + GRID)
        self.show()
        self.raise_()

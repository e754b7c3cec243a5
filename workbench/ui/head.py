"""The head of a pane that can be closed: its name, and a word to close it with."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from workbench.ui.look import GRID, fonts


class Head(QWidget):
    """A name at the left, *Close* at the right."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        label = QLabel(name)
        label.setFont(fonts().heading)
        self.shut = QPushButton("Close")
        self.shut.setObjectName("quiet")
        self.shut.setAccessibleName(f"Close {name.lower()}")
        line = QHBoxLayout(self)
        line.setContentsMargins(3 * GRID, GRID, 2 * GRID, GRID)
        line.addWidget(label, 1)
        line.addWidget(self.shut)

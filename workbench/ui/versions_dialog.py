"""The earlier versions of the open project: look at each, and have one back."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QListWidget, QPushButton, QVBoxLayout, QWidget

from workbench.document import FileTrouble, Project
from workbench.document.keeping import KEPT_VERSIONS, Version, differences
from workbench.ui.desk import Desk
from workbench.ui.keeping_questions import said_when
from workbench.ui.look import GRID
from workbench.ui.room import open_at
from workbench.ui.version_picture import VersionPicture

_MOST_LINES = 10
_NOTE = (
    f"What was in the file is kept at every save, the last {KEPT_VERSIONS} times. "
    "Having one back is a step like any other: undo takes it back, and nothing is written until you save."
)
_NONE = "Nothing has been kept of this project yet: that begins when it is saved."
_SAME = "The same as the project as it stands."


class VersionsDialog(QDialog):
    """A list at the left; at the right the picture of the one picked, and what differs from the desk."""

    def __init__(self, desk: Desk, versions: Sequence[Version], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._versions = desk, tuple(versions)
        self._project: Project | None = None
        self.setWindowTitle("Earlier versions")
        self.list = QListWidget()
        self.list.setAccessibleName("Versions, the latest first")
        self.list.addItems([said_when(version.when, closely=True) for version in self._versions])
        self.picture = VersionPicture()
        self.said = QLabel()
        # what she has typed is shown as she typed it, never as mark-up
        self.said.setTextFormat(Qt.TextFormat.PlainText)
        self.said.setWordWrap(True)
        self.restore, self.shut = QPushButton("Have this one back"), QPushButton("Close")
        self._arrange()
        self.list.currentRowChanged.connect(self.show_version)
        self.restore.clicked.connect(self.on_restore)
        self.shut.clicked.connect(self.reject)
        open_at(self, 200 * GRID, 130 * GRID)
        self.show_version(-1)
        self.list.setCurrentRow(0)

    def _arrange(self) -> None:
        note = QLabel(_NOTE)
        note.setWordWrap(True)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        for button in (self.restore, self.shut):
            buttons.addWidget(button)
        right = QVBoxLayout()
        right.setSpacing(3 * GRID)
        right.addWidget(self.picture, 1)
        for part in (self.said, note):
            right.addWidget(part)
        right.addLayout(buttons)
        both = QHBoxLayout(self)
        both.setContentsMargins(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        both.setSpacing(4 * GRID)
        self.list.setFixedWidth(50 * GRID)
        both.addWidget(self.list)
        both.addLayout(right, 1)

    def show_version(self, row: int) -> None:
        """Draw the version in a row of the list and say what differs; a damaged one is only said."""
        self._project, said = None, _NONE
        if 0 <= row < len(self._versions):
            try:
                self._project = self._versions[row].read()
                said = _difference(self._desk.project, self._project)
            except FileTrouble as trouble:
                said = f"This version is damaged. {trouble}"
        self.picture.show_project(self._project)
        self.said.setText(said)
        self.restore.setEnabled(self._project is not None and self._project != self._desk.project)

    def on_restore(self) -> None:
        """Put the version on the desk as one step, and close."""
        row = self.list.currentRow()
        if self._project is not None:
            name = f"Version of {said_when(self._versions[row].when)}"
            self._desk.apply(name, self._project)
            self.accept()


def _difference(now: Project, then: Project) -> str:
    """What having it back would change, a line a field."""
    lines = differences(now, then, "now")
    shown = [f"•  {line}" for line in lines[:_MOST_LINES]]
    if len(lines) > _MOST_LINES:
        shown.append(f"and {len(lines) - _MOST_LINES} more")
    return "\n".join(shown) or _SAME

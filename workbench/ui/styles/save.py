"""Keep the shape of a project under a name, without a word about its client."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from workbench.document import PURPOSE_MOST, STYLE_NAME_MOST
from workbench.styles import KeptShape, NameTakenError, save_shape
from workbench.ui.desk import Desk
from workbench.ui.form.note import Note
from workbench.ui.look import GRID, fonts
from workbench.ui.room import open_at
from workbench.ui.styles.questions import ShapeQuestions

_NOTE = (
    "Kept are the seams and their shares, neckline and hem, how far it draws in, and how it is made. "
    "The client, her measurements, dates, pictures, fittings and prices stay out of it: "
    "the shape is put on an invented body."
)


class SaveShape(QDialog):
    """Asks for a name and a line about it; ``kept`` is the shape once it is."""

    def __init__(
        self,
        desk: Desk,
        folder: Path,
        parent: QWidget | None = None,
        *,
        questions: ShapeQuestions | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk, self._folder = desk, folder
        self._questions = questions or ShapeQuestions()
        self.kept: KeptShape | None = None
        self.setWindowTitle("Keep the shape")
        self.name, self.purpose = _field("Name", STYLE_NAME_MOST), _field("What it is for", PURPOSE_MOST)
        self.trouble = Note()
        self.keep, self.leave = QPushButton("Keep it"), QPushButton("Cancel")
        self._arrange()
        self.name.textChanged.connect(self.on_changed)
        self.purpose.textChanged.connect(self.on_changed)
        self.keep.clicked.connect(self.on_keep)
        self.leave.clicked.connect(self.reject)
        open_at(self, 130 * GRID, 78 * GRID)
        self.name.setText(desk.project.style_name)
        self.name.selectAll()
        self.on_changed()

    def _arrange(self) -> None:
        note = QLabel(_NOTE)
        note.setWordWrap(True)
        note.setFont(fonts().small)
        column = QVBoxLayout(self)
        column.setContentsMargins(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        column.setSpacing(2 * GRID)
        for words, field in (("Name", self.name), ("What it is for, in a line (optional)", self.purpose)):
            label = QLabel(words)
            label.setBuddy(field)
            column.addWidget(label)
            column.addWidget(field)
        column.addWidget(self.trouble)
        column.addWidget(note)
        column.addStretch(1)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        for button in (self.keep, self.leave):
            buttons.addWidget(button)
        self.keep.setDefault(True)
        column.addLayout(buttons)

    def on_changed(self) -> None:
        """There is something to keep only under a name."""
        self.trouble.show_words("")
        self.keep.setEnabled(bool(self.name.text().strip()))

    def on_keep(self) -> None:
        """Keep it, and close; what stands in the way is said under the fields."""
        try:
            self.kept = self._kept()
        except ValueError as error:
            self.trouble.show_words(str(error), "attend")
            return
        if self.kept is not None:
            self.accept()

    def _kept(self) -> KeptShape | None:
        """The shape kept; None where one of that name is to stay. ValueError says what stands in the way."""
        asked = self._desk.project, self.name.text(), self.purpose.text(), self._folder
        try:
            return save_shape(*asked)
        except NameTakenError as taken:
            if not self._questions.replace(taken.shape.name, self):
                return None
            return save_shape(*asked, replacing=True)


def _field(name: str, most: int) -> QLineEdit:
    field = QLineEdit()
    field.setAccessibleName(name)
    field.setMaxLength(most)
    field.setFont(fonts().body)
    return field

"""Rows of the form: a label, something to fill in, and what is to be said about it underneath."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Finding
from workbench.ui.form.note import Note
from workbench.ui.look import GRID, look
from workbench.ui.marks import Mark, mark_of

EDGE = 3 * GRID
"""Left and right of everything in the form."""


class Row(QWidget):
    """A label at the left, a place for fields at the right, and a note below."""

    def __init__(self, name: str, label: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.name, self.label = name, QLabel(label, self)
        self.words = label.lower()
        """What the search box looks through."""
        self.wanted = True
        """Whether this project has any use for the row."""
        self._folded = False
        self._found: bool | None = None
        self._lit = False
        self._note: Note | None = None
        # a row may bear a name from the file, which is shown as it stands there
        self.label.setTextFormat(Qt.TextFormat.PlainText)
        self.label.setWordWrap(True)
        self.label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.line = QHBoxLayout()
        self.line.setSpacing(2 * GRID)
        self.line.addWidget(self.label, 1)
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(EDGE, 1, EDGE, 3)
        self.column.setSpacing(2)
        self.column.addLayout(self.line)

    @property
    def note(self) -> Note:
        """What is said about it; made when it is first wanted, as most rows never say anything."""
        if self._note is None:
            self._note = Note(self)
            self.column.addWidget(self._note)
        return self._note

    def say(self, words: str, mark: Mark | None = None) -> None:
        """Say something under the field, or nothing."""
        if words or self._note is not None:
            self.note.show_words(words, mark)

    @property
    def said(self) -> str:
        """What stands under the field."""
        return self._note.text().replace("\N{NO-BREAK SPACE}", " ") if self._note is not None else ""

    def show_label(self, label: str) -> None:
        """Show another name."""
        if label != self.label.text():
            self.label.setText(label)
            self.words = label.lower()

    def show_lit(self, lit: bool) -> None:
        """Light the row up, or not."""
        if lit != self._lit:
            self._lit = lit
            self.update()

    def is_called(self, wanted: str) -> bool:
        """Whether the search finds it."""
        return all(word in self.words for word in wanted.lower().split())

    def show_wanted(self, wanted: bool) -> None:
        """Whether this project has any use for the row."""
        if wanted != self.wanted:
            self.wanted = wanted
            self._settle()

    def show_folded(self, folded: bool) -> None:
        """Put the row away, or bring it back; a search finds it all the same."""
        self._folded = folded
        self._settle()

    def show_found(self, found: bool | None) -> None:
        """Whether the search found it; None when nothing is searched for."""
        self._found = found
        self._settle()

    def _settle(self) -> None:
        here = not self._folded if self._found is None else self._found
        self.setVisible(self.wanted and here)

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored; a row without fields has nothing to show."""

    def forget(self) -> None:
        """Hold on to nothing that was typed: there is another project on the desk."""

    def target(self) -> QWidget | None:
        """What takes the focus when the row is pointed at."""
        return None

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A tint behind it while it is lit."""
        if self._lit:
            painter = QPainter(self)
            painter.fillRect(self.rect(), look().selected_fill)
            painter.fillRect(0, 0, 3, self.height(), look().selected)
            painter.end()


def found_about(name: str, picture: Picture) -> tuple[str, Mark | None]:
    """The first finding that names the field and wants attention, with its mark."""
    for finding in picture.findings:
        if _wants_attention(finding) and finding.place.field == name:
            return finding.text(picture.project.unit, picture.project.fraction), mark_of(finding)
    return "", None


def _wants_attention(finding: Finding) -> bool:
    return finding.severity != "note"

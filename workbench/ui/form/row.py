"""Rows of the form: a label, something to fill in, and what is to be said about it underneath."""

from __future__ import annotations

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Finding, Place
from workbench.ui.desk import Desk
from workbench.ui.form.entry import HEIGHT, Entry
from workbench.ui.form.figures import Figure
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark, draw_mark, mark_of

FIELD_WIDTH = 31 * GRID
EDGE = 3 * GRID
"""Left and right of everything in the form."""
_MARK = 12
_WRAPPED = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap


class Note(QWidget):
    """Words under a field, with a mark before them where they are more than a remark.

    A label would have the whole form laid out anew at every change of a figure; this asks
    for that only when its words need another number of lines.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._words = ""
        self._mark: Mark | None = None
        self.setFont(fonts().small)
        policy = QSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.hide()

    def text(self) -> str:
        """What it says."""
        return self._words

    def show_words(self, words: str, mark: Mark | None = None) -> None:
        """Say this, or nothing where there are no words."""
        if (words, mark) == (self._words, self._mark):
            return
        self._words, self._mark = words, mark
        self.setAccessibleName(words)
        self.setVisible(bool(words))
        if self.heightForWidth(self.width()) != self.height():
            self.updateGeometry()
        self.update()

    def hasHeightForWidth(self) -> bool:
        """The words wrap."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Height of the words, wrapped."""
        return self._box(width, 10_000).height()

    def sizeHint(self) -> QSize:
        """As tall as it must be for the width it has."""
        return QSize(0, self.heightForWidth(self.width()))

    def _left(self) -> int:
        return _MARK + GRID if self._mark else 0

    def _box(self, width: int, height: int) -> QRect:
        room = QRect(self._left(), 0, max(width - self._left(), 40), height)
        return self.fontMetrics().boundingRect(room, _WRAPPED, self._words)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The mark stands beside the first line."""
        painter = QPainter(self)
        painter.setPen(look().ink)
        painter.drawText(self.rect().adjusted(self._left(), 0, 0, 0), _WRAPPED, self._words)
        if self._mark:
            top = (self.fontMetrics().height() - _MARK) / 2
            draw_mark(painter, QRectF(0, top, _MARK, _MARK), self._mark, look().ground)
        painter.end()


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


class Field(Entry):
    """An entry tied to one figure of the project on the desk."""

    def __init__(self, desk: Desk, figure: Figure, row: FigureRow, width: int = FIELD_WIDTH) -> None:
        super().__init__(figure.label, row)
        self._desk, self.figure, self._row = desk, figure, row
        self._moving = False
        self.setFixedSize(width, HEIGHT)
        self.entered.connect(self.on_entered)
        self.stepped.connect(self.on_stepped)
        self.rested.connect(self.on_rested)
        self.restored.connect(self.on_restored)
        self.focused.connect(self.on_focused)

    def show_project(self, picture: Picture, estimate: str = "") -> None:
        """Show what is stored."""
        project = picture.project
        self.show_suffix(self.figure.suffix(project))
        self.show_value(self.figure.stamp(project), self.figure.text(project), estimate)
        if not self.pending:
            self._calm()

    def on_entered(self, text: str) -> None:
        """Read what was typed and store it, or say why it cannot be read and leave it standing."""
        try:
            project = self.figure.typed(self._desk.project, text)
        except ValueError as error:
            self._refuse(str(error))
            return
        self._calm()
        self.forget()
        self._desk.apply(self.figure.step_name, project)
        self._row.show_picture(self._desk.picture)

    def on_stepped(self, steps: int) -> None:
        """The next mark on the ruler; steps of one key held down are one step to undo."""
        if self._desk.gesturing and not self._moving:
            return
        try:
            project = self.figure.moved(self._desk.project, steps)
        except ValueError as error:
            self._row.say(str(error), "attend")
            return
        if not self._moving:
            self._moving = True
            self._desk.begin(self.figure.step_name)
        self._desk.preview(project)

    def on_rested(self) -> None:
        """The run of steps is over."""
        if self._moving:
            self._moving = False
            self._desk.commit()

    def on_restored(self) -> None:
        """Take back what was said about it."""
        self._row.trouble = ""
        self._desk.now()

    def on_focused(self) -> None:
        """Light up, everywhere, what the field is about."""
        self._desk.select(self._row.place)
        self._row.on_field_focused()

    def _refuse(self, sentence: str) -> None:
        self._row.trouble = sentence
        self._row.say(sentence, "attend")
        self.show_trouble(True)
        self.setAccessibleDescription(sentence)
        label = self.figure.label
        said = sentence if sentence.startswith(label) else f"{label}: {sentence}"
        self._desk.refuse(self.figure.name, said)

    def _calm(self) -> None:
        """Nothing is wrong with what it holds."""
        if self.show_trouble(False):
            self._row.trouble = ""
            self.setAccessibleDescription(self.placeholderText())


class FigureRow(Row):
    """One figure, or the same figure said in several ways side by side."""

    def __init__(
        self,
        desk: Desk,
        *figures: Figure,
        label: str = "",
        width: int = FIELD_WIDTH,
        place: Place | None = None,
    ) -> None:
        super().__init__(figures[0].name, label or figures[0].label)
        self.desk = desk
        self.place = place or Place(field=figures[0].name)
        self.trouble = ""
        """Why what was typed could not be read."""
        self.fields = [Field(desk, figure, self, width) for figure in figures]
        for field in self.fields:
            self.line.addWidget(field)
        self.label.setBuddy(self.fields[0])

    @property
    def field(self) -> Field:
        """The first of its fields."""
        return self.fields[0]

    def forget(self) -> None:
        """Hold on to nothing that was typed."""
        self.trouble = ""
        for field in self.fields:
            field.forget()

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored, and what is to be said about it; what she has to put right comes first."""
        for field in self.fields:
            field.show_project(picture)
        if not self.trouble:
            self.say(*self.remark(picture))

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """What the draft has to say about this field."""
        return found_about(self.name, picture)

    def target(self) -> QWidget | None:
        """Its first field."""
        return self.fields[0]

    def on_field_focused(self) -> None:
        """For a row that does something more while it has the focus."""


def found_about(name: str, picture: Picture) -> tuple[str, Mark | None]:
    """The first finding that names the field and wants attention, with its mark."""
    for finding in picture.findings:
        if _wants_attention(finding) and finding.place.field == name:
            return finding.text(picture.project.unit, picture.project.fraction), mark_of(finding)
    return "", None


def _wants_attention(finding: Finding) -> bool:
    return finding.severity != "note"

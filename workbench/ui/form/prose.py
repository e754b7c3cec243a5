"""Texts of a project: a line in a field, or a few lines of prose."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from workbench.document import Picture, Project
from workbench.frozen import dataclass
from workbench.ui.desk import Desk
from workbench.ui.form.row import EDGE, Row
from workbench.ui.look import GRID, fonts


@dataclass(frozen=True)
class Written:
    """A text, as a figure that is typed and never stepped."""

    name: str
    """The path by which findings and files know it."""
    label: str
    step_name: str
    """What undo calls it."""
    get: Callable[[Project], str]
    put: Callable[[Project, str], Project]

    def stamp(self, project: Project) -> object:
        """The text."""
        return self.get(project)

    def text(self, project: Project) -> str:
        """The text as it is stored."""
        return self.get(project)

    def suffix(self, project: Project) -> str:
        """None."""
        return ""

    def typed(self, project: Project, text: str) -> Project:
        """The project with another text, without the blanks at either end."""
        return self.put(project, text.strip())

    def moved(self, project: Project, steps: int) -> Project:
        """A text has no next one."""
        return project


class Prose(QPlainTextEdit):
    """A few lines of text, handed in when she leaves them."""

    def __init__(self, desk: Desk, written: Written, row: ProseRow) -> None:
        super().__init__(row)
        self._desk, self._written, self._row = desk, written, row
        self._kept = ""
        self.setAccessibleName(written.label)
        self.setTabChangesFocus(True)
        self.setFont(fonts().body)
        self.setFixedHeight(16 * GRID)

    def show_text(self, text: str) -> None:
        """Show what is stored; what is being written stays while that is the same."""
        if text != self._kept:
            self._kept = text
            self._put(text)

    def forget(self) -> None:
        """Hold on to nothing that was written."""
        self._put(self._kept)

    def commit(self) -> None:
        """Hand in what was written."""
        text = self.toPlainText()
        if text == self._kept:
            return
        try:
            project = self._written.typed(self._desk.project, text)
        except ValueError as error:
            self._row.say(str(error), "attend")
            self._desk.refuse(self._written.name, str(error))
            return
        self._row.say("")
        self._kept = self._written.text(project)
        self._desk.apply(self._written.step_name, project)

    def _put(self, text: str) -> None:
        with QSignalBlocker(self):
            self.setPlainText(text)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape brings back what was there; the rest is writing."""
        if event.key() == Qt.Key.Key_Escape:
            self._put(self._kept)
            self._row.say("")
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving hands in; a menu over the text is not leaving it."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.commit()


class ProseRow(Row):
    """A label over a few lines of text."""

    def __init__(self, desk: Desk, written: Written) -> None:
        super().__init__(written.name, written.label)
        self.written = written
        self.prose = Prose(desk, written, self)
        self.label.setBuddy(self.prose)
        self.column.addWidget(self.prose)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored."""
        self.prose.show_text(self.written.text(picture.project))

    def forget(self) -> None:
        """Hold on to nothing that was written."""
        self.prose.forget()
        self.say("")

    def target(self) -> QWidget | None:
        """The text."""
        return self.prose

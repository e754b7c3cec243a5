"""Unsaved work of a program that ended without saving, offered when the window is next opened."""

from __future__ import annotations

from contextlib import suppress

from PySide6.QtCore import QObject

from workbench.document import FileTrouble, new_project
from workbench.document.keeping import Unsaved, drop, left_over
from workbench.ui.desk import Desk
from workbench.ui.files import STYLE_NAMES, Files
from workbench.ui.keeping import Keeping
from workbench.ui.keeping_questions import said_when

TAKEN_UP = "Unsaved work taken up"


class LeftOver(QObject):
    """Offers it, and leaves it where it is until she has taken it up or thrown it away."""

    def __init__(self, desk: Desk, files: Files, keeping: Keeping, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk, self._files, self._keeping = desk, files, keeping

    def offer(self) -> None:
        """Ask about each in turn, the latest first, until one is taken up; the rest waits on."""
        works = [work for work in left_over(self._keeping.folder) if not _is_saved(work)]
        for number, work in enumerate(works):
            name, questions = _name_of(work), self._keeping.questions
            answer = questions.left(name, said_when(work.when), told(work), len(works) - number - 1)
            if answer == "discard" and questions.sure(name):
                with suppress(FileTrouble):
                    drop(work.file)
            elif answer == "take" and self.take_up(work):
                return

    def take_up(self, work: Unsaved) -> bool:
        """Whether the work is on the desk now, as one step over what is in its file, and kept anew."""
        if not self._files.may_leave():
            return False
        base = work.base()
        if base is None:
            self._files.put(new_project(work.project.design.style, work.project.unit), None)
        elif not self._files.put_read(base, work.path):
            return False
        self._desk.apply(TAKEN_UP, work.project)
        self._desk.now()
        # the old copy goes only when there is a new one
        if self._keeping.keep_now():
            with suppress(FileTrouble):
                drop(work.file)
        return True


def told(work: Unsaved) -> tuple[str, ...]:
    """What it is about: how many steps, whether the file is another by now, and which fields differ."""
    count = len(work.steps)
    lines = [f"{count} {'step' if count == 1 else 'steps'} not saved"] if count else []
    base = work.base()
    if work.path is None:
        lines.append("It was never saved to a file")
    elif base is None:
        lines.append(f"Its file {work.path.name} is no longer there or cannot be read")
    elif base.digest != work.digest:
        lines.append(f"Its file {work.path.name} has been saved since by another program")
    return (*lines, *work.compared())


def _name_of(work: Unsaved) -> str:
    if work.project.client.name:
        return work.project.client.name
    return work.path.stem if work.path else STYLE_NAMES[work.project.design.style]


def _is_saved(work: Unsaved) -> bool:
    """Whether its file holds all of it: the program ended between saving and clearing away."""
    base = work.base()
    if base is None or base.project != work.project:
        return False
    with suppress(FileTrouble):
        drop(work.file)
    return True

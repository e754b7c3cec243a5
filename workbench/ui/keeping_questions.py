"""What is asked about work that might be lost: each a dialog that loses nothing when it is closed."""

from __future__ import annotations

import time
from collections.abc import Sequence
from pathlib import Path
from typing import Literal, TypeVar

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox, QWidget

from workbench.document.keeping import Holder

Held = Literal["copy", "take", "leave"]
Changed = Literal["mine", "theirs", "save_as", "stay"]
Left = Literal["take", "discard", "later"]

_MOST_LINES = 12
_Answer = TypeVar("_Answer", bound=str)
_Role = QMessageBox.ButtonRole


class KeepingQuestions:
    """Asks in dialogs over a window."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self._parent = parent

    def held(self, path: Path, holder: Holder, to_save: bool) -> Held:
        """What to do about a project that another running program has open."""
        who = f"It is open on “{holder.machine}” since {said_when(holder.since)}"
        seen = f"{who}, last seen there {said_when(holder.seen)}."
        if to_save:
            answers: dict[Held, str] = {"take": "Save there all the same", "leave": "Do not save"}
        else:
            answers = {"copy": "Open a copy", "take": "Open it all the same", "leave": "Do not open"}
            seen += " Two that save the same file write over each other’s work; a copy is safe from that."
        return self._asked(f"“{path.name}” is open elsewhere", seen, answers, "leave")

    def changed(self, path: Path) -> Changed:
        """What to do about a file that somebody else has written since it was opened here."""
        answers: dict[Changed, str] = {
            "mine": "Keep mine",
            "theirs": "Open theirs",
            "save_as": "Save mine as…",
            "stay": "Not now",
        }
        more = (
            "It was written by another program or another machine. Whichever you keep in the file, "
            "the other one stays among its earlier versions."
        )
        return self._asked(f"“{path.name}” has changed on disk since you opened it", more, answers, "stay")

    def left(self, name: str, when: str, lines: Sequence[str], more: int) -> Left:
        """What to do about unsaved work that a program which has ended left behind."""
        answers: dict[Left, str] = {"take": "Take it up", "discard": "Throw it away", "later": "Not now"}
        shown = [f"•  {line}" for line in lines[:_MOST_LINES]]
        if len(lines) > _MOST_LINES:
            shown.append(f"and {len(lines) - _MOST_LINES} more")
        if more:
            shown.append(f"\nUnsaved work at {more} more {'project' if more == 1 else 'projects'} waits too.")
        title = f"Unsaved work at “{name}”, kept {when}, when the program ended without saving"
        return self._asked(title, "\n".join(shown), answers, "later")

    def sure(self, name: str) -> bool:
        """Whether unsaved work is really to be thrown away; it cannot be had again."""
        answers: dict[Literal["away", "keep"], str] = {"away": "Throw it away", "keep": "Keep it"}
        more = "It cannot be had again afterwards."
        return self._asked(f"Throw the unsaved work at “{name}” away?", more, answers, "keep") == "away"

    def _asked(self, text: str, more: str, answers: dict[_Answer, str], closed: _Answer) -> _Answer:
        """The answer picked; ``closed`` is what closing the dialog means, and what Enter does."""
        box = QMessageBox(self._parent)
        # what she has typed is shown as she typed it, never as mark-up
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setWindowTitle("Before you go on")
        box.setText(text)
        box.setInformativeText(more)
        buttons = {box.addButton(word, _Role.AcceptRole): answer for answer, word in answers.items()}
        for button, answer in buttons.items():
            if answer == closed:
                box.setEscapeButton(button)
                box.setDefaultButton(button)
        box.exec()
        clicked = box.clickedButton()
        answer = next((answer for button, answer in buttons.items() if button is clicked), closed)
        box.deleteLater()
        return answer


def said_when(seconds: float, closely: bool = False) -> str:
    """A moment as date and time of day here, to the second where ``closely``.

    Clocks that were wrong may give any number.
    """
    try:
        return time.strftime(f"%Y-%m-%d %H:%M{':%S' if closely else ''}", time.localtime(seconds))
    except (OverflowError, OSError, ValueError):
        return "at a time that its clock did not know"

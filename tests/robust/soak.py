"""A long day at the window, in a program of its own; ``test_soak`` starts it.

It edits, undoes, turns from place to place and opens its project again every so often; each
time that the same project is freshly open it writes down, as a line of JSON, what it holds.
"""

from __future__ import annotations

import gc
import json
import os
import sys
import threading
import traceback
from dataclasses import asdict, dataclass
from pathlib import Path
from random import Random
from types import TracebackType

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent, QObject, QTimer, QtMsgType, qInstallMessageHandler
from PySide6.QtWidgets import QApplication

from tests.robust import SEED
from tests.robust.edits import edited
from tests.robust.samples import full_project
from tests.ui.conftest import Answers
from workbench.document import read_project, write_project
from workbench.ui.actions import PLACES
from workbench.ui.settings import Settings
from workbench.ui.style import dress
from workbench.ui.window import Window

_OPENED_EVERY = 250
_TURNED_EVERY = 40


@dataclass(frozen=True)
class Held:
    """What the program holds at one moment."""

    edits: int
    memory_mb: float
    handles: int
    threads: int
    objects: int
    widgets: int
    timers: int
    active_timers: int


class Day:
    """The window with a project in it, and what went wrong so far."""

    def __init__(self, application: QApplication, folder: Path) -> None:
        self.application, self.folder = application, folder
        self.path = folder / "soak.bodice"
        self.wrong: list[str] = []
        self.edits = 0
        self.dice = Random(f"{SEED} soak")
        write_project(full_project(), self.path)
        answers = Answers()
        answers.keep = "discard"
        self.answers = answers
        self.window = Window(Settings(folder / "window.ini"), answers, (), folder / "data")
        dress("light")
        self.window.resize(1280, 720)
        self.window.show()

    def on_message(self, kind: QtMsgType, _: object, text: str) -> None:
        if kind != QtMsgType.QtDebugMsg and "This plugin does not support" not in text:
            self.wrong.append(f"Qt: {text}")

    def on_error(self, kind: type[BaseException], error: BaseException, _: TracebackType | None) -> None:
        where = traceback.extract_tb(error.__traceback__)[-3:]
        at = ", ".join(f"{frame.filename.rpartition('workbench/')[2]}:{frame.lineno}" for frame in where)
        self.wrong.append(f"edit {self.edits}: {kind.__name__}: {error} ({at})")

    def settle(self) -> None:
        self.application.processEvents()
        self.application.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)

    def open(self) -> None:
        self.window.files.open_path(self.path)
        for name in PLACES:
            self.turn(name)
        self.turn("draft")
        self.settle()

    def turn(self, name: str) -> None:
        self.window.deeds[name].trigger()
        self.settle()

    def one(self) -> None:
        """One edit as a pane makes it, or a step back; the window is painted after it."""
        desk, roll = self.window.desk, self.dice.random()
        if roll < 0.15:
            desk.undo()
        elif roll < 0.25:
            desk.redo()
        elif roll < 0.4:
            desk.begin("drag")
            for _ in range(2):
                desk.preview(edited(desk.project, self.dice)[1])
                self.settle()
            desk.commit() if roll < 0.35 else desk.cancel()
        else:
            desk.apply(*edited(desk.project, self.dice))
        self.edits += 1
        self.settle()

    def held(self) -> Held:
        gc.collect()
        pages = int(Path("/proc/self/statm").read_text().split()[1])
        timers = self.window.findChildren(QTimer)
        return Held(
            self.edits,
            round(pages * os.sysconf("SC_PAGE_SIZE") / 1e6, 1),
            len(os.listdir("/proc/self/fd")),
            threading.active_count(),
            len(self.window.findChildren(QObject)),
            len(self.application.allWidgets()),
            len(timers),
            sum(timer.isActive() for timer in timers),
        )


def main(edits: int, folder: Path) -> int:
    """Work so long; 1 where anything went wrong meanwhile."""
    application = QApplication(sys.argv[:1])
    day = Day(application, folder)
    qInstallMessageHandler(day.on_message)
    sys.excepthook = day.on_error
    for number in range(edits + 1):
        if number % _OPENED_EVERY == 0:
            day.open()
            print(json.dumps(asdict(day.held())), flush=True)
        if number % _TURNED_EVERY == 0:
            day.turn(day.dice.choice(["draft", *PLACES]))
        day.one()
    assert read_project(day.path) == full_project()
    # what is told is told in words; nothing of it may be about the program itself
    print(json.dumps({"wrong": day.wrong, "told": day.answers.told}), flush=True)
    return 1 if day.wrong else 0

"""Long work shows itself and can be left off; meanwhile the window answers."""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from threading import Event
from time import perf_counter

import pytest
from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtWidgets import QVBoxLayout
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.document import Session, exported, picture_of, printed, read_project
from workbench.exchange import ExportChoice
from workbench.ui.ahead import MODULES, read_ahead
from workbench.ui.desk import Desk
from workbench.ui.job import FileJob, Job
from workbench.ui.writing_dialog import WritingDialog

LATE_MS = 50.0
"""The longest that the window may keep a hand waiting (own choice; common practice, no source)."""
TRIES = 4
"""The best of so many counts: the machine has other things to do as well."""


class Maker:
    """Makes a file when it is told to."""

    def __init__(self) -> None:
        self.go, self.begun = Event(), Event()

    def __call__(self) -> bytes:
        self.begun.set()
        self.go.wait(10)
        return b"made"


class Dialog(WritingDialog):
    """One with nothing but the buttons."""

    def __init__(self, path: Path, maker: Maker) -> None:
        super().__init__("Try", "Write it…")
        self.wanted, self.maker = path, maker
        self.arrange_beside(QVBoxLayout())

    def on_write(self) -> None:
        self.write_beside(self.wanted, self.maker)


@pytest.fixture
def maker() -> Maker:
    return Maker()


@pytest.fixture
def dialog(qtbot: QtBot, dressed: None, tmp_path: Path, maker: Maker) -> Dialog:
    return on_screen(qtbot, Dialog(tmp_path / "out.pdf", maker), 500, 300)


def test_what_is_written_shows_itself(qtbot: QtBot, dialog: Dialog, maker: Maker) -> None:
    assert dialog.busy.isHidden()
    dialog.write.click()
    assert dialog.busy.isVisible()
    assert dialog.leave.isVisible()
    assert dialog.write.isHidden()
    maker.go.set()
    qtbot.waitUntil(lambda: dialog._job is None)
    assert dialog.busy.isHidden()
    assert dialog.wanted.read_bytes() == b"made"


def test_left_off_nothing_is_written_and_what_was_there_stays(
    qtbot: QtBot, dialog: Dialog, maker: Maker
) -> None:
    dialog.wanted.write_bytes(b"before")
    dialog.write.click()
    job = dialog._job
    assert job is not None
    assert maker.begun.wait(5)
    dialog.leave.click()
    assert dialog.state.accessibleName() == "Left off. Nothing was written."
    assert dialog.write.isVisible()
    with qtbot.waitSignal(job.finished):
        maker.go.set()
    assert dialog.wanted.read_bytes() == b"before"


def test_closing_leaves_off_without_a_wait(qtbot: QtBot, dialog: Dialog, maker: Maker) -> None:
    dialog.write.click()
    job = dialog._job
    assert job is not None
    began = perf_counter()
    dialog.reject()
    assert perf_counter() - began < 2.0, "the maker waits ten seconds"
    assert not dialog.isVisible()
    with qtbot.waitSignal(job.finished):
        maker.go.set()
    assert not dialog.wanted.exists()


def test_it_can_be_written_again_after_it_was_left_off(qtbot: QtBot, dialog: Dialog, maker: Maker) -> None:
    dialog.write.click()
    job = dialog._job
    assert job is not None
    dialog.leave.click()
    with qtbot.waitSignal(job.finished):
        maker.go.set()
    dialog.write.click()
    qtbot.waitUntil(lambda: dialog._job is None)
    assert dialog.wanted.read_bytes() == b"made"


def test_what_is_written_cannot_be_left_off(qtbot: QtBot, tmp_path: Path) -> None:
    job = FileJob(tmp_path / "out", lambda: b"made")
    job.start()
    job.wait()
    assert not job.leave_off()
    assert (tmp_path / "out").read_bytes() == b"made"


def test_the_other_places_are_read_ahead(qtbot: QtBot) -> None:
    job = read_ahead()
    job.hold()
    assert job.error is None
    assert all(name in sys.modules for name in MODULES)


# --- the event loop --------------------------------------------------------------------------


class Watch(QObject):
    """A timer that notes how late it was, in ms."""

    def __init__(self) -> None:
        super().__init__()
        self.worst = 0.0
        self._last = perf_counter()
        self._timer = QTimer(self)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self.note)
        self._timer.start(2)

    def note(self) -> None:
        """One turn of the loop."""
        now = perf_counter()
        self.worst = max(self.worst, 1000.0 * (now - self._last))
        self._last = now


def lateness(qtbot: QtBot, work: Callable[[], object]) -> float:
    """The best of a few tries of the worst lateness while some work is done beside the window, ms."""
    tries = []
    for _ in range(TRIES):
        watch, job = Watch(), Job(work)
        with qtbot.waitSignal(job.finished, timeout=30_000):
            job.start()
        watch.note()
        assert job.error is None
        job.wait()
        tries.append(watch.worst)
    return min(tries)


@pytest.fixture(scope="module")
def largest() -> Desk:
    """The demo with the most panels."""
    desk = Desk(Session(read_project(Path("demo_projects/eight_panel_gown.bodice"))))
    assert desk.picture.cutting is not None
    return desk


def test_the_window_answers_while_all_sheets_are_printed(qtbot: QtBot, largest: Desk) -> None:
    paper = replace(largest.project.paper, layers=("fashion", "strength", "lining"))
    assert lateness(qtbot, lambda: printed(largest.picture, paper)) < LATE_MS


@pytest.mark.parametrize("kind", ["svg", "dxf", "pdf"])
def test_the_window_answers_while_it_is_exported(qtbot: QtBot, largest: Desk, kind: str) -> None:
    choice = ExportChoice()
    assert lateness(qtbot, lambda: exported(largest.picture, kind, choice)) < LATE_MS  # type: ignore[arg-type]  # one of the three above


def test_the_window_answers_while_a_file_is_read_and_drafted(qtbot: QtBot) -> None:
    path = Path("demo_projects/eight_panel_gown.bodice")
    assert lateness(qtbot, lambda: picture_of(read_project(path)).cutting) < LATE_MS

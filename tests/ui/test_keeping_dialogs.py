"""What is asked and shown about kept work, in the real dialogs, and a window that is really killed."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtWidgets import QAbstractButton, QMessageBox
from pytestqt.qtbot import QtBot

from workbench.document import new_project, set_client, set_measurement, to_bytes
from workbench.document.keeping import Holder, keep_version, left_over, versions_of
from workbench.ui.desk import Desk
from workbench.ui.keeping_questions import KeepingQuestions
from workbench.ui.settings import Settings
from workbench.ui.versions_dialog import VersionsDialog
from workbench.ui.window import Window

HOLDER = Holder("atelier", "", "", "", 1, "", 1e9, 1e9)


@pytest.fixture
def pressed(monkeypatch: pytest.MonkeyPatch) -> dict[str, Any]:
    """Which button is pressed, by its words, and what stood in the box."""
    press: dict[str, Any] = {"words": None, "said": "", "default": ""}

    def run(box: QMessageBox) -> int:
        press["said"] = f"{box.text()}\n{box.informativeText()}"
        press["default"] = box.defaultButton().text()
        return 0

    def clicked(box: QMessageBox) -> QAbstractButton | None:
        if press["words"] is None:
            return box.escapeButton()
        return next(button for button in box.buttons() if button.text() == press["words"])

    monkeypatch.setattr(QMessageBox, "exec", run)
    monkeypatch.setattr(QMessageBox, "clickedButton", clicked)
    return press


@pytest.mark.parametrize(
    ("words", "answer"),
    [("Open a copy", "copy"), ("Open it all the same", "take"), ("Do not open", "leave"), (None, "leave")],
)
def test_a_held_project(words: str | None, answer: str, pressed: dict[str, Any], dressed: None) -> None:
    pressed["words"] = words
    assert KeepingQuestions().held(Path("anna.bodice"), HOLDER, to_save=False) == answer
    assert "atelier" in pressed["said"]
    assert pressed["default"] == "Do not open"


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ("Keep mine", "mine"),
        ("Open theirs", "theirs"),
        ("Save mine as…", "save_as"),
        ("Not now", "stay"),
        (None, "stay"),
    ],
)
def test_a_changed_file(words: str | None, answer: str, pressed: dict[str, Any], dressed: None) -> None:
    pressed["words"] = words
    assert KeepingQuestions().changed(Path("anna.bodice")) == answer


@pytest.mark.parametrize(
    ("words", "answer"),
    [("Take it up", "take"), ("Throw it away", "discard"), ("Not now", "later"), (None, "later")],
)
def test_left_over_work(words: str | None, answer: str, pressed: dict[str, Any], dressed: None) -> None:
    pressed["words"] = words
    lines = [f"line {number}" for number in range(20)]
    assert KeepingQuestions().left("<b>Anna</b>", "today", lines, 2) == answer
    assert "line 11" in pressed["said"]
    assert "line 12" not in pressed["said"]
    assert "and 8 more" in pressed["said"]
    assert "<b>Anna</b>" in pressed["said"]


def test_nothing_is_thrown_away_by_closing(pressed: dict[str, Any], dressed: None) -> None:
    assert not KeepingQuestions().sure("Anna")
    pressed["words"] = "Throw it away"
    assert KeepingQuestions().sure("Anna")


# --- earlier versions ------------------------------------------------------------------------


@pytest.fixture
def dialog(desk: Desk, tmp_path: Path, qtbot: QtBot) -> VersionsDialog:
    """Three versions: one that cannot be drafted, another waist, and the one on the desk."""
    path = tmp_path / "anna.bodice"
    for project in (new_project(), set_measurement(desk.project, "waist_girth", "27"), desk.project):
        keep_version(tmp_path / "data", path, to_bytes(project))
    dialog = VersionsDialog(desk, versions_of(tmp_path / "data", path))
    qtbot.addWidget(dialog)
    return dialog


def test_the_latest_is_the_one_on_the_desk(dialog: VersionsDialog) -> None:
    assert dialog.list.count() == 3
    assert dialog.said.text() == "The same as the project as it stands."
    assert not dialog.restore.isEnabled()


def test_another_is_drawn_from_its_draft_with_what_differs(dialog: VersionsDialog) -> None:
    dialog.list.setCurrentRow(1)
    assert dialog.said.text() == "•  Waist: 27 in, now 28 in"
    assert len(dialog.picture.outlines) > 3
    assert not dialog.grab().isNull()


def test_one_that_cannot_be_drafted_is_shown_in_words(dialog: VersionsDialog) -> None:
    dialog.list.setCurrentRow(2)
    assert dialog.picture.outlines == ()
    assert "Waist: not taken" in dialog.said.text()
    assert not dialog.grab().isNull()


def test_had_back_it_is_one_step_and_undo_takes_it_back(dialog: VersionsDialog, desk: Desk) -> None:
    before = desk.project
    dialog.list.setCurrentRow(1)
    dialog.restore.click()
    assert desk.project.measurements["waist_girth"].typed == "27"
    assert desk.undo_name is not None
    assert desk.undo_name.startswith("Version of ")
    desk.undo()
    assert desk.project == before


def test_a_damaged_one_is_said_and_not_had_back(desk: Desk, tmp_path: Path, qtbot: QtBot) -> None:
    version = keep_version(tmp_path / "data", tmp_path / "anna.bodice", b"{")
    dialog = VersionsDialog(desk, [version])
    qtbot.addWidget(dialog)
    assert "damaged" in dialog.said.text()
    assert not dialog.restore.isEnabled()


def test_with_none_kept_it_says_when_that_begins(desk: Desk, qtbot: QtBot) -> None:
    dialog = VersionsDialog(desk, [])
    qtbot.addWidget(dialog)
    assert "when it is saved" in dialog.said.text()
    assert not dialog.restore.isEnabled()


# --- the window ------------------------------------------------------------------------------


def test_the_menu_has_them_once_a_project_is_open(
    qtbot: QtBot, dressed: None, settings: Settings, answers: Any, tmp_path: Path
) -> None:
    window = Window(settings, answers, data=tmp_path / "data")
    qtbot.addWidget(window)
    window.show()
    assert not window.deeds["versions"].isEnabled()
    window.files.put(new_project(), None)
    assert window.deeds["versions"].isEnabled()


def test_the_action_opens_the_dialog(
    qtbot: QtBot, dressed: None, settings: Settings, answers: Any, tmp_path: Path, monkeypatch: Any
) -> None:
    shown: list[int] = []
    monkeypatch.setattr(VersionsDialog, "exec", lambda dialog: shown.append(dialog.list.count()))
    window = Window(settings, answers, data=tmp_path / "data")
    qtbot.addWidget(window)
    window.files.put(new_project(), None)
    answers.target = tmp_path / "anna.bodice"
    assert window.files.save()
    window.deeds["versions"].trigger()
    assert shown == [1]


_WINDOW = """
import sys
from pathlib import Path
from PySide6.QtWidgets import QApplication
from workbench.document import set_client
from workbench.ui.settings import Settings
from workbench.ui.window import Window

application = QApplication([])
folder = Path(sys.argv[1])
window = Window(Settings(folder / "window.ini"), data=folder / "data")
window.show()
window.files.new("under_bust")
window.desk.apply("Client", set_client(window.desk.project, name="Anna"))
window.keeping.soon.timeout.connect(lambda: print("kept", flush=True))
window.keeping.soon.setInterval(1)
application.exec()
"""


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="tells the dead from the living by /proc")
def test_after_a_window_was_killed_its_work_is_there(tmp_path: Path) -> None:
    env = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    command = [sys.executable, "-c", _WINDOW, str(tmp_path)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=env) as window:
        try:
            assert window.stdout is not None
            assert window.stdout.readline() == "kept\n"
        finally:
            window.kill()
    [work] = left_over(tmp_path / "data")
    assert work.project == set_client(new_project(), name="Anna")
    assert work.steps == ("Client",)

"""Dialogs by key and by ear: names, Tab, letters of their own, no word cut off, Escape."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Answers
from tests.ui.test_access_window import in_tips_alone, letter, missed_by_tab, nameless, visible
from tests.ui.test_text_room import cut_off
from workbench.ui.desk import Desk
from workbench.ui.export_dialog import ExportDialog
from workbench.ui.files import Files
from workbench.ui.form.days_dialog import DaysDialog
from workbench.ui.help.window import HelpWindow
from workbench.ui.print_dialog import PrintDialog
from workbench.ui.settings import Settings
from workbench.ui.styles import SaveShape, StyleChooser
from workbench.ui.versions_dialog import VersionsDialog

Maker = Callable[[Desk, Files, Answers, Path], QWidget]
MAKERS: dict[str, Maker] = {
    "print": lambda desk, files, answers, _folder: PrintDialog(desk, files, answers),
    "export": lambda desk, files, answers, _folder: ExportDialog(desk, files, answers),
    "versions": lambda desk, _files, _answers, _folder: VersionsDialog(desk, ()),
    "days": lambda desk, _files, _answers, _folder: DaysDialog(desk),
    "keep a shape": lambda desk, _files, _answers, folder: SaveShape(desk, folder),
    "shapes": lambda desk, _files, _answers, folder: StyleChooser(desk, folder),
    "help": lambda _desk, _files, _answers, _folder: HelpWindow(),
}


@pytest.fixture(params=list(MAKERS))
def dialog(
    qtbot: QtBot,
    desk: Desk,
    settings: Settings,
    answers: Answers,
    tmp_path: Path,
    request: pytest.FixtureRequest,
) -> QWidget:
    made = MAKERS[request.param](desk, Files(desk, settings, answers), answers, tmp_path)
    qtbot.addWidget(made)
    made.show()
    made.activateWindow()
    qtbot.waitUntil(made.isActiveWindow)
    return made


def test_whatever_takes_keys_has_a_name(dialog: QWidget) -> None:
    assert nameless(dialog) == []


def test_nothing_is_said_in_a_tool_tip_alone(dialog: QWidget) -> None:
    assert in_tips_alone(dialog) == []


def test_tab_goes_round(dialog: QWidget) -> None:
    missed = missed_by_tab(dialog)
    assert not missed, "\n".join(missed)


def test_no_word_is_cut_off(dialog: QWidget) -> None:
    assert list(cut_off(dialog)) == []


def test_no_letter_picks_two_things(dialog: QWidget) -> None:
    words = [
        letter(widget.text()) for widget in visible(dialog) if isinstance(widget, QAbstractButton | QLabel)
    ]
    assert [one for one, count in Counter(filter(None, words)).items() if count > 1] == []


def test_escape_closes_it(dialog: QWidget) -> None:
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()

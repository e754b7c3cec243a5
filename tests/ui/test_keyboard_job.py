"""The whole of a first job without a mouse: new client, measurements, reduction, neckline, paper.

Nothing is given the focus and no method of the program is called: there are only keys, and what they led to.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pypdfium2  # type: ignore[import-untyped]  # it comes without types
import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Answers, let_go
from workbench.ui.print_dialog import PrintDialog
from workbench.ui.settings import Settings
from workbench.ui.window import Window

INCH = 25.4
CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
NONE = Qt.KeyboardModifier.NoModifier
TAKEN = {"Bust": "38 1/2", "Waist": "29 1/8", "Underbust": "32", "Top hip": "36"}
_MOST_TABS = 120


@pytest.fixture
def window(qtbot: QtBot, dressed: None, settings: Settings, answers: Answers) -> Iterator[Window]:
    window = Window(settings, answers)
    qtbot.addWidget(window)
    window.resize(1280, 720)
    with qtbot.waitExposed(window):
        window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    yield window
    let_go(window)


def has_keys() -> QWidget:
    """What the keys go to."""
    widget = QApplication.focusWidget() or QApplication.activeWindow()
    assert widget is not None
    return widget


def press(key: Qt.Key, modifier: Qt.KeyboardModifier = NONE, times: int = 1) -> None:
    for _ in range(times):
        QTest.keyClick(has_keys(), key, modifier)


def typed(words: str) -> None:
    QTest.keyClicks(has_keys(), words)


def tab_to(name: str, *, back: bool = False) -> None:
    """Press Tab until something of that name has the keys."""
    for _ in range(_MOST_TABS):
        if has_keys().accessibleName() == name:
            return
        press(Qt.Key.Key_Backtab if back else Qt.Key.Key_Tab, SHIFT if back else NONE)
    pytest.fail(f"Tab never came to {name}")


def measured(window: Window) -> None:
    """A new client, as far as her measurements."""
    press(Qt.Key.Key_N, CTRL)
    for name, words in TAKEN.items():
        tab_to(name)
        typed(words)
        press(Qt.Key.Key_Return)
    window.desk.now()


def test_a_new_client_is_measured(window: Window) -> None:
    measured(window)
    body = window.desk.project.measurements
    assert body["bust_girth"].mm == pytest.approx(38.5 * INCH)
    assert body["waist_girth"].mm == pytest.approx(29.125 * INCH)
    assert window.desk.picture.current


def test_the_waist_is_drawn_in_on_the_girth_strip(window: Window) -> None:
    measured(window)
    before = window.desk.project.design.reductions.waist
    tab_to("Girth strip")
    press(Qt.Key.Key_Up)
    press(Qt.Key.Key_Left, times=4)
    assert window.desk.project.design.reductions.waist == pytest.approx(before + 0.5 * INCH, abs=0.01)


def test_a_point_of_the_neckline_is_moved_and_put_back(window: Window) -> None:
    measured(window)
    tab_to("Canvas with the panels")
    press(Qt.Key.Key_H, times=2)
    assert window.board.canvas.accessibleDescription().startswith("Neckline point 2")
    draft = window.desk.picture.outcome.draft if window.desk.picture.outcome else None
    assert draft is not None
    before = draft.line("neckline").points[1].t
    press(Qt.Key.Key_Up, SHIFT)
    after = window.desk.picture.outcome.draft if window.desk.picture.outcome else None
    assert after is not None
    assert after.line("neckline").points[1].t == pytest.approx(before + 0.5 * INCH, abs=0.25)
    press(Qt.Key.Key_Z, CTRL)
    window.desk.now()
    back = window.desk.picture.outcome.draft if window.desk.picture.outcome else None
    assert back is not None
    assert back.line("neckline").points[1].t == pytest.approx(before)


def test_it_is_printed_to_true_size(window: Window, answers: Answers, tmp_path: Path, qtbot: QtBot) -> None:
    measured(window)
    answers.target = tmp_path / "panels.pdf"
    wrong: list[str] = []

    def in_dialog() -> None:
        dialog = QApplication.activeModalWidget()
        if not isinstance(dialog, PrintDialog):
            wrong.append("the dialog did not come")
            return
        try:
            qtbot.waitUntil(dialog.isActiveWindow, timeout=20_000)
            met: list[QWidget] = []
            while has_keys() is not dialog.write and len(met) < _MOST_TABS:
                met.append(has_keys())
                press(Qt.Key.Key_Tab)
            if len(met) == _MOST_TABS:
                wrong.append(f"Tab came only to {[type(widget).__name__ for widget in met[-8:]]}")
            press(Qt.Key.Key_Space)
            qtbot.waitUntil(lambda: dialog._job is None, timeout=30_000)
        finally:
            if dialog.isVisible():
                QTest.keyClick(dialog, Qt.Key.Key_Escape)

    QTimer.singleShot(0, in_dialog)
    press(Qt.Key.Key_P, CTRL)
    assert wrong == []
    assert len(pypdfium2.PdfDocument(answers.target)) > 1


def test_every_place_is_reached_and_left_by_key(window: Window) -> None:
    measured(window)
    for number, place in enumerate(
        ("draft", "pieces", "beads", "cloth", "quote", "marking", "sewing", "fittings")
    ):
        press(Qt.Key(Qt.Key.Key_1.value + number), CTRL)
        assert window.place == place
        press(Qt.Key.Key_Tab)
        assert has_keys() is not window
    assert not any(
        isinstance(widget, QDialog) and widget.isVisible() for widget in QApplication.topLevelWidgets()
    )

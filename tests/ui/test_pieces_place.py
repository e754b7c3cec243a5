"""The pieces place in the window: how it is reached, and that it costs nothing out of sight."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice
from workbench.document import Session, new_project
from workbench.draft import Place
from workbench.ui.settings import Settings
from workbench.ui.window import Window


@pytest.fixture
def window(qtbot: QtBot, dressed: None, settings: Settings, answers: Any) -> Window:
    window = Window(settings, answers)
    qtbot.addWidget(window, before_close_func=let_go)
    window.resize(1280, 720)
    window.files.put(bodice(), None)
    window.show()
    return window


def let_go(window: Window) -> None:
    """A test may leave unsaved work behind."""
    window.desk.session.mark_saved(Path("nowhere.bodice"))


def test_a_key_turns_to_the_pieces_and_another_back(window: Window) -> None:
    QTest.keyClick(window, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert window.place == "pieces"
    assert window.pieces.isVisible()
    QTest.keyClick(window, Qt.Key.Key_1, Qt.KeyboardModifier.ControlModifier)
    assert window.place == "draft"
    assert window.board.isVisible()


def test_so_does_a_click_in_the_corner(window: Window) -> None:
    QTest.mouseClick(window.places.choice.button("pieces"), Qt.MouseButton.LeftButton)
    assert window.place == "pieces"
    assert window.places.choice.value == "pieces"


def test_nothing_is_cut_before_the_place_is_turned_to(window: Window) -> None:
    assert window._pieces is None


def test_out_of_sight_nothing_is_worked_out(window: Window) -> None:
    window.deeds["pieces"].trigger()
    window.deeds["draft"].trigger()
    before = window.pieces.bench.cutting
    window.desk.apply("Bust", bodice("over_bust"))
    window.desk.now()
    window.pieces.bench.work_out()
    assert window.pieces.bench.cutting is before


def test_a_panel_picked_on_the_table_is_picked_in_the_draft(window: Window) -> None:
    window.deeds["pieces"].trigger()
    window.pieces.table.pick(Place(panel=1))
    window.deeds["draft"].trigger()
    assert window.board.canvas._place == Place(panel=1)


def test_a_finding_about_a_measurement_turns_back_to_the_draft(window: Window) -> None:
    window.deeds["pieces"].trigger()
    window.desk.select(Place(field="measurements.waist_girth"))
    assert window.place == "draft"


def test_the_welcome_page_has_no_places(window: Window) -> None:
    window.deeds["close"].trigger()
    assert not window.places.isVisible()


def test_with_nothing_measured_it_says_what_is_missing(window: Window) -> None:
    window.desk.open_session(Session(new_project()))
    window.deeds["pieces"].trigger()
    assert window.pieces.bench.cutting is None
    assert "Waist" in window.pieces.foot.row.accessibleName()

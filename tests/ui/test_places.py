"""Every place of the window: reached by one key and in one corner, and made when it is wanted."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, let_go
from workbench.document import Session
from workbench.styles import begun_from, drawn_shapes
from workbench.ui.actions import PLACES, TOOLS, PlaceName
from workbench.ui.settings import Settings
from workbench.ui.window import Window


@pytest.fixture
def window(qtbot: QtBot, settings: Settings) -> Window:
    made = Window(settings)
    qtbot.addWidget(made)
    made.resize(1280, 720)
    made.desk.open_session(Session(bodice()))
    made.show_work()
    with qtbot.waitExposed(made):
        made.show()
    return made


@pytest.mark.parametrize("number", range(len(PLACES)))
def test_a_key_turns_to_each_place_in_the_order_of_the_job(window: Window, number: int) -> None:
    QTest.keyClick(window, Qt.Key(Qt.Key.Key_1 + number), Qt.KeyboardModifier.ControlModifier)
    assert window.place == PLACES[number]
    let_go(window)


@pytest.mark.parametrize("name", PLACES)
def test_what_stands_on_the_toolbar_of_a_place_can_be_done_there(window: Window, name: PlaceName) -> None:
    window.turning.show_place(name)
    window.desk.now()
    for deed in TOOLS[name]:
        if deed not in ("-", "save", "undo", "redo"):
            assert window.deeds[deed].isEnabled(), deed
    let_go(window)


def test_all_places_have_room_beside_the_menus_on_a_small_laptop(window: Window) -> None:
    assert window.places.geometry().left() > 220
    assert window.places.width() >= window.places.sizeHint().width()
    let_go(window)


@pytest.mark.parametrize("name", PLACES)
def test_the_whole_toolbar_has_room_on_a_small_laptop(window: Window, name: PlaceName) -> None:
    window.turning.show_place(name)
    assert window.tools.sizeHint().width() <= 1280
    let_go(window)


def test_the_chooser_of_shapes_begins_another_project(window: Window) -> None:
    shape = drawn_shapes("in")[6]
    window.files.put(begun_from(shape, "in", 8), None)
    assert window.desk.project.style_name == shape.name
    assert window.desk.picture.outcome is None
    let_go(window)


def test_the_client_book_is_opened_and_left_again(window: Window) -> None:
    window.deeds["book"].trigger()
    assert window.book.isVisible()
    QTest.mouseClick(window.book.back, Qt.MouseButton.LeftButton)
    assert window.place == "draft"
    assert window.at_work
    let_go(window)

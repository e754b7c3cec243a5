"""The pieces place in the window: how it is reached, and that it costs nothing out of sight."""

from __future__ import annotations

from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, let_go
from tests.ui.places import pieces_of
from workbench.document import Session, new_project, set_measurement
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


def place_of(window: Window) -> str:
    return window.place


def test_a_key_turns_to_the_pieces_and_another_back(window: Window) -> None:
    QTest.keyClick(window, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert place_of(window) == "pieces"
    assert pieces_of(window).isVisible()
    QTest.keyClick(window, Qt.Key.Key_1, Qt.KeyboardModifier.ControlModifier)
    assert place_of(window) == "draft"
    assert window.board.isVisible()


def test_so_does_a_click_in_the_corner(window: Window) -> None:
    QTest.mouseClick(window.places.choice.button("pieces"), Qt.MouseButton.LeftButton)
    assert place_of(window) == "pieces"
    assert window.places.choice.value == "pieces"


def test_nothing_is_cut_before_the_place_is_turned_to(window: Window) -> None:
    assert not window.turning.made("pieces")


def test_out_of_sight_nothing_is_worked_out(window: Window) -> None:
    window.deeds["pieces"].trigger()
    window.deeds["draft"].trigger()
    before = pieces_of(window).bench.cutting
    window.desk.apply("Bust", bodice("over_bust"))
    window.desk.now()
    pieces_of(window).bench.work_out()
    assert pieces_of(window).bench.cutting is before


def test_a_panel_picked_on_the_table_is_picked_in_the_draft(window: Window) -> None:
    window.deeds["pieces"].trigger()
    pieces_of(window).table.pick(Place(panel=1))
    window.deeds["draft"].trigger()
    assert window.board.canvas._place == Place(panel=1)


def test_a_finding_about_a_measurement_turns_back_to_the_draft(window: Window) -> None:
    window.deeds["pieces"].trigger()
    window.desk.select(Place(field="measurements.waist_girth"))
    assert place_of(window) == "draft"


def test_the_welcome_page_has_no_places(window: Window) -> None:
    window.deeds["close"].trigger()
    assert not window.places.isVisible()


def test_with_nothing_measured_it_says_what_is_missing(window: Window) -> None:
    window.desk.open_session(Session(new_project()))
    window.deeds["pieces"].trigger()
    assert pieces_of(window).bench.cutting is None
    assert "Waist" in pieces_of(window).foot.row.accessibleName()


def test_the_toolbar_has_what_belongs_to_the_place(window: Window) -> None:
    draft = [action.text() for action in window.tools.actions()]
    window.deeds["pieces"].trigger()
    pieces = window.tools.actions()
    assert window.deeds["lists"] in pieces
    assert window.deeds["ledger"] not in pieces
    window.deeds["draft"].trigger()
    assert [action.text() for action in window.tools.actions()] == draft


@pytest.mark.parametrize("place", ["draft", "pieces"])
def test_no_tool_of_a_place_is_cut_off_on_a_small_laptop(window: Window, qtbot: QtBot, place: str) -> None:
    window.deeds[place].trigger()
    right = max(
        button.mapTo(window, button.rect().topRight()).x()
        for action in window.tools.actions()
        if (button := window.tools.widgetForAction(action)) is not None
    )
    assert right < 1280
    corner = window.places.mapTo(window, window.places.rect().topRight()).x()
    assert corner < max(window.width(), 1280)


def test_actions_of_another_place_are_off(window: Window) -> None:
    assert window.deeds["ledger"].isEnabled()
    assert not window.deeds["halves"].isEnabled()
    window.deeds["pieces"].trigger()
    assert not window.deeds["ledger"].isEnabled()
    assert window.deeds["halves"].isEnabled()


def test_the_ledger_stays_with_the_draft(window: Window) -> None:
    window.deeds["ledger"].trigger()
    window.deeds["pieces"].trigger()
    assert not window.ledger.isVisible()
    window.deeds["draft"].trigger()
    assert window.ledger.isVisible()


def test_the_form_is_as_wide_in_every_place(window: Window) -> None:
    window.deeds["pieces"].trigger()
    assert abs(pieces_of(window).form.width() - window.form.width()) <= 2


def test_what_is_still_being_typed_is_handed_in_before_the_place_changes(window: Window) -> None:
    window.activateWindow()
    field = next(edit for edit in window.form.findChildren(QLineEdit) if edit.accessibleName() == "Waist")
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, "27 1/2")
    window.deeds["pieces"].trigger()
    assert window.desk.project.measurements["waist_girth"].typed == "27 1/2"


def test_the_draft_catches_up_when_it_is_turned_to_again(window: Window) -> None:
    window.deeds["pieces"].trigger()
    window.desk.apply("Waist", set_measurement(window.desk.project, "waist_girth", "27"))
    window.desk.now()
    window.deeds["draft"].trigger()
    assert window.board.canvas._picture is window.desk.picture
    window.desk.apply("Waist", set_measurement(window.desk.project, "waist_girth", "28 1/2"))
    window.desk.now()
    assert window.board.canvas._picture is window.desk.picture


def test_another_project_begins_in_the_draft(window: Window) -> None:
    window.deeds["pieces"].trigger()
    window.files.put(bodice("over_bust"), None)
    assert place_of(window) == "draft"
    assert window.board.canvas._picture is window.desk.picture


def test_fit_is_for_the_place_in_sight(window: Window) -> None:
    window.deeds["pieces"].trigger()
    sight = pieces_of(window).table.sight
    fitted = sight.view
    sight.show_view(fitted.panned(50, 50))
    window.deeds["fit"].trigger()
    assert sight.view == fitted


def test_the_lists_can_be_put_away_and_that_is_remembered(
    qtbot: QtBot, window: Window, settings: Settings
) -> None:
    window.deeds["pieces"].trigger()
    window.deeds["lists"].trigger()
    assert pieces_of(window).lists.isHidden()
    let_go(window)
    window.close()
    again = Window(Settings(settings.path))
    qtbot.addWidget(again)
    assert not again.deeds["lists"].isChecked()
    assert pieces_of(again).lists.isHidden()

"""Marking by hand in the window: the next step in sight, ticks kept in the project."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.document import Session, new_project, set_marked, set_measurement, set_unit
from workbench.ui.desk import Desk
from workbench.ui.marking import MarkingPane
from workbench.ui.style import dress


@pytest.fixture
def pane(qtbot: QtBot, desk: Desk) -> MarkingPane:
    pane = MarkingPane(desk)
    desk.drafted.connect(pane.show_picture)
    return on_screen(qtbot, pane, 1280, 640)


def click(button: object) -> None:
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)  # type: ignore[call-overload]


def test_every_piece_of_the_layer_stands_there_with_its_count(pane: MarkingPane, desk: Desk) -> None:
    names = [row.accessibleName() for row in pane.pieces.pieces.rows if not row.isHidden()]
    assert len(names) == desk.project.design.panel_count
    assert names[0].startswith("Front 1, 0 of ")


def test_done_ticks_the_step_in_the_project_and_shows_the_next(pane: MarkingPane, desk: Desk) -> None:
    click(pane.steps.onward)
    assert [key.rpartition(".")[0] for key in desk.project.done] == ["marking.fashion.front-1.1"]
    assert desk.undo_name == "Marked"
    assert "step 2 of" in pane.steps.about.text()
    assert pane.steps.steps.rows[0].tick.isChecked()


def test_the_same_bodice_opened_again_is_shown_again(pane: MarkingPane, desk: Desk) -> None:
    """Its draft is another one, alike to the last point."""
    before = pane.rounding, pane.steps.about.text()
    desk.open_session(Session(desk.project))
    assert (pane.rounding, pane.steps.about.text()) == before


def test_a_tick_taken_back_and_undone(pane: MarkingPane, desk: Desk) -> None:
    click(pane.steps.steps.rows[0].tick)
    click(pane.steps.steps.rows[0].tick)
    assert desk.project.done == ()
    desk.undo()
    desk.now()
    assert len(desk.project.done) == 1
    assert pane.steps.steps.rows[0].tick.isChecked()


def test_a_title_shows_its_step_and_ticks_nothing(pane: MarkingPane, desk: Desk) -> None:
    click(pane.steps.steps.rows[2].title)
    assert pane.steps.title.text() == "Heights on the upright"
    assert "step 3: new are the marks" in pane.board.accessibleDescription()
    assert desk.project.done == ()
    click(pane.steps.back)
    assert "step 2 of" in pane.steps.about.text()


def test_after_the_last_step_comes_the_next_piece(pane: MarkingPane) -> None:
    last = sum(not row.isHidden() for row in pane.steps.steps.rows) - 1
    click(pane.steps.steps.rows[last].title)
    assert pane.steps.onward.text() == "Done, next piece"
    click(pane.steps.onward)
    assert pane.steps.about.text().startswith("Front 2 · step 1")


def test_a_piece_is_taken_up_where_it_was_left(pane: MarkingPane) -> None:
    click(pane.pieces.pieces.rows[1])
    click(pane.steps.onward)
    click(pane.pieces.pieces.rows[0])
    click(pane.pieces.pieces.rows[1])
    assert pane.steps.about.text().startswith("Front 2 · step 2")


def test_a_draft_that_changes_takes_the_ticks_of_what_is_no_longer_so(pane: MarkingPane, desk: Desk) -> None:
    click(pane.pieces.pieces.rows[1])
    for _ in range(4):
        click(pane.steps.onward)
    desk.apply("Waist", set_measurement(desk.project, "waist_girth", "26"))
    desk.now()
    assert not pane.steps.steps.rows[1].tick.isChecked()
    desk.undo()
    desk.now()
    assert pane.steps.steps.rows[1].tick.isChecked()


def test_ticking_a_changed_step_lets_the_old_tick_go(desk: Desk) -> None:
    before = set_marked(desk.project, "marking.fashion.front-1.3.aaaaaa", True)
    other = set_marked(before, "marking.fashion.front-1.11.bbbbbb", True)
    after = set_marked(other, "marking.fashion.front-1.3.cccccc", True)
    assert after.done == ("marking.fashion.front-1.11.bbbbbb", "marking.fashion.front-1.3.cccccc")


def test_another_layer_and_another_rounding(pane: MarkingPane) -> None:
    pane.pieces.layer.setCurrentIndex(pane.pieces.layer.findData("waist_tape"))
    pane.pieces.layer.activated.emit(pane.pieces.layer.currentIndex())
    assert pane.layer == "waist_tape"
    assert pane.steps.about.text().startswith("Waist tape · step 1")
    pane.pieces.rounding.setCurrentIndex(pane.pieces.rounding.findData("mm"))
    pane.pieces.rounding.activated.emit(pane.pieces.rounding.currentIndex())
    assert "0.1 cm" in pane.stated.accessibleName()


def test_the_rounding_follows_the_unit_until_another_is_picked(pane: MarkingPane, desk: Desk) -> None:
    assert pane.rounding.name == "eighth"
    desk.apply("Unit", set_unit(desk.project, "cm", 8))
    desk.now()
    assert pane.pieces.rounding.currentData() == "mm"


def test_a_draft_that_is_stopped_says_why_and_ticks_nothing(pane: MarkingPane, desk: Desk) -> None:
    desk.apply("Waist", set_measurement(desk.project, "waist_girth", ""))
    desk.now()
    assert pane.board.accessibleDescription()
    assert not pane.steps.onward.isEnabled()
    assert not pane.pieces.print.isEnabled()
    assert not pane.stated.isVisible()


def test_an_empty_project_says_how_to_begin(qtbot: QtBot, dressed: None) -> None:
    desk = Desk(Session(new_project()))
    pane = on_screen(qtbot, MarkingPane(desk), 1280, 640)
    assert "to begin" in pane.board.accessibleDescription()


def test_nothing_is_worked_out_while_it_is_out_of_sight(desk: Desk, qtbot: QtBot) -> None:
    pane = MarkingPane(desk)
    qtbot.addWidget(pane)
    pane.show_picture(desk.picture)
    assert "cutting" not in vars(desk.picture)


def test_the_guide_on_paper_is_asked_for(qtbot: QtBot, pane: MarkingPane) -> None:
    with qtbot.waitSignal(pane.export_wanted, timeout=1000):
        click(pane.pieces.print)


def test_light_and_dark_paint_the_drawing_in_their_own_ink(pane: MarkingPane) -> None:
    light = pane.board.grab().toImage()
    dress("dark")
    dark = pane.board.grab().toImage()
    dress("light")
    assert light.pixelColor(2, 2).lightness() > 200
    assert dark.pixelColor(2, 2).lightness() < 60
    assert len({light.pixelColor(x, 200).name() for x in range(0, light.width(), 2)}) > 2

"""The sewing place: steps are ticked in the project, and what is left is said."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.body import say_with_unit
from workbench.document import Session, new_project, set_unit
from workbench.fitting import Change, Fitting
from workbench.ui.desk import Desk
from workbench.ui.sewing import SewingPlace

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def place(desk: Desk, qtbot: QtBot) -> SewingPlace:
    return on_screen(qtbot, SewingPlace(desk), 1200, 760)


def test_a_click_ticks_the_step_off_in_the_project(place: SewingPlace, desk: Desk) -> None:
    QTest.mouseClick(place.order.cards[0].tick, LEFT)
    assert desk.project.done == ("sewing.measure",)


def test_a_second_click_takes_the_tick_back_and_so_does_undo(place: SewingPlace, desk: Desk) -> None:
    tick = place.order.cards[0].tick
    QTest.mouseClick(tick, LEFT)
    desk.undo()
    desk.now()
    assert desk.project.done == ()
    assert not tick.isChecked()


@pytest.mark.parametrize("key", [Qt.Key.Key_Space, Qt.Key.Key_Return])
def test_a_key_ticks_it_too(place: SewingPlace, desk: Desk, key: Qt.Key) -> None:
    QTest.keyClick(place.order.cards[2].tick, key)
    assert desk.project.done == ("sewing.fitting.first",)


def test_what_is_left_is_counted_and_said(place: SewingPlace, desk: Desk) -> None:
    steps = len(desk.picture.sewing)
    QTest.mouseClick(place.order.cards[0].tick, LEFT)
    desk.now()
    assert place.progress.text() == f"1 of {steps} steps done"
    assert place.chapters.rows[0].accessibleName() == "Measuring and drafting, 1 of 1 done"


def test_the_next_step_is_the_first_without_a_tick(place: SewingPlace, desk: Desk) -> None:
    QTest.mouseClick(place.order.cards[0].tick, LEFT)
    desk.now()
    place.activateWindow()
    place.order.reach_next()
    assert place.focusWidget() is place.order.cards[1].tick


def test_a_stage_that_is_clicked_comes_to_the_top(place: SewingPlace) -> None:
    QTest.mouseClick(place.chapters.rows[6], LEFT)
    assert place.order.verticalScrollBar().value() > 0


def test_numbers_follow_the_unit(place: SewingPlace, desk: Desk) -> None:
    cutting = desk.picture.cutting
    assert cutting is not None
    bone = cutting.bones[1]
    card = next(card for card in place.order.cards if card.tick.text() == f"Bone 2: {bone.where}")
    assert f"{say_with_unit(bone.cut_length, 'in', 8)} long" in card.says.text()
    desk.apply("Unit", set_unit(desk.project, "cm", 8))
    desk.now()
    place.bench.work_out()
    assert f"{say_with_unit(bone.cut_length, 'cm', 8)} long" in card.says.text()


def test_without_measurements_it_says_what_to_do(qtbot: QtBot) -> None:
    place = on_screen(qtbot, SewingPlace(Desk(Session(new_project()))), 900, 600)
    assert place.order.cards == ()
    assert "Type the bust and the waist to begin." in place.order.nothing.text()
    assert place.progress.text() == "Nothing to sew yet"


def test_every_tick_says_what_it_is_for(place: SewingPlace) -> None:
    for card in place.order.cards:
        assert card.tick.accessibleName().endswith("not done yet")
        assert card.tick.accessibleDescription()


def test_why_there_is_nothing_to_sew_is_said(place: SewingPlace, desk: Desk) -> None:
    much = Fitting("2031-05-20", "calico", (3, 3), changes=(Change("seam", 150.0, "waist", 2),))
    desk.open_session(Session(replace(desk.project, fittings=(much,))))
    desk.now()
    place.bench.work_out()
    stop = desk.picture.findings[0]
    assert stop.severity == "stop"
    assert stop.text("in") in place.order.nothing.text()

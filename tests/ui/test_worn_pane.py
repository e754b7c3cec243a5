"""The worn pane: what it shows, how she is turned, what is dragged on her, and what is assumed of her."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, on_screen
from workbench.document import Session, new_project, set_reduction
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.worn import WornPane
from workbench.ui.worn.grips import Grip
from workbench.ui.worn.view import WornView
from workbench.worn import BACK, FRONT, Eye, Torso

LEFT, SHIFT = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.ShiftModifier
NONE = Qt.KeyboardModifier.NoModifier


@pytest.fixture
def pane(qtbot: QtBot, desk: Desk) -> Iterator[WornPane]:
    pane = on_screen(qtbot, WornPane(desk), 340, 720)
    desk.now()
    yield pane
    pane.view._resting.stop()


def at(view: WornView, grip: Grip) -> QPoint:
    return view.stage.pixel(grip.x, grip.y).toPoint()


def inner_grip(view: WornView) -> Grip:
    """A shape point of the hem that is free to move sideways and not at the edge of the picture."""
    inner = [grip for grip in view.grips if grip.key.line == "hem" and grip.key.number > 0]
    return min(inner, key=lambda grip: abs(grip.x))


def drag(view: WornView, start: QPoint, to: QPoint, *, release: bool = True) -> None:
    QTest.mousePress(view, LEFT, NONE, start)
    QTest.mouseMove(view, start + QPoint(0, 5))
    QTest.mouseMove(view, to)
    if release:
        QTest.mouseRelease(view, LEFT, NONE, to)


def test_it_says_every_girth_before_and_as_worn(pane: WornPane) -> None:
    said = pane.view.accessibleDescription()
    assert "Waist: 28 → 26  −7.1 %." in said
    assert "Underbust: 31½." in said


def test_buttons_turn_her(pane: WornPane) -> None:
    pane.sides.button(BACK).click()
    assert pane.view.eye.degrees == BACK


def test_keys_turn_her_by_fifteen_degrees_and_home_to_the_front(pane: WornPane) -> None:
    QTest.keyClick(pane.view, Qt.Key.Key_Left)
    assert pane.view.eye.degrees == 60.0
    assert pane.sides.value is None
    QTest.keyClick(pane.view, Qt.Key.Key_Home)
    assert pane.view.eye.degrees == FRONT
    QTest.keyClick(pane.view, Qt.Key.Key_Right)
    assert pane.view.eye.degrees == 345.0
    assert pane.sides.value is None


def test_a_drag_beside_the_points_turns_her_and_changes_nothing(pane: WornPane, desk: Desk) -> None:
    project = desk.project
    drag(pane.view, QPoint(100, 600), QPoint(200, 600))
    assert pane.view.eye.degrees != 45.0
    assert desk.project is project


def test_a_point_dragged_on_her_is_moved_in_one_step(pane: WornPane, desk: Desk) -> None:
    view = pane.view
    grip = inner_grip(view)
    start = at(view, grip)
    drag(view, start, start + QPoint(0, 14))
    assert desk.undo_name == "Move hem point"
    assert desk.project.design.hem is not None
    moved = desk.project.design.hem[grip.key.number]
    down = 14 / view.stage.scale
    assert moved.t == pytest.approx(grip.point.t - down, abs=0.35 * down)
    desk.undo()
    assert desk.project.design.hem is None


def test_escape_takes_a_drag_back(pane: WornPane, desk: Desk) -> None:
    view, before = pane.view, desk.project
    start = at(view, inner_grip(view))
    drag(view, start, start + QPoint(0, 20), release=False)
    assert desk.gesturing
    QTest.keyClick(view, Qt.Key.Key_Escape)
    assert not desk.gesturing
    assert desk.project == before


def test_a_point_keeps_under_the_hand_while_it_is_dragged(pane: WornPane, desk: Desk) -> None:
    view = pane.view
    grip = inner_grip(view)
    start = at(view, grip)
    drag(view, start, start + QPoint(6, 16), release=False)
    desk.now()
    now = next(each for each in view.grips if each.key == grip.key and each.mirrored == grip.mirrored)
    away = QPointF(at(view, now)) - QPointF(start + QPoint(6, 16))
    assert abs(away.x()) + abs(away.y()) < 6.0
    QTest.mouseRelease(view, LEFT, NONE, start + QPoint(6, 16))


def test_h_goes_from_point_to_point_and_shift_with_an_arrow_moves_it(pane: WornPane, desk: Desk) -> None:
    QTest.keyClick(pane.view, Qt.Key.Key_H)
    chosen = pane.view.chosen
    assert chosen is not None
    QTest.keyClick(pane.view, Qt.Key.Key_Up, SHIFT)
    points = desk.project.design.neckline
    assert points is not None
    assert points[chosen.key.number].t == pytest.approx(chosen.point.t + 25.4 / 8)
    QTest.keyClick(pane.view, Qt.Key.Key_H)
    assert pane.view.chosen is not None
    assert pane.view.chosen.key != chosen.key


def test_a_click_on_her_lights_up_the_panel(pane: WornPane, desk: Desk) -> None:
    pane.view.turn_to(Eye(FRONT, 6.0))
    x, y = pane.view.stage.pixel(60.0, 20.0).toTuple()
    QTest.mouseClick(pane.view, LEFT, NONE, QPoint(round(x), round(y)))
    assert desk.selection == Place(panel=0)
    QTest.mouseClick(pane.view, LEFT, NONE, QPoint(4, 4))
    assert desk.selection is None


def test_bones_and_lacing_come_when_the_hand_rests(pane: WornPane) -> None:
    assert pane.view.worn is not None
    assert pane.view.worn.bones == ()
    pane.view.show_inside()
    assert pane.view.worn is not None
    assert pane.view.worn.bones
    assert pane.view.worn.lacing


def test_bones_stay_while_a_value_changes(pane: WornPane, desk: Desk) -> None:
    pane.view.show_inside()
    desk.apply("Reduction", set_reduction(desk.project, "waist", 30.0))
    desk.now()
    assert pane.view.worn is not None
    assert pane.view.worn.bones


def test_the_girths_say_where_she_is_drawn_in_most_and_what_is_above_a_limit(
    pane: WornPane, desk: Desk
) -> None:
    pane.show_page("girths")
    assert "Draws in most at the waist: 7.1 % of her girth there." in pane.profile.accessibleDescription()
    assert "Above" not in pane.profile.accessibleDescription()
    desk.apply("Reduction", set_reduction(desk.project, "waist", 100.0))
    desk.now()
    assert "Above the limit you set at the waist." in pane.profile.accessibleDescription()


def test_a_figure_of_the_torso_is_set_and_set_back(pane: WornPane, desk: Desk) -> None:
    pane.show_page("torso")
    waist = next(row for row in pane.torso.rows if row.name == "torso.waist")
    waist.field.setText("80")
    QTest.keyClick(waist.field, Qt.Key.Key_Return)
    assert desk.project.torso.waist == pytest.approx(0.8)
    desk.now()
    pane.torso.usual.click()
    assert desk.project.torso == Torso()


def test_a_figure_that_no_torso_has_is_refused_in_words(pane: WornPane, desk: Desk) -> None:
    pane.show_page("torso")
    waist = next(row for row in pane.torso.rows if row.name == "torso.waist")
    waist.field.setText("300")
    QTest.keyClick(waist.field, Qt.Key.Key_Return)
    assert desk.project.torso == Torso()
    assert "40 % to 130 %" in waist.said


def test_a_finding_about_the_torso_brings_its_field_into_sight(pane: WornPane, desk: Desk) -> None:
    desk.select(Place(field="torso.bust"))
    assert pane.page == "torso"


def test_saving_is_asked_for(pane: WornPane, qtbot: QtBot) -> None:
    with qtbot.waitSignal(pane.save_wanted):
        pane.save.click()


def test_without_a_draft_it_says_so_and_offers_nothing(qtbot: QtBot, dressed: None) -> None:
    pane = on_screen(qtbot, WornPane(Desk(Session(new_project()))), 340, 600)
    assert pane.view.worn is None
    assert not pane.save.isEnabled()
    assert not pane.grab().isNull()
    QTest.keyClick(pane.view, Qt.Key.Key_H)
    QTest.mouseClick(pane.view, LEFT, NONE, QPoint(100, 300))


def test_a_stopped_draft_keeps_the_last_good_one_and_lets_nothing_be_dragged(
    pane: WornPane, desk: Desk
) -> None:
    desk.apply("Reduction", set_reduction(desk.project, "waist", 600.0))
    desk.now()
    assert desk.picture.stopped
    assert pane.view.worn is not None
    assert pane.view.grips == ()
    assert not pane.save.isEnabled()


def test_hidden_it_works_nothing_out(qtbot: QtBot, desk: Desk) -> None:
    pane = WornPane(desk)
    qtbot.addWidget(pane)
    desk.now()
    assert pane.view.worn is None


def test_no_word_on_it_calls_anything_harmless(pane: WornPane) -> None:
    pane.show_page("torso")
    words = [label.text() for label in pane.findChildren(QLabel)]
    words += [pane.view.accessibleDescription(), pane.profile.said()]
    assert not any("safe" in text.lower() for text in words)


def test_over_bust_shows_the_upper_chest_too(qtbot: QtBot, dressed: None) -> None:
    desk = Desk(Session(bodice("over_bust")))
    pane = on_screen(qtbot, WornPane(desk), 340, 720)
    desk.now()
    assert "Upper chest" in pane.view.accessibleDescription()
    pane.view._resting.stop()

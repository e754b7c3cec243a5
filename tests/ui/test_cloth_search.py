"""Finding a better plan: progress in sight, stopped at once, kept in the project as one step."""

from __future__ import annotations

from time import monotonic

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.cloth_scene import Script, drag, middle, shorter, shown, spread
from tests.ui.conftest import bodice
from workbench.document import Session, set_allowance_of, set_cloth
from workbench.draft import Finding
from workbench.ui.cloth import ClothPlace
from workbench.ui.desk import Desk

CLOTH = "Fashion cloth"
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def place(qtbot: QtBot, desk: Desk) -> ClothPlace:
    return shown(qtbot, desk)


@pytest.fixture
def script(place: ClothPlace) -> Script:
    return Script(place)


def begin(place: ClothPlace) -> None:
    QTest.mouseClick(place.answer.seek, LEFT)


def test_the_button_begins_a_search_and_offers_to_stop(place: ClothPlace, script: Script) -> None:
    begin(place)
    assert script.latest.cloth.name == CLOTH
    assert place.answer.stop.isVisible()
    assert not place.answer.seek.isVisible()
    place.search.stop()


def test_a_better_plan_is_drawn_as_soon_as_it_is_found(place: ClothPlace, script: Script, desk: Desk) -> None:
    begin(place)
    better = shorter(place)
    script.latest.find(better)
    place.search.on_look()
    assert spread(place).plan is better
    assert "so far" in place.answer.sentence.told.body
    assert desk.project.plans == ()
    place.search.stop()


def test_the_best_plan_is_kept_when_it_ends(place: ClothPlace, script: Script, desk: Desk) -> None:
    begin(place)
    better = shorter(place)
    script.latest.find(better, last=True)
    place.search.on_look()
    kept = desk.project.kept_plan(CLOTH)
    assert kept is not None
    assert kept.placed == better.placed
    assert desk.undo_name == f"Lay plan of {CLOTH}"


def test_stop_ends_it_and_keeps_what_was_found(place: ClothPlace, script: Script, desk: Desk) -> None:
    begin(place)
    script.latest.find(shorter(place))
    place.search.on_look()
    QTest.mouseClick(place.answer.stop, LEFT)
    assert script.latest.cancelled
    assert desk.project.kept_plan(CLOTH) is not None


def test_nothing_better_changes_nothing(place: ClothPlace, script: Script, desk: Desk) -> None:
    before = desk.project
    begin(place)
    script.latest.running = False
    place.search.on_look()
    assert desk.project is before
    assert "No shorter plan" in place.answer.sentence.told.how


def test_then_it_can_be_improved_further(place: ClothPlace, script: Script) -> None:
    begin(place)
    script.latest.running = False
    place.search.on_look()
    QTest.mouseClick(place.answer.more, LEFT)
    assert script.latest.improved == [45.0]
    place.search.stop()


def test_a_longer_plan_is_never_taken(place: ClothPlace, script: Script, desk: Desk) -> None:
    begin(place)
    script.latest.find(shorter(place), last=True)
    place.search.on_look()
    kept = desk.project.kept_plan(CLOTH)
    QTest.mouseClick(place.answer.more, LEFT)
    script.latest.running = False
    place.search.on_look()
    assert desk.project.kept_plan(CLOTH) == kept


def test_pinned_pieces_go_along(place: ClothPlace, script: Script) -> None:
    QTest.keyClick(place.canvas, Qt.Key.Key_PageDown)
    QTest.keyClick(place.canvas, Qt.Key.Key_P)
    begin(place)
    assert [placed.pinned for placed in script.latest.pinned] == [True]
    place.search.stop()


def test_changed_pieces_end_the_search(place: ClothPlace, script: Script, desk: Desk) -> None:
    begin(place)
    script.latest.find(shorter(place))
    place.search.on_look()
    desk.apply("Seams", set_allowance_of(desk.project, "seam", 25.4))
    desk.now()
    place.bench.work_out()
    assert script.latest.cancelled
    assert not place.search.running
    assert desk.project.plans == ()


def test_so_does_a_hand_on_a_piece(place: ClothPlace, script: Script) -> None:
    begin(place)
    piece = max(spread(place).pieces, key=lambda p: p.box[2])
    drag(place, middle(place, piece), QPoint(40, 0))
    assert script.latest.cancelled


def test_and_turning_to_another_place(place: ClothPlace, script: Script, desk: Desk) -> None:
    begin(place)
    script.latest.find(shorter(place))
    place.search.on_look()
    place.hide()
    assert script.latest.cancelled
    assert desk.project.kept_plan(CLOTH) is not None


def test_another_project_is_never_given_a_plan_of_the_one_before(
    place: ClothPlace, script: Script, desk: Desk
) -> None:
    begin(place)
    script.latest.find(shorter(place))
    place.search.on_look()
    desk.open_session(Session(bodice("over_bust")))
    assert script.latest.cancelled
    assert desk.project.plans == ()


def test_another_cloth_ends_it_too(place: ClothPlace, script: Script) -> None:
    begin(place)
    place.bench.show_cloth(1)
    assert script.latest.cancelled


def test_a_price_does_not(place: ClothPlace, script: Script, desk: Desk) -> None:
    begin(place)
    desk.apply("Price", set_cloth(desk.project, CLOTH, price=desk.project.cloths[0].price + 2))
    desk.now()
    place.bench.work_out()
    assert place.search.running
    place.search.stop()


def test_a_search_that_fails_is_said_in_the_foot(place: ClothPlace, script: Script) -> None:
    begin(place)
    script.latest.findings = (Finding("attend", "search_failed", "The search failed; the last plan stays."),)
    script.latest.running = False
    place.search.on_look()
    assert "search failed" in place.foot.row.accessibleName()


def test_the_solver_itself_is_stopped_within_a_fifth_of_a_second(
    place: ClothPlace, desk: Desk, qtbot: QtBot
) -> None:
    """One short run of the real solver: it begins, and Stop ends its process."""
    begin(place)
    assert place.search.running
    qtbot.waitUntil(lambda: place.search.progress is not None and place.search.progress.seconds > 0.1)
    start = monotonic()
    QTest.mouseClick(place.answer.stop, LEFT)
    assert monotonic() - start < 0.2
    assert not place.search.running
    plan = spread(place).plan
    assert plan.sound
    kept = desk.project.kept_plan(CLOTH)
    assert kept is None or kept.length_mm <= plan.length_mm + 1e-6

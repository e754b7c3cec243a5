"""The desk: one way in for edits, one redraft for many of them, gestures that can be given up."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from workbench.document import Session, new_project, set_reduction
from workbench.draft import Place
from workbench.ui.desk import Desk


def count(signal: object) -> list[object]:
    heard: list[object] = []
    signal.connect(lambda *told: heard.append(told))  # type: ignore[attr-defined]
    return heard


def test_many_edits_in_one_turn_are_one_redraft(qtbot: QtBot, desk: Desk) -> None:
    drafts = count(desk.drafted)
    for eighths in range(1, 6):
        desk.apply("Waist reduction", set_reduction(desk.project, "waist", eighths * 3.175))
    qtbot.waitUntil(lambda: len(drafts) > 0)
    qtbot.wait(1)
    assert len(drafts) == 1
    assert drafts[0][0].project.design.reductions.waist == 5 * 3.175  # type: ignore[index]


def test_the_picture_never_waits_for_the_redraft(desk: Desk) -> None:
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", 25.4))
    assert desk.picture.project.design.reductions.waist == 25.4


def test_a_gesture_is_one_step(desk: Desk) -> None:
    before = desk.project
    desk.begin("Waist reduction")
    for mm in (10.0, 20.0, 30.0):
        desk.preview(set_reduction(desk.project, "waist", mm))
    desk.commit()
    assert desk.undo_name == "Waist reduction"
    desk.undo()
    assert desk.project == before
    assert desk.undo_name is None


def test_a_gesture_given_up_leaves_nothing(desk: Desk) -> None:
    before = desk.project
    desk.begin("Waist reduction")
    desk.preview(set_reduction(desk.project, "waist", 80.0))
    desk.cancel()
    assert desk.project is before
    assert desk.undo_name is None


def test_the_picture_before_a_gesture_is_there_for_its_ghost_and_no_longer(desk: Desk) -> None:
    before = desk.picture
    desk.begin("Waist reduction")
    desk.preview(set_reduction(desk.project, "waist", 80.0))
    assert desk.before_gesture is before
    desk.commit()
    assert desk.before_gesture is None


def test_the_session_is_spoken_of_only_when_it_changed(desk: Desk) -> None:
    desk.now()
    changes = count(desk.session_changed)
    desk.now()
    assert changes == []
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", 25.4))
    desk.now()
    assert len(changes) == 1


def test_a_session_that_left_the_desk_is_not_listened_to(qtbot: QtBot, desk: Desk) -> None:
    gone = desk.session
    desk.open_session(Session(new_project("over_bust")))
    drafts = count(desk.drafted)
    gone.apply("Waist reduction", set_reduction(gone.project, "waist", 1.0))
    qtbot.wait(5)
    assert drafts == []


def test_another_project_puts_out_what_was_lit(desk: Desk) -> None:
    desk.select(Place(level="waist"))
    desk.open_session(Session(new_project()))
    assert desk.selection is None


def test_lighting_up_is_told_once(desk: Desk) -> None:
    lit = count(desk.selected)
    desk.select(Place(level="waist"))
    desk.select(Place(level="waist"))
    desk.select(None)
    assert lit == [(Place(level="waist"),), (None,)]

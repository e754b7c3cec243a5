"""Undo and redo against a plain list of projects, gestures, and what is told to whom."""

from __future__ import annotations

import gc
import random
import tracemalloc
from pathlib import Path

import pytest

from tests.document import example
from workbench.document import Project, Session, set_opening, set_panels, set_reduction
from workbench.document.session import KEPT_STEPS


class PlainHistory:
    """What undo and redo should do, without any cleverness: a list and a place in it."""

    def __init__(self, project: Project) -> None:
        self.all, self.at = [project], 0

    def edit(self, project: Project) -> None:
        if project != self.all[self.at]:
            self.all[self.at + 1 :] = [project]
            self.at += 1

    def move(self, by: int) -> None:
        self.at = min(max(self.at + by, 0), len(self.all) - 1)


def test_two_thousand_random_steps_agree_with_a_plain_list() -> None:
    dice = random.Random(20310520)
    session, plain = Session(example()), PlainHistory(example())
    for _ in range(2000):
        act = dice.random()
        if act < 0.45:
            changed = set_reduction(session.project, "waist", dice.randrange(0, 80))
            session.apply("waist reduction", changed)
            plain.edit(changed)
        elif act < 0.6:
            _drag(session, plain, dice)
        else:
            undo = act < 0.82
            (session.undo if undo else session.redo)()
            plain.move(-1 if undo else 1)
        plain.all[:] = plain.all[max(plain.at - KEPT_STEPS, 0) :]
        plain.at = min(plain.at, KEPT_STEPS)
        assert session.project == plain.all[plain.at]
        assert (session.undo_name is None) == (plain.at == 0)
        assert (session.redo_name is None) == (plain.at == len(plain.all) - 1)


def _drag(session: Session, plain: PlainHistory, dice: random.Random) -> None:
    session.begin("opening")
    for _ in range(dice.randrange(4)):
        session.preview(set_opening(session.project, dice.randrange(0, 90)))
    if dice.random() < 0.5:
        plain.edit(session.project)
        session.commit()
    else:
        session.cancel()


def test_names_of_steps_go_with_the_steps() -> None:
    session = Session(example())
    session.apply("opening", set_opening(session.project, 10))
    session.apply("front panels", set_panels(session.project, "front", 4))
    assert (session.undo_name, session.redo_name) == ("front panels", None)
    session.undo()
    assert (session.undo_name, session.redo_name) == ("opening", "front panels")
    session.redo()
    assert (session.undo_name, session.redo_name) == ("front panels", None)


def test_an_edit_that_changes_nothing_is_no_step() -> None:
    session = Session(example())
    session.apply("opening", set_opening(session.project, session.project.design.opening_mm))
    assert session.undo_name is None
    session.begin("opening")
    session.commit()
    assert session.undo_name is None


def test_a_drag_is_one_step_and_escape_takes_it_back_whole() -> None:
    session = Session(example())
    start = session.project
    session.begin("opening")
    for width in (10, 20, 30):
        session.preview(set_opening(session.project, width))
    assert session.before_gesture is start
    session.cancel()
    assert session.project is start
    assert session.undo_name is None
    session.begin("opening")
    session.preview(set_opening(session.project, 30))
    session.preview(set_opening(session.project, 40))
    session.commit()
    session.undo()
    assert session.project == start


def test_undo_in_the_middle_of_a_drag_ends_the_drag_only() -> None:
    session = Session(example())
    session.apply("opening", set_opening(session.project, 10))
    before = session.project
    session.begin("opening")
    session.preview(set_opening(session.project, 20))
    session.undo()
    assert session.project is before
    assert session.undo_name == "opening"


def test_preview_needs_a_gesture() -> None:
    session = Session(example())
    with pytest.raises(RuntimeError):
        session.preview(set_opening(session.project, 1))


def test_unsaved_is_about_what_is_on_disk() -> None:
    session = Session(example())
    assert not session.unsaved
    session.apply("opening", set_opening(session.project, 10))
    assert session.unsaved
    session.mark_saved(Path("a.bodice"))
    assert not session.unsaved
    session.undo()
    assert session.unsaved
    session.redo()
    assert not session.unsaved
    assert session.path == Path("a.bodice")


def test_listener_is_told_once_for_each_change() -> None:
    session, told = Session(example()), []
    session.changed = lambda: told.append(session.project.design.opening_mm)
    session.apply("opening", set_opening(session.project, 10))
    session.begin("opening")
    session.preview(set_opening(session.project, 20))
    session.commit()
    session.undo()
    session.apply("opening", session.project)
    assert told == [10, 20, 20, 10]


def test_picture_is_worked_out_once_for_each_project() -> None:
    session = Session(example())
    assert session.picture is session.picture
    before = session.picture
    session.apply("opening", set_opening(session.project, 10))
    assert session.picture is not before
    assert session.picture.project is session.project


def test_last_good_draft_stays_on_show_while_the_next_cannot_be_drafted() -> None:
    session = Session(example())
    good = session.picture.outcome
    session.apply("waist reduction", set_reduction(session.project, "waist", 700))
    assert session.picture.stopped
    assert session.picture.good is good
    assert not session.picture.current
    session.apply("waist reduction", set_reduction(session.project, "waist", 710))
    assert session.picture.good is good
    session.undo()
    session.undo()
    assert session.picture.current


def test_a_project_without_measurements_says_which_is_missing() -> None:
    picture = Session(Project()).picture
    assert picture.stopped
    assert picture.findings[0].place.field in ("measurements.waist_girth", "measurements.bust_girth")


def test_memory_stays_flat_over_two_thousand_edits() -> None:
    session = Session(example())
    for number in range(700):
        _edit_and_look(session, number)
    gc.collect()
    tracemalloc.start()
    try:
        for number in range(2000):
            _edit_and_look(session, number)
        gc.collect()
        grown, _ = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    # what is held afterwards is at most the steps kept, each a few small records
    assert grown < KEPT_STEPS * 4000


def _edit_and_look(session: Session, number: int) -> None:
    session.apply("waist reduction", set_reduction(session.project, "waist", 10 + number % 61))
    if number % 40 == 0:
        assert session.picture.good is not None

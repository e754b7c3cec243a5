"""The guide for a new client: which step is next, what its buttons do, when it is there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Answers, bodice, let_go, on_screen
from workbench.document import (
    Project,
    new_project,
    picture_of,
    set_measurement,
    set_reduction,
    take_the_most,
)
from workbench.draft import Place, ShapePoint
from workbench.ui.guide import Guide, guide_of
from workbench.ui.guide.steps import FINISHED, STEPS, place_of, sentence_of, steps_of
from workbench.ui.settings import Settings
from workbench.ui.window import Window

DEMOS = tuple(sorted(Path("demo_projects").glob("*.bodice")))


def next_of(project: Project, *kept: str) -> str | None:
    steps = steps_of(picture_of(project), frozenset(step for step in STEPS if step in kept))
    return next((step.name for step in steps if step.current), None)


# --- which step is next ----------------------------------------------------------------------


def test_an_empty_project_begins_with_its_shape() -> None:
    assert next_of(new_project()) == "shape"
    assert next_of(new_project("over_bust"), "shape") == "measure"


def test_who_measures_has_her_shape() -> None:
    assert next_of(set_measurement(new_project(), "bust_girth", "38")) == "measure"


def test_one_that_was_begun_from_a_shape_wants_measurements() -> None:
    assert next_of(replace(new_project(), style_name="Waist belt")) == "measure"


def test_each_change_is_a_step_done() -> None:
    project = bodice()
    assert next_of(project) == "reduce"
    project = set_reduction(project, "waist", 60.0)
    assert next_of(project) == "lines"
    points = (ShapePoint(0.0, 100.0), ShapePoint(6.0, 90.0))
    project = replace(project, design=replace(project.design, neckline=points))
    assert next_of(project) == "print"
    assert next_of(project, "print") is None


def test_what_is_kept_is_done_too() -> None:
    assert next_of(bodice(), "reduce", "lines") == "print"


def test_the_most_counts_as_a_reduction() -> None:
    project = bodice()
    comfort = picture_of(project).comfort
    assert comfort is not None
    assert next_of(take_the_most(project, comfort, 3.175)) == "lines"


def test_it_says_which_measurement_is_wanting() -> None:
    picture = picture_of(set_measurement(new_project(), "bust_girth", "38"))
    step = next(step for step in steps_of(picture, frozenset()) if step.current)
    assert "Waist" in sentence_of(step, picture)
    assert place_of("measure", picture) == Place(field="measurements.waist_girth")


def test_every_step_says_what_to_do() -> None:
    picture = picture_of(new_project())
    said = [sentence_of(step, picture) for step in steps_of(picture, frozenset())]
    assert len(set(said)) == len(STEPS)
    assert sentence_of(None, picture) == FINISHED


# --- in the window ---------------------------------------------------------------------------


@pytest.fixture
def window(qtbot: QtBot, settings: Settings, answers: Answers, dressed: None) -> Iterator[Window]:
    window = on_screen(qtbot, Window(settings, answers, DEMOS), 1280, 720)
    yield window
    let_go(window)
    window.close()


@pytest.fixture
def guide(window: Window) -> Guide:
    window.files.new("under_bust")
    return guide_of(window)


def test_it_leads_through_a_new_project(window: Window, guide: Guide) -> None:
    assert guide.rail.isVisible()
    assert guide.bar.height() < 70
    assert guide.bar.current is not None
    assert guide.bar.current.name == "shape"
    assert guide.bar.chips["shape"].accessibleName() == "Step 1 of 5, Shape, next"


def test_it_is_not_there_without_a_new_project(window: Window) -> None:
    assert window.findChild(Guide) is None
    window.files.open_demo(DEMOS[0])
    assert window.findChild(Guide) is None


def test_it_follows_what_she_types(window: Window, guide: Guide) -> None:
    guide.bar.keep.click()
    assert guide.bar.keep.isHidden(), "measurements cannot be passed over"
    window.desk.apply("Bust", set_measurement(window.desk.project, "bust_girth", "38"))
    window.desk.apply("Waist", set_measurement(window.desk.project, "waist_girth", "28"))
    window.desk.now()
    assert guide.bar.current is not None
    assert guide.bar.current.name == "reduce"
    assert guide.bar.chips["measure"].accessibleName().endswith("done")


def test_show_me_lights_up_where_it_is_done(window: Window, guide: Guide) -> None:
    guide.bar.keep.click()
    guide.bar.show_me.click()
    assert window.desk.selection == Place(field="measurements.bust_girth")
    window.turning.show_place("pieces")
    guide.bar.chips["reduce"].click()
    assert window.place == "draft"
    assert window.desk.selection == Place(level="waist", field="reductions.waist")


def test_a_step_is_reached_by_key(guide: Guide, window: Window) -> None:
    guide.bar.keep.click()
    QTest.keyClick(guide.bar.chips["measure"], Qt.Key.Key_Return)
    assert window.desk.selection == Place(field="measurements.bust_girth")


def test_turning_to_another_place_forgets_nothing(window: Window, guide: Guide) -> None:
    guide.bar.keep.click()
    window.turning.show_place("pieces")
    window.turning.show_place("draft")
    assert guide.rail.isVisible()
    assert guide.bar.current is not None
    assert guide.bar.current.name == "measure"


def test_put_away_it_stays_away_until_it_is_asked_for(window: Window, guide: Guide) -> None:
    guide.bar.away.click()
    assert not guide.rail.isVisible()
    window.files.new("over_bust")
    assert not guide.rail.isVisible()
    window.deeds["guide"].trigger()
    assert guide.rail.isVisible()


def test_it_is_gone_on_the_welcome_page_and_with_another_project(window: Window, guide: Guide) -> None:
    window.show_welcome()
    assert not guide.rail.isVisible()
    window.files.open_demo(DEMOS[0])
    assert not guide.rail.isVisible()


def test_a_finished_one_is_one_click_away(window: Window, guide: Guide) -> None:
    guide.bar.demo.click()
    assert window.desk.project.client.invented
    assert window.desk.project.measurements


def test_the_whole_way_once_needs_no_guide_again(window: Window, guide: Guide, settings: Settings) -> None:
    window.desk.apply("Bodice", bodice())
    window.desk.now()
    for name in ("reduce", "lines", "print"):
        assert guide.bar.current is not None
        assert guide.bar.current.name == name
        guide.bar.keep.click()
    assert guide.bar.words.text() == FINISHED
    assert not settings.guided


@pytest.mark.parametrize("width", [960, 1280, 1920])
def test_the_sentence_has_room(window: Window, guide: Guide, width: int, qtbot: QtBot) -> None:
    window.resize(width, 720)
    label = guide.bar.words
    for _ in range(3):
        qtbot.waitUntil(lambda: label.heightForWidth(label.width()) <= guide.bar.height())
        guide.bar.keep.click()
        if guide.bar.current is not None and guide.bar.current.name == "measure":
            window.desk.apply("Bodice", bodice())
            window.desk.now()

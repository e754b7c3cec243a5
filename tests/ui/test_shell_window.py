"""The window as a whole: what is open, what can be done, what is remembered."""

from __future__ import annotations

import gc
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QCloseEvent, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QToolButton
from pytestqt.qtbot import QtBot

from tests.ui.conftest import let_go
from tests.ui.places import comfort_of
from workbench.document import (
    Project,
    Session,
    new_project,
    read_project,
    set_client,
    set_measurement,
    set_reduction,
    write_project,
)
from workbench.draft import Place
from workbench.ui.actions import DEEDS
from workbench.ui.app import demo_files
from workbench.ui.look import look
from workbench.ui.settings import Settings
from workbench.ui.window import Window


def bodice() -> Project:
    project = new_project()
    for key, text in {"bust_girth": "38", "underbust_girth": "31 1/2", "waist_girth": "28"}.items():
        project = set_measurement(project, key, text)
    return project


@pytest.fixture
def window(qtbot: QtBot, dressed: None, settings: Settings, answers: Any) -> Window:
    window = Window(settings, answers, demo_files())
    qtbot.addWidget(window, before_close_func=let_go)
    window.resize(1280, 720)
    window.show()
    return window


def at_work(window: Window) -> Window:
    window.files.put(bodice(), None)
    return window


def draw_in(window: Window, inches: float) -> None:
    desk = window.desk
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", 25.4 * inches))
    desk.now()


# --- the welcome page and what follows it ------------------------------------------------


def test_it_begins_with_choices_and_nothing_that_needs_a_project(window: Window) -> None:
    assert not window.at_work
    assert not window.deeds["save"].isEnabled()
    assert not window.deeds["print"].isEnabled()
    assert window.deeds["open"].isEnabled()


def test_one_click_begins_a_bodice(window: Window) -> None:
    QTest.mouseClick(window.welcome.choices["over_bust"], Qt.MouseButton.LeftButton)
    assert window.at_work
    assert window.desk.project.design.style == "over_bust"
    assert dict(window.desk.project.measurements) == {}


def test_one_click_opens_a_demo(window: Window) -> None:
    row = next(iter(window.welcome.demos._rows))
    QTest.mouseClick(row, Qt.MouseButton.LeftButton)
    assert window.desk.project == read_project(demo_files()[0])
    assert window.desk.path is None
    assert window.desk.picture.current


def test_closing_the_project_returns_to_the_choices(window: Window) -> None:
    at_work(window).deeds["close"].trigger()
    assert not window.at_work
    assert dict(window.desk.project.measurements) == {}


def test_unsaved_work_is_not_closed_unasked(window: Window, answers: Any) -> None:
    draw_in(at_work(window), 1)
    window.deeds["close"].trigger()
    assert answers.asked == 1
    assert window.at_work


def test_the_window_does_not_close_over_unsaved_work(window: Window, answers: Any) -> None:
    draw_in(at_work(window), 1)
    event = QCloseEvent()
    window.closeEvent(event)
    assert not event.isAccepted()
    answers.keep = "discard"
    window.closeEvent(event)
    assert event.isAccepted()


# --- undo and redo ---------------------------------------------------------------------


def test_undo_and_redo_say_what_they_would_do(window: Window) -> None:
    draw_in(at_work(window), 3)
    assert window.deeds["undo"].text() == "&Undo waist reduction"
    window.deeds["undo"].trigger()
    window.desk.now()
    assert window.desk.project.design.reductions.waist == 50.8
    assert window.deeds["redo"].text() == "&Redo waist reduction"
    window.deeds["redo"].trigger()
    assert window.desk.project.design.reductions.waist == 3 * 25.4


def a_field(window: Window) -> QLineEdit:
    """The field of the waist girth, with the focus."""
    field = next(edit for edit in window.form.findChildren(QLineEdit) if edit.accessibleName() == "Waist")
    window.activateWindow()
    field.setFocus()
    assert field.hasFocus()
    return field


def test_the_undo_key_works_while_a_field_has_the_focus(window: Window) -> None:
    at_work(window)
    field = a_field(window)
    draw_in(window, 3)
    QTest.keySequence(field, QKeySequence(QKeySequence.StandardKey.Undo))
    assert window.desk.project.design.reductions.waist == 50.8


def test_the_undo_key_belongs_to_the_field_while_something_is_typed_in_it(window: Window) -> None:
    at_work(window)
    field = a_field(window)
    draw_in(window, 3)
    field.selectAll()
    QTest.keyClicks(field, "9")
    QTest.keySequence(field, QKeySequence(QKeySequence.StandardKey.Undo))
    assert window.desk.project.design.reductions.waist == 3 * 25.4
    assert field.text() != "9"


def test_saving_hands_in_what_is_still_being_typed(window: Window, answers: Any, tmp_path: Path) -> None:
    at_work(window)
    field = a_field(window)
    field.selectAll()
    QTest.keyClicks(field, "27 1/2")
    answers.target = tmp_path / "anna.bodice"
    window.deeds["save"].trigger()
    assert read_project(answers.target).measurements["waist_girth"].typed == "27 1/2"


# --- what is shown -----------------------------------------------------------------------


def test_the_title_names_client_and_file_and_marks_what_is_not_saved(window: Window, tmp_path: Path) -> None:
    path = tmp_path / "anna.bodice"
    project = set_client(bodice(), name="Anna (invented)")
    write_project(project, path)
    window.files.open_path(path)
    assert window.windowTitle().startswith("Anna (invented)[*] · anna.bodice")
    assert not window.isWindowModified()
    draw_in(window, 1)
    assert window.isWindowModified()


def test_what_cannot_be_printed_is_not_offered(window: Window) -> None:
    at_work(window)
    assert window.deeds["print"].isEnabled()
    window.desk.open_session(Session(new_project()))
    assert not window.deeds["print"].isEnabled()
    assert not window.deeds["take_most"].isEnabled()


def test_the_most_is_taken_in_one_step(window: Window) -> None:
    draw_in(at_work(window), 5)
    window.deeds["take_most"].trigger()
    # A tenth of 28 in is 2.8 in; in whole eighths 2 3/4.
    assert window.desk.project.design.reductions.waist == pytest.approx(2.75 * 25.4)
    assert window.desk.undo_name == "Most that keeps every limit"


def test_the_button_in_the_comfort_pane_takes_it_too(window: Window) -> None:
    draw_in(at_work(window), 5)
    window.deeds["comfort"].trigger()
    QTest.mouseClick(comfort_of(window).take, Qt.MouseButton.LeftButton)
    assert window.desk.project.design.reductions.waist == pytest.approx(2.75 * 25.4)


def test_comfort_takes_the_place_of_the_form_where_there_is_no_room_for_both(window: Window) -> None:
    at_work(window)
    window.deeds["comfort"].trigger()
    assert (comfort_of(window).isVisible(), window.form.isVisible()) == (True, False)
    window.resize(1600, 900)
    assert (comfort_of(window).isVisible(), window.form.isVisible()) == (True, True)
    QTest.mouseClick(comfort_of(window).head.shut, Qt.MouseButton.LeftButton)
    assert (comfort_of(window).isVisible(), window.form.isVisible()) == (False, True)


def test_a_finding_about_a_field_brings_the_form_back(window: Window) -> None:
    at_work(window)
    window.deeds["comfort"].trigger()
    window.desk.select(Place(level="waist", field="reductions.waist"))
    assert not window.form.isVisible()
    window.desk.select(Place(field="measurements.underbust_inhale"))
    assert window.form.isVisible()


def test_a_new_project_waits_for_its_first_measurement(window: Window) -> None:
    QTest.mouseClick(window.welcome.choices["under_bust"], Qt.MouseButton.LeftButton)
    window.activateWindow()
    focused = window.focusWidget()
    assert focused is not None
    assert focused.accessibleName() == "Bust"


def test_the_ledger_opens_and_closes(window: Window) -> None:
    at_work(window)
    window.deeds["ledger"].trigger()
    assert window.ledger.isVisible()
    assert window.ledger.widget() is not None
    window.ledger.close()
    assert not window.deeds["ledger"].isChecked()


def test_nothing_on_the_toolbar_is_cut_off_on_a_small_laptop(window: Window) -> None:
    at_work(window)
    hidden = [button.text() for button in window.tools.findChildren(QToolButton) if not button.isVisible()]
    assert [text for text in hidden if text] == []


def test_every_action_has_a_key_of_its_own(window: Window) -> None:
    keys = [window.deeds[deed.name].shortcut().toString() for deed in DEEDS]
    taken = [key for key in keys if key]
    assert len(taken) == len(set(taken))
    assert len(taken) >= 18


def test_light_and_dark_at_once_everywhere(window: Window, settings: Settings) -> None:
    before = window.deeds["save"].icon().pixmap(20, 20).toImage()
    window.deeds["dark"].trigger()
    assert look().dark
    assert settings.scheme == "dark"
    assert window.deeds["save"].icon().pixmap(20, 20).toImage() != before
    assert window.welcome.grab().toImage().pixelColor(2, 2) == look().paper


# --- what is remembered ------------------------------------------------------------------


def test_the_window_comes_back_as_it_was_left(qtbot: QtBot, window: Window, settings: Settings) -> None:
    at_work(window)
    window.resize(960, 640)  # the screen of the tests is small
    window.deeds["both"].trigger()
    window.deeds["grid"].setChecked(True)
    window.deeds["allowance"].setChecked(False)
    window.close()
    again = Window(Settings(settings.path))
    qtbot.addWidget(again)
    assert again.size() == window.size()
    assert again.deeds["both"].isChecked()
    assert again.deeds["grid"].isChecked()
    assert not again.deeds["allowance"].isChecked()


def test_recent_files_can_be_opened_from_the_menu(window: Window, tmp_path: Path) -> None:
    path = tmp_path / "anna & berta.bodice"
    write_project(bodice(), path)
    window.settings.remember(path)
    window.show_recent()
    window.menus.recent.actions()[0].trigger()
    assert window.desk.path == path


def test_settings_hold_nothing_of_the_project(window: Window, settings: Settings) -> None:
    window.files.put(set_client(bodice(), name="Quiteparticular"), None)
    draw_in(window, 1.375)
    let_go(window)
    window.close()
    assert "Quiteparticular" not in settings.path.read_text(encoding="utf-8")


def test_a_window_that_is_closed_is_gone(
    qapp: QApplication, qtbot: QtBot, dressed: None, settings: Settings
) -> None:
    def sweep() -> int:
        qapp.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        gc.collect()
        return len(QApplication.allWidgets())

    before = sweep()
    for _ in range(2):
        window = Window(settings, None, demo_files())
        window.files.put(bodice(), None)
        window.show()
        let_go(window)
        window.close()
        window.deleteLater()
        del window
    assert sweep() <= before

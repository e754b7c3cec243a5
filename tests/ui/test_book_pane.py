"""The client book as a page: lists, searches, opens, packs and removes; reads beside the window."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.book import read, written
from tests.ui.conftest import in_hand, on_screen
from workbench.book import Belongings, Entry, Found, Matter, Shelf, index_file, read_index, read_waiting
from workbench.book import reading as entries_read
from workbench.document import to_bytes
from workbench.document.keeping import keep_version, versions_of
from workbench.ui.book import BookAsking, BookPane
from workbench.ui.book import reading as readings
from workbench.ui.book.client_dialog import ClientDialog, Purpose
from workbench.ui.book.words import days_away, first_line, second_line
from workbench.ui.desk import Desk
from workbench.ui.settings import Settings
from workbench.ui.style import dress

TODAY = date(2031, 6, 10)


class Told(BookAsking):
    """Gives the answers it was told to give."""

    def __init__(self) -> None:
        super().__init__()
        self.folder: Path | None = None
        self.out: Path | None = None
        self.takes = True
        self.asked: list[tuple[Purpose, Belongings]] = []
        self.told: list[str] = []

    def which_folder(self, at: Path) -> Path | None:
        return self.folder

    def where_to_pack(self, suggested: Path) -> Path | None:
        return self.out

    def which_of_hers(self, belongings: Belongings, purpose: Purpose) -> Belongings | None:
        self.asked.append((purpose, belongings))
        return belongings if self.takes else None

    def tell(self, title: str, sentence: str) -> None:
        self.told.append(sentence)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Three clients, one of them twice, and a letter that is no project."""
    folder = tmp_path / "clients"
    soon = (date.today() + timedelta(days=2)).isoformat()
    written(folder, "anna.bodice", name="Anna", date="2030-02-02", next_fitting=soon)
    written(folder, "stage/anna two.bodice", name="anna", date="2031-03-03")
    written(folder, "berta.bodice", name="Berta", date="2029-01-01", next_fitting="2020-01-01")
    written(folder, "emile.bodice", name="Émile <b>E.</b>")
    (folder / "letter.bodice").write_text("Dear Anna", encoding="utf-8")
    return folder


@pytest.fixture
def told() -> Told:
    return Told()


@pytest.fixture
def empty(desk: Desk, settings: Settings, told: Told, tmp_path: Path, qtbot: QtBot) -> BookPane:
    """The page before a folder was chosen."""
    pane = BookPane(desk, settings, tmp_path / "data", tmp_path / "cache", told)
    return in_hand(qtbot, pane, 1280, 640)


@pytest.fixture
def pane(empty: BookPane, settings: Settings, folder: Path, qtbot: QtBot) -> BookPane:
    """The page with the folder read."""
    settings.book = folder
    looked(empty, qtbot)
    return empty


def looked(pane: BookPane, qtbot: QtBot) -> None:
    """Look into the folder, until it is read."""
    pane.look()
    qtbot.waitUntil(lambda: not pane.cancel.isVisible() and pane._reading is None)


def titles(pane: BookPane) -> list[str]:
    return [entry.title for entry in pane.model.entries]


def pick(pane: BookPane, place: str) -> None:
    pane.table.show_current(place)


# --- the folder --------------------------------------------------------------------------------


def test_before_a_folder_is_chosen_the_page_says_so(empty: BookPane) -> None:
    empty.look()
    assert "Choose the folder" in empty.words.text()
    assert (empty.begin.isVisible(), empty.search.isEnabled(), empty.open.isVisible()) == (True, False, False)


def test_the_folder_she_chooses_is_listed_and_remembered(
    empty: BookPane, told: Told, settings: Settings, folder: Path, qtbot: QtBot
) -> None:
    told.folder = folder
    empty.begin.click()
    qtbot.waitUntil(lambda: len(titles(empty)) == 5)
    assert settings.book == folder
    assert empty.where.text() == str(folder)


def test_another_folder_throws_the_index_of_the_first_away(
    pane: BookPane, told: Told, folder: Path, tmp_path: Path, qtbot: QtBot
) -> None:
    assert index_file(tmp_path / "cache", folder).exists()
    told.folder = tmp_path / "other"
    written(told.folder, "cara.bodice", name="Cara")
    pane.choose.click()
    qtbot.waitUntil(lambda: titles(pane) == ["Cara"])
    assert not index_file(tmp_path / "cache", folder).exists()


def test_a_folder_that_is_gone_is_one_sentence(pane: BookPane, folder: Path, qtbot: QtBot) -> None:
    folder.rename(folder.with_name("elsewhere"))
    looked(pane, qtbot)
    assert pane.words.text() == f"{folder}: there is no such folder."
    assert pane.begin.isVisible()


def test_an_empty_folder_says_so(empty: BookPane, settings: Settings, tmp_path: Path, qtbot: QtBot) -> None:
    (tmp_path / "none").mkdir()
    settings.book = tmp_path / "none"
    looked(empty, qtbot)
    assert "no project in this folder yet" in empty.words.text()


def test_what_was_left_out_is_said(pane: BookPane, folder: Path, qtbot: QtBot) -> None:
    (folder / "loop").symlink_to(folder)
    looked(pane, qtbot)
    assert "“loop”" in pane.remark.accessibleName()
    assert len(titles(pane)) == 5


# --- the list ----------------------------------------------------------------------------------


def test_every_file_has_a_row_that_can_be_read_aloud(pane: BookPane) -> None:
    assert titles(pane) == ["Anna", "anna", "Berta", "Émile <b>E.</b>", "letter"]
    said = pane.model.data(pane.model.index(4, 0), Qt.ItemDataRole.AccessibleTextRole)
    assert "letter, Cannot be opened: line 1" in str(said)
    assert pane.model.data(pane.model.index(0, 2)) == f"{pane.model.entries[0].next_fitting}, in 2 days"
    assert "5 projects; one cannot be opened." in pane.said.accessibleName()


@pytest.mark.parametrize(
    ("order", "first"), [("client", "Anna"), ("date", "anna"), ("next_fitting", "Anna"), ("open", "letter")]
)
def test_orders_are_kept_between_two_runs(pane: BookPane, settings: Settings, order: str, first: str) -> None:
    pane.order.button(order).click()
    assert titles(pane)[0] == first
    assert settings.word("book_order", ["client", "date", "next_fitting", "open"]) == order


def test_the_head_of_a_column_sorts_too(pane: BookPane) -> None:
    pane.table.horizontalHeader().sectionClicked.emit(1)
    assert (pane.order.value, titles(pane)[0]) == ("date", "anna")


def test_the_row_that_is_picked_stays_picked(pane: BookPane, qtbot: QtBot) -> None:
    pick(pane, "berta.bodice")
    pane.order.button("date").click()
    looked(pane, qtbot)
    entry = pane.table.entry
    assert entry is not None
    assert entry.place == "berta.bodice"


def test_a_changed_file_is_seen_when_the_page_comes_into_sight(
    pane: BookPane, folder: Path, qtbot: QtBot
) -> None:
    pane.hide()
    written(folder, "berta.bodice", name="Cara")
    pane.show()
    qtbot.waitUntil(lambda: "Cara" in titles(pane))


def test_out_of_sight_nothing_is_read(pane: BookPane, folder: Path) -> None:
    pane.look()
    pane.hide()
    assert pane._reading is None


def test_a_changed_file_is_seen_when_the_page_looks_again(pane: BookPane, folder: Path, qtbot: QtBot) -> None:
    written(folder, "berta.bodice", name="Dora")
    looked(pane, qtbot)
    assert "Dora" in titles(pane)
    assert "Berta" not in titles(pane)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [(640, 400), (1920, 1000)])
def test_it_is_painted_at_any_size(pane: BookPane, scheme: str, size: tuple[int, int]) -> None:
    dress("dark" if scheme == "dark" else "light")
    pane.resize(*size)
    assert not pane.grab().isNull()
    assert pane.table.columnWidth(0) > 200
    dress("light")


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="names of files are text elsewhere")
def test_a_name_in_other_letters_is_listed_opened_and_known_again(
    pane: BookPane, folder: Path, tmp_path: Path, qtbot: QtBot
) -> None:
    odd = written(folder, os.fsdecode(b"caf\xe9\n<b>.bodice"))
    os.utime(odd, (1_500_000_000, 1_500_000_000))
    looked(pane, qtbot)
    pick(pane, odd.name)
    assert not pane.grab().isNull()
    assert pane.table.entry is not None
    with qtbot.waitSignal(pane.chosen) as signal:
        QTest.keyClick(pane.table, Qt.Key.Key_Return)
    assert signal.args == [odd]
    assert odd.name in read_index(index_file(tmp_path / "cache", folder))


# --- keys --------------------------------------------------------------------------------------


def test_a_letter_over_the_list_searches_and_enter_opens(pane: BookPane, folder: Path, qtbot: QtBot) -> None:
    pane.table.setFocus()
    QTest.keyClicks(pane.table, "e")
    QTest.keyClicks(pane.search, "mile")
    assert titles(pane) == ["Émile <b>E.</b>"]
    with qtbot.waitSignal(pane.chosen) as signal:
        QTest.keyClick(pane.search, Qt.Key.Key_Return)
    assert signal.args == [folder / "emile.bodice"]


def test_down_goes_to_the_list_and_escape_ends_the_search(pane: BookPane) -> None:
    pane.search.setFocus()
    QTest.keyClicks(pane.search, "anna")
    QTest.keyClick(pane.search, Qt.Key.Key_Down)
    assert pane.table.hasFocus()
    pane.search.setFocus()
    QTest.keyClick(pane.search, Qt.Key.Key_Escape)
    assert len(titles(pane)) == 5


def test_a_search_that_finds_nothing_names_it_and_opens_nothing(pane: BookPane, qtbot: QtBot) -> None:
    pane.search.setText("<i>nobody</i>")
    assert pane.words.text() == "No project is called “<i>nobody</i>”."
    with qtbot.assertNotEmitted(pane.chosen):
        QTest.keyClick(pane.search, Qt.Key.Key_Return)


def test_what_cannot_be_opened_says_why_instead(pane: BookPane, qtbot: QtBot) -> None:
    pick(pane, "letter.bodice")
    assert not pane.open.isEnabled()
    with qtbot.assertNotEmitted(pane.chosen):
        QTest.keyClick(pane.table, Qt.Key.Key_Return)
    assert "“letter.bodice” cannot be opened" in pane.said.accessibleName()


# --- reading -----------------------------------------------------------------------------------


def test_reading_can_be_stopped_and_goes_on_where_it_was(
    empty: BookPane, settings: Settings, folder: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    one_at_a_time(empty, monkeypatch)
    settings.book = folder
    looked(empty, qtbot)
    assert len(titles(empty)) == 1
    assert "4 are still to be read" in empty.said.accessibleName()
    monkeypatch.undo()
    looked(empty, qtbot)
    assert len(titles(empty)) == 5


def one_at_a_time(pane: BookPane, monkeypatch: pytest.MonkeyPatch) -> None:
    """Have the reading stopped while it reads the first file."""

    def stopped(shelf: Shelf) -> Iterator[Entry]:
        for entry in read_waiting(shelf):
            assert pane._reading is not None
            pane._reading.requestInterruption()
            yield entry

    monkeypatch.setattr(readings, "read_waiting", stopped)


def test_the_list_stays_where_she_has_scrolled_to_while_files_are_read(
    pane: BookPane, folder: Path, qtbot: QtBot
) -> None:
    pane.resize(1280, 400)
    pick(pane, "anna.bodice")
    bar = pane.table.verticalScrollBar()
    bar.setValue(bar.maximum())
    assert bar.value() > 0
    there = bar.value()
    written(folder, "zoe.bodice", name="Zoe")
    looked_again = [entry for entry in pane.model.entries if entry.place == "berta.bodice"]
    pane.look()
    assert pane._reading is not None
    pane._reading.read.emit(looked_again)
    assert bar.value() == there
    looked(pane, qtbot)


def test_a_fault_in_one_project_does_not_keep_the_others_from_the_list(
    empty: BookPane, settings: Settings, folder: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    def faulty(project: object) -> object:
        raise ZeroDivisionError

    monkeypatch.setattr(entries_read, "picture_of", faulty)
    settings.book = folder
    looked(empty, qtbot)
    assert {entry.reason for entry in empty.model.entries if entry.name} == {
        "cannot be worked out (ZeroDivisionError)."
    }


def test_an_index_that_cannot_be_written_is_no_trouble_of_hers(
    empty: BookPane, settings: Settings, folder: Path, tmp_path: Path, qtbot: QtBot
) -> None:
    (tmp_path / "cache").write_text("in the way", encoding="utf-8")
    settings.book = folder
    looked(empty, qtbot)
    assert len(titles(empty)) == 5


def test_a_known_folder_is_listed_with_no_file_read(
    empty: BookPane,
    settings: Settings,
    folder: Path,
    tmp_path: Path,
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    (folder / "letter.bodice").unlink()
    for path in folder.rglob("*.bodice"):
        os.utime(path, (1_500_000_000, 1_500_000_000))
    read(folder, index_file(tmp_path / "cache", folder))
    monkeypatch.setattr(entries_read, "open_project", None)
    settings.book = folder
    looked(empty, qtbot)
    assert titles(empty) == ["Anna", "anna", "Berta", "Émile <b>E.</b>"]


# --- one client --------------------------------------------------------------------------------


def test_one_client_is_packed_into_one_file(pane: BookPane, told: Told, tmp_path: Path, qtbot: QtBot) -> None:
    told.out = tmp_path / "anna.zip"
    pick(pane, "anna.bodice")
    pane.pack.click()
    pane.deeds.wait()
    ((purpose, hers),) = told.asked
    assert (purpose, [kept.place for kept in hers.projects]) == (
        "pack",
        ["anna.bodice", "stage/anna two.bodice"],
    )
    assert "2 files are packed" in pane.said.accessibleName()
    assert told.out.exists()


def test_what_cannot_be_packed_is_said(pane: BookPane, told: Told, tmp_path: Path) -> None:
    told.out = tmp_path / "nowhere" / "anna.zip"
    pick(pane, "anna.bodice")
    pane.pack.click()
    pane.deeds.wait()
    assert "Nothing was packed" in pane.said.accessibleName()


def test_one_client_is_removed_everywhere(
    pane: BookPane, told: Told, settings: Settings, folder: Path, tmp_path: Path, desk: Desk
) -> None:
    keep_version(tmp_path / "data", folder / "anna.bodice", to_bytes(desk.project))
    settings.remember(folder / "anna.bodice")
    settings.remember(folder / "berta.bodice")
    pick(pane, "anna.bodice")
    QTest.keyClick(pane.table, Qt.Key.Key_Delete)
    assert titles(pane) == ["Berta", "Émile <b>E.</b>", "letter"]
    assert settings.recent() == (folder / "berta.bodice",)
    assert versions_of(tmp_path / "data", folder / "anna.bodice") == ()
    assert set(read_index(index_file(tmp_path / "cache", folder))) == {
        "berta.bodice",
        "emile.bodice",
        "letter.bodice",
    }
    assert "2 files are removed" in pane.said.accessibleName()


def test_thinking_better_of_it_removes_nothing(pane: BookPane, told: Told, folder: Path) -> None:
    told.takes = False
    pick(pane, "anna.bodice")
    pane.remove.click()
    assert (folder / "anna.bodice").exists()
    assert len(titles(pane)) == 5


def test_a_project_that_is_open_here_is_not_removed(
    pane: BookPane, told: Told, folder: Path, desk: Desk
) -> None:
    desk.mark_saved(folder / "stage" / "anna two.bodice")
    pick(pane, "anna.bodice")
    pane.remove.click()
    assert told.asked == []
    assert told.told == ["“stage/anna two.bodice” is open in this window: close the project first."]


def test_the_question_names_what_goes_and_keeps_everything_unless_told(
    pane: BookPane, told: Told, qtbot: QtBot
) -> None:
    pick(pane, "anna.bodice")
    told.takes = False
    pane.remove.click()
    dialog = on_screen(qtbot, ClientDialog(told.asked[0][1], "remove"), 600, 440)
    assert [dialog.list.item(row).text() for row in range(2)] == ["anna.bodice", "stage/anna two.bodice"]
    assert dialog.shut.isDefault()
    assert "cannot be had again" in " ".join(label.text() for label in dialog.findChildren(type(dialog.said)))
    dialog.list.item(0).setCheckState(Qt.CheckState.Unchecked)
    assert [kept.place for kept in dialog.chosen().projects] == ["stage/anna two.bodice"]
    assert dialog.said.text() == "1 project."
    dialog.list.item(1).setCheckState(Qt.CheckState.Unchecked)
    assert not dialog.deed.isEnabled()


# --- words -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("day", "words"),
    [
        ("2031-06-10", "today"),
        ("2031-06-11", "tomorrow"),
        ("2031-06-09", "yesterday"),
        ("2031-06-20", "in 10 days"),
        ("2031-06-01", "9 days ago"),
        ("2032-06-20", ""),
        ("2030-06-01", "passed"),
        ("", ""),
    ],
)
def test_how_far_off_a_day_is(day: str, words: str) -> None:
    assert days_away(day, TODAY) == words


def test_who_is_made_up_is_said_once() -> None:
    assert first_line(Entry(Found("a.bodice", 1, 1), "Anna", invented=True)) == "Anna (invented)"
    assert first_line(Entry(Found("a.bodice", 1, 1), "Anna, invented", invented=True)) == "Anna, invented"
    assert second_line(Entry(Found("a.bodice", 1, 1), "", "Plunge")) == "Plunge  ·  a.bodice"


def test_a_picture_that_is_none_is_left_out(pane: BookPane) -> None:
    entry = Entry(
        Found("z.bodice", 1, 1), "Zoe", picture="no letters", matters=(Matter("over", "above"),) * 4
    )
    pane.model.show_entries([entry], TODAY)
    assert not pane.table.grab().isNull()

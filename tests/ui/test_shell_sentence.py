"""The foot: the most important thing in words, the rest behind it, and a click that shows the place."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from workbench.document import Session, new_project, set_measurement, set_reduction, set_unit
from workbench.draft import Finding
from workbench.ui.desk import Desk
from workbench.ui.findings import FindingRow
from workbench.ui.marks import WORDS, mark_of, word_of
from workbench.ui.sentence import Foot


@pytest.fixture
def foot(qtbot: QtBot, desk: Desk) -> Foot:
    foot = Foot(desk)
    qtbot.addWidget(foot)
    foot.resize(960, 50)
    foot.show()
    desk.now()
    return foot


def draw_in(desk: Desk, inches: float) -> None:
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", 25.4 * inches))
    desk.now()


def said(foot: Foot) -> str:
    return foot.row.accessibleName()


def test_it_says_the_most_important_finding_with_its_numbers(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 5)
    assert said(foot).startswith("Over the limit. ")
    assert "5 in" in said(foot)
    assert "above the limit you set" in said(foot)


def test_it_speaks_her_unit(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 5)
    desk.apply("Unit", set_unit(desk.project, "cm", 8))
    desk.now()
    assert "12.7 cm" in said(foot)


def test_within_the_limit_it_still_says_how_far(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 2)
    assert said(foot).startswith("Within. ")
    assert "2 in" in said(foot)


def test_what_keeps_no_limit_is_in_order_rather_than_within() -> None:
    assert word_of(Finding("note", "pieces_within", "49 pieces to cut.")) == "In order"
    assert word_of(Finding("note", "waist_within", "Waist: within your 10 %.")) == "Within"


def test_what_stands_behind_is_announced_with_its_weight(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 2)
    assert foot.more.accessibleName().endswith(WORDS[mark_of(desk.picture.findings[1])])


def test_it_counts_what_stands_behind(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 5)
    assert foot.more.text() == f" and {len(desk.picture.findings) - 1} more"
    assert foot.more.isVisible()


def test_a_click_lights_up_the_place(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 5)
    QTest.mouseClick(foot.row, Qt.MouseButton.LeftButton)
    assert desk.selection == desk.picture.findings[0].place
    assert desk.selection is not None


def test_enter_does_what_a_click_does(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 5)
    QTest.keyClick(foot.row, Qt.Key.Key_Return)
    assert desk.selection == desk.picture.findings[0].place


def test_the_list_has_them_all_and_a_click_in_it_lights_one_up(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 5)
    QTest.mouseClick(foot.more, Qt.MouseButton.LeftButton)
    rows = [row for row in foot.popup.list.findChildren(FindingRow) if not row.isHidden()]
    assert [row.finding for row in rows] == list(desk.picture.findings)
    QTest.mouseClick(rows[1], Qt.MouseButton.LeftButton)
    assert desk.selection == desk.picture.findings[1].place
    assert not foot.popup.isVisible()


def test_a_shorter_list_shows_no_rows_of_the_longer_one(foot: Foot, desk: Desk) -> None:
    draw_in(desk, 5)
    foot.on_more_clicked()
    draw_in(desk, 0)
    rows = [row for row in foot.popup.list.findChildren(FindingRow) if not row.isHidden()]
    assert [row.finding for row in rows] == list(desk.picture.findings)
    foot.popup.close()


def test_what_could_not_be_read_is_said_until_the_next_draft(foot: Foot, desk: Desk) -> None:
    desk.refuse("measurements.waist_girth", "Waist: “9 1/0” has a nought below the line.")
    assert said(foot) == "Not read. Waist: “9 1/0” has a nought below the line."
    desk.now()
    assert not said(foot).startswith("Not read")


def test_with_nothing_measured_it_says_what_is_missing(foot: Foot, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    assert said(foot).startswith("Still needed. Waist")


def test_what_contradicts_itself_is_no_mere_gap(foot: Foot, desk: Desk) -> None:
    project = set_measurement(desk.project, "shoulder_to_underbust", "20")
    desk.apply("Shoulder to underbust", set_measurement(project, "shoulder_to_waist", "15"))
    desk.now()
    assert said(foot).startswith("Cannot be drafted. ")
    assert "20 in" in said(foot)


def test_the_foot_keeps_its_height_whatever_it_says(foot: Foot, desk: Desk) -> None:
    before = foot.sizeHint().height()
    foot.row.show_sentence("over", "Over the limit", "a long sentence " * 60)
    assert foot.sizeHint().height() == before
    assert foot.row._layout.lineCount() == 2
    assert foot.row._layout.text().endswith("…")


def test_a_row_in_a_list_is_as_tall_as_its_sentence(qtbot: QtBot, dressed: None) -> None:
    row = FindingRow()
    qtbot.addWidget(row)
    row.show_sentence("note", "Note", "short")
    short = row.heightForWidth(400)
    row.show_sentence("note", "Note", "a long sentence " * 30)
    assert row.heightForWidth(400) > 4 * short
    assert row.heightForWidth(800) < row.heightForWidth(400)

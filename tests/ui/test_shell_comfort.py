"""The comfort pane: every level against its limit, the most that keeps them, nothing left unsaid."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from workbench.body import CAUTIONS
from workbench.document import Session, new_project, set_reduction
from workbench.ui.comfort_pane import ComfortPane
from workbench.ui.desk import Desk
from workbench.ui.findings import FindingRow


@pytest.fixture
def pane(qtbot: QtBot, desk: Desk) -> ComfortPane:
    pane = ComfortPane(desk, QAction(desk), QAction(desk))
    qtbot.addWidget(pane)
    pane.resize(330, 800)
    pane.show()
    return pane


def draw_in(desk: Desk, inches: float) -> None:
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", 25.4 * inches))
    desk.now()


def test_every_level_is_there_with_its_word(pane: ComfortPane, desk: Desk) -> None:
    draw_in(desk, 5)
    spoken = pane.picture.accessibleDescription()
    for level in ("Bust", "Underbust", "Waist", "Top hip"):
        assert f"{level}: " in spoken
    # 5 in from a waist of 28 in is 17.9 %, against 10 %.
    assert "Waist: Over the limit. 28 body · 23 finished: 5 less, 17.9 %" in spoken


def test_what_is_over_only_when_laced_shut_is_said(pane: ComfortPane, desk: Desk) -> None:
    draw_in(desk, 1)
    assert "Waist: Within; over if laced shut." in pane.picture.accessibleDescription()


def test_the_most_is_said_both_ways(pane: ComfortPane, desk: Desk) -> None:
    draw_in(desk, 5)
    # A tenth of 28 in is 2.8 in, in whole eighths 2¾; a quarter of that is 11/16: four times ¾ would be 3.
    assert pane.most.text().startswith("2¾ in round the body, ¹¹⁄₁₆ in a quarter")


def test_all_its_findings_and_cautions_are_there(pane: ComfortPane, desk: Desk) -> None:
    draw_in(desk, 5)
    comfort = desk.picture.comfort
    assert comfort is not None
    pane.show_findings()
    rows = [row for row in pane.findings.findChildren(FindingRow) if not row.isHidden()]
    assert [row.finding for row in rows] == list(comfort.findings)
    words = " ".join(label.text() for label in pane.findChildren(type(pane.most)))
    assert all(caution in words for caution in CAUTIONS)
    assert "safe" not in words.lower()


def test_a_click_on_a_finding_lights_up_its_level(pane: ComfortPane, desk: Desk) -> None:
    draw_in(desk, 5)
    pane.show_findings()
    row = pane.findings.first_row()
    assert row is not None
    QTest.mouseClick(row, Qt.MouseButton.LeftButton)
    assert desk.selection is not None
    assert desk.selection.level == "waist"


def test_with_nothing_to_judge_it_says_so(pane: ComfortPane, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    assert "as soon as" in pane.most.text()
    assert not pane.take.isEnabled()
    assert pane.picture.accessibleDescription() == ""


def test_hidden_it_does_nothing_and_shown_it_catches_up(pane: ComfortPane, desk: Desk) -> None:
    draw_in(desk, 5)
    pane.hide()
    draw_in(desk, 1)
    assert "Waist: Over the limit" in pane.picture.accessibleDescription()
    pane.show()
    assert "Waist: Within" in pane.picture.accessibleDescription()

"""“Why?” beside a finding: what is said below it, where it leads, and that it fits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, on_screen
from workbench.document import Session, new_project, set_reduction
from workbench.ui.desk import Desk
from workbench.ui.explained import explanation
from workbench.ui.help import HelpWindow
from workbench.ui.sentence import Foot


@pytest.fixture
def foot(qtbot: QtBot, dressed: None) -> Iterator[Foot]:
    """The foot of a bodice that is drawn in far, in a window tall enough for the list above it."""
    desk = Desk(Session(set_reduction(bodice(), "waist", 120.0)))
    window = on_screen(qtbot, QWidget(), 1000, 700)
    foot = Foot(desk, window)
    foot.setGeometry(0, 640, 1000, 60)
    foot.show()
    foot.show_picture(desk.picture)
    yield foot
    assert window  # kept until here


def test_why_opens_below_the_sentence_and_the_list_grows(foot: Foot) -> None:
    foot.more.click()
    before = foot.popup.height()
    row = foot.popup.list.rows()[0]
    row.why.click()
    assert "Why." in row.below.text()
    assert "What to do." in row.below.text()
    assert row.below.isVisible()
    assert foot.popup.height() > before
    assert foot.popup.geometry().bottom() < foot.mapToGlobal(foot.rect().topLeft()).y() + 1
    row.why.click()
    assert foot.popup.height() == before
    foot.popup.close()


def test_enter_opens_it_too(foot: Foot) -> None:
    foot.more.click()
    row = foot.popup.list.rows()[0]
    QTest.keyClick(row.why, Qt.Key.Key_Return)
    assert row.below.isVisible()
    foot.popup.close()


def test_more_leads_to_the_section_in_the_help(foot: Foot) -> None:
    foot.more.click()
    row = foot.popup.list.rows()[0]
    row.why.click()
    row.below.linkActivated.emit("findings#a-bone-bends-too-much")
    assert not foot.popup.isVisible()
    help_window = foot.window().findChild(HelpWindow)
    assert help_window is not None
    assert help_window.isVisible()
    assert help_window.view.page is not None
    assert help_window.view.page.name == "findings"
    assert help_window.view.verticalScrollBar().value() > 0


def test_one_finding_alone_can_be_asked_too(qtbot: QtBot, dressed: None) -> None:
    desk = Desk(Session(new_project()))
    window = on_screen(qtbot, QWidget(), 1000, 700)
    foot = Foot(desk, window)
    foot.setGeometry(0, 640, 1000, 60)
    foot.show()
    foot.show_picture(desk.picture)
    assert foot.more.text() == "Why?"
    foot.more.click()
    assert foot.popup.list.rows()[0].below.isVisible()
    foot.popup.close()


def test_another_finding_in_its_row_is_closed(foot: Foot) -> None:
    foot.more.click()
    row = foot.popup.list.rows()[0]
    row.why.click()
    assert row.row.finding is not None
    row.show_finding(replace(row.row.finding, code="spike"), "Another")
    assert not row.why.isChecked()
    foot.popup.close()


def test_a_code_that_nothing_is_written_about_has_the_link_alone() -> None:
    assert explanation("never heard of").startswith('<a href="findings"')
    assert "<b>Why.</b>" in explanation("spike")

"""Printing from the window: the choice of paper, the sheets in sight, a whole file or a sentence."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from workbench.document import printed, set_reduction
from workbench.ui.desk import Desk
from workbench.ui.files import Files
from workbench.ui.print_dialog import PrintDialog
from workbench.ui.settings import Settings


@pytest.fixture
def dialog(qtbot: QtBot, desk: Desk, settings: Settings, answers: Any) -> PrintDialog:
    dialog = PrintDialog(desk, Files(desk, settings, answers), answers)
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


def pick(dialog: PrintDialog, paper: str) -> None:
    dialog.paper.setCurrentIndex(dialog.paper.findData(paper))
    dialog.paper.activated.emit(dialog.paper.currentIndex())


def type_length(dialog: PrintDialog, name: str, text: str) -> None:
    field = dialog.lengths[name].field
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def state(dialog: PrintDialog) -> str:
    return dialog.state.accessibleName()


def write(qtbot: QtBot, dialog: PrintDialog) -> None:
    QTest.mouseClick(dialog.write, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: dialog._job is None, timeout=10_000)


def test_other_paper_other_sheets(dialog: PrintDialog) -> None:
    assert "of A4" in state(dialog)
    before = dialog.preview.accessibleDescription()
    pick(dialog, "A0")
    assert state(dialog).startswith("1 sheet of A0")
    assert dialog.preview.accessibleDescription() != before


def test_a_margin_is_typed_in_millimetres_whatever_her_unit(dialog: PrintDialog, desk: Desk) -> None:
    assert desk.project.unit == "in"
    type_length(dialog, "margin_mm", "15")
    assert dialog._project.paper.margin_mm == 15.0
    type_length(dialog, "overlap_mm", "1/2 in")
    assert dialog._project.paper.overlap_mm == pytest.approx(12.7)


def test_a_margin_that_leaves_nothing_is_said_and_not_printed(dialog: PrintDialog) -> None:
    type_length(dialog, "margin_mm", "110")
    assert state(dialog).startswith("Cannot be printed")
    assert not dialog.write.isEnabled()
    type_length(dialog, "margin_mm", "10")
    assert dialog.write.isEnabled()


def test_what_cannot_be_read_stays_to_be_put_right(dialog: PrintDialog) -> None:
    type_length(dialog, "margin_mm", "wide")
    row = dialog.lengths["margin_mm"]
    assert row.field.text() == "wide"
    assert row.trouble.text()
    assert row.trouble.isVisible()
    assert dialog._project.paper.margin_mm == 10.0


def test_a_roll_asks_for_its_width(dialog: PrintDialog) -> None:
    assert not dialog.lengths["roll_width_mm"].isVisible()
    pick(dialog, "roll")
    assert dialog.lengths["roll_width_mm"].isVisible()
    type_length(dialog, "roll_width_mm", "40")
    assert dialog._project.paper.roll_width_mm == pytest.approx(1016)
    assert state(dialog).startswith("One strip")


def test_closing_leaves_the_project_alone(dialog: PrintDialog, desk: Desk) -> None:
    before = desk.project
    pick(dialog, "A3")
    QTest.mouseClick(dialog.shut, Qt.MouseButton.LeftButton)
    assert desk.project is before


def test_the_file_is_what_the_command_would_print(
    qtbot: QtBot, dialog: PrintDialog, desk: Desk, answers: Any, tmp_path: Path
) -> None:
    answers.target = tmp_path / "out.pdf"
    pick(dialog, "Letter")
    write(qtbot, dialog)
    assert answers.target.read_bytes() == printed(desk.picture, desk.project.paper)
    assert desk.project.paper.name == "Letter"
    assert desk.undo_name == "Paper"
    assert state(dialog).startswith("Written")
    assert dialog.open_it.isEnabled()


def test_no_place_to_write_to_is_said_and_nothing_is_there(
    qtbot: QtBot, dialog: PrintDialog, answers: Any, tmp_path: Path
) -> None:
    answers.target = tmp_path / "no such folder" / "out.pdf"
    write(qtbot, dialog)
    assert state(dialog).startswith("Not written")
    assert "no such folder" in state(dialog)
    assert not dialog.open_it.isEnabled()
    assert dialog.write.isEnabled()


def test_it_never_prints_silently_over_a_limit(dialog: PrintDialog, desk: Desk) -> None:
    assert not dialog.warning.isVisible()
    dialog._change(set_reduction(desk.project, "waist", 5 * 25.4))
    assert dialog.warning.isVisible()
    assert "above the limit you set" in dialog.warning.accessibleName()

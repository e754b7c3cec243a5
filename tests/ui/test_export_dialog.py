"""Exports from the window: what goes with each kind of file, a whole file or a sentence."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox
from pytestqt.qtbot import QtBot

from workbench.document import exported, set_measurement, set_reduction
from workbench.ui.desk import Desk
from workbench.ui.export_choices import KINDS, Kind
from workbench.ui.export_dialog import ExportDialog
from workbench.ui.files import Files
from workbench.ui.look import look
from workbench.ui.settings import Settings


def opened(qtbot: QtBot, desk: Desk, settings: Settings, answers: Any, kind: Kind = "sheet") -> ExportDialog:
    dialog = ExportDialog(desk, Files(desk, settings, answers), answers, kind=kind)
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


@pytest.fixture
def dialog(qtbot: QtBot, desk: Desk, settings: Settings, answers: Any) -> ExportDialog:
    return opened(qtbot, desk, settings, answers)


def pick(combo: QComboBox, data: object) -> None:
    combo.setCurrentIndex(combo.findData(data))
    combo.activated.emit(combo.currentIndex())


def state(dialog: ExportDialog) -> str:
    return dialog.state.accessibleName()


def write(qtbot: QtBot, dialog: ExportDialog) -> None:
    QTest.mouseClick(dialog.write, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: dialog._job is None, timeout=10_000)


def test_a_sheet_says_its_paper_and_shows_its_pieces(dialog: ExportDialog) -> None:
    assert state(dialog).startswith("One sheet of A")
    assert "Front 1, fashion cloth" in dialog.preview.accessibleDescription()


def test_a_smaller_scale_takes_smaller_paper(dialog: ExportDialog) -> None:
    before = state(dialog)
    pick(dialog.choices.scale, 0.25)
    assert state(dialog) != before
    assert "One sheet of A4" in state(dialog)


@pytest.mark.parametrize("kind", [kind for kind, _ in KINDS])
def test_only_what_goes_with_the_kind_is_shown(dialog: ExportDialog, kind: Kind) -> None:
    choices = dialog.choices
    pick(choices.kind, kind)
    assert choices.line.isVisible() == choices.grid.isVisible() == (kind == "projector")
    assert choices.dxf.isVisible() == (kind == "dxf")
    assert choices.rounding.isVisible() == (kind == "guide")
    assert choices.scale.isVisible() == (kind != "guide")
    assert dialog.piece.isVisible() == (kind == "guide")
    assert dialog.preview.isVisible() == (kind != "guide")


@pytest.mark.parametrize(
    ("kind", "begins"), [("svg", b"<?xml"), ("dxf", b"  0"), ("sheet", b"%PDF"), ("guide", b"%PDF")]
)
def test_the_file_is_written_whole(
    qtbot: QtBot, dialog: ExportDialog, answers: Any, tmp_path: Path, kind: Kind, begins: bytes
) -> None:
    pick(dialog.choices.kind, kind)
    answers.target = tmp_path / f"out.{dialog.choices.format}"
    write(qtbot, dialog)
    assert answers.suggested.suffix == answers.target.suffix
    assert answers.target.read_bytes().startswith(begins)
    assert state(dialog).startswith("Written")
    assert dialog.open_it.isEnabled()


def test_what_is_written_is_what_was_chosen(
    qtbot: QtBot, dialog: ExportDialog, desk: Desk, answers: Any, tmp_path: Path
) -> None:
    pick(dialog.choices.kind, "projector")
    pick(dialog.choices.ground, "dark")
    dialog.choices.layers.boxes["lining"].click()
    choice = dialog.choices.choice()
    assert choice.layers == ("fashion", "lining")
    assert choice.projector is not None
    assert choice.projector.ground == "dark"
    answers.target = tmp_path / "out.pdf"
    write(qtbot, dialog)
    assert answers.target.read_bytes() == exported(desk.picture, "pdf", choice)


def test_a_folder_that_cannot_be_written_is_said(
    qtbot: QtBot, dialog: ExportDialog, answers: Any, tmp_path: Path
) -> None:
    answers.target = tmp_path / "nowhere" / "out.pdf"
    write(qtbot, dialog)
    assert state(dialog).startswith("Not written")
    assert "its folder does not exist" in state(dialog)
    assert not dialog.open_it.isEnabled()


def test_nothing_is_written_when_she_thinks_better_of_it(dialog: ExportDialog, desk: Desk) -> None:
    QTest.mouseClick(dialog.write, Qt.MouseButton.LeftButton)
    assert dialog._job is None
    assert desk.undo_name is None


def test_a_stopped_draft_cannot_be_written_and_says_why(
    qtbot: QtBot, desk: Desk, settings: Settings, answers: Any
) -> None:
    desk.apply("Waist", set_measurement(desk.project, "waist_girth", ""))
    dialog = opened(qtbot, desk, settings, answers)
    assert state(dialog).startswith("Cannot be written")
    assert not dialog.write.isEnabled()
    pick(dialog.choices.kind, "guide")
    assert not dialog.write.isEnabled()


def test_a_limit_that_is_passed_is_said_and_printed(
    qtbot: QtBot, desk: Desk, settings: Settings, answers: Any
) -> None:
    desk.apply("Waist", set_reduction(desk.project, "waist", 152.4))
    dialog = opened(qtbot, desk, settings, answers)
    assert dialog.warning.isVisible()
    assert "above the limit you set" in dialog.warning.accessibleName()


def test_a_length_that_cannot_be_read_changes_nothing(dialog: ExportDialog) -> None:
    pick(dialog.choices.kind, "projector")
    field = dialog.choices.line.field
    field.selectAll()
    QTest.keyClicks(field, "wide")
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert dialog.choices.line.trouble.text()
    assert dialog.choices.line.mm == 2.0


def test_everything_has_a_name_for_who_cannot_see_it(dialog: ExportDialog) -> None:
    for combo in dialog.findChildren(QComboBox):
        assert combo.accessibleName()
    assert dialog.preview.accessibleName()


def test_stitch_lines_alone_are_seen_as_they_are_written_without_gaps(dialog: ExportDialog) -> None:
    dialog.choices.what.setCurrentIndex(dialog.choices.what.findData("panels"))
    dialog.on_changed()
    ink = look().ink.lightness() + 60
    image = dialog.preview.grab().toImage()
    rows = range(image.height())
    dark = [sum(image.pixelColor(x, y).lightness() < ink for y in rows) for x in range(image.width())]
    # the centre front is one upright line: most of its pixels are there, not every other one
    assert max(dark) > 0.17 * image.height()

"""The ledger as a table: it closes, it is typed into where a figure stands, and it can be copied."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, in_hand
from workbench.document import Session, set_measurement, set_pin, set_reduction, set_rule
from workbench.draft import LedgerLine, Place
from workbench.ui.desk import Desk
from workbench.ui.form import LedgerTable
from workbench.ui.form.ledger_model import FIRST

INCH = 25.4  # international yard and pound agreement 1959, from memory


@pytest.fixture
def table(qtbot: QtBot, desk: Desk) -> LedgerTable:
    return in_hand(qtbot, LedgerTable(desk), 1200, 240)


def cell(table: LedgerTable, level: str, kind: str, quarter: str | None = None, seam: int = 0) -> QModelIndex:
    model = table.model
    column = next(
        number
        for number, column in enumerate(model.columns)
        if (column.kind, column.quarter, column.seam) == (kind, quarter, seam)
    )
    return model.index(FIRST + model.levels.index(level), column)


def editor(table: LedgerTable, index: QModelIndex) -> QLineEdit:
    table.cells.setCurrentIndex(index)
    table.cells.setFocus()
    QTest.keyClick(table.cells, Qt.Key.Key_Return)
    found = table.cells.findChild(QLineEdit)
    assert found is not None
    return found


def typed(table: LedgerTable, index: QModelIndex, text: str) -> QLineEdit:
    found = editor(table, index)
    found.selectAll()
    QTest.keyClicks(found, text)
    QTest.keyClick(found, Qt.Key.Key_Return)
    return found


def pinned(desk: Desk, seam: int, level: str) -> float | None:
    shares = desk.project.design.front.seams[seam - 1].shares
    return next((share.pin_mm for share in shares if share.level == level), None)


def test_every_line_of_the_ledger_is_there(table: LedgerTable, desk: Desk) -> None:
    outcome = desk.picture.outcome
    assert outcome is not None

    def shown(line: LedgerLine) -> tuple[float | None, float | None]:
        return tuple(  # type: ignore[return-value]
            table.model.amount(cell(table, line.level, kind, line.quarter)) for kind in ("placed", "needed")
        )

    assert [shown(line) for line in outcome.ledger] == [(line.placed, line.needed) for line in outcome.ledger]


def test_the_quarter_sum_of_the_trade(qtbot: QtBot, dressed: None) -> None:
    # Common practice, no source: bust 38, waist and underbust 34, one figure, 2 in a quarter. A quarter of
    # the bust is 9½, of the waist 8½, so 3 in are taken in a quarter; round the body that is 12.
    project = set_rule(bodice(), "one_figure")
    for key, text in (("bust_girth", "38"), ("underbust_girth", "34"), ("waist_girth", "34")):
        project = set_measurement(project, key, text)
    project = set_measurement(project, "top_hip_girth", "37")
    table = LedgerTable(Desk(Session(set_reduction(project, "waist", 4 * 2 * INCH))))
    qtbot.addWidget(table)
    quarter = table.model.text(cell(table, "waist", "placed", "front"))
    whole = table.model.text(cell(table, "waist", "placed"))
    assert (quarter, whole) == ("3", "12")


def test_typing_in_a_cell_pins_it(table: LedgerTable, desk: Desk) -> None:
    typed(table, cell(table, "waist", "seam", "front", 1), "5/8")
    assert pinned(desk, 1, "waist") == pytest.approx(0.625 * INCH)


def test_a_pin_of_the_side_seam_belongs_to_one_quarter(table: LedgerTable, desk: Desk) -> None:
    typed(table, cell(table, "waist", "seam", "back", 3), "1/4")
    design = desk.project.design
    assert (design.front.side_shares, len(design.back.side_shares)) == ((), 1)


def test_delete_unpins(table: LedgerTable, desk: Desk) -> None:
    desk.apply("Pin", set_pin(desk.project, "front", 1, "waist", 12.7))
    desk.now()
    table.cells.setCurrentIndex(cell(table, "waist", "seam", "front", 1))
    QTest.keyClick(table.cells, Qt.Key.Key_Delete)
    assert pinned(desk, 1, "waist") is None


def test_an_emptied_cell_is_unpinned(table: LedgerTable, desk: Desk) -> None:
    desk.apply("Pin", set_pin(desk.project, "front", 1, "waist", 12.7))
    desk.now()
    found = editor(table, cell(table, "waist", "seam", "front", 1))
    QTest.keyClick(found, Qt.Key.Key_Backspace)
    QTest.keyClick(found, Qt.Key.Key_Return)
    assert pinned(desk, 1, "waist") is None


def test_opening_a_cell_pins_nothing(table: LedgerTable, desk: Desk) -> None:
    before = desk.project
    QTest.keyClick(editor(table, cell(table, "waist", "seam", "front", 1)), Qt.Key.Key_Return)
    assert desk.project is before


def test_a_seam_cannot_take_in_less_than_nothing(table: LedgerTable, desk: Desk) -> None:
    typed(table, cell(table, "waist", "seam", "front", 1), "-1")
    assert pinned(desk, 1, "waist") is None


def test_what_cannot_be_read_stays_open_with_one_sentence(table: LedgerTable, desk: Desk) -> None:
    before = desk.project
    found = typed(table, cell(table, "waist", "seam", "front", 1), "9 1/0")
    assert (desk.project, found.text(), found.isVisible()) == (before, "9 1/0", True)
    assert "9 1/0" in table.note.text()


def test_escape_lets_go_of_what_was_typed(table: LedgerTable, desk: Desk) -> None:
    before = desk.project
    found = editor(table, cell(table, "waist", "seam", "front", 1))
    QTest.keyClicks(found, "3")
    QTest.keyClick(found, Qt.Key.Key_Escape)
    assert desk.project is before


def test_a_redraft_leaves_what_is_being_typed(table: LedgerTable, desk: Desk) -> None:
    found = editor(table, cell(table, "waist", "seam", "front", 1))
    found.selectAll()
    QTest.keyClicks(found, "7/8")
    desk.apply("Reduction", set_reduction(desk.project, "waist", 40.0))
    desk.now()
    assert found.text() == "7/8"


@pytest.mark.parametrize(("weightless", "words"), [(False, "over"), (True, "short")])
def test_a_ledger_that_does_not_close_says_so(
    table: LedgerTable, desk: Desk, weightless: bool, words: str
) -> None:
    project = desk.project
    for seam in (1, 2, 3):
        project = set_pin(project, "front", seam, "waist", 5.0 if weightless else 60.0)
    desk.apply("Pins", project)
    desk.now()
    index = cell(table, "waist", "gap", "front")
    assert table.model.text(index).startswith(words)
    assert table.model.is_open(index)


def test_only_what_a_seam_takes_in_can_be_typed_into(table: LedgerTable) -> None:
    model = table.model
    rows, columns = range(model.rowCount()), range(model.columnCount())
    every = [model.index(row, column) for row in rows for column in columns]
    open_to_typing = Qt.ItemFlag.ItemIsEditable
    assert {model.column(i).kind for i in every if model.flags(i) & open_to_typing} == {"seam"}


def test_the_table_is_copied_as_text(table: LedgerTable) -> None:
    table.copy.click()
    lines = QGuiApplication.clipboard().text().splitlines()
    assert lines[0].split("\t")[0] == "In inches"
    assert [line.split("\t")[0] for line in lines[2:]] == ["Bust", "Underbust", "Waist", "Top hip"]
    assert len({line.count("\t") for line in lines[1:]}) == 1


def test_a_cell_lights_up_its_level_and_seam(table: LedgerTable, desk: Desk) -> None:
    table.cells.setCurrentIndex(cell(table, "waist", "seam", "front", 2))
    assert desk.selection == Place(level="waist", seam=2)


def test_a_cell_is_read_out_in_full(table: LedgerTable, desk: Desk) -> None:
    desk.apply("Pin", set_pin(desk.project, "front", 1, "waist", 12.7))
    desk.now()
    spoken = cell(table, "waist", "seam", "front", 1).data(Qt.ItemDataRole.AccessibleTextRole)
    assert spoken == "Waist, front seam 1: ½, pinned"


def test_without_measurements_there_is_a_sentence_instead(qtbot: QtBot, dressed: None) -> None:
    table = LedgerTable(Desk())
    qtbot.addWidget(table)
    table.show()
    assert (table.cells.isVisible(), table.nothing.isVisible()) == (False, True)


def test_what_was_drafted_unseen_is_shown_when_it_is_seen(table: LedgerTable, desk: Desk) -> None:
    table.hide()
    desk.apply("Pin", set_pin(desk.project, "front", 1, "waist", 12.7))
    desk.now()
    table.show()
    assert table.model.is_pinned(cell(table, "waist", "seam", "front", 1))

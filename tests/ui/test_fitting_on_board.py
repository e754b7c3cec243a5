"""Editing a bodice that has been fitted: what is on show is what she sets, fittings stay on top of it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, in_hand
from workbench.document import Project, Session, picture_of, remove_point, set_reduction
from workbench.draft import Draft, Outcome
from workbench.fitting import Change, Fitting
from workbench.ui.board.bars import bars_of
from workbench.ui.board.figure_edits import with_amount
from workbench.ui.board.handles import Handle
from workbench.ui.board.scene import Scene, scene_of
from workbench.ui.board.shape_edits import Spot, added, moved
from workbench.ui.desk import Desk
from workbench.ui.form import LedgerTable
from workbench.ui.form.ledger_model import FIRST

INCH = 25.4
CHANGES = (
    Change("seam", INCH / 4, "waist", 1),
    Change("seam", INCH / 4, "waist", 3),
    Change("length", INCH / 2, "waist"),
    Change("neckline", 3 * INCH / 8, u=3.0),
)


@pytest.fixture
def fitted() -> Project:
    return replace(bodice(), fittings=(Fitting("2031-05-20", "calico", (3, 3), changes=CHANGES),))


def scene(project: Project) -> Scene:
    made = scene_of(picture_of(project), "apart", cut_lines=False, hold=None, before=None)
    assert made is not None
    return made


def outcome(project: Project) -> Outcome:
    found = picture_of(project).outcome
    assert found is not None
    return found


def drafted(project: Project) -> Draft:
    draft = outcome(project).draft
    assert draft is not None
    return draft


def handle(shown: Scene, line: str, number: int) -> Handle:
    return next(one for one in shown.handles if (one.key.line, one.key.number) == (line, number))


@pytest.mark.parametrize("number", [0, 1, 2, 3])
def test_a_point_goes_where_it_is_put(fitted: Project, number: int) -> None:
    shown = scene(fitted)
    grip = handle(shown, "neckline", number)
    target = grip.point.t + 9.0
    changed = moved(fitted, shown, grip, Spot(grip.point.u, target, grip.placement.panel))
    assert drafted(changed).neckline.points[number].t == pytest.approx(target, abs=1e-6)


def test_a_point_that_is_added_lies_where_it_was_clicked(fitted: Project) -> None:
    changed = added(fitted, scene(fitted), "neckline", Spot(0.6, 140.0, 0))
    points = [(point.u, point.t) for point in drafted(changed).neckline.points]
    assert any(point == pytest.approx((0.6, 140.0)) for point in points)


def test_a_point_put_back_where_it_was_leaves_the_design_as_it_was(fitted: Project) -> None:
    shown = scene(fitted)
    grip = handle(shown, "neckline", 2)
    same = moved(fitted, shown, grip, Spot(grip.point.u, grip.point.t, grip.placement.panel))
    assert same.design.neckline is not None
    for one, other in zip(same.design.neckline, drafted(bodice()).neckline.points, strict=True):
        assert one.t == pytest.approx(other.t, abs=1e-6)
    assert remove_point(same, "neckline", 1, same.design.neckline).design.neckline is not None


def test_a_figure_that_is_typed_reads_as_typed(fitted: Project) -> None:
    shown = scene(fitted)
    for seam, side in ((1, "left"), (3, "left"), (3, "right")):
        figure = next(
            one
            for one in shown.figures
            if (one.key.seam, one.key.level, one.key.side) == (seam, "waist", side)
        )
        changed = with_amount(fitted, figure, 20.0)
        line = outcome(changed).line(figure.quarter, "waist")
        taking = next(taking for taking in line.takings if taking.seam == seam)
        assert getattr(taking, side) == pytest.approx(20.0)
        assert line.closes


def test_a_cell_of_the_ledger_that_is_typed_reads_as_typed(qtbot: QtBot, fitted: Project) -> None:
    desk = Desk(Session(fitted))
    table = in_hand(qtbot, LedgerTable(desk), 1200, 240)
    column = next(
        number
        for number, column in enumerate(table.model.columns)
        if (column.kind, column.quarter, column.seam) == ("seam", "front", 1)
    )
    index = table.model.index(FIRST + table.model.levels.index("waist"), column)
    table.cells.setCurrentIndex(index)
    table.cells.setFocus()
    QTest.keyClick(table.cells, Qt.Key.Key_Return)
    field = table.cells.findChild(QLineEdit)
    assert field is not None
    field.selectAll()
    QTest.keyClicks(field, "1 1/4")
    QTest.keyClick(field, Qt.Key.Key_Return)
    desk.now()
    assert table.model.text(index) == "1¼"
    share = desk.project.design.front.seams[0].shares[0]
    assert share.pin_mm == pytest.approx(INCH)


def test_the_bar_sets_the_reduction_and_the_fitting_stays_on_top(fitted: Project) -> None:
    bar = next(bar for bar in bars_of(picture_of(fitted)) if bar.level == "waist")
    assert bar.reckoned - bar.finished == pytest.approx(fitted.design.reductions.waist)
    girth = bar.finished - 10.0
    changed = set_reduction(fitted, bar.sets, bar.reckoned - girth)
    assert outcome(changed).level("waist").finished == pytest.approx(girth)

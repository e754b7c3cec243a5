"""The girth strip by hand: one act, one look at the project."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.document import set_reduction, set_rule
from workbench.draft import Place
from workbench.ui.board import Board
from workbench.ui.board.bar_drag import RESISTANCE
from workbench.ui.board.bars import Bar
from workbench.ui.desk import Desk

INCH = 25.4
"""An inch is 25.4 mm (international yard and pound agreement of 1959, from memory)."""
EIGHTH = INCH / 8
NONE = Qt.KeyboardModifier.NoModifier


@pytest.fixture
def board(qtbot: QtBot, desk: Desk) -> Board:
    """An under-bust bodice on a waist of 28 in, 2 in drawn in, 10 % allowed: the limit is at 2.8 in."""
    return on_screen(qtbot, Board(desk), 980, 620)


def bar(board: Board, level: str) -> Bar:
    return next(shown for shown in board.strip.bars if shown.level == level)


def pixels(board: Board, mm: float) -> int:
    """A length of girth on the strip."""
    return round(mm * board.strip.axis.scale)


def drag(board: Board, desk: Desk, level: str, right: int, modifier: Qt.KeyboardModifier = NONE) -> None:
    start = board.strip.end_of(level).toPoint()  # type: ignore[arg-type]
    QTest.mousePress(board.strip, Qt.MouseButton.LeftButton, modifier, start)
    QTest.mouseMove(board.strip, start + QPoint(5 if right > 0 else -5, 0))
    QTest.mouseMove(board.strip, start + QPoint(right, 0))
    QTest.mouseRelease(board.strip, Qt.MouseButton.LeftButton, modifier, start + QPoint(right, 0))
    desk.now()


def waist(desk: Desk) -> float:
    return desk.project.design.reductions.waist


def test_dragging_the_waist_bar_draws_the_waist_in_by_whole_eighths(board: Board, desk: Desk) -> None:
    drag(board, desk, "waist", -pixels(board, 0.5 * INCH))
    assert waist(desk) == pytest.approx(2.5 * INCH)


def test_the_other_way_gives_ease(board: Board, desk: Desk) -> None:
    drag(board, desk, "waist", pixels(board, 3 * INCH))
    assert waist(desk) == pytest.approx(-1 * INCH, abs=EIGHTH / 2)


def test_a_drag_is_one_named_step(board: Board, desk: Desk) -> None:
    drag(board, desk, "waist", -pixels(board, 0.5 * INCH))
    assert desk.undo_name == "Waist reduction"


def test_at_the_limit_the_bar_holds_at_the_last_eighth_within_it(board: Board, desk: Desk) -> None:
    limit = bar(board, "waist").limit
    assert limit is not None
    to_limit = board.strip.axis.x(bar(board, "waist").finished) - board.strip.axis.x(limit)
    drag(board, desk, "waist", -round(to_limit + 0.7 * RESISTANCE))
    # 10 % of 28 in is 2.8 in: the last eighth within it is 2 3/4 in
    assert waist(desk) == pytest.approx(2.75 * INCH)


def test_past_the_limit_the_bar_follows_with_a_pull(board: Board, desk: Desk) -> None:
    drag(board, desk, "waist", -(pixels(board, 2.0 * INCH) + int(RESISTANCE)))
    assert waist(desk) == pytest.approx(4 * INCH, abs=EIGHTH)


def test_a_bar_that_began_past_the_limit_does_not_resist(board: Board, desk: Desk) -> None:
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", 4 * INCH))
    desk.now()
    drag(board, desk, "waist", -pixels(board, 0.5 * INCH))
    assert waist(desk) == pytest.approx(4.5 * INCH, abs=EIGHTH / 2)


def test_alt_leaves_out_the_snapping(board: Board, desk: Desk) -> None:
    free = Qt.KeyboardModifier.AltModifier
    start = board.strip.end_of("waist").toPoint()
    QTest.mousePress(board.strip, Qt.MouseButton.LeftButton, free, start)
    for right in (-5, -9):
        board.strip.mouseMoveEvent(moved(start + QPoint(right, 0), free))
    QTest.mouseRelease(board.strip, Qt.MouseButton.LeftButton, free, start + QPoint(-9, 0))
    eighths = waist(desk) / EIGHTH
    assert abs(eighths - round(eighths)) > 0.01


def moved(point: QPoint, modifier: Qt.KeyboardModifier) -> object:
    """A move with a modifier, which QTest cannot make."""
    from PySide6.QtCore import QEvent, QPointF
    from PySide6.QtGui import QMouseEvent

    left = Qt.MouseButton.LeftButton
    return QMouseEvent(QEvent.Type.MouseMove, QPointF(point), QPointF(point), left, left, modifier)


def test_escape_lets_the_bar_go_back(board: Board, desk: Desk) -> None:
    before = desk.project
    start = board.strip.end_of("waist").toPoint()
    QTest.mousePress(board.strip, Qt.MouseButton.LeftButton, NONE, start)
    QTest.mouseMove(board.strip, start - QPoint(20, 0))
    QTest.keyClick(board.strip, Qt.Key.Key_Escape)
    QTest.mouseRelease(board.strip, Qt.MouseButton.LeftButton, NONE, start - QPoint(20, 0))
    assert desk.project == before


def test_undo_under_the_hand_ends_the_drag(board: Board, desk: Desk) -> None:
    before = desk.project
    start = board.strip.end_of("waist").toPoint()
    QTest.mousePress(board.strip, Qt.MouseButton.LeftButton, NONE, start)
    QTest.mouseMove(board.strip, start - QPoint(20, 0))
    desk.undo()
    QTest.mouseMove(board.strip, start - QPoint(30, 0))
    QTest.mouseRelease(board.strip, Qt.MouseButton.LeftButton, NONE, start - QPoint(30, 0))
    assert (desk.project, desk.undo_name) == (before, None)


def test_each_level_has_its_own_bar(board: Board, desk: Desk) -> None:
    drag(board, desk, "bust", -pixels(board, INCH))
    reductions = desk.project.design.reductions
    assert (reductions.bust, reductions.waist) == (pytest.approx(INCH, abs=EIGHTH / 2), 2 * INCH)


def test_under_one_figure_the_rib_bar_sets_the_shared_reduction(board: Board, desk: Desk) -> None:
    desk.apply("Rule", set_rule(desk.project, "one_figure"))
    desk.now()
    drag(board, desk, "underbust", -pixels(board, INCH))
    reductions = desk.project.design.reductions
    assert (reductions.underbust, reductions.waist) == (0.0, pytest.approx(3 * INCH, abs=EIGHTH / 2))


def test_left_and_right_keys_step_the_chosen_level(board: Board, desk: Desk) -> None:
    desk.select(Place(level="waist"))
    QTest.keyClick(board.strip, Qt.Key.Key_Left)
    assert waist(desk) == pytest.approx(2 * INCH + EIGHTH)


def test_up_chooses_the_next_level(board: Board, desk: Desk) -> None:
    desk.select(Place(level="waist"))
    QTest.keyClick(board.strip, Qt.Key.Key_Up)
    assert desk.selection == Place(level="underbust")


def test_a_click_on_a_bar_only_selects_its_level(board: Board, desk: Desk) -> None:
    before = desk.project
    point = board.strip.end_of("underbust").toPoint()
    QTest.mouseClick(board.strip, Qt.MouseButton.LeftButton, NONE, point)
    assert (desk.selection, desk.project) == (Place(level="underbust"), before)


def test_the_axis_stands_still_while_a_bar_is_dragged(board: Board, desk: Desk) -> None:
    before = board.strip.axis
    start = board.strip.end_of("waist").toPoint()
    QTest.mousePress(board.strip, Qt.MouseButton.LeftButton, NONE, start)
    QTest.mouseMove(board.strip, start - QPoint(10, 0))
    QTest.mouseMove(board.strip, start - QPoint(120, 0))
    desk.now()
    during = board.strip.axis
    QTest.mouseRelease(board.strip, Qt.MouseButton.LeftButton, NONE, start - QPoint(120, 0))
    assert during == before


def test_canvas_and_strip_have_one_line_for_each_level(board: Board) -> None:
    assert board.canvas.scene is not None
    rows = {row.level: board.sight.view.y(row.walk) for row in board.canvas.scene.rows}
    assert rows == {shown.level: board.strip.end_of(shown.level).y() for shown in board.strip.bars}

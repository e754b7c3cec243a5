"""The canvas by hand: each test is one act with the mouse or a key, and one look at the project."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, QRectF, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen, turn_wheel
from workbench.document import Session, set_panels, set_pin, set_reduction, set_style
from workbench.draft import EdgeLine, Place
from workbench.ui.board import Board
from workbench.ui.board.figures import Figure
from workbench.ui.board.handles import Handle
from workbench.ui.desk import Desk

NONE = Qt.KeyboardModifier.NoModifier
EIGHTH = 25.4 / 8
"""An inch is 25.4 mm (international yard and pound agreement of 1959, from memory)."""


@pytest.fixture
def board(qtbot: QtBot, desk: Desk) -> Board:
    """A board of the size it has on a small laptop, with an over-bust bodice."""
    desk.open_session(Session(set_style(desk.project, "over_bust")))
    return on_screen(qtbot, Board(desk), 980, 620)


def handle(board: Board, line: str, number: int) -> Handle:
    assert board.canvas.scene is not None
    return next(h for h in board.canvas.scene.handles if (h.key.line, h.key.number) == (line, number))


def figure(board: Board, seam: int, level: str, side: str) -> Figure:
    assert board.canvas.scene is not None
    return next(
        f for f in board.canvas.scene.figures if (f.key.seam, f.key.level, f.key.side) == (seam, level, side)
    )


def at(board: Board, held: Handle) -> QPoint:
    return held.pixel(board.sight.view).toPoint()


def middle(board: Board, shown: Figure) -> QPoint:
    return shown.box(board.sight.view).center().toPoint()


def press(board: Board, point: QPoint, button: Qt.MouseButton = Qt.MouseButton.LeftButton) -> None:
    QTest.mousePress(board.canvas, button, Qt.KeyboardModifier.NoModifier, point)


def release(board: Board, point: QPoint, button: Qt.MouseButton = Qt.MouseButton.LeftButton) -> None:
    QTest.mouseRelease(board.canvas, button, Qt.KeyboardModifier.NoModifier, point)


def drag(board: Board, start: QPoint, by: QPoint) -> None:
    press(board, start)
    QTest.mouseMove(board.canvas, start + by / 2)
    QTest.mouseMove(board.canvas, start + by)
    release(board, start + by)
    board.canvas.desk.now()


def click(board: Board, point: QPoint) -> None:
    QTest.mouseClick(board.canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, point)


def neckline(board: Board) -> EdgeLine:
    picture = board.canvas.desk.picture
    assert picture.good is not None
    assert picture.good.draft is not None
    return picture.good.draft.neckline


def test_a_dragged_point_lands_on_a_whole_eighth_from_the_waist(board: Board) -> None:
    drag(board, at(board, handle(board, "neckline", 1)), QPoint(9, -17))
    eighths = neckline(board).points[1].t / EIGHTH
    assert eighths == pytest.approx(round(eighths), abs=1e-9)


def test_a_dragged_point_follows_the_hand(board: Board) -> None:
    before = neckline(board).points[1].t
    drag(board, at(board, handle(board, "neckline", 1)), QPoint(0, -20))
    moved = neckline(board).points[1].t - before
    # a walk along the panel is at least its rise; the snapping moves it by half an eighth at most
    assert moved == pytest.approx(20 / board.sight.view.scale, abs=EIGHTH)


def test_a_drag_is_one_step_to_undo(board: Board) -> None:
    before = board.canvas.desk.project
    drag(board, at(board, handle(board, "neckline", 1)), QPoint(9, -17))
    board.canvas.desk.undo()
    assert board.canvas.desk.project == before


def test_escape_takes_a_drag_back(board: Board) -> None:
    before = board.canvas.desk.project
    start = at(board, handle(board, "neckline", 1))
    press(board, start)
    QTest.mouseMove(board.canvas, start + QPoint(0, -30))
    QTest.keyClick(board.canvas, Qt.Key.Key_Escape)
    release(board, start + QPoint(0, -30))
    assert board.canvas.desk.project == before


def test_an_end_point_stays_on_its_centre_line(board: Board) -> None:
    drag(board, at(board, handle(board, "neckline", 0)), QPoint(40, -12))
    assert neckline(board).points[0].u == 0.0


def test_a_point_near_a_seam_is_drawn_onto_it(board: Board) -> None:
    scene = board.canvas.scene
    assert scene is not None
    corner = scene.shapes[1].edge("neckline")[-1]
    start = at(board, handle(board, "neckline", 1))
    drag(
        board, start, board.sight.view.at(corner[0] - 3 / board.sight.view.scale, corner[1]).toPoint() - start
    )
    assert neckline(board).points[1].u == 2.0


def test_without_a_drag_the_first_click_only_selects(board: Board) -> None:
    click(board, at(board, handle(board, "hem", 0)))
    assert board.canvas.desk.selection == Place(line="hem", point=0)


def test_an_arrow_key_moves_the_chosen_point_by_an_eighth(board: Board) -> None:
    before = neckline(board).points[1].t
    board.canvas.desk.select(Place(line="neckline", point=1))
    QTest.keyClick(board.canvas, Qt.Key.Key_Up)
    assert neckline(board).points[1].t - before == pytest.approx(EIGHTH)


def test_t_turns_a_smooth_point_into_a_corner(board: Board) -> None:
    board.canvas.desk.select(Place(line="neckline", point=1))
    QTest.keyClick(board.canvas, Qt.Key.Key_T)
    assert not neckline(board).points[1].smooth


def test_delete_removes_the_chosen_point(board: Board) -> None:
    before = len(neckline(board).points)
    board.canvas.desk.select(Place(line="neckline", point=1))
    QTest.keyClick(board.canvas, Qt.Key.Key_Delete)
    assert len(neckline(board).points) == before - 1


def test_an_end_point_is_not_removed_and_the_reason_is_said(board: Board, qtbot: QtBot) -> None:
    board.canvas.desk.select(Place(line="neckline", point=0))
    with qtbot.waitSignal(board.canvas.desk.refused):
        QTest.keyClick(board.canvas, Qt.Key.Key_Delete)
    assert board.canvas.desk.project.design.neckline is None


def test_a_double_click_on_the_hem_adds_a_point(board: Board) -> None:
    scene = board.canvas.scene
    assert scene is not None
    hem = scene.shapes[1].edge("hem")
    spot = board.sight.view.at(*hem[len(hem) // 2]).toPoint()
    QTest.mouseDClick(board.canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, spot)
    own = board.canvas.desk.project.design.hem
    assert own is not None
    assert own[1].u == pytest.approx(1.5, abs=0.1)


def test_a_typed_figure_is_pinned_and_the_other_side_of_the_seam_is_left(board: Board) -> None:
    shown = figure(board, 1, "waist", "left")
    click(board, middle(board, shown))
    QTest.keyClicks(board.canvas.editor, "1/2")
    QTest.keyClick(board.canvas.editor, Qt.Key.Key_Return)
    assert board.canvas.desk.picture.outcome is not None
    taking = board.canvas.desk.picture.outcome.line("front", "waist").takings[0]
    assert (taking.pinned, taking.left, taking.right) == (
        True,
        pytest.approx(12.7),
        pytest.approx(shown.other),
    )


def test_delete_in_an_untouched_field_unpins(board: Board) -> None:
    click(board, middle(board, figure(board, 3, "waist", "left")))
    QTest.keyClicks(board.canvas.editor, "1")
    QTest.keyClick(board.canvas.editor, Qt.Key.Key_Return)
    board.canvas.desk.now()
    click(board, middle(board, figure(board, 3, "waist", "left")))
    QTest.keyClick(board.canvas.editor, Qt.Key.Key_Delete)
    assert board.canvas.desk.project.design.front.side_shares == ()


def test_the_side_seam_belongs_to_two_quarters(board: Board) -> None:
    click(board, middle(board, figure(board, 3, "waist", "right")))
    QTest.keyClicks(board.canvas.editor, "3/4")
    QTest.keyClick(board.canvas.editor, Qt.Key.Key_Return)
    design = board.canvas.desk.project.design
    assert (design.front.side_shares, design.back.side_shares[0].pin_mm) == ((), pytest.approx(19.05))


def test_what_cannot_be_read_stays_in_the_field_with_the_reason(board: Board) -> None:
    before = board.canvas.desk.project
    click(board, middle(board, figure(board, 1, "waist", "left")))
    QTest.keyClicks(board.canvas.editor, "9 1/0")
    QTest.keyClick(board.canvas.editor, Qt.Key.Key_Return)
    assert (board.canvas.editor.problem != "", board.canvas.editor.text(), board.canvas.desk.project) == (
        True,
        "9 1/0",
        before,
    )


def test_escape_leaves_the_figure_as_it_was(board: Board) -> None:
    before = board.canvas.desk.project
    click(board, middle(board, figure(board, 1, "waist", "left")))
    QTest.keyClicks(board.canvas.editor, "2")
    QTest.keyClick(board.canvas.editor, Qt.Key.Key_Escape)
    assert board.canvas.desk.project == before


def test_tab_pins_and_goes_on_to_the_next_figure(board: Board) -> None:
    click(board, middle(board, figure(board, 1, "waist", "left")))
    QTest.keyClicks(board.canvas.editor, "1/2")
    QTest.keyClick(board.canvas.editor, Qt.Key.Key_Tab)
    following = board.canvas.editor.figure
    assert following is not None
    assert (following.key.seam, following.key.side) == (1, "right")


def test_a_click_on_a_seam_selects_it(board: Board) -> None:
    scene = board.canvas.scene
    assert scene is not None
    side = scene.shapes[1].edge("right")
    click(board, board.sight.view.at(*side[len(side) // 3]).toPoint())
    assert board.canvas.desk.selection == Place(seam=2)


def test_a_click_inside_a_panel_selects_it(board: Board) -> None:
    scene = board.canvas.scene
    assert scene is not None
    box = scene.shapes[4].box
    click(board, board.sight.view.at(0.5 * (box[0] + box[2]), 48.0).toPoint())
    assert board.canvas.desk.selection == Place(panel=4)


def turn(board: Board, spot: QPointF, delta: int, modifier: Qt.KeyboardModifier = NONE) -> None:
    turn_wheel(board.canvas, spot, delta, modifier)


def test_the_wheel_zooms_and_keeps_the_point_under_the_hand(board: Board) -> None:
    spot, view = QPointF(500, 300), board.sight.view
    turn(board, spot, 120)
    assert board.sight.view.scale > view.scale
    assert board.sight.view.mm(spot) == pytest.approx(view.mm(spot))


def test_with_shift_the_wheel_moves_the_paper_sideways(board: Board) -> None:
    view = board.sight.view
    turn(board, QPointF(500, 300), 120, Qt.KeyboardModifier.ShiftModifier)
    assert board.sight.view == view.panned(120, 0)


def test_nought_fits_again(board: Board) -> None:
    fitted = board.sight.view
    turn(board, QPointF(500, 300), 360)
    QTest.keyClick(board.canvas, Qt.Key.Key_0)
    assert board.sight.view == fitted


def test_arrows_pan_while_nothing_is_chosen(board: Board) -> None:
    view, before = board.sight.view, board.canvas.desk.project
    QTest.keyClick(board.canvas, Qt.Key.Key_Right)
    assert (board.sight.view.left < view.left, board.canvas.desk.project) == (True, before)


def test_the_space_bar_carries_the_paper_even_over_a_handle(board: Board) -> None:
    view, start = board.sight.view, at(board, handle(board, "neckline", 1))
    QTest.keyPress(board.canvas, Qt.Key.Key_Space)
    press(board, start)
    QTest.mouseMove(board.canvas, start + QPoint(25, 5))
    release(board, start + QPoint(25, 5))
    QTest.keyRelease(board.canvas, Qt.Key.Key_Space)
    assert board.sight.view == view.panned(25, 5)


def test_with_ctrl_the_space_bar_carries_nothing(board: Board) -> None:
    before = board.canvas.cursor().shape()
    QTest.keyPress(board.canvas, Qt.Key.Key_Space, Qt.KeyboardModifier.ControlModifier)
    with_ctrl = board.canvas.cursor().shape()
    QTest.keyPress(board.canvas, Qt.Key.Key_Space)
    assert (with_ctrl, board.canvas.cursor().shape()) == (before, Qt.CursorShape.OpenHandCursor)


def test_a_view_set_by_hand_is_kept_through_a_redraft(board: Board) -> None:
    turn(board, QPointF(500, 300), 240)
    view = board.sight.view
    board.canvas.desk.apply("Waist reduction", set_reduction(board.canvas.desk.project, "waist", 25.4))
    board.canvas.desk.now()
    assert board.sight.view == view


def test_another_number_of_panels_is_fitted_afresh(board: Board) -> None:
    turn(board, QPointF(500, 300), 600)
    board.canvas.desk.apply("Panels", set_panels(board.canvas.desk.project, "back", 2))
    board.canvas.desk.now()
    left, bottom, right, top = board.canvas.scene.bounds  # type: ignore[union-attr]
    shown = QRectF(board.sight.view.at(left, top), board.sight.view.at(right, bottom))
    assert board.canvas.room().adjusted(-0.1, -0.1, 0.1, 0.1).contains(shown)


def test_a_figure_is_pinned_by_keys_alone(board: Board) -> None:
    for key in (Qt.Key.Key_I, Qt.Key.Key_Right, Qt.Key.Key_Return):
        QTest.keyClick(board.canvas, key)
    chosen = board.canvas.editor.figure
    assert chosen is not None
    QTest.keyClicks(board.canvas.editor, "3/8")
    QTest.keyClick(board.canvas.editor, Qt.Key.Key_Return)
    board.canvas.desk.now()
    now = figure(board, chosen.key.seam, chosen.key.level, chosen.key.side)
    assert (now.pinned, now.amount) == (True, pytest.approx(3 * EIGHTH))


def test_delete_unpins_the_chosen_figure(board: Board) -> None:
    desk = board.canvas.desk
    desk.apply("Pin intake", set_pin(desk.project, "front", 3, "waist", 20.0))
    desk.now()
    board.canvas.choose_figure(figure(board, 3, "waist", "left"))
    QTest.keyClick(board.canvas, Qt.Key.Key_Delete)
    assert desk.project.design.front.side_shares == ()


def test_up_goes_to_the_same_seam_at_the_next_level(board: Board) -> None:
    board.canvas.choose_figure(figure(board, 1, "waist", "left"))
    QTest.keyClick(board.canvas, Qt.Key.Key_Up)
    assert board.canvas.desk.selection == Place(seam=1, level="underbust")


def test_a_drag_on_the_paper_moves_it_and_not_the_project(board: Board) -> None:
    before, view = board.canvas.desk.project, board.sight.view
    drag(board, QPoint(500, 60), QPoint(40, 25))
    assert (board.sight.view, board.canvas.desk.project) == (view.panned(40, 25), before)


def test_the_middle_button_moves_the_paper_even_over_a_handle(board: Board) -> None:
    view, start = board.sight.view, at(board, handle(board, "neckline", 1))
    press(board, start, Qt.MouseButton.MiddleButton)
    QTest.mouseMove(board.canvas, start + QPoint(-30, 10))
    release(board, start + QPoint(-30, 10), Qt.MouseButton.MiddleButton)
    assert board.sight.view == view.panned(-30, 10)


def test_what_cannot_be_read_is_refused_in_words_when_she_turns_away(board: Board, qtbot: QtBot) -> None:
    click(board, middle(board, figure(board, 1, "waist", "left")))
    QTest.keyClicks(board.canvas.editor, "two")
    with qtbot.waitSignal(board.canvas.desk.refused) as refused:
        click(board, QPoint(560, 60))
    assert refused.args is not None
    assert refused.args[0] == "front.seams"

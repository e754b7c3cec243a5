"""The picture behind the panels: where it is painted, and how it is moved."""

from __future__ import annotations

import base64
import io
from dataclasses import replace

import pytest
from PIL import Image
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.document import Behind, Session, WishPicture, add_wish, lay_behind, set_behind
from workbench.ui.board import Board
from workbench.ui.board.tracing import tracing_of
from workbench.ui.desk import Desk
from workbench.ui.look import look

EIGHTH = 25.4 / 8
"""An inch is 25.4 mm (international yard and pound agreement of 1959, from memory)."""
RED = (220, 0, 0)


def red(wide: int = 200, high: int = 300) -> WishPicture:
    out = io.BytesIO()
    Image.new("RGB", (wide, high), RED).save(out, "JPEG")
    return WishPicture("red", base64.b64encode(out.getvalue()).decode(), wide, high)


@pytest.fixture
def board(qtbot: QtBot, desk: Desk) -> Board:
    """A board with a red picture of 400 × 600 mm behind the panels, its top left corner at (−50, 250)."""
    project = lay_behind(add_wish(desk.project, red()), "red")
    project = set_behind(project, mm_per_pixel=2.0, x_mm=-50.0, walk_mm=250.0, opacity=1.0)
    desk.open_session(Session(project))
    board = on_screen(qtbot, Board(desk), 980, 620)
    settle(board)
    return board


def settle(board: Board) -> None:
    board.canvas.behind.settle()


def colour(board: Board, x_mm: float, walk_mm: float) -> QColor:
    pixel = board.sight.view.at(x_mm, walk_mm).toPoint()
    return board.canvas.grab().toImage().pixelColor(pixel)


def is_red(seen: QColor) -> bool:
    return seen.red() - seen.green() > 100


def lies(board: Board) -> Behind:
    behind = board.canvas.desk.project.behind
    assert behind is not None
    return behind


def away(seen: QColor, wanted: QColor) -> int:
    pairs = ((seen.red(), wanted.red()), (seen.green(), wanted.green()), (seen.blue(), wanted.blue()))
    return max(abs(one - other) for one, other in pairs)


@pytest.mark.parametrize("layout", ["apart", "both"])
def test_it_is_painted_where_it_lies(board: Board, layout: str) -> None:
    board.set_layout("apart" if layout == "apart" else "both")
    settle(board)
    assert is_red(colour(board, 340, 230))
    assert away(colour(board, 360, 230), look().paper) <= 2


def test_on_the_block_there_is_none(board: Board) -> None:
    board.set_layout("block")
    assert away(colour(board, 20, 230), look().paper) <= 2


def test_panels_are_seen_through(board: Board) -> None:
    inside = colour(board, 20, 40)
    assert inside.red() - inside.green() > 60
    board.canvas.desk.apply("x", replace(board.canvas.desk.project, behind=None))
    board.canvas.desk.now()
    assert away(colour(board, 20, 40), look().panel) <= 2


def test_half_as_strong_is_halfway_to_the_paper(board: Board) -> None:
    board.canvas.desk.apply("x", set_behind(board.canvas.desk.project, opacity=0.5))
    board.canvas.desk.now()
    rough = colour(board, 300, 230)
    settle(board)
    smooth = colour(board, 300, 230)
    paper = look().paper
    wanted = QColor((RED[0] + paper.red()) // 2, paper.green() // 2, paper.blue() // 2)
    assert away(rough, wanted) <= 6
    assert away(smooth, wanted) <= 6


def test_at_another_scale_it_is_rough_at_first_and_then_settles(board: Board, qtbot: QtBot) -> None:
    board.canvas.zoom(1.2)
    assert is_red(colour(board, 300, 230))
    assert not board.canvas.behind.settled
    qtbot.waitUntil(lambda: board.canvas.behind.settled)
    assert is_red(colour(board, 300, 230))


def test_drawn_very_large_only_what_is_in_sight_is_painted(board: Board) -> None:
    for _ in range(14):
        board.canvas.zoom(1.25)
    assert is_red(board.canvas.grab().toImage().pixelColor(board.canvas.room().center().toPoint()))
    assert board.canvas.behind.settled


@pytest.mark.qt_log_ignore("Invalid JPEG", "This plugin does not support", extend=True)
def test_a_picture_that_cannot_be_decoded_is_left_out(qtbot: QtBot, desk: Desk) -> None:
    whole = base64.b64decode(red().jpeg)
    broken = replace(red(), jpeg=base64.b64encode(whole[: whole.index(b"\xff\xda")]).decode())
    desk.open_session(Session(lay_behind(add_wish(desk.project, broken), "red")))
    board = on_screen(qtbot, Board(desk), 980, 620)
    settle(board)
    assert not is_red(colour(board, 300, 230))


def drag(board: Board, by: QPoint, *, escape: bool = False) -> None:
    start = board.sight.view.at(300, 200).toPoint()
    QTest.mousePress(board.canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    QTest.mouseMove(board.canvas, start + by / 2)
    QTest.mouseMove(board.canvas, start + by)
    if escape:
        QTest.keyClick(board.canvas, Qt.Key.Key_Escape)
    QTest.mouseRelease(board.canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start + by)
    board.canvas.desk.now()


def test_in_the_hand_it_follows_a_drag_in_one_step(board: Board) -> None:
    tracing_of(board.canvas.desk).set_moving(True)
    drag(board, QPoint(40, -30))
    scale = board.sight.view.scale
    assert (lies(board).x_mm, lies(board).walk_mm) == pytest.approx((-50 + 40 / scale, 250 + 30 / scale))
    assert board.canvas.desk.undo_name == "Move the picture"
    board.canvas.desk.undo()
    assert (lies(board).x_mm, lies(board).walk_mm) == (-50, 250)


def test_escape_takes_the_drag_back(board: Board) -> None:
    tracing_of(board.canvas.desk).set_moving(True)
    drag(board, QPoint(40, -30), escape=True)
    assert (lies(board).x_mm, lies(board).walk_mm) == (-50, 250)


def test_not_in_the_hand_a_drag_moves_the_paper(board: Board) -> None:
    before = board.sight.view
    drag(board, QPoint(40, -30))
    assert lies(board).x_mm == -50
    assert board.sight.view == before.panned(40, -30)


def test_in_the_hand_a_neckline_stays_where_it_is(board: Board) -> None:
    tracing_of(board.canvas.desk).set_moving(True)
    assert board.canvas.scene is not None
    handle = next(h for h in board.canvas.scene.handles if h.key.line == "neckline")
    start = handle.pixel(board.sight.view).toPoint()
    QTest.mousePress(board.canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    QTest.mouseMove(board.canvas, start + QPoint(0, 30))
    QTest.mouseRelease(board.canvas, Qt.MouseButton.LeftButton, pos=start + QPoint(0, 30))
    assert board.canvas.desk.project.design.neckline is None
    assert lies(board).walk_mm < 250


@pytest.mark.parametrize(
    ("key", "modifier", "moved"),
    [
        (Qt.Key.Key_Right, Qt.KeyboardModifier.NoModifier, (EIGHTH, 0.0)),
        (Qt.Key.Key_Up, Qt.KeyboardModifier.NoModifier, (0.0, EIGHTH)),
        (Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier, (-4 * EIGHTH, 0.0)),
    ],
)
def test_arrow_keys_move_it_by_steps_of_the_ruler(
    board: Board, key: Qt.Key, modifier: Qt.KeyboardModifier, moved: tuple[float, float]
) -> None:
    tracing_of(board.canvas.desk).set_moving(True)
    QTest.keyClick(board.canvas, key, modifier)
    assert (lies(board).x_mm + 50, lies(board).walk_mm - 250) == pytest.approx(moved)


def test_escape_lets_it_go(board: Board) -> None:
    tracing = tracing_of(board.canvas.desk)
    tracing.set_moving(True)
    assert "Escape lets it go" in board.canvas.accessibleDescription()
    QTest.keyClick(board.canvas, Qt.Key.Key_Escape)
    assert not tracing.moving
    assert "Escape lets it go" not in board.canvas.accessibleDescription()


def test_taken_away_it_is_no_longer_in_the_hand(board: Board) -> None:
    tracing = tracing_of(board.canvas.desk)
    tracing.set_moving(True)
    board.canvas.desk.apply("x", replace(board.canvas.desk.project, behind=None))
    board.canvas.desk.now()
    assert not tracing.moving


def test_it_cannot_be_moved_out_of_reach(board: Board) -> None:
    desk = board.canvas.desk
    desk.apply("x", set_behind(desk.project, x_mm=10_000.0))
    tracing_of(desk).set_moving(True)
    QTest.keyClick(board.canvas, Qt.Key.Key_Right)
    assert lies(board).x_mm == 10_000.0


def test_there_is_one_for_a_desk(board: Board) -> None:
    assert tracing_of(board.canvas.desk) is tracing_of(board.canvas.desk)

"""A canvas shows that the keys have come to it."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import in_hand
from workbench.ui.board import Board
from workbench.ui.desk import Desk
from workbench.ui.focus_frame import FocusFrame
from workbench.ui.look import look
from workbench.ui.worn import WornPane


@pytest.fixture
def board(qtbot: QtBot, desk: Desk) -> Board:
    return in_hand(qtbot, Board(desk), 1280, 640)


def framed(canvas: QWidget) -> bool:
    return any(frame.isVisible() for frame in canvas.findChildren(FocusFrame))


def test_a_canvas_that_tab_came_to_is_framed_until_tab_leaves_it(board: Board) -> None:
    board.canvas.setFocus(Qt.FocusReason.MouseFocusReason)
    assert not framed(board.canvas)
    board.strip.setFocus(Qt.FocusReason.TabFocusReason)
    assert framed(board.strip)
    board.canvas.setFocus(Qt.FocusReason.BacktabFocusReason)
    assert framed(board.canvas)
    assert not framed(board.strip)


def test_the_frame_has_the_colour_of_what_the_keys_act_on(board: Board) -> None:
    board.strip.setFocus(Qt.FocusReason.MouseFocusReason)
    board.canvas.setFocus(Qt.FocusReason.TabFocusReason)
    shown = board.canvas.grab().toImage()
    assert shown.pixelColor(shown.width() // 2, shown.height() - 1) == look().selected


def test_the_frame_goes_along_with_the_size(board: Board) -> None:
    board.strip.setFocus(Qt.FocusReason.TabFocusReason)
    board.canvas.setFocus(Qt.FocusReason.TabFocusReason)
    board.resize(900, 500)
    frame = board.canvas.findChild(FocusFrame)
    assert frame is not None
    assert frame.geometry() == board.canvas.rect()


def test_the_worn_view_is_framed_too(qtbot: QtBot, desk: Desk) -> None:
    pane = in_hand(qtbot, WornPane(desk), 420, 640)
    pane.view.setFocus(Qt.FocusReason.TabFocusReason)
    assert framed(pane.view)

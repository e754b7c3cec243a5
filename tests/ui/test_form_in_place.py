"""Fields laid over a board: what stands under one stays inside the board, and goes when she types on."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.ui.form.in_place import Complaint, tab_step

WIDTH, EDGE = 240, 4


@pytest.fixture
def board(qtbot: QtBot, dressed: None) -> QWidget:
    return on_screen(qtbot, QWidget(), 600, 400)


def field_at(board: QWidget, x: int) -> QLineEdit:
    field = QLineEdit(board)
    field.setGeometry(x, 100, 64, 24)
    field.show()
    return field


@pytest.mark.parametrize("x", [-40, 0, 200, 560])
def test_a_complaint_stands_under_its_field_and_inside_the_board(board: QWidget, x: int) -> None:
    field = field_at(board, x)
    complaint = Complaint(field, board, WIDTH, EDGE)
    complaint.say("It cannot be read.")
    box = complaint.geometry()
    assert box.top() > field.geometry().bottom()
    assert (box.left() >= EDGE, box.right() < board.width() - EDGE) == (True, True)


def test_a_complaint_is_over_when_she_types_on(board: QWidget) -> None:
    field = field_at(board, 200)
    complaint = Complaint(field, board, WIDTH)
    complaint.say("It cannot be read.")
    before = complaint.said
    QTest.keyClicks(field, "1")
    assert (before, complaint.said) == ("It cannot be read.", "")


@pytest.mark.parametrize(
    ("key", "step"), [(Qt.Key.Key_Tab, 1), (Qt.Key.Key_Backtab, -1), (Qt.Key.Key_Right, None)]
)
def test_only_the_tab_key_goes_on(key: Qt.Key, step: int | None) -> None:
    assert tab_step(QKeyEvent(QEvent.Type.KeyPress, key, Qt.KeyboardModifier.NoModifier)) == step


def test_letting_go_of_the_tab_key_does_nothing_more() -> None:
    released = QKeyEvent(QEvent.Type.KeyRelease, Qt.Key.Key_Tab, Qt.KeyboardModifier.NoModifier)
    assert tab_step(released) is None

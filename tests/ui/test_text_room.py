"""No word is cut off: in any place, on a small screen, however large the system's type is.

The window is scaled with the type of the system, so that larger type is the same as a smaller window:
16 points on 1920 x 1080 leave it 1078 x 607 of its own pixels.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit, QPushButton, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Answers, let_go
from tests.ui.test_access_window import SIGHTS, Seen, turned_to
from workbench.ui.app import demo_files
from workbench.ui.form.choice import Segment
from workbench.ui.scale import LEAST_ROOM, scale_for
from workbench.ui.settings import Settings
from workbench.ui.style import dress
from workbench.ui.window import Window

SMALL_LAPTOP = QSize(1280, 720)
ARROW = 20
"""Pixels of a combo box that its arrow takes up."""


def room(screen: QSize, points: float) -> tuple[int, int]:
    """What a screen leaves the window, in its own pixels, with a system type so large."""
    scale = scale_for(points * 96 / 72, screen)
    return int(screen.width() / scale), int(screen.height() / scale)


ROOMS = (room(SMALL_LAPTOP, 9), room(SMALL_LAPTOP, 12), room(QSize(1920, 1080), 16))


def cut_off(window: QWidget) -> Iterator[str]:
    """Every label, button, field and combo box in sight that does not show all of its words."""
    for widget in window.findChildren(QWidget):
        if widget.isVisible() and not _shows_all(widget):
            words = getattr(widget, "text", lambda: "")() or widget.accessibleName()
            yield f"{type(widget).__name__} in {type(widget.parent()).__name__}: {words}"


def _shows_all(widget: QWidget) -> bool:
    metrics = widget.fontMetrics()
    if isinstance(widget, QLabel) and widget.text() and widget.wordWrap():
        longest = max(metrics.horizontalAdvance(word) for word in widget.text().split())
        high = widget.heightForWidth(widget.width())
        return longest <= widget.width() + 1 and high <= widget.height() + 1
    if isinstance(widget, QLabel | QPushButton | QToolButton) and widget.text():
        return widget.sizeHint().width() <= widget.width() + 1
    if isinstance(widget, Segment):
        return widget.minimumSizeHint().width() <= widget.width() + 1
    if isinstance(widget, QComboBox):
        return metrics.horizontalAdvance(widget.currentText()) <= widget.width() - ARROW
    if isinstance(widget, QLineEdit):
        margins = widget.textMargins()
        wide = metrics.horizontalAdvance(widget.text() or widget.placeholderText())
        return wide <= widget.width() - margins.left() - margins.right()
    return True


@pytest.fixture(params=ROOMS, ids=["9 points", "12 points", "16 points"])
def window(
    qtbot: QtBot, dressed: None, settings: Settings, answers: Answers, request: pytest.FixtureRequest
) -> Iterator[Window]:
    window = Window(settings, answers, demos=demo_files())
    qtbot.addWidget(window)
    window.resize(*request.param)
    with qtbot.waitExposed(window):
        window.show()
    yield window
    let_go(window)


@pytest.mark.parametrize("seen", SIGHTS)
def test_every_word_is_seen(window: Window, seen: Seen) -> None:
    turned_to(window, seen)
    QApplication.processEvents()
    assert list(cut_off(window)) == []


@pytest.mark.parametrize("seen", SIGHTS)
def test_the_window_stays_within_its_screen(window: Window, seen: Seen) -> None:
    before = window.size()
    turned_to(window, seen)
    QApplication.processEvents()
    assert window.size() == before


def test_no_place_needs_more_than_the_least_room(window: Window) -> None:
    for seen in SIGHTS[2:]:
        turned_to(window, seen)
        least = window.minimumSizeHint().expandedTo(window.minimumSize())
        assert least.width() <= LEAST_ROOM.width(), seen
        assert least.height() <= LEAST_ROOM.height(), seen


def test_the_way_it_is_dressed_changes_no_size(window: Window) -> None:
    turned_to(window, "draft")
    before = [widget.size() for widget in window.form.findChildren(QLabel)]
    dress("dark")
    QApplication.processEvents()
    assert [widget.size() for widget in window.form.findChildren(QLabel)] == before
    dress("light")

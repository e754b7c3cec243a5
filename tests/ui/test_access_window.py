"""Everything in the window can be reached by key, has a name, and says nothing in a tool tip alone."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Literal, get_args

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QMenu, QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import Answers, let_go
from workbench.ui.actions import PLACES, SIDES, PlaceName, SideName
from workbench.ui.app import demo_files
from workbench.ui.board.paper import Paper
from workbench.ui.board.strip import Strip
from workbench.ui.settings import Settings
from workbench.ui.window import Window

Seen = PlaceName | SideName | Literal["welcome", "book"]
SIGHTS: tuple[Seen, ...] = ("welcome", "book", *PLACES, *SIDES)


@pytest.fixture
def window(qtbot: QtBot, dressed: None, settings: Settings, answers: Answers) -> Iterator[Window]:
    window = Window(settings, answers, demos=demo_files())
    qtbot.addWidget(window)
    window.resize(1600, 1000)
    with qtbot.waitExposed(window):
        window.show()
    yield window
    let_go(window)


def turned_to(window: Window, seen: Seen) -> Window:
    """The window with a demo project in one of its sights."""
    if seen == "welcome":
        return window
    window.files.open_demo(demo_files()[0])
    if seen == "book":
        window.show_book()
    elif seen in SIDES:
        window.deeds[seen].setChecked(True)
    else:
        window.turning.show_place(next(place for place in PLACES if place == seen))
    window.desk.now()
    QApplication.processEvents()
    return window


def visible(window: QWidget) -> Iterator[QWidget]:
    return (widget for widget in window.findChildren(QWidget) if widget.isVisible())


def by_arrow(widget: QWidget) -> bool:
    """Whether it is one of a set that arrow keys go through: Tab comes to one of them."""
    return isinstance(widget, QAbstractButton) and (widget.group() is not None or widget.autoExclusive())


def heard(widget: QWidget) -> str:
    """Its name, as a screen reader has it."""
    return QAccessible.queryAccessibleInterface(widget).text(QAccessible.Text.Name)


def nameless(window: QWidget) -> list[str]:
    """What takes keys and has no name."""
    return [
        f"{type(widget).__name__} in {type(widget.parent()).__name__}"
        for widget in visible(window)
        if widget.focusPolicy() != Qt.FocusPolicy.NoFocus and not heard(widget)
    ]


def in_tips_alone(window: QWidget) -> list[str]:
    """Tool tips that say what nothing else says."""
    menus = {action.text().replace("&", "").rstrip("…") for action in window.findChildren(QAction)}
    labels = {label.text() for label in window.findChildren(QLabel)}
    alone = []
    for widget in visible(window):
        tip = widget.toolTip()
        reader = QAccessible.queryAccessibleInterface(widget) if tip else None
        own = (reader.text(QAccessible.Text.Name), widget.accessibleDescription()) if reader else ()
        if reader is not None and tip not in menus | labels and not any(tip in words for words in own):
            alone.append(f"{type(widget).__name__}: {tip}")
    return alone


def missed_by_tab(window: QWidget) -> list[str]:
    """What takes keys and never has them in one round of Tab."""
    wanted = {
        widget
        for widget in visible(window)
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        and widget.isEnabled()
        and widget.focusProxy() is None
        and widget.window() is window
        and not by_arrow(widget)
    }
    met: list[QWidget] = []
    for _ in range(4 * len(wanted) + 20):
        QTest.keyClick(QApplication.focusWidget() or window, Qt.Key.Key_Tab)
        now = QApplication.focusWidget()
        if now is None or (met and now is met[0]):
            break
        met.append(now)
    return [f"{type(widget).__name__} {heard(widget)}" for widget in wanted - set(met)]


@pytest.mark.parametrize("seen", SIGHTS)
def test_whatever_takes_keys_has_a_name(window: Window, seen: Seen) -> None:
    assert nameless(turned_to(window, seen)) == []


@pytest.mark.parametrize("seen", SIGHTS)
def test_nothing_is_said_in_a_tool_tip_alone(window: Window, seen: Seen) -> None:
    assert in_tips_alone(turned_to(window, seen)) == []


@pytest.mark.parametrize("seen", SIGHTS)
def test_tab_goes_round_everything_that_takes_keys(window: Window, seen: Seen) -> None:
    """Once round, and every field, button and canvas in sight has had the focus."""
    turned_to(window, seen).activateWindow()
    missed = missed_by_tab(window)
    assert not missed, "\n".join(missed)


@pytest.mark.parametrize("place", PLACES)
def test_every_canvas_is_reached_by_tab(window: Window, place: PlaceName) -> None:
    turned_to(window, place)
    canvases = [widget for widget in visible(window) if isinstance(widget, Paper | Strip)]
    assert all(canvas.focusPolicy() & Qt.FocusPolicy.TabFocus for canvas in canvases)
    assert canvases or place in ("quote", "marking", "sewing")


def letter(text: str) -> str:
    """What picks a menu entry; empty where nothing does."""
    found = re.search(r"&([^&])", text.replace("&&", ""))
    return found[1].lower() if found else ""


def test_every_menu_entry_has_a_letter_of_its_own(window: Window) -> None:
    given = (window.menus.recent, window.menus.demos)
    twice = []
    for menu in window.menuBar().findChildren(QMenu):
        if menu not in given:
            entries = [action for action in menu.actions() if not action.isSeparator()]
            letters = Counter(letter(action.text()) for action in entries)
            twice += [
                f"{menu.title()}: {action.text()}"
                for action in entries
                if not letter(action.text()) or letters[letter(action.text())] > 1
            ]
    assert twice == []


def test_every_menu_of_the_bar_has_a_letter_of_its_own(window: Window) -> None:
    letters = [letter(action.text()) for action in window.menuBar().actions()]
    assert len(set(letters) - {""}) == len(letters)


def test_no_key_does_two_things(window: Window) -> None:
    keys = Counter(
        shortcut.toString() for action in window.deeds.by_name.values() for shortcut in action.shortcuts()
    )
    assert [key for key, count in keys.items() if count > 1] == []


def test_the_places_are_all_there_are() -> None:
    assert get_args(PlaceName) == PLACES
    assert Path(demo_files()[0]).exists()

"""The box to tick: seen in light and dark, and ticked by a click on it or its words alone."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QListWidget, QListWidgetItem
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.ui.look import Scheme, look
from workbench.ui.style import dress
from workbench.ui.tick import Tick, TickDelegate

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture(params=["light", "dark"])
def scheme(request: pytest.FixtureRequest) -> Iterator[Scheme]:
    dress(request.param)
    yield request.param
    dress("light")


def brightness(colour: QColor) -> float:
    """Relative luminance (WCAG 2.2, definition of relative luminance; from memory)."""
    parts = (colour.redF(), colour.greenF(), colour.blueF())
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: QColor, other: QColor) -> float:
    dark, bright = sorted((brightness(one), brightness(other)))
    return (bright + 0.05) / (dark + 0.05)


def test_an_empty_box_stands_out_from_what_it_lies_on(qtbot: QtBot, scheme: Scheme) -> None:
    tick = on_screen(qtbot, Tick("Lining"), 160, 24)
    image = tick.grab().toImage()
    edge = [QColor(image.pixel(x, 12)) for x in range(5)]
    # WCAG 2.2, 1.4.11: 3 to 1 for what a control is known by (from memory)
    assert max(contrast(colour, look().ground) for colour in edge) >= 3.0


def test_an_empty_box_in_a_list_stands_out_too(qtbot: QtBot, scheme: Scheme) -> None:
    rows = QListWidget()
    rows.setItemDelegate(TickDelegate(rows))
    item = QListWidgetItem("one.bodice", rows)
    item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
    item.setCheckState(Qt.CheckState.Unchecked)
    on_screen(qtbot, rows, 200, 60)
    image = rows.viewport().grab().toImage()
    middle = rows.visualItemRect(item).center().y()
    edge = [QColor(image.pixel(x, middle)) for x in range(8)]
    assert max(contrast(colour, look().field) for colour in edge) >= 3.0


def test_a_click_beyond_the_words_ticks_nothing(qtbot: QtBot) -> None:
    tick = on_screen(qtbot, Tick("Lining"), 400, 24)
    QTest.mouseClick(tick, LEFT, pos=QPoint(390, 12))
    assert not tick.isChecked()
    QTest.mouseClick(tick, LEFT, pos=QPoint(30, 12))
    assert tick.isChecked()


def test_enter_ticks_it(qtbot: QtBot) -> None:
    tick = on_screen(qtbot, Tick("Lining"), 160, 24)
    QTest.keyClick(tick, Qt.Key.Key_Return)
    assert tick.isChecked()

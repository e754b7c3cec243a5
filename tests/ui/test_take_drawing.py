"""The small drawings of where the tape goes: each says something of its own."""

from __future__ import annotations

from itertools import combinations

import pytest
from PySide6.QtGui import QColor, QPixmap
from pytestqt.qtbot import QtBot

from workbench.body import BY_KEY
from workbench.ui.form.take_drawing import TakeDrawing, taking_of
from workbench.ui.look import look


def drawn(qtbot: QtBot, key: str) -> TakeDrawing:
    drawing = TakeDrawing()
    qtbot.addWidget(drawing)
    drawing.show_measurement(BY_KEY[key])
    return drawing


def picture(drawing: TakeDrawing) -> QPixmap:
    shown = QPixmap(drawing.size())
    shown.fill(look().ground)
    drawing.render(shown)
    return shown


def test_no_two_measurements_are_drawn_alike(qtbot: QtBot, dressed: None) -> None:
    pictures = {key: picture(drawn(qtbot, key)).toImage() for key in BY_KEY}
    alike = [pair for pair in combinations(BY_KEY, 2) if pictures[pair[0]] == pictures[pair[1]]]
    assert alike == []


@pytest.mark.parametrize("key", list(BY_KEY))
def test_the_tape_is_seen_whole(qtbot: QtBot, dressed: None, key: str) -> None:
    """Nothing in the colour of the tape lies at the edge, where it would be cut off."""
    shown = picture(drawn(qtbot, key)).toImage()
    high, wide = shown.height(), shown.width()
    edge = [(x, y) for y in range(high) for x in (0, wide - 1)] + [
        (x, y) for x in range(wide) for y in (0, high - 1)
    ]
    assert not any(near(shown.pixelColor(x, y), look().selected) for x, y in edge)
    assert any(near(shown.pixelColor(x, y), look().selected) for x in range(wide) for y in range(0, high, 2))


def near(one: QColor, other: QColor) -> bool:
    return max(abs(one.red() - other.red()), abs(one.green() - other.green())) < 24


@pytest.mark.parametrize("key", list(BY_KEY))
def test_its_name_says_from_where_she_is_seen(qtbot: QtBot, dressed: None, key: str) -> None:
    name = drawn(qtbot, key).accessibleName()
    assert BY_KEY[key].label in name
    assert taking_of(BY_KEY[key]).figure in name

"""The form of the cloth place: everything that is decided about a cloth, typed and ticked."""

from __future__ import annotations

from decimal import Decimal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from tests.ui.cloth_scene import LEFT, shown
from workbench.cloth import Cloth
from workbench.document import set_unit
from workbench.ui.cloth import ClothPlace
from workbench.ui.cloth.rows import LayersRow, PickRow, WidthRow
from workbench.ui.cloth.section import ClothSection
from workbench.ui.desk import Desk
from workbench.ui.form.field import Field, FigureRow
from workbench.ui.form.row import Row

INCH = 25.4
"""International yard and pound agreement of 1959, from memory."""


@pytest.fixture
def place(qtbot: QtBot, desk: Desk) -> ClothPlace:
    return shown(qtbot, desk)


def section(place: ClothPlace, number: int = 0) -> ClothSection:
    found = place.form.sections[number]
    assert isinstance(found, ClothSection)
    return found


def row(place: ClothPlace, key: str) -> Row:
    found = section(place).row_of(f"cloths.0.{key}", None)
    assert found is not None
    return found


def field(place: ClothPlace, key: str) -> Field:
    found = row(place, key)
    assert isinstance(found, FigureRow)
    return found.field


def enter(place: ClothPlace, key: str, text: str) -> None:
    edit = field(place, key)
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, text)
    QTest.keyClick(edit, Qt.Key.Key_Return)


def first(desk: Desk) -> Cloth:
    return desk.project.cloths[0]


@pytest.mark.parametrize(
    ("key", "text", "stored"),
    [
        ("width_mm", "36", 36 * INCH),
        ("selvedge_mm", "3/8", 0.375 * INCH),
        ("gap_mm", "1/4", 0.25 * INCH),
        ("tilt_degrees", "2.5", 2.5),
        ("repeat_mm", "6", 6 * INCH),
        ("shrinkage_percent", "3", 3.0),
        ("at_hand_mm", "50", 50 * INCH),
        ("price", "12.50", Decimal("12.50")),
        ("name", "Silk", "Silk"),
    ],
)
def test_what_is_typed_is_stored(place: ClothPlace, desk: Desk, key: str, text: str, stored: object) -> None:
    enter(place, key, text)
    found = getattr(first(desk), key)
    assert found == (pytest.approx(stored) if isinstance(stored, float) else stored)


def test_a_usual_width_is_one_click(place: ClothPlace, desk: Desk) -> None:
    widths = row(place, "width_mm")
    assert isinstance(widths, WidthRow)
    QTest.mouseClick(widths._choices["in"].button(60 * INCH), LEFT)
    assert first(desk).width_mm == 60 * INCH


def test_usual_widths_are_those_of_the_unit(place: ClothPlace, desk: Desk) -> None:
    desk.apply("Unit", set_unit(desk.project, "cm", 8))
    desk.now()
    widths = row(place, "width_mm")
    assert isinstance(widths, WidthRow)
    assert not widths._choices["in"].isVisible()
    QTest.mouseClick(widths._choices["cm"].button(1500.0), LEFT)
    assert first(desk).width_mm == 1500.0


@pytest.mark.parametrize(("key", "value"), [("laid", "folded"), ("run", "one_way"), ("step", "half_yard")])
def test_one_of_a_few_is_stored(place: ClothPlace, desk: Desk, key: str, value: str) -> None:
    picked = row(place, key)
    assert isinstance(picked, PickRow)
    QTest.mouseClick(picked.choice.button(value), LEFT)
    assert getattr(first(desk), key) == value


def test_a_layer_given_to_a_cloth_is_taken_off_the_other(place: ClothPlace, desk: Desk) -> None:
    layers = row(place, "layers")
    assert isinstance(layers, LayersRow)
    QTest.mouseClick(layers.buttons["lining"], LEFT)
    assert "lining" in first(desk).layers
    assert desk.project.cloth("Lining cloth").layers == ()


def test_corners_make_a_remnant_and_none_take_it_away(place: ClothPlace, desk: Desk) -> None:
    enter(place, "remnant", "0, 0; 20, 0; 14 1/2, 30")
    corners = [part for corner in first(desk).remnant or () for part in corner]
    assert corners == pytest.approx([0.0, 0.0, 20 * INCH, 0.0, 14.5 * INCH, 30 * INCH])
    assert field(place, "remnant").text() == "0, 0; 20, 0; 14½, 30"
    edit = field(place, "remnant")
    edit.clear()
    edit.commit()
    assert first(desk).remnant is None


@pytest.mark.parametrize(
    ("key", "text", "said"),
    [
        ("width_mm", "0", "Width of the cloth"),
        ("width_mm", "wide", "wide"),
        ("price", "-3", "less than nothing"),
        ("remnant", "0, 0; 20", "across and along"),
        ("remnant", "0, 0; 20, 0", "corners"),
        ("name", "Lining cloth", "already"),
        ("shrinkage_percent", "80", "Shrinkage"),
    ],
)
def test_what_cannot_be_is_said_and_stays(
    place: ClothPlace, desk: Desk, key: str, text: str, said: str
) -> None:
    before = desk.project
    enter(place, key, text)
    assert desk.project is before
    assert said in row(place, key).said
    assert field(place, key).text() == text


def test_while_there_is_no_price_the_field_says_so(place: ClothPlace) -> None:
    assert field(place, "price").text() == ""
    assert field(place, "price").placeholderText() == "no price yet"
    assert field(place, "price").figure.suffix(place._desk.project) == "$ a yard"


def test_a_cloth_is_added_and_looked_at(place: ClothPlace, desk: Desk) -> None:
    QTest.mouseClick(place.form.add, LEFT)
    assert [cloth.name for cloth in desk.project.cloths][-1] == "New cloth"
    assert place.bench.number == 4
    assert place.form.sections[4].opened
    QTest.mouseClick(place.form.add, LEFT)
    assert desk.project.cloths[-1].name == "New cloth 2"


def test_a_cloth_is_removed_and_undo_brings_it_back(place: ClothPlace, desk: Desk) -> None:
    button = section(place).rows[-1].target()
    assert isinstance(button, QPushButton)
    QTest.mouseClick(button, LEFT)
    desk.now()
    assert [cloth.name for cloth in desk.project.cloths] == ["Strong cloth", "Lining cloth", "Interfacing"]
    assert [s.isVisible() for s in place.form.sections] == [True, True, True, False]
    assert section(place).header.text() == "Strong cloth"
    desk.undo()
    desk.now()
    assert [s.isVisible() for s in place.form.sections] == [True] * 4


def test_a_long_name_leaves_room_for_what_to_buy(place: ClothPlace) -> None:
    enter(place, "name", "Hand-woven duchesse satin with a woven border")
    place._desk.now()
    assert section(place).header.text().endswith("…")
    assert section(place).header.summary.startswith("buy ")


def test_the_search_finds_a_field_of_every_cloth(place: ClothPlace) -> None:
    place.form.search.setText("shrinkage")
    assert all(s.isVisible() for s in place.form.sections)
    place.form.search.setText("feathers")
    assert place.form.nothing.isVisible()
    place.form.search.clear()
    assert section(place).opened
    assert not section(place, 1).rows or not section(place, 1).rows[0].isVisible()


def test_showing_edits_nothing(place: ClothPlace, desk: Desk) -> None:
    before = desk.project
    for number in range(4):
        place.bench.show_cloth(number)
    place.bench.work_out()
    assert desk.project is before
    assert desk.undo_name is None

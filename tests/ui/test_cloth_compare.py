"""Other ways to cut a cloth side by side, and taking one of them."""

from __future__ import annotations

from decimal import Decimal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.cloth_scene import LEFT, shown
from workbench.cloth import bottom_left, copies_of, say_money, to_buy
from workbench.document import Session, new_project, set_cloth
from workbench.pieces import cutting_of
from workbench.ui.cloth import ClothPlace
from workbench.ui.cloth.compare import Told
from workbench.ui.desk import Desk

INCH = 25.4
"""International yard and pound agreement of 1959, from memory."""


@pytest.fixture
def place(qtbot: QtBot, desk: Desk) -> ClothPlace:
    desk.apply("Price", set_cloth(desk.project, "Fashion cloth", price=Decimal(24)))
    desk.now()
    found = shown(qtbot, desk)
    found.compare.finish()
    return found


def row(place: ClothPlace, label: str) -> Told:
    return next(told for told in place.compare.model.rows if told.other.label == label)


def pick(place: ClothPlace, label: str) -> None:
    number = [told.other.label for told in place.compare.model.rows].index(label)
    place.compare.view.setCurrentIndex(place.compare.model.index(number, 0))


def test_it_compares_fold_widths_nap_and_allowances(place: ClothPlace) -> None:
    assert [told.other.label for told in place.compare.model.rows] == [
        "As it is",
        "Folded",
        "36 in wide",
        "54 in wide",
        "60 in wide",
        "One way",
        "Seams 1 in",
        "Seams 1½ in",
    ]


def test_a_row_tells_length_what_to_buy_use_and_cost(place: ClothPlace, desk: Desk) -> None:
    cloth = set_cloth(desk.project, "Fashion cloth", width_mm=36 * INCH).cloths[0]
    cutting = desk.picture.cutting
    assert cutting is not None
    plan = bottom_left(copies_of(cutting, cloth), cloth)
    buy = to_buy(plan.length_mm, cloth)
    told = row(place, "36 in wide")
    assert told.buy == buy.words
    assert told.used == f"{100 * plan.utilisation:.0f} %"
    assert told.cost == say_money(buy.cost, desk.project.quoting.currency)


def test_larger_allowances_are_really_cut(place: ClothPlace, desk: Desk) -> None:
    good = desk.picture.good
    assert good is not None
    QTest.mouseClick(place.compare.view.viewport(), LEFT)
    pick(place, "Seams 1½ in")
    QTest.mouseClick(place.compare.take, LEFT)
    assert desk.project.making.allowances.seam == 1.5 * INCH
    cutting = cutting_of(good, desk.project.making)
    cloth = desk.project.cloths[0]
    plan = bottom_left(copies_of(cutting, cloth), cloth)
    desk.now()
    place.bench.work_out()
    place.compare.finish()
    assert row(place, "As it is").used == f"{100 * plan.utilisation:.0f} %"


def test_a_way_is_taken_with_a_double_click(place: ClothPlace, desk: Desk) -> None:
    pick(place, "60 in wide")
    index = place.compare.view.currentIndex()
    spot = place.compare.view.visualRect(index).center()
    QTest.mouseClick(place.compare.view.viewport(), LEFT, Qt.KeyboardModifier.NoModifier, spot)
    QTest.mouseDClick(place.compare.view.viewport(), LEFT, Qt.KeyboardModifier.NoModifier, spot)
    assert desk.project.cloths[0].width_mm == 60 * INCH


def test_the_way_it_is_cannot_be_taken(place: ClothPlace) -> None:
    pick(place, "As it is")
    assert not place.compare.take.isEnabled()


def test_a_way_that_does_not_fit_says_why(place: ClothPlace, desk: Desk) -> None:
    desk.apply("Width", set_cloth(desk.project, "Fashion cloth", width_mm=10.5 * INCH))
    desk.now()
    place.bench.work_out()
    place.compare.finish()
    assert row(place, "Folded").length == "does not fit"
    pick(place, "Folded")
    assert "across" in place.compare.trouble.text()


def test_it_can_be_copied(place: ClothPlace) -> None:
    QTest.mouseClick(place.compare.copy, LEFT)
    text = QGuiApplication.clipboard().text()
    assert "60 in wide\t" in text
    assert text.count("\n") == 2 + len(place.compare.model.rows)


def test_a_price_alone_lays_nothing_but_shows_the_new_cost(place: ClothPlace, desk: Desk) -> None:
    before = row(place, "Folded").cost
    desk.apply("Price", set_cloth(desk.project, "Fashion cloth", price=Decimal(48)))
    desk.now()
    place.bench.work_out()
    place.compare.finish()
    assert row(place, "Folded").cost != before


def test_without_pieces_it_says_when_there_will_be_something(place: ClothPlace, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    place.bench.work_out()
    assert place.compare.model.rows == ()
    assert place.compare.nothing.isVisible()


def test_out_of_sight_it_lays_nothing(place: ClothPlace, desk: Desk) -> None:
    place.set_compare_shown(False)
    before = place.compare.model.rows
    desk.apply("Width", set_cloth(desk.project, "Fashion cloth", width_mm=50 * INCH))
    desk.now()
    place.bench.work_out()
    place.compare.finish()
    assert place.compare.model.rows is before

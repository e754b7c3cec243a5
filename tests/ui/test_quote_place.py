"""The quote place: what it costs her, what she asks, and what the client gets to see."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from workbench.body import CAUTIONS
from workbench.cloth import Quote, hours_of, rows_for, say_money
from workbench.document import (
    Project,
    Session,
    new_project,
    set_all_hours,
    set_allowance_of,
    set_bought,
    set_client,
    set_cloth,
    set_currency,
    set_price,
    set_quoting,
)
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.quote import QuotePlace
from workbench.ui.quote.inside import Line
from workbench.ui.quote.price_book import PriceBook


def priced(desk: Desk) -> Project:
    """Everything priced at 2, cloth at 10, hours as usual at 30: invented figures."""
    project = desk.project
    cutting = desk.picture.cutting
    assert cutting is not None
    for row in rows_for(cutting, project.quoting.prices, project.unit):
        if row.key.count("/") < 2:
            project = set_price(project, row.key, Decimal(2))
    for cloth in project.cloths:
        project = set_cloth(project, cloth.name, price=Decimal(10))
    project = set_all_hours(project, hours_of(desk.picture.sewing))
    return set_quoting(project, rate=Decimal(30), margin_percent=Decimal(20), overhead_percent=Decimal(10))


@pytest.fixture
def place(qtbot: QtBot, desk: Desk, tmp_path: Path) -> QuotePlace:
    desk.apply("Prices", priced(desk))
    desk.now()
    shown = QuotePlace(desk, PriceBook(tmp_path / "kept" / "prices.json"))
    qtbot.addWidget(shown)
    shown.resize(1280, 640)
    with qtbot.waitExposed(shown):
        shown.show()
    return shown


def quote(place: QuotePlace) -> Quote:
    assert place.bench.latest is not None
    assert place.bench.latest.quote is not None
    return place.bench.latest.quote


def lines(place: QuotePlace) -> tuple[Line, ...]:
    return place.inside.model.lines


def line(place: QuotePlace, name: str) -> Line:
    return next(each for each in lines(place) if each.name == name)


def money(text: str) -> Decimal:
    return Decimal(text.replace("$", "").replace(",", ""))


# --- the inside sheet ----------------------------------------------------------------------------


def test_it_answers_what_is_asked_and_what_it_costs(place: QuotePlace) -> None:
    sums = quote(place).sums
    currency = quote(place).currency
    said = place.inside.headline.accessibleName()
    assert f"You ask {say_money(sums.price, currency)}" in said
    assert say_money(sums.costs + sums.overhead, currency) in said


def test_every_line_adds_up_to_the_price(place: QuotePlace) -> None:
    groups = {each.name: money(each.amount) for each in lines(place) if each.heading}
    assert sum(groups.values()) == money(line(place, "Price asked").amount)
    single = [each for each in lines(place) if not each.heading and not each.total]
    costs = [money(each.amount) for each in single if each.name not in ("Deposit", "Balance")]
    assert sum(costs) == money(line(place, "Price asked").amount)


def test_what_has_no_price_is_marked_and_said(place: QuotePlace, desk: Desk) -> None:
    desk.apply("Price", set_price(desk.project, "cord", None))
    desk.now()
    found = line(place, "Lacing cord")
    assert found.missing
    assert found.words == "no price yet"
    assert line(place, "Price asked").missing
    assert "1 line has no price yet" in place.inside.headline.accessibleName()
    assert "Lacing cord" in place.foot.row.accessibleName()


def test_a_click_on_a_line_lights_up_its_field(place: QuotePlace, desk: Desk) -> None:
    number = [each.name for each in lines(place)].index("Overhead")
    spot = place.inside.sheet.visualRect(place.inside.model.index(number, 0))
    place.inside.sheet.scrollTo(place.inside.model.index(number, 0))
    spot = place.inside.sheet.visualRect(place.inside.model.index(number, 0))
    none = Qt.KeyboardModifier.NoModifier
    QTest.mouseClick(place.inside.sheet.viewport(), Qt.MouseButton.LeftButton, none, spot.center())
    assert desk.selection == Place(field="quoting.overhead_percent")
    assert place.form.sections[2].opened


def test_enter_does_the_same(place: QuotePlace, desk: Desk) -> None:
    number = [each.name for each in lines(place)].index("Lacing cord")
    place.inside.sheet.setCurrentIndex(place.inside.model.index(number, 0))
    QTest.keyClick(place.inside.sheet, Qt.Key.Key_Return)
    assert desk.selection == Place(field="quoting.prices.cord")


def test_a_price_is_in_the_sheet_at_once(place: QuotePlace, desk: Desk) -> None:
    before = money(line(place, "Price asked").amount)
    desk.apply("Price", set_price(desk.project, "cord", Decimal(50)))
    desk.now()
    assert money(line(place, "Price asked").amount) > before


def test_what_is_not_bought_costs_nothing_and_says_so(place: QuotePlace, desk: Desk) -> None:
    desk.apply("Bought", set_bought(desk.project, "cord", False))
    desk.now()
    found = line(place, "Lacing cord")
    assert money(found.amount) == 0
    assert "not bought" in found.words


def test_it_can_be_copied(place: QuotePlace) -> None:
    QTest.mouseClick(place.inside.copy, Qt.MouseButton.LeftButton)
    assert f"Price asked\t\t{line(place, 'Price asked').amount}\n" in QGuiApplication.clipboard().text()


# --- the client's page ---------------------------------------------------------------------------


def page(place: QuotePlace) -> str:
    assert place.page.paper.words is not None
    return place.page.paper.words.spoken


def test_the_page_says_the_price_and_no_cost(place: QuotePlace) -> None:
    sums, currency = quote(place).sums, quote(place).currency
    assert say_money(sums.price, currency) in page(place)
    for amount in (sums.costs, sums.overhead, sums.margin):
        assert say_money(amount, currency) not in page(place)
    assert "Margin" not in page(place)


def test_deposit_and_balance_are_the_price(place: QuotePlace) -> None:
    assert place.page.paper.words is not None
    paid = [each.amount for each in place.page.paper.words.of("paid")]
    assert sum(amount for amount in paid if amount is not None) == quote(place).sums.price


def test_what_is_written_for_her_is_on_it_at_once(place: QuotePlace, desk: Desk) -> None:
    project = set_client(desk.project, name="A. Example")
    desk.apply("Words", set_quoting(project, included="Two fittings\nA garment bag", ready_by="1 June"))
    desk.now()
    assert all(words in page(place) for words in ("A. Example", "Two fittings", "A garment bag", "1 June"))


def test_another_currency_is_on_it_at_once(place: QuotePlace, desk: Desk) -> None:
    desk.apply("Money", set_currency(desk.project, symbol="€", before=False))
    desk.now()
    assert "$" not in page(place)
    assert "€" in page(place)


def test_a_price_that_is_not_whole_is_called_provisional(place: QuotePlace, desk: Desk) -> None:
    desk.apply("Price", set_price(desk.project, "cord", None))
    desk.now()
    assert place.page.paper.words is not None
    assert not place.page.paper.words.complete
    assert not place.page.paper.grab().isNull()


def test_every_caution_stands_on_the_page(place: QuotePlace) -> None:
    assert all(caution in page(place) for caution in CAUTIONS)


def test_a_price_does_not_draw_the_design_anew(place: QuotePlace, desk: Desk) -> None:
    assert place.page.paper.words is not None
    before = place.page.paper.words.garment
    desk.apply("Price", set_price(desk.project, "cord", Decimal(5)))
    desk.now()
    assert place.page.paper.words.garment is before


# --- in sight or not -----------------------------------------------------------------------------


def test_out_of_sight_nothing_is_worked_out(place: QuotePlace, desk: Desk) -> None:
    place.hide()
    before = place.bench.latest
    desk.apply("Price", set_price(desk.project, "cord", Decimal(50)))
    desk.now()
    place.bench.work_out()
    assert place.bench.latest is before


def test_in_sight_again_it_has_caught_up(place: QuotePlace, desk: Desk) -> None:
    place.hide()
    desk.apply("Seams", set_allowance_of(desk.project, "seam", 25.4))
    desk.now()
    place.show()
    assert place.bench.latest is not None
    assert place.bench.latest.picture is desk.picture


def test_with_nothing_measured_it_says_what_is_missing(place: QuotePlace, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    place.bench.work_out()
    assert place.inside.nothing.isVisible()
    assert place.page.paper.words is None
    assert not place.page.print.isEnabled()
    assert "Waist" in place.foot.row.accessibleName()

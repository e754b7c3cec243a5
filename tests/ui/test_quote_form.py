"""The form of the quote place: prices, hours, what comes on top, money and words, typed and ticked."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from workbench.cloth import Quoting, hours_of, price_list, with_row
from workbench.document import set_bought, set_measurement, set_price
from workbench.ui.desk import Desk
from workbench.ui.form.field import Field, FigureRow
from workbench.ui.form.section import Section
from workbench.ui.form.who import ProseRow
from workbench.ui.quote import QuotePlace
from workbench.ui.quote.hours import AddStepRow
from workbench.ui.quote.price_book import PriceBook
from workbench.ui.quote.price_rows import PriceListRow
from workbench.ui.quote.rows import ButtonsRow
from workbench.ui.quote.sections import PickedRow

LEFT = Qt.MouseButton.LeftButton
PRICES, HOURS, ON_TOP, MONEY, WORDS = range(5)


@pytest.fixture
def book(tmp_path: Path) -> PriceBook:
    return PriceBook(tmp_path / "kept" / "prices.json")


@pytest.fixture
def place(qtbot: QtBot, desk: Desk, book: PriceBook) -> QuotePlace:
    shown = QuotePlace(desk, book)
    qtbot.addWidget(shown)
    shown.resize(1280, 900)
    with qtbot.waitExposed(shown):
        shown.show()
    return shown


def opened(place: QuotePlace, number: int) -> Section:
    section = place.form.sections[number]
    section.show_opened(True)
    return section


def row(place: QuotePlace, number: int, name: str) -> FigureRow:
    found = opened(place, number).row_of(name, None)
    assert isinstance(found, FigureRow)
    return found


def price_row(place: QuotePlace, key: str) -> PriceListRow:
    found = row(place, PRICES, f"quoting.prices.{key}")
    assert isinstance(found, PriceListRow)
    return found


def enter(field: Field, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def price_of(desk: Desk, key: str) -> Decimal:
    return next((each.price for each in desk.project.quoting.prices if each.key == key), Decimal(0))


# --- prices ---------------------------------------------------------------------------------------


def test_a_price_is_typed_and_kept_as_an_amount(place: QuotePlace, desk: Desk) -> None:
    enter(price_row(place, "cord").field, "1.25")
    assert price_of(desk, "cord") == Decimal("1.25")
    assert desk.undo_name == "Price: Lacing cord"


def test_while_there_is_none_the_field_says_so(place: QuotePlace) -> None:
    field = price_row(place, "cord").field
    assert field.text() == ""
    assert field.placeholderText() == "no price yet"


def test_an_emptied_field_has_no_price_again(place: QuotePlace, desk: Desk) -> None:
    enter(price_row(place, "cord").field, "1.25")
    field = price_row(place, "cord").field
    field.clear()
    field.commit()
    assert price_of(desk, "cord") == 0


def test_there_is_a_row_for_everything_that_is_bought(place: QuotePlace, desk: Desk) -> None:
    latest = place.bench.latest
    assert latest is not None
    assert latest.quote is not None
    notions = {line.key for line in latest.quote.inside if line.kind == "notion"}
    for key in notions:
        assert price_row(place, key).isVisible()


def test_bones_of_one_length_are_put_away_until_they_have_a_price(place: QuotePlace, desk: Desk) -> None:
    section = opened(place, PRICES)
    single = [r for r in section.rows if r.name.startswith("quoting.prices.bone/") and r.name.count("/") > 1]
    assert single
    assert not any(each.isVisible() for each in single)
    key = single[0].name.removeprefix("quoting.prices.")
    desk.apply("Price", set_price(desk.project, key, Decimal(3)))
    desk.now()
    assert single[0].isVisible()


def test_rows_do_not_pile_up_however_many_bodices_are_tried(place: QuotePlace, desk: Desk) -> None:
    section = opened(place, PRICES)
    most, names = len(section.rows), set()
    for number in range(40):
        for key, inches in (
            ("shoulder_to_waist", 17.0),
            ("shoulder_to_underbust", 14.5 - number / 16),
            ("waist_to_top_hip", 2.5 + number / 10),
        ):
            desk.apply("Length", set_measurement(desk.project, key, str(inches)))
        desk.now()
        place.bench.work_out()
        names |= {each.name for each in section.rows}
    assert len(names) > most + 20
    assert len(section.rows) <= most + 14
    assert price_row(place, "thread").isVisible()


def test_what_a_price_is_for_is_picked_from_a_menu(place: QuotePlace, desk: Desk) -> None:
    found = price_row(place, "loops")
    pack = next(action for action in found.per.offered.actions() if action.data() == "pack")
    pack.trigger()
    desk.now()
    assert next(each.per for each in desk.project.quoting.prices if each.key == "loops") == "pack"
    assert found.pack.isVisible()


@pytest.mark.parametrize(
    ("text", "count", "length"), [("24", 24, 0.0), ("100 yd", 1, 91_440.0), ("50 m", 1, 50_000.0)]
)
def test_a_pack_is_a_number_or_a_length(
    place: QuotePlace, desk: Desk, text: str, count: int, length: float
) -> None:
    found = price_row(place, "thread")
    enter(found.pack, text)
    stored = next(each for each in desk.project.quoting.prices if each.key == "thread")
    assert stored.pack_count == count
    assert stored.pack_mm == pytest.approx(length)


def test_what_is_there_already_is_not_bought(place: QuotePlace, desk: Desk) -> None:
    found = price_row(place, "cord")
    found.bought.click()
    assert desk.project.quoting.not_bought == ("cord",)
    desk.now()
    assert not found.field.isEnabled()


def test_the_summary_counts_what_has_no_price(place: QuotePlace, desk: Desk) -> None:
    latest = place.bench.latest
    assert latest is not None
    assert latest.quote is not None
    without = sum(line.amount is None for line in latest.quote.inside if line.kind == "notion")
    assert place.form.sections[PRICES].header.summary == f"{without} without a price"


@pytest.mark.parametrize(("text", "said"), [("-2", "less than nothing"), ("dear", "cannot be read")])
def test_a_price_that_cannot_be_is_said_and_stays(
    place: QuotePlace, desk: Desk, text: str, said: str
) -> None:
    before = desk.project
    found = price_row(place, "cord")
    enter(found.field, text)
    assert desk.project is before
    assert said in found.said
    assert "Lacing cord" in found.said
    assert found.field.text() == text


# --- her own list ----------------------------------------------------------------------------------


def own(place: QuotePlace) -> ButtonsRow:
    return next(r for r in opened(place, PRICES).rows if isinstance(r, ButtonsRow))


def test_prices_are_kept_for_the_next_client(place: QuotePlace, desk: Desk, book: PriceBook) -> None:
    enter(price_row(place, "cord").field, "1.25")
    QTest.mouseClick(own(place).buttons[1], LEFT)
    kept = book.read()
    assert kept is not None
    assert {each.key: each.price for each in kept.prices}["cord"] == Decimal("1.25")
    assert "Kept" in own(place).said


def test_kept_prices_are_taken_where_there_are_none(place: QuotePlace, desk: Desk, book: PriceBook) -> None:
    cord = next(each for each in price_list() if each.key == "cord")
    binding = next(each for each in price_list() if each.key == "binding")
    rows = with_row((), type(cord)(cord.key, cord.name, Decimal(3), cord.per))
    rows = with_row(rows, type(binding)(binding.key, binding.name, Decimal(4), binding.per))
    book.write(Quoting(prices=rows))
    enter(price_row(place, "cord").field, "1.25")
    QTest.mouseClick(own(place).buttons[0], LEFT)
    assert price_of(desk, "cord") == Decimal("1.25")
    assert price_of(desk, "binding") == Decimal(4)
    desk.undo()
    assert price_of(desk, "binding") == 0


def test_an_empty_list_says_so(place: QuotePlace, desk: Desk) -> None:
    before = desk.project
    QTest.mouseClick(own(place).buttons[0], LEFT)
    assert "empty" in own(place).said
    assert desk.project is before


def test_a_damaged_list_is_said_and_changes_nothing(place: QuotePlace, desk: Desk, book: PriceBook) -> None:
    book.path.parent.mkdir()
    book.path.write_text("[1, 2")
    before = desk.project
    QTest.mouseClick(own(place).buttons[0], LEFT)
    assert "prices.json" in own(place).said
    assert desk.project is before


# --- hours -----------------------------------------------------------------------------------------


def estimate(place: QuotePlace) -> None:
    buttons = next(r for r in opened(place, HOURS).rows if isinstance(r, ButtonsRow))
    QTest.mouseClick(buttons.buttons[0], LEFT)


def test_hours_are_estimated_from_the_bodice(place: QuotePlace, desk: Desk) -> None:
    estimate(place)
    cutting = desk.picture.cutting
    assert cutting is not None
    assert desk.project.quoting.hours == hours_of(desk.picture.sewing)


def test_the_hours_of_a_step_are_typed(place: QuotePlace, desk: Desk) -> None:
    estimate(place)
    desk.now()
    enter(row(place, HOURS, "quoting.hours.Fittings").field, "3.5")
    assert {each.step: each.hours for each in desk.project.quoting.hours}["Fittings"] == Decimal("3.5")


def test_a_step_without_hours_goes_away(place: QuotePlace, desk: Desk) -> None:
    estimate(place)
    desk.now()
    found = row(place, HOURS, "quoting.hours.Fittings")
    found.field.clear()
    found.field.commit()
    desk.now()
    assert "Fittings" not in {each.step for each in desk.project.quoting.hours}
    assert not found.isVisible()


def test_a_step_of_her_own_is_added(place: QuotePlace, desk: Desk) -> None:
    adding = next(r for r in opened(place, HOURS).rows if isinstance(r, AddStepRow))
    QTest.keyClicks(adding.name_of, "Beading")
    QTest.keyClick(adding.name_of, Qt.Key.Key_Return)
    assert [(each.step, each.hours) for each in desk.project.quoting.hours] == [("Beading", Decimal(1))]
    QTest.keyClicks(adding.name_of, "Beading")
    QTest.keyClick(adding.name_of, Qt.Key.Key_Return)
    assert "already" in adding.said


def test_the_rate_is_typed(place: QuotePlace, desk: Desk) -> None:
    enter(row(place, HOURS, "quoting.rate").field, "32")
    assert desk.project.quoting.rate == 32


# --- on top, money, words ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("key", "text", "stored"),
    [
        ("overhead_percent", "12", Decimal(12)),
        ("margin_percent", "17.5 %", Decimal("17.5")),
        ("tax_percent", "7", Decimal(7)),
        ("deposit_percent", "40", Decimal(40)),
        ("round_to", "5", Decimal(5)),
    ],
)
def test_what_comes_on_top_is_typed(
    place: QuotePlace, desk: Desk, key: str, text: str, stored: Decimal
) -> None:
    enter(row(place, ON_TOP, f"quoting.{key}").field, text)
    assert getattr(desk.project.quoting, key) == stored


@pytest.mark.parametrize(
    ("key", "text", "said"),
    [("deposit_percent", "120", "deposit"), ("tax_percent", "x", "number"), ("round_to", "0", "rounded")],
)
def test_what_cannot_be_is_said(place: QuotePlace, desk: Desk, key: str, text: str, said: str) -> None:
    before = desk.project
    found = row(place, ON_TOP, f"quoting.{key}")
    enter(found.field, text)
    assert desk.project is before
    assert said in found.said


def test_money_is_written_in_another_way(place: QuotePlace, desk: Desk) -> None:
    enter(row(place, MONEY, "quoting.currency.symbol").field, "kr")
    after = next(r for r in opened(place, MONEY).rows if r.name == "quoting.currency.before")
    assert isinstance(after, PickedRow)
    QTest.mouseClick(after.choice.button(False), LEFT)
    assert (desk.project.quoting.currency.symbol, desk.project.quoting.currency.before) == ("kr", False)


def test_what_is_included_is_written_a_line_each(place: QuotePlace, desk: Desk) -> None:
    found = next(r for r in opened(place, WORDS).rows if isinstance(r, ProseRow))
    assert "Layers" in found.prose.placeholderText()
    found.prose.setFocus()
    QTest.keyClicks(found.prose, "Two fittings")
    found.prose.commit()
    assert desk.project.quoting.included == "Two fittings"


def test_a_date_is_typed_as_it_will_be_read(place: QuotePlace, desk: Desk) -> None:
    enter(row(place, WORDS, "quoting.ready_by").field, "1 June")
    assert desk.project.quoting.ready_by == "1 June"


def test_a_finding_about_prices_leads_to_the_first_without_one(place: QuotePlace, desk: Desk) -> None:
    place.foot.on_row_clicked()
    assert place.form.sections[PRICES].opened
    assert place.form._lit is not None
    assert place.form._lit.name.startswith("quoting.prices.")


def test_showing_edits_nothing(place: QuotePlace, desk: Desk) -> None:
    before = desk.project
    for number in range(5):
        opened(place, number)
    desk.apply("Bought", set_bought(desk.project, "cord", True))
    assert desk.project is before

"""Edits of prices and hours: each says what was asked, leaves the rest alone, and refuses nonsense."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest

from tests.document import example
from workbench.cloth import Currency, HoursRow, PriceRow, Quoting
from workbench.document import (
    Project,
    set_all_hours,
    set_bought,
    set_currency,
    set_hours,
    set_price,
    set_price_row,
    set_quoting,
    set_unit,
    to_bytes,
)
from workbench.document.file import project_from


def test_figures_and_texts_of_the_quote() -> None:
    project = set_quoting(
        example(), rate=Decimal("32.50"), tax_percent=Decimal(19), round_to=Decimal(5), ready_by="2031-07-20"
    )
    quoting = Quoting(
        rate=Decimal("32.5"), tax_percent=Decimal(19), round_to=Decimal(5), ready_by="2031-07-20"
    )
    assert project == replace(example(), quoting=quoting)
    assert project_from(to_bytes(project)) == project


def test_currency_changes_no_amount() -> None:
    project = set_currency(set_quoting(example(), rate=Decimal(32)), symbol="kr", decimals=0, before=False)
    assert project.quoting.currency == Currency("kr", 0, False)
    assert project.quoting.rate == 32


def test_a_price_is_set_changed_and_taken_away() -> None:
    project = set_price(example(), "cord", Decimal("1.20"))
    assert project.quoting.prices == (PriceRow("cord", "Lacing cord", Decimal("1.2"), "yard"),)
    project = set_price(set_price(project, "busk", Decimal(18)), "cord", Decimal("1.50"))
    assert [(row.key, row.price) for row in project.quoting.prices] == [
        ("cord", Decimal("1.5")),
        ("busk", 18),
    ]
    assert set_price(project, "cord", None).quoting.prices[0].price == 0
    assert set_price(example(), "cord", None) == example()


def test_lengths_are_priced_by_the_metre_where_she_works_in_centimetres() -> None:
    project = set_price(set_unit(example(), "cm", 8), "binding", Decimal(2))
    assert project.quoting.prices[0].per == "metre"


def test_a_bone_of_one_length_has_a_price_of_its_own() -> None:
    project = set_price(example(), "bone/spiral_steel/241.3", Decimal("2.10"))
    row = project.quoting.prices[0]
    assert (row.key, row.name, row.per) == ("bone/spiral_steel/241.3", "Spiral steel, 9½ in", "each")


def test_a_line_of_her_own() -> None:
    row = PriceRow("feathers", "Feathers", Decimal("0.35"), "pack", 50)
    assert set_price_row(example(), row).quoting.prices == (row,)
    dearer = set_price(set_price_row(example(), row), "feathers", Decimal("0.40"))
    assert dearer.quoting.prices == (replace(row, price=Decimal("0.4")),)


def test_what_is_not_bought() -> None:
    project = set_bought(set_bought(example(), "tips", False), "cord", False)
    assert project.quoting.not_bought == ("cord", "tips")
    assert set_bought(project, "cord", False) == project
    assert set_bought(set_bought(project, "cord", True), "tips", True) == example()


def test_hours_by_step() -> None:
    project = set_hours(set_hours(example(), "Fittings", Decimal(2)), " Beading ", Decimal("7.5"))
    assert project.quoting.hours == (HoursRow("Fittings", Decimal(2)), HoursRow("Beading", Decimal("7.5")))
    project = set_hours(project, "Fittings", Decimal(3))
    assert project.quoting.hours[0] == HoursRow("Fittings", Decimal(3))
    assert set_hours(project, "Beading", None).quoting.hours == (HoursRow("Fittings", Decimal(3)),)
    assert set_all_hours(project, ()) == example()


@pytest.mark.parametrize(
    ("edit", "said"),
    [
        (lambda p: set_quoting(p, deposit_percent=Decimal(101)), "The deposit must be from 0 to 100 %."),
        (lambda p: set_quoting(p, margin_percent=Decimal(-5)), "The margin must be from 0 to 1,000 %."),
        (lambda p: set_quoting(p, rate=Decimal(-1)), "The rate for an hour cannot be less than nothing."),
        (lambda p: set_quoting(p, rate=Decimal("NaN")), "An amount must be a number."),
        (lambda p: set_quoting(p, rate="32,5"), "Quote › rate must be an amount"),
        (lambda p: set_quoting(p, discount=Decimal(5)), "The quote has nothing called “discount”."),
        (lambda p: set_quoting(p, hours=()), "Setting hours has an edit of its own."),
        (lambda p: set_quoting(p, ready_by="x" * 81), "The date it is ready by is longer than 80"),
        (lambda p: set_quoting(p, round_to=Decimal("0.015")), "The step the price is rounded up to must be"),
        (lambda p: set_currency(p, symbol="x" * 9), "The symbol of the currency is longer than 8"),
        (lambda p: set_currency(p, decimals=7), "The decimals of the currency must be from 0 to 4."),
        (
            lambda p: set_price(p, "cord", Decimal(-1)),
            "The price of “Lacing cord” cannot be less than nothing.",
        ),
        (lambda p: set_price(p, "cord", Decimal("Infinity")), "An amount must be a number."),
        (lambda p: set_price(p, "ivory", Decimal(1)), "There is no line of the price list called “ivory”."),
        (lambda p: set_price(p, "bone/ivory/12", Decimal(1)), "There is no line of the price list"),
        (lambda p: set_price(p, "bone/plastic/wide", Decimal(1)), "There is no line of the price list"),
        (lambda p: set_hours(p, "  ", Decimal(1)), "A step of the work must have a name."),
        (
            lambda p: set_hours(p, "Fittings", Decimal(-1)),
            "The time for “Fittings” cannot be less than nothing.",
        ),
        (lambda p: set_hours(p, "Fittings", Decimal(5000)), "The time for “Fittings” cannot be more than"),
        (lambda p: set_bought(p, " ", False), "Quoting › not_bought › no. 1 must be a name"),
    ],
)
def test_nonsense_is_refused_in_one_sentence(edit: Callable[[Project], Project], said: str) -> None:
    with pytest.raises(ValueError, match=r"\.$") as caught:
        edit(example())
    assert str(caught.value).startswith(said)

"""How amounts are rounded, said and read. Expected values are worked by hand unless a source is named."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Context, Decimal, localcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.cloth.money import (
    MoneyError,
    coin_of,
    finer_than_kept,
    less,
    plain,
    read_money,
    round_up,
    say_money,
    say_percent,
    say_price,
    to_coin,
    total,
)
from workbench.cloth.records import Currency

DOLLAR = Currency()
EURO = Currency("€", 2, before=False)
YEN = Currency("¥", 0)
DINAR = Currency("KD", 3)
"""Decimals of ISO 4217: 2 for USD and EUR, 0 for JPY, 3 for KWD (from memory)."""
NBSP = "\N{NO-BREAK SPACE}"
AMOUNTS = st.decimals(-(10**9), 10**9, places=6)
CURRENCIES = st.builds(Currency, st.sampled_from(["$", "€", "CHF", ""]), st.integers(0, 4), st.booleans())


@pytest.mark.parametrize(
    ("currency", "coin"), [(DOLLAR, "0.01"), (YEN, "1"), (DINAR, "0.001"), (Currency("", 4), "0.0001")]
)
def test_the_smallest_coin(currency: Currency, coin: str) -> None:
    assert str(coin_of(currency)) == coin


@pytest.mark.parametrize(
    ("amount", "rounded"),
    [("2.344", "2.34"), ("2.345", "2.35"), ("2.355", "2.36"), ("-2.345", "-2.35"), ("0.004", "0.00")],
)
def test_a_half_coin_goes_up_away_from_nothing(amount: str, rounded: str) -> None:
    assert str(to_coin(Decimal(amount), DOLLAR)) == rounded


@given(AMOUNTS, CURRENCIES)
def test_rounding_is_that_of_the_decimal_standard(amount: Decimal, currency: Currency) -> None:
    """Against the round-half-up of the General Decimal Arithmetic specification in the standard library."""
    with localcontext(Context(prec=40)):
        wanted = amount.quantize(Decimal(1).scaleb(-currency.decimals), ROUND_HALF_UP)
    assert to_coin(amount, currency) == wanted


def test_rounding_does_not_depend_on_the_precision_somebody_else_has_set() -> None:
    with localcontext(Context(prec=3)):
        assert str(to_coin(Decimal("123456.785"), DOLLAR)) == "123456.79"
        assert str(total((Decimal("123456.78"), Decimal("0.01")), DOLLAR)) == "123456.79"
        assert str(less(Decimal("123456.78"), Decimal("0.01"), DOLLAR)) == "123456.77"


@pytest.mark.parametrize(
    ("amount", "step", "rounded"),
    [
        ("441.01", "5", "445"),
        ("445", "5", "445"),
        ("0", "5", "0"),
        ("3.12", "0.05", "3.15"),
        ("3.1201", "0.01", "3.13"),
        ("3.12", "0.001", "3.12"),
    ],
)
def test_rounding_up_to_a_step(amount: str, step: str, rounded: str) -> None:
    assert round_up(Decimal(amount), Decimal(step), DOLLAR) == Decimal(rounded)


def test_a_step_finer_than_a_coin_is_that_coin() -> None:
    assert round_up(Fraction(1201, 10), Decimal("0.01"), YEN) == 121


def test_the_sum_of_nothing_has_the_decimals_of_its_currency() -> None:
    assert str(total((), DOLLAR)) == "0.00"


@pytest.mark.parametrize(
    ("amount", "currency", "said"),
    [
        ("1234.5", DOLLAR, "$1,234.50"),
        ("0", DOLLAR, "$0.00"),
        ("-3", Currency("£"), "−£3.00"),
        ("-0.001", DOLLAR, "$0.00"),
        ("12", EURO, f"12.00{NBSP}€"),
        ("1234567", YEN, "¥1,234,567"),
        ("1.2345", DINAR, f"KD{NBSP}1.235"),
        ("7", Currency(""), "7.00"),
    ],
)
def test_an_amount_is_said_with_its_symbol(amount: str, currency: Currency, said: str) -> None:
    assert say_money(Decimal(amount), currency) == said


@pytest.mark.parametrize(
    ("price", "said"), [("0.0125", "$0.0125"), ("1.5", "$1.50"), ("2", "$2.00"), ("100", "$100.00")]
)
def test_a_price_finer_than_a_coin_keeps_its_decimals(price: str, said: str) -> None:
    assert say_price(Decimal(price), DOLLAR) == said


def test_figures_without_idle_noughts() -> None:
    assert [plain(Decimal(text)) for text in ("2.50", "100", "1E+2", "0.0", "7")] == [
        "2.5",
        "100",
        "100",
        "0",
        "7",
    ]
    assert say_percent(Decimal("7.50")) == f"7.5{NBSP}%"


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("12", "12"),
        (" $12.50 ", "12.50"),
        ("12,5", "12.5"),
        ("12,50 $", "12.50"),
        ("1,250", "1250"),
        ("1,250.75", "1250.75"),
        ("1,250,000", "1250000"),
        ("0,250", "0.250"),
        (".5", "0.5"),
        ("1 250.5", "1250.5"),
        ("0.0125", "0.0125"),
    ],
)
def test_what_is_typed_is_read(text: str, amount: str) -> None:
    assert read_money(text, DOLLAR, "The price of cord") == Decimal(amount)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "cannot be read"),
        ("twelve", "cannot be read"),
        ("1.250,75", "cannot be read"),
        ("1e5", "cannot be read"),
        ("NaN", "cannot be read"),
        ("٣", "cannot be read"),
        ("12.5.1", "cannot be read"),
        ("-3", "less than nothing"),
        ("−$3", "less than nothing"),
        ("$-3", "less than nothing"),
        ("1000000001", "more than 1,000,000,000"),
        ("0.0000001", "more than 6 decimals"),
    ],
)
def test_what_cannot_be_read_is_refused_with_the_name_of_its_field(text: str, reason: str) -> None:
    with pytest.raises(MoneyError, match=reason) as caught:
        read_money(text, DOLLAR, "The price of cord")
    assert caught.value.sentence.startswith("The price of cord ")
    assert caught.value.sentence.endswith(".")


@given(st.decimals(0, 10**9, places=4), CURRENCIES)
def test_what_is_said_can_be_typed_again(amount: Decimal, currency: Currency) -> None:
    assert read_money(say_money(amount, currency), currency, "It") == to_coin(amount, currency)
    assert read_money(say_price(amount, currency), currency, "It") == amount


@pytest.mark.parametrize(
    ("amount", "finer"),
    [("0.000001", False), ("0.0000010", False), ("0.0000001", True), ("0E-99999999", False), ("1E+5", False)],
)
def test_decimals_beyond_the_sixth_are_seen_whatever_noughts_follow(amount: str, finer: bool) -> None:
    assert finer_than_kept(Decimal(amount)) is finer


def test_a_figure_absurdly_close_to_nothing_is_looked_at_without_writing_it_out() -> None:
    assert finer_than_kept(Decimal("1E-999999999"))

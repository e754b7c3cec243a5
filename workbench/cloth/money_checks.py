"""What the figures behind a price may be; each fault with its place and a name to call it by.

Figures are own choice: they keep out slips of the key.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal
from fractions import Fraction
from math import isfinite
from typing import NamedTuple

from workbench.cloth.money import (
    FINEST_DECIMALS,
    LARGEST_AMOUNT,
    MoneyError,
    coin_of,
    finer_than_kept,
    say_price,
)
from workbench.cloth.records import Currency, HoursRow, PriceRow, Quoting

MOST_DECIMALS = 4
MOST_HOURS = Decimal(1000)
"""For one step of the work."""
MOST_ROWS = 500
MOST_IN_PACK = 100_000
LONGEST_PACK_MM = 100_000_000.0
PERCENT_MOST: dict[str, tuple[str, int]] = {
    "overhead_percent": ("The overhead", 1000),
    "margin_percent": ("The margin", 1000),
    "tax_percent": ("The tax", 100),
    "deposit_percent": ("The deposit", 100),
}
"""By field: its name, and the largest percentage that can be meant."""
TEXT_MOST: dict[str, tuple[str, int]] = {
    "included": ("What is included", 4000),
    "fitting_dates": ("The dates of the fittings", 200),
    "ready_by": ("The date it is ready by", 80),
    "valid_until": ("The date the quote is valid until", 80),
}
SYMBOL_MOST = 8
NAME_MOST = 120


class Amiss(NamedTuple):
    """One fault: where it is, from the quoting inwards, what to call it, and a reason that can follow."""

    place: tuple[str | int, ...]
    name: str
    reason: str

    @property
    def sentence(self) -> str:
        """One sentence that names the field."""
        return f"{self.name} {self.reason}."


Faults = Iterator[Amiss]


def quoting_problems(quoting: Quoting) -> Faults:
    """All that no price can be worked out with, in the order of the fields."""
    currency = list(_currency(quoting.currency))
    yield from currency
    yield from price_problems(quoting.prices)
    yield from _not_bought(quoting.not_bought)
    yield from _hours(quoting.hours)
    yield from _amount(("rate",), "The rate for an hour", quoting.rate, LARGEST_AMOUNT)
    for key, (name, most) in PERCENT_MOST.items():
        yield from _percent((key,), name, getattr(quoting, key), most)
    if not currency:
        yield from _round_to(quoting)
    for key, (name, most) in TEXT_MOST.items():
        yield from _text((key,), name, getattr(quoting, key), most)


def price_problems(prices: Sequence[PriceRow]) -> Faults:
    """What is wrong with a price list."""
    if len(prices) > MOST_ROWS:
        yield Amiss(("prices",), "The price list", f"has more than {MOST_ROWS} lines")
        return
    seen: set[str] = set()
    for number, row in enumerate(prices):
        place = ("prices", number)
        yield from _row(place, row)
        if row.key in seen:
            yield Amiss((*place, "key"), _called(row), "stands in the price list twice")
        seen.add(row.key)


def refuse_bad(problems: Faults) -> None:
    """MoneyError for the first problem, if there is any."""
    for problem in problems:
        raise MoneyError(problem.sentence, problem.place)


def _currency(currency: Currency) -> Faults:
    yield from _text(("currency", "symbol"), "The symbol of the currency", currency.symbol, SYMBOL_MOST)
    if not 0 <= currency.decimals <= MOST_DECIMALS:
        yield Amiss(
            ("currency", "decimals"), "The decimals of the currency", f"must be from 0 to {MOST_DECIMALS}"
        )


def _row(place: tuple[str | int, ...], row: PriceRow) -> Faults:
    called = _called(row)
    if not row.key.strip():
        yield Amiss((*place, "key"), called, "has no key in the price list")
    yield from _text((*place, "key"), f"The key of {called}", row.key, NAME_MOST)
    yield from _text((*place, "name"), f"The name of {called}", row.name, NAME_MOST)
    yield from _amount((*place, "price"), f"The price of {called}", row.price, LARGEST_AMOUNT)
    if not 1 <= row.pack_count <= MOST_IN_PACK:
        yield Amiss(
            (*place, "pack_count"), f"The number in a pack of {called}", f"must be from 1 to {MOST_IN_PACK:,}"
        )
    if not (isfinite(row.pack_mm) and 0 <= row.pack_mm <= LONGEST_PACK_MM):
        yield Amiss((*place, "pack_mm"), f"The length in a pack of {called}", "is no usable length")


def _called(row: PriceRow) -> str:
    """What to call a line of the price list in a sentence."""
    name = row.name.strip() or row.key.strip() or "a line without a name"
    return f"“{name[:60]}”"


def _not_bought(keys: Sequence[str]) -> Faults:
    if len(keys) > MOST_ROWS:
        yield Amiss(("not_bought",), "The list of what is not bought", f"has more than {MOST_ROWS} lines")
    for number, key in enumerate(keys[:MOST_ROWS]):
        yield from _text(("not_bought", number), "A key of what is not bought", key, NAME_MOST)


def _hours(rows: Sequence[HoursRow]) -> Faults:
    if len(rows) > MOST_ROWS:
        yield Amiss(("hours",), "The list of hours", f"has more than {MOST_ROWS} lines")
    for number, row in enumerate(rows[:MOST_ROWS]):
        place = ("hours", number)
        called = f"“{row.step.strip()[:60] or 'a step without a name'}”"
        yield from _text((*place, "step"), f"The name of {called}", row.step, NAME_MOST)
        yield from _amount((*place, "hours"), f"The time for {called}", row.hours, MOST_HOURS, " hours")


def _amount(
    place: tuple[str | int, ...], name: str, amount: Decimal, most: Decimal, unit: str = ""
) -> Faults:
    if not amount.is_finite():
        yield Amiss(place, name, "is no number")
    elif amount < 0:
        yield Amiss(place, name, "cannot be less than nothing")
    elif amount > most:
        yield Amiss(place, name, f"cannot be more than {most:,}{unit}")
    elif finer_than_kept(amount):
        yield Amiss(place, name, f"has more than {FINEST_DECIMALS} decimals")


def _percent(place: tuple[str | int, ...], name: str, percent: Decimal, most: int) -> Faults:
    if not percent.is_finite():
        yield Amiss(place, name, "is no number")
    elif not 0 <= percent <= most:
        yield Amiss(place, name, f"must be from 0 to {most:,} %")
    elif finer_than_kept(percent):
        yield Amiss(place, name, f"has more than {FINEST_DECIMALS} decimals")


def _round_to(quoting: Quoting) -> Faults:
    """A step finer than the smallest coin is taken as that coin; any other one must be whole coins."""
    step, coin, place = quoting.round_to, coin_of(quoting.currency), ("round_to",)
    faults = list(_amount(place, "The step the price is rounded up to", step, LARGEST_AMOUNT))
    yield from faults
    if faults:
        return
    if step == 0:
        yield Amiss(place, "The step the price is rounded up to", "must be more than nothing")
    elif step > coin and (Fraction(step) / Fraction(coin)).denominator != 1:
        smallest = say_price(coin, quoting.currency)
        yield Amiss(place, "The step the price is rounded up to", f"must be a whole number of {smallest}")


def _text(place: tuple[str | int, ...], name: str, text: str, most: int) -> Faults:
    if len(text) > most:
        yield Amiss(place, name, f"is longer than {most:,} characters")
    elif any("\ud800" <= letter <= "\udfff" for letter in text):
        yield Amiss(place, name, "holds half a character, which cannot be kept")

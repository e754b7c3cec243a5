"""The lines of cost: cloths, notions by the line of the price list they go by, and hours."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import isfinite
from typing import Literal

from workbench.cloth.money import LARGEST_AMOUNT, MoneyError, plain, say_price, to_coin
from workbench.cloth.prices import NO_PRICE, keys_of, row_of
from workbench.cloth.purchase import PER_WORDS, needed_of, purchase_of
from workbench.cloth.records import Currency, HoursRow, PriceRow, Quoting
from workbench.pieces import Notion

CostKind = Literal["cloth", "notion", "hours", "overhead", "margin", "rounding", "tax"]

NO_PRICE_WORDS = "no price yet"
NO_RATE_WORDS = "no rate yet"
NOT_BOUGHT_WORDS = "not bought: there already, or done without"
NOTHING = Decimal(0)


@dataclass(frozen=True)
class ClothBought:
    """One cloth as it is bought: its name, the length in mm, what that costs, and the length in words."""

    name: str
    length_mm: float
    cost: Decimal | None
    """None where that is not known."""
    words: str = ""


@dataclass(frozen=True)
class CostLine:
    """One line of the inside sheet."""

    kind: CostKind
    key: str
    name: str
    words: str
    """How much of it at what price, or why there is no amount."""
    amount: Decimal | None
    """In whole coins; None where no price is known, which counts as nothing and is said."""


def cloth_lines(cloths: Iterable[ClothBought], currency: Currency) -> Iterator[CostLine]:
    """A line for each cloth; MoneyError for a length or a cost that is none."""
    for cloth in cloths:
        _refuse_bad(cloth)
        words = cloth.words
        if cloth.length_mm == 0:
            nothing = to_coin(NOTHING, currency)
            yield CostLine("cloth", cloth.name, cloth.name, words or "nothing to buy", nothing)
        elif cloth.cost is None:
            unpriced = f"{words}, {NO_PRICE_WORDS}" if words else NO_PRICE_WORDS
            yield CostLine("cloth", cloth.name, cloth.name, unpriced, None)
        else:
            yield CostLine("cloth", cloth.name, cloth.name, words, to_coin(cloth.cost, currency))


def notion_lines(notions: Iterable[Notion], quoting: Quoting) -> Iterator[CostLine]:
    """A line for each line of the price list that is used, and one for each notion that has none.

    Lengths and numbers that go by one price are added up before they are rounded up.
    """
    without: dict[str, list[Notion]] = {}
    together: dict[str, list[Notion]] = {}
    for notion in notions:
        left = [key for key in keys_of(notion) if key in quoting.not_bought]
        row = row_of(notion, quoting.prices)
        key = left[0] if left else row.key if row is not None else keys_of(notion)[-1]
        (without if left else together).setdefault(key, []).append(notion)
    for group in together.values():
        yield _notion_line(group, row_of(group[0], quoting.prices), quoting.currency)
    for key, group in without.items():
        nothing = to_coin(NOTHING, quoting.currency)
        yield CostLine("notion", key, group[0].name, NOT_BOUGHT_WORDS, nothing)


def hours_lines(hours: Iterable[HoursRow], quoting: Quoting) -> Iterator[CostLine]:
    """A line for each step of the work."""
    rate, currency = quoting.rate, quoting.currency
    for number, row in enumerate(hours):
        time, key = f"{plain(row.hours)} h", f"hours/{number}"
        if rate == NO_PRICE and row.hours > 0:
            yield CostLine("hours", key, row.step, f"{time}, {NO_RATE_WORDS}", None)
        else:
            amount = to_coin(Fraction(row.hours) * Fraction(rate), currency)
            yield CostLine("hours", key, row.step, f"{time} at {say_price(rate, currency)} an hour", amount)


def _notion_line(group: list[Notion], row: PriceRow | None, currency: Currency) -> CostLine:
    if row is None:
        return CostLine("notion", keys_of(group[0])[-1], group[0].name, NO_PRICE_WORDS, None)
    if row.price == NO_PRICE:
        return CostLine("notion", row.key, row.name, NO_PRICE_WORDS, None)
    purchase = purchase_of(needed_of(group), row)
    if purchase is None:
        return CostLine("notion", row.key, row.name, _misfit(row), None)
    price = f"{say_price(row.price, currency)} {PER_WORDS[row.per]}"
    amount = to_coin(purchase.cost(row.price), currency)
    return CostLine("notion", row.key, row.name, f"{purchase.words} at {price}", amount)


def _misfit(row: PriceRow) -> str:
    if row.per in ("yard", "metre"):
        return f"priced by the {row.per}, but listed by number: price it each, by the pair or by the pack"
    return "priced by number, but listed by length: price it by the yard, the metre or the pack"


def _refuse_bad(cloth: ClothBought) -> None:
    if not (isfinite(cloth.length_mm) and cloth.length_mm >= 0):
        raise MoneyError(f"The length to buy of “{cloth.name}” is no usable length.")
    if cloth.cost is not None and not (cloth.cost.is_finite() and 0 <= cloth.cost <= LARGEST_AMOUNT):
        raise MoneyError(f"The cost of “{cloth.name}” is no amount from nothing to {LARGEST_AMOUNT:,}.")

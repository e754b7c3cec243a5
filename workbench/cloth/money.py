"""Money: whole coins, how an amount is said, and how one that was typed is read.

Amounts are decimal. What is shared or multiplied is worked out exactly and brought to
the smallest coin once, at the end of its line.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction
from math import ceil, floor

from workbench.cloth.records import Currency

LARGEST_AMOUNT = Decimal(1_000_000_000)
"""Own choice: no price is larger."""
FINEST_DECIMALS = 6
"""A bead may cost less than the smallest coin, but nothing is priced finer than this (own choice)."""
_NO_BREAK = "\N{NO-BREAK SPACE}"
_MINUS = "−"
_DIGITS = re.compile(r"\d+(\.\d+)?|\.\d+", re.ASCII)
_GROUPED = re.compile(r"[1-9]\d{0,2}(,\d{3})+(\.\d+)?", re.ASCII)
_DECIMAL_COMMA = re.compile(r"\d*,\d+", re.ASCII)


class MoneyError(ValueError):
    """A figure that no price can be worked out with: one sentence that names the field.

    ``place`` is the path of names and numbers to it, from the quoting inwards; empty where
    the figure is not kept yet.
    """

    def __init__(self, sentence: str, place: tuple[str | int, ...] = ()) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.place = place


def coin_of(currency: Currency) -> Decimal:
    """The smallest coin: 0.01 with two decimals, 1 with none."""
    return _coins(1, currency)


def to_coin(amount: Decimal | Fraction, currency: Currency) -> Decimal:
    """The amount to the nearest coin; a half goes up, away from nothing."""
    exact = Fraction(amount) * 10**currency.decimals
    nearest = floor(abs(exact) + Fraction(1, 2))
    return _coins(nearest if exact >= 0 else -nearest, currency)


def round_up(amount: Decimal | Fraction, step: Decimal, currency: Currency) -> Decimal:
    """The least whole number of steps that is not below the amount; the step is at least a coin."""
    each = max(Fraction(step), Fraction(1, 10**currency.decimals))
    return to_coin(ceil(Fraction(amount) / each) * each, currency)


def total(amounts: Iterable[Decimal], currency: Currency) -> Decimal:
    """The exact sum of amounts in whole coins, with the currency's decimals also where it is nothing."""
    return to_coin(sum(map(Fraction, amounts), Fraction(0)), currency)


def less(amount: Decimal, taken: Decimal, currency: Currency) -> Decimal:
    """The exact difference of two amounts in whole coins."""
    return to_coin(Fraction(amount) - Fraction(taken), currency)


def say_money(amount: Decimal, currency: Currency) -> str:
    """The amount to the nearest coin with its symbol: ``$1,234.50``, ``12.00 €``, ``−£3.00``."""
    return _said(to_coin(amount, currency), currency)


def say_price(price: Decimal, currency: Currency) -> str:
    """As :func:`say_money`, with all the decimals of a price that is finer than the smallest coin."""
    places = max(currency.decimals, -int(price.normalize().as_tuple().exponent))
    return _said(price, currency, places)


def say_percent(percent: Decimal) -> str:
    """``20 %``, ``7.5 %``: no decimals that say nothing."""
    return f"{plain(percent)}{_NO_BREAK}%"


def plain(figure: Decimal) -> str:
    """A figure without an exponent and without idle noughts: ``2.5``, ``100``."""
    text = f"{figure:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def read_money(text: str, currency: Currency, name: str) -> Decimal:
    """The amount that was typed, with or without the symbol; MoneyError names the field ``name``.

    A point or a comma may stand before the decimals. ``1,250`` is twelve hundred and
    fifty: a comma with three figures behind it sets thousands apart, as it does on the
    sheets, except after a leading 0.
    """
    figures = _without_symbol(text, currency)
    if figures[:1] in ("-", _MINUS):
        raise MoneyError(f"{name} cannot be less than nothing.")
    if _GROUPED.fullmatch(figures):
        figures = figures.replace(",", "")
    elif _DECIMAL_COMMA.fullmatch(figures):
        figures = figures.replace(",", ".")
    if not _DIGITS.fullmatch(figures):
        raise MoneyError(f"{name} cannot be read as an amount: “{text.strip()[:40]}”.")
    return _bounded(Decimal(figures), name)


def finer_than_kept(amount: Decimal) -> bool:
    """Whether a finite amount has more decimals than are kept; noughts at the end count for nothing."""
    _, figures, exponent = amount.as_tuple()
    idle = len(figures) - len("".join(map(str, figures)).rstrip("0"))
    return bool(amount) and int(exponent) + idle < -FINEST_DECIMALS


def _bounded(amount: Decimal, name: str) -> Decimal:
    if amount > LARGEST_AMOUNT:
        raise MoneyError(f"{name} cannot be more than {LARGEST_AMOUNT:,}.")
    if finer_than_kept(amount):
        raise MoneyError(f"{name} has more than {FINEST_DECIMALS} decimals.")
    return amount


def _without_symbol(text: str, currency: Currency) -> str:
    figures = "".join(text.split())
    symbol = "".join(currency.symbol.split())
    return figures.removeprefix(symbol).removesuffix(symbol) if symbol else figures


def _coins(count: int, currency: Currency) -> Decimal:
    """Whole coins as an amount, built from its figures: no arithmetic that could round them."""
    figures = tuple(map(int, str(abs(count))))
    return Decimal((int(count < 0), figures, -currency.decimals))


def _said(amount: Decimal, currency: Currency, places: int | None = None) -> str:
    figures = f"{abs(amount):,.{currency.decimals if places is None else places}f}"
    symbol = currency.symbol.strip()
    sign = _MINUS if amount < 0 else ""
    if not symbol:
        return f"{sign}{figures}"
    if not currency.before:
        return f"{sign}{figures}{_NO_BREAK}{symbol}"
    return f"{sign}{symbol}{_NO_BREAK if symbol[-1].isalnum() else ''}{figures}"

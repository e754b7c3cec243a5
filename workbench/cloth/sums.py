"""From costs to the price asked: overhead, margin, tax, rounding and deposit, each to the coin.

Overhead is a part of cloth, notions and hours; the margin a part of all costs, overhead among them. Each is
brought to the nearest coin, a half up. The price is then rounded up to the step she chose, with
the tax in it, and the tax is worked out of that price, so that it stays true to it.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from workbench.cloth.money import less, round_up, to_coin, total
from workbench.cloth.records import Quoting

_WHOLE = 100
"""Per cent (derived)."""


@dataclass(frozen=True)
class Sums:
    """The amounts of one quote in whole coins.

    ``costs + overhead + margin + rounding + tax == price == deposit + balance``.
    """

    costs: Decimal
    """Cloth, notions and hours."""
    overhead: Decimal
    margin: Decimal
    rounding: Decimal
    """What rounding up adds, never less than nothing; it stays with her like the margin."""
    before_tax: Decimal
    tax: Decimal
    price: Decimal
    deposit: Decimal
    balance: Decimal


def sums_of(costs: Decimal, quoting: Quoting) -> Sums:
    """Everything from costs in whole coins to the balance; the figures of the quoting are trusted here."""
    currency = quoting.currency
    overhead = to_coin(_part(costs, quoting.overhead_percent), currency)
    margin = to_coin(_part(total((costs, overhead), currency), quoting.margin_percent), currency)
    least = total((costs, overhead, margin), currency)
    taxed = Fraction(_WHOLE) + Fraction(quoting.tax_percent)
    price = round_up(Fraction(least) * taxed / _WHOLE, quoting.round_to, currency)
    tax = to_coin(_part(price, quoting.tax_percent) * _WHOLE / taxed, currency)
    before_tax = less(price, tax, currency)
    deposit = to_coin(_part(price, quoting.deposit_percent), currency)
    return Sums(
        costs=costs,
        overhead=overhead,
        margin=margin,
        rounding=less(before_tax, least, currency),
        before_tax=before_tax,
        tax=tax,
        price=price,
        deposit=deposit,
        balance=less(price, deposit, currency),
    )


def _part(amount: Decimal, percent: Decimal) -> Fraction:
    return Fraction(amount) * Fraction(percent) / _WHOLE

"""What a garment costs her and what she asks for it, line by line, to the coin.

Every line of cloth, notions and hours is brought to the nearest coin, a half up; what follows
is worked out in :mod:`workbench.cloth.sums`. The lines add up to the price without a coin left
over. A line without a price counts as nothing and is always said.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from workbench.cloth.client_lines import ClientLine, client_lines, included_usual
from workbench.cloth.cost_lines import (
    ClothBought,
    CostKind,
    CostLine,
    cloth_lines,
    hours_lines,
    notion_lines,
)
from workbench.cloth.money import coin_of, say_percent, say_price, total
from workbench.cloth.money_checks import quoting_problems, refuse_bad
from workbench.cloth.prices import bought
from workbench.cloth.records import Currency, Quoting
from workbench.cloth.sums import Sums, sums_of
from workbench.draft import Finding, Place
from workbench.pieces import Cutting, Notion


@dataclass(frozen=True)
class Quote:
    """An inside sheet with all costs, a client's quote without any, and what to look at first."""

    currency: Currency
    inside: tuple[CostLine, ...]
    """Cloths, notions, hours, overhead, margin, rounding, tax: their amounts add up to the price."""
    client: tuple[ClientLine, ...]
    sums: Sums
    findings: tuple[Finding, ...]

    @property
    def unpriced(self) -> tuple[str, ...]:
        """Names of the lines without a price, hours among them."""
        return tuple(line.name for line in self.inside if line.amount is None)

    @property
    def complete(self) -> bool:
        """Whether every line has a price; otherwise the price is lower than it should be."""
        return not self.unpriced

    def total_of(self, *kinds: CostKind) -> Decimal:
        """The sum of the lines of these kinds."""
        return _sum((line for line in self.inside if line.kind in kinds), self.currency)


def quote_of(
    cutting: Cutting, cloths: Iterable[ClothBought], quoting: Quoting, also: tuple[Notion, ...] = ()
) -> Quote:
    """The quote for a garment; ``also`` is bought besides what the cutting lists, such as beads.

    MoneyError, one sentence that names the field, for a figure that no price can be worked out with.
    """
    refuse_bad(quoting_problems(quoting))
    costs = (
        *cloth_lines(cloths, quoting.currency),
        *notion_lines(bought(cutting, also), quoting),
        *hours_lines(quoting.hours, quoting),
    )
    sums = sums_of(_sum(costs, quoting.currency), quoting)
    return Quote(
        currency=quoting.currency,
        inside=(*costs, *_added_lines(sums, quoting)),
        client=client_lines(sums, quoting, included_usual(cutting)),
        sums=sums,
        findings=tuple(_findings(costs, quoting)),
    )


def _sum(lines: Iterable[CostLine], currency: Currency) -> Decimal:
    return total((line.amount for line in lines if line.amount is not None), currency)


def _added_lines(sums: Sums, quoting: Quoting) -> Iterator[CostLine]:
    """What comes on top of the costs; rounding and tax only where there are any."""
    overhead = f"{say_percent(quoting.overhead_percent)} of cloth, notions and hours"
    yield CostLine("overhead", "overhead", "Overhead", overhead, sums.overhead)
    margin = f"{say_percent(quoting.margin_percent)} of all costs"
    yield CostLine("margin", "margin", "Margin", margin, sums.margin)
    if sums.rounding > 0:
        step = max(quoting.round_to, coin_of(quoting.currency))
        words = f"the price up to whole ones of {say_price(step, quoting.currency)}"
        yield CostLine("rounding", "rounding", "Rounding", words, sums.rounding)
    if quoting.tax_percent > 0:
        tax = f"{say_percent(quoting.tax_percent)} of the price before tax"
        yield CostLine("tax", "tax", "Tax", tax, sums.tax)


def _findings(costs: tuple[CostLine, ...], quoting: Quoting) -> Iterator[Finding]:
    things = [line.name for line in costs if line.amount is None and line.kind != "hours"]
    if things:
        yield _no_price(things)
    if not any(row.hours > 0 for row in quoting.hours):
        yield _unpaid("no_hours", "no hours are entered", "hours", "Enter the hours of each step.")
    elif quoting.rate == 0:
        yield _unpaid("no_rate", "there is no rate for an hour yet", "rate", "Enter a rate.")
    if quoting.margin_percent == 0:
        yield _no_margin()


def _no_price(things: list[str]) -> Finding:
    named = ", ".join(things[:3]) + (f" and {len(things) - 3} more" if len(things) > 3 else "")
    return Finding(
        "attend",
        "no_price",
        "There is no usable price yet for {things}; the price asked is too low by that.",
        words={"things": named},
        place=Place(field="quoting.prices"),
        remedy="Enter what each costs, or say what is not bought.",
    )


def _unpaid(code: str, why: str, field: str, remedy: str) -> Finding:
    return Finding(
        "attend",
        code,
        "Your own time is not in the price: {why}.",
        words={"why": why},
        place=Place(field=f"quoting.{field}"),
        remedy=remedy,
    )


def _no_margin() -> Finding:
    return Finding(
        "note",
        "no_margin",
        "There is no margin: the price covers the costs and leaves nothing over.",
        place=Place(field="quoting.margin_percent"),
        remedy="Enter a margin, or leave it so on purpose.",
    )

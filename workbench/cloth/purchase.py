"""How much of a notion is paid for at the counter, in the way its price is given.

Lengths are rounded up to an eighth of a yard or a tenth of a metre, pairs and packs to whole
ones (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil
from typing import Literal

from workbench.body import say_exact
from workbench.cloth.records import PriceRow
from workbench.pieces import Notion

Per = Literal["each", "yard", "metre", "pair", "pack"]

YARD_MM, METRE_MM, INCH_MM = Fraction(9144, 10), Fraction(1000), 25.4
"""International yard and pound agreement of 1959, from memory."""
YARD_PARTS, METRE_PARTS = 8, 10
"""Cloth is sold by the eighth of a yard and the tenth of a metre; common practice, no source."""
PER_WORDS: dict[Per, str] = {
    "each": "each",
    "yard": "a yard",
    "metre": "a metre",
    "pair": "a pair",
    "pack": "a pack",
}
_SLACK = Fraction(1, 1_000_000)
"""A length this little over a mark, in marks, is that mark (own choice)."""


@dataclass(frozen=True)
class Needed:
    """What the notions of one price line come to: how many, and how long together in mm."""

    count: int | None
    length_mm: float | None


@dataclass(frozen=True)
class Purchase:
    """What is paid for: how many times the price, exactly, and in words: ``1⅝ yd``, ``2 packs of 24``."""

    times: Fraction
    words: str

    def cost(self, price: Decimal) -> Fraction:
        """What it costs, exactly."""
        return self.times * Fraction(price)


def needed_of(notions: Iterable[Notion]) -> Needed:
    """Counts and lengths added up; None for a count or a length that one of them has not."""
    counts, lengths = zip(*((notion.count, notion.length_mm) for notion in notions), strict=True)
    return Needed(
        None if None in counts else sum(count for count in counts if count is not None),
        None if None in lengths else sum(length for length in lengths if length is not None),
    )


def purchase_of(needed: Needed, row: PriceRow) -> Purchase | None:
    """How much is paid for at this price; None where a length is priced that has none, or a number."""
    return _WAYS[row.per](needed, row)


def _each(needed: Needed, _: PriceRow) -> Purchase | None:
    return None if needed.count is None else Purchase(Fraction(needed.count), f"{needed.count:,}")


def _pairs(needed: Needed, _: PriceRow) -> Purchase | None:
    if needed.count is None:
        return None
    pairs = -(-needed.count // 2)
    return Purchase(Fraction(pairs), _many(pairs, "pair"))


def _yards(needed: Needed, _: PriceRow) -> Purchase | None:
    if needed.length_mm is None:
        return None
    yards = _rounded_up(needed.length_mm, YARD_MM, YARD_PARTS)
    return Purchase(yards, f"{say_exact(float(yards) * INCH_MM, 'in')} yd")


def _metres(needed: Needed, _: PriceRow) -> Purchase | None:
    if needed.length_mm is None:
        return None
    metres = _rounded_up(needed.length_mm, METRE_MM, METRE_PARTS)
    return Purchase(metres, f"{float(metres):g} m")


def _packs(needed: Needed, row: PriceRow) -> Purchase | None:
    """By length where the pack has one, else by number; where neither helps one is taken for enough."""
    if needed.length_mm is not None and row.pack_mm > 0:
        packs = ceil(Fraction(needed.length_mm) / Fraction(row.pack_mm) - _SLACK)
        return Purchase(Fraction(packs), _many(packs, "pack"))
    if needed.count is not None:
        packs = -(-needed.count // row.pack_count)
        return Purchase(Fraction(packs), f"{_many(packs, 'pack')} of {row.pack_count:,}")
    return Purchase(Fraction(1), "1 pack (taken for enough)")


def _rounded_up(mm: float, whole: Fraction, parts: int) -> Fraction:
    return Fraction(max(ceil(Fraction(mm) / whole * parts - _SLACK), 0), parts)


def _many(count: int, word: str) -> str:
    return f"{count:,} {word}" if count == 1 else f"{count:,} {word}s"


_WAYS: dict[Per, Callable[[Needed, PriceRow], Purchase | None]] = {
    "each": _each,
    "yard": _yards,
    "metre": _metres,
    "pair": _pairs,
    "pack": _packs,
}

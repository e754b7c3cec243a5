"""The price list: a line for whatever is bought besides cloth, and which line a notion is priced by.

A bone has a line for its very length and one for any length; the nearer one that has a price counts.
A price of nothing is one she has not set yet.
"""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from workbench.body import Unit, say_exact
from workbench.cloth.purchase import Per
from workbench.cloth.records import PriceRow
from workbench.pieces import Cutting, Notion

Prices = tuple[PriceRow, ...]

NO_PRICE = Decimal(0)
NOT_BOUGHT = ("bones", "modesty")
"""Lines of the shopping list with nothing to buy: a sum of others, and a panel cut from the cloth."""

_BY_LENGTH: dict[Unit, Per] = {"in": "yard", "cm": "metre"}
_USUAL: tuple[tuple[str, str, Per | None], ...] = (
    ("bone/flat_steel", "Flat steel, any length", "each"),
    ("bone/spiral_steel", "Spiral steel, any length", "each"),
    ("bone/plastic", "Plastic boning", None),
    ("channels", "Channel tape", None),
    ("tips", "Bone tips", "each"),
    ("busk", "Front busk", "each"),
    ("eyelets", "Eyelets", "each"),
    ("loops", "Loops", "each"),
    ("cord", "Lacing cord", None),
    ("zip", "Side zip", "each"),
    ("waist_tape", "Waist tape", None),
    ("binding", "Binding", None),
    ("thread", "Thread", "pack"),
    ("beads", "Pearls and beads", "pack"),
)
"""Key, name, and what the price is for, None by length; common practice, no source, each can be changed."""


def price_list(unit: Unit = "in") -> Prices:
    """A line for every kind of notion the program lists, none with a price yet.

    What is sold by length is priced by the yard, or with ``cm`` by the metre.
    """
    by_length = _BY_LENGTH[unit]
    return tuple(PriceRow(key, name, NO_PRICE, per or by_length) for key, name, per in _USUAL)


def rows_for(cutting: Cutting, prices: Prices, unit: Unit = "in", also: tuple[Notion, ...] = ()) -> Prices:
    """The lines that price this garment, in the order of its shopping list: hers where she has one.

    A steel comes with a line for any length and one for its own.
    """
    known = {row.key: row for row in (*price_list(unit), *prices)}
    listed = {notion.key: notion for notion in bought(cutting, also)}
    keys = dict.fromkeys(key for notion in listed.values() for key in reversed(keys_of(notion)))
    return tuple(
        known.get(key) or _own_row(listed[key], unit) for key in keys if key in known or key in listed
    )


def bought(cutting: Cutting, also: Iterable[Notion] = ()) -> tuple[Notion, ...]:
    """The lines of the shopping list that something is bought for, and what else is told."""
    return tuple(notion for notion in (*cutting.notions, *also) if notion.key not in NOT_BOUGHT)


def keys_of(notion: Notion) -> tuple[str, ...]:
    """The keys a notion can be priced by, the nearest first: its own, then those of its kind."""
    parts = notion.key.split("/")
    if parts[0] == "bone":
        if parts[1:2] == ["plastic"]:
            return ("bone/plastic",)
        return notion.key, "/".join(parts[:2])
    return tuple("/".join(parts[:count]) for count in range(len(parts), 0, -1))


def name_of(notion: Notion, unit: Unit = "in") -> str:
    """What a line for this very notion is called: ``Spiral steel, 9½ in``."""
    each = notion.lengths.get("each")
    if not notion.key.startswith("bone/") or each is None:
        return notion.name
    return f"{notion.name}, {say_exact(each, unit)} {unit}"


def _own_row(notion: Notion, unit: Unit) -> PriceRow:
    """A line for this very notion: by number where it is counted, else by length."""
    per = _BY_LENGTH[unit] if notion.count is None else "each"
    return PriceRow(notion.key, name_of(notion, unit), NO_PRICE, per)


def row_of(notion: Notion, prices: Prices) -> PriceRow | None:
    """The line a notion is priced by: the nearest with a price, else the widest there is, else None."""
    rows = {row.key: row for row in prices}
    found = [rows[key] for key in keys_of(notion) if key in rows]
    priced = (row for row in found if row.price != NO_PRICE)
    return next(priced, found[-1] if found else None)


def with_row(prices: Prices, row: PriceRow) -> Prices:
    """The list with this line instead of the one of its key, or at its end."""
    if all(old.key != row.key for old in prices):
        return (*prices, row)
    return tuple(row if old.key == row.key else old for old in prices)


def with_prices(prices: Prices, remembered: Prices) -> Prices:
    """The list with what is remembered: lines it lacks, and prices where it has none yet."""
    known = {row.key: row for row in remembered if row.price != NO_PRICE}
    filled = [known.get(row.key, row) if row.price == NO_PRICE else row for row in prices]
    held = {row.key for row in prices}
    return (*filled, *(row for row in remembered if row.key not in held))

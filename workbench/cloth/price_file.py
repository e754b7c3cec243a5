"""Her own price list on the disk: prices and usual figures that she takes from one project to the next.

A small JSON file. Amounts are written as text, so that they come back to the last decimal. What
belongs to one client (hours, dates, what is included) is not in it. Figures are own choice, how
much of a file is read.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any, get_args

from workbench.cloth.money import MoneyError, plain
from workbench.cloth.money_checks import MOST_ROWS, quoting_problems, refuse_bad
from workbench.cloth.prices import with_prices
from workbench.cloth.purchase import Per
from workbench.cloth.records import Currency, PriceRow, Quoting

KIND, VERSION = "price list", 1
MOST_BYTES = 1_000_000
LONGEST_FIGURE = 40
LARGEST_WHOLE = 1_000_000
FIGURES = (
    "rate",
    "overhead_percent",
    "margin_percent",
    "tax_percent",
    "deposit_percent",
    "round_to",
)
"""The usual figures that are kept with the prices."""

Data = Mapping[str, Any]


def read_price_list(path: Path, read: Callable[[Path], bytes] = Path.read_bytes) -> Quoting | None:
    """What she has kept, with nothing about one client; None where there is no such file yet.

    MoneyError names the file and what is wrong with it. ``read`` may raise errors of its own.
    """
    if not path.exists():
        return None
    return price_list_from(read(path), str(path))


def write_price_list(path: Path, quoting: Quoting, write: Callable[[Path, bytes], object]) -> None:
    """Keep the prices and usual figures of a quoting at ``path``; ``write`` must leave a whole file or none.

    MoneyError, and nothing written, for figures that no price can be worked out with.
    """
    write(path, price_list_bytes(quoting))


def price_list_bytes(quoting: Quoting) -> bytes:
    """The price list as it is written; MoneyError for figures that no price can be worked out with."""
    kept = remembered(quoting)
    refuse_bad(quoting_problems(kept))
    data = {
        "kind": KIND,
        "version": VERSION,
        "currency": vars(kept.currency),
        **{name: plain(getattr(kept, name)) for name in FIGURES},
        "prices": [{**vars(row), "price": plain(row.price)} for row in kept.prices],
    }
    return (json.dumps(data, ensure_ascii=False, indent=1) + "\n").encode()


def price_list_from(data: bytes, name: str) -> Quoting:
    """The price list in the bytes of a file called ``name``; MoneyError says what is wrong with them."""
    try:
        kept = _quoting(_tree(data))
        refuse_bad(quoting_problems(kept))
    except MoneyError as error:
        raise MoneyError(f"{name}: {error.sentence[:1].lower()}{error.sentence[1:]}", error.place) from error
    return kept


def remembered(quoting: Quoting) -> Quoting:
    """The part of a quoting that is the same for every client."""
    figures = {name: getattr(quoting, name) for name in FIGURES}
    return replace(Quoting(currency=quoting.currency, prices=quoting.prices), **figures)


def with_remembered(quoting: Quoting, kept: Quoting) -> Quoting:
    """The quoting with her prices where it has none yet; prices in another currency are left alone."""
    if kept.currency != quoting.currency:
        return quoting
    return replace(quoting, prices=with_prices(quoting.prices, kept.prices))


def _tree(data: bytes) -> Data:
    if len(data) > MOST_BYTES:
        raise MoneyError(f"The file is larger than {MOST_BYTES // 1_000_000} MB and is no price list.")
    try:
        tree = json.loads(
            data.decode("utf-8"),
            object_pairs_hook=_once,
            parse_float=_figure,
            parse_int=_figure,
            parse_constant=_figure,
        )
    except (ValueError, RecursionError) as error:
        raise MoneyError("The file is damaged or no price list.") from error
    if not isinstance(tree, dict) or tree.get("kind") != KIND:
        raise MoneyError("The file is no price list.")
    version = _whole(tree.get("version"), "version")
    if version > VERSION:
        raise MoneyError("The file was written by a newer version of the program.")
    return tree


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """A group of entries; ValueError where one stands there twice and it is not known which counts."""
    group = dict(pairs)
    if len(group) < len(pairs):
        raise ValueError("an entry stands there twice")
    return group


def _figure(text: str) -> Decimal:
    """A figure as it stands in the file, however it is written there."""
    if len(text) > LONGEST_FIGURE:
        raise ValueError("a figure of that many digits is a slip")
    return Decimal(text)


def _quoting(tree: Data) -> Quoting:
    _only(tree, {"kind", "version", "currency", "prices", *FIGURES}, "The file")
    rows = tree.get("prices", [])
    if not isinstance(rows, list) or len(rows) > MOST_ROWS:
        raise MoneyError(f"“prices” is no list of at most {MOST_ROWS} lines.")
    figures: dict[str, Any] = {name: _amount(tree[name], f"“{name}”") for name in FIGURES if name in tree}
    prices = tuple(_row(row, number) for number, row in enumerate(rows, start=1))
    return replace(Quoting(currency=_currency(tree.get("currency", {})), prices=prices), **figures)


def _currency(tree: Any) -> Currency:
    data = _group(tree, "“currency”")
    _only(data, {"symbol", "decimals", "before"}, "“currency”")
    usual = Currency()
    before = data.get("before", usual.before)
    if not isinstance(before, bool):
        raise MoneyError("“currency › before” is neither true nor false.")
    return Currency(
        _text(data.get("symbol", usual.symbol), "“currency › symbol”"),
        _whole(data.get("decimals", Decimal(usual.decimals)), "currency › decimals"),
        before,
    )


def _row(tree: Any, number: int) -> PriceRow:
    called = f"Price no. {number}"
    data = _group(tree, called)
    _only(data, {"key", "name", "price", "per", "pack_count", "pack_mm"}, called)
    per = data.get("per", "each")
    if per not in get_args(Per):
        raise MoneyError(f"{called} is for something else than each, a yard, a metre, a pair or a pack.")
    return PriceRow(
        _text(data.get("key"), f"The key of price no. {number}"),
        _text(data.get("name"), f"The name of price no. {number}"),
        _amount(data.get("price"), called),
        per,
        _whole(data.get("pack_count", Decimal(1)), f"price no. {number} › pack_count"),
        float(_amount(data.get("pack_mm", Decimal(0)), f"The length in the pack of price no. {number}")),
    )


def _group(tree: Any, called: str) -> Data:
    if not isinstance(tree, dict):
        raise MoneyError(f"{called} is no group of named entries.")
    return tree


def _only(data: Data, known: set[str], called: str) -> None:
    for name in data:
        if name not in known:
            raise MoneyError(f"{called} has an entry “{name[:60]}” that no price list has.")


def _text(value: Any, called: str) -> str:
    if not isinstance(value, str):
        raise MoneyError(f"{called} is no text.")
    return value


def _amount(value: Any, called: str) -> Decimal:
    if isinstance(value, str) and len(value) <= LONGEST_FIGURE:
        try:
            value = Decimal(value)
        except InvalidOperation:
            value = None
    if not isinstance(value, Decimal):
        raise MoneyError(f"{called} is no amount.")
    return value


def _whole(value: Any, called: str) -> int:
    if not isinstance(value, Decimal) or not value.is_finite() or abs(value) > LARGEST_WHOLE or value % 1:
        raise MoneyError(f"“{called}” is no whole number.")
    return int(value)

"""What the client reads: what is included, what it comes to, when. No costs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from workbench.cloth.money import say_percent
from workbench.cloth.records import Quoting
from workbench.cloth.sums import Sums
from workbench.pieces import Cutting, Notion

ClientKind = Literal["included", "price", "paid", "date"]
_SHELL = ("fashion", "strength", "interfacing", "lining")


@dataclass(frozen=True)
class ClientLine:
    """One line of the client's quote; amounts in whole coins."""

    kind: ClientKind
    """What is included, how the price comes about, how it is paid, or a date."""
    name: str
    words: str = ""
    amount: Decimal | None = None


def client_lines(sums: Sums, quoting: Quoting, usual: str = "") -> tuple[ClientLine, ...]:
    """The lines of the client's quote; ``usual`` is included where she has written nothing herself.

    Above the price its parts add up to it, and below it deposit and balance do.
    """
    included = quoting.included if quoting.included.strip() else usual
    return (
        *(ClientLine("included", line.strip()) for line in included.splitlines() if line.strip()),
        *_price(sums, quoting),
        *_paid(sums, quoting),
        *_dates(quoting),
    )


def included_usual(cutting: Cutting) -> str:
    """What the garment is made of, one thing a line, from its pieces and notions; nothing without pieces."""
    if not cutting.pieces:
        return ""
    listed = {notion.key: notion for notion in cutting.notions}
    layers = [layer.label.lower() for layer in cutting.layers if layer.name in _SHELL]
    lines = [
        "Made to your measurements, with a first make-up in cheap cloth and fittings",
        f"Layers: {', '.join(layers)}" if layers else "",
        *_boned(listed),
        *_closed(listed),
        *(listed[key].name for key in ("busk", "waist_tape", "modesty") if key in listed),
    ]
    return "\n".join(line for line in lines if line)


def _boned(listed: dict[str, Notion]) -> Iterator[str]:
    if "bones" in listed:
        bones = listed["bones"].count or 0
        yield f"{bones} bone{'' if bones == 1 else 's'}"


def _closed(listed: dict[str, Notion]) -> Iterator[str]:
    for key in ("loops", "eyelets"):
        if key in listed:
            yield f"Laced at the back through {listed[key].count} {key}, with its cord"
    if "zip" in listed:
        yield "Closed with a zip in the side"


def _price(sums: Sums, quoting: Quoting) -> Iterator[ClientLine]:
    if quoting.tax_percent > 0:
        yield ClientLine("price", "Price before tax", amount=sums.before_tax)
        yield ClientLine("price", "Tax", say_percent(quoting.tax_percent), sums.tax)
    yield ClientLine("price", "Price with tax" if quoting.tax_percent > 0 else "Price", amount=sums.price)


def _paid(sums: Sums, quoting: Quoting) -> Iterator[ClientLine]:
    if quoting.deposit_percent > 0:
        share = f"{say_percent(quoting.deposit_percent)}, before the work begins"
        yield ClientLine("paid", "Deposit", share, sums.deposit)
        yield ClientLine("paid", "Balance", "when it is handed over", sums.balance)


def _dates(quoting: Quoting) -> Iterator[ClientLine]:
    told = (
        ("Fittings", quoting.fitting_dates),
        ("Ready by", quoting.ready_by),
        ("This quote is valid until", quoting.valid_until),
    )
    return (ClientLine("date", name, text.strip()) for name, text in told if text.strip())

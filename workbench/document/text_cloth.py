"""What lies on the cloths and what it all costs, as lines to read."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from workbench.body import say_exact
from workbench.cloth import ClientLine, Quote, say_money, to_coin
from workbench.document.lays import Lay
from workbench.document.picture import Picture
from workbench.document.text_lines import Said, bullets, section, table

_STATE_WORDS = {
    "current": "kept",
    "stale": "plain; the kept one is out of date",
    "none": "plain",
    "found": "new",
}


def cloth_lines(picture: Picture, say: Said) -> Iterator[str]:
    """The section on cloths, and the two on money."""
    yield from section("Cloth", _cloths(picture, say))
    if picture.quote is not None:
        yield from section("What it costs you", _inside(picture.quote))
        yield from section("Quote for the client", _client(picture.quote))


def _cloths(picture: Picture, say: Said) -> Iterator[str]:
    head = ("", "width", "length", "in pieces", "buy", "cost", "plan")
    yield from table([head, *(_cloth_row(lay, say) for lay in picture.lays)], words=(0, 6))
    notes = (lay.buy.note for lay in picture.lays if lay.buy is not None and lay.buy.note)
    findings = (f.text(say.project.unit, say.project.fraction) for f in picture.cloth_findings)
    yield from bullets((*notes, *findings))


def _cloth_row(lay: Lay, say: Said) -> tuple[str, ...]:
    width = f"{say_exact(lay.cloth.width_mm, say.project.unit)} {say.project.unit}"
    if lay.plan is None or lay.buy is None:
        return (lay.cloth.name, width, "", "", "", "", "cannot be laid")
    if not lay.copies:
        return (lay.cloth.name, width, "", "", "none", "", "nothing is cut from it")
    cost, currency = lay.buy.cost, say.project.quoting.currency
    return (
        lay.cloth.name,
        width,
        say.unit(lay.plan.length_mm),
        f"{100 * lay.plan.utilisation:.0f} %",
        lay.buy.words,
        say_money(to_coin(cost, currency), currency) if cost is not None else "no price",
        _STATE_WORDS[lay.state],
    )


def _inside(quote: Quote) -> Iterator[str]:
    rows = [(line.name, line.words, _amount(line.amount, quote)) for line in quote.inside]
    yield from table([*rows, ("Price", "", _amount(quote.sums.price, quote))], words=(0, 1))
    yield from bullets(finding.text("in") for finding in quote.findings)


def _client(quote: Quote) -> Iterator[str]:
    yield from bullets(line.name for line in quote.client if line.kind == "included")
    amounts = [line for line in quote.client if line.amount is not None]
    yield from table([(line.name, line.words, _amount(line.amount, quote)) for line in amounts], words=(0, 1))
    yield from (f"{line.name}: {line.words}" for line in _dates(quote))


def _dates(quote: Quote) -> Iterator[ClientLine]:
    return (line for line in quote.client if line.kind == "date")


def _amount(amount: Decimal | None, quote: Quote) -> str:
    return "" if amount is None else say_money(amount, quote.currency)

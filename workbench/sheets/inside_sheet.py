"""The inside sheet: every cost with how it was worked out, and how the price comes about."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from typing import Literal

from workbench.cloth import CostLine, Quote, Quoting, say_money, say_percent
from workbench.sheets.block import (
    BODY,
    LEADING,
    SMALL,
    THIN,
    Block,
    heading,
    paragraph,
    space,
    stack,
)
from workbench.sheets.figure_row import figure_row
from workbench.sheets.fonts import clean, fitted, text_width, wrapped
from workbench.sheets.heading import Heading
from workbench.sheets.marks import draw_mark
from workbench.sheets.page_file import pdf_of
from workbench.sheets.paper import PAPERS
from workbench.sheets.pen import INK, SOFT, WHITE, LineStyle, Pen
from workbench.sheets.quote_sheet import checked_paper
from workbench.sheets.sections import INVENTED, finding_block
from workbench.sheets.setter import FOOT, SIDE, Page, Setter
from workbench.sheets.sheet_head import sheet_head

TITLE = "Inside sheet"
NOT_FOR_CLIENT = "Inside sheet, not for the client"
_NAME_SHARE, _AMOUNT = 0.33, 30.0
_ROW, _LINE = 4.5, 3.6
_STRONG = LineStyle(0.35, INK)
Costs = Literal["cloth", "notion", "hours"]
_SECTIONS: tuple[tuple[Costs, str], ...] = (("cloth", "Cloth"), ("notion", "Notions"), ("hours", "Hours"))


def print_inside_sheet(quote: Quote, heading: Heading, quoting: Quoting, paper: str = "A4") -> bytes:
    """A PDF for the workroom with all costs; ``quoting`` is what the quote was made from.

    The same input gives the same bytes. PrintError, in one sentence, for a paper that is
    none of A4 and Letter.
    """
    setter = Setter(PAPERS[checked_paper(paper, "The inside sheet")], squares_due=False)
    setter.add(_band(setter.width))
    for block in _blocks(quote, heading, quoting, setter.width):
        if block.height > setter.room:
            setter.turn()
            setter.add(_band(setter.width))
        setter.add(block, 0.0)
    _number(setter.pages, heading)
    return pdf_of(setter.pages, TITLE)


def _band(width: float) -> Block:
    """White on black at the head of every page, so that it is not handed over by mistake."""

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.rectangle(left, top - 6.4, width, 6.4, fill=INK)
        pen.text(left + 0.5 * width, top - 4.4, NOT_FOR_CLIENT, 3.4, bold=True, colour=WHITE, align="middle")

    return Block(6.4, paint)


def _blocks(quote: Quote, words: Heading, quoting: Quoting, width: float) -> Iterator[Block]:
    yield sheet_head(
        fitted(clean(words.style) or "Costs", 5.2, 0.5 * width, bold=True), "costs and price", words, width
    )
    if words.invented:
        yield paragraph(INVENTED, width, SMALL, bold=True)
    yield stack([space(2.0), _figures(quote, quoting, width), space(3.0)])
    for finding in quote.findings:
        yield finding_block(finding, words, width)
    for kind, name in _SECTIONS:
        yield from _section(quote, kind, name, width)
    yield from _price(quote, quoting, width)


def _figures(quote: Quote, quoting: Quoting, width: float) -> Block:
    """What she looks for first."""
    currency, sums = quote.currency, quote.sums
    hours = sum((row.hours for row in quoting.hours), Decimal(0))
    stays = quote.total_of("margin", "rounding")
    figures = (
        (
            say_money(sums.price, currency),
            "price" if quote.complete else "price, too low: prices are missing",
        ),
        (say_money(sums.costs + sums.overhead, currency), "costs with overhead"),
        (say_money(stays, currency), "margin and rounding"),
        (f"{hours.normalize():f} h", "of work"),
    )

    return figure_row(figures, width)


def _section(quote: Quote, kind: Costs, name: str, width: float) -> Iterator[Block]:
    lines = [line for line in quote.inside if line.kind == kind]
    if not lines:
        return
    first, *rest = (_row(line, quote, width) for line in lines)
    yield stack([space(2.0), heading(name, width), first])
    yield from rest
    priced = all(line.amount is not None for line in lines)
    words = f"{name} together" if priced else f"{name} together, as far as there are prices"
    yield _sum(words, quote.total_of(kind), quote, width)


def _row(line: CostLine, quote: Quote, width: float) -> Block:
    """Name, how it was worked out, amount; marked where there is no price."""
    name_width = _NAME_SHARE * width
    amount = "?" if line.amount is None else say_money(line.amount, quote.currency)
    room = width - name_width - max(text_width(amount, BODY) + 3.0, _AMOUNT)
    names, words = (
        wrapped(clean(line.name), BODY, name_width - 3.0),
        wrapped(clean(line.words), BODY, room - 5.0),
    )
    count = max(len(names), len(words), 1)

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.line(left, top, left + width, top, THIN)
        for number, text in enumerate(names):
            pen.text(left, top - 3.2 - number * _LINE, text, BODY)
        start = left + name_width
        if line.amount is None:
            draw_mark(pen, start + 1.2, top - 2.3, "attend")
            start += 4.0
        for number, text in enumerate(words):
            pen.text(start, top - 3.2 - number * _LINE, text, BODY, bold=line.amount is None)
        pen.text(left + width, top - 3.2, amount, BODY, align="right")

    return Block(_ROW + (count - 1) * _LINE, paint)


def _sum(name: str, amount: Decimal, quote: Quote, width: float, size: float = BODY) -> Block:
    def paint(pen: Pen, left: float, top: float) -> None:
        pen.line(left, top, left + width, top, _STRONG)
        base = top - 1.25 * size
        pen.text(left, base, name, size, bold=True)
        pen.text(left + width, base, say_money(amount, quote.currency), size, bold=True, align="right")

    return Block(1.25 * size * LEADING, paint)


def _price(quote: Quote, quoting: Quoting, width: float) -> Iterator[Block]:
    """From the costs to the price, and how it is paid."""
    sums = quote.sums
    added = [line for line in quote.inside if line.kind in ("overhead", "margin", "rounding")]
    tax = [line for line in quote.inside if line.kind == "tax"]
    costs = CostLine("cloth", "costs", "Costs", "cloth, notions and hours together", sums.costs)
    yield stack([space(2.0), heading("From costs to price", width), _row(costs, quote, width)])
    yield from (_row(line, quote, width) for line in added)
    if tax:
        yield _sum("Price before tax", sums.before_tax, quote, width)
        yield from (_row(line, quote, width) for line in tax)
    yield _sum("Price", sums.price, quote, width, 1.5 * BODY)
    deposit = f"{say_percent(quoting.deposit_percent)} of the price, before the work begins"
    yield _row(CostLine("cloth", "deposit", "Deposit", deposit, sums.deposit), quote, width)
    yield _row(CostLine("cloth", "balance", "Balance", "when it is handed over", sums.balance), quote, width)


def _number(pages: list[Page], words: Heading) -> None:
    for number, page in enumerate(pages, 1):
        width = page.width - 2 * SIDE
        page.put(SIDE, FOOT + 4.0, _foot(f"page {number} of {len(pages)}", clean(words.client), width))


def _foot(page: str, client: str, width: float) -> Block:
    left_words = fitted(f"{NOT_FOR_CLIENT} · {client}" if client else NOT_FOR_CLIENT, SMALL, width - 30.0)

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.text(left, top - 3.0, left_words, SMALL, colour=SOFT)
        pen.text(left + width, top - 3.0, page, SMALL, colour=SOFT, align="right")

    return Block(4.0, paint)

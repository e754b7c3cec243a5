"""The client's quote: one page with a picture of the design, what is included, the price and the cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from workbench.body import WEARER_CAUTIONS
from workbench.cloth import ClientLine, Quote, say_money
from workbench.draft import Outcome
from workbench.pieces import Cutting
from workbench.sheets.block import (
    BODY,
    LEADING,
    SMALL,
    THIN,
    Block,
    beside,
    heading,
    paragraph,
    space,
    stack,
)
from workbench.sheets.client_head import client_head
from workbench.sheets.fonts import clean, fitted, text_width, wrapped
from workbench.sheets.garment import View
from workbench.sheets.garment_picture import garment_picture
from workbench.sheets.heading import Heading
from workbench.sheets.page_file import pdf_of
from workbench.sheets.paper import PAPERS, PrintError
from workbench.sheets.pen import INK, SOFT, LineStyle, Pen
from workbench.sheets.sections import cautions
from workbench.sheets.setter import FOOT, SIDE, TOP, Page
from workbench.sheets.worn_view import quote_views
from workbench.worn import Torso

TITLE_OF_QUOTE = "Quote"
QUOTE_PAPERS = ("A4", "Letter")
PROVISIONAL = "Provisional: not every price is known yet, so this amount will change."
_GUTTER, _GAP = 9.0, 4.0
_AMOUNT = 9.5
_RULE = LineStyle(0.5, INK)


@dataclass(frozen=True)
class Fit:
    """How tall the picture is at most, how large the words are, and how far apart the parts, mm."""

    picture: float
    words: float
    gap: float


_FITS = tuple(
    Fit(picture, words, gap)
    for words, gap in ((3.5, 10.0), (3.1, 6.0), (BODY, 4.0), (SMALL, 4.0))
    for picture in (112.0, 96.0, 80.0, 64.0, 50.0)
)
"""From the roomiest to the tightest that is still easy to read."""


def print_quote(
    quote: Quote,
    heading: Heading,
    outcome: Outcome,
    paper: str = "A4",
    cutting: Cutting | None = None,
    torso: Torso | None = None,
) -> bytes:
    """A PDF of one page for the client, without any cost: the same input gives the same bytes.

    Bones and lacing are drawn where there is a cutting; with a torso the design is shown as worn,
    too, with her outline before. PrintError, in one sentence, where
    there is no draft to draw, where the words do not fit on one page, or for another paper.
    """
    size = PAPERS[checked_paper(paper, "A quote")]
    views = quote_views(outcome, cutting, torso, heading.unit, heading.fraction)
    if not views:
        raise PrintError(
            "There is no design to draw on the quote yet: the draft is stopped by one of its findings."
        )
    width, room = size[0] - 2 * SIDE, size[1] - TOP - FOOT
    foot = cautions(width, WEARER_CAUTIONS)
    for fit in _FITS:
        body = _body(quote, heading, views, width, fit)
        if body.height + _GAP + foot.height <= room:
            page = Page(*size)
            page.put(SIDE, size[1] - TOP, body)
            page.put(SIDE, FOOT + foot.height, foot)
            return pdf_of([page], TITLE_OF_QUOTE)
    raise PrintError(
        "The quote does not fit on one page: write less about what is included, or about the dates."
    )


def checked_paper(paper: str, what: str) -> str:
    """The name of the paper; PrintError where it is none a quote is printed on."""
    if paper not in QUOTE_PAPERS:
        raise PrintError(f"{what} is printed on A4 or Letter, not on “{paper}”.")
    return paper


def _body(quote: Quote, words: Heading, views: Sequence[View], width: float, fit: Fit) -> Block:
    column = 0.5 * (width - _GUTTER)
    left = stack(
        [heading("What is included", column), space(1.0), *_included(quote.client, column, fit.words)]
    )
    right = stack([*_price(quote, column, fit.words), *_dates(quote.client, column, fit.words)])
    return stack(
        [
            client_head(TITLE_OF_QUOTE, words, width),
            space(fit.gap),
            garment_picture(views, width, fit.picture),
            space(fit.gap),
            beside([(0.0, left), (column + _GUTTER, right)]),
        ]
    )


def _of(lines: Sequence[ClientLine], kind: str) -> list[ClientLine]:
    return [line for line in lines if line.kind == kind]


def _included(lines: Sequence[ClientLine], width: float, size: float) -> Iterator[Block]:
    """One thing after the other, each behind a short rule."""
    indent = 3.6
    for line in _of(lines, "included"):
        words = paragraph(clean(line.name), width, size, indent=indent)
        yield beside([(0.0, _dash(size)), (0.0, words)])
        yield space(0.35 * size)


def _dash(size: float) -> Block:
    return Block(
        size * LEADING,
        lambda pen, left, top: pen.line(
            left, top - 0.55 * size, left + 1.9, top - 0.55 * size, LineStyle(0.2, SOFT)
        ),
    )


def _price(quote: Quote, width: float, size: float) -> Iterator[Block]:
    """The price large, how it comes about, and how it is paid."""
    lines, price = _of(quote.client, "price"), say_money(quote.sums.price, quote.currency)
    yield heading(lines[-1].name if lines else "Price", width)
    yield space(1.0)
    yield _large(price, width)
    if not quote.complete:
        yield paragraph(PROVISIONAL, width, size, bold=True)
        yield space(1.0)
    for line in (*lines[:-1], *_of(quote.client, "paid")):
        yield _amount_row(line, quote, width, size)


def _large(amount: str, width: float) -> Block:
    size = min(_AMOUNT, width / max(text_width(amount, 1.0, bold=True), 1e-6))

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.text(left, top - 0.8 * _AMOUNT, amount, size, bold=True)

    return Block(1.15 * _AMOUNT, paint)


def _amount_row(line: ClientLine, quote: Quote, width: float, size: float) -> Block:
    """A name, the amount at the right, and what is said of it between them, or below where it is long."""
    amount = "" if line.amount is None else say_money(line.amount, quote.currency)
    note, start = clean(line.words), text_width(line.name, size) + 1.6
    room = width - text_width(amount, size) - 3.0
    below = wrapped(note, size, width) if text_width(note, size) > room - start else []

    def paint(pen: Pen, left: float, top: float) -> None:
        base = top - 1.15 * size
        pen.line(left, top, left + width, top, THIN)
        pen.text(left, base, fitted(line.name, size, room), size)
        pen.text(left + width, base, amount, size, align="right")
        if not below:
            pen.text(left + start, base, note, size, colour=SOFT)
        for number, words in enumerate(below, 1):
            pen.text(left, base - number * LEADING * size, words, size, colour=SOFT)

    return Block((1.62 + LEADING * len(below)) * size, paint)


def _dates(lines: Sequence[ClientLine], width: float, size: float) -> Iterator[Block]:
    """Fittings, when it is ready, and how long the quote holds."""
    dates = _of(lines, "date")
    if dates:
        yield space(3.0)
        yield heading("Dates", width)
        yield space(0.6)
    for line in dates:
        yield paragraph(line.name, width, SMALL, colour=SOFT)
        yield paragraph(clean(line.words), width, size)
        yield space(0.8)

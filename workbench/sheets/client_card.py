"""The client's card: one page for her who wears it: lacing, limits, cautions, care."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from workbench.body import WEARER_CAUTIONS
from workbench.draft import Comfort, Outcome
from workbench.pieces import Cutting, Making
from workbench.sheets.block import (
    BODY,
    LEADING,
    Block,
    beside,
    heading,
    paragraph,
    space,
    stack,
)
from workbench.sheets.card_words import CardLine, care, figures, putting_on, taking_off
from workbench.sheets.client_head import client_head
from workbench.sheets.fonts import clean
from workbench.sheets.heading import Heading
from workbench.sheets.page_file import pdf_of
from workbench.sheets.paper import PAPERS, PrintError
from workbench.sheets.pen import ATTEND, INK, SOFT, LineStyle, Pen
from workbench.sheets.quote_sheet import checked_paper
from workbench.sheets.setter import FOOT, SIDE, TOP, Page
from workbench.sheets.sheet_head import said

TITLE_OF_CARD = "How to wear it and how to keep it"
_RULE = LineStyle(0.5, INK)
_GUTTER = 9.0
_SIZES = (3.9, 3.5, 3.1, BODY)
"""From the largest type to the smallest that is still easy to read, mm."""


@dataclass(frozen=True)
class Card:
    """What the card is made from beside the words of every print."""

    outcome: Outcome
    comfort: Comfort
    cutting: Cutting
    making: Making
    next_fitting: str = ""
    beads: bool = False


def print_client_card(card: Card, words: Heading, paper: str = "A4") -> bytes:
    """A PDF of one page: the same input gives the same bytes.

    PrintError, in one sentence, for a paper that is none of A4 and Letter.
    """
    size = PAPERS[checked_paper(paper, "The client’s card")]
    width, room = size[0] - 2 * SIDE, size[1] - TOP - FOOT
    for height in _SIZES:
        body = _body(card, words, width, height)
        if body.height <= room:
            page = Page(*size)
            page.put(SIDE, size[1] - TOP, body)
            return pdf_of([page], TITLE_OF_CARD)
    raise PrintError("The client’s card does not fit on one page: shorten the client’s name.")


def _body(card: Card, words: Heading, width: float, size: float) -> Block:
    column = 0.5 * (width - _GUTTER)
    left = [
        heading("Putting it on", column),
        space(0.3 * size),
        *_numbered(putting_on(card.making, card.outcome.design.opening_mm), words, column, size),
        space(2.0),
        heading("Taking it off", column),
        space(0.3 * size),
        *_listed(taking_off(card.making), words, column, size),
    ]
    right = [
        heading("Your figures", column),
        space(0.3 * size),
        *_listed(figures(card.outcome, card.comfort), words, column, size),
        *_next(card.next_fitting, column, size),
        space(2.0),
        heading("Keeping it", column),
        space(0.3 * size),
        *_listed(care(card.cutting, card.making, card.beads), words, column, size),
    ]
    return stack(
        [
            client_head(TITLE_OF_CARD, words, width),
            space(3.0),
            _warning(width, size),
            space(4.0),
            beside([(0.0, stack(left)), (column + _GUTTER, stack(right))]),
        ]
    )


def _warning(width: float, size: float) -> Block:
    """The cautions in a frame: whoever reads one thing reads this."""
    inner = width - 9.0
    first, *rest = WEARER_CAUTIONS
    lines = [paragraph(first, inner, 1.15 * size, bold=True), space(1.0)]
    for sentence in rest:
        lines += [_dashed(sentence, inner, size, bold=False), space(0.25 * size)]
    inside = stack(lines)
    height = inside.height + 4.4

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.rectangle(left, top - height, width, height, LineStyle(0.3, ATTEND))
        pen.rectangle(left, top - height, 1.6, height, fill=ATTEND)
        inside.paint(pen, left + 5.5, top - 2.8)

    return Block(height, paint)


def _filled(line: CardLine, words: Heading) -> str:
    return line.sentence.format(**{name: said(mm, words) for name, mm in line.lengths.items()})


def _numbered(lines: Iterable[CardLine], words: Heading, width: float, size: float) -> Sequence[Block]:
    blocks: list[Block] = []
    for number, line in enumerate(lines, start=1):
        text = paragraph(_filled(line, words), width, size, bold=line.strong, indent=1.9 * size)
        sign = paragraph(f"{number}", 1.9 * size, size, bold=True)
        blocks += [beside([(0.0, sign), (0.0, text)]), space(0.4 * size)]
    return blocks


def _listed(lines: Iterable[CardLine], words: Heading, width: float, size: float) -> Sequence[Block]:
    blocks: list[Block] = []
    for line in lines:
        blocks += [_dashed(_filled(line, words), width, size, bold=line.strong), space(0.4 * size)]
    return blocks


def _dashed(text: str, width: float, size: float, *, bold: bool) -> Block:
    """A sentence behind a short rule."""
    dash = Block(
        size * LEADING,
        lambda pen, left, top: pen.line(
            left, top - 0.55 * size, left + 1.9, top - 0.55 * size, LineStyle(0.2, SOFT)
        ),
    )
    return beside([(0.0, dash), (0.0, paragraph(text, width, size, bold=bold, indent=1.4 * size))])


def _next(date: str, width: float, size: float) -> Sequence[Block]:
    return [paragraph(f"Next fitting: {clean(date)}.", width, size, bold=True)] if date else []

"""The sewing order on paper: a list to tick off, with this garment's numbers in it."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from workbench.sewing import Step, chapters, time_words
from workbench.sheets.block import BODY, LEADING, SMALL, Block, heading, paragraph, space, stack
from workbench.sheets.fonts import clean
from workbench.sheets.heading import Heading
from workbench.sheets.page_file import pdf_of
from workbench.sheets.paper import PAPERS
from workbench.sheets.pen import INK, SOFT, LineStyle, Pen
from workbench.sheets.quote_sheet import checked_paper
from workbench.sheets.sections import INVENTED
from workbench.sheets.setter import FOOT, SIDE, Page, Setter
from workbench.sheets.sheet_head import sheet_head

TITLE_OF_ORDER = "Sewing order"
SIZE = 1.15 * BODY
_BOX, _INDENT = 3.4, 7.0
_LINE = LineStyle(0.25, INK)
_TICK = LineStyle(0.55, INK)


def print_sewing_order(
    steps: Sequence[Step], done: Collection[str], words: Heading, paper: str = "A4"
) -> bytes:
    """A PDF of every step with a box to tick, those in ``done`` ticked: the same input, the same bytes.

    PrintError, in one sentence, for a paper that is none of A4 and Letter.
    """
    setter = Setter(PAPERS[checked_paper(paper, "The sewing order")], squares_due=False)
    for block in _blocks(steps, done, words, setter.width):
        setter.add(block, 0.0)
    _number(setter.pages, words)
    return pdf_of(setter.pages, TITLE_OF_ORDER)


def _blocks(steps: Sequence[Step], done: Collection[str], words: Heading, width: float) -> Iterator[Block]:
    hours = sum(step.minutes for step in steps) / 60
    note = f"{len(steps)} steps, about {hours:.0f} hours"
    lead = "Times are common practice, no source: every hand has its own."
    yield sheet_head(TITLE_OF_ORDER, note, words, width, lead)
    if words.invented:
        yield paragraph(INVENTED, width, SMALL, bold=True)
    for stage, run in chapters(tuple(steps)):
        minutes = sum(step.minutes for step in run)
        first, *rest = (_step(step, step.key in done, words, width) for step in run)
        # a heading is never left alone at the foot of a page
        yield stack([space(2.6), heading(stage, width, time_words(minutes)), space(0.8), first])
        yield from rest


def _step(step: Step, ticked: bool, words: Heading, width: float) -> Block:
    inner = width - _INDENT
    said = [say.text(words.unit, words.fraction) for say in step.says]
    said += [f"Watch: {say.text(words.unit, words.fraction)}" for say in step.watch]
    lines = [paragraph(clean(step.title), inner, SIZE, bold=True)]
    lines += [paragraph(clean(text), inner, SIZE) for text in said]
    inside = stack([*lines, space(1.8)])

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.rectangle(left, top - _BOX - 0.2, _BOX, _BOX, _LINE)
        if ticked:
            low = top - _BOX - 0.2
            pen.line(left + 0.7, low + 1.7, left + 1.4, low + 0.8, _TICK)
            pen.line(left + 1.4, low + 0.8, left + 2.9, low + 2.9, _TICK)
        inside.paint(pen, left + _INDENT, top)

    return Block(max(inside.height, SIZE * LEADING), paint)


def _number(pages: Sequence[Page], words: Heading) -> None:
    for number, page in enumerate(pages, 1):
        page.put(SIDE, FOOT + 4.0, _foot(f"page {number} of {len(pages)}", words, page.width - 2 * SIDE))


def _foot(page: str, words: Heading, width: float) -> Block:
    name = " · ".join(part for part in (TITLE_OF_ORDER, clean(words.client)) if part)

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.text(left, top - 3.0, name, SMALL, colour=SOFT)
        pen.text(left + width, top - 3.0, page, SMALL, colour=SOFT, align="right")

    return Block(4.0, paint)

"""The bead plan as one PDF: lists in front, then the panels with their beads at true size."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO

from workbench.beads import Band, Beading
from workbench.draft import Outcome
from workbench.sheets.bead_lists import TITLE, list_blocks
from workbench.sheets.bead_panels import beaded_panels
from workbench.sheets.block import SMALL, Block
from workbench.sheets.fonts import clean
from workbench.sheets.heading import Heading
from workbench.sheets.page_file import blank_canvas, paint_page, set_size
from workbench.sheets.paper import PrintChoice
from workbench.sheets.pen import SOFT, Pen
from workbench.sheets.setter import FOOT, SIDE, Page, Setter, front_size
from workbench.sheets.sheetmap import sheet_map
from workbench.sheets.squares_page import squares_page
from workbench.sheets.tile_page import SheetWords, draw_sheet


def print_beads(
    outcome: Outcome,
    beading: Beading,
    bands: tuple[Band, ...],
    heading: Heading,
    choice: PrintChoice,
) -> bytes:
    """A PDF of the counted lists and, true to size, of the panels with every bead of the half.

    The same input gives the same bytes. PrintError, in one sentence, where there is no draft or
    the paper cannot be used.
    """
    sheets = sheet_map(outcome, choice)
    setter = Setter(front_size(choice, heading), squares_due=False)
    for block in list_blocks(beading, heading, setter.width):
        setter.add(block, 0.8)
    own_page = sheets.squares is None
    before = len(setter.pages) + own_page
    pages = before + len(sheets.tiles)
    _number(setter.pages, pages, heading)
    buffer = BytesIO()
    canvas = blank_canvas(buffer, TITLE)
    for page in setter.pages:
        paint_page(canvas, page)
    if own_page:
        set_size(canvas, sheets.paper.width, sheets.paper.height)
        squares_page(Pen(canvas), sheets.paper, before, pages)
        canvas.showPage()
    panels = beaded_panels(outcome, sheets, beading, bands)
    words = SheetWords(clean(heading.client), heading.invented, pages, before + 1)
    for tile in sheets.tiles:
        set_size(canvas, sheets.paper.width, sheets.paper.height)
        draw_sheet(Pen(canvas), tile, sheets, panels, words)
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def _number(pages: Sequence[Page], total: int, words: Heading) -> None:
    for number, page in enumerate(pages, 1):
        page.put(SIDE, FOOT + 4.0, _foot(f"page {number} of {total}", words, page.width - 2 * SIDE))


def _foot(page: str, words: Heading, width: float) -> Block:
    name = " · ".join(part for part in (TITLE, clean(words.client)) if part)

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.text(left, top - 3.0, name, SMALL, colour=SOFT)
        pen.text(left + width, top - 3.0, page, SMALL, colour=SOFT, align="right")

    return Block(4.0, paint)

"""The test squares where the first sheet has no room for them: beside the map, or on their own page."""

from __future__ import annotations

from workbench.sheets.block import Block, heading
from workbench.sheets.paper import PaperSize
from workbench.sheets.pen import SOFT, Pen
from workbench.sheets.spot import Box
from workbench.sheets.squares import SIZES, SQUARE_INCHES, draw_squares

_TITLE = "Measure this page first"
_TITLE_ROOM = 6.2


def squares_block() -> Block:
    """Both squares one above the other, with their title."""
    width, height = SIZES[1]

    def paint(pen: Pen, left: float, top: float) -> None:
        _paint(pen, left, top, width, height)

    return Block(_TITLE_ROOM + height, paint)


def squares_page(pen: Pen, paper: PaperSize, page: int, pages: int) -> None:
    """A page of the same paper as the sheets, to be printed and measured before them."""
    margin = max(min(paper.margin, 0.5 * (paper.width - SQUARE_INCHES)), 0.0)
    width, height = next((size for size in SIZES if size[0] <= paper.width - 2 * margin), SIZES[1])
    left, top = 0.5 * (paper.width - width), paper.height - margin - 6.0
    _paint(pen, left, top, width, height)
    pen.text(left, top - _TITLE_ROOM - height - 6.0, f"page {page} of {pages}", 2.5, colour=SOFT)


def _paint(pen: Pen, left: float, top: float, width: float, height: float) -> None:
    heading(_TITLE, width).paint(pen, left, top)
    head = top - _TITLE_ROOM
    draw_squares(pen, Box(left, head - height, left + width, head))

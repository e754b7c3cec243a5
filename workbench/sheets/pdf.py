"""The whole print as one PDF: first page, test squares, then the sheets in order."""

from __future__ import annotations

from io import BytesIO
from typing import Any

import numpy as np

from workbench.draft import Comfort, Outcome
from workbench.pieces import Cutting
from workbench.sheets.chosen import group_of, marked_pieces
from workbench.sheets.cutting_pages import cutting_pages
from workbench.sheets.drawing import Array
from workbench.sheets.first_page import front_pages, squares_in_front
from workbench.sheets.fonts import clean
from workbench.sheets.heading import Heading
from workbench.sheets.page_file import blank_canvas, paint_page, set_size
from workbench.sheets.panel import panel_drawing
from workbench.sheets.paper import PaperSize, PrintChoice
from workbench.sheets.pen import Pen
from workbench.sheets.piece import piece_drawing, sewn_to
from workbench.sheets.piece_words import PieceWords
from workbench.sheets.setter import set_footers
from workbench.sheets.shape import shape_of
from workbench.sheets.sheetmap import PlacedPanel, SheetMap, sheet_map
from workbench.sheets.spot import Box
from workbench.sheets.squares_page import squares_page
from workbench.sheets.tile_page import InkedPanel, SheetWords, draw_sheet, inked, mark_rooms

TITLE = "Bodice panels"


def print_pdf(
    outcome: Outcome,
    comfort: Comfort,
    heading: Heading,
    choice: PrintChoice,
    cutting: Cutting | None = None,
) -> bytes:
    """The PDF of one print, true to size: the same input gives the same bytes.

    With a ``cutting`` its pieces are printed, with the sheets for the cutting table in
    front of them; without one the panels of the draft.

    PrintError, in one sentence, where there is no draft or the paper cannot be used.
    """
    sheets = sheet_map(outcome, choice, cutting)
    more = cutting.findings if cutting else ()
    front = front_pages(outcome, comfort, heading, choice, sheets, more)
    if cutting and choice.cutting_pages:
        front += cutting_pages(cutting, outcome, heading, choice)
    own_page = sheets.squares is None and not squares_in_front(choice, sheets)
    before = len(front) + own_page
    words = SheetWords(clean(heading.client), heading.invented, before + len(sheets.tiles), before + 1)
    set_footers(front, words.pages, heading)
    buffer = BytesIO()
    canvas = blank_canvas(buffer, TITLE)
    for page in front:
        paint_page(canvas, page)
    if own_page:
        set_size(canvas, sheets.paper.width, sheets.paper.height)
        squares_page(Pen(canvas), sheets.paper, before, words.pages)
        canvas.showPage()
    if cutting:
        things = _pieces(cutting, outcome, sheets, heading, choice)
    else:
        things = _panels(outcome, sheets, heading)
    _draw_sheets(canvas, sheets, things, words)
    canvas.save()
    return buffer.getvalue()


def _draw_sheets(canvas: Any, sheets: SheetMap, panels: tuple[InkedPanel, ...], words: SheetWords) -> None:
    paper: PaperSize = sheets.paper
    for tile in sheets.tiles:
        set_size(canvas, paper.width, paper.height)
        draw_sheet(Pen(canvas), tile, sheets, panels, words)
        canvas.showPage()


def level_joins(sheets: SheetMap) -> tuple[float, ...]:
    """Heights on the plane at which sheets join one above the other, mm."""
    return tuple(sorted({join.start[1] for join in sheets.joins if not join.upright}))


def _pieces(
    cutting: Cutting, outcome: Outcome, sheets: SheetMap, heading: Heading, choice: PrintChoice
) -> tuple[InkedPanel, ...]:
    """The pieces of the chosen layers, ready for any sheet."""
    things = []
    for (layer, piece), placed in zip(marked_pieces(cutting, choice, heading), sheets.panels, strict=True):
        words = PieceWords(
            layer=layer.label,
            captions=_captions(heading),
            edges=sewn_to(piece, layer, outcome.design),
            joins=_joins(sheets, placed),
            rings=_rings(sheets, placed),
            marks=choice.marks,
            with_cut=choice.with_allowance,
        )
        drawing, polygon = piece_drawing(piece, words), shape_of(placed.outline)
        group = group_of(layer, piece, choice)
        things.append(inked(drawing, piece.name, placed.dx, placed.dy, polygon, group))
    return tuple(things)


def _joins(sheets: SheetMap, placed: PlacedPanel) -> tuple[Array, ...]:
    """Where sheets join, in a piece's own coordinates."""
    move = np.array([placed.dx, placed.dy])
    return tuple(np.array([join.start, join.end]) - move for join in sheets.joins)


def _rings(sheets: SheetMap, placed: PlacedPanel) -> tuple[Box, ...]:
    """Where those joins carry their numbers and words."""
    dx, dy = placed.dx, placed.dy
    rooms = (room for join in sheets.joins for room in mark_rooms(join))
    return tuple(Box(r.left - dx, r.bottom - dy, r.right - dx, r.top - dy) for r in rooms)


def _captions(heading: Heading) -> tuple[str, ...]:
    return tuple(text for text in (clean(heading.client), clean(heading.date)) if text)


def _panels(outcome: Outcome, sheets: SheetMap, heading: Heading) -> tuple[InkedPanel, ...]:
    """The panels of a draft, ready for any sheet."""
    assert outcome.draft is not None, "sheet_map refuses an outcome without a draft"
    panels = []
    for panel, placed in zip(outcome.draft.panels, sheets.panels, strict=True):
        joins = tuple(height - placed.dy for height in level_joins(sheets))
        drawing = panel_drawing(panel, outcome, _captions(heading), joins)
        polygon = shape_of(placed.outline)
        panels.append(inked(drawing, panel.name, placed.dx, placed.dy, polygon))
    return tuple(panels)

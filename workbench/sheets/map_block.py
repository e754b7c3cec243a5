"""The sheet map as it is printed on the first page: the joined sheets, drawn to scale."""

from __future__ import annotations

from workbench.sheets.block import BODY, HEADING, SMALL, Block, beside, heading, paragraph, stack
from workbench.sheets.drawing import Array
from workbench.sheets.fonts import text_width
from workbench.sheets.paper import MM_PER_INCH, ROLL
from workbench.sheets.pen import FAINT, HAIR, INK, SOFT, LineStyle, Pen
from workbench.sheets.sheetmap import SheetMap, Tile

_SHEET_LINE = LineStyle(0.18, SOFT)
_BLANK_LINE = LineStyle(0.12, HAIR, (0.8, 0.8))
_SQUARES_LINE = LineStyle(0.12, SOFT)
_PANEL_LINE = LineStyle(0.18, INK)
_TITLE = "Sheet map"
_AIR, _GUTTER = 2.4, 4.0
_WORDS_SHARE = 0.45
"""Least part of the width for words that stand beside the map."""
_SMALLEST_SHEET = 5.4
"""Shorter side of a sheet on the map, mm: smaller, and its name no longer fits."""
_JOINING = (
    "Cut along “cut here” and lay the sheet on its neighbour up to the dashed line: "
    "the rings of one number close.",
)
_SQUARES, _SQUARES_SIZE = "test squares", 1.7
_EVERY = 5
"""Of a panel's points; the map is about a fifteenth of life size."""


def map_block(sheets: SheetMap, width: float, tallest: float) -> Block | None:
    """The map with the words that say how to join the sheets; None where it would be too small to read."""
    scale, block = _larger(sheets, width, tallest)
    box = sheets.tiles[0].box
    return None if scale * min(box.width, box.height) < _SMALLEST_SHEET else block


def map_block_of_any_size(sheets: SheetMap, width: float, tallest: float) -> Block:
    """The same however small: the map of hundreds of sheets."""
    return _larger(sheets, width, tallest)[1]


def _larger(sheets: SheetMap, width: float, tallest: float) -> tuple[float, Block]:
    """The scale and the map with its words below it or beside it, whichever leaves it the more room."""
    below, at_side = _words_below(sheets, width, tallest), _words_beside(sheets, width, tallest)
    return below if below[0] >= at_side[0] else at_side


def _words_below(sheets: SheetMap, width: float, tallest: float) -> tuple[float, Block]:
    words = [paragraph(text, width, SMALL + 0.1) for text in _words(sheets)]
    scale = _scale(sheets, width, tallest - sum(block.height for block in words))
    return scale, stack([heading(_TITLE, width), _drawing(sheets, scale), *words])


def _words_beside(sheets: SheetMap, width: float, tallest: float) -> tuple[float, Block]:
    map_width = (1 - _WORDS_SHARE) * width
    scale = _scale(sheets, map_width - _GUTTER, tallest)
    start = _reach(sheets)[0] * scale + _GUTTER
    words = stack([paragraph(text, width - start, SMALL + 0.1) for text in _words(sheets)], 1.0)
    return scale, stack([heading(_TITLE, width), beside([(0.0, _drawing(sheets, scale)), (start, words)])])


def _scale(sheets: SheetMap, width: float, tallest: float) -> float:
    across, down = _reach(sheets)
    return min(width / across, (tallest - HEADING - _AIR) / down)


def _reach(sheets: SheetMap) -> tuple[float, float]:
    """Width and height of all sheets joined, mm."""
    down = -min(tile.box.bottom for tile in (*sheets.tiles, *sheets.blanks))
    return max(tile.box.right for tile in (*sheets.tiles, *sheets.blanks)), down


def _drawing(sheets: SheetMap, scale: float) -> Block:
    def paint(pen: Pen, left: float, top: float) -> None:
        _paint_map(pen, sheets, left, top - 0.6, scale)

    return Block(_reach(sheets)[1] * scale + _AIR, paint)


def _words(sheets: SheetMap) -> list[str]:
    paper, count = sheets.paper, len(sheets.tiles)
    if paper.name == ROLL:
        return [f"One sheet, {_both(paper.width)} wide and {_both(paper.height)} long. Print at 100 %."]
    way = "upright" if paper.height >= paper.width else "lying on their side"
    skipped = f"; {len(sheets.blanks)} blank left out" if sheets.blanks else ""
    if count == 1:
        return [f"One sheet of {paper.name}, {way.removeprefix('lying on their ')}{skipped}. Print at 100 %."]
    return [
        f"{count} sheets of {paper.name}, {way}{skipped}. Rows are letters, columns figures.",
        *_JOINING[: 1 if sheets.joins else 0],
    ]


def _both(mm: float) -> str:
    return f"{mm / 10:.1f} cm ({mm / MM_PER_INCH:.1f} in)"


def _paint_map(pen: Pen, sheets: SheetMap, left: float, top: float, scale: float) -> None:
    for tile in sheets.blanks:
        _paint_sheet(pen, tile, sheets, left, top, scale, _BLANK_LINE)
    for panel in sheets.panels:
        pen.polygon(_scaled(panel.outline[::_EVERY], left, top, scale), _PANEL_LINE, FAINT)
    for tile in sheets.tiles:
        _paint_sheet(pen, tile, sheets, left, top, scale, _SHEET_LINE)
    if sheets.squares:
        spot = sheets.squares
        corner = (left + scale * spot.left, top + scale * spot.bottom)
        pen.rectangle(*corner, scale * spot.width, scale * spot.height, _SQUARES_LINE)
        if text_width(_SQUARES, _SQUARES_SIZE) < scale * spot.width - 1.0:
            pen.text(corner[0] + 0.6, corner[1] + 0.8, _SQUARES, _SQUARES_SIZE, colour=SOFT)


def _scaled(points: Array, left: float, top: float, scale: float) -> list[tuple[float, float]]:
    return [(left + scale * x, top + scale * y) for x, y in points.tolist()]


def _paint_sheet(
    pen: Pen, tile: Tile, sheets: SheetMap, left: float, top: float, scale: float, line: LineStyle
) -> None:
    """A sheet up to its joins, so that neighbours share a line, with its name in the corner."""
    box, paper = tile.box, sheets.paper
    right = box.right if tile.column == sheets.columns - 1 else box.left + paper.pitch[0]
    bottom = box.bottom if tile.row == sheets.rows - 1 else box.top - paper.pitch[1]
    x, y = left + scale * box.left, top + scale * bottom
    pen.rectangle(x, y, scale * (right - box.left), scale * (box.top - bottom), line)
    if tile.number and len(sheets.tiles) > 1:
        size = min(BODY, 0.28 * scale * paper.pitch[0])
        corner = x + scale * (right - box.left) - 0.8
        pen.text(corner, top + scale * box.top - 0.6 - 0.78 * size, tile.name, size, bold=True, align="right")

"""The sheet map as it is printed on the first page: the joined sheets, drawn to scale."""

from __future__ import annotations

from workbench.sheets.block import BODY, SMALL, Block, heading, paragraph, stack
from workbench.sheets.drawing import Array
from workbench.sheets.paper import MM_PER_INCH, ROLL, said
from workbench.sheets.pen import FAINT, HAIR, INK, SOFT, LineStyle, Pen
from workbench.sheets.sheetmap import SheetMap, Tile

_SHEET_LINE = LineStyle(0.18, SOFT)
_BLANK_LINE = LineStyle(0.12, HAIR, (0.8, 0.8))
_PANEL_LINE = LineStyle(0.18, INK)
_EVERY = 5
"""Of a panel's points; the map is about a fifteenth of life size."""


def map_block(sheets: SheetMap, width: float, tallest: float) -> Block:
    """The map with the words that say how to join the sheets."""
    across = sheets.columns * sheets.paper.pitch[0] + sheets.paper.overlap
    down = -min(tile.box.bottom for tile in (*sheets.tiles, *sheets.blanks))
    words = [paragraph(text, width, SMALL + 0.1, colour=INK) for text in _words(sheets)]
    room = tallest - 6.2 - sum(block.height for block in words) - 3.0
    scale = min(width / across, max(room, 20.0) / down)

    def paint(pen: Pen, left: float, top: float) -> None:
        _paint_map(pen, sheets, left, top - 0.6, scale)

    drawing = Block(down * scale + 2.4, paint)
    return stack([heading("Sheet map", width), drawing, *words])


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
        "Cut along “cut here”, lay the sheet on its neighbour up to the dashed line: rings with the same number close.",
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
        pen.text(x + 0.7, top + scale * box.top - 0.5 - 0.78 * size, tile.name, size, bold=True)


def said_paper(sheets: SheetMap) -> str:
    """The size of one sheet in words."""
    return f"{said(sheets.paper.width)} × {said(sheets.paper.height)}"

"""One sheet of the print: its part of the panels, where to cut it, and how it joins its neighbours."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

from workbench.sheets.drawing import Align, Drawing, Label, Role
from workbench.sheets.fonts import fitted, text_width
from workbench.sheets.pen import HAIR, INK, SOFT, WHITE, LineStyle, Pen, path_code
from workbench.sheets.sheetmap import Join, SheetMap, Tile
from workbench.sheets.spot import Box, free_spot
from workbench.sheets.squares import draw_squares

_STYLES: dict[Role, LineStyle] = {
    "stitch": LineStyle(0.35, INK, (3.0, 1.5)),
    "cut": LineStyle(0.30, INK),
    "level": LineStyle(0.15, SOFT),
    "waist": LineStyle(0.35, INK, (9.0, 1.5, 1.5, 1.5)),
    "grain": LineStyle(0.22, INK),
    "notch": LineStyle(0.40, INK),
    "bone": LineStyle(0.18, SOFT, (5.0, 1.0, 0.6, 1.0)),
    "tape": LineStyle(0.18, SOFT, (1.2, 1.2)),
    "mark": LineStyle(0.25, SOFT),
    "fold": LineStyle(0.55, INK, (7.0, 1.6, 1.6, 1.6)),
}
_CUT_HERE = LineStyle(0.15, SOFT)
_LAY_HERE = LineStyle(0.15, SOFT, (1.5, 1.5))
_CORNER = LineStyle(0.40, INK)
_CORNER_ARM = 7.0
_EDGE = 0.25
"""Half a line's width and a little: lines on the very edge of what is printed stay whole."""
_MARK = LineStyle(0.25, INK)
_MARK_RADIUS = 3.2
_NAME, _NUMBER, _TINY = 8.4, 4.0, 2.3
_CAPTION_SIZES = ((66.0, 19.5), (46.0, 19.5))


@dataclass(frozen=True)
class InkedPanel:
    """A panel ready to be drawn on any sheet: its orders written once, its labels, where it lies."""

    name: str
    dx: float
    dy: float
    polygon: shapely.Polygon
    orders: tuple[tuple[LineStyle, str], ...]
    labels: tuple[Label, ...]
    group: str = ""
    """The layer it belongs to, where several are printed."""


def inked(
    drawing: Drawing, name: str, dx: float, dy: float, outline: shapely.Polygon, group: str = ""
) -> InkedPanel:
    """The panel's strokes as drawing orders; a stitch line without a cut line round it is drawn unbroken."""
    alone = not any(stroke.role == "cut" for stroke in drawing.strokes)
    orders = []
    for stroke in drawing.strokes:
        style = _STYLES[stroke.role]
        if alone and stroke.role == "stitch":
            style = LineStyle(style.width, style.colour)
        orders.append((style, path_code(stroke.points, stroke.closed)))
    return InkedPanel(name, dx, dy, outline, tuple(orders), drawing.labels, group)


@dataclass(frozen=True)
class SheetWords:
    """What every sheet says besides its own name."""

    client: str
    invented: bool
    pages: int
    first_page: int
    """Page of the file on which the first sheet stands, from 1."""


def draw_sheet(
    pen: Pen, tile: Tile, sheets: SheetMap, panels: tuple[InkedPanel, ...], words: SheetWords
) -> None:
    """Draw one sheet, clipped to what the printer can print."""
    margin, box = sheets.paper.margin, tile.box
    page = (margin, margin, margin + box.width, margin + box.height)
    tx, ty = margin - box.left, margin - box.bottom
    here = [panel for panel in panels if _lies_on(panel, box)]
    with pen.moved(tx, ty, page):
        _draw_caption(pen, tile, sheets, here, words)
    for panel in here:
        with pen.moved(tx + panel.dx, ty + panel.dy, page):
            _draw_panel(pen, panel, box)
    with pen.moved(tx, ty, (page[0] - _EDGE, page[1] - _EDGE, page[2] + _EDGE, page[3] + _EDGE)):
        _draw_edges(pen, tile, sheets)
    if tile.number == 1 and sheets.squares:
        with pen.moved(tx, ty):
            draw_squares(pen, sheets.squares)


def _lies_on(panel: InkedPanel, box: Box) -> bool:
    left, bottom, right, top = panel.polygon.bounds
    return box.meets(Box(left - 0.5, bottom - 0.5, right + 0.5, top + 0.5))


def _draw_panel(pen: Pen, panel: InkedPanel, box: Box) -> None:
    for style, code in panel.orders:
        pen.style(style)
        pen.code(code)
    for label in panel.labels:
        if _may_show(label, panel, box):
            pen.label(label, bold=label.role == "title")


def _may_show(label: Label, panel: InkedPanel, box: Box) -> bool:
    """Whether any of a label can lie on this sheet; generous, since what sticks out is clipped."""
    reach = label.size * (1 + len(label.text))
    x, y = label.x + panel.dx, label.y + panel.dy
    return box.left - reach < x < box.right + reach and box.bottom - reach < y < box.top + reach


def _draw_edges(pen: Pen, tile: Tile, sheets: SheetMap) -> None:
    """Cut lines, the lines to lay a neighbour on, cut corners and numbered marks."""
    edge = _true_edge(tile, sheets)
    for join in sheets.joins_of(tile):
        _draw_join(pen, join, tile)
    for x, inward in ((edge.left, 1.0), (edge.right, -1.0)):
        for y, up in ((edge.bottom, 1.0), (edge.top, -1.0)):
            pen.line(x, y, x + inward * _CORNER_ARM, y, _CORNER)
            pen.line(x, y, x, y + up * _CORNER_ARM, _CORNER)


def _true_edge(tile: Tile, sheets: SheetMap) -> Box:
    """What this sheet shows of the joined whole: up to the join wherever it has a neighbour."""
    box = tile.box
    right, bottom = box.right, box.bottom
    for join in sheets.joins_of(tile):
        if join.first == tile.name and join.upright:
            right = join.start[0]
        elif join.first == tile.name:
            bottom = join.start[1]
    return Box(box.left, bottom, right, box.top)


def _draw_join(pen: Pen, join: Join, tile: Tile) -> None:
    """This sheet's side of a join, with its number and what to do there at both marks."""
    lays_over = tile.name == join.second
    pen.line(*join.start, *join.end, _CUT_HERE if lays_over else _LAY_HERE)
    words = _words_at(join)[lays_over]
    for x, y in join.marks():
        _draw_mark(pen, x, y, join.upright)
        _mark_words(pen, (x, y), join, 1.0 if lays_over else -1.0, words)


def _words_at(join: Join) -> tuple[str, str]:
    """What the lower sheet says at a join, and what the upper one says."""
    return f"lay {join.second} here", f"cut here, lay on {join.first}"


def mark_rooms(join: Join) -> Iterator[Box]:
    """What a join's rings take with their numbers and words, on both sheets together."""
    before, after = (text_width(words, _TINY) for words in _words_at(join))
    for x, y in join.marks():
        if join.upright:
            start = _MARK_RADIUS + 2.6
            yield Box(x - start - before, y - 4.0, x + start + after, y + 4.5)
        else:
            number = text_width(str(join.number), _NUMBER, bold=True)
            reach = _MARK_RADIUS + 2.2 + number + max(before, after)
            yield Box(x - _MARK_RADIUS, y - 5.5, x + reach, y + 5.5)


def _draw_mark(pen: Pen, x: float, y: float, upright: bool) -> None:
    """A ring across the join, half on either sheet, with a tick that must run straight through."""
    pen.circle(x, y, _MARK_RADIUS, _MARK)
    reach = _MARK_RADIUS + 1.8
    if upright:
        pen.line(x - reach, y, x + reach, y, _MARK)
    else:
        pen.line(x, y - reach, x, y + reach, _MARK)


def _mark_words(pen: Pen, at: tuple[float, float], join: Join, side: float, words: str) -> None:
    """The join's number and what to do, on this sheet's own side: 1 is right of the line or below it."""
    x, y = at
    number = str(join.number)
    if join.upright:
        x += side * (_MARK_RADIUS + 2.6)
        align: Align = "left" if side > 0 else "right"
        pen.text(x, y + 0.7, number, _NUMBER, bold=True, align=align)
        pen.text(x, y - 3.0, words, _TINY, align=align)
        return
    x += _MARK_RADIUS + 1.2
    y -= side * 1.5 + (0.72 * _NUMBER if side > 0 else 0.0)
    pen.text(x, y, number, _NUMBER, bold=True)
    pen.text(x + text_width(number, _NUMBER, bold=True) + 1.0, y, words, _TINY)


def _draw_caption(pen: Pen, tile: Tile, sheets: SheetMap, here: list[InkedPanel], words: SheetWords) -> None:
    """The sheet's name and what lies on it, clear of the panels where there is room, else pale below them."""
    spot = _caption_spot(tile, sheets, here)
    lines = list(_caption_lines(tile, sheets, here, words))
    if spot is None:
        box = _true_edge(tile, sheets)
        spot = Box(box.left + 10.0, box.bottom + 9.0, box.left + 76.0, box.bottom + 25.5)
        colour, soft = HAIR, HAIR
    else:
        colour, soft = INK, SOFT
        pen.rectangle(spot.left, spot.bottom, spot.width, spot.height, fill=WHITE)
    pen.text(spot.left, spot.top - 6.2, tile.name, _NAME, bold=True, colour=colour)
    beside = spot.left + text_width(tile.name, _NAME, bold=True) + 2.0
    pen.text(beside, spot.top - 6.2, "print at 100 %", 2.8, bold=True, colour=colour)
    for number, line in enumerate(lines):
        y = spot.top - 9.4 - 3.15 * number
        pen.text(spot.left, y, fitted(line, 2.4, spot.width), 2.4, colour=soft)


def _caption_lines(tile: Tile, sheets: SheetMap, here: list[InkedPanel], words: SheetWords) -> Iterator[str]:
    page = words.first_page + tile.number - 1
    count = "the only sheet" if len(sheets.tiles) == 1 else f"{tile.name} of {len(sheets.tiles)} sheets"
    yield f"{count} · page {page} of {words.pages}"
    yield _names(here)
    if words.client:
        yield words.client
    if words.invented:
        yield "figures invented for demonstration"


def _names(here: list[InkedPanel]) -> str:
    """What lies on a sheet, layer by layer where there are several."""
    groups: dict[str, list[str]] = {}
    for panel in here:
        groups.setdefault(panel.group, []).append(panel.name)
    said = [f"{group}: {', '.join(names)}" if group else ", ".join(names) for group, names in groups.items()]
    return "; ".join(said)


def _corners(edge: Box) -> Iterator[Box]:
    """Where the cut corners are drawn."""
    arm = _CORNER_ARM
    for x in (edge.left, edge.right - arm):
        for y in (edge.bottom, edge.top - arm):
            yield Box(x, y, x + arm, y + arm)


def _caption_spot(tile: Tile, sheets: SheetMap, here: list[InkedPanel]) -> Box | None:
    taken = [Box(x - 14.0, y - 9.0, x + 14.0, y + 9.0) for j in sheets.joins_of(tile) for x, y in j.marks()]
    if tile.number == 1 and sheets.squares:
        taken.append(sheets.squares)
    edge = _true_edge(tile, sheets)
    taken += _corners(edge)
    window = shapely.box(edge.left, edge.bottom, edge.right, edge.top)
    panels: NDArray[np.object_] = shapely.intersection(np.array([p.polygon for p in here]), window)
    for width, height in _CAPTION_SIZES:
        spot = free_spot(width, height, edge, panels, tuple(taken), inset=3.0)
        if spot is not None:
            return spot
    return None

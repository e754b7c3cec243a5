"""The sheet map: which sheets are printed, what lies on each, and how they join."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
import shapely

from workbench.draft import Outcome
from workbench.pieces import Cutting
from workbench.sheets.arrange import SPACE, Arrangement, arrange
from workbench.sheets.chosen import chosen_pieces, piece_title
from workbench.sheets.coverage import Mask
from workbench.sheets.drawing import Array
from workbench.sheets.paper import LONGEST_SIDE, ROLL, PaperSize, PrintChoice, PrintError, paper_of, said
from workbench.sheets.shape import shape_of
from workbench.sheets.spot import Box, free_spot
from workbench.sheets.squares import SIZES, SQUARE_INCHES


@dataclass(frozen=True)
class Tile:
    """One sheet of the grid; its printable rectangle lies in the plane, whose upper left is (0, 0), y up."""

    name: str
    """Row letter and column number, such as ``B2``."""
    row: int
    column: int
    number: int
    """In the order they are printed, from 1; 0 for a sheet that stays blank and is not printed."""
    box: Box


@dataclass(frozen=True)
class PlacedPanel:
    """A panel or a piece on the plane, moved by (dx, dy) from its own coordinates."""

    panel: int
    """Its number in the print, from 0."""
    name: str
    dx: float
    dy: float
    cut: Array
    """(n, 2) cut line in its own coordinates; its stitch line where no allowance is printed."""

    @property
    def outline(self) -> Array:
        """(n, 2) cut line on the plane."""
        moved: Array = self.cut + np.array([self.dx, self.dy])
        return moved


@dataclass(frozen=True)
class Join:
    """Where two printed sheets share a panel: the second one's edge lies on this line of the first."""

    number: int
    first: str
    second: str
    """To the right of the first, or below it."""
    upright: bool
    start: tuple[float, float]
    end: tuple[float, float]

    def marks(self) -> tuple[tuple[float, float], ...]:
        """Points on the line, a quarter and three quarters along, where both sheets carry the number."""
        (x0, y0), (x1, y1) = self.start, self.end
        return tuple((x0 + part * (x1 - x0), y0 + part * (y1 - y0)) for part in (0.25, 0.75))


@dataclass(frozen=True)
class SheetMap:
    """Sheets, panels and joins of one print."""

    paper: PaperSize
    rows: int
    columns: int
    tiles: tuple[Tile, ...]
    """The printed ones, row by row."""
    blanks: tuple[Tile, ...]
    """Sheets of the grid that would carry nothing, so they are skipped."""
    panels: tuple[PlacedPanel, ...]
    joins: tuple[Join, ...]
    squares: Box | None
    """Room for the test squares on the first sheet; None where they need a page of their own."""

    def tile(self, name: str) -> Tile:
        """The printed sheet of that name; KeyError where it is blank or there is none."""
        for tile in self.tiles:
            if tile.name == name:
                return tile
        raise KeyError(name)

    def joins_of(self, tile: Tile) -> tuple[Join, ...]:
        """The joins this sheet takes part in."""
        return tuple(join for join in self.joins if tile.name in (join.first, join.second))


def sheet_map(outcome: Outcome, choice: PrintChoice, cutting: Cutting | None = None) -> SheetMap:
    """The panels, or the pieces of the chosen layers, laid over the fewest sheets of the chosen paper.

    PrintError, in one sentence, where there is no draft or the choice cannot be printed.
    """
    paper = paper_of(choice)
    if outcome.draft is None:
        raise PrintError("There are no panels to print yet: the draft is stopped by one of its findings.")
    names, lines = _panels(outcome) if cutting is None else _pieces(cutting, choice)
    if paper.name == ROLL:
        _check_roll(paper, names, lines)
    found = arrange(lines, paper)
    placed = tuple(
        PlacedPanel(number, name, float(dx), float(dy), line)
        for number, (name, (dx, dy), line) in enumerate(zip(names, found.moves, lines, strict=True))
    )
    return _roll_map(found, placed) if paper.name == ROLL else _map(found, placed)


Outlines = tuple[list[str], tuple[Array, ...]]


def _panels(outcome: Outcome) -> Outlines:
    """Names and stitch lines of the panels of a draft."""
    panels = outcome.draft.panels if outcome.draft else ()
    return [panel.name for panel in panels], tuple(panel.outline for panel in panels)


def _pieces(cutting: Cutting, choice: PrintChoice) -> Outlines:
    """Names and outlines of the pieces of the chosen layers."""
    chosen = chosen_pieces(cutting, choice)
    names = [piece_title(layer, piece, choice) for layer, piece in chosen]
    return names, tuple(piece.cut if choice.with_allowance else piece.stitch for _, piece in chosen)


def _check_roll(paper: PaperSize, names: list[str], lines: tuple[Array, ...]) -> None:
    for name, line in zip(names, lines, strict=True):
        width = float(np.ptp(line[:, 0]))
        if width > paper.print_width:
            raise PrintError(
                f"{name} is {said(width)} wide; a roll of {said(paper.width)} prints only "
                f"{said(paper.print_width)} between its margins."
            )
    if paper.print_width < SQUARE_INCHES:
        raise PrintError(
            f"A roll of {said(paper.width)} is too narrow for the 4 in square "
            "that shows whether a print is true to size."
        )


def _map(found: Arrangement, placed: tuple[PlacedPanel, ...]) -> SheetMap:
    rows, columns = found.needed.shape
    tiles = tuple(_tiles(found.paper, found.needed))
    printed = tuple(tile for tile in tiles if tile.number)
    blanks = tuple(tile for tile in tiles if not tile.number)
    joins = tuple(_numbered(_joins(found.paper, printed), placed))
    squares = _squares(printed[0].box, placed)
    return SheetMap(found.paper, rows, columns, printed, blanks, placed, joins, squares)


def _roll_map(found: Arrangement, placed: tuple[PlacedPanel, ...]) -> SheetMap:
    """One long sheet; the squares get a stretch of their own where there is no room beside the panels."""
    sheet = Box(0.0, -found.depth, found.paper.print_width, 0.0)
    spot = _squares(sheet, placed)
    if spot is None:
        width, height = next(size for size in SIZES if size[0] <= sheet.width)
        top = sheet.bottom - SPACE
        spot = Box(0.0, top - height, width, top)
        sheet = replace(sheet, bottom=spot.bottom)
    paper = replace(found.paper, height=sheet.height + 2 * found.paper.margin)
    if paper.height > LONGEST_SIDE:
        raise PrintError(
            f"The panels take {said(paper.height)} of this roll; "
            f"one page can be {said(LONGEST_SIDE)} long at most."
        )
    return SheetMap(paper, 1, 1, (Tile("A1", 0, 0, 1, sheet),), (), placed, (), spot)


def _squares(box: Box, placed: tuple[PlacedPanel, ...]) -> Box | None:
    panels = np.array([shape_of(panel.outline) for panel in placed])
    for width, height in SIZES:
        spot = free_spot(width, height, box, panels)
        if spot is not None:
            return spot
    return None


def _tiles(paper: PaperSize, needed: Mask) -> Iterator[Tile]:
    number = 0
    for row, column in np.ndindex(needed.shape):
        printed = bool(needed[row, column])
        number += printed
        left, top = column * paper.pitch[0], -row * paper.pitch[1]
        box = Box(left, top - paper.print_height, left + paper.print_width, top)
        yield Tile(f"{row_letters(row)}{column + 1}", row, column, number if printed else 0, box)


def row_letters(row: int) -> str:
    """``A`` for row 0, ``Z`` for 25, then ``AA``."""
    before, letter = divmod(row, 26)
    return (row_letters(before - 1) if before else "") + chr(ord("A") + letter)


def _numbered(joins: Iterator[Join], placed: tuple[PlacedPanel, ...]) -> Iterator[Join]:
    """The joins that a panel runs across, counted from 1; others need not be joined at all."""
    panels = shapely.union_all([shape_of(panel.outline) for panel in placed])
    number = 0
    for join in joins:
        if shapely.intersects(panels, shapely.LineString((join.start, join.end))):
            number += 1
            yield replace(join, number=number)


def _joins(paper: PaperSize, tiles: tuple[Tile, ...]) -> Iterator[Join]:
    """Sheet by sheet, first the join on its right, then the one below it; not numbered yet."""
    at = {(tile.row, tile.column): tile for tile in tiles}
    for tile in tiles:
        box, (across, down) = tile.box, paper.pitch
        beside, below = at.get((tile.row, tile.column + 1)), at.get((tile.row + 1, tile.column))
        if beside:
            x = box.left + across
            yield Join(0, tile.name, beside.name, True, (x, box.top), (x, box.top - down))
        if below:
            y = box.top - down
            yield Join(0, tile.name, below.name, False, (box.left, y), (box.left + across, y))

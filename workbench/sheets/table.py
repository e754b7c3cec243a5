"""Tables of figures: fractions and decimals stand under each other, hairlines between the rows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from workbench.sheets.block import BODY, SMALL, THIN, Block
from workbench.sheets.fonts import fitted, text_width
from workbench.sheets.marks import Mark, draw_mark
from workbench.sheets.pen import INK, SOFT, Colour, Pen

ROW, HEAD_ROW, GROUP_ROW = 3.85, 3.7, 3.5
_FRACTIONS = frozenset("½¼¾⅛⅜⅝⅞⅓⅔⁰¹²³⁴⁵⁶⁷⁸⁹.")


@dataclass(frozen=True)
class Column:
    """A column's width in mm, its name, and how its cells stand in it."""

    width: float
    name: str = ""
    kind: Literal["words", "figure", "end"] = "figure"
    """``figure`` lines up whole numbers and fractions; ``end`` is flush right."""


@dataclass(frozen=True)
class Cell:
    """One entry of a table."""

    text: str = ""
    bold: bool = False
    colour: Colour = INK
    mark: Mark | None = None
    wide: bool = False
    """Whether its words run on over the empty cells at its right."""


@dataclass(frozen=True)
class Group:
    """A name over several columns, from ``first`` to ``last``."""

    name: str
    first: int
    last: int


def table(columns: Sequence[Column], rows: Sequence[Sequence[Cell]], groups: Sequence[Group] = ()) -> Block:
    """A table with its columns' names, and where given names over groups of them."""
    top_rows = (GROUP_ROW if groups else 0.0) + HEAD_ROW
    width = sum(column.width for column in columns)
    starts = [sum(column.width for column in columns[:number]) for number in range(len(columns) + 1)]
    parts = [_widest_fraction(rows, number) for number in range(len(columns))]

    def paint(pen: Pen, left: float, top: float) -> None:
        y = top
        if groups:
            _paint_groups(pen, left, y, groups, starts)
            y -= GROUP_ROW
        for column, start in zip(columns, starts, strict=False):
            _paint_name(pen, left + start, y - 2.8, column)
        y -= HEAD_ROW
        for row in rows:
            pen.line(left, y, left + width, y, THIN)
            for column, start, part, cell in zip(columns, starts, parts, row, strict=False):
                _paint_cell(pen, left + start, y - 0.73 * ROW, column, cell, part)
            y -= ROW
        pen.line(left, y, left + width, y, THIN)

    return Block(top_rows + ROW * len(rows) + 0.5, paint)


def _paint_groups(pen: Pen, left: float, y: float, groups: Sequence[Group], starts: list[float]) -> None:
    for group in groups:
        start, end = left + starts[group.first] + 1.5, left + starts[group.last + 1]
        pen.text(0.5 * (start + end), y - 2.4, group.name, SMALL, bold=True, align="middle")
        pen.line(start, y - GROUP_ROW + 0.3, end, y - GROUP_ROW + 0.3, THIN)


def _paint_name(pen: Pen, x: float, y: float, column: Column) -> None:
    name = fitted(column.name, SMALL, column.width - 0.4)
    if column.kind == "words":
        pen.text(x, y, name, SMALL, colour=SOFT)
    else:
        pen.text(x + column.width, y, name, SMALL, colour=SOFT, align="right")


def _widest_fraction(rows: Sequence[Sequence[Cell]], number: int) -> float:
    """Room that a column keeps to the right of its whole parts, mm."""
    cells = [row[number] for row in rows if number < len(row)]
    return max((text_width(split_figure(cell.text)[1], BODY, cell.bold) for cell in cells), default=0.0)


def _paint_cell(pen: Pen, x: float, y: float, column: Column, cell: Cell, part: float) -> None:
    if cell.mark is not None:
        draw_mark(pen, x + 1.1, y + 0.95, cell.mark)
        x += 3.3
    if column.kind == "words":
        room = column.width - 0.6 - (3.3 if cell.mark else 0.0)
        text = cell.text if cell.wide else fitted(cell.text, BODY, room, cell.bold)
        pen.text(x, y, text, BODY, bold=cell.bold, colour=cell.colour)
    elif column.kind == "end":
        pen.text(x + column.width, y, cell.text, BODY, bold=cell.bold, colour=cell.colour, align="right")
    else:
        whole, _ = split_figure(cell.text)
        start = x + column.width - part - text_width(whole, BODY, cell.bold)
        pen.text(start, y, cell.text, BODY, bold=cell.bold, colour=cell.colour)


def split_figure(text: str) -> tuple[str, str]:
    """The whole part and the fraction of a figure; a lone fraction has no whole part."""
    for place, sign in enumerate(text):
        if sign in _FRACTIONS:
            return text[:place], text[place:]
    return text, ""

"""The measures of a lay sheet as a table: every piece in the order of laying."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil

from workbench.body import say_length
from workbench.sheets.block import BODY, SMALL, Block, beside, paragraph, space, stack
from workbench.sheets.fonts import text_width
from workbench.sheets.lay_cloth import LaidCloth
from workbench.sheets.lay_lying import AS_DRAWN, Lying
from workbench.sheets.pen import INK, SOFT
from workbench.sheets.table import HEAD_ROW, ROW, Cell, Column, split_figure, table

GUTTER = 7.0
_NUMBER, _AFTER = 5.4, 2.4
_LONGEST_NAME, _LONGEST_TURN = 46.0, 34.0
SECOND_CORNER = "its other corner"

Row = tuple[Cell, ...]


def rows_of(laid: LaidCloth) -> list[Row]:
    """A row for every corner that is measured."""
    several = any(lying.layer for lying in laid.lying)
    return [row for lying in laid.lying for row in _rows(laid, lying, several)]


def _rows(laid: LaidCloth, lying: Lying, several: bool) -> Iterator[Row]:
    for number, spot in enumerate(lying.spots):
        figures = [Cell(say_length(mm, laid.unit, laid.words.fraction)) for mm in (spot.along, spot.across)]
        if number:
            first = [Cell(), Cell(SECOND_CORNER, colour=SOFT), *([Cell()] if several else [])]
            yield (*first, *figures, Cell(), Cell())
        else:
            layer = [Cell(lying.layer, colour=SOFT)] if several else []
            turned = Cell(lying.turned, colour=SOFT if lying.turned == AS_DRAWN else INK)
            first = [Cell(str(lying.number), bold=True), Cell(lying.title), *layer]
            yield (*first, *figures, Cell(), turned)


def columns_of(laid: LaidCloth, rows: Sequence[Row]) -> tuple[Column, ...]:
    """Columns as wide as what stands in them."""
    several = any(lying.layer for lying in laid.lying)
    along, across = "from end", laid.across_from
    layer = [Column(_widest(rows, 2, 20.0), "layer", "words")] if several else []
    return (
        Column(_NUMBER, "", "words"),
        Column(_widest(rows, 1, _LONGEST_NAME), "piece", "words"),
        *layer,
        Column(_figures(rows, -4, along), along),
        Column(_figures(rows, -3, across), across),
        Column(_AFTER),
        Column(_widest(rows, len(rows[0]) - 1 if rows else 0, _LONGEST_TURN), "turned", "words"),
    )


def _widest(rows: Sequence[Row], number: int, most: float) -> float:
    widest = max((text_width(row[number].text, BODY, row[number].bold) for row in rows), default=0.0)
    return min(max(widest, 8.0) + 1.6, most)


def _figures(rows: Sequence[Row], number: int, name: str) -> float:
    """Width of a column of figures: whole ones and fractions stand in two columns of their own."""
    parts = [split_figure(row[number].text) for row in rows]
    widest = sum(max((text_width(part[side], BODY) for part in parts), default=0.0) for side in (0, 1))
    return max(widest, text_width(name, SMALL)) + 2.2


def table_width(laid: LaidCloth) -> float:
    """Width of one column of the table, mm."""
    return sum(column.width for column in columns_of(laid, rows_of(laid)))


def measured_to(laid: LaidCloth, width: float) -> Block:
    """What the figures are measured to, and what the words of the last column mean."""
    unit = {"in": "inches", "cm": "centimetres"}[laid.unit]
    words = f"In {unit}, to the dot: along from the cut end, across from the {laid.across_from} at the tape."
    if any("over" in lying.turned for lying in laid.lying):
        words += " Over: laid face down."
    if any("round" in lying.turned for lying in laid.lying):
        words += " Round: turned end for end, its head towards the cut end."
    return stack([paragraph(words, width, SMALL), space(0.8)])


def tables_below(laid: LaidCloth, rows: Sequence[Row], width: float) -> Block:
    """The rows in as many columns as the width has room for, read downwards."""
    each = ceil(len(rows) / columns_that_fit(laid, width))
    return stack([measured_to(laid, width), _side_by_side(laid, rows, each)])


def below_height(laid: LaidCloth, width: float) -> float:
    """Height of all rows set below the drawing, mm."""
    return tables_below(laid, rows_of(laid), width).height


def tables_beside(laid: LaidCloth, rows: Sequence[Row], tallest: float) -> Block:
    """The rows in as few columns as the height allows."""
    lead = measured_to(laid, table_width(laid))
    return stack([lead, _side_by_side(laid, rows, rows_that_fit(tallest - lead.height))])


def beside_width(laid: LaidCloth, tallest: float) -> float:
    """Width of all rows set beside the drawing, mm."""
    rows = rows_that_fit(tallest - measured_to(laid, table_width(laid)).height)
    return ceil(len(rows_of(laid)) / rows) * (table_width(laid) + GUTTER)


def columns_that_fit(laid: LaidCloth, width: float) -> int:
    """At least one."""
    return max(int((width + GUTTER) // (table_width(laid) + GUTTER)), 1)


def rows_that_fit(tallest: float) -> int:
    """At least one."""
    return max(int((tallest - HEAD_ROW - 1.0) // ROW), 1)


def _side_by_side(laid: LaidCloth, rows: Sequence[Row], each: int) -> Block:
    columns = columns_of(laid, rows_of(laid))
    step = sum(column.width for column in columns) + GUTTER
    parts = [rows[first : first + each] for first in range(0, len(rows), each)]
    return beside([(number * step, table(columns, part)) for number, part in enumerate(parts)])

"""Boxes to tick with a pencil."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.sheets.block import BODY, Block, beside, stack
from workbench.sheets.fonts import text_width, wrapped
from workbench.sheets.pen import INK, LineStyle, Pen

BOX = 3.2
_LINE = LineStyle(0.22, INK)
_AFTER, _APART = 1.4, 4.0
_ROW = 5.0


def draw_box(pen: Pen, left: float, bottom: float, size: float = BOX) -> None:
    """An empty box."""
    pen.rectangle(left, bottom, size, size, _LINE)


def boxed_width(text: str, size: float = BODY) -> float:
    """Width of a box with a text behind it, mm."""
    return BOX + (_AFTER + text_width(text, size) if text else 0.0)


def draw_boxed(pen: Pen, left: float, base: float, text: str, size: float = BODY) -> None:
    """A box that stands on the baseline, with a text behind it."""
    draw_box(pen, left, base - 0.12 * BOX, BOX)
    pen.text(left + BOX + _AFTER, base, text, size)


def ticked(texts: Sequence[str], width: float, columns: int = 2) -> Block:
    """Things to tick off in columns, read from left to right; long ones are wrapped."""
    column = (width - (columns - 1) * _APART) / columns
    items = [_item(text, column) for text in texts]
    rows = [items[first : first + columns] for first in range(0, len(items), columns)]
    return stack(
        [beside([(number * (column + _APART), item) for number, item in enumerate(row)]) for row in rows]
    )


def _item(text: str, width: float) -> Block:
    lines = wrapped(text, BODY, width - BOX - _AFTER)

    def paint(pen: Pen, left: float, top: float) -> None:
        base = top - 3.4
        draw_box(pen, left, base - 0.4)
        for number, line in enumerate(lines):
            pen.text(left + BOX + _AFTER, base - 3.6 * number, line, BODY)

    return Block(_ROW + 3.6 * (len(lines) - 1), paint)

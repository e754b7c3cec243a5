"""The shopping list: what is bought besides the cloth, with a box for each line."""

from __future__ import annotations

from math import ceil

from workbench.body import Unit, say_length
from workbench.pieces import Notion
from workbench.sheets.block import BODY, LEADING, SMALL, THIN, Block
from workbench.sheets.fonts import wrapped
from workbench.sheets.heading import Heading
from workbench.sheets.pen import SOFT, Pen
from workbench.sheets.sheet_head import said
from workbench.sheets.tick import BOX, draw_box

_NAME, _AMOUNT = 0.19, 0.20
"""Widths of the first columns, as parts of the whole."""
_YARD, _METRE = 914.4, 1000.0
"""International yard and pound agreement of 1959, from memory."""
_HOW = SMALL + 0.1
_PAD = 1.3
_SUM = "bones"
"""The line that adds up others: there is nothing to buy for it alone."""
_PIECEMEAL = ("bone", "zip", "busk")
"""Bought by the piece, however long they are together."""
_FINEST = {"in": 8, "cm": 10}
_SLACK = 1e-6
"""A length this little over a mark, in marks, is that mark."""


def notion_row(notion: Notion, words: Heading, width: float) -> Block:
    """One line: box, name, how much, and how that was worked out."""
    name, amount = _NAME * width, _AMOUNT * width
    start = BOX + 2.0
    how_left = start + name + amount
    names = wrapped(notion.name, BODY, name - 2.0, bold=True)
    amounts = amount_words(notion, words)
    how = wrapped(notion.worked_out(words.unit, words.fraction), _HOW, width - how_left)
    lines = max(len(names) * BODY, len(amounts) * BODY, len(how) * _HOW) * LEADING
    height = max(lines, BOX + 0.4) + 2 * _PAD

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.line(left, top, left + width, top, THIN)
        first = top - _PAD - 0.8 * BODY
        if notion.key != _SUM:
            draw_box(pen, left, top - _PAD - BOX + 0.1)
        for number, line in enumerate(names):
            pen.text(left + start, first - number * BODY * LEADING, line, BODY, bold=True)
        for number, line in enumerate(amounts):
            pen.text(left + start + name, first - number * BODY * LEADING, line, BODY, bold=number == 0)
        for number, line in enumerate(how):
            pen.text(left + how_left, first - number * _HOW * LEADING, line, _HOW, colour=SOFT)

    return Block(height, paint)


def amount_words(notion: Notion, words: Heading) -> list[str]:
    """How many, how long together, and what to ask for at the counter where that is long."""
    lines = []
    many = notion.count is not None and (notion.count != 1 or notion.length_mm is None)
    if many:
        lines.append(str(notion.count))
    if notion.length_mm is not None:
        together = " together" if many else ""
        lines.append(f"{said(notion.length_mm, words)}{together}")
        if not notion.key.startswith(_PIECEMEAL):
            lines += by_the_yard(notion.length_mm, words.unit)
    return lines


def by_the_yard(mm: float, unit: Unit) -> list[str]:
    """A long length as cloth and tape are sold, rounded up: to an eighth of a yard, or a tenth of a metre."""
    whole = _YARD if unit == "in" else _METRE
    if mm <= whole:
        return []
    parts = ceil(mm / whole * _FINEST[unit] - _SLACK)
    if unit == "in":
        return [f"buy {say_length(parts / 8 * 25.4, 'in')} yd"]
    return [f"buy {parts / 10:g} m"]

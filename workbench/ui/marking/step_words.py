"""The step on show in large type: its marks as a table, what to draw and to check as sentences."""

from __future__ import annotations

from html import escape

from workbench.marking import PieceGuide, Rounding, Step
from workbench.sheets import mark_rows, plain_lines


def step_html(step: Step, piece: PieceGuide, rounding: Rounding) -> str:
    """The step as rich text; every word of it escaped."""
    before, after = plain_lines(step)
    rows = [_cells(row.number, row.name, row.first, row.second) for row in mark_rows(step, piece, rounding)]
    table = f'<table cellspacing="0" cellpadding="3">{"".join(rows)}</table>' if rows else ""
    return "".join((*map(_sentence, before), table, *map(_sentence, after)))


def _sentence(line: str) -> str:
    return f'<p style="margin-top: 4px; margin-bottom: 4px;">{escape(line)}</p>'


def _cells(number: str, name: str, first: str, second: str) -> str:
    bold = f'<td align="right"><b>{escape(number)}</b></td>'
    rest = "".join(f'<td style="padding-left: 10px;">{escape(cell)}</td>' for cell in (name, first, second))
    return f"<tr>{bold}{rest}</tr>"

"""Pieces drawn small in rows, each row on one waist line, with their words and a box for every cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from workbench.pieces import Piece
from workbench.sheets.block import LARGE, SMALL, Block, stack
from workbench.sheets.fonts import fitted, wrapped
from workbench.sheets.pen import INK, SOFT, LineStyle, Pen
from workbench.sheets.small_piece import SCALES, Reach, Small, reach_of
from workbench.sheets.tick import boxed_width, draw_boxed

_NARROWEST = 21.0
"""A column holds at least the words under its piece, mm."""
_APART, _MOST_APART = 3.5, 40.0
_WAIST_ROOM = 9.0
_WAIST = LineStyle(0.16, INK, (3.0, 0.8, 0.6, 0.8))
_NAME_DROP, _WORD_ROW, _TICK_ROW = 3.6, 3.2, 4.6
_ROW_GAP = 4.0


def piece_rows(pieces: Sequence[Piece], width: float, tallest: float) -> tuple[Block, float]:
    """The pieces drawn small, and the scale they are drawn at."""
    scale, rows = _fitted(pieces, width, tallest)
    return stack([_row(row, scale, width) for row in rows], _ROW_GAP), scale


@dataclass(frozen=True)
class _Column:
    """One piece in a row: how wide its column is on paper, mm."""

    piece: Piece
    reach: Reach
    width: float


def _fitted(pieces: Sequence[Piece], width: float, tallest: float) -> tuple[float, list[list[_Column]]]:
    """The largest round scale at which all pieces fit, and the rows they then stand in."""
    for scale in SCALES:
        rows = _rows(pieces, scale, width)
        if rows and sum(_height(row, scale) + _ROW_GAP for row in rows) <= tallest:
            return scale, rows
    return SCALES[-1], rows or [[_column(piece, SCALES[-1])] for piece in pieces]


def _column(piece: Piece, scale: float) -> _Column:
    reach = reach_of(piece)
    return _Column(piece, reach, max(reach.width / scale, _NARROWEST))


def _rows(pieces: Sequence[Piece], scale: float, width: float) -> list[list[_Column]]:
    """Pieces in order, as many in a row as fit; nothing where one alone is too wide."""
    room = width - _WAIST_ROOM
    rows: list[list[_Column]] = [[]]
    for column in (_column(piece, scale) for piece in pieces):
        if column.width > room:
            return []
        if sum(other.width + _APART for other in rows[-1]) + column.width > room:
            rows.append([])
        rows[-1].append(column)
    return _evened(rows)


def _evened(rows: list[list[_Column]]) -> list[list[_Column]]:
    """The same pieces in as many rows, no row much longer than the others."""
    columns = [column for row in rows for column in row]
    each = -(-len(columns) // len(rows))
    longest = max(sum(column.width + _APART for column in row) for row in rows)
    evened = [columns[first : first + each] for first in range(0, len(columns), each)]
    wider = any(sum(column.width + _APART for column in row) > longest + 1e-6 for row in evened)
    return rows if wider or len(evened) > len(rows) else evened


def _top_bottom(row: Sequence[_Column], scale: float) -> tuple[float, float]:
    top = max(column.reach.top for column in row) / scale
    return top, min(column.reach.bottom for column in row) / scale


def _height(row: Sequence[_Column], scale: float) -> float:
    top, bottom = _top_bottom(row, scale)
    lines = max(len(_cut_lines(column)) for column in row)
    return top - bottom + _NAME_DROP + _WORD_ROW * lines + _TICK_ROW + 2.0


def _cut_lines(column: _Column) -> list[str]:
    parts = column.piece.cut_words.replace(" (", "\n(").split("\n")
    return [line for part in parts for line in wrapped(part, SMALL, column.width + _APART - 1.0)]


def _row(row: Sequence[_Column], scale: float, width: float) -> Block:
    """Pieces side by side on one waist line, each with its words and its boxes below it."""
    top, bottom = _top_bottom(row, scale)
    used = sum(column.width for column in row)
    spare = (width - _WAIST_ROOM - used) / len(row)
    apart = min(max(spare, _APART), _MOST_APART)
    foot = top - bottom

    def paint(pen: Pen, left: float, page_top: float) -> None:
        base = page_top - top
        if bottom < 0 < top:
            end = left + _WAIST_ROOM + used + apart * (len(row) - 1)
            pen.line(left + _WAIST_ROOM - 3.0, base, end, base, _WAIST)
            pen.text(left, base - 0.7, "waist", 2.0, colour=SOFT)
        x = left + _WAIST_ROOM
        for column in row:
            middle = x + 0.5 * column.width
            shift = 0.5 * (column.reach.left + column.reach.right) / scale
            Small(pen, middle - shift, base, scale).piece(column.piece)
            if bottom < 0 < top:
                _own_waist(pen, column, middle - shift, base, scale)
            _words(pen, column, middle, page_top - foot - 0.6)
            x += column.width + apart

    return Block(_height(row, scale), paint)


def _own_waist(pen: Pen, column: _Column, x: float, base: float, scale: float) -> None:
    small = Small(pen, x, base, scale)
    for mark in column.piece.marks:
        if mark.kind == "waist":
            small.line(mark.points, _WAIST)


def _words(pen: Pen, column: _Column, middle: float, top: float) -> None:
    """Name, how often it is cut, and a box for every cut."""
    piece = column.piece
    name = fitted(piece.name, LARGE - 0.4, column.width + _APART - 1.0, bold=True)
    pen.text(middle, top - _NAME_DROP, name, LARGE - 0.4, bold=True, align="middle")
    y = top - _NAME_DROP
    for line in _cut_lines(column):
        y -= _WORD_ROW
        pen.text(middle, y, line, SMALL, align="middle")
    boxes = list(_boxes(piece))
    apart = 2.0
    x = middle - 0.5 * (sum(boxed_width(text, SMALL) for text in boxes) + apart * (len(boxes) - 1))
    for text in boxes:
        draw_boxed(pen, x, y - _TICK_ROW, text, SMALL)
        x += boxed_width(text, SMALL) + apart


_MOST_BOXES = 4


def _boxes(piece: Piece) -> Iterator[str]:
    """A word for each box: left and right, or nothing."""
    if piece.mirrored and piece.count == 2:
        yield from ("left", "right")
    elif piece.count <= _MOST_BOXES:
        yield from [""] * piece.count
    else:
        yield f"all {piece.count}"

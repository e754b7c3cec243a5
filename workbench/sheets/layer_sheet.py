"""The cutting sheet of one layer: its pieces drawn small, how often each is cut, and what to tick off."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from workbench.pieces import Layer, Piece
from workbench.sheets.block import BODY, LARGE, SMALL, Block, beside, paragraph, space, stack
from workbench.sheets.fonts import fitted, text_width, wrapped
from workbench.sheets.heading import Heading
from workbench.sheets.pen import INK, SOFT, LineStyle, Pen
from workbench.sheets.sheet_head import said, sheet_head
from workbench.sheets.small_piece import SCALES, Reach, Small, reach_of
from workbench.sheets.tick import boxed_width, draw_boxed, ticked

NOTE = "cutting sheet"
KINDS = {
    "seam": "joining seams",
    "side": "side seam",
    "centre_front": "centre front",
    "centre_back": "centre back",
    "neckline": "neckline",
    "hem": "hem",
    "free": "other edges",
}
_NARROWEST = 21.0
"""A column holds at least the words under its piece, mm."""
_APART, _MOST_APART = 3.5, 40.0
_WAIST_ROOM = 9.0
_WAIST = LineStyle(0.16, INK, (3.0, 0.8, 0.6, 0.8))
_NAME_DROP, _WORD_ROW, _TICK_ROW = 3.6, 3.2, 4.6
_ROW_GAP = 4.0
_COUNT, _COUNTED = 11.0, 34.0


def layer_sheet(layer: Layer, words: Heading, width: float, tallest: float) -> Block:
    """All of a layer on a page of its own, its drawings at most ``tallest`` mm high together."""
    drawings, scale = _drawings(layer.pieces, width, tallest)
    blocks = [
        sheet_head(layer.label, NOTE, words, width, layer.purpose),
        space(2.0),
        beside([(0.0, _counted(layer)), (_COUNTED, _allowances(layer, words, width - _COUNTED))]),
        space(3.0),
        drawings,
        space(1.5),
        paragraph(_drawn_at(scale, layer), width, SMALL, colour=SOFT),
        space(2.5),
        ticked(list(_to_tick(layer)), width),
    ]
    return stack(blocks)


def small_layer_sheet(layer: Layer, words: Heading, width: float, tallest: float) -> Block:
    """The same in a part of a page: the drawings at the left, what is said of them at the right."""
    half = 0.5 * (width - 6.0)
    drawings, scale = _drawings(layer.pieces, half, tallest)
    at_right = [
        _counted(layer),
        space(1.0),
        _allowances(layer, words, half),
        space(2.0),
        paragraph(_drawn_at(scale, layer), half, SMALL, colour=SOFT),
        space(2.0),
        ticked(list(_to_tick(layer)), half, 1),
    ]
    both = beside([(0.0, drawings), (half + 6.0, stack(at_right))])
    return stack([sheet_head(layer.label, NOTE, words, width, layer.purpose), space(3.0), both, space(5.0)])


def _drawings(pieces: Sequence[Piece], width: float, tallest: float) -> tuple[Block, float]:
    """The pieces drawn small, and the scale they are drawn at."""
    scale, rows = _fitted(pieces, width, tallest)
    return stack([_row(row, scale, width) for row in rows], _ROW_GAP), scale


def is_small(layer: Layer) -> bool:
    """Whether a layer is so few pieces that it can share its page."""
    return len(layer.pieces) <= 2


def _counted(layer: Layer) -> Block:
    """The number of cuts, large."""
    total, shapes = sum(piece.count for piece in layer.pieces), len(layer.pieces)

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.text(left, top - 0.8 * _COUNT, str(total), _COUNT, bold=True)
        beside_it = left + text_width(str(total), _COUNT, bold=True) + 1.8
        pen.text(beside_it, top - 0.8 * _COUNT + 3.2, "to cut", BODY, bold=True)
        shape = "one shape" if shapes == 1 else f"{shapes} shapes"
        pen.text(beside_it, top - 0.8 * _COUNT, f"from {shape}", SMALL, colour=SOFT)

    return Block(0.9 * _COUNT, paint)


def _allowances(layer: Layer, words: Heading, width: float) -> Block:
    """The allowance of each kind of edge, in two columns."""
    entries = list(allowances_of(layer, words))
    column = 0.5 * (width - 6.0)
    name = max((text_width(kind, BODY) for kind, _ in entries), default=0.0) + 3.0
    per_column = -(-len(entries) // 2)

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.text(left, top - 2.6, "Seam allowance", SMALL, colour=SOFT)
        for number, (kind, figure) in enumerate(entries):
            x = left + (number // per_column) * (column + 6.0)
            y = top - 6.6 - 3.8 * (number % per_column)
            pen.text(x, y, kind, BODY)
            pen.text(x + name, y, fitted(figure, BODY, column - name, bold=True), BODY, bold=True)

    return Block(4.2 + 3.8 * max(per_column, 1), paint)


def allowances_of(layer: Layer, words: Heading) -> Iterator[tuple[str, str]]:
    """Each kind of edge that the layer has with its allowance, edges that differ named."""
    for kind, label in KINDS.items():
        found = [(piece.name, edge) for piece in layer.pieces for edge in piece.edges if edge.kind == kind]
        if not found:
            continue
        widths = [(name, _said_allowance(edge.allowance, words)) for name, edge in found]
        usual = Counter(own for _, own in widths).most_common(1)[0][0]
        others = [f"{own} at {name}" for name, own in widths if own != usual]
        yield label if _kinds(layer) != {"free"} else "all round", "; ".join(dict.fromkeys((usual, *others)))


def _kinds(layer: Layer) -> set[str]:
    return {edge.kind for piece in layer.pieces for edge in piece.edges}


def _said_allowance(mm: float, words: Heading) -> str:
    return said(mm, words) if mm > 0 else "none"


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


def _drawn_at(scale: float, layer: Layer) -> str:
    figure = f"{scale:g}"
    rim = any(edge.allowance > 0 for piece in layer.pieces for edge in piece.edges)
    fold = any(piece.on_fold for piece in layer.pieces)
    said_rim = " The tinted rim is allowance." if rim else " Cut on the stitch line."
    said_fold = " A heavy broken edge is laid on the fold." if fold else ""
    sides = any(piece.mirrored for piece in layer.pieces)
    said_sides = " Drawn right side up: the left of each pair." if sides else ""
    return f"Drawn 1 to {figure}.{said_rim}{said_fold}{said_sides}"


def _to_tick(layer: Layer) -> Iterator[str]:
    """What is looked at before the pieces leave the table."""
    pieces = layer.pieces
    kinds = {mark.kind for piece in pieces for mark in piece.marks}
    yield "Grain straight on every piece"
    if any(piece.on_fold for piece in pieces):
        names = ", ".join(piece.name for piece in pieces if piece.on_fold)
        yield f"{names} laid on the fold, not cut apart"
    counts = {notch.count for piece in pieces for notch in piece.notches}
    if counts:
        yield "Every notch marked" + (": single in front, double in back" if len(counts) > 1 else "")
    if "waist" in kinds:
        yield "Waist line marked"
    if "bone" in kinds or "tape" in kinds:
        yield f"{' and '.join(_marked(kinds))} marked"
    if any(piece.mirrored for piece in pieces):
        yield "Left and right laid face to face: they match"
    yield "Each piece labelled with its name" + (" and side" if any(p.mirrored for p in pieces) else "")


def _marked(kinds: Collection[str]) -> Iterator[str]:
    if "bone" in kinds:
        yield "Bone lines"
    if "tape" in kinds:
        yield "waist tape" if "bone" in kinds else "Waist tape"

"""The cutting sheet of one layer: its pieces drawn small, how often each is cut, and what to tick off."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator

from workbench.pieces import Layer
from workbench.sheets.block import BODY, SMALL, Block, beside, paragraph, space, stack
from workbench.sheets.fonts import fitted, text_width
from workbench.sheets.heading import Heading
from workbench.sheets.pen import SOFT, Pen
from workbench.sheets.piece_rows import piece_rows
from workbench.sheets.sheet_head import said, sheet_head
from workbench.sheets.tick import ticked

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
_COUNT, _COUNTED = 11.0, 34.0


def layer_sheet(layer: Layer, words: Heading, width: float, tallest: float) -> Block:
    """All of a layer on a page of its own, its drawings at most ``tallest`` mm high together."""
    drawings, scale = piece_rows(layer.pieces, width, tallest)
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
    drawings, scale = piece_rows(layer.pieces, half, tallest)
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

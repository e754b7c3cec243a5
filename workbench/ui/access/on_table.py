"""What lies on the cutting table: pieces, the allowances of their edges, and the bones drawn on them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

import numpy as np
from PySide6.QtCore import QRectF

from workbench.body import say_exact, say_with_unit
from workbench.draft import Place
from workbench.ui.access.item import Amount, Item, amount_of
from workbench.ui.board.view import View
from workbench.ui.pieces.allowance_figures import AllowanceFigure
from workbench.ui.pieces.edges import Edge, edge_words, place_of_edge
from workbench.ui.pieces.spoken import spoken_pick
from workbench.ui.pieces.spread import LaidPiece, Spread
from workbench.ui.pieces.table import Table

_WIDEST = 100.0
"""mm: the most that a screen reader may set an allowance to."""


def items_of(table: Table) -> tuple[Item, ...]:
    """The pieces, each with its edges and bones behind it."""
    spread = table.spread
    if spread is None:
        return ()
    return tuple(item for number in range(len(spread.pieces)) for item in _of_piece(table, spread, number))


def _of_piece(table: Table, spread: Spread, number: int) -> Iterator[Item]:
    laid, view = spread.pieces[number], table.sight.view
    piece, edge = laid.piece, table.picked_edge
    left, bottom, right, top = laid.box
    name, _, said = spoken_pick(spread, piece, None, None).partition(": ")
    yield Item(
        key=("piece", piece.key),
        kind="piece",
        name=name,
        said=said,
        box=QRectF(view.at(left, top), view.at(right, bottom)),
        picked=table.picked_piece == number and edge is None,
        pick=partial(table.pick, Place(panel=piece.panel))
        if piece.panel is not None
        else partial(table.pick, None, piece.key),
    )
    for figure in table.figures:
        if figure.key == piece.key and figure.edge is not None:
            yield _edge(table, spread, figure, figure.edge)
    yield from _bones(spread, laid, view)


def _edge(table: Table, spread: Spread, figure: AllowanceFigure, edge: Edge) -> Item:
    own = ", of its own" if figure.own else ""
    unit = spread.project.unit
    return Item(
        key=("edge", figure.key, figure.name),
        kind="edge",
        name=f"Allowance of {edge_words(edge, spread.project.design)}",
        said=f"{figure.words} {unit}{own}",
        box=figure.box(table.sight.view),
        picked=table.picked_edge == edge,
        amount=_allowance(table, spread, figure),
        pick=partial(table.pick, place_of_edge(edge)),
        deeds=(
            ("Type", partial(table.open_figure, figure)),
            ("As its kind", partial(table.take_kinds, edge)),
        ),
    )


def _allowance(table: Table, spread: Spread, figure: AllowanceFigure) -> Amount:
    project = spread.project

    def put(mm: float) -> None:
        table.on_typed(figure, say_exact(mm, project.unit))
        table.desk.now()

    return amount_of(figure.amount, (0.0, _WIDEST), project.unit, project.fraction, put)


def _bones(spread: Spread, laid: LaidPiece, view: View) -> Iterator[Item]:
    project = spread.project
    for mark in laid.piece.marks:
        if mark.kind == "bone":
            points = laid.put(mark.points)
            (left, bottom), (right, top) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
            steps = np.diff(points, axis=0)
            long = float(np.hypot(steps[:, 0], steps[:, 1]).sum())
            yield Item(
                key=("bone", laid.piece.key, mark.label),
                kind="line",
                name=f"Bone line, {mark.label}",
                said=f"{say_with_unit(long, project.unit, project.fraction)} long",
                box=QRectF(view.at(left, top), view.at(right, bottom)).adjusted(-2, 0, 2, 0),
            )

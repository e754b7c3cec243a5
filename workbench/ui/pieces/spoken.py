"""What is picked on the table in words, for those who hear the screen and do not see it."""

from __future__ import annotations

from workbench.pieces import Piece
from workbench.ui.pieces.allowance_figures import AllowanceFigure
from workbench.ui.pieces.edges import Edge, edge_words
from workbench.ui.pieces.spread import Spread


def spoken_pick(spread: Spread, piece: Piece, edge: Edge | None, figure: AllowanceFigure | None) -> str:
    """The piece and how it is cut, or one edge of it and its allowance."""
    layer = spread.layer.label.lower()
    if edge is None:
        return f"{piece.name}, {layer}: {piece.cut_words}"
    where = edge_words(edge, spread.project.design)
    if figure is None:
        return f"{where}, {layer}: on the fold"
    own = ", of its own" if figure.own else ""
    return f"{where}, {layer}: allowance {figure.words} {spread.project.unit}{own}"

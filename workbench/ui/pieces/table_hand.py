"""The hand on the table: what is under it, what a click picks, and the paper it drags."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF, Qt

from workbench.draft import Place
from workbench.pieces import EdgeName
from workbench.ui.board.near import distance
from workbench.ui.board.paper_hand import PaperHand
from workbench.ui.board.view import Sight, View
from workbench.ui.pieces.allowance_figures import AllowanceFigure, figure_at, shown
from workbench.ui.pieces.edges import Edge, place_of_edge
from workbench.ui.pieces.paint_table import GUTTER
from workbench.ui.pieces.spread import LaidPiece, Spread

_REACH = 6.0
"""Pixels from an edge at which it counts as meant."""


class Surroundings(Protocol):
    """What the hand needs of the table."""

    @property
    def spread(self) -> Spread | None:
        """What is on the table."""

    @property
    def figures(self) -> tuple[AllowanceFigure, ...]:
        """The allowances on it."""

    def open_figure(self, figure: AllowanceFigure) -> None:
        """Lay the field over an allowance."""

    def pick(self, place: Place | None, key: str | None = None) -> None:
        """Pick a place, or a piece that belongs to no panel."""

    def refresh(self) -> None:
        """Paint again."""


class TableHand(PaperHand):
    """One mouse, from hover to release."""

    def __init__(self, table: Surroundings, sight: Sight) -> None:
        super().__init__(sight)
        self._table = table
        self.over: AllowanceFigure | None = None
        """The allowance under the hand while nothing is pressed."""

    def look(self, pixel: QPointF | None) -> None:
        """Light up an allowance that a click would open."""
        self._show_over(self._figure_under(pixel) if pixel is not None else None)

    def refresh(self) -> None:
        """Paint again."""
        self._table.refresh()

    def _show_over(self, figure: AllowanceFigure | None) -> None:
        if figure != self.over:
            self.over = figure
            self._table.refresh()

    def _figure_under(self, pixel: QPointF) -> AllowanceFigure | None:
        spread = self._table.spread
        figure = figure_at(self._table.figures, self._sight.view, pixel)
        if spread is None or figure is None or figure.edge is None or pixel.x() < _gutter(spread):
            return None
        laid = next(laid for laid in spread.pieces if laid.piece.key == figure.key)
        return figure if shown(laid, self._sight.view) else None

    def click(self, pixel: QPointF) -> None:
        """Open the allowance, or pick the level, edge or piece that was clicked."""
        spread, view = self._table.spread, self._sight.view
        if spread is None:
            return
        figure = self._figure_under(pixel)
        if figure is not None:
            self._table.open_figure(figure)
        elif pixel.x() < _gutter(spread):
            self._table.pick(level_under(spread, view, pixel))
        else:
            self._table.pick(*place_under(spread, view, pixel))


def _gutter(spread: Spread) -> float:
    return GUTTER if spread.levels else 0.0


def level_under(spread: Spread, view: View, pixel: QPointF) -> Place | None:
    """The level whose name is under a pixel."""
    for name, _, walk in spread.levels:
        if -20 <= pixel.y() - view.y(walk) <= 2:
            return Place(level=name)
    return None


def place_under(spread: Spread, view: View, pixel: QPointF) -> tuple[Place | None, str | None]:
    """The edge or the panel under a pixel, else the key of a piece that belongs to no panel."""
    laid = _piece_under(spread, view, pixel)
    if laid is None:
        return None, None
    panel = laid.piece.panel
    if panel is None:
        return None, laid.piece.key
    edge = _edge_under(laid, view, pixel)
    return (place_of_edge(Edge(panel, edge)) if edge is not None else Place(panel=panel)), None


def _piece_under(spread: Spread, view: View, pixel: QPointF) -> LaidPiece | None:
    point = QPointF(*view.mm(pixel))
    return next(
        (laid for laid in spread.pieces if laid.cut.containsPoint(point, Qt.FillRule.OddEvenFill)), None
    )


def _edge_under(laid: LaidPiece, view: View, pixel: QPointF) -> EdgeName | None:
    """The nearest edge within reach of its stitch line, or outside it on its allowance."""
    x, y = view.mm(pixel)
    outside = not laid.stitch.containsPoint(QPointF(x, y), Qt.FillRule.OddEvenFill)
    away = {edge.name: distance(laid.put(edge.stitch), x, y) for edge in laid.piece.edges}
    nearest = min(away, key=lambda name: away[name], default=None)
    if nearest is None or not (outside or away[nearest] <= _REACH / view.scale):
        return None
    return nearest

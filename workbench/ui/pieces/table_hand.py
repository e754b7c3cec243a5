"""The hand on the table: what is under it, what a click picks, and the paper it drags."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QMouseEvent

from workbench.draft import Place
from workbench.pieces import EdgeName
from workbench.ui.board.gestures import SLACK, Pan
from workbench.ui.board.near import distance
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


class TableHand:
    """One mouse, from hover to release."""

    def __init__(self, table: Surroundings, sight: Sight) -> None:
        self._table, self._sight = table, sight
        self._pressed_at: QPointF | None = None
        self._pan: Pan | None = None
        self.over: AllowanceFigure | None = None
        """The allowance under the hand while nothing is pressed."""
        self.carries_paper = False
        """Whether the space bar is down: then any press moves the paper."""

    @property
    def panning(self) -> bool:
        """Whether the paper is being moved."""
        return self._pan is not None

    def press(self, event: QMouseEvent) -> None:
        """Take hold of the paper, or wait for what becomes of it."""
        if event.button() == Qt.MouseButton.MiddleButton or self.carries_paper:
            self._pan = Pan(self._sight, event.position())
        elif event.button() == Qt.MouseButton.LeftButton:
            self._pressed_at = event.position()

    def move(self, event: QMouseEvent) -> None:
        """Drag the paper, or see what lies under the hand."""
        pixel, start = event.position(), self._pressed_at
        if self._pan is None and start is not None and (pixel - start).manhattanLength() > SLACK:
            self._pan = Pan(self._sight, start)
        if self._pan is not None:
            self._pan.move(pixel, free=False)
        elif start is None:
            self._show_over(self._figure_under(pixel))

    def release(self, event: QMouseEvent) -> None:
        """End the drag, or pick what was clicked."""
        pan, self._pan = self._pan, None
        pressed_at, self._pressed_at = self._pressed_at, None
        if pan is None and pressed_at is not None:
            self._click(pressed_at)
        self._table.refresh()

    def cancel(self) -> bool:
        """Put the paper back where it was; False where it is not being moved."""
        pan, self._pan, self._pressed_at = self._pan, None, None
        if pan is not None:
            pan.cancel()
        return pan is not None

    def leave(self) -> None:
        """The hand is elsewhere."""
        self._show_over(None)

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

    def _click(self, pixel: QPointF) -> None:
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

"""Keys on the table: from piece to piece, from edge to edge, from layer to layer; zoom and pan."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from workbench.draft import Place
from workbench.ui.pieces.allowance_figures import AllowanceFigure
from workbench.ui.pieces.edges import ROUND, Edge, place_of_edge
from workbench.ui.pieces.spread import Spread

_ZOOM = {Qt.Key.Key_Plus: 1.25, Qt.Key.Key_Equal: 1.25, Qt.Key.Key_Minus: 0.8}
_PIECES = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_EDGES = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}
_LAYERS = {Qt.Key.Key_PageUp: -1, Qt.Key.Key_PageDown: 1}


class Surroundings(Protocol):
    """What the keys need of the table."""

    @property
    def spread(self) -> Spread | None:
        """What is on the table."""

    @property
    def picked_edge(self) -> Edge | None:
        """The edge that is picked."""

    @property
    def picked_piece(self) -> int | None:
        """The number of the picked piece on the table."""

    def figure_of(self, edge: Edge) -> AllowanceFigure | None:
        """The allowance of an edge."""

    def open_figure(self, figure: AllowanceFigure) -> None:
        """Lay the field over an allowance."""

    def pick(self, place: Place | None, key: str | None = None) -> None:
        """Pick a place, or a piece that belongs to no panel."""

    def take_kinds(self, edge: Edge) -> None:
        """Take the allowance of its kind for an edge again."""

    def turn_layers(self, step: int) -> None:
        """Put the layer before or after on show."""

    def zoom(self, factor: float) -> None:
        """Larger or smaller about the middle."""

    def fit(self) -> None:
        """Show all of it."""


class TableKeys:
    """Says for each key whether it was of use."""

    def __init__(self, table: Surroundings) -> None:
        self._table = table

    def press(self, event: QKeyEvent) -> bool:
        """Do what the key says; False where it says nothing here."""
        key, table = Qt.Key(event.key()), self._table
        if event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.MetaModifier):
            return False
        if key in _ZOOM:
            table.zoom(_ZOOM[key])
        elif key == Qt.Key.Key_0:
            table.fit()
        elif key in _LAYERS:
            table.turn_layers(_LAYERS[key])
        elif key == Qt.Key.Key_Escape:
            table.pick(None)
        else:
            return self._pick_key(key)
        return True

    def _pick_key(self, key: Qt.Key) -> bool:
        edge = self._table.picked_edge
        if key in _PIECES:
            return self._go_to_piece(_PIECES[key])
        if key in _EDGES:
            return self._go_round(_EDGES[key])
        if edge is not None and key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            figure = self._table.figure_of(edge)
            if figure is not None:
                self._table.open_figure(figure)
            return figure is not None
        if edge is not None and key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self._table.take_kinds(edge)
            return True
        return False

    def _go_to_piece(self, step: int) -> bool:
        """The piece beside the picked one, and the same edge of it where one is picked."""
        spread = self._table.spread
        if spread is None or not spread.pieces:
            return False
        at, edge = self._table.picked_piece, self._table.picked_edge
        start = -1 if step > 0 else 0
        piece = spread.pieces[((start if at is None else at) + step) % len(spread.pieces)].piece
        if piece.panel is None:
            self._table.pick(None, piece.key)
        elif edge is not None:
            self._table.pick(place_of_edge(Edge(piece.panel, edge.name)))
        else:
            self._table.pick(Place(panel=piece.panel))
        return True

    def _go_round(self, step: int) -> bool:
        """The next edge of the picked piece."""
        spread, at, edge = self._table.spread, self._table.picked_piece, self._table.picked_edge
        panel = spread.pieces[at].piece.panel if spread is not None and at is not None else None
        if panel is None:
            return False
        number = ROUND.index(edge.name) + step if edge is not None else 0
        self._table.pick(place_of_edge(Edge(panel, ROUND[number % len(ROUND)])))
        return True

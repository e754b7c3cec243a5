"""Pieces drawn small, at one scale on a common waist line, for the sheets of the cutting table."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely

from workbench.pieces import Piece
from workbench.sheets.drawing import Array
from workbench.sheets.pen import FAINT, INK, SOFT, WHITE, Colour, LineStyle, Pen

SCALES = (2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 15.0, 20.0)
"""One millimetre on paper stands for so many: the round ones a drawing is made at."""
_CUT, _STITCH = LineStyle(0.22, INK), LineStyle(0.10, SOFT)
_NOTCH, _GRAIN, _BONE = LineStyle(0.28, INK), LineStyle(0.13, INK), LineStyle(0.10, SOFT, (0.9, 0.4))
_TAPE = LineStyle(0.10, SOFT, (0.4, 0.4))
_FOLD = LineStyle(0.5, INK, (2.2, 0.7, 0.5, 0.7))
_NOTCH_LONG, _NOTCH_PAIR = 1.3, 0.8
_ARROW = 1.3
_FINE = 0.05
"""How far a small outline may lie beside the true one on paper, mm."""
_DRAWN: dict[str, LineStyle] = {"bone": _BONE, "tape": _TAPE}


@dataclass(frozen=True)
class Reach:
    """How far a piece reaches from its own origin, at life size; mm."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Left to right."""
        return self.right - self.left


def reach_of(piece: Piece) -> Reach:
    """The reach of the cut line."""
    low, high = piece.cut.min(axis=0), piece.cut.max(axis=0)
    return Reach(float(low[0]), float(low[1]), float(high[0]), float(high[1]))


class Small:
    """Draws with a pen what is given at life size: 1 to ``scale``, origin at (x, y) on the page."""

    def __init__(self, pen: Pen, x: float, y: float, scale: float) -> None:
        self._pen, self._origin, self._scale = pen, np.array([x, y]), scale

    def at(self, points: Array) -> Array:
        """Life-size points where they stand on the page."""
        placed: Array = self._origin + points / self._scale
        return placed

    def piece(self, piece: Piece) -> None:
        """Cut and stitch line, notches, grain, fold, bones and tape."""
        self.ring(piece.cut, _CUT, FAINT)
        self.ring(piece.stitch, _STITCH, WHITE)
        for mark in piece.marks:
            if mark.kind in _DRAWN:
                self.line(mark.points, _DRAWN[mark.kind])
        for edge in piece.edges:
            if edge.kind == "fold":
                self.line(edge.stitch, _FOLD)
        for notch in piece.notches:
            self._notch(np.array(notch.at), np.array(notch.towards), notch.count)
        self._grain(np.array(piece.grain))

    def line(self, points: Array, style: LineStyle) -> None:
        """A polyline."""
        thinned = shapely.get_coordinates(shapely.simplify(shapely.LineString(points), _FINE * self._scale))
        self._pen.polyline(self.at(thinned), style)

    def ring(self, points: Array, style: LineStyle, fill: Colour) -> None:
        """A closed outline on a ground."""
        ring = shapely.simplify(shapely.LinearRing(points), _FINE * self._scale)
        corners = self.at(shapely.get_coordinates(ring)[:-1])
        self._pen.polygon([(x, y) for x, y in corners.tolist()], style, fill)

    def _notch(self, at: Array, inwards: Array, count: int) -> None:
        foot = self.at(at)
        across = _NOTCH_PAIR * np.array([-inwards[1], inwards[0]])
        for number in range(count):
            x, y = foot + (number - 0.5 * (count - 1)) * across
            tip = _NOTCH_LONG * inwards
            self._pen.line(float(x), float(y), float(x + tip[0]), float(y + tip[1]), _NOTCH)

    def _grain(self, ends: Array) -> None:
        foot, head = self.at(ends)
        self._pen.polyline(np.array([foot, head]), _GRAIN)
        along = (head - foot) / max(float(np.hypot(*(head - foot))), 1e-9)
        for tip, back in ((foot, along), (head, -along)):
            across = 0.35 * np.array([-back[1], back[0]])
            barbs = np.array([tip + _ARROW * (back + across), tip, tip + _ARROW * (back - across)])
            self._pen.polyline(barbs, _GRAIN)

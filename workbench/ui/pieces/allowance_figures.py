"""The allowance of each edge as a figure beside it, to be clicked and typed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, QRectF

from workbench.pieces import EdgeName, PieceEdge
from workbench.ui.board.lettering import Align, box_of, width_of
from workbench.ui.board.view import View
from workbench.ui.look import fonts
from workbench.ui.pieces.edges import Edge
from workbench.ui.pieces.spread import LaidPiece, Spread

_BESIDE, _BELOW = 6.0, 11.0
"""Pixels from a side, and from neckline or hem, to the middle of a figure."""
_APART = 9.0
"""Pixels that the figures of the left sides stand higher, and those of the right sides lower, so that
both have room on a narrow piece."""
_ROOM = 24.0
"""Pixels of a piece's width that one figure needs."""
_HIGH = 70.0
"""Pixels of a piece's height that the figures above each other need."""
_AIM = 5.0


@dataclass(frozen=True)
class AllowanceFigure:
    """One figure, just inside its stitch line."""

    key: str
    """Of its piece."""
    edge: Edge | None
    """What is edited; None on a piece that is not cut from one panel."""
    name: str
    """``left``, ``right``, ``neckline`` or ``hem``."""
    amount: float
    words: str
    own: bool
    """Whether it was typed for this edge alone."""
    at: tuple[float, float]
    """On the stitch line, mm."""
    align: Align

    def spot(self, view: View) -> QPointF:
        """Where the words stand: their left or right end at a side, their middle at neckline and hem."""
        x, y = view.x(self.at[0]), view.y(self.at[1])
        if self.align == "middle":
            return QPointF(x, y + (_BELOW if self.name == "neckline" else -_BELOW))
        left = self.align == "left"
        return QPointF(x + (_BESIDE if left else -_BESIDE), y + (-_APART if left else _APART))

    def box(self, view: View) -> QRectF:
        """The pixels that answer to a click."""
        spot = self.spot(view)
        words = box_of(self.words, spot.x(), spot.y(), fonts().small, self.align)
        return words.adjusted(-_AIM, -1, _AIM, 1)


def figures_of(spread: Spread) -> tuple[AllowanceFigure, ...]:
    """A figure for each edge of each piece that is not on the fold."""
    layer = spread.layer.name
    owns = {(own.panel, own.edge) for own in spread.making.own_allowances if own.layer == layer}
    height = _height(spread)
    return tuple(figure for laid in spread.pieces for figure in _of_piece(laid, height, owns, spread))


def shown(laid: LaidPiece, view: View) -> bool:
    """Whether a piece is large enough on the screen for its figures; those of a low one need its width."""
    left, bottom, right, top = laid.box
    wide, high = view.scale * (right - left), view.scale * (top - bottom)
    return high >= _HIGH and wide >= _ROOM + width_of("⅝", fonts().small)


def figure_at(figures: tuple[AllowanceFigure, ...], view: View, pixel: QPointF) -> AllowanceFigure | None:
    """The figure under a pixel."""
    return next((figure for figure in figures if figure.box(view).contains(pixel)), None)


def _height(spread: Spread) -> float | None:
    """Midway between the two levels furthest apart inside every piece: no line runs through there."""
    if not spread.levels:
        return None
    low = max(laid.piece.stitch[:, 1].min() for laid in spread.pieces)
    high = min(laid.piece.stitch[:, 1].max() for laid in spread.pieces)
    walks = [low, *(walk for _, _, walk in spread.levels if low < walk < high), high]
    gaps = np.diff(walks)
    widest = int(gaps.argmax())
    return float(walks[widest] + 0.5 * gaps[widest])


def _of_piece(
    laid: LaidPiece,
    height: float | None,
    owns: set[tuple[int, EdgeName]],
    spread: Spread,
) -> Iterator[AllowanceFigure]:
    panel = laid.piece.panel
    for edge in laid.piece.edges:
        if edge.kind in ("fold", "free") or len(edge.stitch) < 2:
            continue
        yield AllowanceFigure(
            key=laid.piece.key,
            edge=Edge(panel, edge.name) if panel is not None else None,
            name=edge.name,
            amount=edge.allowance,
            words=spread.say(edge.allowance),
            own=panel is not None and (panel, edge.name) in owns,
            at=_place(laid, edge, height),
            align=_align(edge),
        )


def _align(edge: PieceEdge) -> Align:
    return "left" if edge.name == "left" else "right" if edge.name == "right" else "middle"


def _place(laid: LaidPiece, edge: PieceEdge, height: float | None) -> tuple[float, float]:
    """The middle of an edge; a side is met at the height at which all sides have theirs."""
    line = edge.stitch
    if edge.name in ("left", "right") and height is not None:
        rising = line if line[0, 1] <= line[-1, 1] else line[::-1]
        return float(np.interp(height, rising[:, 1], rising[:, 0])) + laid.dx, height
    steps = line[1:] - line[:-1]
    lengths = np.hypot(steps[:, 0], steps[:, 1])
    ends = lengths.cumsum()
    half = 0.5 * float(ends[-1])
    bit = int(ends.searchsorted(half))
    back = (float(ends[bit]) - half) / float(lengths[bit]) if lengths[bit] > 0 else 0.0
    x, y = (line[bit + 1] - back * steps[bit]).tolist()
    return x + laid.dx, y

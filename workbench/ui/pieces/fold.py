"""The mark of a fold: a bracket inside it that bends to it at both ends."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF

from workbench.pieces import PieceEdge
from workbench.ui.board.view import View
from workbench.ui.pieces.spread import LaidPiece

_IN = 8.0
"""Pixels from the fold to the bracket."""
_FROM, _TO = 0.18, 0.44
"""Where the bracket begins and ends, as parts of the fold from the hem: clear of the allowance figures."""
_HEAD = 4.0


def fold_lines(laid: LaidPiece, edge: PieceEdge, view: View) -> list[QLineF]:
    """The bracket in pixels; the fold is the left side of its piece, and straight."""
    line = laid.put(edge.stitch)
    x = view.x(float(line[:, 0].mean()))
    low, high = float(line[:, 1].min()), float(line[:, 1].max())
    top, bottom = (view.y(low + part * (high - low)) for part in (_TO, _FROM))
    lines = [QLineF(x + _IN, top, x + _IN, bottom)]
    for y in (top, bottom):
        tip = QPointF(x, y)
        lines.append(QLineF(x + _IN, y, x, y))
        lines += [QLineF(tip, tip + QPointF(_HEAD, side)) for side in (-0.6 * _HEAD, 0.6 * _HEAD)]
    return lines

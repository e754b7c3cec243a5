"""Draws how sharply each seam flares, as a line along it that grows broader and stronger."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from PySide6.QtCore import QLineF, QRectF
from PySide6.QtGui import QColor, QPainter, QPen, QTransform

from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.pens import mixed, pen
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.scene import Scene
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look

_BOUNDS = (0.1, 0.2, 0.35, 0.5)
"""Across for each length along the seam. From the last one on a draft finds a seam too sharp to be sewn
flat; the others only part what is below it (no source)."""
_WIDTHS = (1.6, 3.0, 4.6, 6.4, 8.6)
"""Pixels: the line says it by its breadth too, never by colour alone."""
_STRENGTH = (0.0, 0.25, 0.5, 0.75, 1.0)
_WORDS = ("under 0.1", "0.1 to 0.2", "0.2 to 0.35", "0.35 to 0.5", "over 0.5: too sharp to sew flat")
_TITLE = "Flare: across for each length along the seam"
_LINE, _PAD, _SAMPLE, _AWAY = 17.0, 10.0, 34.0, 12.0


def paint_flare(painter: QPainter, scene: Scene, view: View) -> None:
    """Along both sides of every seam; the painter comes back untransformed."""
    painter.setTransform(view.transform())
    last = scene.outcome.design.panel_count
    pens = [_pen(number) for number in range(len(_WIDTHS))]
    for shape in scene.shapes:
        for name, seam in (("left", shape.panel.index), ("right", shape.panel.index + 1)):
            if 0 < seam < last:
                _along(painter, shape.edge(name), pens)
    painter.setTransform(QTransform())


def flare_of(edge: Array) -> Array:
    """(n - 1,) how far each step of an edge (n, 2) runs across for each length along it."""
    steps = np.diff(edge, axis=0)
    flare: Array = np.abs(steps[:, 0]) / np.hypot(steps[:, 0], steps[:, 1])
    return flare


def _along(painter: QPainter, edge: Array, pens: list[QPen]) -> None:
    """One side of a seam, piece by piece of one strength."""
    band = np.searchsorted(_BOUNDS, flare_of(edge), side="right")
    turns = [0, *(np.flatnonzero(np.diff(band)) + 1).tolist(), len(band)]
    for first, end in pairwise(turns):
        painter.setPen(pens[int(band[first])])
        painter.drawPolyline(polygon(edge[first : end + 1]))


def _pen(number: int) -> QPen:
    return pen(_colour(number), _WIDTHS[number])


def _colour(number: int) -> QColor:
    return mixed(look().rule, look().attend, _STRENGTH[number])


def paint_flare_legend(painter: QPainter, free: QRectF) -> None:
    """What the breadths mean, in the lower right corner."""
    font, shown = fonts().small, look()
    wide = (
        max(width_of(_TITLE, font), _SAMPLE + 8 + max(width_of(words, font) for words in _WORDS)) + 2 * _PAD
    )
    tall = _LINE * (len(_WORDS) + 1) + _PAD
    box = QRectF(free.right() - wide - _AWAY, free.bottom() - tall - _AWAY, wide, tall)
    painter.setPen(pen(shown.rule))
    painter.setBrush(shown.field)
    painter.drawRoundedRect(box, 4, 4)
    left, y = box.left() + _PAD, box.top() + 0.5 * (_PAD + _LINE)
    painter.setPen(shown.ink)
    put(painter, _TITLE, left, y, font)
    for number, words in enumerate(_WORDS):
        y += _LINE
        painter.setPen(_pen(number))
        painter.drawLine(QLineF(left, y, left + _SAMPLE - 6, y))
        painter.setPen(shown.ink)
        put(painter, words, left + _SAMPLE + 2, y, font)

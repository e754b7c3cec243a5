"""Words on the board, laid out once and drawn often."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QStaticText, QTransform

Align = Literal["left", "middle", "right"]

_KEPT = 4000
"""Texts kept laid out: a long drag shows a few hundred different figures."""

_laid_out: dict[tuple[str, int, bool], QStaticText] = {}
_SHIFT = {"left": 0.0, "middle": 0.5, "right": 1.0}


def _laid(words: str, font: QFont) -> QStaticText:
    key = (words, font.pixelSize(), font.bold())
    found = _laid_out.get(key)
    if found is None:
        if len(_laid_out) >= _KEPT:
            _laid_out.clear()
        found = QStaticText(words)
        found.setTextFormat(Qt.TextFormat.PlainText)
        found.setPerformanceHint(QStaticText.PerformanceHint.AggressiveCaching)
        found.prepare(QTransform(), font)
        _laid_out[key] = found
    return found


def width_of(words: str, font: QFont) -> float:
    """Pixels that the words take up."""
    return _laid(words, font).size().width()


def put(painter: QPainter, words: str, x: float, y: float, font: QFont, align: Align = "left") -> None:
    """Write one line in the painter's pen, its middle at the height ``y``."""
    laid = _laid(words, font)
    size = laid.size()
    if painter.font() != font:
        painter.setFont(font)
    painter.drawStaticText(
        QPointF(round(x - _SHIFT[align] * size.width()), round(y - 0.5 * size.height())), laid
    )


def box_of(words: str, x: float, y: float, font: QFont, align: Align = "left") -> QRectF:
    """The pixels that :func:`put` would cover."""
    size = _laid(words, font).size()
    return QRectF(x - _SHIFT[align] * size.width(), y - 0.5 * size.height(), size.width(), size.height())

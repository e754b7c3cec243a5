"""Words on the board, laid out once and drawn often."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QStaticText, QTransform

Align = Literal["left", "middle", "right"]

_KEPT = 4000
"""Texts kept laid out: a long drag shows a few hundred different figures."""

_laid_out: dict[tuple[str, int], tuple[QStaticText, float, float, QFont]] = {}
"""By words and font; each entry holds its font, so that the font's id stays its own."""
_SHIFT = {"left": 0.0, "middle": 0.5, "right": 1.0}


def _laid(words: str, font: QFont) -> tuple[QStaticText, float, float, QFont]:
    """The words laid out, their width and height in pixels."""
    key = (words, id(font))
    found = _laid_out.get(key)
    if found is None:
        if len(_laid_out) >= _KEPT:
            _laid_out.clear()
        found = _laid_out[key] = _lay_out(words, font)
    return found


def _lay_out(words: str, font: QFont) -> tuple[QStaticText, float, float, QFont]:
    made = QStaticText(words)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setPerformanceHint(QStaticText.PerformanceHint.AggressiveCaching)
    made.prepare(QTransform(), font)
    return made, made.size().width(), made.size().height(), font


def width_of(words: str, font: QFont) -> float:
    """Pixels that the words take up."""
    return _laid(words, font)[1]


def put(painter: QPainter, words: str, x: float, y: float, font: QFont, align: Align = "left") -> None:
    """Write one line in the painter's pen, its middle at the height ``y``."""
    laid, width, height, _ = _laid(words, font)
    painter.setFont(font)
    painter.drawStaticText(round(x - _SHIFT[align] * width), round(y - 0.5 * height), laid)


def box_of(words: str, x: float, y: float, font: QFont, align: Align = "left") -> QRectF:
    """The pixels that :func:`put` would cover."""
    _, width, height, _ = _laid(words, font)
    return QRectF(x - _SHIFT[align] * width, y - 0.5 * height, width, height)

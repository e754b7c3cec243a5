"""The figures that are looked for first, large and side by side, each with what it is below it."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.sheets.block import SMALL, Block
from workbench.sheets.fonts import text_width
from workbench.sheets.pen import SOFT, Pen

_FIGURE, _APART, _UNDER = 7.0, 10.0, 4.0


def figure_row(figures: Sequence[tuple[str, str]], width: float) -> Block:
    """Figures with their words, the first in bold; smaller where they are wider than the row."""
    size = _FIGURE
    while size > SMALL and _wide(figures, size) > width:
        size -= 0.4

    def paint(pen: Pen, left: float, top: float) -> None:
        base = top - 0.8 * _FIGURE
        for number, (figure, words) in enumerate(figures):
            pen.text(left, base, figure, size, bold=number == 0)
            pen.text(left, base - _UNDER, words, SMALL, colour=SOFT)
            left += _one(figure, words, size, number == 0) + _apart(size)

    return Block(0.8 * _FIGURE + _UNDER + 2.0, paint)


def _wide(figures: Sequence[tuple[str, str]], size: float) -> float:
    ones = (_one(figure, words, size, number == 0) for number, (figure, words) in enumerate(figures))
    return sum(ones) + _apart(size) * (len(figures) - 1)


def _one(figure: str, words: str, size: float, bold: bool) -> float:
    return max(text_width(figure, size, bold), text_width(words, SMALL))


def _apart(size: float) -> float:
    return _APART * size / _FIGURE

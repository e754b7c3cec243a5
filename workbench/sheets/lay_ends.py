"""Below the cloth on a lay sheet: where the pieces end, where the cloth ends, and which way it runs."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from workbench.sheets.drawing import Array
from workbench.sheets.fonts import text_width
from workbench.sheets.lay_arrow import draw_arrow
from workbench.sheets.lay_cloth import LaidCloth
from workbench.sheets.pen import INK, LineStyle, Pen

At = Callable[[Array], Array]
ENDS = 9.5
"""Room below the cloth, mm on paper."""
_FIRST, _SECOND = 3.4, 7.2
_SIZE = 2.5
_MARK = LineStyle(0.45, INK)
_ONE_WAY = "runs one way: all heads this way"


def draw_ends(pen: Pen, laid: LaidCloth, at: At, part: tuple[float, float], foot: float) -> None:
    """The marks that lie on this part of the cloth; ``foot`` is its lower rim on the page."""
    left = float(at(np.array([part[0], 0.0]))[0])
    length, there = laid.plan.length_mm, laid.there
    if part[0] < length <= part[1] + 0.01:
        _mark(pen, laid, at, length, f"pieces end at {laid.said(length)}", foot, _FIRST, left)
    if laid.cloth.remnant is None and there <= part[1] + 0.01 and there > part[0]:
        words = "end of what you have" if laid.buy.fits else f"buy {laid.buy.words}"
        _mark(pen, laid, at, there, words, foot, _SECOND, left)
    if laid.cloth.run == "one_way" and part[0] == 0.0:
        base = foot - _SECOND
        pen.text(left, base, _ONE_WAY, _SIZE)
        x = left + text_width(_ONE_WAY, _SIZE) + 1.5
        draw_arrow(pen, np.array([x, base + 0.9]), np.array([x + 9.0, base + 0.9]), 1.3)


def _mark(
    pen: Pen, laid: LaidCloth, at: At, along: float, words: str, foot: float, drop: float, left: float
) -> None:
    """A line across the cloth and down to its words, at its left where there is room."""
    x, top = at(np.array([along, 0.0])).tolist()
    pen.line(x, top + 2.4, x, foot - drop - 0.4, _MARK)
    room = x - left > text_width(words, _SIZE, bold=True) + 2.0
    if room:
        pen.text(x - 1.2, foot - drop, words, _SIZE, bold=True, align="right")
    else:
        pen.text(x + 1.2, foot - drop, words, _SIZE, bold=True)

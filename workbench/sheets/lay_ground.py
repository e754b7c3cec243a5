"""The cloth itself on a lay sheet: its ground, what of it is not used, repeats, and its rims by name."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from workbench.sheets.drawing import Array
from workbench.sheets.lay_cloth import LaidCloth
from workbench.sheets.pen import FAINT, HAIR, INK, SOFT, Colour, LineStyle, Pen

At = Callable[[Array], Array]
_RIM, _END = LineStyle(0.25, INK), LineStyle(0.4, INK)
FOLD_LINE = LineStyle(0.55, INK, (2.2, 0.7, 0.5, 0.7))
_BREAK = LineStyle(0.2, SOFT, (1.0, 0.8))
_REPEAT = LineStyle(0.1, HAIR)
_NAME = 1.9
_BAND: Colour = (0.86, 0.84, 0.80)


def draw_ground(pen: Pen, laid: LaidCloth, at: At, start: float, end: float) -> None:
    """The cloth from ``start`` to ``end``, what is selvedge in a darker tone."""
    if laid.remnant is not None:
        pen.polygon([(x, y) for x, y in at(laid.remnant).tolist()], _RIM, FAINT)
    else:
        _fill(pen, at, (start, end), (0.0, laid.width), FAINT)
        bands = [(laid.width - laid.cloth.selvedge_mm, laid.width)]
        if laid.cloth.laid != "folded":
            bands.append((0.0, laid.cloth.selvedge_mm))
        for band in bands:
            _fill(pen, at, (start, end), band, _BAND)
    _draw_repeats(pen, laid, at, start, end)


def _fill(pen: Pen, at: At, along: tuple[float, float], across: tuple[float, float], colour: Colour) -> None:
    (left, top), (right, bottom) = at(np.array([[along[0], across[0]], [along[1], across[1]]])).tolist()
    if top > bottom:
        pen.rectangle(left, bottom, right - left, top - bottom, fill=colour)


def _draw_repeats(pen: Pen, laid: LaidCloth, at: At, start: float, end: float) -> None:
    """A hairline at each whole repeat of the print."""
    repeat = laid.cloth.repeat_mm
    if repeat <= 0:
        return
    for number in range(int(start // repeat), int(end // repeat) + 1):
        pen.polyline(at(np.array([[number * repeat, 0.0], [number * repeat, laid.width]])), _REPEAT)


def draw_rims(
    pen: Pen, laid: LaidCloth, box: tuple[float, float, float, float], first: bool, last: bool
) -> None:
    """Selvedges or fold, the cut end, and where the drawing breaks off; ``box`` is on the page."""
    left, bottom, right, top = box
    remnant = laid.remnant is not None
    if not remnant:
        pen.line(left, bottom, right, bottom, _RIM)
        pen.line(left, top, right, top, FOLD_LINE if laid.across_from == "fold" else _RIM)
        pen.line(left, bottom, left, top, _END if first else _BREAK)
        pen.line(right, bottom, right, top, _BREAK if not last or laid.runs_on else _RIM)
    pen.text(left - 1.2, top + 1.2, laid.across_from, _NAME, colour=SOFT, align="right")
    if not remnant:
        pen.text(left - 1.2, bottom - 3.9, "selvedge", _NAME, colour=SOFT, align="right")
    if first:
        middle = 0.5 * (bottom + top)
        pen.text(left - 9.2, middle, "cut end", _NAME, colour=SOFT, align="middle", angle=90.0)

"""What is written in each piece of a lay sheet, in one type for the whole drawing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from workbench.sheets.drawing import Array
from workbench.sheets.fonts import text_width
from workbench.sheets.lay_arrow import draw_arrow
from workbench.sheets.lay_caption import ARROW_LONG, Called, Caption, caption_in, number_alone
from workbench.sheets.lay_measure import Figures, Measure, measure_in
from workbench.sheets.pen import INK, Pen

_RIM = 0.5
_DOT = 0.7
_NEARLY_ALL = 0.85
"""Part of the pieces that has to have room for name and measure before the type gets smaller."""


@dataclass(frozen=True)
class Type:
    """Sizes of the type of one drawing, mm: names, and the figures at corners."""

    name: float
    figure: float


_TYPES = (Type(2.9, 2.4), Type(2.5, 2.1), Type(2.1, 1.8), Type(1.8, 1.6))


@dataclass(frozen=True, eq=False)
class Seen:
    """What is seen of a piece on the page."""

    shape: shapely.Polygon
    called: Called
    corners: tuple[tuple[float, float], ...]
    """Those that are measured."""
    figures: Figures
    """Of the first corner."""
    grain: Array
    """(2,) along its grain, foot to head, on the page."""


@dataclass(frozen=True)
class Wording:
    """What is written in a piece."""

    caption: Caption
    measure: Measure | None

    def says(self, called: Called, side: bool) -> bool:
        """Whether name and measure stand there, and with ``side`` also which side it is."""
        words = " ".join(self.caption.lines)
        return self.measure is not None and called.name in words and (not side or called.what in words)


def draw_words(pen: Pen, seen: Sequence[Seen]) -> None:
    """Captions, measures, and a dot on every corner that is measured."""
    size = _type_of(seen)
    for one in seen:
        wording = wording_in(one, size)
        _draw_caption(pen, wording.caption, one.grain)
        if wording.measure is not None:
            wording.measure.draw(pen)
        for x, y in one.corners:
            pen.circle(x, y, _DOT, fill=INK)


def _type_of(seen: Sequence[Seen]) -> Type:
    """The largest type in which nearly all pieces have room for everything; small type drops the sides."""
    for size, side in (*((size, True) for size in _TYPES[:-1]), *((size, False) for size in _TYPES[2:-1])):
        said = sum(wording_in(one, size).says(one.called, side) for one in seen)
        if said >= _NEARLY_ALL * len(seen):
            return size
    return _TYPES[-1]


def wording_in(seen: Seen, size: Type) -> Wording:
    """Caption and measure; the caption alone where one must give way, for the table has the measure too."""
    inner = seen.shape.buffer(-_RIM)
    inner = seen.shape if inner.is_empty else inner
    shapely.prepare(inner)
    for stacked in (True, False) if seen.corners else ():
        measure = measure_in(inner, seen.corners[0], seen.figures, size.figure, stacked)
        if measure is not None:
            caption = caption_in(inner.difference(measure.room), seen.shape, seen.called, size.name)
            if caption is not None:
                return Wording(caption, measure)
    caption = caption_in(inner, seen.shape, seen.called, size.name)
    return Wording(caption or number_alone(seen.shape, seen.called, _TYPES[-1].name), None)


def _draw_caption(pen: Pen, caption: Caption, grain: Array) -> None:
    left = caption.x - 0.5 * caption.width
    for row, (base, line) in enumerate(zip(caption.bases(), caption.lines, strict=True)):
        x = left
        if row == 0:
            pen.text(x, base, caption.number, caption.size, bold=True)
            x += text_width(caption.number, caption.size, bold=True) + text_width(" ", caption.size)
        pen.text(x, base, line, caption.size)
    size = float(np.hypot(*grain))
    if caption.arrow and size > 0:
        half = 0.5 * max(ARROW_LONG, caption.width) * grain / size
        draw_arrow(pen, caption.arrow_at - half, caption.arrow_at + half)

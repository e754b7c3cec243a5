"""A cloth with its plan drawn to scale along a tape, in one strip or in several below each other."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import shapely

from workbench.body import say_length
from workbench.sheets.block import Block
from workbench.sheets.drawing import Array
from workbench.sheets.lay_caption import Called
from workbench.sheets.lay_cloth import LaidCloth
from workbench.sheets.lay_ends import ENDS, draw_ends
from workbench.sheets.lay_ground import FOLD_LINE, draw_ground, draw_rims
from workbench.sheets.lay_lying import Lying, Spot
from workbench.sheets.lay_measure import Figures
from workbench.sheets.lay_tape import TAPE, draw_across, draw_along, tape_of
from workbench.sheets.lay_words import Seen, draw_words
from workbench.sheets.pen import INK, WHITE, LineStyle, Pen

SCALES = (2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 80.0, 100.0)
"""One millimetre on paper stands for so many."""
LEFT, RIGHT = 12.5, 6.0
"""Room at the left for the tape across, and at the right, mm."""
BETWEEN = 4.0
_CUT = LineStyle(0.22, INK)
_FINE, _HAIR = 0.04, 0.01
_SLIVER = 1.0
"""Square mm on paper: what is less of a piece on a strip is not named there."""
_HIGH = 1e4


@dataclass(frozen=True)
class Strip:
    """A part of the cloth drawn on one line, with where it stands on the page."""

    start: float
    end: float
    scale: float
    left: float
    top: float

    @property
    def right(self) -> float:
        """Its right end on the page."""
        return self.left + (self.end - self.start) / self.scale

    def at(self, points: Array) -> Array:
        """Points (..., 2), along and across in mm of cloth, where they stand on the page."""
        x, y = points[..., 0], points[..., 1]
        return np.stack((self.left + (x - self.start) / self.scale, self.top - y / self.scale), axis=-1)


def drawing_size(laid: LaidCloth, scale: float, strips: int) -> tuple[float, float]:
    """Width and height of the drawing at a scale, mm on paper."""
    width = LEFT + laid.shown / strips / scale + RIGHT
    return width, strips * _step(laid, scale) - BETWEEN


def lay_drawing(laid: LaidCloth, scale: float, strips: int) -> Block:
    """The drawing of a size told by :func:`drawing_size`."""
    part, step = laid.shown / strips, _step(laid, scale)

    def paint(pen: Pen, left: float, top: float) -> None:
        for number in range(strips):
            strip = Strip(number * part, (number + 1) * part, scale, left + LEFT, top - TAPE - number * step)
            _draw_strip(pen, laid, strip, first=number == 0, last=number == strips - 1)

    return Block(drawing_size(laid, scale, strips)[1], paint)


def _step(laid: LaidCloth, scale: float) -> float:
    """From one strip to the next on paper, mm."""
    return TAPE + laid.width / scale + ENDS + BETWEEN


def _draw_strip(pen: Pen, laid: LaidCloth, strip: Strip, first: bool, last: bool) -> None:
    tape = tape_of(laid.unit, strip.scale)
    box = (strip.left, strip.top - laid.width / strip.scale, strip.right, strip.top)
    with pen.moved(0.0, 0.0, box):
        draw_ground(pen, laid, strip.at, strip.start, strip.end)
        for lying in laid.lying:
            _draw_shape(pen, lying, strip)
    draw_words(pen, list(_seen(laid, strip)))
    draw_along(pen, tape, strip.left, strip.top, strip.start, strip.end)
    draw_across(pen, tape, strip.left, strip.top, laid.width)
    draw_rims(pen, laid, box, first, last)
    draw_ends(pen, laid, strip.at, (strip.start, strip.end), box[1])


def _draw_shape(pen: Pen, lying: Lying, strip: Strip) -> None:
    ring = shapely.simplify(shapely.LinearRing(lying.outline), _FINE * strip.scale)
    points = strip.at(shapely.get_coordinates(ring)[:-1])
    pen.polygon([(x, y) for x, y in points.tolist()], _CUT, WHITE)
    if lying.on_fold:
        along = np.array([lying.outline[:, 0].min(), lying.outline[:, 0].max()])
        pen.polyline(strip.at(np.column_stack((along, np.zeros(2)))), FOLD_LINE)


def _seen(laid: LaidCloth, strip: Strip) -> Iterator[Seen]:
    """The pieces that lie on a strip; of two parts of one the larger has the name."""
    seen_box = shapely.box(strip.left, -_HIGH, strip.right, _HIGH)
    for lying in laid.lying:
        whole = shapely.Polygon(strip.at(lying.outline))
        parts = shapely.get_parts(whole.intersection(seen_box)).tolist()
        largest = max(parts, key=lambda part: float(part.area), default=whole)
        if not parts or largest.area < _SLIVER:
            continue
        named = 2 * largest.area >= whole.area
        called = Called(lying.number, lying.name if named else "", lying.what if named else "")
        spots = [spot for spot in lying.spots if strip.start - _HAIR <= spot.along <= strip.end + _HAIR]
        corners = tuple(_page(strip, spot) for spot in spots)
        grain = (lying.grain[1] - lying.grain[0]) * np.array([1.0, -1.0])
        yield Seen(largest, called, corners, _figures(laid, spots[0]) if spots else ("", ""), grain)


def _page(strip: Strip, spot: Spot) -> tuple[float, float]:
    x, y = strip.at(np.array([spot.along, spot.across])).tolist()
    return x, y


def _figures(laid: LaidCloth, spot: Spot) -> Figures:
    along, across = (say_length(mm, laid.unit, laid.words.fraction) for mm in (spot.along, spot.across))
    return along, across

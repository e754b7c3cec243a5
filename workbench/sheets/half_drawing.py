"""The half laid out small with its bones, each with the number it has in the list."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from workbench.draft import Outcome
from workbench.pieces import Bone
from workbench.sheets.along import Course
from workbench.sheets.block import SMALL, Block
from workbench.sheets.drawing import Array
from workbench.sheets.layout import placements
from workbench.sheets.pen import FAINT, INK, SOFT, WHITE, LineStyle, Pen
from workbench.sheets.small_piece import SCALES, Small

_GAP = 26.0
_OUTLINE, _BONE = LineStyle(0.16, SOFT), LineStyle(0.55, INK)
_WAIST = LineStyle(0.14, SOFT, (3.0, 0.8, 0.6, 0.8))
_RING = LineStyle(0.16, INK)
_RADIUS, _CLEAR = 2.1, 4.6
"""Of a number's ring, and least distance from the middle of one to the next, mm on paper."""
_PLACES = (0.62, 0.42, 0.78, 0.28, 0.52, 0.7, 0.34, 0.88, 0.16)
"""Where on its bone a number may stand, in the order they are tried."""
_NAME = 4.4


def half_drawing(outcome: Outcome, bones: Sequence[Bone], width: float, tallest: float) -> Block:
    """Panels from the centre front to the centre back on one waist line; nothing without a draft."""
    draft = outcome.draft
    if draft is None:
        return Block(0.0, lambda pen, left, top: None)
    moves = [placement.dx for placement in placements(outcome, "apart", _GAP)]
    shown = [panel.outline + np.array([dx, 0.0]) for panel, dx in zip(draft.panels, moves, strict=True)]
    low = np.min([line.min(axis=0) for line in shown], axis=0)
    high = np.max([line.max(axis=0) for line in shown], axis=0)
    scale = _scale(high - low, width, tallest - _NAME)
    lines = [bone.line + np.array([moves[bone.panel], 0.0]) for bone in bones]

    def paint(pen: Pen, left: float, top: float) -> None:
        middle = left + 0.5 * (width - float(high[0] - low[0]) / scale)
        small = Small(pen, middle - float(low[0]) / scale, top - float(high[1]) / scale, scale)
        for line in shown:
            small.ring(line, _OUTLINE, FAINT)
        small.line(np.array([[low[0] - 12.0, 0.0], [high[0] + 12.0, 0.0]]), _WAIST)
        for line in lines:
            small.line(line, _BONE)
        _numbers(pen, [small.at(line) for line in lines])
        foot = top - float(high[1] - low[1]) / scale - 3.4
        for panel, line in zip(draft.panels, shown, strict=True):
            x = float(small.at(line)[:, 0].mean())
            pen.text(x, foot, panel.name, SMALL, colour=SOFT, align="middle")

    return Block(float(high[1] - low[1]) / scale + _NAME, paint)


def _scale(size: Array, width: float, tallest: float) -> float:
    """The largest round scale at which the half fits."""
    needed = max(float(size[0]) / (width - 6.0), float(size[1]) / tallest)
    return next((scale for scale in SCALES if scale >= needed), needed)


def _numbers(pen: Pen, lines: Sequence[Array]) -> None:
    """A ringed number on every bone, clear of the others."""
    for number, (x, y) in enumerate(_spots(lines), 1):
        pen.circle(x, y, _RADIUS, _RING, WHITE)
        pen.text(x, y - 0.36 * SMALL, str(number), SMALL, bold=True, align="middle")


def _spots(lines: Sequence[Array]) -> Iterator[tuple[float, float]]:
    taken: list[Array] = []
    for line in lines:
        course = Course(line)
        choices = course.at(course.length * np.array(_PLACES))
        away = [
            min((float(np.hypot(*(spot - other))) for other in taken), default=np.inf) for spot in choices
        ]
        best = next((number for number, far in enumerate(away) if far >= _CLEAR), int(np.argmax(away)))
        taken.append(choices[best])
        yield float(choices[best][0]), float(choices[best][1])

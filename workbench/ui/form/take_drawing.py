"""Where the tape goes: a small drawing of the measurement in hand, with how to take it beside it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Literal

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from workbench.body import BY_KEY, Measurement
from workbench.frozen import dataclass
from workbench.ui.look import GRID, fonts, look

Figure = Literal["front", "back", "side", "seated"]
Points = Sequence[tuple[float, float]]

_TALLEST, _SHORTEST = 37 * GRID, 27 * GRID
_HIGH, _WIDE = 122.0, 78.0
"""The drawing's own units: from the chin to the thigh, and across."""

_HALF: Points = (
    *((6, 0), (6.5, 8), (27, 15), (23.5, 25), (23, 33), (24.5, 43)),
    *((20, 54), (17, 70), (21.5, 84), (25.5, 98), (24.5, 120)),
)
"""Right half of a torso seen from the front, from neck to thigh; x from the middle."""
_SIDE_FRONT: Points = (
    *((5, 0), (5, 7), (9, 16), (13, 30), (20, 42), (17, 47), (13, 54)),
    *((11, 70), (14, 84), (14, 98), (12, 120)),
)
_SIDE_BACK: Points = (
    *((-5, 0), (-7, 8), (-13, 20), (-14.5, 32), (-13.5, 43), (-11.5, 54)),
    *((-9, 70), (-13, 84), (-19, 98), (-13, 120)),
)
_SEATED_FRONT: Points = (*_SIDE_FRONT[:7], (11.5, 68), (14, 80), (17, 87), (46, 88))
_SEATED_BACK: Points = (*_SIDE_BACK[:7], (-12, 84), (-19, 96), (-16, 106), (0, 109), (46, 108))

_BUST_X = 10.5
_NECK = (8.5, 8.8)
_HEIGHTS: Mapping[str, float] = {
    "bust_girth": 43,
    "waist_girth": 70,
    "underbust_girth": 54,
    "underbust_exhale": 54,
    "underbust_inhale": 54,
    "top_hip_girth": 84,
    "upper_chest_girth": 32,
    "hip_girth": 98,
    "seated_waist_girth": 68,
}
_LENGTHS: Mapping[str, Points] = {
    "shoulder_to_bust": (_NECK, (10, 26), (_BUST_X, 43)),
    "shoulder_to_underbust": (_NECK, (10, 26), (_BUST_X, 43), (9.8, 54)),
    "shoulder_to_waist": (_NECK, (10, 26), (_BUST_X, 43), (9.8, 54), (8.5, 70)),
    "bust_span": ((-_BUST_X, 43), (_BUST_X, 43)),
    "waist_to_top_hip": ((1, 70), (0.5, 84)),
    "underarm_to_waist": ((-1, 33), (-0.5, 54), (1, 70)),
    "nape_to_waist": ((0, 7), (0, 70)),
    "waist_to_lap": ((11.5, 68), (14, 80), (17, 87)),
    "waist_to_thigh": ((1, 68), (3, 80), (6, 87)),
}
_MEETS: Mapping[str, float] = {"shoulder_to_underbust": 54, "waist_to_top_hip": 84, "underarm_to_waist": 33}
"""The height of a level that a length begins or ends at, where no line of the figure is."""
_BREATHS: Mapping[str, int] = {"underbust_exhale": -1, "underbust_inhale": 1}
"""Whether the ribs go in or out."""
_ARMHOLE: Points = ((24, 16), (20.6, 24), (23, 33))
_STOOL = 111.0


@dataclass(frozen=True)
class Taking:
    """A measurement as it is drawn: on which figure, and the tape as points or as a line round the body."""

    figure: Figure
    tape: Points
    round_body: bool


def taking_of(measurement: Measurement) -> Taking:
    """How a measurement is drawn."""
    figure: Figure = "seated" if measurement.group == "Seated" else measurement.view
    if measurement.key == "armscye_girth":
        return Taking(figure, (), True)
    if measurement.key in _LENGTHS:
        return Taking(figure, _LENGTHS[measurement.key], False)
    height = _HEIGHTS[measurement.key]
    left, right = _width_at(figure, height)
    return Taking(figure, ((left, height), (right, height)), True)


def _width_at(figure: Figure, y: float) -> tuple[float, float]:
    """Where a level line meets the outline."""
    front, back = {
        "side": (_SIDE_FRONT, _SIDE_BACK),
        "seated": (_SEATED_FRONT, _SEATED_BACK),
    }.get(figure, (_HALF, tuple((-x, y) for x, y in _HALF)))
    return _x_at(back, y), _x_at(front, y)


def _x_at(outline: Points, y: float) -> float:
    for (x0, y0), (x1, y1) in pairwise(outline):
        if y0 <= y <= y1:
            return x0 + (x1 - x0) * (y - y0) / (y1 - y0)
    return outline[-1][0]


class TakeDrawing(QWidget):
    """The body in soft ink, the tape in the colour of what is in hand."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._measurement: Measurement | None = None
        self.setFixedSize(QSize(24 * GRID, _TALLEST))

    def show_measurement(self, measurement: Measurement) -> None:
        """Draw this one."""
        self._measurement = measurement
        seated = ", seated" if measurement.group == "Seated" else ""
        self.setAccessibleName(f"Drawing: {measurement.label}, seen from the {measurement.view}{seated}")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The figure, then the tape."""
        if self._measurement is None:
            return
        taking = taking_of(self._measurement)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        scale = min(self.width() / _WIDE, self.height() / _HIGH)
        # A seated figure needs room for the thigh, any other for the word at the right of its neck.
        middle = 0.34 if taking.figure == "seated" else 0.4
        painter.translate(self.width() * middle, 1)
        painter.scale(scale, scale)
        _draw_figure(painter, taking.figure)
        _draw_met(painter, self._measurement.key, taking.figure)
        _draw_tape(painter, self._measurement, taking)
        painter.resetTransform()
        painter.setPen(look().soft_ink)
        painter.setFont(fonts().small)
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop, taking.figure)
        painter.end()


def _pen(colour: QColor, width: float) -> QPen:
    pen = QPen(colour, width)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    pen.setCosmetic(True)
    return pen


def _smooth(points: Points) -> QPainterPath:
    """A path through the points, rounded at each."""
    path = QPainterPath(QPointF(*points[0]))
    for (x1, y1), (x2, y2) in pairwise(points[1:]):
        path.quadTo(QPointF(x1, y1), QPointF((x1 + x2) / 2, (y1 + y2) / 2))
    path.lineTo(QPointF(*points[-1]))
    return path


def _draw_figure(painter: QPainter, figure: Figure) -> None:
    painter.setPen(_pen(look().soft_ink, 1.4))
    if figure in ("side", "seated"):
        sides = (_SIDE_FRONT, _SIDE_BACK) if figure == "side" else (_SEATED_FRONT, _SEATED_BACK)
    else:
        sides = (_HALF, tuple((-x, y) for x, y in _HALF))
    front, back = (_smooth(side) for side in sides)
    body = QPainterPath(front)
    body.connectPath(back.toReversed())
    painter.fillPath(body, look().field)
    painter.drawPath(front)
    painter.drawPath(back)
    painter.setPen(_pen(look().rule, 1))
    _draw_hints(painter, figure)


def _draw_hints(painter: QPainter, figure: Figure) -> None:
    """The cord at the waist, and a few lines that tell front from back and where the arm was."""
    cord = _HEIGHTS["seated_waist_girth" if figure == "seated" else "waist_girth"]
    left, right = _width_at(figure, cord)
    painter.drawLine(QPointF(left, cord), QPointF(right, cord))
    if figure == "front":
        for x in (-_BUST_X, _BUST_X):
            painter.drawArc(QRectF(x - 8, 36, 16, 15), 200 * 16, 140 * 16)
            painter.drawEllipse(QPointF(x, 43), 0.8, 0.8)
        painter.drawArc(QRectF(-6.5, 2, 13, 12), 190 * 16, 160 * 16)
    elif figure == "back":
        for x in (-9.0, 9.0):
            painter.drawLine(QPointF(x, 24), QPointF(x * 0.8, 38))
        painter.drawLine(QPointF(0, 100), QPointF(0, 112))
    else:
        painter.drawEllipse(QRectF(-6, 15, 11, 18))
    if figure in ("front", "back"):
        painter.drawPath(_smooth(_ARMHOLE))
        painter.drawPath(_smooth(tuple((-x, y) for x, y in _ARMHOLE)))
    elif figure == "seated":
        painter.drawLine(QPointF(-21, _STOOL), QPointF(46, _STOOL))


def _draw_met(painter: QPainter, key: str, figure: Figure) -> None:
    """The level that a length is taken from or to."""
    if key in _MEETS:
        left, right = _width_at(figure, _MEETS[key])
        pen = _pen(look().rule, 1)
        pen.setDashPattern([4, 3])
        painter.setPen(pen)
        painter.drawLine(QPointF(left, _MEETS[key]), QPointF(right, _MEETS[key]))


def _draw_tape(painter: QPainter, measurement: Measurement, taking: Taking) -> None:
    pen = _pen(look().selected, 2.4)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if measurement.key == "armscye_girth":
        painter.drawEllipse(QRectF(-6.5, 14, 12, 20))
    elif taking.round_body:
        _draw_girth(painter, taking.tape, pen)
        _draw_breath(painter, taking.tape, _BREATHS.get(measurement.key, 0))
    else:
        painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in taking.tape]))
        painter.setBrush(look().selected)
        for x, y in (taking.tape[0], taking.tape[-1]):
            painter.drawEllipse(QPointF(x, y), 1.6, 1.6)


def _draw_girth(painter: QPainter, tape: Points, pen: QPen) -> None:
    """A band round the body: what is behind it is dashed."""
    (left, y), (right, _) = tape
    band = QRectF(left, y - 3, right - left, 6)
    painter.drawArc(band, 180 * 16, 180 * 16)
    behind = QPen(pen)
    behind.setWidthF(1.2)
    behind.setDashPattern([2, 2.5])
    painter.setPen(behind)
    painter.drawArc(band, 0, 180 * 16)


def _draw_breath(painter: QPainter, tape: Points, way: int) -> None:
    """An arrow at either side: which way the ribs have gone when the tape is read."""
    if not way:
        return
    painter.setPen(_pen(look().selected, 1.6))
    for (x, y), outward in zip(tape, (-1, 1), strict=True):
        near, far = x + outward * 3.0, x + outward * 9.5
        tip, tail = (far, near) if way > 0 else (near, far)
        back = tip + (tail - tip) * 0.4
        painter.drawLine(QPointF(tail, y), QPointF(tip, y))
        painter.drawPolyline(QPolygonF([QPointF(back, y - 2.6), QPointF(tip, y), QPointF(back, y + 2.6)]))


class TakePanel(QWidget):
    """The drawing, the name and the two sentences."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.drawing = TakeDrawing(self)
        self.title, self.how = QLabel(self), QLabel(self)
        self.title.setFont(fonts().strong)
        for label in (self.title, self.how):
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
        self.how.setFont(fonts().small)
        self.how.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        words = QVBoxLayout()
        words.setSpacing(GRID)
        words.addWidget(self.title)
        words.addWidget(self.how)
        words.addStretch(1)
        line = QHBoxLayout(self)
        line.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 2 * GRID)
        line.setSpacing(3 * GRID)
        line.addWidget(self.drawing)
        line.addLayout(words, 1)
        self.show_room(4 * _TALLEST)

    def show_room(self, height: int) -> None:
        """Take no more than a quarter of the height there is, but enough for all of the words."""
        tall = max(min(height // 4, _TALLEST), _SHORTEST)
        self.drawing.setFixedHeight(tall)
        self.setFixedHeight(tall + 4 * GRID)

    def show_measurement(self, key: str) -> None:
        """Show how this one is taken."""
        measurement = BY_KEY[key]
        self.title.setText(measurement.label)
        self.how.setText(measurement.how)
        self.drawing.show_measurement(measurement)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A hairline along the top."""
        painter = QPainter(self)
        painter.fillRect(0, 0, self.width(), 1, look().hairline)
        painter.end()

"""A design with its seams closed, as the chooser draws it: panels, seams, and a hint of the bones."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPolygonF, QTransform

from workbench.body import Body, girths, walks
from workbench.document import Picture
from workbench.sheets import View, garment_views
from workbench.ui.board.pens import pen
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.look import look

_BELOW, _ABOVE = 85.0, 45.0
"""mm that a shape may reach below the top hip and above the upper chest."""
_BESIDE = 1.04
_BUSK = 7.0
"""mm from the middle to either steel of a busk."""
_BONE_PIXELS = 4.0
_POINTS = 24
"""Points that a line on a card has, about."""


@dataclass(frozen=True)
class Side:
    """Front or back of a design, in mm: x from the middle, y up from the waist."""

    name: str
    fills: tuple[QPolygonF, ...]
    edges: tuple[QPolygonF, ...]
    """Neckline, hem, and where it ends at the sides."""
    seams: tuple[QPolygonF, ...]
    bones: tuple[QPolygonF, ...]


def sides_of(picture: Picture) -> tuple[Side, ...]:
    """Front and back of the draft of a picture; nothing where there is none."""
    if not picture.current or picture.good is None:
        return ()
    front, back = garment_views(picture.good)
    making = picture.project.making
    middle = _middle(front) if "centre_front" in making.boning.places or making.front == "busk" else ()
    if making.front == "busk":
        middle = tuple(line.translated(side, 0.0) for line in middle for side in (-_BUSK, _BUSK))
    along = "seams" in making.boning.places
    return _side(front, along, middle), _side(back, along, ())


def _side(view: View, along_seams: bool, more: tuple[QPolygonF, ...]) -> Side:
    cuts = tuple(_thinned(stroke.points) for stroke in view.strokes if stroke.role == "cut")
    seams = tuple(_thinned(stroke.points) for stroke in view.strokes if stroke.role == "stitch")
    fills = tuple(polygon(ring) for ring in view.fills)
    return Side(view.name, fills, cuts, seams, (*(seams if along_seams else ()), *more))


def _thinned(points: Array) -> QPolygonF:
    """The line through fewer points: on a card, nobody sees the others, and each costs time."""
    every = max(len(points) // _POINTS, 1)
    return polygon(np.concatenate((points[:-1:every], points[-1:])))


def _middle(view: View) -> tuple[QPolygonF, ...]:
    """The centre front from hem to neckline."""
    points = np.concatenate(view.fills)
    heights = points[np.abs(points[:, 0]) < 0.5, 1]
    if not len(heights):
        return ()
    ends = np.array([[0.0, heights.min()], [0.0, heights.max()]])
    return (polygon(ends),)


def frame_of(body: Body) -> QRectF:
    """Room in mm, y down, for any shape on this body: cards of one scale can be compared."""
    levels, round_her = walks(body), girths(body)
    half = 0.25 * max(round_her.values()) * _BESIDE
    top, bottom = levels["upper_chest"] + _ABOVE, levels["top_hip"] - _BELOW
    return QRectF(-half, -top, 2 * half, top - bottom)


def paint_side(painter: QPainter, side: Side, frame: QRectF, box: QRectF) -> None:
    """Paint one side so that the frame fills the box as far as it can, in its middle."""
    scale = min(box.width() / frame.width(), box.height() / frame.height())
    view = QTransform()
    view.translate(box.center().x(), box.center().y())
    view.scale(scale, scale)
    view.translate(-frame.center().x(), -frame.center().y())
    view.scale(1.0, -1.0)
    painter.save()
    painter.setTransform(view, True)
    _paint(painter, side)
    painter.restore()


def _paint(painter: QPainter, side: Side) -> None:
    shown = look()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(shown.panel)
    for fill in side.fills:
        painter.drawPolygon(fill)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width, lines in (
        (shown.bar_body, _BONE_PIXELS, side.bones),
        (shown.rule, 1.0, side.seams),
        (shown.ink, 1.0, (*side.edges, *side.edges)),  # twice is stronger, and far quicker than a wider pen
    ):
        drawn = pen(colour, width)
        drawn.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(drawn)
        for line in lines:
            painter.drawPolyline(line)


def paint_waist(painter: QPainter, frame: QRectF, box: QRectF) -> None:
    """A hairline where the waist lies, so that the eye finds it on every card."""
    scale = min(box.width() / frame.width(), box.height() / frame.height())
    y = box.center().y() - scale * frame.center().y()
    painter.setPen(pen(look().hairline))
    painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))


def said_sides(sides: Sequence[Side]) -> str:
    """What is drawn, for a screen reader."""
    return " and ".join(side.name.lower() for side in sides)

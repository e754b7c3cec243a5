"""Draws the bodice on the body: torso, panels, lines, the outline as it was before."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF, QTransform

from workbench.draft import Place
from workbench.ui.board.pens import faint, mixed, pen
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.look import look
from workbench.ui.worn.grips import Grip
from workbench.ui.worn.stage import Stage
from workbench.worn import LineRole, Seen, SeenLine, SeenPanel

_BONE_HALF_MM = 2.5
"""Half of how broad a bone is drawn; flat steel is 7 mm across (common practice, no source)."""
_ASIDE = np.array([_BONE_HALF_MM, 0.0])
_TINTS = 8
"""Shades between a panel that faces the light and one that turns away."""


def paint_worn(painter: QPainter, shown: Seen, stage: Stage, place: Place | None) -> None:
    """The body and the garment on it; ``place`` is what is lit up."""
    painter.setTransform(stage.transform())
    _body(painter, shown)
    _panels(painter, shown, place)
    _levels(painter, shown, place)
    _lines(painter, shown)
    if place is not None:
        _lit(painter, shown, place)
    _before(painter, shown, stage.scale)
    painter.setTransform(QTransform())


def _body(painter: QPainter, shown: Seen) -> None:
    ring = polygon(shown.body)
    _fill(painter, mixed(look().paper, look().bar_body, 0.45), [ring])
    painter.setPen(pen(look().rule))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolygon(ring)
    painter.drawPolyline(polygon(shown.rim))


def _fill(painter: QPainter, colour: QColor, rings: list[QPolygonF]) -> None:
    """Without smooth edges, which take three times as long and are drawn over by a line."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    for ring in rings:
        painter.drawPolygon(ring)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)


def _panels(painter: QPainter, shown: Seen, place: Place | None) -> None:
    chosen = place.panel if place is not None else None
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)  # the seams cover the rim
    for panel in shown.panels:
        painter.setBrush(look().selected_fill if panel.number == chosen else _tint(panel))
        painter.drawPolygon(polygon(panel.ring))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)


def _tint(panel: SeenPanel) -> QColor:
    """Paper where it faces the light, a shade where it turns away, in whole steps."""
    turned = round(_TINTS * (1.0 - max(panel.facing, 0.0))) / _TINTS
    return mixed(look().panel, look().bar_body, 0.9 * turned)


def _levels(painter: QPainter, shown: Seen, place: Place | None) -> None:
    chosen = place.level if place is not None else None
    for name, line in shown.levels.items():
        colour = look().selected if name == chosen else look().soft_ink if name == "waist" else look().rule
        painter.setPen(pen(colour))
        painter.drawPolyline(polygon(line))


def _pens() -> dict[LineRole, QPen]:
    shown = look()
    ink = pen(shown.ink)
    return {
        "lacing": pen(shown.soft_ink),
        "seam": ink,
        "centre": pen(shown.rule),
        "edge": ink,
        "hem": ink,
        "neckline": ink,
    }


def _lines(painter: QPainter, shown: Seen) -> None:
    bones = [line.points for line in shown.lines if line.role == "bone"]
    _fill(painter, mixed(look().bar_body, look().rule, 0.4), [_ribbon(bone) for bone in bones])
    painter.setBrush(Qt.BrushStyle.NoBrush)
    pens = _pens()
    for line in shown.lines:
        if line.role == "bone":
            continue
        painter.setPen(pens[line.role])
        drawn = polygon(line.points)
        painter.drawPolyline(drawn)
        if line.role in ("hem", "neckline", "edge"):
            painter.drawPolyline(drawn)  # twice: stronger at the cost of a hairline


def _ribbon(line: Array) -> QPolygonF:
    """A bone as broad as it is: filled, a quarter of the time of a broad line. Bones run upwards."""
    return polygon(np.concatenate((line - _ASIDE, line[::-1] + _ASIDE)))


def _lit(painter: QPainter, shown: Seen, place: Place) -> None:
    """The seam, neckline or hem that is lit up."""
    painter.setPen(pen(look().selected, 3.0))
    for line in shown.lines:
        if _is_at(line, place):
            painter.drawPolyline(polygon(line.points))


def _is_at(line: SeenLine, place: Place) -> bool:
    if place.line is not None and place.point is None:
        return line.role == place.line
    return place.seam is not None and place.level is None and line.seam == place.seam


def _before(painter: QPainter, shown: Seen, scale: float) -> None:
    """Where the body was before: only where it is more than a hair away from where it is now."""
    painter.setPen(pen(look().soft_ink, 1.0, Qt.PenStyle.DashLine))
    for was, now in zip(shown.before, shown.worn, strict=True):
        apart = np.abs(was[:, 0] - now[:, 0]) * scale > 0.75
        for first, last in _runs(apart):
            painter.drawPolyline(polygon(was[first:last]))


def _runs(on: np.typing.NDArray[np.bool_]) -> list[tuple[int, int]]:
    """From where to where a row of yes and no says yes, with one more at either end."""
    turns = np.flatnonzero(np.diff(np.concatenate(([False], on, [False])).astype(np.int8))).tolist()
    return [
        (max(first - 1, 0), min(last + 1, len(on)))
        for first, last in zip(turns[::2], turns[1::2], strict=True)
    ]


def paint_grips(
    painter: QPainter, grips: tuple[Grip, ...], stage: Stage, over: Grip | None, chosen: Grip | None
) -> None:
    """The shape points: round where the line runs on smoothly, square where it turns a corner."""
    shown = look()
    for grip in grips:
        lit, held = over is not None and grip.key == over.key, chosen is not None and grip.key == chosen.key
        painter.setPen(pen(shown.selected, 1.8))
        painter.setBrush(shown.selected if held else shown.selected_fill if lit else shown.field)
        size = 5.5 if lit or held else 4.2
        at = stage.pixel(grip.x, grip.y)
        if grip.point.smooth:
            painter.drawEllipse(at, size, size)
        else:
            painter.drawRect(QRectF(at - QPointF(size, size) * 0.9, at + QPointF(size, size) * 0.9))


def paint_veil(painter: QPainter, room: QRectF) -> None:
    """Over a bodice that is no longer that of the project."""
    painter.fillRect(room, faint(look().paper, 0.55))

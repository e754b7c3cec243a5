"""Paints the map: panels, what is kept free, beads in their true size, drawn lines and their points."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QPainter, QPainterPath, QPen, QPolygonF, QTransform

from workbench.beads import Band, BandWhy, BeadMark
from workbench.ui.beads.spread import Spread
from workbench.ui.beads.sprites import colour_of, sprite
from workbench.ui.board.lettering import put
from workbench.ui.board.pens import faint, pen
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look

POINTS_BELOW = 2.6
"""Pixels across under which a bead is a dot: no shape could be told."""
_HANDLE, _PICKED = 5.0, 7.0
_NAME_GAP = 10.0


@dataclass(frozen=True)
class KindShown:
    """All beads of one kind: where they lie, (n, 2) mm, and which of them belong to what is picked."""

    mark: BeadMark
    size: float
    points: Array
    picked: Array
    """(n,) true for those of the run or scatter that is picked; all of them where none is."""


@dataclass(frozen=True)
class Shown:
    """What is on the map at one moment."""

    spread: Spread
    bands: tuple[Band, ...]
    kinds: tuple[KindShown, ...]
    lines: tuple[tuple[tuple[QPolygonF, ...], bool], ...]
    """Drawn lines panel by panel, and whether each is of what is picked."""
    handles: tuple[tuple[float, float], ...]
    """Points of the picked line, mm."""
    corners: tuple[bool, ...]
    point: int | None
    """The picked one of them."""
    panel: int | None
    """The panel that is lit up."""
    view: View
    size: QSize
    ratio: float


def paint_map(painter: QPainter, shown: Shown) -> None:
    """All of it, on paper; the painter comes back untransformed."""
    painter.setTransform(shown.view.transform())
    _panels(painter, shown)
    _bands(painter, shown)
    _outlines(painter, shown)
    _lines(painter, shown)
    painter.setTransform(QTransform())
    for kind in shown.kinds:
        paint_beads(painter, kind, shown.view, QRectF(QPointF(0, 0), shown.size), shown.ratio)
    _handles(painter, shown)
    _names(painter, shown)


def paint_beads(painter: QPainter, kind: KindShown, view: View, room: QRectF, ratio: float) -> None:
    """The beads of one kind that are in sight: pictures of one bead set down one by one, or dots."""
    across = kind.size * view.scale
    x, y = view.left + view.scale * kind.points[:, 0], view.waist - view.scale * kind.points[:, 1]
    seen = (
        (x > room.left() - across)
        & (x < room.right() + across)
        & (y > room.top() - across)
        & (y < room.bottom() + across)
    )
    for picked in (False, True):
        own = seen & (kind.picked == picked)
        if not own.any():
            continue
        if across < POINTS_BELOW:
            colour = colour_of(kind.mark) if picked else faint(colour_of(kind.mark), 0.35)
            dots = pen(colour, max(across, 1.0))
            dots.setCapStyle(Qt.PenCapStyle.SquareCap)
            painter.setPen(dots)
            painter.drawPoints(polygon(np.stack((x[own], y[own]), axis=1)))
            continue
        picture = sprite(kind.mark, across, ratio, soft=not picked)
        half = 0.5 * picture.width() / ratio
        for left, top in np.rint(np.stack((x[own] - half, y[own] - half), 1)).astype(int).tolist():
            painter.drawPixmap(left, top, picture)


def _panels(painter: QPainter, shown: Shown) -> None:
    colours = look()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)  # the stitch line covers the rim
    for number, laid in enumerate(shown.spread.panels):
        painter.setBrush(colours.selected_fill if number == shown.panel else colours.panel)
        painter.drawPolygon(laid.outline)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)


_HATCHES: dict[BandWhy, Qt.BrushStyle] = {
    "bone": Qt.BrushStyle.SolidPattern,
    "seam": Qt.BrushStyle.SolidPattern,
    "edge": Qt.BrushStyle.SolidPattern,
    "opening": Qt.BrushStyle.BDiagPattern,
    "arm": Qt.BrushStyle.FDiagPattern,
}


def band_brush(why: BandWhy, view: View | None = None) -> QBrush:
    """How a band is shaded: seams, edges and bones plainly, opening and arm with strokes."""
    colours = look()
    if why in ("opening", "arm"):
        brush = QBrush(faint(colours.rule, 0.7), _HATCHES[why])
        if view is not None:
            # strokes keep their distance on the screen whatever the zoom
            brush.setTransform(QTransform.fromScale(1 / view.scale, 1 / view.scale))
        return brush
    return QBrush(faint(colours.rule, 0.5) if why == "bone" else faint(colours.hairline, 0.8))


def _bands(painter: QPainter, shown: Shown) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    for band in sorted(shown.bands, key=lambda band: band.why == "bone"):
        laid = shown.spread.panels[band.panel] if band.panel < len(shown.spread.panels) else None
        if laid is None:
            continue
        path = QPainterPath()
        for ring in band.rings:
            path.addPolygon(laid.put(ring))
            path.closeSubpath()
        painter.setBrush(band_brush(band.why, shown.view))
        painter.drawPath(path)


def _outlines(painter: QPainter, shown: Shown) -> None:
    colours = look()
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for laid in shown.spread.panels:
        for name, line in laid.levels:
            painter.setPen(pen(colours.soft_ink if name == "waist" else colours.level))
            painter.drawPolyline(line)
        painter.setPen(pen(colours.ink))
        painter.drawPolygon(laid.outline)


def _lines(painter: QPainter, shown: Shown) -> None:
    for parts, picked in shown.lines:
        style = Qt.PenStyle.SolidLine if picked else Qt.PenStyle.DashLine
        painter.setPen(pen(look().selected if picked else look().soft_ink, 1.0, style))
        for part in parts:
            painter.drawPolyline(part)


def _handles(painter: QPainter, shown: Shown) -> None:
    colours = look()
    for number, ((x, y), smooth) in enumerate(zip(shown.handles, shown.corners, strict=True)):
        picked = number == shown.point
        painter.setPen(QPen(colours.selected, 2))
        painter.setBrush(colours.selected if picked else colours.field)
        middle, half = shown.view.at(x, y), _PICKED if picked else _HANDLE
        if smooth:
            painter.drawEllipse(middle, half, half)
        else:
            painter.drawRect(QRectF(middle.x() - half, middle.y() - half, 2 * half, 2 * half))


def _names(painter: QPainter, shown: Shown) -> None:
    """Names of panels under them."""
    for number, laid in enumerate(shown.spread.panels):
        box = laid.outline.boundingRect()
        painter.setPen(look().selected if number == shown.panel else look().ink)
        middle = shown.view.x(box.center().x())
        put(painter, laid.panel.name, middle, shown.view.y(box.top()) + _NAME_GAP, fonts().strong, "middle")

"""Draws what the hand takes hold of: intake figures, handles, and the distances while one moves."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QTransform

from workbench.sheets import Placement
from workbench.ui.board.figures import Figure, FigureKey
from workbench.ui.board.handles import Handle, HandleKey
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.measures import Measures
from workbench.ui.board.pens import pen
from workbench.ui.board.scene import Scene
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look

_LINE = 17.0
_PAD = 8.0


def paint_figures(
    painter: QPainter, scene: Scene, view: View, hover: FigureKey | None, chosen: FigureKey | None
) -> None:
    """The intake of each side of each seam; a pinned one carries a pin."""
    shown = look()
    for figure in scene.figures:
        if not figure.shown(view):
            return  # one size for all: none of them is shown
        if figure.key == chosen or figure.key == hover:
            _frame(painter, figure.box(view).adjusted(-4, 0, 4, 0), figure.key == chosen)
        painter.setPen(shown.selected)
        put(painter, figure.words, *figure.spot(view), figure.font(view), figure.align)
        if figure.pinned:
            _pin(painter, figure.pin_at(view))


def _frame(painter: QPainter, box: QRectF, chosen: bool) -> None:
    shown = look()
    painter.setPen(pen(shown.selected, 1.6 if chosen else 1.0))
    painter.setBrush(shown.field)
    painter.drawRoundedRect(box, 3, 3)


def _pin(painter: QPainter, at: QPointF) -> None:
    """A dressmaker's pin: a round head on a short shank."""
    colour = look().selected
    painter.setPen(pen(colour, 1.2))
    painter.setBrush(colour)
    painter.drawLine(at, at + QPointF(0, 6))
    painter.drawEllipse(at + QPointF(0, -2), 2.1, 2.1)


def paint_handles(
    painter: QPainter, scene: Scene, view: View, hover: HandleKey | None, chosen: HandleKey | None
) -> None:
    """Round where the line runs on smoothly, square where it turns a corner."""
    shown = look()
    for handle in scene.handles:
        lit, held = handle.key == hover, handle.key == chosen
        painter.setPen(pen(shown.selected, 1.8))
        painter.setBrush(shown.selected if held else shown.selected_fill if lit else shown.field)
        _handle(painter, handle, view, 5.5 if lit or held else 4.2)


def _handle(painter: QPainter, handle: Handle, view: View, size: float) -> None:
    at = handle.pixel(view)
    if handle.point.smooth:
        painter.drawEllipse(at, size, size)
    else:
        half = 0.9 * size
        painter.drawRect(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half))


def paint_measures(painter: QPainter, measures: Measures, view: View, room: QRectF) -> None:
    """The two lines the distances are taken along, and the distances in a box beside the handle."""
    shown = look()
    painter.setTransform(view.transform())
    painter.setPen(pen(shown.selected, 1.2, Qt.PenStyle.DashLine))
    painter.drawPolyline(measures.up)
    painter.drawPolyline(measures.across)
    painter.setTransform(QTransform())
    _box(painter, measures.lines, measures.handle.pixel(view), room)


def _box(painter: QPainter, lines: tuple[str, ...], at: QPointF, room: QRectF) -> None:
    """Words in a box at the upper right of a point, kept inside the room."""
    shown, font = look(), fonts().body
    size_x = max(width_of(words, font) for words in lines) + 2 * _PAD
    size_y = _LINE * len(lines) + _PAD
    left = at.x() + 18 if at.x() + 18 + size_x < room.right() else at.x() - 18 - size_x
    top = min(max(at.y() - size_y - 12, room.top() + 4), room.bottom() - size_y - 4)
    painter.setPen(pen(shown.selected))
    painter.setBrush(shown.field)
    painter.drawRoundedRect(QRectF(left, top, size_x, size_y), 4, 4)
    painter.setPen(shown.ink)
    for number, words in enumerate(lines):
        put(painter, words, left + _PAD, top + 0.5 * _PAD + (number + 0.5) * _LINE, font)


def figure_named(scene: Scene, key: FigureKey | None) -> Figure | None:
    """The first copy of a figure that is on show."""
    return next((figure for figure in scene.figures if figure.key == key), None)


def handle_named(scene: Scene, key: HandleKey, held: Placement | None = None) -> Handle | None:
    """The copy of a handle on the side of the body where it is held, or else the first."""
    copies = [handle for handle in scene.handles if handle.key == key]
    same_side = (handle for handle in copies if held is not None and handle.placement.flip == held.flip)
    return next(same_side, copies[0] if copies else None)

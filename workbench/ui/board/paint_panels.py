"""Draws the panels: outlines, level lines, allowances, the intake between them, names and widths."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import QFont, QPainter, QTransform

from workbench.body import LevelName
from workbench.draft import Place
from workbench.ui.board.lettering import box_of, put, width_of
from workbench.ui.board.pens import faint, pen
from workbench.ui.board.polygons import polygon
from workbench.ui.board.scene import Scene
from workbench.ui.board.shapes import Shape, edge_names
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look

_SMALLEST_TEXT_SCALE = 0.35
"""Pixels a millimetre below which words on a panel would only be in the way."""
_WIDTH_ROOM, _NAME_ROOM, _NAME_DROP, _NAME_LINE = 14.0, 4.0, 14.0, 14.0
"""Pixels that must be left beside a width or a name for it to be written, and from the hem to the name."""
_OPENING = "opening"
_SEEN_THROUGH = 0.4
"""How much of a panel's ground is left where a picture lies behind it."""
_BESIDE = 14.0
"""mm beside a panel that its name may take up."""


def paint_panels(
    painter: QPainter, scene: Scene, view: View, place: Place | None, *, through: bool = False
) -> None:
    """Everything that is drawn in mm; the painter comes back untransformed.

    ``through`` lets what lies behind the panels be seen.
    """
    painter.setTransform(view.transform())
    if scene.layout == "block":
        _block(painter, scene)
    _cuts(painter, scene)
    _fills(painter, scene, place, _SEEN_THROUGH if through else 1.0)
    _level_lines(painter, scene, place)
    _stitch_lines(painter, scene)
    if place is not None:
        _selected_edges(painter, scene, place)
    painter.setTransform(QTransform())


def paint_ghost(painter: QPainter, ghost: Scene, view: View) -> None:
    """The outlines as they were before the drag."""
    painter.setTransform(view.transform())
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(look().ghost))
    for shape in ghost.shapes:
        painter.drawPolygon(shape.outline)
        painter.drawPolygon(shape.outline)
    painter.setTransform(QTransform())


def paint_names(painter: QPainter, scene: Scene, view: View) -> None:
    """The name of each panel, and how wide it is at its levels."""
    if view.scale < _SMALLEST_TEXT_SCALE:
        return
    taken = {(figure.key.panel, figure.key.level) for figure in scene.figures if figure.below(view)}
    _names(painter, scene, view)
    for shape in scene.shapes:
        _widths(painter, scene, shape, view, taken)
    if scene.layout == "block" and scene.outcome.design.opening_mm > 0:
        _opening(painter, scene, view)


def _opening(painter: QPainter, scene: Scene, view: View) -> None:
    """What is left of the block at the centre back is no intake: it is half of the opening."""
    right = sum(scene.outcome.blocks.values())
    x = view.x(right - 0.25 * scene.outcome.design.opening_mm)
    painter.setPen(look().soft_ink)
    put(painter, _OPENING, x, view.y(scene.bounds[1]) + _NAME_DROP, fonts().small, "middle")


def _block(painter: QPainter, scene: Scene) -> None:
    """The two block rectangles, and what is taken out of them."""
    shown = look()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(shown.intake)
    for intake in scene.intakes:
        painter.drawPolygon(intake)
    _, low, _, high = scene.bounds
    front, back = scene.outcome.blocks["front"], scene.outcome.blocks["back"]
    painter.setPen(pen(shown.rule, 1.0, Qt.PenStyle.DashLine))
    painter.drawLines([QLineF(x, low, x, high) for x in (0.0, front, front + back)])


def _cuts(painter: QPainter, scene: Scene) -> None:
    painter.setPen(pen(look().rule, 1.0))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for shape in scene.shapes:
        if shape.cut is not None:
            painter.drawPolygon(shape.cut)


def _fills(painter: QPainter, scene: Scene, place: Place | None, strength: float) -> None:
    shown = look()
    chosen = place.panel if place is not None else None
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)  # the stitch line covers the rim
    for shape in scene.shapes:
        fill = shown.selected_fill if shape.panel.index == chosen else shown.panel
        painter.setBrush(fill if strength == 1.0 else faint(fill, strength))
        painter.drawPolygon(shape.outline)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)


def _level_lines(painter: QPainter, scene: Scene, place: Place | None) -> None:
    shown = look()
    usual, waist, lit = pen(shown.level), pen(shown.soft_ink), pen(shown.selected)
    chosen = place.level if place is not None else None
    for shape in scene.shapes:
        for level, line in shape.levels.items():
            painter.setPen(lit if level == chosen else waist if level == "waist" else usual)
            painter.drawPolyline(line)
            if level == chosen:
                painter.drawPolyline(line)


def _stitch_lines(painter: QPainter, scene: Scene) -> None:
    painter.setPen(pen(look().ink))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for shape in scene.shapes:
        painter.drawPolygon(shape.outline)
        painter.drawPolygon(shape.outline)


def _selected_edges(painter: QPainter, scene: Scene, place: Place) -> None:
    painter.setPen(pen(look().selected, 3.0))
    for shape in scene.shapes:
        for name in edge_names(place.line if place.point is None else None, place.seam, shape):
            painter.drawPolyline(polygon(shape.edge(name)))


def _names(painter: QPainter, scene: Scene, view: View) -> None:
    """Under the hem, clear of figures and handles, on paper so that no level line runs through them."""
    if not scene.shapes:
        return
    beside = max(scene.beside, 0.0 if scene.layout == "block" else _BESIDE)
    room = view.scale * (min(shape.box[2] - shape.box[0] for shape in scene.shapes) + beside)
    names = [shape.panel.name for shape in scene.shapes]
    font, broken = fonts().strong, False
    if max(width_of(name, font) for name in names) + _NAME_ROOM > room:
        font = fonts().small
        broken = max(width_of(name, font) for name in names) + _NAME_ROOM > room
    for shape, name in zip(scene.shapes, names, strict=True):
        at = view.at(0.5 * (shape.box[0] + shape.box[2]), _lowest(shape))
        for number, words in enumerate(name.split() if broken else (name,)):
            _on_paper(painter, words, at.x(), at.y() + _NAME_DROP + number * _NAME_LINE, font)


def _on_paper(painter: QPainter, words: str, x: float, y: float, font: QFont) -> None:
    painter.fillRect(box_of(words, x, y, font, "middle").adjusted(-3, 2, 3, -2), look().paper)
    painter.setPen(look().ink)
    put(painter, words, x, y, font, "middle")


def _lowest(shape: Shape) -> float:
    """The lowest mm that the panel, or its cut line, comes down to; Qt calls the smaller y the top."""
    return shape.box[1] if shape.cut is None else shape.cut.boundingRect().top()


def _widths(
    painter: QPainter, scene: Scene, shape: Shape, view: View, taken: set[tuple[int, LevelName]]
) -> None:
    """Below the middle of each level line, where the intake figures leave room for it."""
    font = fonts().body
    painter.setPen(look().soft_ink)
    for level, line in shape.levels.items():
        width = shape.panel.widths[level]
        words = scene.say(width)
        if (shape.panel.index, level) in taken or view.scale * width < width_of(words, font) + _WIDTH_ROOM:
            continue
        middle: QPointF = line.at(line.size() // 2)
        put(painter, words, view.x(middle.x()), view.y(middle.y()) + 9, font, "middle")


def paint_stopped(painter: QPainter, scene: Scene, view: View) -> None:
    """A veil over a draft that is no longer that of the project."""
    painter.setTransform(view.transform())
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(faint(look().paper, 0.55))
    for shape in scene.shapes:
        painter.drawPolygon(shape.outline)
    painter.setTransform(QTransform())

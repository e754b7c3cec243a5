"""Paints the cutting table: level lines, the other half, pieces, marks, words."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QTransform

from workbench.body import LevelName
from workbench.draft import Place
from workbench.pieces import Bone
from workbench.ui.board.lettering import put
from workbench.ui.board.pens import across, pen, upright
from workbench.ui.board.polygons import polygon
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look
from workbench.ui.pieces.allowance_figures import AllowanceFigure, shown
from workbench.ui.pieces.edges import Edge, edge_of
from workbench.ui.pieces.fold import fold_lines
from workbench.ui.pieces.names import paint_names
from workbench.ui.pieces.spread import LaidPiece, Spread

GUTTER = 104.0
"""Pixels at the left in which the names of the levels stand."""
_LABEL = 12.0
_ARROW = 5.0
_NAME_ROOM = 15.0
"""Pixels from one level's name to the next."""


@dataclass(frozen=True)
class Shown:
    """What is on the table at one moment."""

    spread: Spread
    figures: tuple[AllowanceFigure, ...]
    view: View
    size: QSize
    place: Place | None
    """What is lit up in every pane."""
    key: str | None
    """The piece that is lit up here: one that belongs to no panel."""
    over: AllowanceFigure | None
    bones: tuple[Bone, ...]

    @property
    def edge(self) -> Edge | None:
        """The one edge that is picked."""
        return edge_of(self.place, self.spread.project.design)

    def is_lit(self, laid: LaidPiece) -> bool:
        """Whether a piece is picked."""
        panel = self.place.panel if self.place is not None else None
        return laid.piece.key == self.key or (panel is not None and laid.piece.panel == panel)


def paint_table(painter: QPainter, shown_now: Shown) -> None:
    """All of it, on paper; the painter comes back untransformed."""
    spread, view = shown_now.spread, shown_now.view
    _guides(painter, shown_now, shown_now.size.width())
    painter.setTransform(view.transform())
    if spread.halves:
        _other_half(painter, spread)
    _pieces(painter, shown_now)
    _marks(painter, shown_now)
    _lit_edges(painter, shown_now)
    painter.setTransform(QTransform())
    _grain(painter, spread, view)
    paint_names(painter, spread, view)
    _figures(painter, shown_now)
    if spread.levels:
        _gutter(painter, shown_now)


def _guides(painter: QPainter, shown_now: Shown, width: float) -> None:
    """One line for each level, from edge to edge, as in the draft."""
    colours = look()
    chosen = shown_now.place.level if shown_now.place is not None else None
    for name, _, walk in shown_now.spread.levels:
        colour = (
            colours.selected if name == chosen else colours.soft_ink if name == "waist" else colours.level
        )
        across(painter, shown_now.view.y(walk), 0.0, width, colour)


def _gutter(painter: QPainter, shown_now: Shown) -> None:
    """The names of the levels, on a strip of paper that keeps pieces from showing through."""
    height = shown_now.size.height()
    painter.fillRect(QRect(0, 0, int(GUTTER), height), look().paper)
    upright(painter, GUTTER, 0, height, look().hairline)
    _guides(painter, shown_now, GUTTER)
    chosen = shown_now.place.level if shown_now.place is not None else None
    for name, label, y in readable(shown_now.spread, shown_now.view):
        painter.setPen(look().selected if name == chosen else look().ink)
        put(painter, label, _LABEL, y - 9, fonts().strong)


def readable(spread: Spread, view: View) -> list[tuple[LevelName, str, float]]:
    """The levels whose names have room, each with its pixel; the waist has it first."""
    free: list[tuple[LevelName, str, float]] = []
    for name, label, walk in sorted(spread.levels, key=lambda level: level[0] != "waist"):
        y = view.y(walk)
        if all(abs(y - other) >= _NAME_ROOM for _, _, other in free):
            free.append((name, label, y))
    return free


def _other_half(painter: QPainter, spread: Spread) -> None:
    """The same pieces turned over, as a ghost on the other side of the centre front."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(look().ghost))
    for laid in spread.pieces:
        if laid.piece.mirrored or laid.piece.on_fold:
            painter.drawPolygon(laid.turned)


def _pieces(painter: QPainter, shown_now: Shown) -> None:
    """Cloth to the cut line, and the cut line in ink."""
    colours = look()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)  # the cut line covers the rim
    for laid in shown_now.spread.pieces:
        painter.setBrush(colours.selected_fill if shown_now.is_lit(laid) else colours.panel)
        painter.drawPolygon(laid.cut)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(colours.ink))
    for laid in shown_now.spread.pieces:
        painter.drawPolygon(laid.cut)
        painter.drawPolygon(laid.cut)


_LINES = {
    "waist": ("rule", Qt.PenStyle.SolidLine),
    "level": ("hairline", Qt.PenStyle.SolidLine),
    "tape": ("rule", Qt.PenStyle.DashDotLine),
    "bone": ("soft_ink", Qt.PenStyle.SolidLine),
}


def _marks(painter: QPainter, shown_now: Shown) -> None:
    """Lines inside the pieces, then the stitch line, the notches and the fold over them."""
    spread, colours = shown_now.spread, look()
    pens = {kind: pen(getattr(colours, role), 1.0, style) for kind, (role, style) in _LINES.items()}
    for laid in spread.pieces:
        for kind, line in laid.marks:
            if kind in pens:
                painter.setPen(pens[kind])
                painter.drawPolyline(line)
    stitch = pen(colours.soft_ink, 1.0, Qt.PenStyle.CustomDashLine)
    stitch.setDashPattern([4.0, 3.0])
    painter.setPen(stitch)
    for laid in spread.pieces:
        painter.drawPolygon(laid.stitch)
    painter.setPen(pen(colours.ink))
    painter.drawLines(spread.notches)
    painter.setPen(pen(colours.selected, 3.0))
    for line in spread.bone_lines(shown_now.bones):
        painter.drawPolyline(line)


def _lit_edges(painter: QPainter, shown_now: Shown) -> None:
    """The edge that is picked, and what it is sewn to; every edge of a seam or a line that is lit."""
    place, picked = shown_now.place, shown_now.edge
    if place is None or place.point is not None:
        return
    thick, thin = pen(look().selected, 3.0), pen(look().selected, 1.6)
    for laid in shown_now.spread.pieces:
        for edge in laid.piece.edges:
            of_seam = place.seam is not None and edge.seam == place.seam
            of_line = place.line is not None and edge.name == place.line and place.seam is None
            here = picked is not None and (laid.piece.panel, edge.name) == (picked.panel, picked.name)
            if here or (of_seam or (of_line and picked is None)):
                painter.setPen(thick if here or picked is None else thin)
                painter.drawPolyline(polygon(laid.put(edge.stitch)))


def _grain(painter: QPainter, spread: Spread, view: View) -> None:
    """The grain lines with a head at either end, and the bracket of a fold."""
    lines: list[QLineF] = []
    for laid in spread.pieces:
        (x, y), (end_x, end_y) = ((view.x(x + laid.dx), view.y(y)) for x, y in laid.piece.grain)
        lines += [QLineF(x, y, end_x, end_y), *_head(x, y, end_x, end_y), *_head(end_x, end_y, x, y)]
        if laid.fold is not None:
            lines += fold_lines(laid, laid.fold, view)
    painter.setPen(look().soft_ink)
    painter.drawLines(lines)


def _head(x: float, y: float, foot_x: float, foot_y: float) -> tuple[QLineF, QLineF]:
    """Two strokes that open from the tip at (x, y) towards the foot of its arrow."""
    ahead, down = foot_x - x, foot_y - y
    part = _ARROW / max(hypot(ahead, down), 1e-6)
    ahead, down = part * ahead, part * down
    aside, up = -0.5 * down, 0.5 * ahead
    return (
        QLineF(x, y, x + ahead + aside, y + down + up),
        QLineF(x, y, x + ahead - aside, y + down - up),
    )


def _figures(painter: QPainter, shown_now: Shown) -> None:
    """The allowances; one of its own carries a pin, as a pinned intake does in the draft."""
    view, picked = shown_now.view, shown_now.edge
    wide = {laid.piece.key for laid in shown_now.spread.pieces if shown(laid, view)}
    for figure in shown_now.figures:
        if figure.key not in wide:
            continue
        spot = figure.spot(view)
        lit = figure.edge is not None and figure.edge == picked
        if lit or (shown_now.over is not None and shown_now.over == figure):
            _frame(painter, figure.box(view), chosen=lit)
        painter.setPen(look().selected if figure.edge is not None else look().soft_ink)
        put(painter, figure.words, spot.x(), spot.y(), fonts().small, figure.align)
        if figure.own:
            _pin(painter, figure.box(view))


def _frame(painter: QPainter, box: QRectF, *, chosen: bool) -> None:
    painter.setPen(pen(look().selected, 1.6 if chosen else 1.0))
    painter.setBrush(look().field)
    painter.drawRoundedRect(box, 3, 3)


def _pin(painter: QPainter, box: QRectF) -> None:
    """A round head on a short shank, at the upper right of the figure."""
    at = QPointF(box.right() - 2, box.top())
    painter.setPen(pen(look().selected, 1.2))
    painter.setBrush(look().selected)
    painter.drawLine(at, at + QPointF(0, 6))
    painter.drawEllipse(at + QPointF(0, -2), 2.1, 2.1)

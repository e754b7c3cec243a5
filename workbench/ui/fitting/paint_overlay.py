"""Draws the comparison: before as a ghost, after in ink, and what differs where it differs."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen, QTransform

from workbench.draft import Place
from workbench.fitting import u_now
from workbench.ui.board.lettering import box_of, put, width_of
from workbench.ui.board.paint_words import missing_words
from workbench.ui.board.pens import across, pen, upright
from workbench.ui.board.view import View
from workbench.ui.fitting.bench import Compared
from workbench.ui.fitting.laid import Figure, Laid
from workbench.ui.fitting.point import dot_of, pinned_at
from workbench.ui.look import GRID, fonts, look

GUTTER = 22.0 * GRID
_NAME_ROOM, _NAME_DROP, _RISE = 24.0, 16.0, 9.0
_DOT, _SAMPLE = 4.0, 30.0
_SMALLEST_TEXT_SCALE = 0.3
_WRAP = int(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)


@dataclass(frozen=True)
class Shown:
    """Everything that the painter has to know."""

    laid: Laid
    compared: Compared
    view: View
    size: QSize
    place: Place | None
    number: int = 0
    """Of the fitting on show."""


def paint_overlay(painter: QPainter, shown: Shown) -> None:
    """The whole comparison."""
    _guides(painter, shown, 0.0)
    painter.setTransform(shown.view.transform())
    _panels(painter, shown)
    _lit(painter, shown)
    painter.setTransform(QTransform())
    if shown.view.scale >= _SMALLEST_TEXT_SCALE:
        taken = _names(painter, shown)
        for figure in shown.laid.figures:
            _figure(painter, figure, shown.view, taken)
    _dots(painter, shown)
    _gutter(painter, shown)
    _legend(painter, shown)


def _guides(painter: QPainter, shown: Shown, left: float) -> None:
    """One line for each level, from edge to edge."""
    chosen = shown.place.level if shown.place is not None else None
    right = shown.size.width() if left == 0.0 else left
    for name, _, walk in shown.laid.levels:
        role = look().selected if name == chosen else look().soft_ink if name == "waist" else look().level
        across(painter, shown.view.y(walk), 0.0, right, role)


def _panels(painter: QPainter, shown: Shown) -> None:
    colours = look()
    picked = shown.place.panel if shown.place is not None else None
    painter.setPen(Qt.PenStyle.NoPen)
    for pair in shown.laid.pairs:
        painter.setBrush(colours.selected_fill if pair.after.index == picked else colours.panel)
        painter.drawPolygon(pair.outline)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for pair in shown.laid.pairs:
        for name, line in pair.levels:
            painter.setPen(pen(colours.soft_ink if name == "waist" else colours.level))
            painter.drawPolyline(line)
    dashed = pen(colours.soft_ink, 1.0, Qt.PenStyle.CustomDashLine)
    dashed.setDashPattern([4.0, 3.0])
    painter.setPen(dashed)
    for pair in shown.laid.pairs:
        painter.drawPolygon(pair.ghost)
    painter.setPen(pen(colours.ink))
    for pair in shown.laid.pairs:
        painter.drawPolygon(pair.outline)
        painter.drawPolygon(pair.outline)


def _lit(painter: QPainter, shown: Shown) -> None:
    """The edges of the seam or line that is picked."""
    place = shown.place
    if place is None:
        return
    painter.setPen(pen(look().selected, 3.0))
    for pair in shown.laid.pairs:
        for edge in pair.edges(place.seam, place.line if place.seam is None else None):
            painter.drawPolyline(edge)


def _dots(painter: QPainter, shown: Shown) -> None:
    """A ring where something is pinned on neckline or hem, filled for the line that is picked."""
    fitting, design = shown.compared.fitting, shown.compared.picture.project.design
    if fitting is None or shown.compared.scope == "all":
        return
    picked = pinned_at(shown.place, shown.number, fitting)
    for which, change in enumerate(fitting.changes):
        dot = dot_of(shown.laid, change, u_now(change.u, fitting, design)) if change.u is not None else None
        if dot is not None:
            painter.setPen(QPen(look().selected, 1.8))
            painter.setBrush(look().selected if which == picked else look().paper)
            painter.drawEllipse(shown.view.at(dot.x(), dot.y()), _DOT, _DOT)


def _names(painter: QPainter, shown: Shown) -> list[QRectF]:
    """Write the name of each panel below it, where it has room; the boxes no figure may lie on."""
    painter.setPen(look().ink)
    font, taken = fonts().strong, []
    for pair in shown.laid.pairs:
        left, bottom, right, _ = pair.box
        if width_of(pair.after.name, font) <= shown.view.scale * (right - left + 20.0):
            x, y = shown.view.x(0.5 * (left + right)), shown.view.y(bottom) + _NAME_DROP
            taken.append(box_of(pair.after.name, x, y, font, "middle"))
            painter.fillRect(taken[-1], look().paper)  # no level line runs through a name
            put(painter, pair.after.name, x, y, font, "middle")
    return taken


def _figure(painter: QPainter, figure: Figure, view: View, taken: list[QRectF]) -> None:
    """A difference on a slip of paper, so that no line runs through it; one in the way of another waits."""
    font = fonts().small
    x, y = view.x(figure.x), view.y(figure.y) - figure.above * _RISE
    # in the way of a name or another figure, on the other side of its place
    for at in (y, y + 2 * figure.above * _RISE):
        box = box_of(figure.words, x, at, font, "middle").adjusted(-2, 0, 2, 0)
        if not any(box.intersects(other) for other in taken):
            taken.append(box)
            painter.fillRect(box, look().paper)
            painter.setPen(look().selected)
            put(painter, figure.words, x, at, font, "middle")
            return


def _gutter(painter: QPainter, shown: Shown) -> None:
    """The names of the levels, on a strip of paper that keeps panels from showing through."""
    height = shown.size.height()
    painter.fillRect(QRect(0, 0, int(GUTTER), height), look().paper)
    upright(painter, GUTTER, 0, height, look().hairline)
    _guides(painter, shown, GUTTER)
    free: list[float] = []
    painter.setPen(look().ink)
    for _, label, walk in sorted(shown.laid.levels, key=lambda level: level[0] != "waist"):
        y = shown.view.y(walk)
        if all(abs(y - other) >= _NAME_ROOM for other in free):
            free.append(y)
            put(painter, label, 2 * GRID, y - _RISE, fonts().strong)


def _legend(painter: QPainter, shown: Shown) -> None:
    """What the two kinds of outline are; before there is a fitting they are one."""
    if shown.compared.fitting is None:
        return
    x, y, font = GUTTER + 4 * GRID, 4.0 * GRID, fonts().small
    named = _scope_words(shown.compared)
    wide = [_SAMPLE + width_of(words, font) + 6 * GRID for words in named]
    # beside each other, or below each other where there is no room for that
    below = x + sum(wide) > shown.size.width()
    strip = QRectF(GUTTER + 1, 0, shown.size.width() - GUTTER, (12 if below else 8) * GRID)
    painter.fillRect(strip, look().paper)
    dashed = QPen(look().soft_ink, 1.2, Qt.PenStyle.CustomDashLine)
    dashed.setDashPattern([4.0, 3.0])
    for words, line, room in zip(named, (dashed, QPen(look().ink, 1.8)), wide, strict=True):
        painter.setPen(line)
        painter.drawLine(QLineF(QPointF(x, y), QPointF(x + _SAMPLE - 6, y)))
        painter.setPen(look().ink)
        put(painter, words, x + _SAMPLE, y, font)
        x, y = (x, y + 5 * GRID) if below else (x + room, y)


def _scope_words(compared: Compared) -> tuple[str, str]:
    if compared.scope == "all":
        return "as designed", "with all that is carried in"
    return "as it was made up", "with this fitting"


def paint_nothing(painter: QPainter, compared: Compared, room: QRectF) -> None:
    """Why there is nothing to compare, in the middle."""
    title, sentence = _nothing_words(compared)
    middle = room.center()
    wide = min(room.width() - 8 * GRID, 400.0)
    painter.setPen(look().ink)
    put(painter, title, middle.x(), middle.y() - 18, fonts().title, "middle")
    painter.setFont(fonts().body)
    painter.setPen(look().soft_ink)
    painter.drawText(QRectF(middle.x() - 0.5 * wide, middle.y() + 4, wide, 200), _WRAP, sentence)


def _nothing_words(compared: Compared) -> tuple[str, str]:
    project = compared.picture.project
    missing = missing_words(compared.picture)
    if missing:
        return "No draft yet", missing
    for title, outcome in (
        ("It was never drafted", compared.before),
        ("It cannot be drafted", compared.after),
    ):
        if outcome is not None and outcome.draft is None and outcome.findings:
            return title, outcome.findings[0].text(project.unit, project.fraction)
    stops = [finding for finding in compared.picture.findings if finding.severity == "stop"]
    return "No draft yet", stops[0].text(project.unit, project.fraction) if stops else ""

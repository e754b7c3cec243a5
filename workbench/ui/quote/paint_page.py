"""Paints the client's page: the design, what is included, the price, the dates, the cautions.

Sizes are in hundredths of the width of the paper, so that the page looks the same however
large it is shown.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QPolygonF, QTransform

from workbench.body import CAUTIONS
from workbench.cloth import ClientLine, say_money
from workbench.document import STYLE_WORDS
from workbench.draft import Outcome
from workbench.pieces import Cutting
from workbench.sheets import View, garment_views
from workbench.ui.board.polygons import polygon
from workbench.ui.look import fonts
from workbench.ui.quote.bench import Reckoned

_PAPER, _INK, _SOFT, _LINE = QColor("#FFFFFF"), QColor("#1C1916"), QColor("#5E564C"), QColor("#CFC7B9")
_CLOTH = QColor("#F3EFE6")
_EDGE, _GUTTER = 7.0, 5.0
_TITLE, _BODY, _SMALL, _PRICE = 3.6, 1.85, 1.45, 5.2
_PICTURE, _BETWEEN, _NAMED = 44.0, 6.0, 3.0
_INVENTED = "Client and figures are invented for demonstration."
_PROVISIONAL = "Provisional: not every price is known yet, so this amount will change."
_EMPTY = "The page is filled in as soon as there is a draft."
_WRAP = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)


@dataclass(frozen=True)
class DrawnView:
    """One side of the garment, ready to be drawn; mm, y up from the waist."""

    name: str
    bounds: tuple[float, float, float, float]
    fills: tuple[QPolygonF, ...]
    strokes: tuple[tuple[str, QPolygonF], ...]


@dataclass(frozen=True)
class Garment:
    """The design seen from both sides, and what it was drawn from."""

    outcome: Outcome
    cutting: Cutting | None
    views: tuple[DrawnView, ...]


def _garment(outcome: Outcome, cutting: Cutting | None, before: PageWords | None) -> Garment:
    old = before.garment if before is not None else None
    if old is not None and old.outcome is outcome and old.cutting is cutting:
        return old
    return Garment(outcome, cutting, tuple(_drawn(view) for view in garment_views(outcome, cutting)))


def _drawn(view: View) -> DrawnView:
    return DrawnView(
        view.name,
        view.bounds(),
        tuple(polygon(ring) for ring in view.fills),
        tuple((stroke.role, polygon(np.asarray(stroke.points, dtype=float))) for stroke in view.strokes),
    )


@dataclass(frozen=True)
class PageWords:
    """Everything that stands on the page."""

    client: str
    about: str
    invented: bool
    lines: tuple[ClientLine, ...]
    say: Callable[[ClientLine], str]
    """An amount in words."""
    complete: bool
    garment: Garment

    @property
    def spoken(self) -> str:
        """All of it, for a screen reader."""
        lines = (f"{line.name} {line.words} {self.say(line)}".strip() for line in self.lines)
        said = (self.client, self.about, *lines, *CAUTIONS)
        return ". ".join(part for part in said if part)

    def of(self, kind: str) -> list[ClientLine]:
        """The lines of one kind."""
        return [line for line in self.lines if line.kind == kind]


def words_of(reckoned: Reckoned, before: PageWords | None = None) -> PageWords | None:
    """The page of a quote; None while there is none. ``before`` lends its drawing of the same design."""
    quote, picture = reckoned.quote, reckoned.picture
    if quote is None or picture.outcome is None:
        return None
    client, currency = picture.project.client, quote.currency

    def say(line: ClientLine) -> str:
        return "" if line.amount is None else say_money(line.amount, currency)

    about = [part for part in ("Quote", STYLE_WORDS[picture.project.design.style], client.date) if part]
    return PageWords(
        client.name or "No client named",
        " · ".join(about),
        client.invented,
        quote.client,
        say,
        quote.complete,
        _garment(picture.outcome, reckoned.cutting, before),
    )


def paint_page(painter: QPainter, sheet: QRectF, words: PageWords | None) -> None:
    """The page in a box on the screen."""
    painter.save()
    painter.fillRect(sheet, _PAPER)
    unit = sheet.width() / 100.0
    pen = _PagePen(painter, sheet, unit)
    if words is None:
        pen.text(_EMPTY, _EDGE, 12.0, 100 - 2 * _EDGE, _BODY, _SOFT)
    else:
        painter.setClipRect(sheet)
        _paint(pen, words)
    painter.restore()


def _paint(pen: _PagePen, words: PageWords) -> None:
    wide = 100.0 - 2 * _EDGE
    pen.rule(_EDGE, 6.2, wide, strong=True)
    y = 7.6 + pen.text(words.client, _EDGE, 7.6, wide, _TITLE, bold=True)
    y += pen.text(words.about, _EDGE, y + 0.4, wide, _BODY + 0.4) + 0.8
    if words.invented:
        y += pen.text(_INVENTED, _EDGE, y, wide, _SMALL, bold=True) + 0.4
    foot = pen.height - 5.0 - _cautions(pen, None)
    most = min(_PICTURE, max(foot - y - 46.0, 16.0))
    y += pen.garment(words.garment, QRectF(_EDGE, y + 2.5, wide, most)) + 5.5
    column = 0.5 * (wide - _GUTTER)
    _included(pen, words, y, column)
    _price(pen, words, _EDGE + column + _GUTTER, y, column)
    _cautions(pen, foot)


def _included(pen: _PagePen, words: PageWords, y: float, wide: float) -> None:
    y += pen.heading("What is included", _EDGE, y, wide)
    for line in words.of("included"):
        pen.rule(_EDGE, y + 0.62 * _BODY, 0.9, strong=False)
        y += pen.text(line.name, _EDGE + 1.8, y, wide - 1.8, _BODY) + 0.6


def _price(pen: _PagePen, words: PageWords, left: float, y: float, wide: float) -> None:
    """The price large, how it comes about, how it is paid; then the dates."""
    prices = words.of("price")
    y += pen.heading(prices[-1].name if prices else "Price", left, y, wide)
    if prices:
        y += pen.text(words.say(prices[-1]), left, y, wide, _PRICE, bold=True) + 0.8
    if not words.complete:
        y += pen.text(_PROVISIONAL, left, y, wide, _BODY, bold=True) + 0.8
    for line in (*prices[:-1], *words.of("paid")):
        pen.rule(left, y - 0.2, wide, strong=False)
        pen.text(words.say(line), left, y, wide, _BODY, right=True)
        y += pen.text(line.name, left, y, 0.6 * wide, _BODY)
        y += (pen.text(line.words, left, y, wide, _SMALL, _SOFT) if line.words else 0.0) + 0.7
    dates = words.of("date")
    if dates:
        y += 1.6 + pen.heading("Dates", left, y + 1.6, wide)
    for line in dates:
        y += pen.text(line.name, left, y, wide, _SMALL, _SOFT)
        y += pen.text(line.words, left, y, wide, _BODY) + 0.7


def _cautions(pen: _PagePen, top: float | None) -> float:
    """The cautions at the foot of the page; with no ``top``, only how tall they are."""
    wide, y = 100.0 - 2 * _EDGE, 1.2
    for caution in CAUTIONS:
        y += pen.text(caution, _EDGE, (top or 0.0) + y, wide, _SMALL, _SOFT, measure=top is None) + 0.2
    if top is not None:
        pen.rule(_EDGE, top, wide, strong=False)
    return y


class _PagePen:
    """Writes and draws in hundredths of the paper's width, from its upper left corner."""

    def __init__(self, painter: QPainter, sheet: QRectF, unit: float) -> None:
        self._painter, self._sheet, self._unit = painter, sheet, unit
        self.height = sheet.height() / unit

    def text(
        self,
        words: str,
        x: float,
        y: float,
        wide: float,
        size: float,
        colour: QColor = _INK,
        *,
        bold: bool = False,
        right: bool = False,
        measure: bool = False,
    ) -> float:
        """Words wrapped in a column; how tall they are."""
        font = QFont(fonts().strong if bold else fonts().body)
        font.setPixelSize(max(round(size * self._unit), 1))
        flags = _WRAP if not right else int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        box = self._box(x, y, wide, 500.0)
        self._painter.setFont(font)
        used = self._painter.boundingRect(box, flags, words)
        if not measure:
            self._painter.setPen(colour)
            self._painter.drawText(box, flags, words)
        return used.height() / self._unit

    def heading(self, words: str, x: float, y: float, wide: float) -> float:
        """A small bold heading over a rule."""
        high = self.text(words, x, y, wide, _BODY, bold=True)
        self.rule(x, y + high + 0.3, wide, strong=False)
        return high + 1.2

    def rule(self, x: float, y: float, wide: float, *, strong: bool) -> None:
        """A level line."""
        self._painter.setPen(QPen(_INK if strong else _LINE, 1.6 if strong else 1.0))
        self._painter.drawLine(self._at(x, y), self._at(x + wide, y))

    def garment(self, garment: Garment, room: QRectF) -> float:
        """The views side by side at one scale, on one waist line; how tall they are with their names."""
        if not garment.views:
            return 0.0
        bounds = [view.bounds for view in garment.views]
        across = sum(box[2] - box[0] for box in bounds)
        low, high = min(box[1] for box in bounds), max(box[3] for box in bounds)
        gaps = _BETWEEN * (len(bounds) - 1)
        scale = min((room.width() - gaps) / across, (room.height() - _NAMED) / (high - low))
        left = room.left() + 0.5 * (room.width() - gaps - scale * across)
        for view, (near, _, far, _) in zip(garment.views, bounds, strict=True):
            middle = left - scale * near
            self._view(view, middle, room.top() + scale * high, scale)
            self._named(view.name, middle, room.top() + scale * (high - low) + 2.2)
            left += scale * (far - near) + _BETWEEN
        return scale * (high - low) + _NAMED

    def _named(self, name: str, x: float, y: float) -> None:
        font = QFont(fonts().body)
        font.setPixelSize(max(round(_SMALL * self._unit), 1))
        self._painter.setFont(font)
        self._painter.setPen(_SOFT)
        box = self._box(x - 15, y - 1.5, 30, 3.0)
        self._painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter), name)

    def _view(self, view: DrawnView, x: float, y: float, scale: float) -> None:
        origin, pixels = self._at(x, y), scale * self._unit
        self._painter.save()
        self._painter.setTransform(QTransform(pixels, 0, 0, -pixels, origin.x(), origin.y()))
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(_CLOTH)
        for ring in view.fills:
            self._painter.drawPolygon(ring)
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        for role, line in view.strokes:
            self._painter.setPen(_stroke_pen(role))
            self._painter.drawPolyline(line)
        self._painter.restore()

    def _at(self, x: float, y: float) -> QPointF:
        return QPointF(self._sheet.left() + x * self._unit, self._sheet.top() + y * self._unit)

    def _box(self, x: float, y: float, wide: float, high: float) -> QRectF:
        return QRectF(self._at(x, y), self._at(x + wide, y + high))


def _stroke_pen(role: str) -> QPen:
    dashed = role == "bone"
    pen = QPen(_SOFT if dashed else _INK, 1.5 if role in ("cut", "tape") else 1.0)
    if dashed:
        pen.setStyle(Qt.PenStyle.DotLine)
    pen.setCosmetic(True)
    return pen

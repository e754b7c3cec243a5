"""Draws the girth strip: body, finished, laced shut, the limit, the breathing band, and their figures."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from workbench.body import Fraction, LevelName, Unit, say_exact, say_length
from workbench.draft import Place
from workbench.frozen import dataclass
from workbench.ui.board.bars import Axis, Bar
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.pens import pen, upright
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look
from workbench.ui.marks import draw_mark, mark_colour

FIGURES = 100.0
"""Pixels at the right in which the figures of a bar stand."""
PAD = 14.0
_HALF, _SHUT_HALF, _TALL = 7.0, 2.5, 15.0
"""Half the height of a bar, of the part laced shut within it, and of the limit's mark."""
_TOOTH = 3.5
"""Pixels of one tooth where the axis is torn off."""
_TWO_LINES, _TIGHT, _ONE_LINE = 40.0, 32.0, 13.0
"""Pixels to the level below that leave room for a second line of figures that says nothing new, for
one that does, and for any figures at all."""
_ALIKE = 0.5
"""mm: a girth this close to the body's is the body's."""


@dataclass(frozen=True)
class Manner:
    """How figures are said and what is lit."""

    unit: Unit
    fraction: Fraction
    place: Place | None
    hover: LevelName | None
    held: LevelName | None


def paint_bar(painter: QPainter, bar: Bar, ghost: Bar | None, axis: Axis, view: View, manner: Manner) -> None:
    """One level's bar on its line."""
    y = view.y(bar.walk)
    if bar.breath is not None:
        _breathing(painter, bar.breath, axis, y)
    _girth(painter, axis, bar.body, y, _HALF, look().bar_body)
    _round(painter, axis, bar.body, y)
    _girth(painter, axis, bar.finished, y, _HALF, look().bar_finished)
    _girth(painter, axis, bar.shut, y, _SHUT_HALF, look().bar_shut)
    _torn(painter, axis, y)
    if bar.limit is not None:
        _limit(painter, bar, axis.x(bar.limit), y)
    if ghost is not None and ghost.finished != bar.finished:
        painter.setPen(pen(look().ink, 1.0, Qt.PenStyle.DotLine))
        painter.drawLine(QLineF(axis.x(ghost.finished), y - _TALL, axis.x(ghost.finished), y + _TALL))
    _grip(painter, axis.x(bar.finished), y, lit=bar.level in (manner.hover, manner.held))


def paint_figures_of(
    painter: QPainter, bar: Bar, view: View, width: float, manner: Manner, room: float
) -> None:
    """Above the line status and finished girth; below it how much was taken, in length and hundredths."""
    if room < _ONE_LINE:
        return
    shown, y, right = look(), view.y(bar.walk), width - 10
    chosen = manner.place is not None and manner.place.level == bar.level
    painter.setPen(shown.selected if chosen else shown.ink)
    put(
        painter, say_length(bar.finished, manner.unit, manner.fraction), right, y - 9, fonts().strong, "right"
    )
    colour = shown.soft_ink if bar.status == "within" else mark_colour(bar.status)
    painter.setPen(colour)
    if room >= (_TWO_LINES if abs(bar.reduction) <= _ALIKE else _TIGHT):
        put(painter, reduction_words(bar, manner.unit, manner.fraction), right, y + 9, fonts().small, "right")
    if bar.status != "within":
        put(painter, bar.status, right - 42, y - 9, fonts().small, "right")
        left = right - 42 - width_of(bar.status, fonts().small)
        draw_mark(painter, QRectF(left - 17, y - 16, 13, 13), bar.status, shown.paper)


def reduction_words(bar: Bar, unit: Unit, fraction: Fraction) -> str:
    """``−2⅜ · 8.2 %``; ease has a plus."""
    said = say_length(abs(bar.reduction), unit, fraction)
    if said == "0":
        return "as the body"
    sign = "−" if bar.reduction > 0 else "+"
    return f"{sign}{said} · {abs(bar.percent):.1f} %"


def drag_lines(bar: Bar, unit: Unit, fraction: Fraction) -> tuple[str, str]:
    """What is said beside a bar while it is dragged: both ways to say a reduction, lest they be mixed up."""
    taken = bar.reckoned - bar.finished
    word = "drawn in" if taken >= 0 else "eased by"
    whole = say_length(abs(taken), unit, fraction)
    # an eighth round the body is a thirty-second a quarter: rounded, four of them would not make the whole
    return f"{word} {whole} round the body", f"{say_exact(abs(0.25 * taken), unit)} a quarter"


def _girth(painter: QPainter, axis: Axis, girth: float, y: float, half: float, colour: QColor) -> None:
    if girth > axis.low:
        painter.fillRect(QRectF(axis.left, y - half, axis.x(girth) - axis.left, 2 * half), colour)


def _round(painter: QPainter, axis: Axis, girth: float, y: float) -> None:
    """A rule round the body's bar, which is too light to end by itself."""
    if girth > axis.low:
        painter.setPen(pen(look().rule))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(axis.left, y - _HALF, axis.x(girth) - axis.left, 2 * _HALF))


def _torn(painter: QPainter, axis: Axis, y: float) -> None:
    """The bar goes on to the left of the axis: teeth of paper say so."""
    x, top = axis.left, y - _HALF
    teeth = [QPointF(x - 1, top - 1)]
    teeth += [QPointF(x + (_TOOTH if number % 2 else 0.0), top + number * _TOOTH) for number in range(5)]
    teeth.append(QPointF(x - 1, y + _HALF + 1))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(look().paper)
    painter.drawPolygon(QPolygonF(teeth))


def _breathing(painter: QPainter, band: tuple[float, float], axis: Axis, y: float) -> None:
    """From full exhale to full inhale, with a foot at either end."""
    shown = look()
    left, right = axis.x(band[0]), axis.x(band[1])
    painter.fillRect(QRectF(left, y - _TALL, right - left, 2 * _TALL), shown.breath)
    for x in (left, right):
        upright(painter, x, y - _TALL, y + _TALL, shown.selected)


def _limit(painter: QPainter, bar: Bar, x: float, y: float) -> None:
    """A line across the bar; its head says whether the bar is within, near, or past it."""
    shown = look()
    if bar.status == "within":
        painter.fillRect(QRectF(round(x) - 0.75, y - _TALL, 1.5, 2 * _TALL), shown.limit)
        return
    painter.fillRect(QRectF(round(x) - 1.0, y - _TALL + 2, 2.0, 2 * _TALL - 2), mark_colour(bar.status))
    draw_mark(painter, QRectF(x - 6.5, y - _TALL - 11, 13, 13), bar.status, shown.paper)


def _grip(painter: QPainter, x: float, y: float, *, lit: bool) -> None:
    """The end of the bar, to take hold of."""
    shown = look()
    painter.setPen(pen(shown.selected if lit else shown.ink, 1.2))
    painter.setBrush(shown.selected if lit else shown.field)
    painter.drawRoundedRect(QRectF(x - 3, y - _HALF - 3, 6, 2 * _HALF + 6), 2.5, 2.5)

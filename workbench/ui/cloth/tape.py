"""The tape along the cloth: ticks of the tape measure, steps it is sold by, and the marks that tell."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QPainter, QPolygonF

from workbench.body import say_exact, say_with_unit
from workbench.cloth import BuyStep
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.pens import across, pen, upright
from workbench.ui.board.ruler import marks, step_for
from workbench.ui.board.view import View
from workbench.ui.cloth.spread import ClothSpread
from workbench.ui.look import fonts, look
from workbench.ui.marks import Mark, draw_mark

TAPE = 82
"""Pixels of the tape below the cloth, flags included."""
_TICKS, _NUMBERS, _STEPS, _FLAG = 8.0, 16.0, 40.0, 24.0
_NUMBER_ROOM, _TICK_ROOM = 40.0, 5.0
_STEP_MM: dict[BuyStep, float] = {
    "eighth_yard": 914.4 / 8,
    "quarter_yard": 914.4 / 4,
    "half_yard": 914.4 / 2,
    "ten_cm": 100.0,
}
_WHOLE_MM: dict[BuyStep, tuple[float, str]] = {
    "eighth_yard": (914.4, "yd"),
    "quarter_yard": (914.4, "yd"),
    "half_yard": (914.4, "yd"),
    "ten_cm": (1000.0, "m"),
}


@dataclass(frozen=True)
class Flag:
    """A mark on the tape with its words."""

    at: float
    """mm along the cloth."""
    words: str
    strong: bool = False
    """Filled, as the one that answers the question."""
    mark: Mark | None = None
    dashed: bool = False


def flags_of(spread: ClothSpread) -> tuple[Flag, ...]:
    """Where the pieces end, how much to buy, and what she has."""
    plan, lay, project = spread.plan, spread.lay, spread.project
    length = say_with_unit(plan.length_mm, project.unit, project.fraction)
    found = [Flag(plan.length_mm, f"{'was ' if spread.stale else ''}{length}")]
    buy = lay.buy
    if buy is None:
        return tuple(found)
    if buy.length_mm > 0:
        found.append(Flag(spread.bought, f"buy {buy.words}", strong=True))
    if spread.cloth.at_hand_mm > 0 and spread.cloth.remnant is None:
        has = say_with_unit(spread.cloth.at_hand_mm, project.unit, project.fraction)
        mark: Mark = "within" if buy.fits else "attend"
        found.append(Flag(spread.at_hand, f"you have {has}", strong=bool(buy.fits), mark=mark, dashed=True))
    return tuple(found)


def paint_tape(
    painter: QPainter, spread: ClothSpread, view: View, size: QSize, trail: tuple[float, ...] = ()
) -> None:
    """The tape along the bottom of the picture, with the flags below it."""
    top = size.height() - TAPE
    colours = look()
    painter.fillRect(QRectF(0, top, size.width(), TAPE), colours.paper)
    across(painter, top, 0, size.width(), colours.rule)
    _ticks(painter, spread, view, size, top)
    _steps(painter, spread, view, size, top)
    for length in trail:
        painter.setPen(pen(colours.ghost))
        x = view.x(length)
        painter.drawLine(QPointF(x, top), QPointF(x, top + _STEPS))
    _paint_flags(painter, flags_of(spread), view, size, top)


def _ticks(painter: QPainter, spread: ClothSpread, view: View, size: QSize, top: float) -> None:
    unit = spread.project.unit
    low, high = max(view.mm(QPointF(0, 0))[0], 0.0), view.mm(QPointF(size.width(), 0))[0]
    if high <= low:
        return
    fine, coarse = step_for(unit, view.scale, _TICK_ROOM), step_for(unit, view.scale, _NUMBER_ROOM)
    for step, long in ((fine, 4.0), (coarse, _TICKS)):
        for mm in marks(step, low, high):
            upright(painter, view.x(mm), top, top + long, look().rule)
    painter.setPen(look().soft_ink)
    for mm in marks(coarse, low, high):
        put(painter, say_exact(mm, unit), view.x(mm), top + _NUMBERS, fonts().small, "middle")


def _steps(painter: QPainter, spread: ClothSpread, view: View, size: QSize, top: float) -> None:
    """Ticks from below where the shop can cut, whole yards or metres with their number."""
    step = _STEP_MM[spread.cloth.step] * spread.shrunk
    whole, word = _WHOLE_MM[spread.cloth.step]
    line = top + _STEPS
    across(painter, line, max(view.x(0), 0.0), size.width(), look().hairline)
    if step * view.scale < _TICK_ROOM:
        return
    high = view.mm(QPointF(size.width(), 0))[0]
    for mm in marks(step, max(view.mm(QPointF(0, 0))[0], 0.0), high):
        upright(painter, view.x(mm), line - 5, line, look().rule)
    painter.setPen(look().soft_ink)
    for number in range(1, int(high / (whole * spread.shrunk)) + 1):
        x = view.x(number * whole * spread.shrunk)
        upright(painter, x, line - 9, line, look().soft_ink)
        put(painter, f"{number} {word}", x + 4, line - 7, fonts().small)


def _paint_flags(painter: QPainter, flags: tuple[Flag, ...], view: View, size: QSize, top: float) -> None:
    """Each flag hangs below its mark; those that would lie on each other give way to the sides."""
    taken: list[tuple[float, float]] = []
    for flag in sorted(flags, key=lambda each: not each.strong):
        x = view.x(flag.at)
        wide = width_of(flag.words, _font(flag)) + 16 + (18 if flag.mark else 0)
        left = _free(x, wide, size.width(), taken)
        if left is None:
            continue
        taken.append((left, left + wide))
        _paint_flag(painter, flag, x, QRectF(left, top + _STEPS + 12, wide, _FLAG))


def _free(x: float, wide: float, width: float, taken: list[tuple[float, float]]) -> float | None:
    """Where a flag may begin: under its mark, else ending at it, else beginning at it."""
    for left in (x - 0.5 * wide, x - wide + 6, x - 6, x - wide - 40, x + 40):
        left = min(max(left, 4.0), width - wide - 4.0)
        if all(left + wide + 4 <= start or left >= end + 4 for start, end in taken):
            return left
    return None


def _font(flag: Flag) -> QFont:
    return fonts().strong if flag.strong else fonts().body


def _paint_flag(painter: QPainter, flag: Flag, x: float, box: QRectF) -> None:
    colours = look()
    foot = box.top()
    tip = foot - 10
    edge = min(max(x, box.left() + 5), box.right() - 5)
    painter.setPen(pen(colours.selected if flag.strong else colours.rule))
    painter.setBrush(colours.selected if flag.strong else colours.field)
    painter.drawRoundedRect(box, 3, 3)
    painter.drawPolygon(QPolygonF([QPointF(x, tip), QPointF(edge + 5, foot), QPointF(edge - 5, foot)]))
    painter.setPen(colours.on_selected if flag.strong else colours.ink)
    left = box.left() + 8
    if flag.mark is not None:
        if not flag.strong:
            draw_mark(painter, QRectF(left, box.center().y() - 7, 14, 14), flag.mark, colours.field)
        else:
            _tick(painter, QRectF(left, box.center().y() - 6, 12, 12))
        left += 18
    put(painter, flag.words, left, box.center().y(), _font(flag))


def _tick(painter: QPainter, box: QRectF) -> None:
    """A tick in the pen of the words."""
    painter.save()
    painter.setPen(pen(look().on_selected, 1.8))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    at = [(0.08, 0.55), (0.38, 0.85), (0.95, 0.18)]
    painter.drawPolyline(
        QPolygonF([QPointF(box.left() + x * box.width(), box.top() + y * box.height()) for x, y in at])
    )
    painter.restore()

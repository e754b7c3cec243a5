"""Paints the cloth: its ground, selvedges or fold, the pieces, and where it is cut off."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QFont, QFontMetricsF, QPainter, QPolygonF, QTransform

from workbench.body import say_with_unit
from workbench.cloth import CopyKey
from workbench.draft import Place
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.pens import faint, pen
from workbench.ui.board.view import View
from workbench.ui.cloth.spread import ClothSpread, LaidCopy
from workbench.ui.cloth.tape import TAPE, paint_tape
from workbench.ui.look import fonts, look
from workbench.ui.marks import draw_mark

GUTTER = 92.0
"""Pixels at the left in which fold, selvedges and width are named."""
HANDLE = 9.0
"""Radius, in pixels, of the handle that turns a piece."""
_HEAD, _INSET, _HELD = 6.0, 5.0, 60.0
_LEAST_TEXT, _TALL = 13.0, 36.0
"""Pixels of height from which a piece has room for its name, and for a bold one."""
_DOWN = 4000.0
"""Pixels that a mark reaches below the cloth: as far as the tape, wherever that is."""
_NOTED = 62.0
"""The same for what is noted under the name."""
_STALE = "Stale: pieces or cloth have changed since this plan was made"


@dataclass(frozen=True)
class Shown:
    """What is on the cloth at one moment."""

    spread: ClothSpread
    view: View
    size: QSize
    place: Place | None
    """What is lit up in every pane."""
    picked: CopyKey | None
    """The one piece that is picked here."""
    over_handle: bool
    trail: tuple[float, ...]
    """Lengths of plans before, while a search runs."""

    def is_lit(self, piece: LaidCopy) -> bool:
        """Whether a piece is picked, here or as its panel."""
        panel = self.place.panel if self.place is not None else None
        return piece.key == self.picked or (panel is not None and piece.copy.panel == panel)


def paint_cloth(painter: QPainter, shown: Shown) -> None:
    """All of it; the painter comes back untransformed."""
    spread, view = shown.spread, shown.view
    painter.setTransform(view.transform())
    _ground(painter, spread)
    _repeats(painter, spread)
    for piece in spread.pieces:
        _piece(painter, shown, piece)
    painter.setTransform(QTransform())
    _edges(painter, spread, view)
    for piece in spread.pieces:
        _grain(painter, spread, piece, view)
        _words(painter, shown, piece)
    if spread.stale:
        _stale(painter, spread, view)
    _lengths(painter, spread, view)
    _gutter(painter, shown)
    paint_tape(painter, spread, view, shown.size, shown.trail)
    picked = spread.piece(shown.picked)
    if picked is not None:
        _handle(painter, handle_at(picked, view), lit=shown.over_handle)


def _ground(painter: QPainter, spread: ClothSpread) -> None:
    """The cloth as a slip of field colour on the paper, the selvedges a tint darker."""
    colours = look()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colours.ground)
    if spread.remnant is not None:
        painter.setPen(pen(colours.rule))
        painter.drawPolygon(spread.remnant)
        return
    painter.drawRect(QRectF(0, -spread.width, spread.end, spread.width))
    painter.setBrush(faint(colours.hairline, 0.9))
    selvedge = spread.cloth.selvedge_mm
    painter.drawRect(QRectF(0, -spread.width, spread.end, selvedge))
    if spread.cloth.laid == "single":
        painter.drawRect(QRectF(0, -selvedge, spread.end, selvedge))


def _repeats(painter: QPainter, spread: ClothSpread) -> None:
    """A hairline at every whole repeat of the print."""
    step = spread.cloth.repeat_mm
    if step < 5 or spread.remnant is not None:
        return
    painter.setPen(pen(look().hairline, 1.0, Qt.PenStyle.DotLine))
    for number in range(1, int(spread.end / step) + 1):
        painter.drawLine(QLineF(number * step, -spread.width, number * step, 0))


def _piece(painter: QPainter, shown: Shown, piece: LaidCopy) -> None:
    """Cloth to the cut line; one at fault is hatched and edged in the accent."""
    colours, faulty = look(), piece.key in shown.spread.faulty
    lit = shown.is_lit(piece)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colours.selected_fill if lit else colours.panel)
    painter.drawPolygon(piece.ring)
    if faulty:
        painter.setBrush(_hatch(shown.view, Qt.BrushStyle.BDiagPattern, 0.55))
        painter.drawPolygon(piece.ring)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    colour = colours.attend if faulty else colours.selected if lit else colours.ink
    strong = faulty or piece.key == shown.picked
    painter.setPen(pen(colour, 2.2 if strong else 1.0))
    painter.drawPolygon(piece.ring)


def _hatch(view: View, style: Qt.BrushStyle, part: float) -> QBrush:
    """Hatching in the accent that keeps its pitch at every zoom."""
    brush = QBrush(faint(look().attend, part), style)
    brush.setTransform(QTransform.fromScale(1.6 / view.scale, 1.6 / view.scale))
    return brush


def _edges(painter: QPainter, spread: ClothSpread, view: View) -> None:
    """Selvedges as firm lines, the fold as a double one."""
    if spread.remnant is not None:
        return
    colours = look()
    left, right = view.x(0.0), view.x(spread.end)
    top, bottom = view.y(0.0), view.y(-spread.width)
    painter.setPen(pen(colours.soft_ink))
    painter.drawLine(QPointF(left, bottom), QPointF(right, bottom))
    painter.drawLine(QPointF(left, top), QPointF(left, bottom))
    if spread.cloth.laid == "folded":
        painter.setPen(pen(colours.ink, 3.0))
    painter.drawLine(QPointF(left, top), QPointF(right, top))


def _grain(painter: QPainter, spread: ClothSpread, piece: LaidCopy, view: View) -> None:
    """The grain as an arrow: one head where the cloth has one way, else two."""
    left, bottom, right, top = piece.box
    long, high = 0.5 * (right - left) * view.scale, (top - bottom) * view.scale
    if long < 14 or high < 1.6 * _LEAST_TEXT:
        return
    middle, (x, y) = view.at(*piece.middle), piece.head
    along = QPointF(x, -y)
    noted = high > _NOTED and bool(copy_notes(piece))
    drop = QPointF(0, arrow_drop(high, noted))
    start, end = middle - along * (0.5 * long) + drop, middle + along * (0.5 * long) + drop
    heads = _head(end, start)
    if spread.cloth.run == "either_way":
        heads += _head(start, end)
    painter.setPen(pen(look().soft_ink))
    painter.drawLines([QLineF(start, end), *heads])


def _head(tip: QPointF, foot: QPointF) -> list[QLineF]:
    """Two strokes that open from a tip towards the foot of its arrow."""
    along = foot - tip
    length = max((along.x() ** 2 + along.y() ** 2) ** 0.5, 1e-6)
    back = along * (_HEAD / length)
    aside = QPointF(-back.y(), back.x()) * 0.5
    return [QLineF(tip, tip + back + aside), QLineF(tip, tip + back - aside)]


def _words(painter: QPainter, shown: Shown, piece: LaidCopy) -> None:
    """The name over the arrow, and below it what is to be known of this copy."""
    view = shown.view
    left, bottom, right, top = piece.box
    room, high = (right - left) * view.scale - 10, (top - bottom) * view.scale
    middle, fault = view.at(*piece.middle), shown.spread.faulty.get(piece.key)
    font = fonts().strong if high >= _TALL else fonts().small
    name = short_name(piece.copy.name, room, font) if high >= _LEAST_TEXT else ""
    painter.setPen(look().ink)
    notes = copy_notes(piece) if high > _NOTED else ""
    drop = arrow_drop(high, bool(notes))
    put(painter, name, middle.x(), middle.y() - 15 if notes else middle.y() - 0.7 * drop, font, "middle")
    if notes:
        painter.setPen(look().soft_ink)
        said = QFontMetricsF(fonts().small).elidedText(notes, Qt.TextElideMode.ElideRight, room)
        put(painter, said, middle.x(), middle.y() + 15, fonts().small, "middle")
    if fault is not None:
        _fault(painter, fault, middle.x(), middle.y() - 22)
    if piece.placed.pinned:
        _pin(painter, QPointF(view.x(left) + 12, middle.y() - 4))


def arrow_drop(high: float, noted: bool) -> float:
    """Pixels from the middle of a piece down to its grain arrow: below the name, over what is noted."""
    return 0.0 if noted else min(0.28 * high, 12.0)


def short_name(name: str, room: float, font: QFont) -> str:
    """The name as fully as there is room for: whole, its first word, its letter and number, or nothing."""
    words = name.split()
    letter = f"{words[0][0]}{words[-1]}" if len(words) > 1 and words[-1].isdigit() else name[:1]
    ways = (name, words[0], letter) if not words[-1].isdigit() else (name, letter)
    return next((way for way in ways if width_of(way, font) <= room), "")


def copy_notes(piece: LaidCopy) -> str:
    """What is to be known of one copy before it is cut."""
    copy, notes = piece.copy, []
    if copy.on_fold:
        notes.append("on the fold")
    if copy.opened:
        notes.append("opened out")
    if piece.placed.mirrored and not copy.on_fold:
        notes.append("turned over")
    if piece.turned:
        notes.append("end for end")
    if copy.gives > 1 and not copy.on_fold:
        notes.append(f"gives {copy.gives}")
    return ", ".join(notes)


def _fault(painter: QPainter, word: str, x: float, y: float) -> None:
    """A mark and a word on a slip, so that it is read on the hatching too."""
    colours = look()
    wide = QFontMetricsF(fonts().strong).horizontalAdvance(word) + 30
    box = QRectF(x - 0.5 * wide, y - 10, wide, 20)
    painter.setPen(pen(colours.attend))
    painter.setBrush(colours.attend_fill)
    painter.drawRoundedRect(box, 3, 3)
    draw_mark(painter, QRectF(box.left() + 5, y - 7, 14, 14), "attend", colours.attend_fill)
    painter.setPen(colours.ink)
    put(painter, word, box.left() + 24, y, fonts().strong)


def _pin(painter: QPainter, at: QPointF) -> None:
    """A round head on a shank."""
    painter.setPen(pen(look().selected, 1.6))
    painter.setBrush(look().selected)
    painter.drawLine(at, at + QPointF(0, 11))
    painter.drawEllipse(at + QPointF(0, -2), 4.0, 4.0)


def _stale(painter: QPainter, spread: ClothSpread, view: View) -> None:
    """Hatching over all of the plan, and the words across it."""
    box = QRectF(view.at(0.0, 0.0), view.at(spread.plan.length_mm, -spread.width))
    brush = QBrush(faint(look().attend, 0.45), Qt.BrushStyle.FDiagPattern)
    painter.fillRect(box, brush)
    wide = QFontMetricsF(fonts().strong).horizontalAdvance(_STALE) + 44
    slip = QRectF(max(box.center().x() - 0.5 * wide, GUTTER + 8), box.top() + 10, wide, 28)
    painter.setPen(pen(look().attend))
    painter.setBrush(look().attend_fill)
    painter.drawRoundedRect(slip, 4, 4)
    draw_mark(painter, QRectF(slip.left() + 10, slip.center().y() - 8, 16, 16), "attend", look().attend_fill)
    painter.setPen(look().ink)
    put(painter, _STALE, slip.left() + 34, slip.center().y(), fonts().strong)


def _lengths(painter: QPainter, spread: ClothSpread, view: View) -> None:
    """Where the pieces end, where the shop cuts, and where what she has ends: lines down to the tape."""
    colours = look()
    top, bottom = view.y(max(spread.bounds[3], 0.0)) - 12, view.y(-spread.width) + _DOWN

    def line(mm: float, width: float, style: Qt.PenStyle, colour: str) -> None:
        painter.setPen(pen(getattr(colours, colour), width, style))
        painter.drawLine(QPointF(view.x(mm), top), QPointF(view.x(mm), bottom))

    line(spread.plan.length_mm, 1.0, Qt.PenStyle.DashLine, "ink")
    if spread.bought > 0:
        line(spread.bought, 2.0, Qt.PenStyle.SolidLine, "selected")
    if spread.at_hand > 0 and spread.remnant is None:
        line(spread.at_hand, 1.6, Qt.PenStyle.DashDotLine, "soft_ink")


def _gutter(painter: QPainter, shown: Shown) -> None:
    """Names of the two edges, and the width between them."""
    spread, view, colours = shown.spread, shown.view, look()
    painter.fillRect(QRectF(0, 0, GUTTER, shown.size.height() - TAPE), colours.paper)
    if spread.remnant is not None:
        painter.setPen(colours.ink)
        put(painter, "remnant", GUTTER - 20, view.y(spread.bounds[3]) + 8, fonts().small, "right")
        return
    x, top, bottom = GUTTER - 12, view.y(0.0), view.y(-spread.width)
    painter.setPen(pen(colours.rule))
    painter.drawLines(
        [
            QLineF(x, top, x, bottom),
            QLineF(x - 4, top, x + 4, top),
            QLineF(x - 4, bottom, x + 4, bottom),
        ]
    )
    folded = spread.cloth.laid == "folded"
    painter.setPen(colours.ink if folded else colours.soft_ink)
    put(painter, "fold" if folded else "selvedge", x - 8, top + 8, fonts().small, "right")
    painter.setPen(colours.soft_ink)
    put(painter, "selvedges" if folded else "selvedge", x - 8, bottom - 8, fonts().small, "right")
    project = spread.project
    width = say_with_unit(spread.cloth.width_mm, project.unit, project.fraction)
    middle = 0.5 * (top + bottom)
    painter.setPen(colours.ink)
    put(painter, width, x - 8, middle - (8 if folded else 0), fonts().strong, "right")
    if folded:
        put(painter, "folded", x - 8, middle + 9, fonts().small, "right")
    if spread.cloth.run == "one_way":
        put(painter, "one way →", x - 8, middle + 26, fonts().small, "right")


def handle_at(piece: LaidCopy, view: View) -> QPointF:
    """The pixel of the handle that turns a piece: at the head end, inside where there is room."""
    left, bottom, right, top = piece.box
    inside = (right - left) * view.scale > _HELD
    aside = -HANDLE - _INSET if inside else HANDLE + _INSET
    drop = arrow_drop((top - bottom) * view.scale, noted=False)
    return QPointF(view.x(right) + aside, view.y(piece.middle[1]) + drop)


def _handle(painter: QPainter, at: QPointF, *, lit: bool) -> None:
    """A round button with an arrow that goes round."""
    colours = look()
    painter.setPen(pen(colours.selected, 1.6))
    painter.setBrush(colours.selected_fill if lit else colours.field)
    painter.drawEllipse(at, HANDLE, HANDLE)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    box = QRectF(at.x() - 4.5, at.y() - 4.5, 9, 9)
    painter.drawArc(box, 40 * 16, 270 * 16)
    tip = QPointF(at.x() + 4.2, at.y() - 1.4)
    painter.drawPolyline(QPolygonF([tip + QPointF(-3.6, -0.6), tip, tip + QPointF(1.2, -3.8)]))

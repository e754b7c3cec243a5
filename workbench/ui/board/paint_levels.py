"""Draws the level lines from edge to edge, and the ledger at their left: needed, placed, short or over."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, QRectF
from PySide6.QtGui import QPainter

from workbench.draft import Place
from workbench.ui.board.lettering import put
from workbench.ui.board.pens import across, upright
from workbench.ui.board.rows import LevelRow, QuarterRow
from workbench.ui.board.scene import Scene
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look
from workbench.ui.marks import draw_mark

RULER = 30.0
"""Pixels of the rulers along top and left."""
GUTTER = 212.0
"""Pixels at the left of the canvas in which the ledger stands, the ruler included."""
_LABEL, _NEEDED, _PLACED = RULER + 14, GUTTER - 60, GUTTER - 10
_ROW = 16.0
"""Pixels from one line of the ledger to the next."""
_ONE_ROW = 13.0
"""Pixels to the level below for its name to be written at all."""
_TWO_ROWS = 50.0
"""Pixels to the level below that leave room for a row each for front and back."""
_COLUMNS = ("a quarter", "needed", "placed")


def paint_guides(painter: QPainter, scene: Scene, view: View, width: float, place: Place | None) -> None:
    """One line for each level, from edge to edge: it goes on in the girth strip."""
    shown = look()
    chosen = place.level if place is not None else None
    for row in scene.rows:
        usual = shown.soft_ink if row.level == "waist" else shown.level
        colour = shown.selected if row.level == chosen else usual
        across(painter, view.y(row.walk), 0.0, width, colour)


def paint_ledger(painter: QPainter, scene: Scene, view: View, height: float, place: Place | None) -> None:
    """The names and sums, on a strip of paper that keeps panels from showing through."""
    shown = look()
    painter.fillRect(QRect(0, 0, int(GUTTER), int(height)), shown.paper)
    upright(painter, GUTTER, 0, height, shown.hairline)
    paint_guides(painter, scene, view, GUTTER, place)
    below = -1e9
    for row in scene.rows:
        chosen = place is not None and place.level == row.level
        room = view.scale * (row.walk - below)
        if room >= _ONE_ROW:
            _row(painter, row, view.y(row.walk), chosen=chosen, tight=room < _TWO_ROWS)
        below = row.walk


def paint_columns(painter: QPainter) -> None:
    """What the columns of the ledger are, in the band of the ruler."""
    painter.setPen(look().soft_ink)
    for words, x, align in zip(_COLUMNS, (_LABEL, _NEEDED, _PLACED), ("left", "right", "right"), strict=True):
        put(painter, words, x, 0.5 * RULER, fonts().small, align)  # type: ignore[arg-type]  # one of the two


def _row(painter: QPainter, row: LevelRow, y: float, *, chosen: bool, tight: bool) -> None:
    """The name above the line; its figures beside it where both quarters are alike, else a row each below."""
    shown = look()
    painter.setPen(shown.selected if chosen else shown.ink)
    put(painter, row.name, _LABEL, y - 9, fonts().strong)
    if len(row.quarters) == 1:
        _sums(painter, row.quarters[0], y - 9)
        return
    for number, quarter in enumerate((_joined(row.quarters),) if tight else row.quarters):
        middle = y + 9 + number * _ROW
        painter.setPen(shown.soft_ink)
        put(painter, quarter.label, _LABEL, middle, fonts().small)
        _sums(painter, quarter, middle)
    _open_words(painter, row, y - 9)


def _joined(quarters: tuple[QuarterRow, ...]) -> QuarterRow:
    """Front and back in one row, where there is no room for two."""
    return QuarterRow(
        " · ".join(quarter.label for quarter in quarters),
        " · ".join(quarter.needed for quarter in quarters),
        " · ".join(quarter.placed for quarter in quarters),
        "".join(quarter.open_words for quarter in quarters),
    )


def _sums(painter: QPainter, quarter: QuarterRow, middle: float) -> None:
    shown = look()
    painter.setPen(shown.soft_ink)
    put(painter, quarter.needed, _NEEDED, middle, fonts().body, "right")
    painter.setPen(shown.attend if quarter.open_words else shown.ink)
    put(painter, quarter.placed, _PLACED, middle, fonts().body, "right")


def _open_words(painter: QPainter, row: LevelRow, middle: float) -> None:
    """``short ⅛`` beside the name, until every sum closes."""
    said = sorted({quarter.open_words for quarter in row.quarters if quarter.open_words})
    if said:
        painter.setPen(look().attend)
        put(painter, ", ".join(said), _PLACED, middle, fonts().body, "right")
        draw_mark(painter, QRectF(RULER, middle - 6, 12, 12), "attend", look().paper)


def row_at(scene: Scene, view: View, pixel: QPointF) -> LevelRow | None:
    """The level whose name or sums are under a pixel."""
    if pixel.x() > GUTTER:
        return None
    near = [row for row in scene.rows if -20 <= pixel.y() - view.y(row.walk) <= 2]
    return near[0] if near else None

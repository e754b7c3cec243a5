"""Each level against its limit: body, finished, laced shut and the limit on one line.

The lines are drawn from the body inwards, to the left, as on the girth strip; but only
the differences are drawn, because on whole girths an eighth would be less than a pixel.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.body import LEVEL_LABEL, Fraction, LevelName, Unit, round_down, say_length
from workbench.document import Picture
from workbench.draft import Judgement, Level
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark, draw_mark, mark_colour

_ROW = 21 * GRID
_LEGEND = 7 * GRID
_SIDE = 3 * GRID
_EASE = 4 * GRID
"""Kept free to the right of the body, for a little ease."""
_SCALE_STEP = 50.8
"""mm; the scale holds whole steps: a trifle does not look like a lot, and a drag moves on still ground."""
_WORDS: dict[str, str] = {"within": "Within", "near": "Near the limit", "over": "Over the limit"}


@dataclass(frozen=True)
class _Row:
    """One level in words and in mm of reduction from the body."""

    name: LevelName
    mark: Mark | None
    word: str
    finished: float
    shut: float
    most: float | None
    words: tuple[str, str]


class ComfortPicture(QWidget):
    """Rows of levels, the uppermost first."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[_Row, ...] = ()
        self._scale_mm = _SCALE_STEP
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Body, finished, laced shut and limit at each level")

    def show_picture(self, picture: Picture) -> None:
        """Show the levels of a picture; none while there is nothing to judge."""
        rows: tuple[_Row, ...] = ()
        if picture.outcome is not None and picture.comfort is not None:
            project, comfort = picture.project, picture.comfort
            rows = tuple(
                _row(level, comfort.at(level.name), project.unit, project.fraction)
                for level in reversed(picture.outcome.levels)
            )
        if rows != self._rows:
            before, self._rows = (self._rows, self._scale_mm), rows
            spans = [abs(mm) for row in rows for mm in (row.finished, row.shut, row.most or 0.0)]
            self._scale_mm = _SCALE_STEP * max(1, ceil(max(spans, default=0.0) / _SCALE_STEP))
            self.setAccessibleDescription(" ".join(_spoken(row) for row in rows))
            self._update(*before)

    def _update(self, rows: tuple[_Row, ...], scale_mm: float) -> None:
        """Paint anew what is not as it was: one edit seldom touches more than one level."""
        if len(rows) != len(self._rows) or scale_mm != self._scale_mm:
            self.updateGeometry()
            self.update()
            return
        for number, (was, now) in enumerate(zip(rows, self._rows, strict=True)):
            if was != now:
                self.update(0, _LEGEND + number * _ROW, self.width(), _ROW)

    def sizeHint(self) -> QSize:
        """Room for the legend and every level."""
        return QSize(80 * GRID, _LEGEND + _ROW * len(self._rows) if self._rows else 0)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look."""
        super().changeEvent(event)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Legend, then level by level."""
        if not self._rows:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if event.rect().top() < _LEGEND:
            self._paint_legend(painter)
        for number, row in enumerate(self._rows):
            box = QRectF(_SIDE, _LEGEND + number * _ROW, self.width() - 2 * _SIDE, _ROW)
            if box.toAlignedRect().intersects(event.rect()):
                self._paint_row(painter, row, box)
        painter.end()

    def _paint_legend(self, painter: QPainter) -> None:
        painter.setFont(fonts().small)
        metrics = QFontMetricsF(fonts().small)
        x, y = float(_SIDE + 4), 3.5 * GRID
        for word, sign in (
            ("body", _sign_body),
            ("finished", _sign_finished),
            ("laced shut", _sign_shut),
            ("limit", _sign_limit),
        ):
            sign(painter, QPointF(x, y))
            painter.setPen(look().soft_ink)
            painter.drawText(QPointF(x + 9, y + 4), word)
            x += 9 + metrics.horizontalAdvance(word) + 5 * GRID

    def _paint_row(self, painter: QPainter, row: _Row, box: QRectF) -> None:
        painter.setPen(QPen(look().hairline, 1))
        painter.drawLine(box.topLeft(), box.topRight())
        painter.setPen(look().ink)
        painter.setFont(fonts().strong)
        top = QRectF(box.left(), box.top() + GRID, box.width(), 5 * GRID)
        middle = Qt.AlignmentFlag.AlignVCenter
        painter.drawText(top, middle | Qt.AlignmentFlag.AlignLeft, LEVEL_LABEL[row.name])
        self._paint_status(painter, row, top)
        self._paint_line(painter, row, box)
        painter.setPen(look().soft_ink)
        painter.setFont(fonts().small)
        for number, words in enumerate(row.words):
            below = QRectF(box.left(), box.top() + (11 + 4.5 * number) * GRID, box.width(), 4.5 * GRID)
            painter.drawText(below, middle | Qt.AlignmentFlag.AlignLeft, words)

    def _paint_status(self, painter: QPainter, row: _Row, top: QRectF) -> None:
        painter.setFont(fonts().body)
        width = QFontMetricsF(fonts().body).horizontalAdvance(row.word)
        if row.mark is not None:
            mark = QRectF(top.right() - width - 20, top.top() + 2, 14, 14)
            draw_mark(painter, mark, row.mark, look().ground)
        painter.setPen(mark_colour(row.mark or "note"))
        painter.drawText(top, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight, row.word)

    def _paint_line(self, painter: QPainter, row: _Row, box: QRectF) -> None:
        y = box.top() + 8.5 * GRID
        body = box.right() - _EASE
        room = body - box.left() - 2 * GRID
        finished, shut = (
            QPointF(min(body - mm / self._scale_mm * room, box.right()), y) for mm in (row.finished, row.shut)
        )
        painter.setPen(QPen(look().hairline, 1))
        painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
        painter.setPen(QPen(look().bar_shut, 1.5, Qt.PenStyle.DotLine))
        painter.drawLine(finished, shut)
        painter.setPen(QPen(look().bar_finished, 5, c=Qt.PenCapStyle.FlatCap))
        painter.drawLine(QPointF(body, y), finished)
        _sign_body(painter, QPointF(body, y))
        if row.most is not None:
            _sign_limit(painter, QPointF(min(body - row.most / self._scale_mm * room, box.right()), y))
        _sign_shut(painter, shut)
        _sign_finished(painter, finished)


def _spoken(row: _Row) -> str:
    return f"{LEVEL_LABEL[row.name]}: {row.word}. {'; '.join(row.words)}."


def _row(level: Level, judgement: Judgement, unit: Unit, fraction: Fraction) -> _Row:
    def said(mm: float) -> str:
        return say_length(mm, unit, fraction)

    def drawn(mm: float) -> str:
        return f"{said(abs(mm))} {'less' if mm >= 0 else 'more'}"

    shut = level.body - level.fabric
    worn = f"{said(level.body)} body · {said(level.finished)} finished"
    if said(abs(level.reduction)) != "0":
        worn += f": {drawn(level.reduction)}, {abs(level.percent):.1f} %"
    laced = f"{said(level.fabric)} laced shut"
    if judgement.most is None:
        return _Row(level.name, None, "No limit here", level.reduction, shut, None, (worn, laced))
    words = (worn, f"{laced} · limit {drawn(round_down(judgement.most, unit, fraction))}")
    word = _WORDS[judgement.status]
    if judgement.status != "over" and judgement.shut_status == "over":
        word = f"{word}; over if laced shut"
    return _Row(level.name, judgement.status, word, level.reduction, shut, judgement.most, words)


def _sign_body(painter: QPainter, at: QPointF) -> None:
    painter.setPen(QPen(look().ink, 1.5))
    painter.drawLine(at + QPointF(0, -7), at + QPointF(0, 7))


def _sign_finished(painter: QPainter, at: QPointF) -> None:
    painter.setPen(QPen(look().ink, 1.5))
    painter.setBrush(look().ink)
    painter.drawEllipse(at, 3.5, 3.5)


def _sign_shut(painter: QPainter, at: QPointF) -> None:
    painter.setPen(QPen(look().bar_shut, 1.5))
    painter.setBrush(look().ground)
    painter.drawEllipse(at, 3.5, 3.5)


def _sign_limit(painter: QPainter, at: QPointF) -> None:
    """A bracket that is open towards the body: up to here."""
    painter.setPen(QPen(look().limit, 1.5))
    painter.drawPolyline([at + QPointF(x, y) for x, y in ((5, -8), (0, -8), (0, 8), (5, 8))])

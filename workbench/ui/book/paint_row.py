"""How a row of the book is painted: a small picture, two lines, dates, and what is open."""

from __future__ import annotations

from collections import OrderedDict

from PySide6.QtCore import QObject, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QPolygonF, QTransform
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from workbench.book import Entry, rings_of
from workbench.ui.book.model import BookModel, Index
from workbench.ui.book.words import days_away, first_line, second_line
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import draw_mark

ROW_HEIGHT = 16 * GRID
_EDGE = 3 * GRID
_PICTURE = QSize(19 * GRID, 12 * GRID)
_MARK = 14
_MOST_MATTERS = 2
_KEPT_PICTURES = 400
_LINE = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine


class RowDelegate(QStyledItemDelegate):
    """Paints the cells of one row."""

    def __init__(self, model: BookModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self._polygons: OrderedDict[str, tuple[QPolygonF, ...]] = OrderedDict()

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """A picture with a little room."""
        return QSize(40 * GRID, ROW_HEIGHT)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Ground and hairline, then what belongs to the column."""
        entry = self._model.entry(index)
        if entry is None:
            return
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rect: QRect = option.rect
        picked = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.fillRect(rect, look().selected_fill if picked else look().field)
        painter.fillRect(rect.left(), rect.bottom(), rect.width(), 1, look().hairline)
        inner = rect.adjusted(_EDGE, GRID, -GRID, -GRID)
        column = index.column()
        if column == 0:
            if picked:
                painter.fillRect(rect.left(), rect.top(), 3, rect.height() - 1, look().selected)
            self._paint_client(painter, inner, entry)
        elif column == 1:
            _paint_lines(painter, inner, entry.date, "")
        elif column == 2:
            _paint_lines(painter, inner, entry.next_fitting, days_away(entry.next_fitting, self._model.today))
        else:
            _paint_matters(painter, inner, entry)
        painter.restore()

    def _paint_client(self, painter: QPainter, rect: QRect, entry: Entry) -> None:
        box = QRect(rect.left(), rect.center().y() - _PICTURE.height() // 2, *_PICTURE.toTuple())
        self._paint_picture(painter, QRectF(box), entry)
        text = rect.adjusted(_PICTURE.width() + 3 * GRID, 0, 0, 0)
        colour = look().attend if entry.reason else look().soft_ink
        _paint_lines(painter, text, first_line(entry), second_line(entry), fonts().strong, colour)

    def _paint_picture(self, painter: QPainter, box: QRectF, entry: Entry) -> None:
        if entry.reason:
            side = QRectF(0, 0, 20, 20)
            side.moveCenter(box.center())
            draw_mark(painter, side, "stop", look().field)
            return
        polygons = self._shapes(entry.picture)
        if not polygons:
            painter.setPen(QPen(look().ghost, 1, Qt.PenStyle.DashLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3)
            return
        painter.save()
        painter.setTransform(_fitted(polygons, box), True)
        pen = QPen(look().ink, 1)
        pen.setCosmetic(True)
        painter.setPen(pen)
        painter.setBrush(look().panel)
        for polygon in polygons:
            painter.drawPolygon(polygon)
        painter.restore()

    def _shapes(self, letters: str) -> tuple[QPolygonF, ...]:
        """The panels of a picture, kept for those that were painted last."""
        shapes = self._polygons.get(letters)
        if shapes is None:
            try:
                rings = rings_of(letters)
            except ValueError:
                # a damaged line of the index: the file itself is sound, and is drawn when it is read again
                rings = ()
            shapes = tuple(QPolygonF([QPointF(x, y) for x, y in ring]) for ring in rings)
            self._polygons[letters] = shapes
            if len(self._polygons) > _KEPT_PICTURES:
                self._polygons.popitem(last=False)
        return shapes


def _fitted(polygons: tuple[QPolygonF, ...], box: QRectF) -> QTransform:
    """From the units of a picture, y up, into the middle of a box."""
    whole = QRectF()
    for polygon in polygons:
        whole = whole.united(polygon.boundingRect())
    scale = min(box.width() / max(whole.width(), 1.0), box.height() / max(whole.height(), 1.0))
    view = QTransform()
    view.translate(box.center().x(), box.center().y())
    view.scale(scale, -scale)
    view.translate(-whole.center().x(), -whole.center().y())
    return view


def _paint_lines(
    painter: QPainter,
    rect: QRect,
    first: str,
    second: str,
    font: QFont | None = None,
    colour: QColor | None = None,
) -> None:
    """One line in the middle, or two."""
    half = rect.height() // 2
    upper = rect if not second else rect.adjusted(0, GRID, 0, -half + GRID // 2)
    _paint_line(painter, upper, first, font or fonts().body, look().ink)
    if second:
        lower = rect.adjusted(0, half - GRID // 2, 0, -GRID)
        _paint_line(painter, lower, second, fonts().small, colour or look().soft_ink)


def _paint_line(painter: QPainter, rect: QRect, text: str, font: QFont, colour: QColor) -> None:
    painter.setFont(font)
    painter.setPen(colour)
    short = painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, rect.width())
    painter.drawText(rect, _LINE, short)


def _paint_matters(painter: QPainter, rect: QRect, entry: Entry) -> None:
    """The gravest first, with their marks; how many more there are."""
    shown = entry.matters[:_MOST_MATTERS]
    height = 5 * GRID
    top = rect.center().y() - height * len(shown) // 2
    for number, matter in enumerate(shown):
        line = QRect(rect.left(), top + number * height, rect.width(), height)
        mark = QRectF(line.left(), line.center().y() - _MARK / 2 + 0.5, _MARK, _MARK)
        draw_mark(painter, mark, matter.mark, look().field)
        more = len(entry.matters) - _MOST_MATTERS
        words = (
            f"{matter.words}, and {more} more" if more > 0 and number == _MOST_MATTERS - 1 else matter.words
        )
        _paint_line(painter, line.adjusted(_MARK + 2 * GRID, 0, 0, 0), words, fonts().small, look().ink)

"""The cloths as a row of cards: a tiny picture of the plan, the name, and how much to buy."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QKeyEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QPolygonF,
    QResizeEvent,
    QTransform,
)
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QWidget

from workbench.cloth import laid
from workbench.ui.board.polygons import polygon
from workbench.ui.cloth.bench import ClothBench, Worked
from workbench.ui.cloth.edits import key_of
from workbench.ui.cloth.lays import Lay
from workbench.ui.cloth.spread import flat
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark, draw_mark, mark_of
from workbench.ui.plain import plain_tip

_NARROWEST, _HEIGHT, _BETWEEN, _EDGE = 120, 12 * GRID, GRID, 3 * GRID
_MOST_POINTS = 32
_ROUND = 4.0
_PICTURE = 36.0


@dataclass(frozen=True)
class Face:
    """What a card shows."""

    name: str
    words: str
    mark: Mark | None = None
    length: float = 0.0
    width: float = 1.0
    pieces: tuple[QPolygonF, ...] = ()


class ClothCard(QAbstractButton):
    """One cloth; the one on show is filled and underlined, not only coloured."""

    def __init__(self) -> None:
        super().__init__()
        self._face = Face("", "")
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    @property
    def face(self) -> Face:
        """What it shows."""
        return self._face

    def show_face(self, face: Face) -> None:
        """Show another face."""
        if face != self._face:
            self._face = face
            amiss = ". Look at this" if face.mark is not None else ""
            self.setAccessibleName(f"{face.name}: {face.words}{amiss}")
            self.setToolTip(plain_tip(face.name))
            self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what a click does; arrows go to the next card."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A slip of paper with the plan at the left and the words beside it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_slip(painter)
        self._paint_plan(painter)
        self._paint_words(painter)
        painter.end()

    def _paint_slip(self, painter: QPainter) -> None:
        colours = look()
        box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        shape = QPainterPath()
        shape.addRoundedRect(box, _ROUND, _ROUND)
        painter.fillPath(shape, colours.selected_fill if self.isChecked() else colours.field)
        marked = self.isChecked() or self.hasFocus() or self.underMouse()
        painter.setPen(QPen(colours.selected if marked else colours.rule, 2 if self.hasFocus() else 1))
        painter.drawPath(shape)
        if self.isChecked():
            painter.fillRect(QRectF(box.left() + 8, box.bottom() - 3, box.width() - 16, 2), colours.selected)

    def _paint_plan(self, painter: QPainter) -> None:
        """The pieces on their cloth, as small as that is."""
        face = self._face
        if not face.pieces:
            return
        scale = min(_PICTURE / max(face.length, 1.0), _PICTURE / max(face.width, 1.0))
        left, top = 10.0, 0.5 * (self.height() - scale * face.width)
        painter.save()
        painter.setTransform(QTransform(scale, 0, 0, -scale, left, top))
        outline = QPen(look().soft_ink, 1)
        outline.setCosmetic(True)
        painter.setPen(outline)
        painter.setBrush(look().panel)
        for piece in face.pieces:
            painter.drawPolygon(piece)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(QPointF(0, -face.width), QPointF(face.length, 0)))
        painter.restore()

    def _paint_words(self, painter: QPainter) -> None:
        face = self._face
        left = 18 + (_PICTURE if face.pieces else 0)
        width = self.width() - left - 8 - (20 if face.mark else 0)
        middle = Qt.AlignmentFlag.AlignVCenter
        for words, font, top, colour in (
            (face.name, fonts().body, 4, look().ink),
            (face.words, fonts().strong, 22, look().ink if face.mark is None else look().soft_ink),
        ):
            painter.setFont(font)
            painter.setPen(colour)
            shown = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, int(width))
            painter.drawText(QRectF(left, top, width, 20), middle, shown)
        if face.mark is not None:
            ground = look().selected_fill if self.isChecked() else look().field
            draw_mark(painter, QRectF(self.width() - 22, 8, 14, 14), face.mark, ground)


class ClothCards(QWidget):
    """A card for each cloth, in one row or, where that is too narrow, in more."""

    def __init__(self, bench: ClothBench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.setAccessibleName("Cloths")
        self._group = QButtonGroup(self)
        self.cards: list[ClothCard] = []
        self._count = 0
        self._group.idClicked.connect(self.on_clicked)
        bench.cloth_shown.connect(self.show_cloth)
        bench.worked_out.connect(self.show_worked)
        self._arrange()

    def show_cloth(self, number: int) -> None:
        """Mark the cloth on show. Setting a card by hand emits no click, so nobody is told."""
        if number < len(self.cards):
            self.cards[number].setChecked(True)

    def show_worked(self, worked: Worked) -> None:
        """Show how much to buy of each."""
        while len(self.cards) < len(worked.lays):
            card = ClothCard()
            card.setParent(self)
            self._group.addButton(card, len(self.cards))
            self.cards.append(card)
        for card, lay in zip(self.cards, worked.lays, strict=False):
            card.show_face(face_of(lay))
        if self._count != len(worked.lays):
            self._count = len(worked.lays)
            self._arrange()
        self.show_cloth(self._bench.number)

    def on_clicked(self, number: int) -> None:
        """Put another cloth on show."""
        self._bench.show_cloth(number)

    def sizeHint(self) -> QSize:
        """One row."""
        return QSize(4 * (_NARROWEST + _BETWEEN), _HEIGHT + 3 * GRID)

    def minimumSizeHint(self) -> QSize:
        """Narrow cards."""
        return QSize(2 * (_NARROWEST + _BETWEEN), _HEIGHT)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share out the width anew."""
        super().resizeEvent(event)
        self._arrange()

    def _arrange(self) -> None:
        count = max(self._count, 1)
        room = self.width() - 2 * _EDGE + _BETWEEN
        columns = min(max(room // (_NARROWEST + _BETWEEN), 1), count)
        rows = -(-count // columns)
        columns = -(-count // rows)
        wide = min(room / columns, 300.0)
        for number, card in enumerate(self.cards):
            card.setVisible(number < self._count)
            row, column = divmod(number, columns)
            left, right = round(column * wide), round((column + 1) * wide) - _BETWEEN
            card.setGeometry(_EDGE + left, 6 + row * (_HEIGHT + _BETWEEN), right - left, _HEIGHT)
        self.setFixedHeight(rows * (_HEIGHT + _BETWEEN) - _BETWEEN + 3 * GRID)


def face_of(lay: Lay) -> Face:
    """What the card of a cloth says."""
    name = lay.cloth.name
    if lay.trouble is not None:
        return Face(name, "cannot be laid", "stop")
    if lay.plan is None or lay.buy is None:
        return Face(name, "no pieces")
    bought = f"buy {lay.buy.words}" if lay.buy.length_mm > 0 else "nothing to buy"
    words = "no room for all" if lay.valid is not None and lay.valid.left_over else bought
    mark = mark_of(lay.findings[0]) if lay.findings else None
    wide = lay.cloth.width_mm * (0.5 if lay.cloth.laid == "folded" else 1.0)
    return Face(name, words, mark, lay.plan.length_mm, wide, _tiny(lay))


def _tiny(lay: Lay) -> tuple[QPolygonF, ...]:
    """The outlines where they lie, with as few points as a picture of this size can show."""
    known = {copy.key: copy for copy in lay.copies}
    shown = []
    for placed in lay.plan.placed if lay.plan is not None else ():
        copy = known.get(key_of(placed))
        if copy is not None:
            ring = flat(laid(copy, placed))
            shown.append(polygon(ring[:: max(len(ring) // _MOST_POINTS, 1)]))
    return tuple(shown)

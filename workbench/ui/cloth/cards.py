"""The cloths as a row of cards: a tiny picture of the plan, the name, and how much to buy."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF, QTransform
from PySide6.QtWidgets import QWidget

from workbench.cloth import laid
from workbench.ui.board.polygons import polygon
from workbench.ui.cards import CardRow, CardSizes, SlipCard
from workbench.ui.cloth.bench import ClothBench, Worked
from workbench.ui.cloth.edits import key_of
from workbench.ui.cloth.lays import Lay
from workbench.ui.cloth.spread import flat
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark, draw_mark, mark_of
from workbench.ui.plain import plain_tip

_SIZES = CardSizes(narrowest=120, height=12 * GRID, above=6, usual=4, fewest=2, widest=300.0)
_MOST_POINTS = 32
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


class ClothCard(SlipCard):
    """One cloth."""

    underline = 3

    def __init__(self) -> None:
        super().__init__()
        self._face = Face("", "")

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

    def paint_face(self, painter: QPainter) -> None:
        """The picture of the plan at the left, the words beside it."""
        self._paint_plan(painter)
        self._paint_words(painter)

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
            draw_mark(painter, QRectF(self.width() - 22, 8, 14, 14), face.mark, self.paper)


class ClothCards(CardRow):
    """A card for each cloth."""

    def __init__(self, bench: ClothBench, parent: QWidget | None = None) -> None:
        super().__init__("Cloths", _SIZES, parent)
        self._bench = bench
        self.cards: list[ClothCard] = []
        self.group.idClicked.connect(self.on_clicked)
        bench.cloth_shown.connect(self.show_cloth)
        bench.worked_out.connect(self.show_worked)

    def show_cloth(self, number: int) -> None:
        """Mark the cloth on show. Setting a card by hand emits no click, so nobody is told."""
        if number < len(self.cards):
            self.cards[number].setChecked(True)

    def show_worked(self, worked: Worked) -> None:
        """Show how much to buy of each."""
        while len(self.cards) < len(worked.lays):
            self.cards.append(ClothCard())
            self.take(self.cards[-1], len(self.cards) - 1)
        for card, lay in zip(self.cards, worked.lays, strict=False):
            card.show_face(face_of(lay))
        self.show_cards(self.cards[: len(worked.lays)])
        self.show_cloth(self._bench.number)

    def on_clicked(self, number: int) -> None:
        """Put another cloth on show."""
        self._bench.show_cloth(number)


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

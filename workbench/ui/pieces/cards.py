"""The layers as a row of cards: a tiny picture of the pieces, the name, how many there are to cut."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF, QTransform
from PySide6.QtWidgets import QWidget

from workbench.document import Picture
from workbench.pieces import LAYERS, Cutting, Layer, LayerName, label_of
from workbench.ui.board.polygons import polygon
from workbench.ui.cards import CardRow, CardSizes, SlipCard
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import draw_mark
from workbench.ui.pieces.bench import Bench, Worked

_SIZES = CardSizes(narrowest=96, height=21 * GRID, above=2 * GRID, usual=len(LAYERS), fewest=5)
_PICTURE = QRectF(10, 7, 76, 34)
_GAP, _MOST_POINTS = 14.0, 48


@dataclass(frozen=True)
class Face:
    """What a card shows."""

    label: str
    count: str
    made: bool
    amiss: bool = False
    pieces: tuple[QPolygonF, ...] = ()


class Card(SlipCard):
    """One layer."""

    def __init__(self, name: LayerName) -> None:
        super().__init__()
        self.layer = name
        self._face = Face("", "", made=False)

    @property
    def blank(self) -> bool:
        """A layer that is not made."""
        return not self._face.made

    @property
    def face(self) -> Face:
        """What it shows."""
        return self._face

    def show_face(self, face: Face) -> None:
        """Show another face."""
        if face != self._face:
            self._face = face
            amiss = ". Look at this" if face.amiss else ""
            self.setAccessibleName(f"{face.label}: {face.count}{amiss}")
            self.update()

    def paint_face(self, painter: QPainter) -> None:
        """The picture on top, and the words below it."""
        self._paint_pieces(painter)
        self._paint_words(painter)
        if self._face.amiss:
            draw_mark(painter, QRectF(self.width() - 20, 6, 14, 14), "attend", self.paper)

    def _paint_pieces(self, painter: QPainter) -> None:
        if not self._face.pieces:
            return
        everything = self._face.pieces[0].boundingRect()
        for piece in self._face.pieces[1:]:
            everything = everything.united(piece.boundingRect())
        room = QRectF(_PICTURE)
        room.setWidth(self.width() - 2 * room.left())
        scale = min(room.width() / max(everything.width(), 1), room.height() / max(everything.height(), 1))
        middle, at = everything.center(), room.center()
        painter.save()
        painter.setTransform(
            QTransform(scale, 0, 0, -scale, at.x() - scale * middle.x(), at.y() + scale * middle.y())
        )
        outline = QPen(look().ink, 1)
        outline.setCosmetic(True)
        painter.setPen(outline)
        painter.setBrush(look().panel)
        for piece in self._face.pieces:
            painter.drawPolygon(piece)
        painter.restore()

    def _paint_words(self, painter: QPainter) -> None:
        face, width = self._face, self.width() - 8
        painter.setPen(look().ink if face.made else look().soft_ink)
        centre = Qt.AlignmentFlag.AlignCenter
        for words, font, top in ((face.label, fonts().body, 42), (face.count, fonts().small, 59)):
            painter.setFont(font)
            if painter.fontMetrics().horizontalAdvance(words) > width - 2:
                painter.setFont(fonts().small)
            shown = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, width)
            painter.drawText(QRectF(4, top, width, 18), centre, shown)
            painter.setPen(look().soft_ink)


class LayerCards(CardRow):
    """A card for each layer."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__("Layers", _SIZES, parent)
        self._bench = bench
        self.cards = {name: Card(name) for name in LAYERS}
        for number, card in enumerate(self.cards.values()):
            self.take(card, number)
        self.show_cards(tuple(self.cards.values()))
        self.cards[bench.layer].setChecked(True)
        self.group.idClicked.connect(self.on_clicked)
        bench.layer_shown.connect(self.show_layer)
        bench.worked_out.connect(self.show_worked)

    def show_layer(self, name: LayerName) -> None:
        """Mark the layer on show. Setting a card by hand emits no click, so nobody is told."""
        self.cards[name].setChecked(True)

    def show_worked(self, worked: Worked) -> None:
        """Show what there is to cut of each layer."""
        layers = {layer.name: layer for layer in worked.cutting.layers} if worked.cutting else {}
        for name, card in self.cards.items():
            card.show_face(_face(name, layers.get(name), worked.picture, worked.cutting))

    def on_clicked(self, number: int) -> None:
        """Put another layer on show."""
        self._bench.show_layer(LAYERS[number])


def _face(name: LayerName, layer: Layer | None, picture: Picture, cutting: Cutting | None) -> Face:
    making = picture.project.making
    label, made = label_of(name, making), making.layer(name).made
    if layer is None or not layer.pieces:
        return Face(
            label, "no pieces" if made else "not made", made=made and cutting is not None, amiss=False
        )
    cut = sum(piece.count for piece in layer.pieces)
    amiss = cutting is not None and any(row.layer == name and not row.holds for row in cutting.walks)
    count = len(layer.pieces)
    words = f"{count} piece{'s' if count > 1 else ''}, cut {cut}"
    return Face(label, words, made=True, amiss=amiss, pieces=_tiny(layer))


def _tiny(layer: Layer) -> tuple[QPolygonF, ...]:
    """The cut lines side by side, with as few points as a picture of this size can show."""
    shown, at = [], 0.0
    for piece in layer.pieces:
        ring = piece.cut[:: max(len(piece.cut) // _MOST_POINTS, 1)]
        left, right = float(ring[:, 0].min()), float(ring[:, 0].max())
        shown.append(polygon(ring + np.array([at - left, 0.0])))
        at += right - left + _GAP
    return tuple(shown)

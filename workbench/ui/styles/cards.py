"""Cards to choose a shape from: each is drawn from the real draft, when it first comes into sight."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QTextOption
from PySide6.QtWidgets import (
    QListView,
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from workbench.styles import KeptShape, TriedOn
from workbench.ui.look import GRID, fonts, look
from workbench.ui.styles.garment import Side, paint_side, paint_waist
from workbench.ui.styles.words import said_panels, spoken

CARD = QSize(49 * GRID, 60 * GRID)
_GAP = 2 * GRID
_DRAWN = 34 * GRID
"""Pixels of a card that the drawing takes up."""
_NUMBER = Qt.ItemDataRole.UserRole
_ROUND = 6.0


@dataclass(frozen=True)
class Card:
    """A shape as it is drawn."""

    tried: TriedOn
    sides: tuple[Side, ...]
    frame: QRectF


MakeCard = Callable[[KeptShape], Card]


class CardList(QListWidget):
    """Cards side by side in as many columns as there is room for; arrow keys go from one to the next."""

    def __init__(self, make: MakeCard, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._make = make
        self._shapes: list[KeptShape] = []
        self._cards: dict[int, Card] = {}
        self.setAccessibleName("Shapes")
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setMovement(QListView.Movement.Static)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setUniformItemSizes(True)
        self.setGridSize(CARD + QSize(_GAP, _GAP))
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QListWidget.Shape.NoFrame)
        self.setMouseTracking(True)
        # the cards are the paper, and lie on the ground of the dialog
        self.viewport().setAutoFillBackground(False)
        self.setItemDelegate(_CardPainter(self))

    @property
    def chosen(self) -> KeptShape | None:
        """The shape that is picked."""
        row = self.currentRow()
        return self._shapes[row] if 0 <= row < len(self._shapes) else None

    def show_shapes(self, shapes: list[KeptShape], pick: str = "") -> None:
        """Show these, with the one of a name picked, else the first."""
        self._shapes, self._cards = list(shapes), {}
        self.clear()
        for number, shape in enumerate(self._shapes):
            item = QListWidgetItem(shape.name)
            item.setData(_NUMBER, number)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, spoken(shape))
            item.setSizeHint(CARD)
            self.addItem(item)
        names = [shape.name for shape in self._shapes]
        self.setCurrentRow(names.index(pick) if pick in names else 0)

    def draw_again(self) -> None:
        """Work every card out anew: there is another body, or another look."""
        self._cards = {}
        self.viewport().update()

    def card(self, number: int) -> Card:
        """One card, worked out when it is first asked for."""
        if number not in self._cards:
            self._cards[number] = self._make(self._shapes[number])
        return self._cards[number]

    def chosen_card(self) -> Card | None:
        """The card that is picked."""
        row = self.currentRow()
        return self.card(row) if 0 <= row < len(self._shapes) else None


Index = QModelIndex | QPersistentModelIndex


class _CardPainter(QStyledItemDelegate):
    """Paints a card as a slip of paper: the drawing, the name, the panels, and what it is for."""

    def __init__(self, cards: CardList) -> None:
        super().__init__(cards)
        self._list = cards

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """All cards are of one size."""
        return CARD

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one."""
        card = self._list.card(int(index.data(_NUMBER)))
        state: QStyle.StateFlag = option.state
        place = QRectF(option.rect)
        box = QRectF(place.left() + 0.5 * _GAP, place.top() + 0.5 * _GAP, CARD.width() - 1, CARD.height() - 1)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        _paint_slip(painter, box, state)
        _paint_drawing(painter, card, QRectF(box.left(), box.top(), box.width(), _DRAWN))
        _paint_words(painter, card.tried, box.adjusted(3 * GRID, _DRAWN, -3 * GRID, -2 * GRID))
        painter.restore()


def _paint_slip(painter: QPainter, box: QRectF, state: QStyle.StateFlag) -> None:
    shown, flags = look(), QStyle.StateFlag
    chosen, over = bool(state & flags.State_Selected), bool(state & flags.State_MouseOver)
    painter.setBrush(shown.selected_fill if chosen else shown.paper)
    painter.setPen(shown.selected if chosen or over else shown.hairline)
    painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), _ROUND, _ROUND)
    if chosen and state & flags.State_HasFocus:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(box.adjusted(1.5, 1.5, -1.5, -1.5), _ROUND - 1, _ROUND - 1)


def _paint_drawing(painter: QPainter, card: Card, box: QRectF) -> None:
    inside = box.adjusted(4 * GRID, 3 * GRID, -4 * GRID, -GRID)
    if card.sides:
        paint_waist(painter, card.frame, inside)
        paint_side(painter, card.sides[0], card.frame, inside)
        return
    painter.setPen(look().attend)
    painter.setFont(fonts().small)
    wrapped = QTextOption(Qt.AlignmentFlag.AlignCenter)
    wrapped.setWrapMode(QTextOption.WrapMode.WordWrap)
    why = card.tried.why_not or card.tried.missing
    painter.drawText(inside, f"Cannot be drafted on her. {why}", wrapped)


def _paint_words(painter: QPainter, tried: TriedOn, box: QRectF) -> None:
    shown, shape = look(), tried.shape
    line = float(QFontMetrics(fonts().strong).height())
    name = QFontMetrics(fonts().strong).elidedText(shape.name, Qt.TextElideMode.ElideRight, int(box.width()))
    painter.setFont(fonts().strong)
    painter.setPen(shown.ink)
    painter.drawText(QRectF(box.left(), box.top(), box.width(), line), name)
    painter.setFont(fonts().small)
    painter.setPen(shown.soft_ink)
    painter.drawText(QRectF(box.left(), box.top() + line, box.width(), line), said_panels(shape))
    rest = box.adjusted(0, 2 * line + 2, 0, 0)
    painter.setPen(shown.ink)
    wrapped = QTextOption()
    wrapped.setWrapMode(QTextOption.WrapMode.WordWrap)
    painter.drawText(rest, _fitting(shape.purpose, rest), wrapped)


def _fitting(text: str, box: QRectF) -> str:
    """As much of a text as there is room for, whole words, with three dots where some are left out."""
    metrics = QFontMetrics(fonts().small)
    flags = Qt.TextFlag.TextWordWrap.value

    def fits(words: str) -> bool:
        need = metrics.boundingRect(0, 0, int(box.width()), 10_000, flags, words)
        return need.height() <= box.height() and need.width() <= box.width()

    if fits(text):
        return text
    words = text.split()
    while words and not fits(f"{' '.join(words)}…"):
        words.pop()
    return f"{' '.join(words)}…"

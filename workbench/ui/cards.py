"""Cards to pick one of several by: slips of paper in a row, the one on show filled and underlined."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPainterPath, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QWidget

from workbench.ui.look import GRID, look

_ROUND = 4.0


@dataclass(frozen=True)
class CardSizes:
    """Pixels of a row of cards."""

    narrowest: int
    height: int
    above: int
    """And below."""
    usual: int
    """Cards in a row where there is room."""
    fewest: int
    widest: float = float("inf")
    between: int = GRID
    edge: int = 3 * GRID


class SlipCard(QAbstractButton):
    """One of several; what is on it is painted by whoever derives it."""

    underline = 4
    """Pixels from the lower edge to the line under the one on show."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what a click does; arrows go to the next card."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A slip of paper, and what is on it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_slip(painter)
        self.paint_face(painter)
        painter.end()

    @property
    def blank(self) -> bool:
        """Whether there is nothing of it, so that it lies flat on the ground."""
        return False

    @property
    def paper(self) -> QColor:
        """What marks on the card are drawn on."""
        if self.isChecked():
            return look().selected_fill
        return look().ground if self.blank else look().field

    def paint_face(self, painter: QPainter) -> None:
        """Paint what is on it."""
        raise NotImplementedError

    def _paint_slip(self, painter: QPainter) -> None:
        colours = look()
        box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        shape = QPainterPath()
        shape.addRoundedRect(box, _ROUND, _ROUND)
        painter.fillPath(shape, self.paper)
        marked = self.isChecked() or self.hasFocus() or self.underMouse()
        usual = colours.hairline if self.blank else colours.rule
        painter.setPen(QPen(colours.selected if marked else usual, 2 if self.hasFocus() else 1))
        painter.drawPath(shape)
        if self.isChecked():
            line = QRectF(box.left() + 8, box.bottom() - self.underline, box.width() - 16, 2)
            painter.fillRect(line, colours.selected)


class CardRow(QWidget):
    """Cards in one row or, where that is too narrow, in more."""

    def __init__(self, name: str, sizes: CardSizes, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sizes = sizes
        self._shown: tuple[SlipCard, ...] = ()
        self.group = QButtonGroup(self)
        self.setAccessibleName(name)
        self._arrange()

    def take(self, card: SlipCard, number: int) -> None:
        """One more card, known to the group by its number."""
        card.setParent(self)
        self.group.addButton(card, number)

    def show_cards(self, shown: Sequence[SlipCard]) -> None:
        """Show these, in this order; others are hidden."""
        if tuple(shown) != self._shown:
            self._shown = tuple(shown)
            for card in self.group.buttons():
                card.setVisible(card in self._shown)
            self._arrange()

    def sizeHint(self) -> QSize:
        """One row."""
        sizes = self._sizes
        return QSize(sizes.usual * (sizes.narrowest + sizes.between), sizes.height + 2 * sizes.above)

    def minimumSizeHint(self) -> QSize:
        """As few narrow cards beside each other as is bearable."""
        sizes = self._sizes
        return QSize(sizes.fewest * (sizes.narrowest + sizes.between), sizes.height)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share out the width anew."""
        super().resizeEvent(event)
        self._arrange()

    def _arrange(self) -> None:
        sizes, count = self._sizes, max(len(self._shown), 1)
        room = self.width() - 2 * sizes.edge + sizes.between
        columns = min(max(room // (sizes.narrowest + sizes.between), 1), count)
        rows = -(-count // columns)
        columns = -(-count // rows)
        wide = min(room / columns, sizes.widest)
        for number, card in enumerate(self._shown):
            row, column = divmod(number, columns)
            left, right = round(column * wide), round((column + 1) * wide) - sizes.between
            top = sizes.above + row * (sizes.height + sizes.between)
            card.setGeometry(sizes.edge + left, top, right - left, sizes.height)
        self.setFixedHeight(rows * (sizes.height + sizes.between) - sizes.between + 2 * sizes.above)

"""One shape in full: front and back, what it is for, what has to give for this body."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from workbench.ui.look import GRID, fonts, look
from workbench.ui.styles.cards import Card
from workbench.ui.styles.garment import paint_side, paint_waist, said_sides
from workbench.ui.styles.words import STAYS, said_findings, said_kind, said_whose

_NAME = 5 * GRID
_NOTHING = "Pick a shape at the left."
_NOT_ON_HER = "It cannot be drafted on her"


class GarmentView(QWidget):
    """Front and back side by side, at one scale and on one waist line."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._card: Card | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Drawing of the shape")

    def sizeHint(self) -> QSize:
        """A third of the dialog."""
        return QSize(96 * GRID, 48 * GRID)

    def show_card(self, card: Card | None) -> None:
        """Draw another shape."""
        self._card = card
        sides = card.sides if card is not None else ()
        self.setAccessibleDescription(said_sides(sides) or _NOT_ON_HER)
        self.update()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look."""
        super().changeEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Both sides on paper."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), look().paper)
        if self._card is not None and self._card.sides:
            self._paint_sides(painter, self._card)
        elif self._card is not None:
            painter.setPen(look().soft_ink)
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, _NOT_ON_HER)
        painter.end()

    def _paint_sides(self, painter: QPainter, card: Card) -> None:
        half = 0.5 * self.width()
        for number, side in enumerate(card.sides):
            box = QRectF(number * half, 0, half, self.height()).adjusted(
                2 * GRID, 2 * GRID, -2 * GRID, -_NAME
            )
            paint_waist(painter, card.frame, box)
            paint_side(painter, side, card.frame, box)
            painter.setPen(look().soft_ink)
            painter.setFont(fonts().small)
            below = QRectF(box.left(), box.bottom(), box.width(), _NAME)
            painter.drawText(below, Qt.AlignmentFlag.AlignCenter, side.name)


class Detail(QWidget):
    """The shape that is picked."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.drawing = GarmentView()
        self.name, self.purpose = _words(), _words()
        self.kind, self.whose, self.stays, self.findings = (_words() for _ in range(4))
        self.name.setFont(fonts().title)
        for soft in (self.kind, self.whose, self.stays):
            soft.setFont(fonts().small)
        self.stays.setText(STAYS)
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 2 * GRID, 0)
        column.setSpacing(2 * GRID)
        for part in (self.name, self.purpose, self.kind, self.whose, self.findings, self.stays):
            column.addWidget(part)
        column.addStretch(1)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setAccessibleName("What the shape is")
        area.setWidget(inside)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(3 * GRID)
        whole.addWidget(self.drawing)
        whole.addWidget(area, 1)

    def show_card(self, card: Card | None) -> None:
        """Show another shape, or that none is picked."""
        self.drawing.show_card(card)
        tried = card.tried if card is not None else None
        self.name.setText(tried.shape.name if tried else _NOTHING)
        self.purpose.setText(tried.shape.purpose if tried else "")
        self.kind.setText(said_kind(tried.shape) if tried else "")
        self.whose.setText(said_whose(tried) if tried else "")
        self.findings.setText(said_findings(tried) if tried else "")
        self.stays.setVisible(tried is not None and tried.on_her and not tried.why_not)
        for label in (self.purpose, self.findings):
            label.setVisible(bool(label.text()))


def _words() -> QLabel:
    label = QLabel()
    # what she has typed is shown as she typed it, never as mark-up
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    return label

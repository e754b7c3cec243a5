"""The fittings one below the other, and a button for one more."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from workbench.document import Picture
from workbench.fitting import Fitting, date_said
from workbench.ui.cards import SlipCard
from workbench.ui.fitting.bench import FittingBench
from workbench.ui.look import GRID, fonts, look

_CARD, _BETWEEN, _MOST_SEEN = 12 * GRID, GRID, 3
_NOTHING = (
    "No fitting yet. When she has worn the first make-up, add one: the three gaps of the opening, "
    "and what was pinned."
)


class FittingCard(SlipCard):
    """One fitting."""

    underline = 3

    def __init__(self, number: int) -> None:
        super().__init__()
        self.number = number
        self.name, self.told = "", ""
        self.setFixedHeight(_CARD)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)

    def show_fitting(self, fitting: Fitting) -> None:
        """Show its date, cloth and lines."""
        name, told = face_of(fitting)
        if (name, told) != (self.name, self.told):
            self.name, self.told = name, told
            self.setAccessibleName(f"{name}: {told}")
            self.update()

    def paint_face(self, painter: QPainter) -> None:
        """Two lines of words."""
        room = self.width() - 6 * GRID
        for words, font, colour, top in (
            (self.name, fonts().strong, look().ink, 4),
            (self.told, fonts().small, look().soft_ink, 22),
        ):
            painter.setFont(font)
            painter.setPen(colour)
            said = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room)
            painter.drawText(QRectF(3 * GRID, top, room, 18), Qt.AlignmentFlag.AlignVCenter, said)


def face_of(fitting: Fitting) -> tuple[str, str]:
    """What a card says: when and in what; how many lines, and whether they count."""
    name = date_said(fitting.date) or "No date yet"
    on = sum(1 for change in fitting.changes if change.on)
    count = f"{on} line{'' if on == 1 else 's'}"
    off = len(fitting.changes) - on
    counted = f"{count} on, {off} off" if off else count
    state = counted if fitting.applied else f"{counted}, not carried in"
    return name, f"{fitting.cloth}, {state}" if fitting.cloth else state


class FittingList(QWidget):
    """Cards in the order of the fittings, three of them seen at a time."""

    def __init__(self, bench: FittingBench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.cards: list[FittingCard] = []
        self._group = QButtonGroup(self)
        self.add = QPushButton("Add a fitting", self)
        self.nothing = QLabel(_NOTHING, self)
        self.nothing.setWordWrap(True)
        self.setAccessibleName("Fittings")
        self._inside = QWidget()
        self._rows = QVBoxLayout(self._inside)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(_BETWEEN)
        self._rows.addStretch(1)
        self._area = QScrollArea(self)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setWidgetResizable(True)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._area.setWidget(self._inside)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2 * GRID)
        column.addWidget(self._area)
        column.addWidget(self.nothing)
        column.addWidget(self.add)
        self._group.idClicked.connect(self._bench.show_fitting)
        self._settle(0)

    def show_picture(self, picture: Picture) -> None:
        """Show every fitting there is."""
        fittings = picture.project.fittings
        while len(self.cards) < len(fittings):
            card = FittingCard(len(self.cards))
            self._rows.insertWidget(len(self.cards), card)
            self._group.addButton(card, card.number)
            self.cards.append(card)
        for number, card in enumerate(self.cards):
            card.setVisible(number < len(fittings))
            if number < len(fittings):
                card.show_fitting(fittings[number])
        shown = self._bench.number
        if 0 <= shown < len(fittings):
            self.cards[shown].setChecked(True)
        self._settle(len(fittings))
        if 0 <= shown < len(fittings):
            self._reach(self.cards[shown])

    def _reach(self, card: FittingCard) -> None:
        """Bring a card into sight, also one that was added just now and is not laid out yet."""
        self._rows.activate()
        high = max(self._rows.sizeHint().height(), self._area.viewport().height())
        self._inside.resize(self._inside.width(), high)
        self._area.ensureWidgetVisible(card, 0, 0)

    def _settle(self, count: int) -> None:
        seen = min(count, _MOST_SEEN)
        self._area.setFixedHeight(max(seen * (_CARD + _BETWEEN) - _BETWEEN, 0))
        self._area.setVisible(count > 0)
        self.nothing.setVisible(count == 0)

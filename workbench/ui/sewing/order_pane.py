"""The sewing order: every step with its box, under the stage it belongs to."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from workbench.document import Picture, set_done
from workbench.sewing import Step, chapters
from workbench.ui.board.paint_words import why_none
from workbench.ui.chapters import Chapter
from workbench.ui.desk import Desk
from workbench.ui.look import GRID, fonts
from workbench.ui.sewing.step_card import StepCard

NOTHING = "The sewing order is made as soon as there are pieces."


_PAGE_WIDTH = 168 * GRID
"""No line of words is longer: the eye loses its way back."""


class OrderPane(QScrollArea):
    """Cards are kept and filled anew, never made again."""

    counted = Signal(object)
    """A tuple of :class:`Chapter`: how far each stage has come."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._heads: list[QLabel] = []
        self._cards: list[StepCard] = []
        self._order: tuple[QWidget, ...] = ()
        page = QWidget()
        page.setMaximumWidth(_PAGE_WIDTH)
        self._page = page
        self._column = QVBoxLayout(page)
        self._column.setContentsMargins(6 * GRID, 4 * GRID, 6 * GRID, 6 * GRID)
        self._column.setSpacing(0)
        self.nothing = QLabel(NOTHING)
        self.nothing.setWordWrap(True)
        self._column.addWidget(self.nothing)
        self._column.addStretch(1)
        inner = QWidget()
        line = QHBoxLayout(inner)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(page, 1)
        line.addStretch(0)
        self.setWidget(inner)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAccessibleName("Sewing order")

    @property
    def cards(self) -> tuple[StepCard, ...]:
        """The cards on show, in order."""
        return tuple(card for card in self._cards if not card.isHidden())

    def show_picture(self, picture: Picture) -> None:
        """Show the order of a picture, and how far it has come."""
        runs, done = chapters(picture.sewing), set(picture.project.done)
        self.nothing.setVisible(not runs)
        self.nothing.setText(f"{NOTHING} {why_none(picture)}".rstrip())
        self._make_room(runs)
        cards = iter(self._cards)
        for head, (stage, steps) in zip(self._heads, runs, strict=False):
            head.setText(stage)
            for step in steps:
                next(cards).show_step(step, step.key in done, picture.project)
        self.counted.emit(
            tuple(
                Chapter(stage, sum(step.key in done for step in steps), len(steps)) for stage, steps in runs
            )
        )

    def _make_room(self, runs: tuple[tuple[str, tuple[Step, ...]], ...]) -> None:
        """As many heads and cards as the order has, each where it belongs."""
        steps = sum(len(run) for _, run in runs)
        while len(self._heads) < len(runs):
            self._heads.append(self._head())
        while len(self._cards) < steps:
            self._cards.append(self._card())
        cards = iter(self._cards)
        order = tuple(
            widget
            for head, (_, run) in zip(self._heads, runs, strict=False)
            for widget in (head, *(next(cards) for _ in run))
        )
        if order != self._order:
            self._arrange(order)

    def _arrange(self, order: tuple[QWidget, ...]) -> None:
        self._order = order
        for widget in (*self._heads, *self._cards):
            widget.setVisible(widget in order)
        for place, widget in enumerate(order, start=1):
            self._column.insertWidget(place, widget)
        before: QWidget = self
        for widget in order:
            if isinstance(widget, StepCard):
                QWidget.setTabOrder(before, widget.tick)
                before = widget.tick

    def _head(self) -> QLabel:
        head = QLabel(self._page)
        head.setFont(fonts().heading)
        head.setContentsMargins(0, 4 * GRID, 0, GRID)
        return head

    def _card(self) -> StepCard:
        card = StepCard(self._page)
        card.ticked.connect(self.on_ticked)
        return card

    def on_ticked(self, key: str, on: bool) -> None:
        """Tick a step off, or take the tick back."""
        project = set_done(self._desk.project, key, on)
        self._desk.apply("Step done" if on else "Step not done", project)

    def go_to(self, number: int) -> None:
        """Bring a stage to the top."""
        if 0 <= number < len(self._heads):
            self.verticalScrollBar().setValue(self._heads[number].y())

    def reach_next(self) -> None:
        """Give the focus to the first step that is not done."""
        card = next((card for card in self.cards if not card.tick.isChecked()), None)
        if card is not None:
            card.reach()
            self.ensureWidgetVisible(card)

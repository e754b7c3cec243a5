"""The answer over the cloth: how much to buy, whether it fits what she has, and how to do better."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from workbench.body import say_with_unit
from workbench.cloth import say_money
from workbench.document import Project
from workbench.ui.cloth.bench import OnShow
from workbench.ui.cloth.edits import pinned_in
from workbench.ui.cloth.lays import Lay
from workbench.ui.cloth.search import Progress
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark, draw_mark

_HEIGHT = 15 * GRID
_WRAP = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)
_NOTHING_FOUND = "No shorter plan was found in that time."


@dataclass(frozen=True)
class Told:
    """What the bar says."""

    head: str
    body: str = ""
    how: str = ""
    mark: Mark | None = None


def told_of(shown: OnShow, progress: Progress | None) -> Told:
    """The answer for the cloth on show; of a search while one runs."""
    lay, project = shown.lay, shown.picture.project
    if lay is None:
        return Told("No cloth")
    if lay.plan is None or lay.buy is None:
        return Told(f"{lay.cloth.name}: nothing to lay", mark="stop" if lay.trouble else None)
    head = f"Buy {lay.buy.words}" if lay.buy.length_mm > 0 else "Buy nothing"
    if lay.buy.fits:
        head = "Buy nothing: it fits in what you have"
    if lay.valid is not None and lay.valid.left_over:
        head = "It does not fit"
    if progress is not None and progress.running:
        return Told(head, *_searching(progress, project))
    if lay.stale:
        return Told("Stale plan", _laid_anew(lay, project), "Lay it anew, or find a better plan.", "attend")
    mark: Mark | None = "attend" if lay.findings or lay.buy.fits is False else None
    return Told(head, _length_words(lay, project), _how(lay, progress, project), mark)


def _length_words(lay: Lay, project: Project) -> str:
    """``46⅛ in long, 78 % of the cloth used. What you have is 4 in too short. $24.60``."""
    plan, buy = lay.valid, lay.buy
    if plan is None or buy is None:
        return ""
    used = f"{say(plan.length_mm, project)} long, {100 * plan.utilisation:.0f} % used."
    cost = ""
    if buy.length_mm > 0:
        cost = "No price yet" if buy.cost is None else say_money(buy.cost, project.quoting.currency)
        cost = f"{cost}."
    note = buy.note.replace("Fits in what you have, ", "").capitalize() if buy.fits else buy.note
    return " ".join(words for words in (used, note, cost) if words)


def _laid_anew(lay: Lay, project: Project) -> str:
    """What to buy for the pieces as they are now."""
    plan, buy = lay.valid, lay.buy
    if plan is None or buy is None:
        return ""
    bought = f"buy {buy.words}" if buy.length_mm > 0 else "nothing to buy"
    return f"Laid plainly now: {say(plan.length_mm, project)}, {bought}. {buy.note}".strip()


def _searching(progress: Progress, project: Project) -> tuple[str, str]:
    best = say(progress.best.length_mm, project)
    gained = f", {say(progress.gained, project)} less than before" if progress.gained > 0.5 else ""
    return (
        f"Looking for a better plan, {progress.seconds:.0f} s: {best} so far{gained}.",
        "Stop keeps the best plan so far.",
    )


def _how(lay: Lay, progress: Progress | None, project: Project) -> str:
    plan = lay.valid
    ended = progress is not None and not progress.running and progress.cloth == lay.cloth.name
    if ended and progress is not None and not progress.found:
        return _NOTHING_FOUND
    if ended and progress is not None and progress.gained > 0.5:
        return f"{say(progress.gained, project)} shorter than before. {plan.how if plan else ''}"
    return plan.how if plan is not None else ""


def say(mm: float, project: Project) -> str:
    """A length with its unit."""
    return say_with_unit(mm, project.unit, project.fraction)


class Sentence(QWidget):
    """The words of the bar."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.told = Told("")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)

    def show_told(self, told: Told) -> None:
        """Say this."""
        if told != self.told:
            self.told = told
            self.setAccessibleName(" ".join((f"{told.head}.", told.body, told.how)))
            self.update()

    def sizeHint(self) -> QSize:
        """A large line and two small ones."""
        return QSize(80 * GRID, _HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The answer in large letters, then the figures, then how it was found."""
        painter, told = QPainter(self), self.told
        left = 0.0
        if told.mark is not None:
            draw_mark(painter, QRectF(0, 9, 18, 18), told.mark, look().ground)
            left = 26.0
        painter.setFont(fonts().title)
        painter.setPen(look().ink)
        painter.drawText(QRectF(left, 2, self.width() - left, 30), told.head)
        head = QFontMetrics(fonts().title).horizontalAdvance(told.head)
        beside = left + head + 20
        wide = self.width() - beside
        painter.setFont(fonts().body)
        # Beside the answer where there is room for it, so that the eye need not go back.
        if QFontMetrics(fonts().body).horizontalAdvance(told.body) <= wide:
            painter.drawText(QRectF(beside, 8, wide, 22), told.body)
            below, room = told.how, QRectF(0, 32, self.width(), 34)
        else:
            painter.drawText(QRectF(0, 30, self.width(), 20), _cut(told.body, fonts().body, self.width()))
            below, room = told.how, QRectF(0, 48, self.width(), 18)
        painter.setFont(fonts().small)
        painter.setPen(look().soft_ink)
        if room.height() < 30:
            painter.drawText(room, _cut(below, fonts().small, self.width()))
        else:
            painter.drawText(room, _WRAP, below)
        painter.end()


def _cut(words: str, font: QFont, width: int) -> str:
    return QFontMetrics(font).elidedText(words, Qt.TextElideMode.ElideRight, width)


class AnswerBar(QWidget):
    """The sentence and the buttons beside it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sentence = Sentence(self)
        self.seek = QPushButton("Find a better plan", self)
        self.seek.setDefault(True)
        self.stop = QPushButton("Stop", self)
        self.more = QPushButton("Keep improving", self)
        self.anew = QPushButton("Lay it anew", self)
        self._assemble()
        self.show_state(None, None)

    def _assemble(self) -> None:
        buttons = QVBoxLayout()
        buttons.setSpacing(GRID)
        for button in (self.seek, self.stop, self.more, self.anew):
            buttons.addWidget(button)
            button.setMinimumWidth(38 * GRID)
        buttons.addStretch(1)
        line = QHBoxLayout(self)
        line.setContentsMargins(3 * GRID, GRID, 3 * GRID, 2 * GRID)
        line.setSpacing(4 * GRID)
        line.addWidget(self.sentence, 1)
        line.addLayout(buttons)
        self.setFixedHeight(_HEIGHT + 4 * GRID)

    def show_state(self, shown: OnShow | None, progress: Progress | None) -> None:
        """Say the answer, and offer what can be done now."""
        lay = shown.lay if shown is not None else None
        if shown is not None:
            self.sentence.show_told(told_of(shown, progress))
        running = progress is not None and progress.running
        searched = progress is not None and lay is not None and progress.cloth == lay.cloth.name
        able = lay is not None and lay.valid is not None and bool(lay.copies)
        self.stop.setVisible(running)
        self.seek.setVisible(not running and not searched)
        self.more.setVisible(not running and searched)
        self.seek.setEnabled(able)
        self.more.setEnabled(able)
        pinned = lay is not None and bool(pinned_in(lay.plan))
        self.anew.setVisible(not running and lay is not None and lay.own)
        self.anew.setText("Lay the rest round them" if pinned else "Lay it anew")
        self.anew.setAccessibleName(
            "Lay the rest round the pinned pieces" if pinned else "Lay all pieces anew, one after the other"
        )

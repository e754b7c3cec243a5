"""The client's page as she will see it, drawn live: no cost is on it."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from workbench.ui.look import GRID, fonts, look
from workbench.ui.quote.bench import QuoteBench, Reckoned
from workbench.ui.quote.page_words import PageWords, words_of
from workbench.ui.quote.paint_page import paint_page

PAPER_RATIO = 297.0 / 210.0
"""A4, ISO 216."""
LETTER_RATIO = 11.0 / 8.5
"""ANSI Y14.1."""
WIDTH = 108 * GRID


class ClientPaper(QWidget):
    """A sheet of paper as large as there is room for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words: PageWords | None = None
        self._ratio = PAPER_RATIO
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("The client’s page")

    def show_words(self, words: PageWords | None, letter: bool) -> None:
        """Show this page, on A4 or Letter."""
        self.words, self._ratio = words, LETTER_RATIO if letter else PAPER_RATIO
        self.setAccessibleDescription(words.spoken if words is not None else "")
        self.update()

    def sizeHint(self) -> QSize:
        """A page."""
        return QSize(WIDTH, round(WIDTH * PAPER_RATIO))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The paper in the middle, always light, as paper is."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        room = QRectF(self.rect()).adjusted(12, 4, -12, -8)
        wide = min(room.width(), room.height() / self._ratio)
        sheet = QRectF(0, 0, wide, wide * self._ratio)
        sheet.moveCenter(room.center())
        sheet.moveTop(room.top())
        paint_page(painter, sheet, self.words)
        painter.setPen(look().rule)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(sheet)
        painter.end()


class ClientPage(QWidget):
    """The page under its name, and a button that prints it."""

    def __init__(self, bench: QuoteBench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.paper = ClientPaper(self)
        self.print = QPushButton("Print this page…", self)
        title = QLabel("What the client gets", self)
        title.setFont(fonts().heading)
        head = QHBoxLayout()
        head.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, GRID)
        head.addWidget(title, 1)
        head.addWidget(self.print)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(self.paper, 1)
        bench.worked_out.connect(self.show_reckoned)

    def show_reckoned(self, reckoned: Reckoned) -> None:
        """Show the page, or an empty one."""
        letter = reckoned.picture.project.paper.name == "Letter"
        self.paper.show_words(words_of(reckoned, self.paper.words), letter)
        self.print.setEnabled(self.paper.words is not None)

"""The answer of the quote place in large letters, and what stands behind it."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark, draw_mark

_HEIGHT, _LEFT, _MARK = 19 * GRID, 3 * GRID, 18
_WRAP = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)


class Headline(QWidget):
    """A large line, and one or two small ones."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._head, self._words = "", ""
        self._mark: Mark | None = None
        self.setFixedHeight(_HEIGHT)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_words(self, head: str, words: str, mark: Mark | None = None) -> None:
        """Say this."""
        if (head, words, mark) != (self._head, self._words, self._mark):
            self._head, self._words, self._mark = head, words, mark
            self.setAccessibleName(f"{head}. {words}")
            self.update()

    def sizeHint(self) -> QSize:
        """Three lines."""
        return QSize(90 * GRID, _HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The mark, the answer, the sentence."""
        painter = QPainter(self)
        left = _LEFT
        if self._mark is not None:
            draw_mark(painter, QRectF(left, 11, _MARK, _MARK), self._mark, look().ground)
            left += _MARK + 2 * GRID
        painter.setFont(fonts().title)
        painter.setPen(look().ink)
        painter.drawText(QRectF(left, 4, self.width() - left, 30), self._head)
        painter.setFont(fonts().body)
        painter.setPen(look().soft_ink)
        painter.drawText(QRectF(_LEFT, 34, self.width() - 2 * _LEFT, 40), _WRAP, self._words)
        painter.fillRect(0, self.height() - 1, self.width(), 1, look().hairline)
        painter.end()

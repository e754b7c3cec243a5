"""Words under a field."""

from __future__ import annotations

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark, draw_mark

_MARK = 12
_WRAPPED = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap


class Note(QWidget):
    """Words under a field, with a mark before them where they are more than a remark.

    A label would have the whole form laid out anew at every change of a figure; this asks
    for that only when its words need another number of lines.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._words = ""
        self._mark: Mark | None = None
        self.setFont(fonts().small)
        policy = QSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.hide()

    def text(self) -> str:
        """What it says."""
        return self._words

    def show_words(self, words: str, mark: Mark | None = None) -> None:
        """Say this, or nothing where there are no words."""
        if (words, mark) == (self._words, self._mark):
            return
        self._words, self._mark = words, mark
        self.setAccessibleName(words)
        self.setVisible(bool(words))
        if self.heightForWidth(self.width()) != self.height():
            self.updateGeometry()
        self.update()

    def hasHeightForWidth(self) -> bool:
        """The words wrap."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Height of the words, wrapped."""
        return self._box(width, 10_000).height()

    def sizeHint(self) -> QSize:
        """As tall as it must be for the width it has."""
        return QSize(0, self.heightForWidth(self.width()))

    def _left(self) -> int:
        return _MARK + GRID if self._mark else 0

    def _box(self, width: int, height: int) -> QRect:
        room = QRect(self._left(), 0, max(width - self._left(), 40), height)
        return self.fontMetrics().boundingRect(room, _WRAPPED, self._words)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The mark stands beside the first line."""
        painter = QPainter(self)
        painter.setPen(look().ink)
        painter.drawText(self.rect().adjusted(self._left(), 0, 0, 0), _WRAPPED, self._words)
        if self._mark:
            top = (self.fontMetrics().height() - _MARK) / 2
            draw_mark(painter, QRectF(0, top, _MARK, _MARK), self._mark, look().ground)
        painter.end()

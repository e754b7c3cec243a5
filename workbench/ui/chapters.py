"""The stages of the work at the left: how far each has come; a click goes there."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from workbench.ui.look import GRID, fonts, look

_HEIGHT = 10 * GRID
_RING = 18.0


@dataclass(frozen=True)
class Chapter:
    """A stage: its name, and how many of its steps are done."""

    name: str
    done: int
    steps: int


class ChapterRow(QAbstractButton):
    """A ring that fills, the name, and the count in words."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.chapter = Chapter("", 0, 0)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_chapter(self, chapter: Chapter) -> None:
        """Show how far it has come."""
        if chapter != self.chapter:
            self.chapter = chapter
            self.setAccessibleName(f"{chapter.name}, {chapter.done} of {chapter.steps} done")
            self.update()

    def sizeHint(self) -> QSize:
        """A row as tall as any other."""
        return QSize(60 * GRID, _HEIGHT)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what a click does; the other keys are the button's."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Ring, name, count."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.underMouse() or self.hasFocus():
            painter.fillRect(self.rect(), look().selected_fill)
        box = QRectF(3 * GRID, 0.5 * (self.height() - _RING), _RING, _RING)
        _ring(painter, box, self.chapter)
        count = f"{self.chapter.done} of {self.chapter.steps}"
        painter.setFont(fonts().small)
        width = painter.fontMetrics().horizontalAdvance(count)
        middle = Qt.AlignmentFlag.AlignVCenter
        painter.setPen(look().soft_ink)
        painter.drawText(self.width() - width - 3 * GRID, 0, width, self.height(), middle, count)
        painter.setFont(fonts().body)
        painter.setPen(look().ink)
        left = int(box.right()) + 2 * GRID
        room = self.width() - width - 5 * GRID - left
        name = painter.fontMetrics().elidedText(self.chapter.name, Qt.TextElideMode.ElideRight, room)
        painter.drawText(left, 0, room, self.height(), middle, name)
        painter.end()


def _ring(painter: QPainter, box: QRectF, chapter: Chapter) -> None:
    """Empty, partly round, or filled with a tick in it."""
    inner = box.adjusted(1.5, 1.5, -1.5, -1.5)
    whole = chapter.steps > 0 and chapter.done == chapter.steps
    painter.setPen(QPen(look().rule, 2))
    painter.setBrush(look().selected if whole else Qt.BrushStyle.NoBrush)
    painter.drawEllipse(inner)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if whole:
        painter.setPen(QPen(look().on_selected, 2))
        x, y, side = inner.left(), inner.top(), inner.width()
        painter.drawPolyline(
            [QPointF(x + a * side, y + b * side) for a, b in ((0.26, 0.52), (0.44, 0.7), (0.76, 0.32))]
        )
    elif chapter.done:
        painter.setPen(QPen(look().selected, 3))
        painter.drawArc(inner, 90 * 16, -round(360 * 16 * chapter.done / chapter.steps))


class Chapters(QWidget):
    """A row for each stage."""

    chosen = Signal(int)
    """The number of the stage, counted from 0."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: list[ChapterRow] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)

    def show_chapters(self, chapters: tuple[Chapter, ...]) -> None:
        """Show these in this order."""
        while len(self.rows) < len(chapters):
            row = ChapterRow(self)
            row.clicked.connect(self.on_clicked)
            self._column.addWidget(row)
            self.rows.append(row)
        for row, chapter in zip(self.rows, chapters, strict=False):
            row.show_chapter(chapter)
        for number, row in enumerate(self.rows):
            row.setVisible(number < len(chapters))

    def on_clicked(self) -> None:
        """Say which stage is wanted."""
        row = self.sender()
        if isinstance(row, ChapterRow):
            self.chosen.emit(self.rows.index(row))

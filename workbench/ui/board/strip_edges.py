"""What frames the girth strip: the girths along its top, and along its foot what the parts of a bar are.

Both are widgets of their own, so that a drag of a bar does not paint them again.
"""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QEvent, QRect, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.body import Unit, say_exact
from workbench.ui.board.bars import Axis
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.paint_levels import RULER
from workbench.ui.board.pens import across, upright
from workbench.ui.board.ruler import marks, step_for
from workbench.ui.look import fonts, look

_TICK_ROOM, _NUMBER_ROOM = 5.0, 28.0
_PAD, _SWATCH, _AFTER, _LINE = 14, 14, 12, 18
"""Pixels before the first swatch, of a swatch, behind its words, and from line to line of the legend."""


class _Edge(QWidget):
    """Lets the mouse through, and paints its own ground."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def changeEvent(self, event: QEvent) -> None:
        """Light and dark can change under it."""
        if event.type() == QEvent.Type.PaletteChange:
            self.update()
        super().changeEvent(event)


class GirthRuler(_Edge):
    """Girths round the body, in the user's unit."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Ruler of girths")
        self._axis = Axis(0.0, 1.0, 0.0, 1.0)
        self._unit: Unit = "in"

    def show_axis(self, axis: Axis, unit: Unit) -> None:
        """Count along another axis or in another unit."""
        if (axis, unit) != (self._axis, self._unit):
            self._axis, self._unit = axis, unit
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Ticks and numbers."""
        painter, axis, shown = QPainter(self), self._axis, look()
        painter.fillRect(self.rect(), shown.paper)
        painter.setPen(shown.soft_ink)
        across(painter, RULER - 1, 0, self.width(), shown.hairline)
        upright(painter, 0, 0, self.height(), shown.hairline)
        for room, size in ((_TICK_ROOM, 4.0), (_NUMBER_ROOM, 8.0)):
            for girth in marks(step_for(self._unit, axis.scale, room), axis.low + 1, axis.high):
                upright(painter, axis.x(girth), RULER - size, RULER, shown.rule)
        for girth in marks(step_for(self._unit, axis.scale, _NUMBER_ROOM), axis.low + 1, axis.high):
            put(painter, say_exact(girth, self._unit), axis.x(girth), 10, fonts().small, "middle")
        put(painter, self._unit, self.width() - 10, 10, fonts().small, "right")


class Legend(_Edge):
    """A swatch and a word for each part of a bar, in as many lines as they need."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("What the parts of a bar are")
        self.setAccessibleDescription(", ".join(words for words, _, _ in self._parts()))

    def lines_for(self, width: int) -> int:
        """How many lines the legend takes up at a width."""
        return 1 + max(line for *_, line in self._placed(width))

    def heightForWidth(self, width: int) -> int:
        """Pixels that the lines take up."""
        return _LINE * self.lines_for(width) + 8

    def paintEvent(self, event: QPaintEvent) -> None:
        """The swatches and words."""
        painter, shown = QPainter(self), look()
        painter.fillRect(self.rect(), shown.paper)
        across(painter, 0, 0, self.width(), shown.hairline)
        upright(painter, 0, 0, self.height(), shown.hairline)
        painter.setPen(shown.soft_ink)
        for words, colour, size, x, line in self._placed(self.width()):
            y = 13 + _LINE * line
            wide, high = size
            painter.fillRect(QRect(x + (_SWATCH - wide) // 2, y - high // 2, wide, high), colour)
            put(painter, words, x + _SWATCH + 5, y, fonts().small)

    def _placed(self, width: int) -> Iterator[tuple[str, QColor, tuple[int, int], int, int]]:
        """Words, colour, size of the swatch, its left pixel and its line."""
        x, line = _PAD, 0
        for words, colour, size in self._parts():
            wide = _SWATCH + 5 + int(width_of(words, fonts().small))
            if x + wide > width - 4 and x > _PAD:
                x, line = _PAD, line + 1
            yield words, colour, size, x, line
            x += wide + _AFTER

    def _parts(self) -> tuple[tuple[str, QColor, tuple[int, int]], ...]:
        shown = look()
        return (
            ("body", shown.bar_body, (14, 10)),
            ("finished", shown.bar_finished, (14, 10)),
            ("laced shut", shown.bar_shut, (14, 4)),
            ("your limit", shown.limit, (2, 12)),
            ("her breath", shown.breath, (14, 10)),
        )

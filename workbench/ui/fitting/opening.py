"""The opening at the back as it was measured: both edges, and where they were meant to be."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.body import say_with_unit
from workbench.document import Project
from workbench.fitting import Fitting
from workbench.ui.board.lettering import put, width_of
from workbench.ui.look import GRID, fonts, look

_HEIGHT = 44 * GRID
_EDGE = 14.0
"""Pixels above and below."""
_GAP_PART = 0.48
"""Of the width of the drawing, the widest gap; the rest is the two halves of the back."""
_LEAST_WIDE, _MOST_WIDE = 120.0, 220.0
"""Pixels of the drawing beside its figures."""
_LEAST_MM = 60.0
"""A gap this wide or narrower is drawn to one scale, so that narrow ones look narrow."""


class OpeningDrawing(QWidget):
    """Two edges with the three gaps between them; dashed, the opening as it was planned."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._gaps: tuple[float | None, float | None, float | None] = (None, None, None)
        self._words: tuple[str, ...] = ("", "", "")
        self._planned = 0.0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("The opening from behind")

    def sizeHint(self) -> QSize:
        """A square or so."""
        return QSize(60 * GRID, _HEIGHT)

    def show_fitting(self, fitting: Fitting | None, project: Project) -> None:
        """Show the gaps of this fitting."""
        gaps = fitting.gaps if fitting is not None else None
        self._gaps = (gaps.top, gaps.waist, gaps.hem) if gaps is not None else (None, None, None)
        self._planned = project.design.opening_mm
        self._words = tuple(
            "" if gap is None else say_with_unit(gap, project.unit, project.fraction) for gap in self._gaps
        )
        said = [
            f"{name} {words or 'not measured'}"
            for name, words in zip(("top", "waist", "hem"), self._words, strict=True)
        ]
        planned = say_with_unit(self._planned, project.unit, project.fraction)
        self.setAccessibleDescription(f"{', '.join(said)}; planned {planned}")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The two halves of the back, the edges, the figures at the right."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wide = self._drawn_width()
        middle = 0.5 * wide
        heights = (_EDGE, 0.58 * self.height(), self.height() - _EDGE)
        known = [gap for gap in self._gaps if gap is not None]
        scale = _GAP_PART * wide / max(*known, self._planned, _LEAST_MM)
        half = [0.5 * scale * (self._planned if gap is None else gap) for gap in self._gaps]
        for side in (-1.0, 1.0):
            self._paint_half(painter, middle, side, half, heights)
        self._paint_planned(painter, middle, 0.5 * scale * self._planned, heights)
        self._paint_words(painter, middle, half, heights)
        painter.end()

    def _said(self) -> tuple[str, ...]:
        """What stands beside each height."""
        names = ("Top", "Waist", "Hem")
        return tuple(f"{name} {words}".rstrip() for name, words in zip(names, self._words, strict=True))

    def _drawn_width(self) -> float:
        """Pixels for the drawing: what the figures at its right leave, as they are never cut off."""
        figures = max(width_of(words, fonts().small) for words in self._said()) + 3 * GRID
        return min(max(self.width() - figures, _LEAST_WIDE), _MOST_WIDE)

    def _paint_half(
        self,
        painter: QPainter,
        middle: float,
        side: float,
        half: list[float],
        heights: tuple[float, float, float],
    ) -> None:
        edge = [QPointF(middle + side * gap, y) for gap, y in zip(half, heights, strict=True)]
        far = middle + side * middle
        cloth = QPolygonF([*edge, QPointF(far, heights[-1]), QPointF(far, heights[0])])
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look().panel)
        painter.drawPolygon(cloth)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        measured = all(gap is not None for gap in self._gaps)
        painter.setPen(QPen(look().ink if measured else look().rule, 1.6))
        painter.drawPolyline(QPolygonF(edge))
        painter.setPen(QPen(look().hairline, 1))
        for y in (heights[0], heights[-1]):
            gap = half[0] if y == heights[0] else half[-1]
            painter.drawLine(QPointF(middle + side * gap, y), QPointF(far, y))

    def _paint_planned(
        self, painter: QPainter, middle: float, half: float, heights: tuple[float, float, float]
    ) -> None:
        dashed = QPen(look().selected, 1, Qt.PenStyle.DashLine)
        painter.setPen(dashed)
        for side in (-1.0, 1.0):
            x = middle + side * half
            painter.drawLine(QPointF(x, heights[0]), QPointF(x, heights[-1]))

    def _paint_words(
        self, painter: QPainter, middle: float, half: list[float], heights: tuple[float, float, float]
    ) -> None:
        right = 2 * middle + 2 * GRID
        for said, words, gap, y in zip(self._said(), self._words, half, heights, strict=True):
            painter.setPen(QPen(look().rule, 1, Qt.PenStyle.DotLine))
            if words:
                painter.drawLine(QPointF(middle - gap, y), QPointF(middle + gap, y))
            painter.setPen(look().ink if words else look().soft_ink)
            at = min(max(y, 10.0), self.height() - 10.0)
            put(painter, said, right, at, fonts().small)
        painter.setPen(look().selected)
        box = QRectF(middle - 40, 0.5 * (heights[0] + heights[1]) - 8, 80, 16)
        painter.setFont(fonts().small)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, "planned")

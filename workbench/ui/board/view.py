"""Where millimetres lie on the screen: one frozen view, shared by the canvas and the girth strip."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, QPointF, QRectF, Signal
from PySide6.QtGui import QTransform

from workbench.frozen import dataclass

SMALLEST, LARGEST = 0.12, 24.0
"""Pixels a millimetre: the whole of a long train, or the width of one chalk line."""

Bounds = tuple[float, float, float, float]
"""Left, bottom, right, top in mm; y points up."""


@dataclass(frozen=True)
class View:
    """Scale in pixels a millimetre, and the pixel at which the centre front meets the waist."""

    scale: float = 1.0
    left: float = 0.0
    waist: float = 0.0

    def x(self, mm: float) -> float:
        """Pixels from the left edge."""
        return self.left + self.scale * mm

    def y(self, mm: float) -> float:
        """Pixels from the top edge."""
        return self.waist - self.scale * mm

    def at(self, x_mm: float, y_mm: float) -> QPointF:
        """The pixel of a point in mm."""
        return QPointF(self.x(x_mm), self.y(y_mm))

    def mm(self, pixel: QPointF) -> tuple[float, float]:
        """x and y in mm of a pixel."""
        return (pixel.x() - self.left) / self.scale, (self.waist - pixel.y()) / self.scale

    def transform(self) -> QTransform:
        """From mm, y up, to pixels."""
        return QTransform(self.scale, 0, 0, -self.scale, self.left, self.waist)

    def zoomed(self, factor: float, at: QPointF) -> View:
        """Larger or smaller, with the point under ``at`` staying where it is."""
        scale = min(max(self.scale * factor, SMALLEST), LARGEST)
        x, y = self.mm(at)
        return View(scale, at.x() - scale * x, at.y() + scale * y)

    def panned(self, right: float, down: float) -> View:
        """Moved by so many pixels."""
        return replace(self, left=self.left + right, waist=self.waist + down)


def fitted(bounds: Bounds, room: QRectF) -> View:
    """The largest view that shows all of ``bounds`` in the middle of ``room``."""
    left, bottom, right, top = bounds
    wide, high = max(right - left, 1.0), max(top - bottom, 1.0)
    scale = min(room.width() / wide, room.height() / high)
    scale = min(max(scale, SMALLEST), LARGEST)
    middle = room.center()
    return View(scale, middle.x() - 0.5 * scale * (left + right), middle.y() + 0.5 * scale * (bottom + top))


class Sight(QObject):
    """Holds the view on show, and says when it moves."""

    moved = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._view = View()
        self._by_hand = False

    @property
    def view(self) -> View:
        """The view on show."""
        return self._view

    @property
    def by_hand(self) -> bool:
        """Whether she has zoomed or panned since it was last fitted."""
        return self._by_hand

    def show_view(self, view: View, *, by_hand: bool = True) -> None:
        """Show another view; one that was fitted, not set by hand, may be fitted again."""
        self._by_hand = by_hand
        if view != self._view:
            self._view = view
            self.moved.emit()

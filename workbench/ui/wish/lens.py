"""Where the pixels of a picture lie on the screen while it is looked at."""

from __future__ import annotations

from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF, QRectF, QSizeF

SMALLEST, LARGEST = 0.02, 16.0
"""Pixels of the screen for one of the picture."""

Spot = tuple[float, float]
"""Pixels from the left and from the top of the picture."""


@dataclass(frozen=True)
class Lens:
    """Scale, and the pixel of the screen on which the picture's top left corner lies."""

    scale: float = 1.0
    left: float = 0.0
    top: float = 0.0

    def at(self, spot: Spot) -> QPointF:
        """The pixel of the screen for a place in the picture."""
        return QPointF(self.left + self.scale * spot[0], self.top + self.scale * spot[1])

    def spot(self, pixel: QPointF) -> Spot:
        """The place in the picture under a pixel of the screen."""
        return (pixel.x() - self.left) / self.scale, (pixel.y() - self.top) / self.scale

    def box(self, size: QSizeF) -> QRectF:
        """What a picture of that size covers."""
        return QRectF(self.left, self.top, self.scale * size.width(), self.scale * size.height())

    def zoomed(self, factor: float, at: QPointF) -> Lens:
        """Larger or smaller, with what lies under ``at`` staying there."""
        scale = min(max(self.scale * factor, SMALLEST), LARGEST)
        across, down = self.spot(at)
        return Lens(scale, at.x() - scale * across, at.y() - scale * down)

    def moved(self, right: float, down: float) -> Lens:
        """Moved by so many pixels of the screen."""
        return replace(self, left=self.left + right, top=self.top + down)


def fitted(size: QSizeF, room: QRectF) -> Lens:
    """All of a picture of that size in the middle of the room, never larger than it is."""
    scale = min(room.width() / max(size.width(), 1.0), room.height() / max(size.height(), 1.0), 1.0)
    scale = max(scale, SMALLEST)
    middle = room.center()
    return Lens(scale, middle.x() - 0.5 * scale * size.width(), middle.y() - 0.5 * scale * size.height())


def held_inside(spot: Spot, size: QSizeF) -> Spot:
    """The place, or the nearest one inside the picture."""
    return min(max(spot[0], 0.0), size.width()), min(max(spot[1], 0.0), size.height())

"""Where the torso stands in its pane: from millimetres of the picture to pixels, and back."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QTransform

from workbench.ui.board.polygons import Array
from workbench.worn import Worn

_LEAST_SCALE = 0.05


@dataclass(frozen=True)
class Stage:
    """Pixels a millimetre, and the pixel of the waist in the middle of the body."""

    scale: float
    left: float
    waist: float

    def pixels(self, points: Array) -> Array:
        """(n, 2) pixels of points of the picture."""
        found: Array = points * np.array([self.scale, -self.scale])
        found += (self.left, self.waist)
        return found

    def transform(self) -> QTransform:
        """From mm, y up, to pixels."""
        return QTransform(self.scale, 0, 0, -self.scale, self.left, self.waist)

    def pixel(self, x: float, y: float) -> QPointF:
        """The pixel of one point."""
        return QPointF(self.left + self.scale * x, self.waist - self.scale * y)

    def mm(self, pixel: QPointF) -> tuple[float, float]:
        """x and y on the picture."""
        return (pixel.x() - self.left) / self.scale, (self.waist - pixel.y()) / self.scale


def stage_for(worn: Worn, room: QRectF, down: float) -> Stage:
    """The torso as large as it fits from whichever side, so that it stands still as it turns."""
    stand = worn.stand
    widest = float(
        np.max(np.maximum(stand.girths, worn.girths) * stand.sections.half_breadth + np.abs(stand.forward))
    )
    low, high = float(stand.heights[0]), float(stand.heights[-1])
    drop = widest * np.sin(np.radians(down))
    scale = min(room.width() / (2 * widest), room.height() / (high - low + 2 * drop))
    scale = max(float(scale), _LEAST_SCALE)
    return Stage(scale, room.center().x(), room.center().y() + scale * 0.5 * (low + high))

"""Free room on a sheet, found between the panels."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

_STEP = 6.0
_CLEAR = 3.0


@dataclass(frozen=True)
class Box:
    """An upright rectangle, mm."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Bottom to top."""
        return self.top - self.bottom

    def meets(self, other: Box) -> bool:
        """Whether the two share more than an edge."""
        across = self.left < other.right and other.left < self.right
        return across and self.bottom < other.top and other.bottom < self.top


def free_spot(
    width: float,
    height: float,
    sheet: Box,
    panels: NDArray[np.object_],
    taken: tuple[Box, ...] = (),
    inset: float = 4.0,
) -> Box | None:
    """A rectangle of that size on the sheet, clear of the panels and of what is taken, or None.

    It lies as low and as far to the right as it can.
    """
    left = np.arange(sheet.right - inset - width, sheet.left + inset - 1e-9, -_STEP)
    bottom = np.arange(sheet.bottom + inset, sheet.top - inset - height + 1e-9, _STEP)
    if not (left.size and bottom.size):
        return None
    y, x = (grid.ravel() for grid in np.meshgrid(bottom, left, indexing="ij"))
    boxes = shapely.box(x - _CLEAR, y - _CLEAR, x + width + _CLEAR, y + height + _CLEAR)
    obstacles = [*panels, *(shapely.box(b.left, b.bottom, b.right, b.top) for b in taken)]
    hit = shapely.intersects(shapely.union_all(obstacles), boxes) if obstacles else np.zeros(x.size, bool)
    free = np.flatnonzero(~hit)
    if not free.size:
        return None
    at = free[0]
    return Box(float(x[at]), float(y[at]), float(x[at] + width), float(y[at] + height))

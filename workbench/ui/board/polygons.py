"""Points from numpy to Qt in one copy: appending them one by one costs fifty times as much."""

from __future__ import annotations

from typing import Any

import numpy as np
import shiboken6
from numpy.typing import NDArray
from PySide6.QtGui import QPolygonF

Array = NDArray[np.float64]

_BYTES = 16
"""One point: two doubles."""


def polygon(points: Array) -> QPolygonF:
    """The points (n, 2) as a Qt polygon; ValueError unless all of them are finite.

    The polygon is filled through its own memory, and the view of that memory is let go
    before anything else can make the polygon move.
    """
    if not np.isfinite(points).all():
        raise ValueError("a point to draw is not finite")
    made = QPolygonF()
    made.resize(len(points))
    if len(points):
        reach: Any = shiboken6.VoidPtr  # its stub leaves out the size and the right to write
        memory = reach(made.data(), _BYTES * len(points), True)
        np.frombuffer(memory, np.float64).reshape(-1, 2)[:] = points
    return made

"""Thin arrows of a lay sheet."""

from __future__ import annotations

import numpy as np

from workbench.sheets.drawing import Array
from workbench.sheets.pen import INK, Colour, LineStyle, Pen

BARB = 0.8
"""Length of a barb on paper, mm."""


def draw_arrow(pen: Pen, tail: Array, head: Array, barb: float = BARB, colour: Colour = INK) -> None:
    """A thin line with a barbed head."""
    line = LineStyle(0.15, colour)
    pen.polyline(np.array([tail, head]), line)
    along = (head - tail) / max(float(np.hypot(*(head - tail))), 1e-9)
    across = 0.5 * np.array([-along[1], along[0]])
    pen.polyline(np.array([head - barb * (along + across), head, head - barb * (along - across)]), line)

"""The picture of the design: front and back side by side."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely

from workbench.sheets.block import SMALL, Block
from workbench.sheets.drawing import Array, Role
from workbench.sheets.garment import View
from workbench.sheets.pen import FAINT, INK, SOFT, LineStyle, Pen

_BETWEEN, _NAME = 12.0, 5.0
_FINE = 0.03
"""How far a drawn line may lie beside the true one on paper, mm."""
_LINES: dict[Role, LineStyle] = {
    "cut": LineStyle(0.42, INK),
    "stitch": LineStyle(0.22, INK),
    "bone": LineStyle(0.10, SOFT, (0.9, 0.5)),
    "tape": LineStyle(0.30, INK),
    "frame": LineStyle(0.18, SOFT),
    "fold": LineStyle(0.18, SOFT, (1.2, 0.8)),
}
_ORDER: tuple[Role, ...] = ("frame", "fold", "bone", "stitch", "cut", "tape")


def garment_picture(views: Sequence[View], width: float, tallest: float) -> Block:
    """The views as large as they fit, in the middle of the width, at one scale and on one waist line."""
    bounds = [view.bounds() for view in views]
    across = sum(right - left for left, _, right, _ in bounds)
    low, high = min(box[1] for box in bounds), max(box[3] for box in bounds)
    gaps = _BETWEEN * (len(views) - 1)
    scale = max(across / (width - gaps), (high - low) / (tallest - _NAME))

    def paint(pen: Pen, left: float, top: float) -> None:
        x = left + 0.5 * (width - gaps - across / scale)
        for view, (near, _, far, _) in zip(views, bounds, strict=True):
            origin = np.array([x - near / scale, top - high / scale])
            _paint_view(pen, view, origin, scale)
            foot = top - (high - low) / scale - 0.7 * _NAME
            pen.text(float(origin[0]), foot, view.name, SMALL, colour=SOFT, align="middle")
            x += (far - near) / scale + _BETWEEN

    return Block((high - low) / scale + _NAME, paint)


def _paint_view(pen: Pen, view: View, origin: Array, scale: float) -> None:
    for ring in view.fills:
        points = origin + _thinned(shapely.LinearRing(ring), scale)[:-1] / scale
        pen.polygon([(x, y) for x, y in points.tolist()], LineStyle(0.1, FAINT), FAINT)
    for role in _ORDER:
        for stroke in view.strokes:
            if stroke.role == role:
                pen.polyline(
                    origin + _thinned(shapely.LineString(stroke.points), scale) / scale, _LINES[role]
                )


def _thinned(line: shapely.LineString, scale: float) -> Array:
    points: Array = shapely.get_coordinates(shapely.simplify(line, _FINE * scale))
    return points

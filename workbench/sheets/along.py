"""Words that run along a line: a seam, a level, a bone."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from workbench.sheets.drawing import Array, Label, Role
from workbench.sheets.fonts import text_width

_CAPITALS, _BELOW = 0.72, 0.22
"""Reach of letters above and below their baseline, as parts of the size."""
_SAMPLES = 9
_END_CLEAR = 2.0
"""Between words and either end of their line, mm."""


class Course:
    """A polyline that knows its length, so that words can be set anywhere along it."""

    def __init__(self, points: Array) -> None:
        self._points = points
        steps = np.hypot(*np.diff(points, axis=0).T)
        self._walked = np.concatenate(([0.0], np.cumsum(steps)))

    @property
    def length(self) -> float:
        """mm from end to end."""
        return float(self._walked[-1])

    def at(self, walked: Array) -> Array:
        """Points (n, 2) at distances from its beginning."""
        x, y = (np.interp(walked, self._walked, self._points[:, axis]) for axis in (0, 1))
        return np.column_stack((x, y))

    def words(
        self, text: str, size: float, middle: float, side: float, gap: float = 1.5, role: Role = "caption"
    ) -> Label:
        """The text beside the line round ``middle``, clear of the line's own bend by ``gap``.

        ``side`` is 1 for the left of the line's direction, -1 for its right. The words
        never stand on their heads: they read to the right, or upwards.
        """
        half = 0.5 * text_width(text, size)
        points = self.at(np.linspace(middle - half, middle + half, _SAMPLES))
        across = points[-1] - points[0]
        across = across / max(float(np.hypot(*across)), 1e-9)
        out = side * np.array([-across[1], across[0]])
        bulge = max(float(((points - points[0]) @ out).max()), 0.0)
        angle = _readable(float(np.degrees(np.arctan2(across[1], across[0]))))
        up = np.array([-np.sin(np.radians(angle)), np.cos(np.radians(angle))])
        reach = _BELOW * size if float(up @ out) > 0 else _CAPITALS * size
        x, y = 0.5 * (points[0] + points[-1]) + (bulge + gap + reach) * out
        return Label(role, text, float(x), float(y), size, "middle", angle)

    def middles(self, text: str, size: float, parts: tuple[float, ...]) -> Iterator[float]:
        """Places for the middle of a text, for parts of the room it leaves; none where it is too long."""
        half = 0.5 * text_width(text, size) + _END_CLEAR
        room = self.length - 2 * half
        if room >= 0:
            yield from (half + part * room for part in parts)


def _readable(angle: float) -> float:
    """The same direction, or its opposite, between -89 and 91 degrees."""
    if angle > 91.0:
        return angle - 180.0
    return angle + 180.0 if angle < -89.0 else angle

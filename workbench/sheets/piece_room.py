"""Free room inside a piece: where a block of words stands clear of its edges, lines and other words."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

import numpy as np
import shapely

from workbench.sheets.drawing import Array, Label
from workbench.sheets.room import label_room

_EDGE_CLEAR, _LINE_CLEAR, _WORD_CLEAR = 3.0, 1.6, 0.8
"""Between a block of words and the stitch line, a line drawn inside, other words; mm."""
_STEP = 5.0
_ACROSS = np.array([0.0, *(side * 0.08 * step for step in range(1, 8) for side in (-1, 1))])
"""Places for the middle of a block beside the favoured one, as parts of the piece's width."""


Over = Literal["nothing", "joins", "lines"]


class PieceRoom:
    """The inside of a piece, from which words already placed are taken away."""

    def __init__(
        self,
        outline: Array,
        lines: Iterable[Array],
        joins: Iterable[Array] = (),
        kept: Iterable[shapely.Polygon] = (),
    ) -> None:
        """``joins`` are kept clear of before all else, ``kept`` is room that is never free."""
        self._shape = shapely.Polygon(outline)
        self._inner = self._shape.buffer(-_EDGE_CLEAR)
        shapely.prepare(self._shape)
        shapely.prepare(self._inner)
        self._lines = shapely.union_all([shapely.LineString(line) for line in lines])
        shapely.prepare(self._lines)
        self._joins = shapely.union_all([shapely.LineString(line) for line in joins])
        self._taken: list[shapely.Polygon] = [room for room in kept if self._shape.intersects(room)]

    @property
    def taken(self) -> list[shapely.Polygon]:
        """The room of all words placed so far."""
        return self._taken

    def place(self, labels: Iterable[Label]) -> None:
        """Note where labels stand."""
        self._taken += [label_room(label) for label in labels]

    def holds(self, label: Label, over_lines: bool = False) -> bool:
        """Whether a label stands inside, clear of words placed before and, unless said, of lines."""
        room = label_room(label)
        if not self._shape.contains(room):
            return False
        if not over_lines and (self._lines.intersects(room) or self._joins.intersects(room)):
            return False
        if not self._taken:
            return True
        wide = room.buffer(_WORD_CLEAR, join_style="mitre")
        return not bool(shapely.intersects(np.array(self._taken), wide).any())

    def spot(
        self, width: float, height: float, favoured: tuple[float, float], over: Over = "nothing"
    ) -> tuple[float, float] | None:
        """The middle of a free rectangle of that size nearest to the favoured place, or None.

        ``over`` says what it may lie on: the joins of the sheets, or the piece's own lines too.
        """
        if self._inner.is_empty:
            return None
        middles = self._middles(width, height, favoured)
        if not len(middles):
            return None
        half = 0.5 * np.array([width, height])
        boxes = shapely.box(*(middles - half).T, *(middles + half).T)
        free = shapely.contains(self._inner, boxes)
        clear = _LINE_CLEAR + half
        around = shapely.box(*(middles - clear).T, *(middles + clear).T)
        for obstacle in self._obstacles(over):
            free &= ~shapely.intersects(obstacle, around)
        found = np.flatnonzero(free)
        return (float(middles[found[0], 0]), float(middles[found[0], 1])) if found.size else None

    def _obstacles(self, over: Over) -> list[shapely.Geometry]:
        lines = {"nothing": [self._lines, self._joins], "joins": [self._lines], "lines": []}
        return [*self._taken, *lines[over]]

    def _middles(self, width: float, height: float, favoured: tuple[float, float]) -> Array:
        """Places (n, 2) worth trying, the nearest to the favoured one first; sideways counts double."""
        left, bottom, right, top = self._inner.bounds
        x = favoured[0] + _ACROSS * (right - left)
        low, high = bottom + 0.5 * height, top - 0.5 * height
        y = np.append(np.arange(low, high, _STEP), favoured[1])
        grid = np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 2)
        inside = (grid[:, 0] > left + 0.5 * width) & (grid[:, 0] < right - 0.5 * width)
        inside &= (grid[:, 1] >= low) & (grid[:, 1] <= high)
        grid = grid[inside]
        away = np.hypot(2 * (grid[:, 0] - favoured[0]), grid[:, 1] - favoured[1])
        nearest: Array = grid[np.argsort(away, kind="stable")]
        return nearest

"""Which sheets of a grid have to be printed so that every bit of every panel is on paper."""

from __future__ import annotations

import numpy as np
import shapely
from numpy.typing import NDArray

from workbench.sheets.drawing import Array
from workbench.sheets.paper import PaperSize

Mask = NDArray[np.bool_]
_EPS = 1e-6
_SLIVER = 1e-3
"""A panel that only touches a cell, within a thousandth of a millimetre, does not need it."""


class Coverage:
    """A grid of sheets, cut into cells where their overlaps begin and end."""

    def __init__(self, paper: PaperSize, rows: int, columns: int) -> None:
        self._x, self._across = _cells(paper.pitch[0], paper.print_width, columns)
        self._y, self._down = _cells(paper.pitch[1], paper.print_height, rows)

    def needed(self, polygons: NDArray[np.object_]) -> Mask:
        """(rows, columns) sheets that together print the polygons.

        A sheet whose every bit is printed on others too is left out.
        """
        content = self._content(polygons)
        sheets = self._down @ content @ self._across.T
        printed = self._down.T.astype(int) @ sheets.astype(int) @ self._across.astype(int)
        amounts = self._down.astype(int) @ content.astype(int) @ self._across.T.astype(int)
        for flat in np.argsort(amounts, axis=None, kind="stable"):
            row, column = divmod(int(flat), sheets.shape[1])
            seen = np.outer(self._down[row], self._across[column])
            if sheets[row, column] and (printed[seen & content] > 1).all():
                sheets[row, column] = False
                printed -= seen
        return sheets

    def _content(self, polygons: NDArray[np.object_]) -> Mask:
        """(cells down, cells across) where there is any of the polygons."""
        left, right = self._x[:-1], self._x[1:]
        above, below = -self._y[:-1], -self._y[1:]
        x0, y0, x1, y1 = np.moveaxis(shapely.bounds(polygons), 1, 0)[:, :, None, None]
        across = (x0 < right - _SLIVER) & (x1 > left + _SLIVER)
        near = across & (y0 < above[:, None] - _SLIVER) & (y1 > below[:, None] + _SLIVER)
        shapely.prepare(polygons)
        which, row, column = np.nonzero(near)
        boxes = shapely.box(
            left[column] + _SLIVER, below[row] + _SLIVER, right[column] - _SLIVER, above[row] - _SLIVER
        )
        near[which, row, column] = shapely.intersects(polygons[which], boxes)
        content: Mask = near.any(axis=0)
        return content


def _cells(pitch: float, seen: float, count: int) -> tuple[Array, Mask]:
    """Ends of the cells (n + 1,), and which of them each sheet prints (count, n)."""
    starts = np.arange(count) * pitch
    ends = np.sort(np.concatenate((starts, starts + seen)))
    ends = ends[np.concatenate(([True], np.diff(ends) > 4 * _SLIVER))]
    low, high = ends[:-1], ends[1:]
    return ends, (low > starts[:, None] - 5 * _SLIVER) & (high < starts[:, None] + seen + 5 * _SLIVER)

"""A figure known at the points of a square grid over a panel, and told in between."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from workbench.beads.result import Array, Ints

PITCH_MM = 4.0
"""Own choice: side of a cell."""


@dataclass(frozen=True)
class Lattice:
    """Values (columns, rows) at ``low`` and every pitch on from there."""

    low: Array
    values: Array

    def nearest(self, points: Array) -> tuple[Array, Array]:
        """(n,) the value at the nearest grid point, and the distance in mm to that point."""
        cells = self._cells(points, 0.5)
        off = points - (self.low + cells * PITCH_MM)
        return self.values[cells[:, 0], cells[:, 1]], np.hypot(off[:, 0], off[:, 1])

    def between(self, points: Array) -> Array:
        """(n,) the value in between four grid points, by shares of the distance."""
        cells = np.minimum(self._cells(points, 0.0), np.array(self.values.shape) - 2)
        x, y = np.clip((points - self.low) / PITCH_MM - cells, 0.0, 1.0).T
        i, j = cells.T
        v = self.values
        low = v[i, j] * (1 - x) + v[i + 1, j] * x
        high = v[i, j + 1] * (1 - x) + v[i + 1, j + 1] * x
        value: Array = low * (1 - y) + high * y
        return value

    def _cells(self, points: Array, lift: float) -> Ints:
        cells = np.floor((points - self.low) / PITCH_MM + lift).astype(np.intp)
        return np.asarray(np.clip(cells, 0, np.array(self.values.shape) - 1), dtype=np.intp)


def lattice_over(outline: Array, figure: Callable[[Array], Array]) -> Lattice:
    """The values of a figure of points (n, 2) over all that an outline reaches."""
    low = outline.min(axis=0) - PITCH_MM
    counts = np.ceil((outline.max(axis=0) - low) / PITCH_MM).astype(np.intp) + 2
    axes = (low[k] + PITCH_MM * np.arange(counts[k]) for k in (0, 1))
    points = np.stack(np.meshgrid(*axes, indexing="ij"), axis=-1).reshape(-1, 2)
    return Lattice(low, figure(points).reshape(counts.tolist()))

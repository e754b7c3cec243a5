"""Which beads lie on a panel already, so that no two lie on each other: a grid, one bead a cell at most."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from workbench.beads.result import Array, Flags, Ints

TOUCH = 0.98
"""On a curve, beads that touch along the thread stand this much closer in the straight (own choice)."""
_ROOM = 4096
"""Own choice: beads there is room for at first."""
_MOST_AT_ONCE = 400_000
"""Pairs of bead and cell that are looked at together, for the sake of memory (own choice)."""


class Ground:
    """The beads on one panel. Two keep half of both sizes between them, or the smaller of both spreads."""

    def __init__(self, low: Array, high: Array, smallest: float, largest: float) -> None:
        self._cell = TOUCH * smallest / np.sqrt(2.0) * (1 - 1e-9)
        self._low, self._largest = low, largest
        self._shape = np.ceil((high - low) / self._cell).astype(np.intp) + 1
        self._grid: NDArray[np.int32] = np.full(self._shape.tolist(), -1, np.int32)
        self._count = 0
        self._points = np.zeros((_ROOM, 2))
        self._sizes, self._spreads = np.zeros(_ROOM), np.zeros(_ROOM)

    def take(self, points: Array, sizes: Array, spreads: Array, most: int | None = None) -> Flags:
        """Lay the beads down one after the other; (n,) which of them had room, and lie there now.

        No more than ``most`` of them are laid down.

        ``spreads`` is the distance in mm a bead keeps from others that were strewn, 0 for a bead of a run.
        """
        taken = ~self._too_near(points, sizes, spreads)
        own = np.flatnonzero(taken)
        for late in own[_too_late(points[own], sizes[own], spreads[own])]:
            taken[late] = False
        if most is not None:
            taken &= np.cumsum(taken) <= most
        self._lay(points[taken], sizes[taken], spreads[taken])
        return taken

    def _lay(self, points: Array, sizes: Array, spreads: Array) -> None:
        count = self._count + len(points)
        while count > len(self._points):
            self._points = np.concatenate((self._points, np.zeros_like(self._points)))
            self._sizes = np.concatenate((self._sizes, np.zeros_like(self._sizes)))
            self._spreads = np.concatenate((self._spreads, np.zeros_like(self._spreads)))
        new = slice(self._count, count)
        self._points[new], self._sizes[new], self._spreads[new] = points, sizes, spreads
        column, row = self._cells(points).T
        self._grid[column, row] = np.arange(self._count, count)
        self._count = count

    def _cells(self, points: Array) -> Ints:
        cells: Ints = ((points - self._low) / self._cell).astype(np.intp)
        return np.clip(cells, 0, self._shape - 1)

    def _too_near(self, points: Array, sizes: Array, spreads: Array) -> Flags:
        """(n,) which would lie too near to one that lies there already."""
        near = np.zeros(len(points), np.bool_)
        if not self._count:
            return near
        reach = np.maximum(spreads, 0.5 * (sizes + self._largest))
        rings = np.ceil(reach / self._cell).astype(np.intp)
        for ring in np.unique(rings).tolist():
            steps = _steps_within(ring)
            all_own = np.flatnonzero(rings == ring)
            for own in np.array_split(all_own, len(all_own) * len(steps) // _MOST_AT_ONCE + 1):
                near[own] = self._near_in(points[own], sizes[own], spreads[own], steps)
        return near

    def _near_in(self, points: Array, sizes: Array, spreads: Array, steps: Ints) -> Flags:
        column, row = self._cells(points).T
        columns = np.clip(column[:, None] + steps[:, 0], 0, self._shape[0] - 1)
        rows = np.clip(row[:, None] + steps[:, 1], 0, self._shape[1] - 1)
        lying = self._grid[columns, rows]
        who, which = np.nonzero(lying >= 0)
        there = lying[who, which]
        apart = self._points[there] - points[who]
        need = needed(sizes[who], self._sizes[there], spreads[who], self._spreads[there])
        near = np.zeros(len(points), np.bool_)
        near[who[np.einsum("ij,ij->i", apart, apart) < need * need]] = True
        return near


def needed(size: Array, other: Array, spread: Array, spread_there: Array) -> Array:
    """Least distance in mm between the middles of two beads."""
    touching = 0.5 * (size + other) * np.where((spread > 0) | (spread_there > 0), 1.0, TOUCH)
    return np.maximum(touching, np.minimum(spread, spread_there))


def _too_late(points: Array, sizes: Array, spreads: Array) -> Ints:
    """Numbers of those that lie too near to one before them that stays."""
    if len(points) < 2:
        return np.zeros(0, np.intp)
    x, y = points.T
    square = (x[:, None] - x) ** 2 + (y[:, None] - y) ** 2
    need = needed(sizes[:, None], sizes, spreads[:, None], spreads)
    late, early = np.nonzero(np.tril(square < need * need, -1))
    gone: set[int] = set()
    for one, other in zip(late.tolist(), early.tolist(), strict=True):
        if other not in gone:
            gone.add(one)
    return np.array(sorted(gone), dtype=np.intp)


def _steps_within(ring: int) -> Ints:
    """(m, 2) cells that hold anything within ``ring`` cells of a point, the corners left out."""
    steps = np.stack(np.meshgrid(*[np.arange(-ring, ring + 1)] * 2), axis=-1).reshape(-1, 2)
    nearest = np.maximum(np.abs(steps) - 1, 0)
    return np.asarray(steps[(nearest * nearest).sum(axis=1) < ring * ring], dtype=np.intp)

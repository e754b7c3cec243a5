"""Beads strewn over a panel: evenly, without a pattern, and no nearer to each other than their density asks.

Darts are thrown in an order that chance gives, and one that falls too near to a bead is lost:
Poisson-disc sampling (Cook, ACM Trans. Graph. 5, 1986; with a grid as in Bridson, SIGGRAPH
2007; from memory). Darts belong to cells of a grid that is fixed to the middle of the panel at
the waist, so that the same seed strews the same beads wherever an edit leaves the panel alone.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from workbench.beads.chance import draws
from workbench.beads.ground import Ground
from workbench.beads.keep_out import Room
from workbench.beads.lattice import Lattice
from workbench.beads.result import Array, Flags, Ints

SQUARE_INCH = 645.16
"""In square mm (derived)."""
JAM = 0.6965
"""Darts stop finding room at this many to the square of their distance: a covering of 0.547 by discs of
half that distance (Feder, J. Theor. Biol. 87, 1980; from memory)."""
FULL = 0.55
"""The same at which they are given up: nearer to the jam darts are lost by the thousand (own choice)."""
_PART = 0.88
"""Of the distance at which as many as asked for would jam (own choice)."""
_TRIES = 16
"""Darts for each bead (own choice)."""
_WIDEST = 3.0
"""Where beads thin out, they keep at most this many times the distance of the thickest place (own choice)."""
_LEAST_SHARE = 0.02
"""At least so large a part of the darts is reckoned to become beads when more are thrown (own choice)."""
_BATCH = 384
"""Own choice: darts thrown together."""


@dataclass(frozen=True)
class Sowing:
    """What is to be strewn on one panel: kinds with their sizes in mm and shares, beads to the mm²."""

    kinds: Ints
    sizes: Array
    shares: Array
    density: float
    seed: int
    thinning: Lattice | None = None
    """Share of the density, from 0 to 1, at each place."""


@dataclass(frozen=True)
class Darts:
    """Places that chance offers, in its order, and how many beads they stand for."""

    points: Array
    kinds: Ints
    sizes: Array
    spreads: Array
    wanted: int


def darts_for(sowing: Sowing, room: Room, clear: Lattice, origin: Array) -> Darts:
    """Darts on the free cloth of a panel; ``clear`` is its clearance, ``origin`` fixes the grid of chance."""
    x, y, order, luck, which = _thrown(sowing, room, origin)
    kinds = np.minimum(np.searchsorted(np.cumsum(sowing.shares), which), len(sowing.kinds) - 1)
    points, sizes = np.stack((x, y), axis=1), sowing.sizes[kinds]
    share = np.ones(len(x))
    if sowing.thinning is not None:
        share = sowing.thinning.between(points)
    kept = np.flatnonzero(luck < share)
    kept = kept[_free(points[kept], 0.5 * sizes[kept], room, clear)]
    wanted = round(len(kept) / _TRIES)
    kept = kept[np.argsort(order[kept], kind="stable")]
    thickest = _PART * np.sqrt(JAM / sowing.density)
    spreads = thickest / np.sqrt(np.maximum(share[kept], 1.0 / _WIDEST**2))
    return Darts(points[kept], sowing.kinds[kinds[kept]], sizes[kept], spreads, wanted)


def strewn(darts: Darts, ground: Ground) -> Ints:
    """Numbers of the darts that became beads, as many as wanted or as there is room for."""
    found: list[Ints] = []
    left, start, share = darts.wanted, 0, 1.0
    while left > 0 and start < len(darts.points):
        end = start + max(int(_BATCH / max(share, _LEAST_SHARE)), 1)
        batch = slice(start, end)
        taken = np.flatnonzero(
            ground.take(darts.points[batch], darts.sizes[batch], darts.spreads[batch], left)
        )
        found.append(start + taken)
        share = len(taken) / len(darts.points[batch])
        left, start = left - len(taken), end
    return np.concatenate(found) if found else np.zeros(0, np.intp)


def _thrown(sowing: Sowing, room: Room, origin: Array) -> Array:
    """(5, darts): x, y, and numbers of chance for order, thinning and kind; over all of the panel's width."""
    cell = 1.0 / np.sqrt(sowing.density)
    outline = room.panel.outline
    low = np.floor((outline.min(axis=0) - origin) / cell).astype(np.intp)
    high = np.ceil((outline.max(axis=0) - origin) / cell).astype(np.intp)
    columns, rows = (
        axis.ravel() for axis in np.meshgrid(np.arange(low[0], high[0]), np.arange(low[1], high[1]))
    )
    numbers = draws(sowing.seed, room.panel.index, columns, rows, _TRIES, 5)
    numbers[0] = origin[0] + cell * (columns[:, None] + numbers[0])
    numbers[1] = origin[1] + cell * (rows[:, None] + numbers[1])
    return numbers.reshape(5, -1)


def _free(points: Array, radii: Array, room: Room, clear: Lattice) -> Flags:
    """(n,) which may lie there: told from the lattice where that settles it, else worked out."""
    rough, slack = clear.nearest(points)
    free: Flags = rough - slack >= radii
    open_ = np.flatnonzero(~free & (rough + slack >= radii))
    free[open_] = room.clearance(points[open_]) >= radii[open_]
    return free

"""The four stitch lines of a piece, and the hair that is added or taken for the turn of cloth."""

from __future__ import annotations

from functools import cached_property

import numpy as np

from workbench.draft import Panel
from workbench.frozen import dataclass
from workbench.pieces.making import EdgeName
from workbench.pieces.polyline import Array

IN_RING: tuple[EdgeName, ...] = ("hem", "right", "neckline", "left")
"""The edges in the order in which an anticlockwise ring meets them."""

_SAME = 1e-7
"""mm (own choice: what counts as one point)."""

Four = tuple[Array, Array, Array, Array]


@dataclass(frozen=True)
class Outline:
    """Stitch lines (n, 2), mm: the sides from hem to neckline, hem and neckline from left to right."""

    hem: Array
    right: Array
    neckline: Array
    left: Array

    @cached_property
    def in_ring(self) -> Four:
        """The edges of :data:`IN_RING`, each in the direction of the ring."""
        return self.hem, self.right, self.neckline[::-1], self.left[::-1]

    @cached_property
    def ring(self) -> Array:
        """(n, 2) closed ring, anticlockwise, the first point not repeated."""
        return np.concatenate([edge[:-1] for edge in self.in_ring])

    def edge(self, name: EdgeName) -> Array:
        """One of the four."""
        line: Array = getattr(self, name)
        return line


def outline_of(panel: Panel, left: float = 0.0, right: float = 0.0) -> Outline:
    """The panel's stitch lines with each side set out by so much, mm, along the level.

    A side is moved, never bent, so that both sides of a seam keep their equal lengths; neckline and
    hem give way in between and keep their direction at both ends.
    """
    if left == 0 and right == 0:
        return Outline(panel.hem, panel.right, panel.neckline, panel.left)
    return Outline(
        widened(panel.hem, left, right),
        panel.right + np.array([right, 0.0]),
        widened(panel.neckline, left, right),
        panel.left - np.array([left, 0.0]),
    )


def widened(line: Array, left: float, right: float) -> Array:
    """A line (n, 2) across a panel whose ends are moved apart by so much, mm."""
    if left == 0 and right == 0:
        return line
    along = lengths_along(line)
    share = along / along[-1]
    moved = line.copy()
    moved[:, 0] += (left + right) * share * share * (3 - 2 * share) - left
    return moved


def distinct(line: Array) -> Array:
    """The line (n, 2) without points that lie where the one before them does; both ends stay."""
    apart = np.abs(np.diff(line, axis=0)).max(axis=1) > _SAME
    if apart.all():
        return line
    kept = np.concatenate(([True], apart))
    if not kept[-1]:
        kept[np.flatnonzero(kept)[-1]], kept[-1] = False, True
    kept[0] = True
    return line[kept]


def lengths_along(line: Array) -> Array:
    """(n,) length in mm from the first point to each point of a line (n, 2)."""
    steps = line[1:] - line[:-1]
    along = np.zeros(len(line))
    np.cumsum(np.hypot(steps[:, 0], steps[:, 1]), out=along[1:])
    return along

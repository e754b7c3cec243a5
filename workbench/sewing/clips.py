"""Where the allowance of a seam must be clipped so that it lies flat: along its inward curves.

An edge that curves into its piece has an allowance shorter than the stitching it must
spread to when it is pressed open.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from workbench.pieces import Piece, PieceEdge
from workbench.pieces.polyline import Array

TIGHT_RADIUS = 300.0
"""mm: an allowance of half an inch along a flatter curve stretches by itself; common practice, no source."""
LEAST_STRETCH = 12.7
"""mm of curve below which no clip is worth a mention (own choice)."""
_STEP = 5.0
"""mm between two looks along a curve; own choice."""


class Clip(NamedTuple):
    """A stretch of one edge, in mm along the stitch line from its lower end."""

    low: float
    high: float


def clips_of(piece: Piece, edge: PieceEdge) -> tuple[Clip, ...]:
    """The stretches of an edge to clip, bottom to top; none where it is bound or has no allowance."""
    if edge.allowance <= 0:
        return ()
    line = edge.stitch if edge.stitch[0, 1] <= edge.stitch[-1, 1] else edge.stitch[::-1]
    along, bend = _bends(line)
    inward = -bend if _is_right(piece, edge) else bend
    return tuple(_stretches(along, inward > 1.0 / TIGHT_RADIUS))


def _is_right(piece: Piece, edge: PieceEdge) -> bool:
    """Whether the edge is on the right of its piece, as it is drawn."""
    return edge.name == "right"


def _bends(line: Array) -> tuple[Array, Array]:
    """Places along an upward line in mm, and how it bends there in 1/mm, positive to the left."""
    steps = np.diff(line, axis=0)
    walked = np.concatenate(([0.0], np.cumsum(np.hypot(steps[:, 0], steps[:, 1]))))
    along = np.linspace(0.0, walked[-1], max(int(walked[-1] / _STEP), 2) + 1)
    even = np.column_stack([np.interp(along, walked, line[:, axis]) for axis in (0, 1)])
    ahead = np.unwrap(np.arctan2(*np.diff(even, axis=0).T[::-1]))
    turn = np.convolve(np.diff(ahead) / (along[1] - along[0]), np.full(3, 1 / 3), mode="same")
    return along[1:-1], turn


def _stretches(along: Array, tight: np.ndarray[tuple[int], np.dtype[np.bool_]]) -> list[Clip]:
    edges = np.flatnonzero(np.diff(np.concatenate(([False], tight, [False])).astype(int)))
    runs = [Clip(float(along[a]), float(along[b - 1])) for a, b in edges.reshape(-1, 2)]
    return [run for run in runs if run.high - run.low >= LEAST_STRETCH]

"""Pieces drawn as a half: opened out on single cloth, laid against the fold on folded cloth."""

from __future__ import annotations

import numpy as np

from workbench.cloth.plan import Array, LayError
from workbench.draft import Finding, Place
from workbench.pieces import Piece

_ON_LINE = 1e-3
"""mm from the fold line within which a point is taken to lie on it (own choice)."""


def fold_at(piece: Piece) -> float:
    """Where the fold edge lies across the piece, mm; it runs with the grain, the half to its right."""
    for edge in piece.edges:
        if edge.kind == "fold":
            return float(edge.stitch[0, 0])
    raise LayError(_no_fold(piece))


def half_of(piece: Piece) -> Array:
    """(n, 2) cut ring of the half; its fold edge must be its left side."""
    if abs(float(piece.cut[:, 0].min()) - fold_at(piece)) > _ON_LINE:
        raise LayError(_no_fold(piece))
    return piece.cut


def opened(piece: Piece) -> Array:
    """(n, 2) cut ring of the whole piece, anticlockwise: the half and its reflection about the fold."""
    ring, fold = half_of(piece), fold_at(piece)
    free = np.abs(ring[:, 0] - fold) > _ON_LINE
    starts = np.flatnonzero(free & ~np.roll(free, 1))
    if len(starts) != 1:
        raise LayError(_no_fold(piece))
    # From the foot of the fold round the free side to the head of the fold, and back mirrored.
    round_ = np.roll(ring, 1 - starts[0], axis=0)[: int(free.sum()) + 2]
    back = round_[-2:0:-1]
    return np.concatenate((round_, np.column_stack((2 * fold - back[:, 0], back[:, 1]))))


def _no_fold(piece: Piece) -> Finding:
    return Finding(
        "stop",
        "fold_edge_unclear",
        "{piece} is cut on the fold, but its cut edge does not run along the fold once from hem to neckline.",
        words={"piece": piece.name},
        place=Place(panel=piece.panel),
        remedy="Look at its allowances at the centre front.",
    )

"""Every single shape that has to be laid on one cloth.

Figures are own choice, what a plan is made of.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from math import hypot

import numpy as np
import shapely

from workbench.cloth.fold import half_of, opened
from workbench.cloth.plan import Array, Copy, LayError
from workbench.cloth.records import Cloth
from workbench.draft import Finding, Place
from workbench.pieces import Cutting, Piece

MOST_COPIES = 400
"""More than any bodice has; beyond it a plan would take too long to be of use."""
_ALIKE = 0.1
"""mm within which a piece and its mirror image are the same."""


def copies_of(cutting: Cutting, cloth: Cloth) -> tuple[Copy, ...]:
    """What has to be laid on a cloth for its layers, in the order of the pieces.

    On single cloth a piece on the fold is opened out, and half the copies of a mirrored piece
    are turned over. On folded cloth, which is cut through both layers, one copy gives a left
    and a right, and a piece on the fold is laid as a half against the fold.
    Raises LayError for a piece that cannot be laid, and for more than :data:`MOST_COPIES`.
    """
    pieces = [piece for piece in cutting.pieces if piece.layer in cloth.layers and piece.count > 0]
    wanted = sum(piece.count for piece in pieces)
    if wanted > MOST_COPIES:
        raise LayError(_too_many(cloth, wanted))
    for piece in pieces:
        _must_be_simple(piece)
    make = _folded if cloth.laid == "folded" else _single
    return _sharing(copy for piece in pieces for copy in make(piece))


def _sharing(copies: Iterable[Copy]) -> tuple[Copy, ...]:
    """The copies, those of one shape with one outline between them: it is turned and cut up once."""
    outlines: dict[bytes, Array] = {}
    return tuple(
        replace(copy, outline=outlines.setdefault(copy.outline.tobytes(), copy.outline)) for copy in copies
    )


def _single(piece: Piece) -> Iterator[Copy]:
    whole = replace(_first(piece), outline=opened(piece), opened=True) if piece.on_fold else _first(piece)
    for number in range(1, piece.count + 1):
        # Of an odd count, the one over is a piece as it is drawn.
        over = piece.mirrored and not piece.on_fold and number > (piece.count + 1) // 2
        yield replace(whole, number=number, mirrored=over)


def _folded(piece: Piece) -> Iterator[Copy]:
    if piece.on_fold:
        half = replace(_first(piece), outline=half_of(piece), on_fold=True, either_side=True)
        yield from (replace(half, number=number) for number in range(1, piece.count + 1))
        return
    paired = piece.mirrored or _same_turned_over(piece.cut)
    times = (piece.count + 1) // 2 if paired else piece.count
    for number in range(1, times + 1):
        gives = min(2, piece.count - 2 * (number - 1)) if paired else 1
        yield replace(_first(piece), number=number, either_side=paired, gives=gives)


def _first(piece: Piece) -> Copy:
    return Copy(piece.key, 1, piece.name, piece.layer, piece.panel, False, piece.cut, _along(piece))


def _along(piece: Piece) -> tuple[float, float]:
    """The direction of the grain; a piece without one is taken as drawn upright."""
    (x, y), (head_x, head_y) = piece.grain
    long = hypot(head_x - x, head_y - y)
    return ((head_x - x) / long, (head_y - y) / long) if long > 0 else (0.0, 1.0)


def _same_turned_over(ring: Array) -> bool:
    """Whether a piece turned over left to right is the same shape."""
    middle = 0.5 * (ring[:, 0].min() + ring[:, 0].max())
    over = np.column_stack((2 * middle - ring[:, 0], ring[:, 1]))
    return bool(shapely.hausdorff_distance(shapely.linearrings(ring), shapely.linearrings(over)) < _ALIKE)


def _must_be_simple(piece: Piece) -> None:
    ring = piece.cut
    if not np.isfinite(ring).all() or len(ring) < 3 or not shapely.polygons(ring).is_valid:
        raise LayError(
            Finding(
                "stop",
                "piece_crosses_itself",
                "The cut line of {piece} crosses itself or has no area, so it cannot be laid.",
                words={"piece": piece.name},
                place=Place(panel=piece.panel),
                remedy="Look at its allowances and seams first.",
            )
        )


def _too_many(cloth: Cloth, wanted: int) -> Finding:
    return Finding(
        "stop",
        "too_many_pieces",
        "{cloth} would have {wanted} pieces; a plan holds {most} at most.",
        words={"cloth": cloth.name, "wanted": f"{wanted:,}", "most": str(MOST_COPIES)},
        remedy="Look at the counts of its layers.",
    )

"""Clips belong where an edge curves into its piece, and nowhere else: arcs of known radius."""

from __future__ import annotations

from math import pi

import numpy as np
import pytest

from workbench.pieces import EdgeName, Piece, PieceEdge
from workbench.sewing.clips import clips_of


def arc(radius: float, *, bulges_right: bool, degrees: float = 60.0) -> PieceEdge:
    """An edge that runs upwards along an arc, in mm; its left or right is for the caller to say."""
    half = degrees * pi / 360
    turn = np.linspace(-half, half, 129)
    x = radius * np.cos(turn) * (1 if bulges_right else -1)
    return PieceEdge("left", "seam", np.column_stack((x, radius * np.sin(turn))), 12.7, 1)


def clips(name: EdgeName, edge: PieceEdge) -> list[tuple[float, float]]:
    own = PieceEdge(name, edge.kind, edge.stitch, edge.allowance, edge.seam)
    empty = np.zeros((0, 2))
    piece = Piece(
        "fashion/Front 1",
        "Front 1",
        "fashion",
        2,
        True,
        False,
        0,
        empty,
        empty,
        (own,),
        (),
        ((0, 0), (0, 1)),
        (),
    )
    return [(clip.low, clip.high) for clip in clips_of(piece, own)]


@pytest.mark.parametrize(("name", "into_the_piece"), [("left", True), ("right", False)])
def test_an_edge_that_curves_into_its_piece_is_clipped_and_its_partner_is_not(
    name: EdgeName, into_the_piece: bool
) -> None:
    # the left edge of a piece curves into it where it bulges to the right
    edge = arc(120.0, bulges_right=into_the_piece)
    assert len(clips(name, edge)) == 1
    assert clips(name, arc(120.0, bulges_right=not into_the_piece)) == []


def test_the_stretch_is_nearly_the_whole_arc() -> None:
    (low, high), *_ = clips("left", arc(120.0, bulges_right=True))
    assert low < 12.0
    assert high > 120.0 * pi / 3 - 12.0


def test_a_gentle_curve_and_a_bound_edge_need_none() -> None:
    assert clips("left", arc(900.0, bulges_right=True, degrees=12)) == []
    bound = arc(120.0, bulges_right=True)
    assert clips("left", PieceEdge("left", "seam", bound.stitch, 0.0, 1)) == []


def test_the_stretch_is_the_same_whichever_way_the_edge_is_drawn() -> None:
    edge = arc(120.0, bulges_right=True)
    turned = PieceEdge("left", "seam", edge.stitch[::-1], edge.allowance, 1)
    assert clips("left", turned)[0] == pytest.approx(clips("left", edge)[0])

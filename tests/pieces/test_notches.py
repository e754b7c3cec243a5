"""Notches: the same walk on both sides of a seam, one in front and two in back.

Common practice, no source. Curvature is worked here from the draft's own points.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, assume, given, settings

from tests.draft.strategies import bodies, designs
from tests.pieces.figures import drafted, outcome
from workbench.body import Body
from workbench.draft import Design, Outcome, work_out
from workbench.pieces.crossing import ray_reach
from workbench.pieces.making import Allowances, Making, Marks
from workbench.pieces.notches import APART, CURVE_RADIUS
from workbench.pieces.result import Notch, Piece
from workbench.pieces.work import layer_of

many = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def pieces(made: Outcome, making: Making | None = None) -> tuple[Piece, ...]:
    return layer_of(made, making or Making(), "fashion").pieces


def on(piece: Piece, edge: str) -> list[Notch]:
    return [notch for notch in piece.notches if notch.edge == edge]


def check_pairs(made: Outcome, found: tuple[Piece, ...]) -> None:
    front = made.design.front.panel_count
    for before, after in pairwise(found):
        one, other = on(before, "right"), on(after, "left")
        assert [(n.walk, n.why, n.level, n.count, n.seam) for n in one] == [
            (n.walk, n.why, n.level, n.count, n.seam) for n in other
        ]
        assert {n.count for n in one} <= {1 if after.panel is not None and after.panel <= front else 2}


def check_places(made: Outcome, piece: Piece) -> None:
    """On the cut line, straight out from the stitch line, pointing into the piece, at the walk it says."""
    ring = shapely.LinearRing(piece.cut)
    edges = {edge.name: edge for edge in piece.edges}
    for notch in piece.notches:
        edge = edges[notch.edge]
        at, towards = np.array(notch.at), np.array(notch.towards)
        assert ring.distance(shapely.Point(at)) < 0.1
        assert np.hypot(*towards) == pytest.approx(1)
        walk = shapely.LineString([at - 0.01 * towards, at + (1.2 * edge.allowance + 0.01) * towards])
        stitched = shapely.LineString(edge.stitch)
        foot = shapely.intersection(walk, stitched)
        assert not foot.is_empty
        along = stitched.project(foot.centroid if foot.geom_type != "Point" else foot)
        up = along if notch.edge == "right" else stitched.length - along
        low = drafted(made).hem.seam_walks[notch.seam]
        assert low + up == pytest.approx(notch.walk, abs=0.1)


def test_every_level_that_crosses_a_seam_is_notched() -> None:
    made = outcome()
    draft = drafted(made)
    for piece in pieces(made, Making(marks=Marks(at_curves=False))):
        assert piece.panel is not None
        for edge, seam in (("left", piece.panel), ("right", piece.panel + 1)):
            crossing = {
                level.name
                for level in made.levels
                if draft.hem.seam_walks[seam] + 2 < level.walk < draft.neckline.seam_walks[seam] - 2
            }
            assert {n.level for n in on(piece, edge)} == (set() if seam == 0 else crossing)


def test_one_in_front_and_at_the_side_two_in_back() -> None:
    counts = {n.seam: n.count for piece in pieces(outcome()) for n in piece.notches}
    assert counts == {1: 1, 2: 1, 3: 1, 4: 2, 5: 2, 6: 2}


def test_both_kinds_can_be_left_out() -> None:
    none = pieces(outcome(), Making(marks=Marks(at_levels=False, at_curves=False)))
    assert not any(piece.notches for piece in none)
    curves = pieces(outcome(), Making(marks=Marks(at_levels=False)))
    assert {n.why for piece in curves for n in piece.notches} == {"curve"}


def test_a_curve_s_end_is_where_the_bend_passes_the_radius() -> None:
    """Mean of both sides, by finite differences over 8 mm on either hand of the notch."""
    made = outcome()
    draft = drafted(made)
    checked = 0
    for piece in pieces(made):
        for notch in (n for n in on(piece, "right") if n.why == "curve" and n.seam < made.design.panel_count):
            bends = []
            for shift in (-5.0, 5.0):
                walks = notch.walk + shift + np.array([-4.0, 0.0, 4.0])
                sides = [
                    draft.surface.points(np.full(3, panel), np.full(3, v), walks)
                    for panel, v in ((notch.seam - 1, 1.0), (notch.seam, 0.0))
                ]
                headings = [np.arctan2(*np.diff(side, axis=0).T) for side in sides]
                bends.append(float(np.mean([abs(h[1] - h[0]) / 4.0 for h in headings])))
            assert min(bends) < 1.02 / CURVE_RADIUS
            assert max(bends) > 0.98 / CURVE_RADIUS
            checked += 1
    assert checked >= 2


def test_a_curve_s_end_keeps_clear_of_a_level_and_of_the_ends() -> None:
    made = outcome()
    draft = drafted(made)
    for piece in pieces(made):
        for notch in (n for n in piece.notches if n.why == "curve"):
            others = [n.walk for n in on(piece, notch.edge) if n is not notch]
            ends = [draft.hem.seam_walks[notch.seam], draft.neckline.seam_walks[notch.seam]]
            assert min(abs(notch.walk - other) for other in others + ends) >= APART


def test_the_middle_is_notched_where_a_fold_has_allowance() -> None:
    assert not [n for n in pieces(outcome())[0].notches if n.why == "centre"]
    making = Making(allowances=Allowances(neckline=10.0, hem=12.0))
    found = [n for n in pieces(outcome(), making)[0].notches if n.why == "centre"]
    assert [n.edge for n in found] == ["hem", "neckline"]
    assert all(n.at[0] == pytest.approx(0.0, abs=1e-9) for n in found)
    opened = pieces(outcome(), replace(making, front="busk"))[0]
    assert not [n for n in opened.notches if n.why == "centre"]
    assert {n.level for n in on(opened, "left")} >= {"waist", "underbust"}


@many
@given(bodies(), designs())
def test_notches_pair_and_lie_on_the_cut_line(body: Body, design: Design) -> None:
    made = work_out(body, design)
    assume(made.draft is not None)
    found = pieces(made, Making(allowances=Allowances(neckline=9.525, hem=9.525)))
    check_pairs(made, found)
    if drafted(made).surface.edges.steepest.max() <= 0.5:
        for piece in found:
            if min(drafted(made).panels[piece.panel or 0].widths.values()) > 40:
                check_places(
                    made, replace(piece, notches=tuple(n for n in piece.notches if n.why != "centre"))
                )


def test_a_ray_meets_a_ring_where_it_does_however_near_a_corner_of_it_lies() -> None:
    """A square of 10 mm whose left side leans by less than can be divided by; the rays leave the middle."""
    square = np.array([(2e-313, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)])
    for out in ((1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)):
        assert ray_reach(square, np.array([5.0, 5.0]), np.array(out)) == pytest.approx(5.0)

"""Facings: panels laid edge to edge by rigid motions, joined while they fit, at one depth."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, assume, given, settings

from tests.draft.strategies import bodies, designs
from tests.pieces.figures import drafted, outcome, outcome_of
from workbench.body import Body
from workbench.draft import Design, Outcome, Reductions, usual_design, work_out
from workbench.pieces.bands import WIDEST_GAP, Part, joined_parts
from workbench.pieces.making import LAYERS, Allowances, EdgeName, LayerChoice, LayerName, Making
from workbench.pieces.polyline import Array
from workbench.pieces.result import Piece
from workbench.pieces.work import cutting_of, layer_of

ALL = Making(
    layers=tuple(LayerChoice(name, True, net=name == "interfacing") for name in LAYERS),
    allowances=Allowances(neckline=12.7, hem=12.7),
)


def facing(name: LayerName, made: Outcome | None = None, making: Making = ALL) -> tuple[Piece, ...]:
    return layer_of(made or outcome(), making, name).pieces


def edge(piece: Piece, name: EdgeName) -> Array:
    return next(e.stitch for e in piece.edges if e.name == name)


def span(piece: Piece) -> range:
    """The panels a facing is laid over."""
    seams = {e.name: e.seam for e in piece.edges}
    assert seams["left"] is not None
    assert seams["right"] is not None
    return range(seams["left"], seams["right"])


def straight() -> Outcome:
    """A tube: every girth the same, nothing taken in, so that every seam is straight."""
    girth = 800.0
    design = replace(usual_design("under_bust"), reductions=Reductions(), rule="own_figure")
    return outcome_of(design, top_hip=girth, waist=girth, underbust=girth, bust=girth)


def bent(panel: int, radius: float, height: float = 60.0) -> Part:
    """A panel whose sides are arcs that bend away from it towards the far edge."""
    along = np.linspace(0, height, 200) / radius
    dx, dy = radius * (1 - np.cos(along)), -radius * np.sin(along)
    return Part(
        panel,
        np.array([[0.0, 0.0], [80.0, 0.0]]),
        np.stack((-dx, dy), axis=1),
        np.stack((80 + dx, dy), axis=1),
    )


@pytest.mark.parametrize(("radius", "pieces"), [(1e9, 1), (700.0, 1), (450.0, 2), (300.0, 2)])
def test_panels_join_while_the_far_edge_fits(radius: float, pieces: int) -> None:
    """Each side runs off by 1 - cos(depth / radius) of its radius: at 50 mm the two overlap by twice that."""
    overlap = 2 * radius * (1 - np.cos(50.0 / radius))
    assert (overlap <= WIDEST_GAP) == (pieces == 1)
    assert len(joined_parts([bent(0, radius), bent(1, radius)], 50.0)) == pieces


def test_panels_that_are_not_neighbours_are_not_joined() -> None:
    assert len(joined_parts([bent(0, 1e9), bent(2, 1e9)], 50.0)) == 2


def test_a_tube_has_its_facing_in_one_piece() -> None:
    made = straight()
    for name in ("top_facing", "hem_facing"):
        (piece,) = facing(name, made)
        assert (piece.count, piece.on_fold) == (1, True)
        assert list(span(piece)) == list(range(6))
        marks = [n.seam for n in piece.notches if n.why == "seam"]
        assert marks == [1, 2, 3, 4, 5]


def test_joining_moves_panels_and_never_bends_them() -> None:
    """Straight distances between points of a panel's neckline are the same in its facing."""
    made = straight()
    draft = drafted(made)
    outer = edge(facing("top_facing", made)[0], "neckline")[::-1]
    place = 0
    for panel in draft.panels:
        own = outer[place : place + len(panel.neckline)]
        for one, other in ((0, -1), (5, 20), (0, 14)):
            assert np.hypot(*(own[one] - own[other])) == pytest.approx(
                np.hypot(*(panel.neckline[one] - panel.neckline[other])), abs=1e-9
            )
        place += len(panel.neckline) - 1


@pytest.mark.parametrize("depth", [25.4, 38.1, 50.8])
def test_the_far_edge_is_at_its_depth(depth: float) -> None:
    for name, outer, inner in (("top_facing", "neckline", "hem"), ("hem_facing", "hem", "neckline")):
        for piece in facing(name, making=replace(ALL, facing_depth_mm=depth)):  # type: ignore[arg-type]
            away = shapely.distance(
                shapely.points(edge(piece, inner)[2:-2]),  # type: ignore[arg-type]
                shapely.LineString(edge(piece, outer)),  # type: ignore[arg-type]
            )
            assert away.min() >= depth - 0.5
            assert np.median(away) == pytest.approx(depth, abs=0.01)


def test_a_facing_is_as_long_as_the_edges_it_finishes_and_meets_its_neighbours() -> None:
    panels = drafted(outcome()).panels
    for name, line in (("top_facing", "neckline"), ("hem_facing", "hem")):
        found = facing(name)  # type: ignore[arg-type]
        assert [panel for piece in found for panel in span(piece)] == list(range(6))
        for piece in found:
            wanted = sum(shapely.LineString(getattr(panels[panel], line)).length for panel in span(piece))
            assert shapely.LineString(edge(piece, line)).length == pytest.approx(wanted, abs=1e-6)  # type: ignore[arg-type]
        for before, after in pairwise(found):
            one, other = shapely.LineString(edge(before, "right")), shapely.LineString(edge(after, "left"))
            assert one.length == pytest.approx(other.length, abs=0.01)


def test_the_front_is_cut_on_the_fold_the_rest_left_and_right() -> None:
    found = facing("top_facing")
    assert [piece.on_fold for piece in found] == [True] + [False] * (len(found) - 1)
    assert all(piece.mirrored and piece.count == 2 for piece in found[1:])
    opened = facing("top_facing", making=replace(ALL, front="busk"))
    assert not any(piece.on_fold for piece in opened)


def test_panels_left_out_have_no_facing() -> None:
    layers = tuple(replace(c, left_out=(2, 3)) if c.layer == "top_facing" else c for c in ALL.layers)
    found = facing("top_facing", making=replace(ALL, layers=layers))
    assert {panel for piece in found for panel in span(piece)} == {0, 1, 4, 5}


@pytest.mark.parametrize(
    ("depth", "code"), [(900.0, "facing_too_deep"), (0.0, "facing_no_depth"), (-5.0, "facing_no_depth")]
)
def test_a_facing_that_does_not_fit_is_left_out_and_said(depth: float, code: str) -> None:
    found = cutting_of(outcome(), replace(ALL, facing_depth_mm=depth))
    assert "top_facing" not in {layer.name for layer in found.layers}
    assert code in {finding.code for finding in found.findings}
    assert "fashion" in {layer.name for layer in found.layers}


@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(bodies(), designs())
def test_a_facing_is_whole_or_left_out(body: Body, design: Design) -> None:
    made = work_out(body, design)
    assume(made.draft is not None)
    for name in ("top_facing", "hem_facing"):
        for piece in facing(name, made, replace(ALL, facing_depth_mm=38.1)):
            assert shapely.Polygon(piece.stitch).is_valid
            assert shapely.LinearRing(piece.stitch).is_ccw
            assert shapely.Polygon(piece.stitch).covers(shapely.LineString(piece.grain))

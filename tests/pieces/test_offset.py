"""Cut lines: at the allowance of their own edge, one ring, no loops, no spikes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.draft.strategies import bodies, designs
from tests.pieces.figures import drafted, outcome
from workbench.body import Body
from workbench.draft import Design, work_out
from workbench.pieces.crossing import first_crossing, without_loops
from workbench.pieces.cutline import CutShape, Widths, cut_shapes
from workbench.pieces.offset import set_out
from workbench.pieces.outline import Outline, outline_of
from workbench.pieces.polyline import Array
from workbench.pieces.verify import look_over, missed_edges

LIMIT = 1.6
many = settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
widths = st.sampled_from([0.0, 6.35, 9.525, 12.7, 15.875, 25.4])


def line(*points: tuple[float, float]) -> Array:
    return np.array(points, dtype=float)


def rectangle(width: float = 100.0, height: float = 200.0) -> Outline:
    return Outline(
        line((0, 0), (width, 0)),
        line((width, 0), (width, height)),
        line((0, height), (width, height)),
        line((0, 0), (0, height)),
    )


def arc(radius: float, degrees: float, count: int = 121) -> Array:
    """A hollow when it is set out to its right: it runs clockwise about the origin."""
    turn = np.radians(np.linspace(90 + degrees / 2, 90 - degrees / 2, count))
    return radius * np.stack((np.cos(turn), np.sin(turn)), axis=1)


def test_a_rectangle_grows_by_its_four_allowances() -> None:
    shape = cut_shapes([rectangle()], [(10.0, 20.0, 30.0, 40.0)], LIMIT)[0]
    # hem 10, right 20, neckline 30, left 40
    assert shapely.Polygon(shape.ring).equals(shapely.box(-40, -10, 120, 230))


def test_a_smooth_line_is_where_a_reference_library_puts_it() -> None:
    x = np.linspace(0, 300, 400)
    wave = np.stack((x, 20 * np.sin(x / 50)), axis=1)
    ours = shapely.LineString(set_out([wave], [12.7], LIMIT)[0].points)
    theirs = shapely.LineString(wave).offset_curve(-12.7, quad_segs=64)
    assert ours.hausdorff_distance(theirs) < 0.01


@pytest.mark.parametrize("width", [12.0, 19.9, 25.0])
def test_a_hollow_tighter_than_its_allowance_is_cut_off_without_a_loop(width: float) -> None:
    """Two straight arms with a round of 10 mm between them: the arms' cut lines meet on the middle line."""
    bend = arc(10.0, 120.0)
    arm = 80 * np.array([[np.cos(np.radians(60)), np.sin(np.radians(60))]])
    hollow = np.concatenate((bend[:1] - arm, bend, bend[-1:] + arm * [[1, -1]]))
    cut = set_out([hollow], [width], LIMIT)[0]
    drawn = shapely.LineString(cut.points)
    assert cut.hollow
    assert drawn.is_simple
    away = shapely.distance(shapely.points(cut.points), shapely.LineString(hollow))
    assert away == pytest.approx(width, abs=0.01)


def test_an_inward_corner_is_trimmed_to_where_its_arms_meet() -> None:
    """A right angle, open to the right of the line: the allowances cross on the bisector."""
    dip = np.concatenate((np.linspace((-50, 50), (0, 0), 40), np.linspace((0, 0), (50, 50), 40)[1:]))[::-1]
    cut = set_out([dip], [10.0], LIMIT)[0]
    lowest = cut.points[cut.points[:, 1].argmin()]
    assert lowest == pytest.approx([0, 10 * np.sqrt(2)], abs=1e-6)
    assert shapely.LineString(cut.points).is_simple


def test_an_outward_corner_is_cut_blunt_at_the_limit() -> None:
    peak = line((0, 0), (10, 40), (20, 0))[::-1]
    cut = set_out([peak], [5.0], LIMIT)[0]
    assert cut.mended
    assert not cut.hollow
    assert cut.points[:, 1].max() == pytest.approx(40 + LIMIT * 5.0)
    mild = set_out([line((0, 0), (50, 20), (100, 0))[::-1]], [5.0], LIMIT)[0]
    assert not mild.mended
    assert len(mild.points) == 3


def test_a_line_that_runs_round_is_cut_short() -> None:
    looped = line((0, 0), (4, 0), (4, 2), (2, -1), (6, -1))
    assert without_loops(looped) == pytest.approx(line((0, 0), (8 / 3, 0), (2, -1), (6, -1)))
    crossing = first_crossing(line((0, 0), (10, 0)), line((4, -5), (4, 5)))
    assert crossing is not None
    assert (crossing.point.tolist(), crossing.first, crossing.second) == ([4, 0], 0.4, 0.5)
    assert first_crossing(line((0, 0), (1, 0)), line((4, -5), (4, 5))) is None


def check_shape(shape: CutShape, outline: Outline, four: Widths) -> None:
    """By shapely alone, and by what was drawn."""
    cut, stitched = shapely.Polygon(shape.ring), shapely.Polygon(outline.ring)
    assert shapely.LinearRing(shape.ring).is_simple
    assert shapely.LinearRing(shape.ring).is_ccw
    assert cut.area >= stitched.area - 1e-6
    assert stitched.difference(cut).area < 1e-3
    for place, (edge, width) in enumerate(zip(outline.in_ring, four, strict=True)):
        away = shapely.distance(
            shapely.points(shape.ring[slice(*shape.spans[place])]), shapely.LineString(edge)
        )
        if width > 0 and away.size and not (shape.cornered[place] or shape.hollow[place]):
            assert away == pytest.approx(width, abs=0.1)
        elif width > 0 and away.size:
            assert away.min() >= width - 0.1
    # no spike: nothing lies further out than the limit allows; a peak that is cut level is a little wider
    out = shapely.distance(shapely.points(shape.ring), stitched)
    assert out.max() <= 1.1 * LIMIT * np.hypot(max(four[0], four[2]), max(four[1], four[3])) + 1e-6


@many
@given(bodies(), designs(), widths, widths, widths, widths)
def test_every_cut_line_is_one_ring_at_its_allowances(
    body: Body, design: Design, hem: float, right: float, neckline: float, left: float
) -> None:
    made = work_out(body, design)
    assume(made.draft is not None)
    panels = drafted(made).panels
    outlines = [outline_of(panel) for panel in panels]
    four = hem, right, neckline, left
    shapes = cut_shapes(outlines, [four] * len(panels), LIMIT)
    _, findings = look_over(shapes, [panel.name for panel in panels])
    faulty = {finding.words["piece"] for finding in findings if finding.severity == "attend"}
    for panel, shape, outline in zip(panels, shapes, outlines, strict=True):
        # where allowances are wider than the piece has room for, it says so instead
        if panel.name in faulty:
            assert max(four) > 0.3 * min(panel.widths.values()) or shape.hollow[2]
        else:
            check_shape(shape, outline, four)


def mirrored(outline: Outline) -> Outline:
    def turned(edge: Array) -> Array:
        return edge * [-1, 1]

    return Outline(
        turned(outline.hem)[::-1], turned(outline.left), turned(outline.neckline)[::-1], turned(outline.right)
    )


@settings(many, max_examples=25)
@given(bodies(), designs(), widths, widths, widths, widths)
def test_a_piece_turned_over_has_its_cut_line_turned_over(
    body: Body, design: Design, hem: float, right: float, neckline: float, left: float
) -> None:
    made = work_out(body, design)
    assume(made.draft is not None)
    outlines = [outline_of(panel) for panel in drafted(made).panels]
    one = cut_shapes(outlines, [(hem, right, neckline, left)] * len(outlines), LIMIT)
    other = cut_shapes([mirrored(o) for o in outlines], [(hem, left, neckline, right)] * len(outlines), LIMIT)
    for here, over in zip(one, other, strict=True):
        turned = shapely.LinearRing(over.ring * [-1, 1])
        # corners are found from either side, and meet to a few thousandths of a millimetre
        assert shapely.LinearRing(here.ring).hausdorff_distance(turned) < 5e-3


def test_a_cut_line_that_is_wrong_is_found() -> None:
    panel = drafted(outcome()).panels[1]
    shape = cut_shapes([outline_of(panel)], [(0.0, 12.7, 0.0, 12.7)], LIMIT)[0]
    assert not list(missed_edges(shape))
    first, end = shape.spans[1]
    ring = shape.ring.copy()
    ring[first + 40 : end - 40, 0] += 0.5
    assert list(missed_edges(replace(shape, ring=ring))) == ["right"]
    twisted = shape.ring.copy()
    twisted[[first + 10, first + 60]] = twisted[[first + 60, first + 10]]
    mended, findings = look_over([replace(shape, ring=twisted)], [panel.name], [panel.index])
    assert [finding.code for finding in findings] == ["cut_line_crosses"]
    assert findings[0].place.panel == panel.index
    assert panel.name in findings[0].text("in")
    assert shapely.LinearRing(mended[0].ring).is_simple
    inside = replace(
        shape, ring=shapely.get_coordinates(shapely.Polygon(panel.outline).buffer(-1).exterior)[:-1]
    )
    assert [finding.code for finding in look_over([inside], ["x"])[1]] == ["cut_line_crosses"]

"""Many lines measured at once: the same as each by itself, and as a reference library says."""

from __future__ import annotations

from dataclasses import replace
from math import inf

import numpy as np
import pytest
import shapely

from tests.pieces.figures import drafted, outcome
from workbench.pieces.crossing import first_crossings
from workbench.pieces.making import Making
from workbench.pieces.measured import measured_of
from workbench.pieces.polyline import Array, Lines, lengths_of, tightest_radius
from workbench.pieces.work import layer_of

CHANCE = np.random.default_rng(5)


def walks(count: int) -> list[Array]:
    """Lines of different lengths that wander about and cross each other."""
    return [np.cumsum(CHANCE.normal(0, 10, (CHANCE.integers(3, 40), 2)), axis=0) for _ in range(count)]


def test_lengths_are_those_of_a_reference_library() -> None:
    lines = walks(20)
    assert lengths_of(lines) == pytest.approx([shapely.LineString(line).length for line in lines])
    assert lengths_of([]) == []


def test_a_place_along_a_line_is_on_its_own_line() -> None:
    lines = walks(6)
    measured = Lines(lines)
    owner = np.repeat(np.arange(6), 5)
    up = np.tile([0.0, 0.2, 0.5, 0.9, 1.0], 6) * measured.totals[owner]
    bits = measured.bits(owner, up)
    part = (measured.starts[owner] + up - measured.along[bits]) / measured.lengths[bits]
    found = measured.points[bits] + part[:, None] * measured.steps[bits]
    wanted = [shapely.LineString(lines[own]).interpolate(at) for own, at in zip(owner, up, strict=True)]
    assert found == pytest.approx(np.array([[point.x, point.y] for point in wanted]))


def test_curves_are_told_line_by_line() -> None:
    sides = [side for panel in drafted(outcome()).panels for side in (panel.left, panel.right)]
    straight = np.array([[0.0, 0.0], [0.0, 50.0], [0.0, 300.0]])
    found = Lines([*sides, straight]).turned()
    assert found == pytest.approx([*map(tightest_radius, sides), inf])


def test_the_first_crossing_of_each_pair_is_the_nearest_of_a_reference_library() -> None:
    ones, others = walks(60), walks(60)
    found = first_crossings(list(zip(ones, others, strict=True)))
    assert 5 < found.count(None) < 55
    for one, other, crossing in zip(ones, others, found, strict=True):
        line = shapely.LineString(one)
        met = line.intersection(shapely.LineString(other))
        assert (crossing is None) == met.is_empty
        if crossing is not None:
            bit = int(crossing.first)
            assert shapely.Point(crossing.point).distance(met) < 1e-9
            before = shapely.LineString(np.concatenate((one[: bit + 1], crossing.point[None])))
            assert before.intersection(shapely.LineString(other)).length == 0
            alone = before.intersection(shapely.LineString(other)).difference(
                shapely.Point(crossing.point).buffer(1e-6)
            )
            assert alone.is_empty


def test_a_notch_that_points_past_its_edge_is_at_the_end() -> None:
    """And one that points at it, where it meets it: the stitch line of a straight side, walked by hand."""
    layer = layer_of(outcome(), Making(), "fashion")
    piece = layer.pieces[1]
    side = next(edge for edge in piece.edges if edge.name == "right")
    own = next(notch for notch in piece.notches if notch.edge == "right")
    past = replace(own, at=(own.at[0], own.at[1] + 1e4), towards=(-1.0, 0.0))
    (at, over), length = (
        measured_of([layer]).notched([(side, [own, past])])[0],
        shapely.length(shapely.LineString(side.stitch)),
    )
    foot = shapely.LineString(side.stitch).project(shapely.Point(own.at))
    assert at == pytest.approx(foot, abs=0.05)
    assert over == pytest.approx(length)

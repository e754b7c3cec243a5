"""Edits of neckline and hem: order is kept, ends stay, the first touch takes the line on show."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.document import example
from workbench.document import (
    MOST_POINTS,
    Project,
    add_point,
    move_point,
    picture_of,
    place_of,
    remove_point,
    style_line_again,
    toggle_smooth,
)
from workbench.draft import LineName, ShapePoint

LINE = (ShapePoint(0, -70), ShapePoint(2, -50), ShapePoint(2.5, -40, smooth=False), ShapePoint(6, -80))


def hem(project: Project) -> tuple[ShapePoint, ...]:
    assert project.design.hem is not None
    return project.design.hem


def test_first_touch_makes_the_line_on_show_her_own() -> None:
    project = example()
    draft = picture_of(project).outcome
    assert draft is not None
    assert draft.draft is not None
    shown = draft.draft.hem.points
    moved = move_point(project, "hem", 1, shown[1].u, shown[1].t - 5, shown)
    assert hem(moved)[1].t == shown[1].t - 5
    assert [p for i, p in enumerate(hem(moved)) if i != 1] == [p for i, p in enumerate(shown) if i != 1]
    assert moved.design.neckline is None
    assert style_line_again(moved, "hem") == project


def test_an_end_keeps_to_its_centre_line_and_keeps_its_kind() -> None:
    project = move_point(example(), "hem", 0, 1.5, -66, LINE)
    assert hem(project)[0] == ShapePoint(0, -66)
    assert hem(move_point(project, "hem", 3, 1.5, -66, LINE))[3] == ShapePoint(6, -66)
    assert not hem(move_point(project, "hem", 2, 2.6, -66, LINE))[2].smooth


@given(st.integers(0, 3), st.floats(-10, 10), st.floats(-500, 500))
def test_points_stay_in_order_wherever_one_is_dragged(number: int, u: float, t: float) -> None:
    points = hem(move_point(example(), "hem", number, u, t, LINE))
    assert points[number].t == t
    assert (points[0].u, points[-1].u) == (0, 6)
    assert all(b.u - a.u >= 0.02 - 1e-12 for a, b in pairwise(points))


@given(st.floats(-1, 7))
def test_an_added_point_goes_where_it_was_asked_for(u: float) -> None:
    project = add_point(example(), "hem", u, -55, LINE)
    place = place_of(u, LINE)
    assert len(hem(project)) == 5
    assert hem(project)[place].t == -55
    assert hem(project)[place].u == pytest.approx(min(max(u, 0), 6), abs=0.0200001)
    assert remove_point(project, "hem", place, hem(project)).design.hem == LINE


def test_no_room_for_a_point_and_too_many() -> None:
    tight = (ShapePoint(0, 1), ShapePoint(0.03, 1), ShapePoint(6, 1))
    with pytest.raises(ValueError, match="no room"):
        add_point(example(), "hem", 0.01, 1, tight)
    many = tuple(ShapePoint(6 * i / (MOST_POINTS - 1), 1) for i in range(MOST_POINTS))
    with pytest.raises(ValueError, match="remove one first"):
        add_point(example(), "hem", 3.01, 1, many)


def test_a_point_wedged_between_its_neighbours_moves_up_and_down_only() -> None:
    wedged = (ShapePoint(0, 1), ShapePoint(0.015, 1), ShapePoint(0.03, 1), ShapePoint(6, 1))
    assert hem(move_point(example(), "hem", 1, 4.0, 9.0, wedged))[1] == ShapePoint(0.015, 9.0)


def test_ends_cannot_be_removed_and_unknown_points_are_refused() -> None:
    for number in (0, 3):
        with pytest.raises(ValueError, match="needs a point at each centre line"):
            remove_point(example(), "hem", number, LINE)
    for number in (-1, 4):
        with pytest.raises(ValueError, match="has no point number"):
            move_point(example(), "hem", number, 1, 1, LINE)


def test_smooth_and_corner() -> None:
    project = toggle_smooth(example(), "hem", 1, LINE)
    assert not hem(project)[1].smooth
    assert toggle_smooth(project, "hem", 1, hem(project)).design.hem == LINE


@pytest.mark.parametrize("line", ["neckline", "hem"])
def test_figures_that_are_none_are_refused(line: LineName) -> None:
    for u, t in ((float("nan"), 1.0), (1.0, float("nan")), (1.0, float("inf"))):
        with pytest.raises(ValueError, match="no usable number"):
            move_point(example(), line, 1, u, t, LINE)
        with pytest.raises(ValueError, match="no usable number"):
            add_point(example(), line, u, t, LINE)

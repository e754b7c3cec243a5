"""Edits of seams: each seam by its number from the centre front, the side seam by its quarter."""

from __future__ import annotations

import pytest

from tests.document import example
from workbench.document import (
    Project,
    picture_of,
    set_left_part,
    set_level_weight,
    set_pin,
    set_seam_place,
    set_through_bust_point,
    set_weight,
    share_evenly,
)
from workbench.draft import QuarterName, Taking


def taking(project: Project, quarter: QuarterName, seam: int) -> Taking:
    outcome = picture_of(project).outcome
    assert outcome is not None
    return next(each for each in outcome.line(quarter, "waist").takings if each.seam == seam)


@pytest.mark.parametrize(
    ("quarter", "seam"), [("front", 1), ("front", 3), ("back", 3), ("back", 4), ("back", 5)]
)
def test_pin_reaches_the_seam_it_names(quarter: QuarterName, seam: int) -> None:
    """Six panels: front seams 1 and 2, side seam 3, back seams 4 and 5."""
    pinned = set_pin(example(), quarter, seam, "waist", 11.0)
    found = taking(pinned, quarter, seam)
    assert (found.total, found.pinned) == (11.0, True)
    outcome = picture_of(pinned).outcome
    assert outcome is not None
    assert sum(each.pinned for line in outcome.ledger for each in line.takings) == 1


def test_unpinned_is_as_before() -> None:
    project = example()
    assert set_pin(set_pin(project, "back", 4, "waist", 9.0), "back", 4, "waist", None) == project


def test_pins_at_two_levels_are_one_value_whichever_came_first() -> None:
    project = example()
    one = set_pin(set_pin(project, "front", 1, "waist", 9.0), "front", 1, "top_hip", 1.0)
    other = set_pin(set_pin(project, "front", 1, "top_hip", 1.0), "front", 1, "waist", 9.0)
    assert one == other


def test_weight_of_a_seam_and_of_one_level() -> None:
    project = set_weight(example(), "front", 2, 0.0)
    assert taking(project, "front", 2).total == 0.0
    assert taking(set_weight(project, "back", 3, 0.0), "back", 3).total == 0.0
    only = set_level_weight(project, "front", 2, "waist", 0.3)
    assert taking(only, "front", 2).total > 0
    assert set_level_weight(only, "front", 2, "waist", None) == project
    with pytest.raises(ValueError, match="less than nothing"):
        set_weight(project, "front", 1, -0.1)


def test_left_part_at_one_level_and_at_all() -> None:
    project = set_left_part(example(), "front", 1, "waist", 1.0)
    assert taking(project, "front", 1).right == 0.0
    everywhere = set_left_part(project, "front", 1, None, 0.25)
    found = taking(everywhere, "front", 1)
    assert found.left == pytest.approx(0.25 * found.total)
    with pytest.raises(ValueError, match="between 0 and 100 %"):
        set_left_part(project, "front", 1, None, 1.1)
    with pytest.raises(ValueError, match="one side in each quarter"):
        set_left_part(project, "front", 3, None, 0.4)


def test_left_part_at_all_levels_keeps_the_pins() -> None:
    project = set_pin(example(), "front", 1, "waist", 12.0)
    assert taking(set_left_part(project, "front", 1, None, 0.25), "front", 1).left == pytest.approx(3.0)


def test_sharing_a_line_again_leaves_the_other_levels() -> None:
    project = set_pin(example(), "front", 1, "top_hip", 1.0)
    pinned = set_pin(set_pin(project, "front", 1, "waist", 9.0), "front", 3, "waist", 4.0)
    assert share_evenly(pinned, "front", "waist") == project


def test_place_of_a_seam() -> None:
    moved = set_seam_place(example(), "back", 4, 0.7, 0.68).design.back.seams[0]
    assert (moved.lower, moved.upper) == (0.7, 0.68)
    for place in (0.0, 1.0, -3.0, float("nan")):
        with pytest.raises(ValueError, match="inside its quarter"):
            set_seam_place(example(), "back", 4, place, 0.5)
    with pytest.raises(ValueError, match="front’s share"):
        set_seam_place(example(), "front", 3, 0.5, 0.5)


def test_seam_through_the_bust_point_leaves_it_when_moved_and_stays_when_leaned() -> None:
    project = example("over_bust")
    seam = project.design.front.seams[0]
    leaned = set_seam_place(project, "front", 1, seam.lower, seam.upper + 0.05)
    assert leaned.design.front.seams[0].through_bust_point
    moved = set_seam_place(project, "front", 1, seam.lower + 0.05, seam.upper + 0.05)
    assert not moved.design.front.seams[0].through_bust_point


def test_only_one_seam_goes_through_the_bust_point() -> None:
    project = set_through_bust_point(example("over_bust"), 2, True)
    assert [seam.through_bust_point for seam in project.design.front.seams] == [False, True]
    off = set_through_bust_point(project, 2, False)
    assert not any(seam.through_bust_point for seam in off.design.front.seams)


@pytest.mark.parametrize(
    ("quarter", "seam"), [("front", 0), ("front", 4), ("back", 2), ("back", 6), ("back", 0)]
)
def test_seam_that_is_not_there(quarter: QuarterName, seam: int) -> None:
    with pytest.raises(ValueError, match=f"The {quarter} has no seam number {seam}"):
        set_pin(example(), quarter, seam, "waist", 3.0)

"""Edits return a new project that says what was asked, leave the rest alone, and refuse nonsense."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given, settings

from tests.document import example, projects
from workbench.body import LengthError
from workbench.document import (
    Project,
    picture_of,
    set_client,
    set_front_share,
    set_limit,
    set_measurement,
    set_opening,
    set_panels,
    set_paper,
    set_reduction,
    set_rule,
    set_style,
    set_unit,
    take_the_most,
    to_bytes,
)
from workbench.document.file import project_from
from workbench.draft import ShapePoint

NAN, INF = math.nan, math.inf


def test_measurement_is_kept_as_typed_and_in_millimetres() -> None:
    project = set_measurement(example(), "bust_girth", " 37 3/8″ ")
    length = project.measurements["bust_girth"]
    assert length.mm == pytest.approx(37.375 * 25.4, abs=1e-9)
    assert (length.typed, length.unit) == ("37 3/8", "in")
    assert set_measurement(set_unit(project, "cm", 8), "bust_span", "18,5").taken()["bust_span"] == 185.0


def test_blank_means_not_taken() -> None:
    project = set_measurement(example(), "top_hip_girth", "  ")
    assert "top_hip_girth" not in project.measurements
    assert set_measurement(project, "top_hip_girth", "") == project


@pytest.mark.parametrize(
    "text", ["0", "-9", "nan", "inf", "1e9", "9 1/0", "wide", "9,5,1", "9 in cm", "99999", "0.1 mm"]
)
def test_measurement_that_makes_no_sense(text: str) -> None:
    with pytest.raises(LengthError):
        set_measurement(example(), "bust_girth", text)


def test_unknown_measurement_and_limit() -> None:
    with pytest.raises(ValueError, match="no measurement called “hat”"):
        set_measurement(example(), "hat", "9")
    with pytest.raises(ValueError, match="no limit called “hat”"):
        set_limit(example(), "hat", 9)


def test_switching_units_changes_no_stored_length() -> None:
    project = example()
    there = set_unit(project, "cm", 16)
    assert there.measurements == project.measurements
    assert set_unit(there, project.unit, project.fraction) == project


def test_reduction_stands_round_the_body() -> None:
    project = set_reduction(example(), "waist", 60.0)
    outcome = picture_of(project).outcome
    assert outcome is not None
    assert outcome.level("waist").reduction == pytest.approx(60.0)


def test_under_one_figure_waist_and_underbust_share_a_reduction() -> None:
    project = set_rule(example(), "one_figure")
    assert set_reduction(project, "underbust", 30) == set_reduction(project, "waist", 30)
    own = set_reduction(example(), "underbust", 30).design.reductions
    assert (own.underbust, own.waist) == (30, example().design.reductions.waist)


@pytest.mark.parametrize(
    "edit",
    [
        lambda p, v: set_reduction(p, "waist", v),
        lambda p, v: set_opening(p, v),
        lambda p, v: set_front_share(p, v),
        lambda p, v: set_limit(p, "waist_percent", v),
        lambda p, v: set_paper(p, margin_mm=v),
    ],
)
@pytest.mark.parametrize("value", [NAN, INF, -INF, 1e9])
def test_figures_that_are_none_are_refused(edit: Callable[[Project, float], Project], value: float) -> None:
    with pytest.raises(ValueError, match=r"^[A-Z].*\.$"):
        edit(example(), value)


def test_less_than_nothing_is_refused_where_it_means_nothing() -> None:
    for edit in (set_opening,):
        with pytest.raises(ValueError, match="less than nothing"):
            edit(example(), -1)
    with pytest.raises(ValueError, match="paper’s overlap cannot be less than nothing"):
        set_paper(example(), overlap_mm=-0.1)
    assert set_reduction(example(), "bust", -20).design.reductions.bust == -20


def test_client_and_paper() -> None:
    project = set_client(example(), name="Soprano", date="2031-05-20", invented=True)
    assert (project.client.name, project.client.invented) == ("Soprano", True)
    assert set_paper(project, name="A0", with_allowance=False).paper.name == "A0"
    for date in ("20 May", "2031-5-2", "2031-02-30"):
        with pytest.raises(ValueError, match="client’s date must be written as"):
            set_client(project, date=date)
    with pytest.raises(ValueError, match="client’s measured by is longer than 80"):
        set_client(project, measured_by="x" * 81)


def test_limit_out_of_its_range_says_the_range() -> None:
    assert set_limit(example(), "waist_percent", 7.5).limits.waist_percent == 7.5
    with pytest.raises(ValueError, match="must be between"):
        set_limit(example(), "waist_percent", -1)


def test_take_the_most_keeps_every_limit() -> None:
    project = set_reduction(example(), "waist", 150)
    comfort = picture_of(project).comfort
    assert comfort is not None
    assert comfort.at("waist").status == "over"
    taken = take_the_most(project, comfort, 25.4 / 8)
    after = picture_of(taken).comfort
    assert after is not None
    assert {judgement.status for judgement in after.judgements} <= {"within", "near"}
    assert taken.design.reductions.waist > 60


def test_panels_within_bounds_and_lines_that_follow() -> None:
    project = example()
    hem = (ShapePoint(0, -70), ShapePoint(3, -50), ShapePoint(6, -80))
    drawn = Project(
        measurements=project.measurements, design=type(project.design)(**{**vars(project.design), "hem": hem})
    )
    more = set_panels(drawn, "front", 4)
    assert more.design.front.panel_count == 4
    assert more.design.hem is not None
    assert [point.u for point in more.design.hem] == [0, 4, 7]
    assert set_panels(drawn, "front", 3) is drawn
    for count in (1, 5, 0, -2):
        with pytest.raises(ValueError, match="2 to 4 panels"):
            set_panels(project, "back", count)


def test_style_keeps_what_can_be_kept() -> None:
    project = set_opening(set_reduction(set_panels(example(), "back", 4), "waist", 44), 30)
    over = set_style(project, "over_bust")
    assert over.design.front.seams[0].through_bust_point
    assert over.design.back.panel_count == 4
    assert (over.design.reductions.waist, over.design.opening_mm) == (44, 30)
    assert over.design.neckline is None
    assert set_style(project, "under_bust") is project


@given(projects)
@settings(max_examples=60, deadline=None)
def test_whatever_an_edit_lets_through_a_file_can_keep(project: Project) -> None:
    for edited in (
        set_reduction(project, "top_hip", -123.4),
        set_opening(project, 0.0),
        set_front_share(project, 0.55),
        set_style(set_panels(project, "back", 2), "over_bust"),
        set_client(project, wish="Sits, ½ the evening"),
    ):
        assert project_from(to_bytes(edited)) == edited

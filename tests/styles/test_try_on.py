"""A shape used on the project on the desk: what changes, what stays hers, what is said to have given."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.document import example
from workbench.document import (
    Project,
    new_project,
    picture_of,
    set_measurement,
    set_panels,
    set_pin,
    to_bytes,
)
from workbench.document.file import project_from
from workbench.document.style_carry import shape_of
from workbench.document.style_edits import in_shape
from workbench.draft import Reductions
from workbench.fitting import Change, Fitting
from workbench.pieces import OwnAllowance
from workbench.styles import KeptShape, drawn_shapes, try_on

SHAPES = {shape.name: shape for shape in drawn_shapes()}
NAMES = list(SHAPES)


def named(name: str) -> KeptShape:
    return SHAPES[name]


def codes(project: Project, shape: KeptShape) -> list[str]:
    return [finding.code for finding in try_on(shape, project).findings if finding.code.startswith("carried")]


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("style", ["under_bust", "over_bust"])
def test_what_is_hers_stays(name: str, style: str) -> None:
    before = example("over_bust" if style == "over_bust" else "under_bust")
    design = replace(before.design, rule="one_figure", reductions=Reductions(waist=31.0), opening_mm=70.0)
    before = replace(before, design=design)
    after = try_on(named(name), before).project
    assert (after.client, after.measurements, after.limits) == (
        before.client,
        before.measurements,
        before.limits,
    )
    assert (after.design.reductions, after.design.opening_mm) == (Reductions(waist=31.0), 70.0)
    assert after.design.rule == "one_figure"
    assert (after.cloths, after.quoting, after.paper) == (before.cloths, before.quoting, before.paper)
    assert after.style_name == name
    assert project_from(to_bytes(after)) == after


@pytest.mark.parametrize("name", NAMES)
def test_it_is_drawn_on_her_figures(name: str) -> None:
    tried = try_on(named(name), example())
    assert tried.on_her
    assert tried.why_not == ""
    assert tried.picture.project is tried.project
    assert tried.picture.current


@pytest.mark.parametrize("name", NAMES)
def test_the_same_shape_twice_changes_nothing_the_second_time(name: str) -> None:
    once = try_on(named(name), example()).project
    assert try_on(named(name), once).project == once


def test_while_nothing_is_measured_it_is_drawn_on_the_invented_body() -> None:
    tried = try_on(named("Plunge"), new_project("under_bust", "cm"))
    assert not tried.on_her
    assert tried.picture.current
    assert tried.picture.project.unit == "cm"
    assert dict(tried.project.measurements) == {}
    assert tried.missing.startswith("Waist is missing")
    assert tried.why_not == ""


def test_why_it_cannot_be_drafted_on_her_is_said_in_one_sentence() -> None:
    project = replace(example(), design=replace(example().design, reductions=Reductions(waist=620.0)))
    tried = try_on(named("Sweetheart"), project)
    assert not tried.picture.current
    assert tried.why_not.startswith("Waist: a finished girth of")


def test_a_neckline_keeps_its_place_between_the_levels_of_her_body() -> None:
    """The bust is a quarter of the way from rung 2 to 3 on any body: worked by hand from the heights."""
    project = example("over_bust")
    heights = {
        "shoulder_to_waist": "17",
        "shoulder_to_underbust": "13",
        "shoulder_to_bust": "10",
        "underarm_to_waist": "9",
    }
    for key, text in heights.items():
        project = set_measurement(project, key, text)
    tried = try_on(named("Sweetheart"), project)
    assert tried.project.design.neckline is not None
    # bust 7 in and upper chest 9 in above the waist: 2.66 rungs are 7 + 0.66 × 2 in
    assert tried.project.design.neckline[1].t == pytest.approx(25.4 * (7 + 0.66 * 2))


def test_a_pin_keeps_its_part_of_her_intake() -> None:
    own = named("Under-bust, level").project
    pinned = set_pin(own, "front", 1, "waist", 12.0)
    shape = replace(named("Under-bust, level"), project=pinned)
    before = shape_of(pinned).outcome
    after = try_on(shape, example()).picture.outcome
    assert before is not None
    assert after is not None
    part = 12.0 / before.line("front", "waist").needed
    taking = next(each for each in after.line("front", "waist").takings if each.seam == 1)
    assert taking.pinned
    assert taking.total == pytest.approx(part * after.line("front", "waist").needed)


def test_a_front_that_closes_otherwise_is_said() -> None:
    tried = try_on(named("Under-bust with a busk"), example())
    assert tried.project.making.front == "busk"
    assert "The centre front opens with a busk now." in tried.gave
    assert "carried_front" not in codes(example(), named("Sweetheart"))


def test_a_busk_she_has_at_hand_stays_while_there_is_a_busk() -> None:
    project = example()
    project = replace(project, making=replace(project.making, front="busk", busk_mm=254.0))
    assert try_on(named("Under-bust with a busk"), project).project.making.busk_mm == 254.0
    assert try_on(named("Sweetheart"), project).project.making.busk_mm is None


def test_allowances_of_panels_that_are_others_now_are_said_to_be_left_behind() -> None:
    project = example()
    own = (OwnAllowance("fashion", 5, "left", 20.0),)
    project = replace(project, making=replace(project.making, own_allowances=own))
    tried = try_on(named("Under-bust with a busk"), project)
    assert tried.project.making.own_allowances == ()
    assert "carried_allowances" in codes(project, named("Under-bust with a busk"))
    assert "carried_allowances" not in codes(project, named("Under-bust, level"))


def test_changes_of_a_fitting_are_switched_off_and_said() -> None:
    project = replace(example(), fittings=(Fitting("2026-11-20", changes=(Change("hem", 6.0, u=1.0),)),))
    tried = try_on(named("Plunge"), project)
    assert [fitting.applied for fitting in tried.project.fittings] == [False]
    assert tried.project.fittings[0].changes == project.fittings[0].changes
    assert "carried_fittings" in codes(project, named("Plunge"))


def test_a_seam_through_the_bust_point_says_where_it_moves() -> None:
    project = set_measurement(example("over_bust"), "bust_span", "9")
    assert any("moves to the bust point" in said for said in try_on(named("Sweetheart"), project).gave)


def test_left_out_panels_follow_the_new_count() -> None:
    project = set_panels(example(), "front", 4)
    layers = tuple(replace(layer, left_out=(7 - 1,)) for layer in project.making.layers)
    project = replace(project, making=replace(project.making, layers=layers))
    after, _ = in_shape(project, shape_of(named("Waist belt").project))
    assert all(max(layer.left_out, default=0) < after.design.panel_count for layer in after.making.layers)
    assert picture_of(after).cutting is not None


def test_figures_that_contradict_each_other_are_said() -> None:
    project = set_measurement(set_measurement(example(), "shoulder_to_bust", "30"), "shoulder_to_waist", "17")
    tried = try_on(named("Plunge"), project)
    assert not tried.on_her
    assert tried.missing
    assert tried.picture.current

"""The bodice on the body: panels add up to the finished girth, both halves mirror, places come back."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings

from tests.draft.strategies import bodies, designs
from workbench.body import Body, complete, girths, walks
from workbench.draft import Design, Outcome, usual_design, work_out
from workbench.worn import BACK, FRONT, SIDE, Eye, Sight, Torso, Worn, inside_of, seen_from, worn_of
from workbench.worn.places import places_of
from workbench.worn.sections import ROW_OF
from workbench.worn.torso import Array

many = settings(
    max_examples=60,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
few = settings(many, max_examples=15)


@pytest.fixture(scope="module")
def outcome() -> Outcome:
    body = complete({"bust_girth": 965.2, "underbust_girth": 800.1, "waist_girth": 711.2})
    return work_out(body, usual_design("over_bust"))


@pytest.fixture(scope="module")
def worn(outcome: Outcome) -> Worn:
    found = worn_of(outcome, Torso())
    assert found is not None
    return found


@many
@given(bodies(), designs())
def test_panels_and_opening_add_up_to_the_finished_girth(body: Body, design: Design) -> None:
    outcome = work_out(body, design)
    worn = worn_of(outcome, Torso())
    assert (worn is None) == (outcome.draft is None)
    if worn is None or outcome.draft is None:
        return
    low, high = min(outcome.draft.hem.seam_walks), max(outcome.draft.neckline.seam_walks)
    for level in outcome.levels:
        if low <= level.walk <= high:
            row = ROW_OF[level.name]
            arcs = np.diff(worn.bounds[row]) * worn.girths[row]
            drawn = [panel.widths[level.name] for panel in outcome.draft.panels]
            assert arcs == pytest.approx(drawn, abs=1e-6)
            # the draft itself holds the finished girth to a millimetre, closer where no flare is sharp
            assert 2 * arcs.sum() + design.opening_mm == pytest.approx(level.finished, abs=1.0)
            assert worn.girths[row] == pytest.approx(2 * arcs.sum() + design.opening_mm, abs=1e-6)


@many
@given(bodies(), designs())
def test_the_body_under_it_has_the_girths_and_the_order_of_the_tape(body: Body, design: Design) -> None:
    worn = worn_of(work_out(body, design), Torso())
    assume(worn is not None)
    assert worn is not None
    for name, girth in girths(body).items():
        assert worn.stand.girths[ROW_OF[name]] == pytest.approx(girth)
        assert worn.stand.walks[ROW_OF[name]] == pytest.approx(walks(body)[name])
    rises = np.diff(worn.stand.heights)
    assert np.all(rises > 0)
    assert np.all(rises <= np.diff(worn.stand.walks) + 1e-9)


@few
@given(bodies(), designs())
def test_places_on_panels_come_back_as_surface_finds_them(body: Body, design: Design) -> None:
    draft = work_out(body, design).draft
    assume(draft is not None)
    assert draft is not None
    assume(draft.surface.edges.steepest.max() < 0.5)
    points = np.concatenate([panel.hem[::9] for panel in draft.panels])
    panels = np.repeat(
        np.arange(len(draft.panels), dtype=np.intp), [len(panel.hem[::9]) for panel in draft.panels]
    )
    u, t = places_of(draft.surface, panels, points)
    for number in range(0, len(points), 3):
        found = draft.surface.locate(int(panels[number]), *points[number].tolist())
        assert (u[number], t[number]) == pytest.approx(found, abs=0.08)


@pytest.mark.parametrize("degrees", [0.0, 30.0, 137.0, 180.0, 300.0])
def test_both_halves_mirror_each_other(worn: Worn, degrees: float) -> None:
    here, there = Sight(worn, Eye(degrees, 6.0)), Sight(worn, Eye(-degrees, 6.0))
    for seam in worn.seams:
        left, right = here.points(seam.row, seam.share), there.points(seam.row, -seam.share)
        assert left[:, 0] == pytest.approx(-right[:, 0], abs=1e-9)
        assert left[:, 1] == pytest.approx(right[:, 1], abs=1e-9)


@pytest.mark.parametrize("degrees", [0.0, 33.0, 90.0, 145.0, 180.0, 271.0])
@pytest.mark.parametrize("down", [0.0, 6.0, 15.0])
def test_what_is_picked_on_the_picture_is_the_place_that_was_drawn_there(
    worn: Worn, degrees: float, down: float
) -> None:
    for u in (0.05, 1.4, 2.0, 3.3, 4.9, 5.95):
        for t in (-30.0, 0.0, 55.0, 120.0):
            check_picked(worn, u, t, degrees, down)


def check_picked(worn: Worn, u: float, t: float, degrees: float, down: float) -> None:
    sight = Sight(worn, Eye(degrees, down))
    track = worn.track(np.array([u]), np.array([t]))
    aside = sight.aside(track.row, track.share)
    if abs(aside - np.round(aside))[0] > 0.2:
        return  # near the horizon one pixel is many places
    x, y = sight.points(track.row, track.share)[0].tolist()
    found = sight.place_at(x, y)
    assert found is not None
    place = worn.place_at(*found)
    again = worn.track(np.array([place[0]]), np.array([place[1]]))
    share = again.share if found[1] % 1.0 < 0.5 else -again.share
    assert sight.points(again.row, share)[0].tolist() == pytest.approx([x, y], abs=0.5)
    if abs(aside - np.round(aside))[0] < 0.15:  # further round, a millimetre seen is many on the body
        assert place == pytest.approx((u, t), abs=0.5)


def test_beside_the_body_nothing_is_picked(worn: Worn) -> None:
    assert Sight(worn, Eye()).place_at(900.0, 0.0) is None


@pytest.mark.parametrize("degrees", range(0, 360, 23))
def test_nothing_of_the_garment_is_drawn_beside_the_body(worn: Worn, degrees: int) -> None:
    shown = seen_from(worn, Eye(float(degrees)))
    left, right = shown.worn
    for points in [panel.ring for panel in shown.panels] + [line.points for line in shown.lines]:
        assert np.all(points[:, 0] >= np.interp(points[:, 1], left[:, 1], left[:, 0]) - 1.0)
        assert np.all(points[:, 0] <= np.interp(points[:, 1], right[:, 1], right[:, 0]) + 1.0)


def test_each_side_shows_what_belongs_to_it(worn: Worn) -> None:
    count = len(worn.outlines)
    roles = {side: {line.role for line in seen_from(worn, Eye(side)).lines} for side in (FRONT, SIDE, BACK)}
    assert "centre" in roles[FRONT]
    assert "edge" not in roles[FRONT]
    assert "edge" in roles[BACK]
    assert "centre" not in roles[BACK]
    numbers = {(panel.number, panel.mirrored) for panel in seen_from(worn, Eye(BACK)).panels}
    assert {(count - 1, False), (count - 1, True)} <= numbers
    own, other = (
        sum(_area(panel.ring) for panel in seen_from(worn, Eye(SIDE)).panels if panel.mirrored == half)
        for half in (False, True)
    )
    assert other < 0.01 * own


def _area(ring: Array) -> float:
    x, y = ring.T
    return 0.5 * abs(float(x @ np.roll(y, -1) - y @ np.roll(x, -1)))


def test_the_opening_is_as_wide_behind_as_it_was_planned(outcome: Outcome, worn: Worn) -> None:
    edge = next(line for line in seen_from(worn, Eye(BACK)).lines if line.role == "edge")
    gap = 2 * np.abs(edge.points[:, 0])
    # her back is all but flat there, so the chord is the arc to a millimetre
    assert gap == pytest.approx(np.full(len(gap), outcome.design.opening_mm), abs=1.0)


def test_drawn_in_she_is_narrower_and_only_there(outcome: Outcome, worn: Worn) -> None:
    waist = ROW_OF["waist"]
    left, right = seen_from(worn, Eye()).worn
    was_left, was_right = seen_from(worn, Eye()).before
    wide, was = right[waist, 0] - left[waist, 0], was_right[waist, 0] - was_left[waist, 0]
    level = outcome.level("waist")
    assert wide / was == pytest.approx(level.finished / level.body, rel=1e-3)
    assert worn.girths[0] == worn.stand.girths[0]
    assert worn.girths[-1] == worn.stand.girths[-1]


def test_bones_and_eyelets_lie_where_they_were_sewn(outcome: Outcome) -> None:
    draft = outcome.draft
    assert draft is not None
    seam = draft.seams[1]
    inside = inside_of(outcome, ((2, seam.right.left),), (-20.0, 0.0, 20.0))
    worn = worn_of(outcome, Torso(), inside)
    assert worn is not None
    along = np.interp(worn.bones[0].row, worn.seams[2].row, worn.seams[2].share)
    assert worn.bones[0].share == pytest.approx(along, abs=2e-4)
    assert len(worn.lacing) == 2
    assert all(strand.share[0] < 0.5 < strand.share[-1] for strand in worn.lacing)


def test_a_deeper_torso_is_narrower_from_the_front_and_wider_from_the_side(outcome: Outcome) -> None:
    wide = {}
    for depth in (0.6, 0.8):
        worn = worn_of(outcome, replace(Torso(), waist=depth))
        assert worn is not None
        for side in (FRONT, SIDE):
            left, right = seen_from(worn, Eye(side)).before
            wide[depth, side] = right[ROW_OF["waist"], 0] - left[ROW_OF["waist"], 0]
    assert wide[0.8, FRONT] < wide[0.6, FRONT]
    assert wide[0.8, SIDE] > wide[0.6, SIDE]
    assert wide[0.8, SIDE] / wide[0.8, FRONT] == pytest.approx(0.8, abs=2e-3)


def test_without_a_draft_there_is_nothing_to_wear() -> None:
    body = complete({"bust_girth": 965.2, "waist_girth": 711.2})
    design = usual_design()
    stopped = work_out(body, replace(design, reductions=replace(design.reductions, waist=900.0)))
    assert stopped.draft is None
    assert worn_of(stopped, Torso()) is None

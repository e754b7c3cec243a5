"""Comfort: figures against the limits that were set, as worn and laced shut."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.draft.conftest import body_from
from tests.draft.strategies import bodies, designs
from workbench.body import CAUTIONS, LIMIT_TABLE, Body, Limits, complete
from workbench.draft import (
    Design,
    Reductions,
    comfort_of,
    least_rib_girth,
    take_the_most,
    usual_design,
    work_out,
)

GIRTHS = {"top_hip": 960.0, "waist": 740.0, "underbust": 800.0, "bust": 980.0, "upper_chest": 920.0}
WALKS = {"top_hip": -100.0, "waist": 0.0, "underbust": 85.0, "bust": 160.0, "upper_chest": 215.0}


def body(**more: float) -> Body:
    base = body_from(GIRTHS, WALKS)
    taken = {key: mm for key, mm in base.values.items() if key not in base.estimated}
    return complete({**taken, **more})


def design(waist: float, **more: object) -> Design:
    return replace(usual_design(), reductions=Reductions(waist=waist), **more)


@pytest.mark.parametrize(("reduction", "status"), [(0, "within"), (50, "within"), (65, "near"), (75, "over")])
def test_the_waist_is_judged_against_ten_percent(reduction: float, status: str) -> None:
    """10 % of the natural waist: Gau 1998, dissertation, Iowa State Univ. (abstract)."""
    comfort = comfort_of(work_out(body(), design(reduction)), Limits())
    assert comfort.at("waist").most == pytest.approx(74.0)
    assert comfort.at("waist").status == status


def test_a_limit_is_not_rounded_up_to_what_passes_it() -> None:
    """10 % of 29 1/2 in is 2.95 in; the nearest eighth, 3, is above it."""
    outcome = work_out(body(waist_girth=29.5 * 25.4), design(2 * 25.4))
    said = comfort_of(outcome, Limits()).findings[0].text("in")
    assert "The most that keeps every limit is 2⅞ in at the waist." in said


def test_above_the_limit_by_less_than_the_ruler_shows_is_said_exactly() -> None:
    """Both would read 2⅞ in: “2⅞ is above 2⅞” helps nobody."""
    outcome = work_out(body(waist_girth=29 * 25.4), design(2.91 * 25.4))
    said = comfort_of(outcome, Limits()).findings[0].text("in")
    assert "2.91 in round the body" in said
    assert "allows 2.9 in." in said


def test_room_to_the_lap_is_not_rounded_up_to_what_is_asked_for() -> None:
    """1.47 in is 1½ to the eighth: “leaves 1½ in, less than the 1½ in you set” would help nobody."""
    outcome = work_out(body(), design(40))
    assert outcome.draft is not None
    lap = 1.47 * 25.4 - outcome.draft.hem.seam_walks[0]
    outcome = work_out(body(waist_to_lap=lap), design(40))
    said = {finding.code: finding.text("in") for finding in comfort_of(outcome, Limits()).findings}
    assert "leaves 1⅜ in to the lap, less than the 1½ in you set" in said["hem_lap"]


def test_what_is_done_at_the_waist_is_not_offered_for_another_level() -> None:
    own = replace(design(40), rule="own_figure", reductions=Reductions(waist=40, underbust=30))
    outcome = work_out(body(), own)
    said = {finding.code: finding.text("in") for finding in comfort_of(outcome, Limits()).findings}
    assert "at the waist" not in said["underbust_over"]
    assert "at the waist" in said["waist_within"]


def test_a_seated_waist_counts_where_it_was_taken() -> None:
    comfort = comfort_of(work_out(body(seated_waist_girth=790), design(40)), Limits())
    assert comfort.at("waist").most == pytest.approx(740 - 0.9 * 790)
    assert "seated" in comfort.at("waist").reason


def test_half_her_own_breath_is_left_free() -> None:
    measured = body(underbust_exhale=785, underbust_inhale=825)
    assert least_rib_girth(measured, Limits()) == pytest.approx(805)
    assert least_rib_girth(measured, Limits(breathing_share=0.25)) == pytest.approx(795)


def test_an_assumed_breath_is_said_to_be_assumed() -> None:
    """4 cm between full exhale and full inhale: four studies, see facts on breathing (abstract, derived)."""
    outcome = work_out(body(), design(40))
    assert least_rib_girth(outcome.body, Limits()) == pytest.approx(800)
    notes = [f for f in comfort_of(outcome, Limits()).findings if f.code == "breath_assumed"]
    assert "was not measured: 4.0 cm" in notes[0].text("cm")


def test_one_figure_says_how_much_tighter_the_ribs_are_held() -> None:
    one = design(63.5, rule="one_figure")
    findings = comfort_of(work_out(body(), one), Limits()).findings
    hidden = next(f for f in findings if f.code == "one_figure_hides")
    assert hidden.value_mm == pytest.approx(63.5 + 60)
    assert comfort_of(work_out(body(), one), Limits()).at("underbust").status == "over"


def test_the_opening_is_all_that_keeps_a_limit_when_laced_shut() -> None:
    comfort = comfort_of(work_out(body(), design(50)), Limits())
    assert comfort.at("waist").status == "within"
    assert comfort.at("waist").shut_status == "over"
    (finding,) = [f for f in comfort.findings if f.code == "levels_laced_shut"]
    assert "above the limit you set" in finding.text("in")


@pytest.mark.parametrize(
    ("taken", "line"), [({"waist_to_lap": 100.0}, "hem"), ({"waist_to_thigh": 50.0}, "hem")]
)
def test_a_hem_too_long_to_sit_in_is_said(taken: dict[str, float], line: str) -> None:
    findings = comfort_of(work_out(body(**taken), design(30)), Limits()).findings
    over = [f for f in findings if f.severity == "over"]
    assert [f.place.line for f in over] == [line]
    assert "you set" in over[0].text("in")


def test_a_neckline_into_the_armpit_is_said() -> None:
    over_bust = replace(usual_design("over_bust"), reductions=Reductions(waist=20))
    high = Limits(underarm_clearance_mm=80)
    findings = comfort_of(work_out(body(), over_bust), high).findings
    assert "neckline_underarm" in [f.code for f in findings if f.severity == "over"]


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(bodies(), designs(), st.sampled_from([3.175, 1.5875, 1.0]))
def test_the_most_keeps_every_limit_and_a_step_more_does_not(body: Body, design: Design, step: float) -> None:
    limits = Limits()
    taken = take_the_most(design, comfort_of(work_out(body, design), limits), step)
    kept = comfort_of(work_out(body, taken), limits)
    assert all(j.status != "over" for j in kept.judgements)
    more = replace(taken, reductions=replace(taken.reductions, waist=taken.reductions.waist + step))
    passed = comfort_of(work_out(body, more), limits)
    assert any(judgement.status == "over" for judgement in passed.judgements)


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(bodies(), designs())
def test_no_figure_is_ever_called_safe(body: Body, design: Design) -> None:
    outcome = work_out(body, design)
    texts = [f.text(unit) for f in comfort_of(outcome, Limits()).findings for unit in ("in", "cm")]
    texts += [*CAUTIONS, *(row.how + row.source for row in LIMIT_TABLE)]
    assert not [text for text in texts if "safe" in text.lower()]


def test_the_check_never_changes_the_draft() -> None:
    outcome = work_out(body(), design(200))
    before = [panel.outline.tobytes() for panel in outcome.draft.panels] if outcome.draft else []
    comfort_of(outcome, Limits())
    assert outcome.draft is not None
    assert [panel.outline.tobytes() for panel in outcome.draft.panels] == before

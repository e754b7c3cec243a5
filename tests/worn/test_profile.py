"""Girths by height agree with the levels, and say where she is drawn in most, never how hard."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings

from tests.draft.strategies import bodies, designs
from workbench.body import Body, Limits, complete
from workbench.draft import Design, breath, usual_design, work_out
from workbench.worn import profile_of


@settings(
    max_examples=40,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
@given(bodies(), designs())
def test_the_curves_pass_through_the_levels(body: Body, design: Design) -> None:
    outcome = work_out(body, design)
    profile = profile_of(outcome, Limits())
    assume(profile is not None)
    assert profile is not None
    for level in outcome.levels:
        at = int(np.argmin(np.abs(profile.walks - level.walk)))
        assert profile.walks[at] == pytest.approx(level.walk, abs=1e-9)
        assert profile.body[at] == pytest.approx(level.body, abs=1e-6)
        assert profile.finished[at] == pytest.approx(level.finished, abs=1.0)
        assert profile.shut[at] == pytest.approx(level.fabric, abs=1.0)


def test_the_breath_is_full_at_the_ribs_and_gone_at_waist_and_bust() -> None:
    taken = {"bust_girth": 965.2, "waist_girth": 711.2, "underbust_exhale": 780.0, "underbust_inhale": 830.0}
    outcome = work_out(complete(taken), usual_design("over_bust"))
    profile = profile_of(outcome, Limits())
    assert profile is not None
    at, out, full = profile.breath
    ribs = int(np.argmin(np.abs(at - outcome.level("underbust").walk)))
    assert (out[ribs], full[ribs]) == pytest.approx(breath(outcome.body, Limits())[:2], abs=1e-6)
    assert not profile.breath_assumed
    for end in (0, -1):
        assert full[end] - out[end] == pytest.approx(0.0, abs=2.0)


def test_the_limits_are_girths_that_keep_them() -> None:
    outcome = work_out(complete({"bust_girth": 965.2, "waist_girth": 711.2}), usual_design())
    profile = profile_of(outcome, Limits())
    assert profile is not None
    assert profile.limits["waist"] == pytest.approx(0.9 * 711.2)
    assert "bust" not in profile.limits


def test_it_draws_in_most_where_the_part_is_largest() -> None:
    design = usual_design()
    outcome = work_out(complete({"bust_girth": 965.2, "waist_girth": 711.2}), design)
    profile = profile_of(outcome, Limits())
    assert profile is not None
    assert profile.draws_in_most is not None
    assert profile.draws_in_most.name == "waist"
    easy = replace(design, reductions=replace(design.reductions, waist=0.0))
    nowhere = profile_of(work_out(outcome.body, easy), Limits())
    assert nowhere is not None
    assert nowhere.draws_in_most is None

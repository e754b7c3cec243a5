"""What must hold for every draft that is not refused, over bodies and designs of every kind."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings

from tests.draft.strategies import bodies, designs
from workbench.body import Body
from workbench.draft import Design, Draft, Outcome, usual_design, work_out

many = settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def check_draft(outcome: Outcome) -> Draft | None:
    """Every property of a draft, or a stop that says why there is none."""
    draft = outcome.draft
    if draft is None:
        assert any(finding.severity == "stop" for finding in outcome.findings)
        assert all(len(finding.text("in")) > 20 for finding in outcome.findings)
        return None
    sharp = draft.surface.edges.steepest.max() > 0.5
    check_seams(draft, sharp)
    check_girths(outcome, draft, sharp)
    check_ledger(outcome)
    check_outlines(draft)
    check_what_is_measured_when_asked_for(outcome, draft)
    return draft


def check_seams(draft: Draft, sharp: bool) -> None:
    for seam in draft.seams:
        left, right = draft.panels[seam.index - 1].right, draft.panels[seam.index].left
        assert seam.left_length == pytest.approx(seam.right_length, abs=0.05 if sharp else 0.01)
        assert seam.left_length == pytest.approx(
            seam.neckline_walk - seam.hem_walk, abs=0.05 if sharp else 0.01
        )
        for part in (slice(20, 60), slice(64, 129)):  # between notches, wherever they are
            one, other = (np.hypot(*np.diff(side[part], axis=0).T).sum() for side in (left, right))
            assert one == pytest.approx(other, abs=0.05 if sharp else 0.01)
        if seam.hem_smooth:
            assert seam.hem_angle_sum == pytest.approx(180, abs=0.5)
        if seam.neckline_smooth:
            assert seam.neckline_angle_sum == pytest.approx(180, abs=0.5)


def check_girths(outcome: Outcome, draft: Draft, sharp: bool) -> None:
    for level in outcome.levels:
        assert draft.tape_girth[level.name] == pytest.approx(level.finished, abs=1.0 if sharp else 0.1), (
            level.name
        )


def check_ledger(outcome: Outcome) -> None:
    for line in outcome.ledger:
        assert sum(taking.left + taking.right for taking in line.takings) == pytest.approx(
            line.needed, abs=0.001
        )
        assert line.needed >= -1e-9


def check_outlines(draft: Draft) -> None:
    for panel in draft.panels:
        ring = shapely.LinearRing(panel.outline)
        assert ring.is_simple, panel.name
        assert ring.is_ccw, panel.name
        polygon = shapely.Polygon(ring)
        # a spike thinner than 2 mm is lost when 1 mm is taken off all round and put back
        opened = polygon.buffer(-1.0).buffer(1.0)
        assert opened.geom_type == "Polygon", panel.name
        assert shapely.hausdorff_distance(polygon, opened) < 8.0, panel.name


def check_what_is_measured_when_asked_for(outcome: Outcome, draft: Draft) -> None:
    """Nothing that is measured later is sharper than what was refused or named without measuring it."""
    assert min(min(panel.corner_angles) for panel in draft.panels) >= 15
    named = {finding.place.seam for finding in outcome.findings if finding.code == "sharp_flare"}
    assert {seam.index for seam in draft.seams if seam.steepest > 0.5} == named


@many
@given(bodies(), designs())
def test_a_draft_holds_or_says_why_not(body: Body, design: Design) -> None:
    check_draft(work_out(body, design))


@settings(many, max_examples=60)
@given(bodies())
def test_the_usual_designs_hold(body: Body) -> None:
    for style in ("under_bust", "over_bust"):
        check_draft(work_out(body, usual_design(style)))


@settings(many, max_examples=40)
@given(bodies(), designs())
def test_the_same_input_gives_the_same_outline_bit_for_bit(body: Body, design: Design) -> None:
    one, other = work_out(body, design).draft, work_out(body, design).draft
    if one and other:
        for a, b in zip(one.panels, other.panels, strict=True):
            assert a.outline.tobytes() == b.outline.tobytes()


@settings(many, max_examples=60)
@given(bodies(), designs())
def test_a_point_located_on_the_flat_is_drawn_where_it_lies(body: Body, design: Design) -> None:
    """Two places can share a point where a very sharp flare folds the level lines over: either will do."""
    draft = work_out(body, design).draft
    if draft is None:
        return
    gentle = draft.surface.edges.steepest.max() < 0.5
    for line in (draft.neckline, draft.hem):
        for point in line.points:
            x, y, panel = draft.surface.point(point.u, point.t)
            u, t = draft.surface.locate(panel, x, y)
            there = draft.surface.points(np.array([panel]), np.array([u - panel]), np.array([t]))[0]
            assert there == pytest.approx((x, y), abs=1e-4)
            if gentle:
                assert (u, t) == pytest.approx((point.u, point.t), abs=1e-3)

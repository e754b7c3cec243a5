"""What must hold for every draft with corrections that is not refused, whatever body and design."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.draft.strategies import bodies, designs
from tests.draft.test_properties import check_girths, check_outlines
from tests.fitting.strategies import corrections
from workbench.body import Body, LevelName
from workbench.draft import (
    NO_CORRECTIONS,
    Corrections,
    Design,
    Draft,
    Outcome,
    Raised,
    TakenIn,
    work_out,
)

many = settings(
    max_examples=120,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)


def seam_sides(draft: Draft, seam: int, low: float, high: float) -> tuple[float, float]:
    """Lengths of both sides of a seam between two walks, along two thousand points each."""
    walks = np.linspace(low, high, 2001)
    x, y = draft.surface.edges.xy(np.array([[2 * seam - 1], [2 * seam]]), walks)
    one, other = np.hypot(np.diff(x), np.diff(y)).sum(axis=1).tolist()
    return one, other


def check_seams(draft: Draft) -> None:
    """Sewn sides are equally long, whole and between any two notches."""
    for seam in draft.seams:
        low, high = seam.hem_walk, seam.neckline_walk
        for part in ((0.0, 1.0), (0.2, 0.55), (0.61, 0.7)):
            one, other = seam_sides(draft, seam.index, *(low + share * (high - low) for share in part))
            assert one == pytest.approx(other, abs=0.01), seam.name
        if seam.neckline_smooth:
            assert seam.neckline_angle_sum == pytest.approx(180, abs=0.5)
        if seam.hem_smooth:
            assert seam.hem_angle_sum == pytest.approx(180, abs=0.5)


def check_sums(outcome: Outcome, plain: Outcome, made: Corrections) -> None:
    """Girths and ledger by sums of the test's own."""
    for level, before in zip(outcome.levels, plain.levels, strict=True):
        pinned = sum(taken.amount for taken in made.taken_in if taken.level == level.name)
        assert level.finished == pytest.approx(before.finished - 2 * pinned, abs=1e-9)
        assert level.fitted == pytest.approx(2 * pinned, abs=1e-9)
        # the reduction she designed is still the one that was asked for
        assert level.reckoned - level.finished == pytest.approx(before.reckoned - before.finished, abs=1e-9)
        lines = [line for line in outcome.ledger if line.level == level.name]
        placed = sum(line.placed for line in lines)
        assert 2 * (sum(outcome.blocks.values()) - placed) == pytest.approx(level.finished, abs=1e-6)
        assert all(line.closes for line in lines)
    assert outcome.blocks == plain.blocks


@given(bodies(), designs(), st.data())
@many
def test_whatever_is_corrected(body: Body, design: Design, data: st.DataObject) -> None:
    plain = work_out(body, design)
    assume(plain.draft is not None)
    made = data.draw(corrections(design))
    outcome = work_out(body, design, made)
    if outcome.draft is None:
        assert any(finding.severity == "stop" for finding in outcome.findings)
        assert all(len(finding.text("in")) > 20 for finding in outcome.findings)
        return
    check_seams(outcome.draft)
    check_girths(outcome, outcome.draft, bool(outcome.draft.surface.edges.steepest.max() > 0.5))
    check_outlines(outcome.draft)
    check_sums(outcome, plain, made)


@given(bodies(), designs(), st.data())
@settings(parent=many, max_examples=40)
def test_only_the_two_panels_of_a_seam_change_where_it_is_taken_in(
    body: Body, design: Design, data: st.DataObject
) -> None:
    plain = work_out(body, design)
    seam = data.draw(st.integers(1, design.panel_count - 1))
    level: LevelName = data.draw(st.sampled_from(design.levels))
    amount = data.draw(st.floats(-10, 10))
    outcome = work_out(body, design, Corrections((TakenIn(seam, level, amount),)))
    assume(plain.draft is not None and outcome.draft is not None)
    assert plain.draft is not None
    assert outcome.draft is not None
    sharp = max(d.surface.edges.steepest.max() for d in (plain.draft, outcome.draft)) > 0.5
    close = 0.5 if sharp else 0.05
    for before, after in zip(plain.draft.panels, outcome.draft.panels, strict=True):
        if before.index not in (seam - 1, seam):
            assert dict(after.widths) == pytest.approx(dict(before.widths), abs=close)
    pair = slice(seam - 1, seam + 1)
    lost = sum(panel.widths[level] for panel in plain.draft.panels[pair])
    lost -= sum(panel.widths[level] for panel in outcome.draft.panels[pair])
    assert lost == pytest.approx(amount, abs=close)


@given(bodies(), designs())
@settings(parent=many, max_examples=30)
def test_no_corrections_are_the_very_same_draft(body: Body, design: Design) -> None:
    plain, again = work_out(body, design), work_out(body, design, NO_CORRECTIONS)
    none = work_out(body, design, Corrections(raised=((Raised("hem", 1.0, 0.0),),)))
    assert again.levels == plain.levels
    assert again.ledger == plain.ledger
    if plain.draft is None:
        assert none.draft is None
        return
    assert again.draft is not None
    for one, other in zip(plain.draft.panels, again.draft.panels, strict=True):
        assert one.outline.tobytes() == other.outline.tobytes()
    assert none.draft is not None
    for one, other in zip(plain.draft.panels, none.draft.panels, strict=True):
        # a point put on the line where it runs already leaves the line as it is
        assert np.abs(one.outline.mean(axis=0) - other.outline.mean(axis=0)).max() < 1.0
        assert one.left[[0, -1]] == pytest.approx(other.left[[0, -1]], abs=0.02)

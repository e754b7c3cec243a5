"""Sums from handbooks and from the cutting table, done again by the draft."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from tests.draft.conftest import body_from
from tests.draft.strategies import bodies, designs
from workbench.body import Body, Limits
from workbench.draft import (
    Design,
    Outcome,
    Quarter,
    Reductions,
    Seam,
    Share,
    comfort_of,
    usual_design,
    work_out,
)

INCH = 25.4
WALKS = {"top_hip": -4.0, "waist": 0.0, "underbust": 3.0, "bust": 6.0, "upper_chest": 8.0}


def inch_body(**girths: float) -> Body:
    """A body from girths in inches, usual heights; top hip and upper chest as the bust unless given."""
    bust = girths["bust"]
    whole = {"top_hip": bust, "upper_chest": bust - 1, **girths}
    return body_from(
        {level: INCH * girth for level, girth in whole.items()},
        {level: INCH * walk for level, walk in WALKS.items()},
    )


@pytest.fixture
def four_seams_in_halves() -> Outcome:
    """Common practice, no source: bust 38, waist and underbust 34, one figure, 2 in drawn in a quarter."""
    design = replace(
        usual_design("under_bust", 2, 2), rule="one_figure", reductions=Reductions(waist=4 * 2 * INCH)
    )
    return work_out(inch_body(bust=38, underbust=34, waist=34), design)


def test_quarters_and_intake_of_the_common_sum(four_seams_in_halves: Outcome) -> None:
    outcome = four_seams_in_halves
    assert outcome.level("bust").finished / 4 == pytest.approx(9.5 * INCH)
    assert outcome.level("waist").body / 4 == pytest.approx(8.5 * INCH)
    for quarter in ("front", "back"):
        for level in ("waist", "underbust"):
            assert outcome.line(quarter, level).needed == pytest.approx(3 * INCH)  # type: ignore[arg-type]
        assert outcome.line(quarter, "bust").needed == pytest.approx(0)  # type: ignore[arg-type]


def test_what_the_paper_sum_hides(four_seams_in_halves: Outcome) -> None:
    waist = four_seams_in_halves.level("waist")
    assert waist.reduction == pytest.approx(8 * INCH)
    assert waist.percent == pytest.approx(23.5, abs=0.05)
    assert waist.finished == pytest.approx(26 * INCH)
    comfort = comfort_of(four_seams_in_halves, Limits())
    assert comfort.at("waist").status == "over"
    assert comfort.largest_reduction < 8 * INCH


def test_an_inner_seam_takes_its_share_in_halves(four_seams_in_halves: Outcome) -> None:
    for quarter in ("front", "back"):
        inner = [t for t in four_seams_in_halves.line(quarter, "waist").takings if t.seam in (1, 3)]  # type: ignore[arg-type]
        assert [taking.left for taking in inner] == pytest.approx([taking.right for taking in inner])


def test_twelve_sections_of_the_handbook() -> None:
    """The Practical Corsetiere, p. 30 (read), completed by arithmetic: half waist 14 from 17 in raw.

    Raw widths 2 1/2, 3, 3, 3, 3, 2 1/2; four darts take 2, the side takes 1; the sections
    measure 2 1/4, 2 1/2, 2 1/4, 2 1/4, 2 1/2, 2 1/4.
    """
    pinned = (Share("waist", pin_mm=0.5 * INCH),)
    side = (Share("waist", pin_mm=0.5 * INCH),)

    def seam(place: float) -> Seam:
        return Seam(place / 8.5, place / 8.5, weight=1, shares=pinned)

    front = Quarter((seam(2.5), seam(5.5)), side_weight=1, side_shares=side)
    back = Quarter((seam(5.5), seam(2.5)), side_weight=1, side_shares=side)
    design = Design("under_bust", "own_figure", front, back, Reductions(), opening_mm=0)
    outcome = work_out(inch_body(bust=34, underbust=30, waist=28, top_hip=34), design)
    assert outcome.draft is not None
    widths = [panel.widths["waist"] / INCH for panel in outcome.draft.panels]
    assert widths == pytest.approx([2.25, 2.5, 2.25, 2.25, 2.5, 2.25], abs=1e-4)
    assert sum(widths) == pytest.approx(14.0, abs=1e-4)


def test_the_girdle_of_the_handbook() -> None:
    """The Practical Corsetiere, p. 18 (read): waist 28, hip 38; half hip 19, half waist 14 + 3 for darts."""
    design = replace(usual_design("under_bust"), reductions=Reductions(), opening_mm=0.0)
    outcome = work_out(inch_body(bust=38, underbust=34, waist=28, top_hip=38), design)
    assert 2 * outcome.blocks["front"] == pytest.approx(19 * INCH)
    taken = sum(outcome.line(quarter, "waist").placed for quarter in ("front", "back"))  # type: ignore[arg-type]
    assert 2 * outcome.blocks["front"] - taken == pytest.approx(14 * INCH)


def test_the_order_rule_of_1913() -> None:
    """Spirella Manual 1913, section 10 (read): a 26 in waist worn open 2 in is made 24."""
    design = replace(usual_design(), reductions=Reductions(), opening_mm=2 * INCH)
    outcome = work_out(inch_body(bust=34, underbust=29, waist=26), design)
    assert outcome.level("waist").fabric == pytest.approx(24 * INCH)
    assert outcome.draft is not None
    half = sum(panel.widths["waist"] for panel in outcome.draft.panels)
    assert 2 * half == pytest.approx(24 * INCH, abs=0.01)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(bodies(), designs())
def test_half_the_panels_are_half_of_girth_less_opening(body: Body, design: Design) -> None:
    """The quarter rule, an identity: half sum = (target girth - opening) / 2."""
    outcome = work_out(body, design)
    if outcome.draft is None:
        return
    sharp = outcome.draft.surface.edges.steepest.max() > 0.5
    for level in outcome.levels:
        half = sum(panel.widths[level.name] for panel in outcome.draft.panels)
        assert half == pytest.approx((level.finished - design.opening_mm) / 2, abs=0.5 if sharp else 0.05)


@pytest.mark.parametrize("style", ["under_bust", "over_bust"])
def test_grading_by_an_inch_moves_the_half_sum_by_half_an_inch(style: str) -> None:
    """An identity: one inch more of girth at every level is half an inch more in the half."""
    design = usual_design(style)  # type: ignore[arg-type]
    small = work_out(inch_body(bust=37, underbust=32, waist=29), design)
    large = work_out(inch_body(bust=38, underbust=33, waist=30, upper_chest=37, top_hip=38), design)
    assert small.draft is not None
    assert large.draft is not None
    for level in design.levels:
        before, after = (sum(p.widths[level] for p in draft.panels) for draft in (small.draft, large.draft))
        assert after - before == pytest.approx(0.5 * INCH, abs=0.01)


def test_unequal_shares_of_front_and_back_still_make_the_girth() -> None:
    design = replace(usual_design(), front_share=0.53)
    outcome = work_out(inch_body(bust=37, underbust=32, waist=29), design)
    assert outcome.blocks["front"] == pytest.approx(0.53 * 37 / 2 * INCH)
    assert outcome.draft is not None
    assert outcome.draft.tape_girth["waist"] == pytest.approx(27 * INCH, abs=0.05)

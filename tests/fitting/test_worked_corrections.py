"""Corrections worked by hand, in inches: what a quarter inch at a seam comes to, and where a line goes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.draft.test_worked_sums import INCH, inch_body
from workbench.body import LevelName, Limits
from workbench.draft import (
    Corrections,
    Design,
    Draft,
    Lengthened,
    Outcome,
    Raised,
    Reductions,
    Seam,
    ShapePoint,
    Share,
    TakenIn,
    comfort_of,
    take_the_most,
    usual_design,
    walk_designed,
    work_out,
)

BODY = inch_body(bust=36, underbust=31, waist=28, top_hip=36)
DESIGN = replace(usual_design(), reductions=Reductions(waist=2 * INCH))
PLAIN = work_out(BODY, DESIGN)


def drafted(outcome: Outcome) -> Draft:
    assert outcome.draft is not None
    return outcome.draft


def width(outcome: Outcome, panel: int, level: LevelName) -> float:
    return drafted(outcome).panels[panel].widths[level] / INCH


def test_a_quarter_inch_at_the_side_seam_is_half_an_inch_round_the_body() -> None:
    outcome = work_out(BODY, DESIGN, Corrections((TakenIn(3, "waist", INCH / 4),)))
    assert PLAIN.level("waist").finished / INCH == pytest.approx(26)
    assert outcome.level("waist").finished / INCH == pytest.approx(25.5)
    assert outcome.level("waist").fabric / INCH == pytest.approx(23.5)
    assert outcome.level("bust") == PLAIN.level("bust")
    # an eighth off the front's side and an eighth off the back's, nothing off the others
    for panel, lost in enumerate((0, 0, 1 / 8, 1 / 8, 0, 0)):
        assert width(PLAIN, panel, "waist") - width(outcome, panel, "waist") == pytest.approx(lost, abs=1e-3)
    for quarter in ("front", "back"):
        before, after = PLAIN.line(quarter, "waist"), outcome.line(quarter, "waist")
        assert (after.needed - before.needed) / INCH == pytest.approx(1 / 8)
        assert after.closes


def test_an_inner_seam_is_taken_in_by_its_own_parts() -> None:
    seam = Seam(0.42, 0.42, 0.45, left_part=0.25, shares=(Share("waist", left_part=0.75),))
    design = replace(DESIGN, front=replace(DESIGN.front, seams=(seam, DESIGN.front.seams[1])))
    plain = work_out(BODY, design)
    outcome = work_out(
        BODY, design, Corrections((TakenIn(1, "waist", INCH), TakenIn(1, "underbust", -INCH / 2)))
    )
    for level, off in (("waist", (0.75, 0.25)), ("underbust", (-0.125, -0.375))):
        for panel in (0, 1):
            lost = width(plain, panel, level) - width(outcome, panel, level)  # type: ignore[arg-type]
            assert lost == pytest.approx(off[panel], abs=2e-3)
    assert outcome.level("underbust").finished / INCH == pytest.approx(32)
    assert outcome.level("underbust").fitted / INCH == pytest.approx(-1)


def test_letting_out_at_the_widest_level_moves_no_other_seam() -> None:
    outcome = work_out(BODY, DESIGN, Corrections((TakenIn(1, "bust", -INCH / 4),)))
    assert outcome.blocks == PLAIN.blocks
    assert outcome.line("front", "bust").needed / INCH == pytest.approx(-0.25)
    assert outcome.level("bust").finished / INCH == pytest.approx(36.5)
    for panel in (2, 3, 4, 5):
        assert width(outcome, panel, "bust") == pytest.approx(width(PLAIN, panel, "bust"), abs=1e-3)


def test_lengthening_moves_what_lies_above_and_keeps_every_width() -> None:
    outcome = work_out(BODY, DESIGN, Corrections(lengthened=(Lengthened("waist", INCH / 2),)))
    walks = {level.name: level.walk / INCH for level in outcome.levels}
    assert walks == pytest.approx({"top_hip": -4, "waist": 0, "underbust": 3.5, "bust": 6.5})
    for before, after in zip(drafted(PLAIN).seams, drafted(outcome).seams, strict=True):
        # the neckline runs above the underbust, so that every seam is half an inch longer
        assert (after.left_length - before.left_length) / INCH == pytest.approx(0.5, abs=0.01)
        assert after.hem_walk == pytest.approx(before.hem_walk, abs=1.0)
    for panel in range(6):
        for level in PLAIN.levels:
            assert width(outcome, panel, level.name) == pytest.approx(
                width(PLAIN, panel, level.name), abs=1e-3
            )


def test_shortening_below_the_waist_brings_the_hem_up_in_proportion() -> None:
    outcome = work_out(BODY, DESIGN, Corrections(lengthened=(Lengthened("top_hip", -INCH),)))
    assert outcome.level("top_hip").walk / INCH == pytest.approx(-3)
    assert outcome.level("waist").walk == 0
    before, after = drafted(PLAIN).hem.points, drafted(outcome).hem.points
    for one, other in zip(before, after, strict=True):
        assert other.t == pytest.approx(one.t * 3 / 4)
    assert drafted(outcome).neckline.seam_walks == pytest.approx(drafted(PLAIN).neckline.seam_walks, abs=0.5)


def test_points_beyond_the_uppermost_level_move_along() -> None:
    points = tuple(ShapePoint(u, t * INCH) for u, t in ((0.0, 7.0), (3.0, 6.5), (6.0, 7.0)))
    design = replace(DESIGN, neckline=points)
    outcome = work_out(BODY, design, Corrections(lengthened=(Lengthened("underbust", INCH / 4),)))
    assert [point.t / INCH for point in drafted(outcome).neckline.points] == pytest.approx([7.25, 6.75, 7.25])
    assert drafted(outcome).neckline.designed == points


def test_a_neckline_is_raised_where_it_is_pinned_and_stays_at_its_other_points() -> None:
    side = 3.0
    outcome = work_out(BODY, DESIGN, Corrections(raised=((Raised("neckline", side, 3 * INCH / 8),),)))
    before, after = drafted(PLAIN).neckline, drafted(outcome).neckline
    assert (after.seam_walks[3] - before.seam_walks[3]) / INCH == pytest.approx(3 / 8)
    for one, other in zip(before.points, after.points, strict=True):
        assert (other.t - one.t) / INCH == pytest.approx(3 / 8 if one.u == side else 0)
    assert drafted(outcome).hem.seam_walks == drafted(PLAIN).hem.seam_walks
    assert 0 < after.seam_walks[2] - before.seam_walks[2] < 3 * INCH / 8


def test_a_place_between_two_points_is_raised_by_so_much() -> None:
    seam = 4.0  # no point of the style's neckline
    pinned = Raised("neckline", seam, INCH / 2), Raised("hem", 5.0, -INCH / 4)
    outcome = work_out(BODY, DESIGN, Corrections(raised=(pinned,)))
    plain, lifted = drafted(PLAIN), drafted(outcome)
    higher = lifted.neckline.seam_walks[4] - plain.neckline.seam_walks[4]
    lower = lifted.hem.seam_walks[5] - plain.hem.seam_walks[5]
    assert (higher / INCH, lower / INCH) == pytest.approx((0.5, -0.25), abs=1e-3)
    assert lifted.neckline.points == plain.neckline.points
    assert lifted.neckline.seam_walks[3] == plain.neckline.seam_walks[3]
    assert lifted.neckline.seam_walks[0] == plain.neckline.seam_walks[0]


def test_raises_of_two_fittings_at_one_place_add_up() -> None:
    twice = Corrections(raised=((Raised("hem", 2.0, 5.0),), (Raised("hem", 2.0, 2.5),)))
    walks = drafted(work_out(BODY, DESIGN, twice)).hem.seam_walks
    assert walks[2] - drafted(PLAIN).hem.seam_walks[2] == pytest.approx(7.5, abs=1e-3)


def test_a_lift_takes_the_point_hardly_beside_it_along() -> None:
    points = tuple(ShapePoint(u, 150.0) for u in (0.0, 2.99, 6.0))
    design = replace(DESIGN, neckline=points)
    outcome = work_out(BODY, design, Corrections(raised=((Raised("neckline", 3.0, 10.0),),)))
    assert [point.t for point in drafted(outcome).neckline.points] == pytest.approx([150, 160, 150])


def test_what_is_designed_for_a_place_on_show() -> None:
    made = Corrections(
        lengthened=(Lengthened("waist", INCH),), raised=((Raised("neckline", 3.0, INCH / 2),),)
    )
    outcome = work_out(BODY, DESIGN, made)
    line = drafted(outcome).neckline
    for number, (shown, designed) in enumerate(zip(line.points, line.designed, strict=True)):
        assert walk_designed(outcome, shown.t, "neckline", number) == pytest.approx(designed.t)
    assert walk_designed(outcome, 2 * INCH) == pytest.approx(1.5 * INCH)
    assert walk_designed(PLAIN, 2 * INCH) == 2 * INCH


def test_comfort_judges_what_is_left() -> None:
    limits = Limits(waist_percent=10.0)
    made = Corrections((TakenIn(3, "waist", INCH / 2),))
    plain, outcome = comfort_of(PLAIN, limits), work_out(BODY, DESIGN, made)
    comfort = comfort_of(outcome, limits)
    assert plain.at("waist").status == "within"
    assert comfort.at("waist").status == "over"  # 3 in of 28, where 10 % is 2.8
    assert comfort.largest_reduction == pytest.approx(1.8 * INCH)
    said = next(f for f in comfort.findings if f.code == "waist_over").text("in")
    assert "besides the 1 in that fittings took in" in said
    most = take_the_most(DESIGN, comfort, INCH / 8)
    again = comfort_of(work_out(BODY, most, made), limits)
    assert again.at("waist").status != "over"
    assert most.reductions.waist == pytest.approx(1.75 * INCH)


def test_one_figure_hides_no_more_than_without_a_fitting() -> None:
    design: Design = replace(DESIGN, rule="one_figure")
    made = Corrections((TakenIn(2, "underbust", INCH / 4),))
    comforts = [comfort_of(work_out(BODY, design, fitted), Limits()) for fitted in (Corrections(), made)]
    told = [next(f for f in comfort.findings if f.code == "one_figure_hides") for comfort in comforts]
    hidden = [finding.lengths["real"] - finding.lengths["said"] for finding in told]
    assert hidden == pytest.approx([3 * INCH, 3 * INCH])


@pytest.mark.parametrize(
    ("made", "said"),
    [
        (
            Corrections((TakenIn(2, "waist", 150.0, "Line 1 of the fitting of 20 May 2031", "here"),)),
            "Line 1 of the fitting of 20 May 2031 takes in 5⅞ in at the front seam 2, waist: Front 2 is",
        ),
        (
            Corrections(lengthened=(Lengthened("waist", -80.0, "Line 3 of the fitting", "here"),)),
            "Line 3 of the fitting shortens by 3⅛ in between waist and underbust: nothing is left there.",
        ),
        (
            Corrections(lengthened=(Lengthened("waist", -73.0, "Line 3 of the fitting", "here"),)),
            "between waist and underbust: ⅛ in is left there.",
        ),
    ],
)
def test_what_cannot_be_is_refused_by_the_line_that_asks_for_it(made: Corrections, said: str) -> None:
    outcome = work_out(BODY, DESIGN, made)
    assert outcome.draft is None
    first = outcome.findings[0]
    assert said in first.text("in")
    assert first.place.field == "here"
    assert first.severity == "stop"


def test_a_line_moved_beyond_the_other_is_refused() -> None:
    made = Corrections(raised=((Raised("hem", 0.0, 300.0),),))
    finding = work_out(BODY, DESIGN, made).findings[0]
    assert finding.severity == "stop"
    assert "neckline" in finding.text("in")

"""What cannot be drafted is refused in words that name the place."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.draft.test_worked_sums import INCH, inch_body
from workbench.draft import Design, Finding, Reductions, Seam, ShapePoint, Share, usual_design, work_out

BODY = inch_body(bust=37, underbust=32, waist=29)


def stops(design: Design) -> list[Finding]:
    outcome = work_out(BODY, design)
    assert outcome.draft is None
    return [finding for finding in outcome.findings if finding.severity == "stop"]


def with_front_seam(**changes: object) -> Design:
    design = usual_design()
    first, *rest = design.front.seams
    return replace(design, front=replace(design.front, seams=(replace(first, **changes), *rest)))


def test_an_over_full_ledger_names_level_quarter_and_seam() -> None:
    (finding,) = stops(with_front_seam(shares=(Share("waist", pin_mm=4 * INCH),)))
    text = finding.text("in")
    assert finding.code == "ledger_over"
    assert "Waist, front" in text
    assert "front seam 1" in text
    assert finding.place.level == "waist"


def test_a_short_ledger_says_by_how_much() -> None:
    design = usual_design()
    pins = (Share("waist", pin_mm=INCH / 2),)
    front = replace(
        design.front,
        seams=tuple(replace(seam, shares=pins) for seam in design.front.seams),
        side_shares=pins,
    )
    finding = stops(replace(design, front=front))[0]
    assert finding.code == "ledger_short"
    assert "1 in short" in finding.text("in")


def test_crossing_edges_name_the_panel_the_level_and_both_seams() -> None:
    finding = stops(with_front_seam(lower=0.72, upper=0.72))[0]
    text = finding.text("in")
    assert finding.code == "edges_cross"
    assert "Front 2" in text
    assert "front seam 1" in text
    assert "front seam 2" in text


def test_a_sharp_flare_names_the_seam_and_two_levels_but_does_not_stop() -> None:
    body = inch_body(bust=54, underbust=32, waist=29)
    outcome = work_out(body, replace(usual_design("over_bust"), reductions=Reductions(waist=2 * INCH)))
    sharp = [finding for finding in outcome.findings if finding.code == "sharp_flare"]
    assert outcome.draft is not None
    assert sharp
    assert "between underbust and bust" in sharp[0].text("in")
    assert all(outcome.draft.seams[f.place.seam - 1].steepest > 0.5 for f in sharp if f.place.seam)


def test_levels_too_near_for_their_girths_are_refused_by_seam() -> None:
    body = inch_body(bust=66, underbust=30, waist=29)
    outcome = work_out(body, usual_design("over_bust"))
    assert outcome.draft is None
    assert {finding.code for finding in outcome.findings} <= {"too_steep", "edges_cross"}


def test_a_neckline_below_the_hem_names_the_seam() -> None:
    low = (ShapePoint(0, 90), ShapePoint(3, -110), ShapePoint(6, 90))
    text = stops(replace(usual_design(), neckline=low))[0].text("in")
    assert "side seam" in text
    assert "below the hem" in text


@pytest.mark.parametrize("u", [-1.0, 0.0, 6.0, 7.5, float("nan")])
def test_a_shape_point_out_of_order_is_named(u: float) -> None:
    line = (ShapePoint(0, 90), ShapePoint(u, 100), ShapePoint(6, 90))
    finding = stops(replace(usual_design(), neckline=line))[0]
    assert "neckline" in finding.text("in")
    assert finding.place.line == "neckline"


@pytest.mark.parametrize("t", [1e9, -1e9, float("nan"), float("inf")])
def test_a_shape_point_out_of_reach_is_named(t: float) -> None:
    line = (ShapePoint(0, 90), ShapePoint(2, t), ShapePoint(6, 90))
    finding = stops(replace(usual_design(), neckline=line))[0]
    assert "Point 2 of the neckline" in finding.text("in")
    assert finding.place.point == 1


def test_a_line_that_does_not_reach_the_centre_back_is_refused() -> None:
    assert stops(replace(usual_design(), hem=(ShapePoint(0, -90), ShapePoint(5, -90))))[0].code == "line_ends"


def test_too_little_girth_names_the_level() -> None:
    finding = stops(replace(usual_design(), reductions=Reductions(waist=27 * INCH)))[0]
    assert finding.code == "no_girth"
    assert finding.text("in").startswith("Waist: ")


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"opening_mm": float("nan")}, "opening_mm"),
        ({"opening_mm": -1.0}, "opening_mm"),
        ({"front_share": 0.95}, "front_share"),
        ({"reductions": Reductions(waist=float("inf"))}, "reductions.waist"),
    ],
)
def test_figures_that_make_no_sense_name_their_field(changes: dict[str, object], field: str) -> None:
    assert stops(replace(usual_design(), **changes))[0].place.field == field  # type: ignore[arg-type]


@pytest.mark.parametrize("place", [0.0, 1.0, -3.0, float("nan")])
def test_a_seam_outside_its_quarter_is_named(place: float) -> None:
    assert "front seam 1" in stops(with_front_seam(lower=place))[0].text("in")


@pytest.mark.parametrize("weight", [-1.0, float("nan"), float("inf")])
def test_a_weight_that_is_none_is_refused(weight: float) -> None:
    assert stops(with_front_seam(weight=weight))[0].code == "weight"


def test_five_panels_in_a_quarter_are_refused() -> None:
    design = usual_design()
    many = replace(design.front, seams=tuple(Seam(0.1 * n, 0.1 * n, 1) for n in range(1, 6)))
    assert stops(replace(design, front=many))[0].code == "panel_count"

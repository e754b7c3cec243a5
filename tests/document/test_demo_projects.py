"""Each demo opens, is marked as invented, and shows what it is there to show."""

from __future__ import annotations

from pathlib import Path

import pytest

from workbench.document import Picture, Project, picture_of, read_project, to_bytes

FOLDER = Path(__file__).parents[2] / "demo_projects"
NAMES = ("bride_first_wear", "concert_soloist", "drawn_in_too_far", "eight_panel_gown", "stage_dancer")


def demo(name: str) -> tuple[Project, Picture]:
    project = read_project(FOLDER / f"{name}.bodice")
    return project, picture_of(project)


def codes(picture: Picture, *severities: str) -> set[str]:
    return {finding.code for finding in picture.all_findings if finding.severity in severities}


def status(picture: Picture, level: str) -> str:
    assert picture.comfort is not None
    return next(j.status for j in picture.comfort.judgements if j.level == level)


def test_these_are_all_of_them() -> None:
    assert sorted(path.stem for path in FOLDER.glob("*.bodice")) == sorted(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_opens_as_it_was_written_drafts_and_says_it_is_invented(name: str) -> None:
    project, picture = demo(name)
    assert to_bytes(project) == (FOLDER / f"{name}.bodice").read_bytes()
    assert project.client.invented
    assert "(invented)" in project.client.name
    assert project.client.wish
    assert not picture.stopped
    assert picture.body is not None
    assert picture.body.checks == ()


@pytest.mark.parametrize("name", NAMES)
def test_nothing_else_to_attend_to_than_its_point(name: str) -> None:
    """Held by laces, each would pass a limit if they were drawn together; that is said and no more."""
    _, picture = demo(name)
    assert all(code.endswith("_laced_shut") for code in codes(picture, "attend"))
    assert not codes(picture, "stop")
    if name != "drawn_in_too_far":
        assert not codes(picture, "over")


@pytest.mark.parametrize("name", NAMES)
def test_every_seam_of_it_meets(name: str) -> None:
    cutting = demo(name)[1].cutting
    assert cutting is not None
    assert cutting.walks
    assert all(row.holds for row in cutting.walks)
    assert all(row.holds for row in cutting.angles)


@pytest.mark.parametrize("name", NAMES)
def test_all_of_it_can_be_laid_and_has_a_price(name: str) -> None:
    """Prices and hours are invented; nothing in a demo is priced at nothing by oversight."""
    _, picture = demo(name)
    assert picture.cloth_findings == ()
    assert all(lay.copies and lay.plan is not None and lay.plan.sound for lay in picture.lays)
    quote = picture.quote
    assert quote is not None
    assert quote.complete
    assert quote.findings == ()
    assert quote.sums.deposit + quote.sums.balance == quote.sums.price


def test_cloths_are_of_every_kind() -> None:
    cloths = {name: demo(name)[0].cloth("Fashion cloth") for name in NAMES}
    assert cloths["bride_first_wear"].run == "one_way"
    assert cloths["concert_soloist"].at_hand_mm > 0
    assert cloths["stage_dancer"].laid == "folded"
    assert cloths["eight_panel_gown"].repeat_mm > 0
    assert {demo(name)[0].quoting.currency.symbol for name in NAMES} == {"$", "€"}


def test_each_is_made_in_its_own_way() -> None:
    makings = {name: demo(name)[0].making for name in NAMES}
    assert makings["concert_soloist"].opening.closing == "loops"
    assert makings["concert_soloist"].boning.places == ("seams", "beside_opening", "centre_front")
    assert (makings["bride_first_wear"].front, makings["bride_first_wear"].opening.closing) == (
        "fold",
        "eyelets",
    )
    assert makings["eight_panel_gown"].front == "busk"
    assert makings["stage_dancer"].boning.stuff == "plastic"


def test_concert_soloist_breathes() -> None:
    project, picture = demo("concert_soloist")
    assert (project.design.style, project.design.rule) == ("over_bust", "own_figure")
    assert {"underbust_exhale", "underbust_inhale"} <= set(project.measurements)
    assert status(picture, "underbust") == status(picture, "waist") == "within"
    assert not codes(picture, "over", "near")
    assert not any("assumed" in finding.sentence for finding in picture.findings)


def test_stage_dancer_bends() -> None:
    project, picture = demo("stage_dancer")
    assert project.design.style == "under_bust"
    assert project.unit == "cm"
    assert {"seated_waist_girth", "waist_to_lap", "waist_to_thigh"} <= set(project.measurements)
    assert not codes(picture, "over", "near")
    assert picture.comfort is not None
    assert "seated" in picture.comfort.at("waist").reason


def test_bride_is_near_her_limit_with_a_neckline_of_her_own() -> None:
    project, picture = demo("bride_first_wear")
    assert project.design.style == "over_bust"
    assert (project.design.front.panel_count, project.design.back.panel_count) == (3, 3)
    assert project.design.neckline is not None
    assert status(picture, "waist") == "near"
    dip, peak = project.design.neckline[0].t, max(point.t for point in project.design.neckline)
    assert peak - dip > 40


def test_drawn_in_too_far_shows_what_a_quarter_hides() -> None:
    """Two inches a quarter are eight round the body, 23.5 % of 34 (common practice, no source)."""
    project, picture = demo("drawn_in_too_far")
    assert project.design.rule == "one_figure"
    assert {status(picture, "waist"), status(picture, "underbust")} == {"over"}
    assert picture.outcome is not None
    waist = picture.outcome.level("waist")
    assert waist.finished == pytest.approx(26 * 25.4)
    assert waist.percent == pytest.approx(23.53, abs=0.005)
    assert picture.findings[0].severity == "over"


def test_eight_panel_gown_is_the_largest() -> None:
    project, picture = demo("eight_panel_gown")
    assert project.design.style == "over_bust"
    assert project.design.panel_count == 8
    assert not codes(picture, "over", "near")


def test_inches_and_centimetres_both_occur() -> None:
    assert {demo(name)[0].unit for name in NAMES} == {"in", "cm"}

"""The shapes that come with the program: each can be drafted on bodies of every kind, and is what it says."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.draft.test_properties import check_draft
from tests.draft.test_real_bodies import ASTM, FOUR_SETS, bdims_women
from workbench.body import Length, complete
from workbench.document import Client, carried, picture_of, shape_of, to_bytes
from workbench.document.file import project_from
from workbench.document.style_carry import put_on
from workbench.draft import FEWEST_PANELS, MOST_PANELS
from workbench.styles import REFERENCE, REFERENCE_NAME, KeptShape, drawn_shapes

SHAPES = drawn_shapes()
NAMES = [shape.name for shape in SHAPES]
Taken = dict[str, float]


def lengths(taken: Taken) -> dict[str, Length]:
    return {key: Length(mm, repr(float(mm)), "mm") for key, mm in taken.items()}


def every_woman() -> Iterator[Taken]:
    """What was taken of the 260 women of bdims (Heinz and others 2003, J. Stat. Educ. 11(2); read)."""
    for body in bdims_women():
        yield {key: mm for key, mm in body.values.items() if key not in body.estimated}


def consistent_sets() -> Iterator[Taken]:
    """Four sets of clad-body 0.6.1 (read), and two sizes of ASTM D5585-11e1 (read)."""
    keys = ("bust_girth", "underbust_girth", "waist_girth", "hip_girth", "nape_to_waist")
    for cm in FOUR_SETS:
        yield {key: 10 * value for key, value in zip(keys, cm, strict=True)}
    keys_of_astm = ("bust_girth", "underbust_girth", "upper_chest_girth", "waist_girth")
    for inches in ASTM.values():
        yield {key: 25.4 * value for key, value in zip(keys_of_astm, inches, strict=True)}


def unusual() -> Iterator[Taken]:
    """Invented: a short and a long torso, a small bust, a large one, a straight body, a very curved one."""
    yield {"bust_girth": 880, "waist_girth": 680, "shoulder_to_waist": 370, "underarm_to_waist": 165}
    yield {"bust_girth": 920, "waist_girth": 720, "shoulder_to_waist": 500, "underarm_to_waist": 250}
    yield {"bust_girth": 780, "underbust_girth": 720, "waist_girth": 600, "hip_girth": 860}
    yield {"bust_girth": 1240, "underbust_girth": 980, "waist_girth": 900, "hip_girth": 1180}
    yield {"bust_girth": 900, "underbust_girth": 840, "waist_girth": 860, "hip_girth": 940}
    yield {"bust_girth": 1000, "underbust_girth": 800, "waist_girth": 650, "hip_girth": 1100}


def test_there_are_enough_to_choose_from_and_no_two_of_a_name() -> None:
    assert len(SHAPES) >= 10
    assert len(set(NAMES)) == len(NAMES)
    assert {shape.project.design.style for shape in SHAPES} == {"under_bust", "over_bust"}


@pytest.mark.parametrize("shape", SHAPES, ids=NAMES)
def test_each_is_a_sound_project_of_an_invented_body(shape: KeptShape) -> None:
    project = shape.project
    assert project_from(to_bytes(project)) == project
    assert (project.client.name, project.client.invented) == (REFERENCE_NAME, True)
    assert project.style_name == shape.name
    assert 0 < len(shape.purpose) <= 110
    assert all(FEWEST_PANELS <= count <= MOST_PANELS for count in shape.panels)


@pytest.mark.parametrize("shape", SHAPES, ids=NAMES)
def test_on_the_invented_body_nothing_is_above_or_near_a_limit(shape: KeptShape) -> None:
    picture = picture_of(shape.project)
    assert picture.outcome is not None
    assert check_draft(picture.outcome) is not None
    assert [finding.code for finding in picture.findings if finding.severity != "note"] == []


@pytest.mark.parametrize("shape", SHAPES, ids=NAMES)
@pytest.mark.parametrize("bodies", [consistent_sets, unusual])
def test_each_can_be_drafted_on_sets_and_sizes(shape: KeptShape, bodies: object) -> None:
    for taken in bodies():  # type: ignore[operator]
        project, findings = carried(shape.project, lengths(taken), "cm", Client())
        assert [finding.text("cm") for finding in findings if finding.severity == "stop"] == []
        outcome = picture_of(project).outcome
        assert outcome is not None
        assert check_draft(outcome) is not None


@pytest.mark.parametrize("shape", SHAPES, ids=NAMES)
def test_each_can_be_drafted_on_women_of_the_open_data(shape: KeptShape) -> None:
    """Every eighth woman, a different eighth for each shape; tried on all 260 by hand, none was stopped."""
    worked_out = shape_of(shape.project)
    for taken in list(every_woman())[NAMES.index(shape.name) % 8 :: 8]:
        _, findings = put_on(worked_out, lengths(taken), "cm", Client())
        stops = [finding.text("cm") for finding in findings if finding.severity == "stop"]
        assert stops == [], taken


@pytest.mark.parametrize("shape", SHAPES, ids=NAMES)
def test_an_inch_more_all_round_is_an_inch_more_in_the_panels(shape: KeptShape) -> None:
    """Grading (identity): one inch more of girth moves the half sum by half an inch."""
    body = complete({key: length.mm for key, length in REFERENCE.items()})
    every = dict(body.values)
    girths = {key: mm + 25.4 if key.endswith("_girth") else mm for key, mm in every.items()}

    def half_sums(taken: Taken) -> dict[str, float]:
        project, _ = carried(shape.project, lengths(taken), "in", Client())
        outcome = picture_of(project).outcome
        assert outcome is not None
        assert outcome.draft is not None
        return {level: 0.5 * girth for level, girth in outcome.draft.tape_girth.items()}

    before, after = half_sums(every), half_sums(girths)
    assert {level: after[level] - before[level] for level in before} == pytest.approx(
        dict.fromkeys(before, 12.7), abs=0.05
    )


def test_a_busk_is_part_of_the_shape_that_says_so() -> None:
    assert [shape.name for shape in SHAPES if shape.project.making.front == "busk"] == [
        "Under-bust with a busk"
    ]


def test_a_new_project_in_centimetres_has_its_cloths_in_centimetres() -> None:
    assert drawn_shapes("cm")[0].project.unit == "cm"
    assert drawn_shapes("cm")[0].project.cloths != SHAPES[0].project.cloths

"""Measurements by date: set aside, had back, told about, compared; nothing of them is lost on the way."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.document import example, projects
from workbench.body import BY_KEY, read_length
from workbench.document import Project, set_client, set_measurement, to_bytes
from workbench.document.file import project_from
from workbench.document.keeping import differences
from workbench.document.style_carry import carried
from workbench.document.taken import Taken
from workbench.document.taken_checks import MOST_EARLIER
from workbench.document.taken_compare import NOTABLE_MM, measure_changes
from workbench.document.taken_edits import measure_anew, remove_taken, set_taken, take_back, taken_now

SPRING, AUTUMN = "2031-04-02", "2031-10-09"


def twice() -> Project:
    """Measured in spring over a thin shirt, and again in autumn, an inch more at the waist."""
    first = set_client(example(), date=SPRING, measured_by="M.", worn="thin shirt")
    again = measure_anew(first, AUTUMN)
    return set_client(set_measurement(again, "waist_girth", "28 3/4"), worn="nothing")


def test_measuring_anew_sets_the_old_figures_aside_and_starts_from_them() -> None:
    first = set_client(example(), date=SPRING, measured_by="M.", worn="thin shirt")
    again = measure_anew(first, AUTUMN)
    assert again.earlier == (Taken(SPRING, "M.", "thin shirt", first.measurements),)
    assert (again.client.date, again.measurements) == (AUTUMN, first.measurements)


def test_later_figures_leave_the_earlier_ones_alone() -> None:
    project = twice()
    assert project.earlier[0].measurements["waist_girth"].typed == "27 3/4"
    assert project.measurements["waist_girth"].typed == "28 3/4"


def test_nothing_measured_is_nothing_to_set_aside() -> None:
    with pytest.raises(ValueError, match="Nothing has been measured yet"):
        measure_anew(Project(), AUTUMN)


def test_an_earlier_day_is_had_back_and_today_takes_its_place() -> None:
    project = twice()
    back = take_back(project, 0)
    assert taken_now(back) == project.earlier[0]
    assert back.earlier == (taken_now(project),)
    assert take_back(back, 0) == project


def test_days_lie_newest_first_and_unknown_days_last() -> None:
    project = measure_anew(measure_anew(set_client(twice(), date=""), SPRING), "2033-01-01")
    assert [taken.date for taken in project.earlier] == [SPRING, SPRING, ""]
    told = set_taken(project, 2, date="2032-02-02", measured_by="her sister")
    assert (told.earlier[0].date, told.earlier[0].measured_by) == ("2032-02-02", "her sister")


def test_a_day_is_removed_and_the_others_stay() -> None:
    project = measure_anew(twice(), "2032-05-05")
    assert [taken.date for taken in remove_taken(project, 0).earlier] == [SPRING]


@pytest.mark.parametrize("number", [-1, 1, 50])
def test_a_day_that_is_none_is_refused(number: int) -> None:
    for edit in (take_back, remove_taken):
        with pytest.raises(ValueError, match="no such earlier measurements"):
            edit(twice(), number)


def test_a_date_that_is_none_and_a_word_too_long_are_refused_by_name() -> None:
    with pytest.raises(ValueError, match="date must be written as year-month-day"):
        set_taken(twice(), 0, date="2031-02-30")
    with pytest.raises(ValueError, match="worn is longer than 200"):
        set_taken(twice(), 0, worn="x" * 201)
    with pytest.raises(ValueError, match="next fitting must be written as year-month-day"):
        set_client(example(), next_fitting="Friday")


def test_no_more_days_are_kept_than_a_file_may_have() -> None:
    full = replace(twice(), earlier=(taken_now(twice()),) * MOST_EARLIER)
    with pytest.raises(ValueError, match="remove one first"):
        measure_anew(full, AUTUMN)


_texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)
_lengths = st.integers(16, 400).map(lambda eighths: read_length(f"{eighths}/8", "in"))
_takens = st.lists(
    st.builds(
        Taken,
        st.just("") | st.dates().map(str),
        _texts,
        _texts,
        st.dictionaries(st.sampled_from(sorted(BY_KEY)), _lengths, max_size=6),
    ),
    min_size=1,
    max_size=4,
).map(tuple)


@given(projects, _takens, st.data())
@settings(max_examples=60, deadline=None)
def test_any_days_are_kept_in_the_file_and_a_swap_loses_none(
    project: Project, earlier: tuple[Taken, ...], data: st.DataObject
) -> None:
    project = replace(project, earlier=earlier)
    assert project_from(to_bytes(project)) == project
    back = take_back(project, data.draw(st.integers(0, len(earlier) - 1)))

    def days(one: Project) -> list[str]:
        kept = (taken for taken in (taken_now(one), *one.earlier) if taken.measurements)
        return sorted(map(repr, kept))

    assert days(back) == days(project) or not taken_now(back).measurements


# --- compared ----------------------------------------------------------------------------------


def taken(**figures: str) -> Taken:
    return Taken(measurements={key: read_length(text, "in") for key, text in figures.items()})


def test_a_difference_is_later_less_earlier_and_notable_from_a_bound_on() -> None:
    then = taken(waist_girth="28", bust_girth="38", shoulder_to_waist="17")
    now = taken(waist_girth="29", bust_girth="38 1/8", shoulder_to_waist="17 1/4")
    waist, length = (
        next(c for c in measure_changes(then, now) if c.key == key)
        for key in ("waist_girth", "shoulder_to_waist")
    )
    assert waist.difference == pytest.approx(25.4, abs=1e-9)
    assert (waist.notable, length.notable) == (True, True)
    assert [c.notable for c in measure_changes(then, now) if c.key == "bust_girth"] == [False]


@pytest.mark.parametrize(("kind", "bound"), NOTABLE_MM.items())
def test_the_bound_itself_is_notable(kind: str, bound: float) -> None:
    # ISO 20685, from memory: 9 mm in a large girth, 5 mm in a length of the body
    key = {"girth": "waist_girth", "length": "bust_span"}[kind]
    for far, notable in ((bound, True), (bound - 0.1, False)):
        one = Taken(measurements={key: read_length("200 mm", "cm")})
        other = Taken(measurements={key: read_length(f"{200 - far} mm", "cm")})
        assert measure_changes(one, other)[0].notable is notable


def test_what_was_taken_on_one_day_alone_has_no_difference() -> None:
    (row,) = measure_changes(taken(hip_girth="40"), Taken())
    assert (row.now, row.difference, row.notable) == (None, None, False)


def test_heights_of_levels_are_said_only_where_they_were_taken() -> None:
    lengths = {"shoulder_to_waist": "17", "shoulder_to_bust": "10 1/2", "waist_to_top_hip": "3 1/2"}
    then = taken(waist_girth="28", bust_girth="38", **lengths)
    now = taken(waist_girth="28", bust_girth="38", **lengths, shoulder_to_underbust="13 1/2")
    walks = {c.label: (c.then, c.now) for c in measure_changes(then, now) if c.part == "walk"}
    assert walks["Bust"] == pytest.approx((6.5 * 25.4, 6.5 * 25.4))
    assert walks["Top hip"] == pytest.approx((-3.5 * 25.4, -3.5 * 25.4))
    assert walks["Underbust"][0] is None
    assert walks["Underbust"][1] == pytest.approx(3.5 * 25.4)
    assert "Upper chest" not in walks


def test_figures_that_make_no_body_are_compared_all_the_same() -> None:
    assert [c.key for c in measure_changes(taken(bust_span="7"), taken(hip_girth="40"))] == [
        "bust_span",
        "hip_girth",
    ]


# --- among the rest ----------------------------------------------------------------------------


def test_another_client_is_not_told_of_them() -> None:
    project, _ = carried(twice(), example().measurements, "in", set_client(example(), name="B").client)
    assert (project.earlier, project.pictures, project.done, project.behind) == ((), (), (), None)


def test_they_are_named_where_two_states_differ() -> None:
    assert "Earlier measurements" in differences(example(), twice())

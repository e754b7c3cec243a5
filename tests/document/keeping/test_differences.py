"""What differs is said by the names of the form, in her unit, and nothing that is the same is named."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from tests.document import example, projects
from workbench.document import (
    Project,
    move_point,
    picture_of,
    set_client,
    set_limit,
    set_measurement,
    set_unit,
)
from workbench.document.keeping import Steps, differences


def test_a_length_is_said_as_typed_with_what_it_was() -> None:
    after = set_measurement(example(), "waist_girth", "28.125")
    assert differences(example(), after) == ("Waist: 28.125 in, was 27 3/4 in",)


def test_a_measurement_taken_off_is_not_taken() -> None:
    after = set_measurement(example(), "waist_girth", "")
    assert differences(example(), after) == ("Waist: not taken, was 27 3/4 in",)


def test_texts_are_cut_short_on_one_line() -> None:
    [line] = differences(example(), set_client(example(), notes="one\ntwo " + "x" * 200))
    assert line == f"Client, notes: “one two {'x' * 32}…”, was nothing"


def test_a_limit_has_the_name_it_has_on_the_form() -> None:
    assert differences(example(), set_limit(example(), "waist_percent", 8.0)) == ("Limit, waist reduction",)


def test_a_line_that_was_drawn_is_named_once() -> None:
    outcome = picture_of(example()).outcome
    assert outcome is not None
    assert outcome.draft is not None
    after = move_point(example(), "hem", 1, 1.0, -60.0, outcome.draft.hem.points)
    assert differences(example(), after) == ("Shape, hem",)


def test_the_unit_is_said_in_words() -> None:
    assert "Unit: “cm”, was “in”" in differences(example(), set_unit(example(), "cm", 8))


@given(projects, projects)
@settings(max_examples=30)
def test_whatever_differs_is_said_on_single_lines_and_nothing_else_is(one: Project, other: Project) -> None:
    lines = differences(one, other)
    assert bool(lines) == (one != other)
    assert differences(one, one) == ()
    assert all(line and "\n" not in line for line in lines)


@pytest.fixture
def states() -> list[Project]:
    return [set_client(example(), name=name) for name in ("", "A", "AB", "ABC")]


def test_steps_are_counted_by_name(states: list[Project]) -> None:
    steps = Steps(states[0])
    for state in states[1:]:
        steps.see(state, "Client")
        steps.see(state, "Client")
    assert steps.names == ("Client",) * 3


def test_undo_takes_steps_back_and_redo_makes_them_again(states: list[Project]) -> None:
    steps = Steps(states[0])
    for state in (*states[1:], states[1]):
        steps.see(state, "Client")
    assert len(steps.names) == 1
    steps.see(states[2], "Client")
    assert len(steps.names) == 2
    steps.see(states[0], "")
    assert steps.names == ()


def test_a_long_day_is_no_burden() -> None:
    first = example()
    steps = Steps(first)
    for number in range(1200):
        steps.see(set_client(first, name=str(number)), f"{number}")
    assert len(steps.names) <= 500
    assert steps.names[-1] == "1199"
    steps.see(first, "")
    assert steps.names == ()

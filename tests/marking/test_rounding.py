"""Lengths rounded together, and said."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.marking.reader import length
from workbench.marking import ROUNDINGS, Rounding, rounding_of, shared_out


@given(st.lists(st.floats(0, 400), min_size=1, max_size=16), st.sampled_from(list(ROUNDINGS.values())))
def test_the_sum_is_the_sum_rounded_once_and_no_length_moves_by_a_step(
    lengths: list[float], rounding: Rounding
) -> None:
    marked = shared_out(lengths, rounding.step)
    assert abs(sum(marked) - sum(lengths)) <= 0.5 * rounding.step + 1e-6
    for exact, rounded in zip(lengths, marked, strict=True):
        assert abs(rounded - exact) < rounding.step + 1e-6


def test_rounded_one_by_one_the_same_girth_would_not_close() -> None:
    # six panels of 3 1/16 in: each alone goes up, three eighths in all
    inch = 25.4
    widths = [3.0625 * inch] * 6
    eighth = ROUNDINGS["eighth"]
    assert sum(map(eighth.near, widths)) / inch == pytest.approx(18.75)
    assert sum(shared_out(widths, eighth.step)) / inch == pytest.approx(18.375)


def test_a_length_that_is_no_number_is_refused() -> None:
    with pytest.raises(ValueError, match="not finite"):
        shared_out([1.0, float("nan")], 1.0)


@given(st.floats(-600, 600), st.sampled_from(list(ROUNDINGS.values())))
def test_what_is_said_reads_back_as_what_is_marked(mm: float, rounding: Rounding) -> None:
    near = rounding.near(mm)
    assert length(rounding.say(near)) == pytest.approx(abs(near), abs=1e-9)
    assert abs(near - mm) <= 0.5 * rounding.step + 1e-6


@given(st.floats(0, 20), st.sampled_from(list(ROUNDINGS.values())))
def test_an_error_is_never_said_smaller_than_it_is(mm: float, rounding: Rounding) -> None:
    assert length(rounding.say_error(mm)) >= mm - 1e-4


def test_the_usual_rounding_follows_the_unit() -> None:
    assert [rounding_of("in", 8).name, rounding_of("in", 16).name, rounding_of("cm", 8).name] == [
        "eighth",
        "sixteenth",
        "mm",
    ]

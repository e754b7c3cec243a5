"""A cloth that cannot be is refused, the field named, in one sentence."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from math import inf, nan

import pytest

from tests.cloth.cutting_table import ONE, block
from workbench.cloth import Cloth, LayError, Solve, bottom_left, faults_of

GOOD = Cloth("Satin", ONE)
CROSSED = ((0.0, 0.0), (500.0, 500.0), (500.0, 0.0), (0.0, 500.0))


@pytest.mark.parametrize(
    ("field", "value", "words"),
    [
        ("width_mm", 0.0, "The width of Satin must be more than nothing."),
        ("width_mm", -5.0, "The width of Satin must be more than nothing."),
        ("width_mm", nan, "The width of Satin is not a number."),
        ("width_mm", inf, "The width of Satin is not a number."),
        ("selvedge_mm", -25.4, "The selvedge of Satin is −1 in; it must be from 0 in to"),
        ("selvedge_mm", 600.0, "The selvedges of Satin leave none of its width to use."),
        ("gap_mm", -1.0, "The gap between pieces of Satin is"),
        ("repeat_mm", -1.0, "The repeat of the print of Satin is"),
        ("at_hand_mm", -1.0, "The length at hand of Satin is"),
        ("tilt_degrees", 46.0, "The tilt off the grain of Satin must be from 0 to 45 degrees."),
        ("shrinkage_percent", 51.0, "The shrinkage of Satin must be from 0 to 50 %."),
        ("price", Decimal(-1), "The price of Satin must be nothing or more."),
        ("price", Decimal("NaN"), "The price of Satin must be nothing or more."),
        ("remnant", CROSSED, "The outline of the remnant of Satin crosses itself."),
        ("remnant", ((0.0, 0.0), (1.0, 1.0)), "The remnant of Satin needs three corners or more."),
        ("remnant", ((0.0, 0.0), (500.0, 0.0), (500.0, nan)), "The remnant of Satin needs three corners"),
    ],
)
def test_the_field_is_named(field: str, value: object, words: str) -> None:
    cloth = replace(GOOD, **{field: value})  # type: ignore[arg-type]
    (fault,) = faults_of(cloth)
    assert fault.place.field == field
    assert fault.text("in").startswith(words)
    with pytest.raises(LayError) as refused:
        bottom_left([block("A", 10.0, 10.0)], cloth)
    assert str(refused.value) == fault.text("in")


def test_a_remnant_is_laid_single() -> None:
    cloth = replace(GOOD, laid="folded", remnant=((0.0, 0.0), (500.0, 0.0), (500.0, 500.0)))
    assert "can only be laid single" in faults_of(cloth)[0].text("in")


def test_a_remnant_beyond_the_width_is_refused() -> None:
    cloth = replace(GOOD, remnant=((5000.0, 0.0), (5500.0, 0.0), (5500.0, 500.0)))
    with pytest.raises(LayError, match="outside the usable width"):
        bottom_left([block("A", 10.0, 10.0)], cloth)


def test_a_search_is_not_started_on_a_cloth_that_cannot_be() -> None:
    with pytest.raises(LayError, match="width of Satin"):
        Solve([block("A", 10.0, 10.0)], replace(GOOD, width_mm=0.0))


def test_a_good_cloth_has_no_fault() -> None:
    assert faults_of(GOOD) == ()

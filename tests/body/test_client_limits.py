"""The limits she sets for one client, their sources, and the cautions."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest
from pydantic import TypeAdapter, ValidationError

from workbench.body import (
    CAUTION_SHORT,
    CAUTIONS,
    LIMIT_TABLE,
    WEARER_CAUTIONS,
    Length,
    LimitRow,
    Limits,
    limit_problem,
)

INCH = 25.4
WOMEN = ((3.7, 490), (1.7, 228))
"""Mean girth difference from full exhale to full inhale at the lower ribs, cm, and number of women."""
MIXED = ((3.99, 251), (6.4, 53))
"""The same in mixed groups. The four include Derasse 2021, Respir Care 66(4):661, and Debouche 2016."""


def test_every_limit_has_a_row() -> None:
    assert [row.key for row in LIMIT_TABLE] == [field.name for field in fields(Limits)]


def test_the_defaults_of_the_table_are_those_of_the_limits() -> None:
    assert {row.key: row.default for row in LIMIT_TABLE} == {
        field.name: getattr(Limits(), field.name) for field in fields(Limits)
    }


def test_the_waist_default_is_the_published_one() -> None:
    """Gau 1998, dissertation, Iowa State University, abstract: no more than 10 % of the natural waist."""
    assert Limits().waist_percent == 10
    assert "Gau 1998" in row_of("waist_percent").source


def test_the_assumed_breath_lies_between_the_means_that_were_measured() -> None:
    pooled = sum(mean * count for mean, count in (*WOMEN, *MIXED)) / sum(
        count for _, count in (*WOMEN, *MIXED)
    )
    assert Limits().breathing_assumed_mm == pytest.approx(10 * pooled, abs=7)
    assert 10 * WOMEN[1][0] < Limits().breathing_assumed_mm < 10 * MIXED[1][0]


def test_the_other_defaults_are_common_practice_and_say_so() -> None:
    """Common practice, no source: 1½ in above the lap, 1 in below the armpit, none at the hip bones."""
    limits = Limits()
    assert limits.lap_clearance_mm == pytest.approx(1.5 * INCH)
    assert limits.underarm_clearance_mm == limits.thigh_clearance_mm == INCH
    assert (limits.top_hip_reduction_mm, limits.breathing_share) == (0, 0.5)
    practice = {row.key for row in LIMIT_TABLE if row.source.endswith("common practice, no source")}
    assert practice == {row.key for row in LIMIT_TABLE} - {"waist_percent", "breathing_assumed_mm"}


def row_of(key: str) -> LimitRow:
    return next(row for row in LIMIT_TABLE if row.key == key)


@pytest.mark.parametrize("row", LIMIT_TABLE, ids=lambda row: row.key)
def test_a_limit_may_be_anything_in_its_range_and_nothing_else(row: LimitRow) -> None:
    def problem(value: float) -> str | None:
        return limit_problem(replace(Limits(), **{row.key: value}))

    assert problem(row.default) is problem(row.low) is problem(row.high) is None
    for value in (row.low - 0.01, row.high + 0.01, 1e9):
        assert (problem(value) or "").startswith(f"{row.label} must be between ")
    assert problem(float("nan")) == problem(float("inf")) == f"{row.label} is not a number."


@pytest.mark.parametrize(
    ("limits", "unit", "text"),
    [
        (Limits(waist_percent=60), "in", "Waist reduction must be between 0 % and 50 %: 60 % is not."),
        (Limits(breathing_share=-0.5), "in", "Breath left free must be between 0 % and 100 %: −50 % is not."),
        (
            Limits(lap_clearance_mm=254),
            "in",
            "Clear of the lap must be between 0 in and 7.874 in: 10 in is not.",
        ),
        (
            Limits(lap_clearance_mm=254),
            "cm",
            "Clear of the lap must be between 0 cm and 20 cm: 25.4 cm is not.",
        ),
    ],
)
def test_a_limit_out_of_range_is_named(limits: Limits, unit: str, text: str) -> None:
    assert limit_problem(limits, "in" if unit == "in" else "cm") == text


def test_a_file_may_hold_no_limit_nobody_knows() -> None:
    reader = TypeAdapter(Limits)
    assert reader.validate_python({"waist_percent": 8.0}) == Limits(waist_percent=8.0)
    with pytest.raises(ValidationError):
        reader.validate_python({"waist_percent": 8.0, "weist_percent": 12.0})


def test_a_file_may_hold_no_length_with_more_to_it() -> None:
    reader = TypeAdapter(Length)
    whole = {"mm": 241.3, "typed": "9 1/2", "unit": "in"}
    assert reader.validate_python(whole) == Length(241.3, "9 1/2", "in")
    with pytest.raises(ValidationError):
        reader.validate_python({**whole, "about": 1})


@pytest.mark.parametrize(
    "word",
    [
        "short of breath",
        "faint",
        "numb",
        "pain",
        "sleep",
        "exercise",
        "pregnancy",
        "operation",
        "birth",
        "asthma",
        "heart",
        "blood pressure",
        "stomach",
        "bones",
        "under 18",
        "doctor",
        "limits you set",
        "reflux",
    ],
)
def test_every_usual_caution_is_given(word: str) -> None:
    assert word in " ".join(CAUTIONS)


def test_the_cautions_are_single_sentences() -> None:
    assert all(
        caution.endswith(".") and ". " not in caution
        for caution in (*CAUTIONS, *WEARER_CAUTIONS, CAUTION_SHORT)
    )
    assert len(WEARER_CAUTIONS) == len(CAUTIONS)
    assert "doctor" in CAUTION_SHORT


def test_no_text_calls_anything_safe() -> None:
    texts = (
        *CAUTIONS,
        *WEARER_CAUTIONS,
        CAUTION_SHORT,
        *(f"{row.label} {row.how} {row.source}" for row in LIMIT_TABLE),
    )
    assert not any("safe" in text.lower() for text in texts)

"""The table of measurements against what has been measured on women."""

from __future__ import annotations

import pytest

from workbench.body import BY_KEY, LEVEL_GIRTH, LEVEL_LABEL, LEVELS, MEASUREMENTS

GIRTHS = {"bust_girth", "underbust_girth", "waist_girth", "top_hip_girth", "upper_chest_girth"}
OPTIONAL_GIRTHS = {"hip_girth", "seated_waist_girth", "underbust_exhale", "underbust_inhale", "armscye_girth"}
LENGTHS = {
    "shoulder_to_bust",
    "shoulder_to_underbust",
    "shoulder_to_waist",
    "bust_span",
    "waist_to_top_hip",
    "underarm_to_waist",
    "nape_to_waist",
}
OPTIONAL_LENGTHS = {"waist_to_lap", "waist_to_thigh"}

BDIMS = {"waist_girth": (580, 950), "hip_girth": (818, 1121), "upper_chest_girth": (741, 1059)}
"""1st and 99th percentile of 260 women, mm: Heinz, Peterson, Johnson, Kerk 2003, J. Stat. Educ. 11(2);
its chest girth is taken above the breasts."""
SPANISH = {"bust_girth": (764, 1278), "waist_girth": (623, 1220), "hip_girth": (870, 1375)}
"""1st and 99th percentile of 600 women, mm: Spanish women's apparel survey, CRAN package Anthropometry."""
ANSUR = {"nape_to_waist": (365, 494), "waist_to_top_hip": (31, 96), "underarm_to_waist": (212, 310)}
"""1st and 99th percentile of 1,986 women, mm: ANSUR II, US Army 2012. Its waist is at the navel, below
the cord; the middle row is the 10th rib to the hip bone, about what lies below the cord."""
ASTM_UNDERBUST = (36.25 - 6.25, 42.125 - 6.375)
"""Underbust of sizes 8 and 16, inches: ASTM D5585-11e1, table 1."""


def test_every_measurement_is_there_once() -> None:
    keys = [row.key for row in MEASUREMENTS]
    assert set(keys) == GIRTHS | OPTIONAL_GIRTHS | LENGTHS | OPTIONAL_LENGTHS
    assert len(keys) == len(set(keys))


def test_it_can_be_looked_up_by_key() -> None:
    assert list(BY_KEY.values()) == list(MEASUREMENTS)
    assert all(row.key == key for key, row in BY_KEY.items())


def test_no_two_labels_can_be_mistaken() -> None:
    assert len({row.label.lower() for row in MEASUREMENTS}) == len(MEASUREMENTS)


def test_girths_and_lengths_are_told_apart() -> None:
    assert {row.key for row in MEASUREMENTS if row.kind == "girth"} == GIRTHS | OPTIONAL_GIRTHS


def test_only_what_a_draft_can_do_without_is_optional() -> None:
    assert {row.key for row in MEASUREMENTS if row.optional} == OPTIONAL_GIRTHS | OPTIONAL_LENGTHS


def test_bust_and_waist_are_needed() -> None:
    assert {row.key for row in MEASUREMENTS if row.needed} == {"bust_girth", "waist_girth"}


@pytest.mark.parametrize("key", BY_KEY)
def test_how_to_take_it_is_two_sentences(key: str) -> None:
    how = BY_KEY[key].how
    assert how.endswith(".")
    assert how.count(". ") == 1


def test_the_waist_says_which_waist() -> None:
    assert "cord" in BY_KEY["waist_girth"].how


@pytest.mark.parametrize("key", BY_KEY)
def test_every_range_says_where_it_comes_from(key: str) -> None:
    source = BY_KEY[key].source
    assert any(word in source for word in ("read", "from memory", "common practice, no source", "abstracts"))


@pytest.mark.parametrize(
    ("key", "low", "high"),
    [(key, *percentiles) for source in (BDIMS, SPANISH, ANSUR) for key, percentiles in source.items()],
)
def test_a_range_is_wider_than_one_to_ninety_nine_in_a_hundred(key: str, low: float, high: float) -> None:
    row = BY_KEY[key]
    assert row.low_mm <= 0.98 * low
    assert row.high_mm >= 1.02 * high


@pytest.mark.parametrize("inches", ASTM_UNDERBUST)
def test_the_underbust_range_holds_the_handbook_sizes(inches: float) -> None:
    row = BY_KEY["underbust_girth"]
    assert row.low_mm < 25.4 * inches < row.high_mm


@pytest.mark.parametrize(("key", "median"), [("bust_girth", 934), ("waist_girth", 832), ("hip_girth", 1032)])
def test_the_wrong_side_of_the_tape_falls_outside_the_range(key: str, median: float) -> None:
    """Medians of the Spanish apparel survey, in mm: inches noted as centimetres, and the other way."""
    row = BY_KEY[key]
    assert median / 2.54 < row.low_mm
    assert median * 2.54 > row.high_mm


def test_every_level_has_a_name_and_a_girth() -> None:
    assert LEVELS == ("top_hip", "waist", "underbust", "bust", "upper_chest")
    assert list(LEVEL_LABEL) == list(LEVEL_GIRTH) == list(LEVELS)
    assert set(LEVEL_GIRTH.values()) == GIRTHS

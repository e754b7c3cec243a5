"""Estimates for what was not taken, against published measurements of women."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from workbench.body import BY_KEY, LEAST_GAP_MM, LEVELS, BodyError, LevelName, complete, girths, walks

INCH = 25.4

FOUR_SETS = [
    (924, 805, 715, 969, 410),
    (958, 841, 789, 1022, 397),
    (976, 836, 822, 1082, 390),
    (1127, 990, 1067, 1206, 388),
]
"""Bust, underbust, waist, hip, nape to waist in mm: the test data of PyPI's clad-body 0.6.1."""

ASTM = [(36.25, 30.0, 35.875, 28.0), (42.125, 35.75, 40.625, 34.5)]
"""Bust, underbust, upper chest, waist (curvy) in inches: ASTM D5585-11e1, table 1, sizes 8 and 16."""

WAIST_AND_HIP = [(605, 858), (683, 950), (850, 1081), (670, 911), (832, 1032), (1126, 1262)]
"""5th, 50th and 95th percentiles, mm: bdims (Heinz and others 2003, J. Stat. Educ. 11(2)), then the
Spanish women's apparel survey (CRAN package Anthropometry)."""

DRAFT_KEYS = {row.key for row in BY_KEY.values() if not row.optional}
GIRTHS = {"waist_girth": 740.0, "bust_girth": 960.0}


@pytest.mark.parametrize(("bust", "underbust", "waist", "hip", "nape"), FOUR_SETS)
def test_underbust_of_a_measured_woman(
    bust: float, underbust: float, waist: float, hip: float, nape: float
) -> None:
    body = complete({"bust_girth": bust, "waist_girth": waist})
    assert body.value("underbust_girth") == pytest.approx(underbust, abs=25)


@pytest.mark.parametrize(("bust", "underbust", "chest", "waist"), ASTM)
def test_girths_of_a_handbook_size(bust: float, underbust: float, chest: float, waist: float) -> None:
    """To an inch and a quarter at the underbust, five eighths at the upper chest."""
    body = complete({"bust_girth": bust * INCH, "waist_girth": waist * INCH})
    assert body.value("underbust_girth") == pytest.approx(underbust * INCH, abs=1.25 * INCH)
    assert body.value("upper_chest_girth") == pytest.approx(chest * INCH, abs=0.625 * INCH)


@pytest.mark.parametrize(("bust", "underbust", "chest", "waist"), ASTM)
def test_bust_of_a_handbook_size_from_what_was_taken_instead(
    bust: float, underbust: float, chest: float, waist: float
) -> None:
    """bdims has no bust girth; its chest girth stands in."""
    from_chest = complete({"upper_chest_girth": chest * INCH, "waist_girth": waist * INCH})
    from_ribs = complete({"underbust_girth": underbust * INCH, "waist_girth": waist * INCH})
    assert from_chest.value("bust_girth") == pytest.approx(bust * INCH, abs=0.625 * INCH)
    assert from_ribs.value("bust_girth") == pytest.approx(bust * INCH, abs=1.5 * INCH)


@pytest.mark.parametrize(("waist", "hip"), WAIST_AND_HIP)
def test_top_hip_without_a_hip_is_close_to_top_hip_with_it(waist: float, hip: float) -> None:
    guessed = complete({"bust_girth": 960, "waist_girth": waist}).value("top_hip_girth")
    told = complete({"bust_girth": 960, "waist_girth": waist, "hip_girth": hip}).value("top_hip_girth")
    assert guessed == pytest.approx(told, abs=27)


@pytest.mark.parametrize(("bust", "underbust", "waist", "hip", "nape"), FOUR_SETS)
def test_top_hip_lies_between_waist_and_hip(
    bust: float, underbust: float, waist: float, hip: float, nape: float
) -> None:
    body = complete({"bust_girth": bust, "waist_girth": waist, "hip_girth": hip})
    assert waist < body.value("top_hip_girth") < hip


def test_nape_to_waist_is_the_mean_of_the_four_sets() -> None:
    mean = sum(row[4] for row in FOUR_SETS) / len(FOUR_SETS)
    assert complete(GIRTHS).value("nape_to_waist") == pytest.approx(mean, abs=5)


@pytest.mark.parametrize("nape", [row[4] for row in FOUR_SETS])
def test_heights_of_a_measured_back_lie_below_the_navel_heights_of_soldiers(nape: float) -> None:
    """ANSUR II, 1,986 women: 1 to 99 % armpit to navel 212 to 310 mm, 10th rib to hip bone 31 to 96 mm.

    The cord settles above the navel, 20 to 80 mm (from memory), and the top hip is at the hip bone.
    """
    walk = walks(complete({**GIRTHS, "nape_to_waist": nape}))
    assert 212 - 80 < walk["upper_chest"] < 310 - 20
    assert 31 < -walk["top_hip"] < 96


def test_the_top_hip_lies_where_the_standard_says() -> None:
    """ISO 8559-1: 80 to 100 mm below the waist (from memory)."""
    assert 80 <= complete(GIRTHS).value("waist_to_top_hip") <= 100


def test_everything_a_draft_needs_is_there() -> None:
    assert set(complete(GIRTHS).values) == DRAFT_KEYS


def test_estimates_are_never_mistaken_for_taken_ones() -> None:
    body = complete({**GIRTHS, "hip_girth": 1000})
    assert body.estimated == DRAFT_KEYS - {"waist_girth", "bust_girth"}
    assert (body.taken("waist_girth"), body.taken("bust_span"), body.taken("hip_girth")) == (740, None, 1000)


def test_what_is_optional_is_left_out_rather_than_estimated() -> None:
    body = complete(GIRTHS)
    assert body.taken("underbust_exhale") is None
    with pytest.raises(KeyError):
        body.value("underbust_exhale")


def test_a_resting_underbust_lies_midway_in_her_breath() -> None:
    breath = {"underbust_exhale": 790, "underbust_inhale": 850}
    assert complete({**GIRTHS, **breath}).value("underbust_girth") == 820


@pytest.mark.parametrize(
    ("taken", "underbust"), [({"underbust_exhale": 790}, 810), ({"underbust_inhale": 850}, 830)]
)
def test_half_a_breath_is_assumed_where_only_one_end_was_taken(
    taken: dict[str, float], underbust: float
) -> None:
    """Half of 4 cm, from four studies of the lower ribs (Derasse 2021, Respir Care 66(4):661, and others)."""
    assert complete({**GIRTHS, **taken}).value("underbust_girth") == underbust


def test_an_estimated_bust_is_never_below_the_underbust() -> None:
    body = complete({"waist_girth": 740, "underbust_girth": 1000, "upper_chest_girth": 700})
    assert body.value("bust_girth") >= 1000


def test_the_levels_of_an_estimated_body_run_upwards() -> None:
    walk = walks(complete(GIRTHS))
    assert list(walk) == list(LEVELS)
    assert all(walk[upper] - walk[lower] > 35 for lower, upper in pairwise(LEVELS))


def test_girths_come_by_level() -> None:
    taken = {"top_hip_girth": 930, "waist_girth": 740, "underbust_girth": 800, "bust_girth": 960}
    assert girths(complete({**taken, "upper_chest_girth": 920})) == {
        "top_hip": 930,
        "waist": 740,
        "underbust": 800,
        "bust": 960,
        "upper_chest": 920,
    }


def test_walks_are_differences_of_the_tape_from_the_shoulder() -> None:
    lengths = {
        "shoulder_to_bust": 270,
        "shoulder_to_underbust": 350,
        "shoulder_to_waist": 440,
        "underarm_to_waist": 210,
        "waist_to_top_hip": 95,
    }
    assert walks(complete({**GIRTHS, **lengths})) == {
        "top_hip": -95,
        "waist": 0,
        "underbust": 90,
        "bust": 170,
        "upper_chest": 210,
    }


@pytest.mark.parametrize(
    "key",
    ["shoulder_to_bust", "shoulder_to_underbust", "shoulder_to_waist", "nape_to_waist", "underarm_to_waist"],
)
def test_one_longer_length_makes_the_whole_torso_longer(key: str) -> None:
    usual = complete(GIRTHS)
    long = complete({**GIRTHS, key: 1.1 * usual.value(key)})
    for other in (
        "shoulder_to_bust",
        "shoulder_to_waist",
        "underarm_to_waist",
        "nape_to_waist",
        "waist_to_top_hip",
    ):
        assert long.value(other) == pytest.approx(1.1 * usual.value(other), rel=0.001)


def test_the_bust_span_follows_the_bust() -> None:
    """A fifth of the bust: common practice, no source."""
    assert complete({**GIRTHS, "bust_girth": 1000}).value("bust_span") == 200


HEIGHTS = [
    "shoulder_to_bust",
    "shoulder_to_underbust",
    "shoulder_to_waist",
    "underarm_to_waist",
    "nape_to_waist",
]


@given(
    st.dictionaries(st.sampled_from([*HEIGHTS, "waist_to_top_hip"]), st.floats(1, 700)),
    st.dictionaries(
        st.sampled_from(["bust_girth", "underbust_girth", "upper_chest_girth"]), st.floats(1, 2500)
    ),
    st.floats(1, 2500),
)
def test_whatever_was_taken_the_levels_are_in_order_or_it_is_refused(
    lengths: dict[str, float], girth: dict[str, float], waist: float
) -> None:
    taken = {**lengths, **girth, "waist_girth": waist}
    assume(girth)
    try:
        body = complete(taken)
    except BodyError as error:
        assume(error.key not in lengths)
        raise
    assert in_order(walks(body))
    assert all(body.value(key) == mm == body.taken(key) for key, mm in taken.items())
    assert all(mm > 0 for mm in body.values.values())


def in_order(walk: dict[LevelName, float]) -> bool:
    return all(walk[upper] - walk[lower] >= LEAST_GAP_MM - 1e-6 for lower, upper in pairwise(LEVELS))


@pytest.mark.parametrize(
    "lengths",
    [
        {"shoulder_to_bust": 420, "shoulder_to_waist": 430},
        {"underarm_to_waist": 15},
        {"underarm_to_waist": 20, "shoulder_to_underbust": 420, "shoulder_to_waist": 430},
        {"nape_to_waist": 100, "shoulder_to_underbust": 500},
        {"nape_to_waist": 100, "shoulder_to_underbust": 500, "underarm_to_waist": 200},
        {"nape_to_waist": 600, "shoulder_to_bust": 250, "underarm_to_waist": 150},
        {"nape_to_waist": 1},
    ],
)
def test_an_estimate_gives_way_where_there_is_little_room(lengths: dict[str, float]) -> None:
    assert in_order(walks(complete({**GIRTHS, **lengths})))


@given(st.dictionaries(st.sampled_from(HEIGHTS), st.floats(0.9, 1.1)))
def test_a_body_near_the_usual_one_is_completed_near_it(factors: dict[str, float]) -> None:
    usual = complete(GIRTHS)
    try:
        body = complete({**GIRTHS, **{key: factor * usual.value(key) for key, factor in factors.items()}})
    except BodyError:
        assume(False)
    for key in HEIGHTS:
        assert 0.5 * usual.value(key) < body.value(key) < 2.0 * usual.value(key)


def test_the_same_measurements_give_the_same_body() -> None:
    taken = {**GIRTHS, "nape_to_waist": 397.0, "shoulder_to_bust": 268.0}
    assert complete(taken) == complete(dict(reversed(taken.items())))

"""Unlikely figures: she is asked to check them and is never stopped."""

from __future__ import annotations

import pytest

from workbench.body import BY_KEY, Check, Measurement, checks_of, complete

INCH = 25.4
SOUND = {
    "bust_girth": 960.0,
    "underbust_girth": 820.0,
    "waist_girth": 740.0,
    "top_hip_girth": 900.0,
    "upper_chest_girth": 930.0,
    "hip_girth": 1000.0,
    "seated_waist_girth": 780.0,
    "underbust_exhale": 800.0,
    "underbust_inhale": 850.0,
    "armscye_girth": 420.0,
    "shoulder_to_bust": 265.0,
    "shoulder_to_underbust": 345.0,
    "shoulder_to_waist": 430.0,
    "bust_span": 190.0,
    "waist_to_top_hip": 90.0,
    "underarm_to_waist": 205.0,
    "nape_to_waist": 400.0,
    "waist_to_lap": 190.0,
    "waist_to_thigh": 150.0,
}


def asked(**changed: float) -> list[tuple[str, str | None, str]]:
    return [(check.key, check.other, check.code) for check in checks_of({**SOUND, **changed})]


def test_a_sound_body_is_asked_nothing() -> None:
    assert set(SOUND) == set(BY_KEY)
    assert complete(SOUND).checks == ()


@pytest.mark.parametrize(
    "taken",
    [
        {
            "bust_girth": 924,
            "underbust_girth": 805,
            "waist_girth": 715,
            "hip_girth": 969,
            "nape_to_waist": 410,
        },
        {
            "bust_girth": 958,
            "underbust_girth": 841,
            "waist_girth": 789,
            "hip_girth": 1022,
            "nape_to_waist": 397,
        },
        {
            "bust_girth": 976,
            "underbust_girth": 836,
            "waist_girth": 822,
            "hip_girth": 1082,
            "nape_to_waist": 390,
        },
        {
            "bust_girth": 1127,
            "underbust_girth": 990,
            "waist_girth": 1067,
            "hip_girth": 1206,
            "nape_to_waist": 388,
        },
    ],
)
def test_measured_women_are_asked_nothing(taken: dict[str, float]) -> None:
    """The four consistent sets in the test data of PyPI's clad-body 0.6.1."""
    assert complete(taken).checks == ()


@pytest.mark.parametrize(
    ("changed", "key", "other"),
    [
        ({"waist_girth": 910, "seated_waist_girth": 920}, "waist_girth", "top_hip_girth"),
        ({"top_hip_girth": 1010}, "top_hip_girth", "hip_girth"),
        (
            {"underbust_girth": 970, "underbust_inhale": 980, "underbust_exhale": 940},
            "underbust_girth",
            "bust_girth",
        ),
        ({"upper_chest_girth": 1020}, "upper_chest_girth", "bust_girth"),
        ({"seated_waist_girth": 730}, "seated_waist_girth", "waist_girth"),
        ({"underbust_girth": 790}, "underbust_girth", "underbust_exhale"),
        ({"underbust_girth": 860}, "underbust_girth", "underbust_inhale"),
        ({"underbust_inhale": 930}, "underbust_inhale", "underbust_exhale"),
        ({"bust_span": 325}, "bust_span", "bust_girth"),
        ({"shoulder_to_bust": 350}, "shoulder_to_bust", "shoulder_to_underbust"),
        ({"shoulder_to_underbust": 431}, "shoulder_to_underbust", "shoulder_to_waist"),
        ({"underarm_to_waist": 325, "nape_to_waist": 320}, "underarm_to_waist", "nape_to_waist"),
        ({"underarm_to_waist": 325, "shoulder_to_waist": 322}, "underarm_to_waist", "shoulder_to_waist"),
    ],
)
def test_two_that_contradict_each_other(changed: dict[str, float], key: str, other: str) -> None:
    assert (key, other) in [(found, against) for found, against, _ in asked(**changed)]


def test_a_breath_of_nothing() -> None:
    asked_about = asked(underbust_inhale=820, underbust_exhale=820)
    assert asked_about == [("underbust_inhale", "underbust_exhale", "no_breath")]


def test_a_waist_above_everything_is_asked_about_with_each() -> None:
    """Real women have it: 1 in 100 of the Spanish apparel survey has no more bust than waist."""
    found = complete(
        {"waist_girth": 1067, "bust_girth": 1000, "hip_girth": 1030, "top_hip_girth": 1020}
    ).checks
    assert [check.other for check in found] == ["top_hip_girth", "hip_girth", "bust_girth"]


@pytest.mark.parametrize("row", BY_KEY.values(), ids=lambda row: row.key)
def test_outside_its_range(row: Measurement) -> None:
    key, low, high = row.key, row.low_mm, row.high_mm
    assert checks_of({key: low}) == checks_of({key: high}) == ()
    assert checks_of({key: low - 1}) == (Check(key, None, "low", low - 1, low),)
    assert checks_of({key: high + 1}) == (Check(key, None, "high", high + 1, high),)


def test_an_estimate_is_never_asked_about() -> None:
    assert complete({"waist_girth": 1000, "underbust_girth": 700}).checks == ()


def test_they_come_in_the_order_of_the_table() -> None:
    keys = [key for key, _, _ in asked(bust_span=400, bust_girth=600, nape_to_waist=100)]
    assert keys == sorted(keys, key=list(BY_KEY).index)
    assert len(set(keys)) > 3


@pytest.mark.parametrize(
    ("changed", "text"),
    [
        ({"waist_girth": 39 * INCH, "hip_girth": 38 * INCH}, "waist (39 in) is more than hip (38 in)."),
        ({"bust_girth": 25 * INCH}, "bust (25 in) is less than is usual (25⅝ in or more)."),
        ({"nape_to_waist": 21 * INCH}, "nape to waist (21 in) is more than is usual (20½ in or less)."),
        (
            {"waist_girth": 30 * INCH, "seated_waist_girth": 29 * INCH},
            "seated waist (29 in) is less than waist (30 in).",
        ),
        (
            {"underbust_exhale": 33 * INCH, "underbust_inhale": 33 * INCH},
            "underbust breathed in (33 in) is not more than underbust breathed out (33 in).",
        ),
        (
            {"underbust_exhale": 30 * INCH, "underbust_inhale": 36 * INCH},
            "underbust breathed in (36 in) is a great deal more than underbust breathed out (30 in).",
        ),
        (
            {"bust_girth": 30 * INCH, "bust_span": 10.5 * INCH},
            "bust point to bust point (10½ in) is more than a third of bust (30 in).",
        ),
    ],
)
def test_both_numbers_are_said(changed: dict[str, float], text: str) -> None:
    assert [check.text("in") for check in checks_of(changed)] == [f"Please check: {text}"]


def test_they_are_said_in_her_unit() -> None:
    (check,) = checks_of({"waist_girth": 990.6, "hip_girth": 965.2})
    assert check.text("cm") == "Please check: waist (99.1 cm) is more than hip (96.5 cm)."
    assert checks_of({"waist_girth": 39.0625 * INCH, "hip_girth": 38 * INCH})[0].text("in", 16) == (
        "Please check: waist (39 ¹⁄₁₆ in) is more than hip (38 in)."
    )


def test_two_numbers_that_look_alike_are_said_more_finely() -> None:
    (check,) = checks_of({"waist_girth": 38.02 * INCH, "hip_girth": 38 * INCH})
    assert check.text("in") == "Please check: waist (38.02 in) is more than hip (38 in)."


def test_a_body_that_cannot_be_drafted_can_still_be_asked_about() -> None:
    found = checks_of({"shoulder_to_underbust": 450, "shoulder_to_waist": 430})
    assert [check.text("cm") for check in found] == [
        "Please check: shoulder to underbust (45.0 cm) is more than shoulder to waist (43.0 cm)."
    ]

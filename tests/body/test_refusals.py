"""Bodies that cannot be drafted, and the one sentence that says so."""

from __future__ import annotations

import pickle

import pytest

from workbench.body import BY_KEY, BodyError, complete

INCH = 25.4
GIRTHS = {"waist_girth": 740.0, "bust_girth": 960.0}


def refused(**taken: float) -> BodyError:
    with pytest.raises(BodyError) as caught:
        complete(taken)
    return caught.value


def test_a_missing_waist() -> None:
    error = refused(bust_girth=960)
    assert (error.key, str(error)) == ("waist_girth", "Waist is missing: nothing else can stand in for it.")


def test_a_seated_waist_does_not_stand_in_for_the_waist() -> None:
    assert refused(bust_girth=960, seated_waist_girth=780).key == "waist_girth"


def test_a_missing_bust_with_nothing_to_estimate_it_from() -> None:
    error = refused(waist_girth=740, top_hip_girth=930)
    assert error.key == "bust_girth"
    assert str(error) == "Bust is missing: take it, or underbust or upper chest to estimate it from."


def test_nothing_at_all() -> None:
    assert refused().key == "waist_girth"


@pytest.mark.parametrize("key", BY_KEY)
@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_what_is_no_number(key: str, value: float) -> None:
    error = refused(**{**GIRTHS, key: value})
    assert (error.key, str(error)) == (key, f"{BY_KEY[key].label} is not a number.")


@pytest.mark.parametrize("key", BY_KEY)
@pytest.mark.parametrize("value", [0.0, -5.0])
def test_what_is_nothing_or_less(key: str, value: float) -> None:
    error = refused(**{**GIRTHS, key: value})
    assert error.key == key
    assert str(error).startswith(f"{BY_KEY[key].label} must be more than nothing")


def test_a_measurement_nobody_knows() -> None:
    assert refused(**GIRTHS, left_ear=60).key == "left_ear"


@pytest.mark.parametrize(
    ("taken", "key", "text"),
    [
        (
            {"shoulder_to_underbust": 17.0, "shoulder_to_waist": 16.0},
            "shoulder_to_underbust",
            "Shoulder to underbust (17 in) must be shorter than shoulder to waist (16 in), by ¼ in or more.",
        ),
        (
            {"shoulder_to_bust": 14.0, "shoulder_to_underbust": 14.0},
            "shoulder_to_bust",
            "Shoulder to bust point (14 in) must be shorter than shoulder to underbust (14 in), by ¼ in "
            "or more.",
        ),
        (
            {"shoulder_to_bust": 16.75, "shoulder_to_waist": 17.0},
            "shoulder_to_bust",
            "Shoulder to bust point (16¾ in) must be shorter than shoulder to waist (17 in), by ⅜ in "
            "or more.",
        ),
        (
            {"underarm_to_waist": 6.0, "shoulder_to_bust": 10.0, "shoulder_to_waist": 17.0},
            "underarm_to_waist",
            "Underarm to waist (6 in) must be 7¼ in or more, to reach above the bust.",
        ),
        (
            {"underarm_to_waist": 3.0, "shoulder_to_underbust": 13.0, "shoulder_to_waist": 17.0},
            "underarm_to_waist",
            "Underarm to waist (3 in) must be 4⅜ in or more, to reach above the underbust.",
        ),
        (
            {"underarm_to_waist": 0.5},
            "underarm_to_waist",
            "Underarm to waist (½ in) must be ⅝ in or more, to reach above the waist.",
        ),
        (
            {"underarm_to_waist": 17.0, "shoulder_to_waist": 17.0},
            "underarm_to_waist",
            "Underarm to waist (17 in) must be shorter than shoulder to waist (17 in), by ¼ in or more.",
        ),
        (
            {"underarm_to_waist": 2.0, "shoulder_to_bust": 10.0, "shoulder_to_underbust": 13.0},
            "underarm_to_waist",
            "Underarm to waist (2 in) does not fit the heights of bust and underbust: with it, shoulder to "
            "waist would have to be 13¼ in or more and 11¾ in or less.",
        ),
        (
            {"shoulder_to_underbust": 0.5},
            "shoulder_to_underbust",
            "Shoulder to underbust (½ in) must be ⅝ in or more.",
        ),
        (
            {"waist_to_top_hip": 0.125},
            "waist_to_top_hip",
            "Waist to top hip (⅛ in) must be ¼ in or more.",
        ),
    ],
)
def test_levels_out_of_order(taken: dict[str, float], key: str, text: str) -> None:
    error = refused(**GIRTHS, **{name: inches * INCH for name, inches in taken.items()})
    assert (error.key, str(error)) == (key, text)


def test_levels_exactly_as_close_as_they_may_be() -> None:
    body = complete(
        {**GIRTHS, "shoulder_to_bust": 420, "shoulder_to_underbust": 425, "shoulder_to_waist": 430}
    )
    assert body.value("underarm_to_waist") >= 15


def test_it_is_said_in_centimetres_too() -> None:
    error = refused(**GIRTHS, shoulder_to_underbust=431.8, shoulder_to_waist=406.4)
    assert error.text("cm") == (
        "Shoulder to underbust (43.2 cm) must be shorter than shoulder to waist (40.6 cm), by 0.5 cm or more."
    )


def test_sentence_and_lengths_are_kept_apart() -> None:
    error = refused(**GIRTHS, waist_to_top_hip=3)
    assert error.sentence == "Waist to top hip ({value}) must be {least} or more."
    assert error.lengths == {"value": 3, "least": 5}


def test_it_survives_a_journey_to_another_process() -> None:
    error = refused(**GIRTHS, waist_to_top_hip=3)
    again = pickle.loads(pickle.dumps(error))
    assert (again.key, again.text("cm")) == (error.key, error.text("cm"))

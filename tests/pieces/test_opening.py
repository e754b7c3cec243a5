"""The lacing and the zip. Pitches, ends and cord by the rules of common practice, no source:

eyelets or loops 3/4 to 1 in apart, closer at the waist, the first and last 1/2 to 3/4 in
from the edge; cord is crossings times the hypotenuse of gap and pitch at the widest
opening, and 1 to 1 1/2 yd for tying.
"""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.draft.strategies import bodies, designs
from tests.pieces.figures import drafted, outcome, outcome_of
from workbench.body import Body
from workbench.draft import Design, Outcome, usual_design, work_out
from workbench.pieces.making import Making, Opening
from workbench.pieces.opening import opening_of, spread
from workbench.pieces.result import BackOpening
from workbench.pieces.side_zip import zip_for, zip_of

INCH = 25.4
WAIST = 1.5 * INCH


def laced(drawn: Outcome, **opening: object) -> BackOpening:
    made, findings = opening_of(drawn, Making(opening=Opening(**opening)))  # type: ignore[arg-type]
    assert made is not None
    assert findings == ()
    return made


def codes(drawn: Outcome, **opening: object) -> list[str]:
    _, findings = opening_of(drawn, Making(opening=Opening(**opening)))  # type: ignore[arg-type]
    assert all(len(finding.text("in")) > 40 for finding in findings)
    return [finding.code for finding in findings]


@pytest.mark.parametrize("closing", ["loops", "eyelets"])
def test_the_first_and_last_are_set_in_from_hem_and_neckline(closing: str) -> None:
    back = drafted(outcome()).panels[-1].right[:, 1]
    made = laced(outcome(), closing=closing)
    assert made.walks[0] - back[0] == pytest.approx(5 / 8 * INCH)
    assert back[-1] - made.walks[-1] == pytest.approx(5 / 8 * INCH)


def test_they_stand_three_quarters_to_an_inch_apart_and_closer_at_the_waist() -> None:
    made = laced(outcome())
    middles = np.array(made.walks[:-1]) + 0.5 * np.array(made.pitches)
    away = np.array(made.pitches)[np.abs(middles) > WAIST + INCH / 2]
    near = np.array(made.pitches)[np.abs(middles) < WAIST - INCH / 2]
    assert len(away) > 3
    assert len(near) > 2
    assert ((away >= 0.75 * INCH) & (away <= INCH)).all()
    assert near.max() < 0.75 * INCH < away.min()


def test_pitches_are_the_steps_from_walk_to_walk() -> None:
    made = laced(outcome("under_bust"))
    assert made.pitches == pytest.approx(np.diff(made.walks))


def test_a_cord_through_loops_is_as_long_as_its_crossings_and_its_ends() -> None:
    """Three loops a side, 30 mm apart, drawn open to 40 mm: four strands of 50 mm, a 3-4-5 triangle."""
    drawn = outcome()
    back = drafted(drawn).panels[-1].right[:, 1]
    made = laced(
        outcome(opening=0.0),
        end_mm=(back[-1] - back[0] - 60.0) / 2,
        pitch_mm=30.0,
        waist_pitch_mm=30.0,
        step_in_gap_mm=40.0,
        tying_mm=1000.0,
    )
    assert len(made.walks) == 3
    assert made.crossings == 4
    assert made.cord_mm == pytest.approx(4 * 50.0 + 1000.0)


@pytest.mark.parametrize(("closing", "set_in"), [("loops", 0.0), ("eyelets", 9.525)])
def test_the_cord_is_the_sum_of_its_hypotenuses_at_the_widest_opening(closing: str, set_in: float) -> None:
    made = laced(outcome(), closing=closing, step_in_gap_mm=10 * INCH, tying_mm=45 * INCH)
    strands = 0.0
    for low, high in zip(made.walks, made.walks[1:], strict=False):
        strands += 2 * hypot(10 * INCH + 2 * set_in, high - low)
    assert made.cord_mm == pytest.approx(strands + 45 * INCH)
    assert made.lengths["strands"] == pytest.approx(strands)
    assert INCH * 36 <= made.lengths["tying"] <= INCH * 54


def test_how_the_cord_was_worked_out_can_be_said_with_its_numbers() -> None:
    made = laced(outcome())
    said = made.how.format(**{name: f"{mm:.0f}" for name, mm in made.lengths.items()})
    assert said.startswith(f"{made.crossings} crossings of a gap of 254")
    assert "1143 for tying" in said


@given(
    low=st.floats(-300, 100),
    length=st.floats(1, 700),
    pitch=st.floats(5, 60),
    waist_pitch=st.floats(5, 60),
)
def test_a_spread_fits_exactly_and_keeps_near_its_pitches(
    low: float, length: float, pitch: float, waist_pitch: float
) -> None:
    walks = np.array(spread(low, low + length, pitch, waist_pitch))
    assert walks[0] == low
    assert walks[-1] == pytest.approx(low + length)
    steps = np.diff(walks)
    assert (steps > 0).all()
    middles = 0.5 * (walks[1:] + walks[:-1])
    stretched = 1.0 if len(steps) == 1 else 0.5 / len(steps)  # rounding a count moves it by half at most
    for half, step, middle in zip(0.5 * steps, steps, middles, strict=True):
        if abs(middle) + half <= WAIST - 1e-6 and len(steps) > 1:
            assert step == pytest.approx(waist_pitch, rel=stretched * 1.001 + 0.001)
        if abs(middle) - half >= WAIST + 1e-6 and len(steps) > 1:
            assert step == pytest.approx(pitch, rel=stretched * 1.001 + 0.001)


def test_ends_that_leave_no_place_are_said() -> None:
    assert codes(outcome(), end_mm=150.0) == ["opening_ends"]
    assert opening_of(outcome(), Making(opening=Opening(end_mm=150.0)))[0] is None


def test_a_pitch_longer_than_the_opening_is_said_and_two_pairs_are_still_placed() -> None:
    assert codes(outcome(), pitch_mm=400.0, waist_pitch_mm=400.0) == ["opening_short"]
    made, _ = opening_of(outcome(), Making(opening=Opening(pitch_mm=400.0, waist_pitch_mm=400.0)))
    assert made is not None
    assert len(made.walks) == 2


def test_no_pitch_at_all_is_said() -> None:
    assert codes(outcome(), pitch_mm=0.0) == ["opening_pitch"]
    assert codes(outcome(), waist_pitch_mm=-3.0) == ["opening_pitch"]


def test_stepping_in_by_less_than_it_is_worn_open_is_said() -> None:
    assert codes(outcome(), step_in_gap_mm=25.0) == ["step_in_gap"]


def test_without_a_draft_there_is_no_opening() -> None:
    refused = outcome_of(replace(usual_design(), opening_mm=5000.0))
    assert opening_of(refused, Making()) == (None, ())
    assert zip_of(refused, Making(opening=Opening(closing="side_zip"))) is None


@pytest.mark.parametrize(
    ("seam", "sold"),
    [(8 * INCH, 8 * INCH), (8 * INCH - 0.01, 7 * INCH), (200.0, 7 * INCH), (90.0, None), (900.0, 24 * INCH)],
)
def test_a_zip_is_sold_by_the_inch(seam: float, sold: float | None) -> None:
    """From 4 to 24 in: common practice, no source."""
    assert zip_for(seam) == (sold if sold is None else pytest.approx(sold))


def test_a_zip_is_as_long_as_the_side_seam_takes() -> None:
    made = Making(opening=Opening(closing="side_zip"))
    closed = outcome(opening=0.0)
    seam = drafted(closed).seams[2]
    assert seam.name == "side seam"
    zipped = zip_of(closed, made)
    assert zipped is not None
    assert 0 <= seam.left_length - zipped < INCH
    assert opening_of(closed, made) == (None, ())
    assert zip_of(closed, Making()) is None


def test_a_zip_does_not_close_a_gap_at_the_back() -> None:
    assert codes(outcome(), closing="side_zip") == ["gap_without_lacing"]


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(body=bodies(), design=designs(), gap=st.floats(0, 400))
def test_every_lacing_lies_on_its_edge_and_its_cord_reaches(body: Body, design: Design, gap: float) -> None:
    drawn = work_out(body, design)
    made, findings = opening_of(drawn, Making(opening=Opening(step_in_gap_mm=gap)))
    assert all(len(finding.text("cm")) > 40 for finding in findings)
    if drawn.draft is None or made is None:
        assert drawn.draft is None or findings
        return
    edge = drawn.draft.panels[-1].right[:, 1]
    assert edge[0] < made.walks[0] < made.walks[-1] < edge[-1]
    assert made.cord_mm >= made.crossings * gap + 1143.0
    assert made.crossings == 2 * (len(made.walks) - 1) == 2 * len(made.pitches)

"""The opening read by hand: what shape it has, what that means, and what brings its edges parallel.

What a gap means is common practice, no source; so is the quarter inch within which gaps are equal.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.draft.test_worked_sums import INCH, inch_body
from workbench.draft import Corrections, Outcome, Quarter, Reductions, Seam, usual_design, work_out
from workbench.fitting import (
    Fitting,
    Gaps,
    Reading,
    carried,
    over_at_levels,
    proposal,
    proposal_words,
    reading_of,
    seam_parts,
)

BODY = inch_body(bust=36, underbust=31, waist=28, top_hip=36)
DESIGN = replace(usual_design(), reductions=Reductions(waist=2 * INCH))
OUTCOME = work_out(BODY, DESIGN)


def read(top: float, waist: float, hem: float, planned: float = 2.0) -> Reading:
    """The reading of three gaps in inches."""
    reading = reading_of(Gaps(top * INCH, waist * INCH, hem * INCH), planned * INCH)
    assert reading is not None
    return reading


@pytest.mark.parametrize(
    ("gaps", "shape", "meant"),
    [
        ((2, 2, 2), "as_planned", "within ¼ in of where they were meant to"),
        ((2.25, 2.125, 2), "as_planned", "within ¼ in"),
        ((3, 3, 3), "wide", "too small by 1 in all the way"),
        ((3, 3.25, 3), "wide", "too small by 1 in at the top, 1¼ in at the waist and 1 in at the hem"),
        ((1, 1, 1), "narrow", "too large by 1 in all the way"),
        ((4, 3, 2), "top", "too small by 2 in at the top and 1 in at the waist"),
        ((3, 2, 2), "top", "too small by 1 in at the top"),
        ((3, 2, 1.5), "top", "too small by 1 in at the top, and too large by ½ in at the hem"),
        ((2, 3, 4), "hem", "too small by 1 in at the waist and 2 in at the hem"),
        ((3, 2, 3.5), "both_ends", "too small by 1 in at the top and 1½ in at the hem"),
        ((2, 3, 2), "waist", "too small by 1 in at the waist"),
    ],
)
def test_shapes_of_the_opening(gaps: tuple[float, float, float], shape: str, meant: str) -> None:
    reading = read(*gaps)
    assert reading.shape == shape
    assert meant in reading.text("in")


def test_nothing_is_read_from_two_gaps() -> None:
    assert reading_of(Gaps(50.0, None, 50.0), 50.0) is None


def test_gaps_are_interpolated_by_walk_and_held_beyond_the_edges() -> None:
    draft = OUTCOME.draft
    assert draft is not None
    over = over_at_levels(read(4, 2, 2), OUTCOME)
    top = draft.neckline.seam_walks[-1] / INCH
    # the underbust lies 3 in above the waist, the top edge at the centre back somewhat higher
    assert over["underbust"] / INCH == pytest.approx(2 * 3 / top)
    assert over["bust"] / INCH == pytest.approx(2)  # above the top edge
    assert over["waist"] == pytest.approx(0)
    assert over["top_hip"] == pytest.approx(0)


def four_seams() -> Outcome:
    """Two panels a quarter, weights of 3 to 1 in front and 1 to 1 in back."""
    front = Quarter((Seam(0.5, 0.5, 3.0),), 1.0)
    back = Quarter((Seam(0.5, 0.5, 1.0),), 1.0)
    return work_out(BODY, replace(usual_design("under_bust", 2, 2), front=front, back=back))


def test_the_seams_share_by_weight() -> None:
    outcome = four_seams()
    # half of it in front: 3/4 and 1/4 of that; half in back: 1/2 and 1/2; the side has a part of both
    assert seam_parts(outcome.design, "waist") == pytest.approx({1: 0.375, 2: 0.125 + 0.25, 3: 0.25})
    changes = proposal(read(3, 3, 3), outcome)
    waist = {change.seam: change.amount_mm / INCH for change in changes if change.level == "waist"}
    # an inch round the body is half an inch on each half
    assert waist == pytest.approx({1: -0.1875, 2: -0.1875, 3: -0.125})
    assert [change.level for change in changes[::3]] == ["bust", "underbust", "waist", "top_hip"]


def test_the_proposal_comes_to_the_gap_at_every_level() -> None:
    reading = read(3.5, 2.5, 1.5)
    over = over_at_levels(reading, OUTCOME)
    fitting = Fitting(panels=(3, 3), changes=proposal(reading, OUTCOME))
    made = carried([fitting], DESIGN)
    assert made.findings == ()
    after = work_out(BODY, DESIGN, made.corrections)
    for level in OUTCOME.levels:
        # finished is what she is held to at the planned opening: larger by what was wider than planned
        assert after.level(level.name).finished - level.finished == pytest.approx(over[level.name], abs=0.11)


def test_the_proposal_in_words() -> None:
    said = proposal_words(read(3, 2, 1.5), OUTCOME, "in")
    assert said.startswith("To bring the edges parallel at the planned opening, let out 1 in at the bust")
    assert said.endswith("; take in ½ in at the top hip, round the body.")
    assert proposal(read(2, 2, 2), OUTCOME) == ()
    assert proposal_words(read(2, 2, 2), OUTCOME, "in") == "Nothing to change."


def test_seams_without_weight_share_evenly() -> None:
    design = replace(DESIGN, back=replace(DESIGN.back, side_weight=0.0, seams=tuple(
        replace(seam, weight=0.0) for seam in DESIGN.back.seams
    )))  # fmt: skip
    parts = seam_parts(design, "waist")
    assert sum(parts.values()) == pytest.approx(1)
    assert parts[4] == parts[5] == pytest.approx(1 / 6)


def test_nothing_is_carried_from_nothing() -> None:
    assert carried((), DESIGN).corrections == Corrections()

"""From fittings to corrections: what is on, by whose name, and what no longer suits."""

from __future__ import annotations

from dataclasses import replace

import pytest

from workbench.draft import Corrections, Lengthened, Raised, TakenIn, usual_design, with_panels
from workbench.fitting import (
    Change,
    Fitting,
    carried,
    change_said,
    comes_to,
    date_said,
    fitting_said,
    place_said,
    where_said,
)

DESIGN = usual_design("under_bust", 3, 3)
CHANGES = (
    Change("seam", 6.35, "waist", 3),
    Change("length", -12.7, "waist"),
    Change("neckline", 9.525, u=1.5),
    Change("hem", -6.35, u=6.0),
)
FITTING = Fitting("2031-05-20", "calico", (3, 3), changes=CHANGES)


def test_every_change_becomes_a_correction_that_names_itself() -> None:
    said = "of the fitting of 20 May 2031"
    assert carried([FITTING], DESIGN).corrections == Corrections(
        (TakenIn(3, "waist", 6.35, f"Line 1 {said}", "fittings.0.changes.0"),),
        (Lengthened("waist", -12.7, f"Line 2 {said}", "fittings.0.changes.1"),),
        (
            (
                Raised("neckline", 1.5, 9.525, f"Line 3 {said}", "fittings.0.changes.2"),
                Raised("hem", 6.0, -6.35, f"Line 4 {said}", "fittings.0.changes.3"),
            ),
        ),
    )


def test_what_is_switched_off_is_not_there() -> None:
    assert not carried([replace(FITTING, applied=False)], DESIGN).corrections
    off = tuple(replace(change, on=False) for change in CHANGES)
    assert carried([replace(FITTING, changes=off)], DESIGN).corrections == Corrections()
    assert not carried([replace(FITTING, changes=(Change("seam", 0.0, "waist", 3),))], DESIGN).corrections


def test_seams_of_another_number_of_panels_are_left_out_and_said() -> None:
    fitting = replace(FITTING, changes=tuple(Change("seam", 5.0, "waist", seam) for seam in range(1, 6)))
    made = carried([fitting], with_panels(DESIGN, "front", 4))
    # the side seam is still the side seam, and the back is as it was: one further on
    assert [taken.seam for taken in made.corrections.taken_in] == [4, 5, 6]
    assert [finding.place.field for finding in made.findings] == [
        "fittings.0.changes.0", "fittings.0.changes.1",
    ]  # fmt: skip
    assert made.findings[0].text("in") == (
        "Line 1 of the fitting of 20 May 2031 is left out: its seam is no longer there: "
        "the front had 3 panels then and has 4 now. Pin it on a seam of today, or switch the line off."
    )


def test_places_stay_where_they_are_in_their_quarter() -> None:
    made = carried([FITTING], with_panels(DESIGN, "back", 2))
    assert [raised.u for raised in made.corrections.raised[0]] == [1.5, 5.0]
    made = carried([FITTING], with_panels(DESIGN, "front", 2))
    assert [raised.u for raised in made.corrections.raised[0]] == [1.0, 5.0]


@pytest.mark.parametrize("change", [Change("seam", 5.0, "upper_chest", 3), Change("length", 5.0, "bust")])
def test_a_level_that_the_style_does_not_reach_is_said(change: Change) -> None:
    made = carried([replace(FITTING, changes=(change, CHANGES[0]))], DESIGN)
    assert len(made.corrections.taken_in) == 1
    assert "this style does not reach beyond its level" in made.findings[0].text("in")
    assert made.findings[0].severity == "attend"
    assert not carried([FITTING], usual_design("over_bust", 3, 3)).findings


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (CHANGES[0], "Take in ¼ in at side seam, waist"),
        (Change("seam", -3.175, "bust", 1), "Let out ⅛ in at front seam 1, bust"),
        (CHANGES[1], "Shorten ½ in between waist and underbust"),
        (Change("length", 6.35, "top_hip"), "Lengthen ¼ in between top hip and waist"),
        (CHANGES[2], "Raise ⅜ in the neckline 50 % across front 2"),
        (CHANGES[3], "Lower ¼ in the hem at the centre back"),
    ],
)
def test_changes_in_words(change: Change, said: str) -> None:
    assert change_said(change, (3, 3), "in") == said


def test_other_words() -> None:
    assert comes_to(CHANGES[0], "in") == "½ in less round the body: the seam is there twice."
    assert comes_to(CHANGES[1], "in") == ""
    assert fitting_said(Fitting()) == "the fitting without a date"
    assert date_said("someday") == "someday"
    assert where_said(Change("seam", 1.0, "waist", 4), (4, 2)) == "side seam, waist"
    assert place_said(3.25, (2, 2)) == "25 % across back 2"

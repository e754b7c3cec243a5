"""A front busk. Sold from 6 to 14 in by the half inch: common practice, no source."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from tests.pieces.figures import drafted, outcome, outcome_of
from workbench.draft import Outcome, ShapePoint, usual_design
from workbench.pieces.busk import busk_of, centre_front_length, longest_busk
from workbench.pieces.making import Boning, Making

INCH = 25.4
WITH_BUSK = Making(front="busk")


def front_of(length: float) -> Outcome:
    """A bodice whose centre front has this length in mm, level at hem and neckline."""
    design = usual_design("under_bust")
    ends = (0.0, float(design.panel_count))
    low = -0.5 * length
    line = {
        name: tuple(ShapePoint(u, walk) for u in ends)
        for name, walk in (("hem", low), ("neckline", low + length))
    }
    return outcome_of(replace(design, hem=line["hem"], neckline=line["neckline"]))


@pytest.mark.parametrize(
    ("room", "sold"),
    [(5.99, None), (6.0, 6.0), (6.49, 6.0), (6.5, 6.5), (11.2, 11.0), (14.0, 14.0), (18.0, 14.0), (-1, None)],
)
def test_the_longest_busk_that_goes_in(room: float, sold: float | None) -> None:
    assert longest_busk(room * INCH) == (None if sold is None else pytest.approx(sold * INCH))


def test_the_busk_leaves_its_clearance_at_both_ends_of_the_centre_front() -> None:
    front = drafted(outcome()).panels[0].left
    length = float(np.hypot(*np.diff(front, axis=0).T).sum())
    assert centre_front_length(drafted(outcome())) == pytest.approx(length, abs=1e-9)
    busk, findings = busk_of(outcome(), WITH_BUSK)
    assert busk is not None
    assert 0 <= length - 2 * 9.525 - busk < INCH / 2
    assert findings == ()


def test_more_clearance_asks_for_a_shorter_busk() -> None:
    made = replace(WITH_BUSK, boning=Boning(clearance_mm=0.0))
    assert busk_of(front_of(10 * INCH), made)[0] == pytest.approx(10 * INCH)
    assert busk_of(front_of(10 * INCH), WITH_BUSK)[0] == pytest.approx(9 * INCH)


def test_a_front_too_short_for_any_busk_is_said() -> None:
    busk, (finding,) = busk_of(front_of(6.2 * INCH), WITH_BUSK)
    assert busk is None
    assert (finding.code, finding.severity, finding.place.seam) == ("no_busk_fits", "attend", 0)
    assert "6 in" in finding.text("in")


def test_a_busk_of_her_own_that_is_too_long_is_kept_and_said() -> None:
    busk, (finding,) = busk_of(front_of(10 * INCH), replace(WITH_BUSK, busk_mm=9.5 * INCH))
    assert busk == 9.5 * INCH
    assert finding.code == "busk_too_long"
    assert finding.lengths["fits"] == pytest.approx(9 * INCH)
    assert "9½ in" in finding.text("in")
    assert busk_of(front_of(10 * INCH), replace(WITH_BUSK, busk_mm=9 * INCH)) == (9 * INCH, ())


def test_a_busk_of_her_own_with_no_stock_length_to_take_instead() -> None:
    _, (finding,) = busk_of(front_of(6 * INCH), replace(WITH_BUSK, busk_mm=6 * INCH))
    assert finding.text("in").endswith("Lengthen the centre front.")


def test_a_front_longer_than_every_busk_is_noted() -> None:
    busk, (finding,) = busk_of(front_of(16 * INCH), WITH_BUSK)
    assert busk == pytest.approx(14 * INCH)
    assert (finding.code, finding.severity) == ("busk_shorter", "note")


def test_a_front_on_the_fold_has_no_busk() -> None:
    assert busk_of(outcome(), Making()) == (None, ())
    assert busk_of(outcome_of(replace(usual_design(), opening_mm=5000.0)), WITH_BUSK) == (None, ())

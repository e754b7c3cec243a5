"""What is wrong with a plan is found, whoever made it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.cloth.cutting_table import ONE, block, copies
from workbench.cloth import Cloth, Copy, Placed, bottom_left, check_plan, plan_at

CLOTH = Cloth("Satin", ONE, width_mm=500.0, selvedge_mm=0.0, gap_mm=5.0)
TWO = (block("A", 100.0, 200.0), block("B", 100.0, 200.0))
SOUND = (Placed("fashion/A", 1, 0.0, 0.0), Placed("fashion/B", 1, 105.0, 0.0))


def codes(*placed: Placed, cloth: Cloth = CLOTH, laid_out: tuple[Copy, ...] = TWO) -> list[str]:
    return [finding.code for finding in plan_at(placed, laid_out, cloth, "By hand.").findings]


def moved(**change: object) -> tuple[Placed, Placed]:
    return SOUND[0], replace(SOUND[1], **change)  # type: ignore[arg-type]


def test_a_sound_plan_has_no_finding() -> None:
    plan = plan_at(SOUND, TWO, CLOTH, "By hand.")
    assert plan.sound
    assert plan.length_mm == 200.0
    assert plan.utilisation == pytest.approx(2 * 100 * 200 / (500 * 200))


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"x": 99.0}, "overlap"),
        ({"x": 104.0}, "gap"),
        ({"x": 401.0}, "outside"),
        ({"y": -1.0}, "outside"),
        ({"degrees": 2.0}, "grain"),
        ({"mirrored": True, "x": 300.0}, "wrong_side"),
    ],
)
def test_one_piece_amiss_is_one_finding(change: dict[str, object], code: str) -> None:
    assert codes(*moved(**{"x": 200.0, **change})) == [code]


def test_a_piece_within_the_tilt_is_true_enough() -> None:
    assert codes(*moved(x=200.0, degrees=2.0), cloth=replace(CLOTH, tilt_degrees=2.0)) == []


def test_end_for_end_is_wrong_on_a_nap_alone() -> None:
    turned = moved(x=300.0, y=200.0, degrees=180.0)
    assert codes(*turned) == []
    assert codes(*turned, cloth=replace(CLOTH, run="one_way")) == ["grain"]


def test_a_missing_a_doubled_and_a_strange_piece_are_found() -> None:
    assert codes(SOUND[0]) == ["not_laid"]
    assert "laid_twice" in codes(*SOUND, replace(SOUND[1], x=300.0))
    assert codes(*SOUND, Placed("fashion/C", 1, 300.0, 0.0)) == ["not_cut"]


def test_a_half_off_the_fold_is_found() -> None:
    cloth = replace(CLOTH, laid="folded", selvedge_mm=0.0)
    half = (block("A", 100.0, 200.0, on_fold=True, either_side=True),)
    assert codes(Placed("fashion/A", 1, 0.0, 0.0), cloth=cloth, laid_out=half) == []
    assert codes(Placed("fashion/A", 1, 1.0, 0.0), cloth=cloth, laid_out=half) == ["fold"]
    # Turned end for end, it must be turned over too, or its other side lies on the fold.
    upside_down = Placed("fashion/A", 1, 100.0, 200.0, 180.0)
    assert codes(upside_down, cloth=cloth, laid_out=half) == ["fold"]
    assert codes(replace(upside_down, mirrored=True, x=0.0), cloth=cloth, laid_out=half) == []


def test_a_waist_line_between_two_repeats_is_found() -> None:
    cloth = replace(CLOTH, repeat_mm=50.0)
    assert codes(*moved(y=50.0), cloth=cloth) == []
    assert codes(*moved(y=20.0), cloth=cloth) == ["repeat"]


def test_the_sentences_name_pieces_and_lengths() -> None:
    near = plan_at(moved(x=104.0), TWO, replace(CLOTH, gap_mm=6.35), "By hand.").findings
    assert [finding.text("in") for finding in near] == ["A and B lie closer than ¼ in."]
    gone = plan_at((), TWO, CLOTH, "By hand.").findings
    assert [finding.text("in") for finding in gone] == ["A and B are not on the plan of Satin."]


def test_a_changed_plan_is_checked_anew() -> None:
    cloth = Cloth("Satin", ONE)
    laid_out = copies(cloth)
    plan = bottom_left(laid_out, cloth)
    assert check_plan(plan, laid_out, cloth) == ()
    first, *rest = plan.placed
    worse = replace(plan, placed=(replace(first, x=rest[0].x, y=rest[0].y), *rest))
    assert "overlap" in {finding.code for finding in check_plan(worse, laid_out, cloth)}

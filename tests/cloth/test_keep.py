"""A plan is kept, comes back the same, and is known to be stale at once."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from tests.cloth.cutting_table import ONE, copies, cutting
from tests.pieces.figures import outcome
from workbench.cloth import Cloth, bottom_left, copies_of, digest, is_stale, kept, plan_of
from workbench.pieces import Allowances, Making, cutting_of

CLOTH = Cloth("Satin", ONE)


def test_a_kept_plan_comes_back_the_same() -> None:
    laid_out = copies(CLOTH)
    plan = bottom_left(laid_out, CLOTH)
    assert plan_of(kept(plan), laid_out, CLOTH) == plan


@pytest.mark.parametrize(
    "change",
    [
        {"width_mm": 1371.6},
        {"selvedge_mm": 0.0},
        {"run": "one_way"},
        {"laid": "folded"},
        {"tilt_degrees": 1.0},
        {"gap_mm": 4.0},
        {"repeat_mm": 100.0},
        {"remnant": ((0.0, 0.0), (900.0, 0.0), (900.0, 900.0))},
        {"layers": ("fashion", "lining")},
    ],
    ids=lambda change: next(iter(change)),
)
def test_another_cloth_makes_it_stale(change: dict[str, object]) -> None:
    own = kept(bottom_left(copies(CLOTH), CLOTH))
    other = replace(CLOTH, **change)  # type: ignore[arg-type]
    assert is_stale(own, copies(other), other)
    assert plan_of(own, copies(other), other) is None


def test_another_allowance_makes_it_stale() -> None:
    own = kept(bottom_left(copies(CLOTH), CLOTH))
    wider = copies_of(cutting_of(outcome(), Making(allowances=Allowances(side=26.0))), CLOTH)
    assert is_stale(own, wider, CLOTH)


def test_what_the_plan_does_not_hang_on_leaves_it_fresh() -> None:
    own = kept(bottom_left(copies(CLOTH), CLOTH))
    dearer = replace(CLOTH, name="Silk", price=Decimal(40), shrinkage_percent=3.0, at_hand_mm=900.0)
    assert not is_stale(own, copies(dearer), dearer)


def test_the_mark_is_the_same_when_the_pieces_are_cut_anew() -> None:
    again = cutting_of(outcome(), Making())
    assert digest(copies_of(again, CLOTH), CLOTH) == digest(copies_of(cutting(), CLOTH), CLOTH)


def test_a_kept_plan_that_was_tampered_with_says_so() -> None:
    laid_out = copies(CLOTH)
    own = kept(bottom_left(laid_out, CLOTH))
    first, *rest = own.placed
    again = plan_of(replace(own, placed=(replace(first, x=-500.0), *rest)), laid_out, CLOTH)
    assert again is not None
    assert [finding.code for finding in again.findings] == ["outside"]

"""Ways to cut the same job, side by side."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from tests.cloth.cutting_table import THREE, cutting
from tests.pieces.figures import outcome
from workbench.cloth import Case, Cloth, compare
from workbench.pieces import Allowances, Making, cutting_of

CLOTH = Cloth("Satin", THREE, price=Decimal(20))


def test_each_case_is_a_row_in_its_order() -> None:
    wide = cutting_of(outcome(), Making(allowances=Allowances(side=38.1, centre_back=38.1)))
    rows = compare(
        [
            Case("single", cutting(), CLOTH),
            Case("folded", cutting(), replace(CLOTH, laid="folded")),
            Case("60 in", cutting(), replace(CLOTH, width_mm=1524.0)),
            Case("1½ in", wide, CLOTH),
        ]
    )
    assert [row.label for row in rows] == ["single", "folded", "60 in", "1½ in"]
    single, _, wider, more = rows
    assert single.plan
    assert wider.plan
    assert more.plan
    assert wider.plan.length_mm < single.plan.length_mm < more.plan.length_mm
    for row in rows:
        assert row.plan
        assert row.buy
        assert row.buy.length_mm >= row.plan.length_mm
        assert row.buy.cost == Decimal(20) * Decimal(str(row.buy.length_mm / 914.4))


def test_a_case_that_cannot_be_says_why_and_leaves_the_others() -> None:
    rows = compare(
        [Case("ribbon", cutting(), replace(CLOTH, width_mm=100.0)), Case("single", cutting(), CLOTH)]
    )
    assert rows[0].plan is None
    assert rows[0].trouble
    assert rows[0].trouble.code == "piece_too_wide"
    assert rows[1].plan

"""What is bought: counts, strands, cost, hours."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from tests.beads.garments import KINDS, RICH, beading, kind_called, over_all, with_scatters
from workbench.beads import BeadKind, per_inch_of, per_strand_of
from workbench.beads.count import hours_for


@pytest.mark.parametrize(("size", "to_the_inch"), [(4.0, 6.35), (6.0, 4.2333), (8.0, 3.175)])
def test_round_pearls_to_the_inch(size: float, to_the_inch: float) -> None:
    """25.4 / diameter: arithmetic on the inch of 1959."""
    assert per_inch_of(kind_called(f"Pearl {size:g} mm")) == pytest.approx(to_the_inch, abs=1e-4)


def test_a_strand_of_sixteen_inches_of_four_millimetre_pearls_has_a_hundred_and_one() -> None:
    assert per_strand_of(kind_called("Pearl 4 mm")) == 101
    assert per_strand_of(replace(kind_called("Pearl 4 mm"), per_strand=98)) == 98
    assert per_strand_of(BeadKind("Long", 50.0, strand_mm=10.0)) == 1


def test_seed_beads_are_as_many_as_she_counted() -> None:
    """11/0: 16 to 20 to the inch, 8/0: 10 to 13 (sources differ; common practice)."""
    assert 16 <= per_inch_of(kind_called("Seed bead 11/0")) <= 20
    assert 10 <= per_inch_of(kind_called("Seed bead 8/0")) <= 13


def test_counts_add_up_from_runs_and_scatters_to_the_list() -> None:
    beads = beading(RICH)
    assert beads.count.total == sum(each.total for each in beads.beaded)
    for line in beads.count.kinds:
        assert line.total == sum(each.counts.get(line.kind.name, 0) for each in beads.beaded)
    lying = beads.all
    assert beads.count.total == 2 * len(lying) - lying.once.sum()


def test_strands_hold_the_beads_and_the_reserve() -> None:
    priced = tuple(replace(kind, price=Decimal("4.25")) for kind in KINDS)
    for line in beading(replace(RICH, kinds=priced, reserve_percent=15.0)).count.kinds:
        assert line.with_reserve >= 1.15 * line.total > line.with_reserve - 1
        each = per_strand_of(line.kind)
        assert line.strands * each >= line.with_reserve > (line.strands - 1) * each
        assert line.cost == line.strands * Decimal("4.25")


def test_a_kind_without_a_price_has_no_cost() -> None:
    assert all(line.cost is None for line in beading(RICH).count.kinds)
    assert beading(RICH).count.cost == 0


@pytest.mark.parametrize(
    ("beads", "rate", "hours"),
    [(0, 3.0, "0"), (180, 3.0, "1"), (181, 3.0, "1.25"), (1000, 0.0, "0"), (1, 60.0, "0.25")],
)
def test_hours_at_her_own_rate_up_to_quarters(beads: int, rate: float, hours: str) -> None:
    assert hours_for(beads, rate) == Decimal(hours)


def test_no_rate_is_said() -> None:
    beads = beading(replace(with_scatters(over_all()), per_minute=0.0))
    assert beads.findings[-1].code == "bead_no_rate"
    assert beads.count.hours == 0

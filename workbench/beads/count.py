"""How many beads to buy, what they cost, and how long they take."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction
from math import ceil

from workbench.beads.records import BeadKind, BeadPlan, per_strand_of
from workbench.beads.result import BeadCount, Beaded, KindCount

QUARTERS = 4
"""Hours are said in quarters, rounded up, as for every other step of the work (own choice)."""
_HAIR = 1e-9
"""Own choice: rounding of sums, in beads."""


def counted(plan: BeadPlan, beaded: Iterable[Beaded]) -> BeadCount:
    """Counts of the whole garment, strands with the reserve, and the hours at her own rate."""
    beaded = tuple(beaded)
    lines = tuple(line for line in (_line(kind, plan, beaded) for kind in plan.kinds) if line.total)
    return BeadCount(lines, hours_for(sum(line.total for line in lines), plan.per_minute))


def _line(kind: BeadKind, plan: BeadPlan, beaded: tuple[Beaded, ...]) -> KindCount:
    runs, scatters = (
        sum(each.counts.get(kind.name, 0) for each in beaded if each.what == what)
        for what in ("run", "scatter")
    )
    needed = ceil((runs + scatters) * (1 + plan.reserve_percent / 100) - _HAIR)
    strands = -(-needed // per_strand_of(kind))
    return KindCount(kind, runs, scatters, needed, strands, strands * kind.price if kind.price else None)


def hours_for(beads: int, per_minute: float) -> Decimal:
    """Hours to sew on so many, up to whole quarters; nothing where there is no rate."""
    if not beads or per_minute <= 0:
        return Decimal(0)
    quarters = ceil(Fraction(beads) / Fraction(per_minute) * QUARTERS / 60)
    return Decimal(quarters) / QUARTERS

"""How long a garment takes, as the steps of its sewing order add up: a place to start from.

Minutes are common practice, no source; she changes each stage to what she needs herself.
"""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction
from math import ceil

from workbench.cloth.records import HoursRow
from workbench.sewing import Step, minutes_by_stage

QUARTERS = 4
"""Hours are said in quarters, rounded up."""


def hours_of(steps: Iterable[Step]) -> tuple[HoursRow, ...]:
    """The stages of the work in their order, each in whole quarters of an hour; none without steps."""
    stages = minutes_by_stage(tuple(steps))
    return tuple(HoursRow(stage, _hours(minutes)) for stage, minutes in stages.items())


def _hours(minutes: float) -> Decimal:
    """Whole quarters of an hour, rounded up; a hair over a quarter is that quarter."""
    quarters = ceil(Fraction(minutes) * QUARTERS / 60 - Fraction(1, 1_000_000))
    return Decimal(quarters) / QUARTERS

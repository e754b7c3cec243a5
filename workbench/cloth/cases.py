"""Several ways to cut the same job, side by side."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from workbench.cloth.buy import Buy, to_buy
from workbench.cloth.copies import copies_of
from workbench.cloth.plain_way import bottom_left
from workbench.cloth.plan import LayError, Plan
from workbench.cloth.records import Cloth
from workbench.cloth.solver import Solve
from workbench.draft import Finding
from workbench.pieces import Cutting


@dataclass(frozen=True)
class Case:
    """One way: what is cut, and from which cloth. Another allowance is another cutting."""

    label: str
    cutting: Cutting
    cloth: Cloth


@dataclass(frozen=True)
class Row:
    """What one way comes to; without a plan, why not."""

    label: str
    plan: Plan | None
    buy: Buy | None
    trouble: Finding | None = None


def compare(cases: Iterable[Case], seconds: float = 0.0) -> tuple[Row, ...]:
    """One row for each case, in their order; a case that cannot be laid does not keep the others from it.

    With ``seconds`` each is sought for so long, and the call waits; without, all are laid
    the plain way. Rows compare fairly only when all are made in the same time.
    """
    return tuple(_row(case, seconds) for case in cases)


def _row(case: Case, seconds: float) -> Row:
    try:
        plan = _plan(case, seconds)
        return Row(case.label, plan, to_buy(plan.length_mm, case.cloth, len(plan.left_over)))
    except LayError as error:
        return Row(case.label, None, None, error.finding)


def _plan(case: Case, seconds: float) -> Plan:
    copies = copies_of(case.cutting, case.cloth)
    if seconds > 0:
        return Solve(copies, case.cloth, seconds=seconds).wait()
    return bottom_left(copies, case.cloth)

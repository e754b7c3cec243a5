"""Between a plan and what the project keeps of it."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.cloth.check import plan_at
from workbench.cloth.fingerprint import is_stale
from workbench.cloth.plan import Copy, Plan
from workbench.cloth.records import Cloth, KeptPlan


def kept(plan: Plan) -> KeptPlan:
    """What is stored of a plan; :func:`plan_of` gives the same plan back."""
    return KeptPlan(plan.cloth, plan.made_from, plan.length_mm, plan.placed, plan.how)


def plan_of(own: KeptPlan, copies: Sequence[Copy], cloth: Cloth) -> Plan | None:
    """The kept plan, checked anew; None where pieces or cloth have changed since.

    Where it was sound and a file has been tampered with, its findings say what is wrong.
    """
    if is_stale(own, copies, cloth):
        return None
    return plan_at(own.placed, copies, cloth, own.how)

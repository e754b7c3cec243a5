"""What lies on each cloth of a project: the plan she keeps, or until there is one a plain plan."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from workbench.cloth import (
    Buy,
    Cloth,
    ClothBought,
    Copy,
    KeptPlan,
    LayError,
    Plan,
    bottom_left,
    copies_of,
    is_stale,
    lie_alike,
    plan_of,
    to_buy,
)
from workbench.draft import Finding
from workbench.pieces import Cutting, LayerName

PlanState = Literal["current", "stale", "none", "found"]
_BOUGHT_READY: tuple[LayerName, ...] = ("waist_tape",)
"""Layers that are bought as what they are and need no cloth."""
_SOME_MM = 1.0
"""A length that is not known yet is more than nothing, or it would be told as nothing to buy (own choice)."""


@dataclass(frozen=True)
class Lay:
    """One cloth with what is cut from it, how that lies, and what to buy."""

    cloth: Cloth
    copies: tuple[Copy, ...]
    state: PlanState
    """Whether a plan is kept and holds, or pieces and cloth have changed since, or there is none;
    or whether a better one than that has just been found."""
    plan: Plan | None
    """The kept plan while it holds, else a plain one laid at once; None where nothing can be laid."""
    buy: Buy | None
    trouble: Finding | None = None
    """Why nothing can be laid."""

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What to look at before cutting, the gravest first."""
        if self.trouble is not None:
            return (self.trouble,)
        found = self.plan.findings if self.plan is not None else ()
        return (*found, _stale(self.cloth)) if self.state == "stale" else found

    @property
    def bought(self) -> ClothBought:
        """The cloth as a quote takes it; without a cost where it is not known how much is needed."""
        name = self.cloth.name
        if self.plan is None or self.buy is None:
            return ClothBought(name, _SOME_MM, None, "cannot be laid yet")
        if self.plan.left_over:
            return ClothBought(name, _SOME_MM, None, "more is needed than there is")
        return ClothBought(name, self.buy.length_mm, self.buy.cost, self.buy.words)


def lay_of(cutting: Cutting, cloth: Cloth, kept: KeptPlan | None) -> Lay:
    """What is cut from a cloth and how it lies; quick, nothing is sought for long."""
    copies: tuple[Copy, ...] = ()
    state: PlanState = "none" if kept is None else "stale"
    try:
        copies = copies_of(cutting, cloth)
        if kept is not None and not is_stale(kept, copies, cloth):
            state = "current"
        return lay_with(cloth, copies, state, _plan(copies, cloth, kept))
    except LayError as error:
        return Lay(cloth, copies, state, None, None, error.finding)


def lay_with(cloth: Cloth, copies: tuple[Copy, ...], state: PlanState, plan: Plan) -> Lay:
    """A cloth with a certain plan, and what to buy for it; LayError where that cannot be."""
    return Lay(cloth, copies, state, plan, to_buy(plan.length_mm, cloth, len(plan.left_over)))


def lent(lay: Lay, cloth: Cloth) -> Lay | None:
    """The same lay for a cloth that differs only in what it costs, how it is sold or how much there is.

    None where it lies in another way, or could not be laid.
    """
    if cloth == lay.cloth:
        return lay
    if lay.plan is None or cloth.name != lay.cloth.name or not lie_alike(cloth, lay.cloth):
        return None
    try:
        return lay_with(cloth, lay.copies, lay.state, lay.plan)
    except LayError:
        return None


def _plan(copies: tuple[Copy, ...], cloth: Cloth, kept: KeptPlan | None) -> Plan:
    held = plan_of(kept, copies, cloth) if kept is not None else None
    return held if held is not None else bottom_left(copies, cloth)


def no_cloth_findings(cutting: Cutting, cloths: Iterable[Cloth]) -> Iterator[Finding]:
    """A finding for each layer that has pieces and is cut from none of the cloths."""
    covered = {layer for cloth in cloths for layer in cloth.layers}
    for layer in cutting.layers:
        if layer.pieces and layer.name not in covered and layer.name not in _BOUGHT_READY:
            yield Finding(
                "attend",
                "no_cloth",
                "{layer} is cut from no cloth, so that none is bought for it.",
                words={"layer": layer.label},
                remedy="Say which cloth it is cut from, or leave the layer out.",
            )


def _stale(cloth: Cloth) -> Finding:
    return Finding(
        "attend",
        "plan_stale",
        "The lay plan kept for {cloth} is out of date: pieces or cloth have changed since.",
        words={"cloth": cloth.name},
        remedy="Lay it again; what is shown is a plain plan of the pieces as they are now.",
    )

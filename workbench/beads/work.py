"""From a draft, a way of making and a plan to every bead of the half."""

from __future__ import annotations

from workbench.beads.count import counted
from workbench.beads.keep_out import rooms_of
from workbench.beads.lay_run import run_laid
from workbench.beads.lay_scatter import scatter_laid
from workbench.beads.records import BeadPlan
from workbench.beads.result import Band, Beading
from workbench.beads.table import Table
from workbench.beads.trouble import no_rate
from workbench.draft import Finding, Outcome
from workbench.pieces import Bone, Making


def beading_of(outcome: Outcome, making: Making, bones: tuple[Bone, ...], plan: BeadPlan) -> Beading:
    """Every bead of the half, what they come to, and what to look at; nothing without a draft.

    Runs are laid first, then scatters, each in the order of the plan; a bead that would lie on one laid
    before it, or in a band that is kept free, is left out. The same input gives the same beads.
    """
    if outcome.draft is None or plan.empty:
        return Beading(plan, (), counted(plan, ()), ())
    table = Table(outcome, outcome.draft, making, bones, plan)
    laid = [
        *(run_laid(number, table) for number in range(len(plan.runs))),
        *(scatter_laid(number, table) for number in range(len(plan.scatters))),
    ]
    beaded = tuple(each for each, _ in laid)
    found: list[Finding] = [finding for _, own in laid for finding in own]
    count = counted(plan, beaded)
    if count.total and plan.per_minute <= 0:
        found.append(no_rate())
    return Beading(plan, beaded, count, tuple(found))


def bands_of(outcome: Outcome, making: Making, bones: tuple[Bone, ...], plan: BeadPlan) -> tuple[Band, ...]:
    """Everything that is kept free of beads on the half, to be shaded; nothing without a draft."""
    if outcome.draft is None:
        return ()
    rooms = rooms_of(outcome, outcome.draft, making, bones, plan.bands)
    return tuple(band for room in rooms for band in room.bands())

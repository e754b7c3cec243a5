"""The sewing order of one garment: every step, in the order in which it can be done."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from workbench.pieces import Cutting, Making
from workbench.sewing.bone_steps import make_modesty, make_opening, put_in_bones, set_tape, stitch_channels
from workbench.sewing.cutting_steps import before_cutting, cut_and_mark, layer_up
from workbench.sewing.finish_steps import finish_edges, fit_shell, look_over, sew_beads
from workbench.sewing.garment import Garment
from workbench.sewing.seam_steps import close_front, sew_lining, sew_shell
from workbench.sewing.step import Step


def sewing_order(
    cutting: Cutting, making: Making, beads: int = 0, bead_minutes: float = 0.0
) -> tuple[Step, ...]:
    """The steps that this cutting and this way of making ask for; none where nothing is cut.

    The order is common practice, no source: whatever must be flat comes before what makes
    it round, and what a fitting can change comes last of its kind.
    """
    if not cutting.pieces:
        return ()
    return tuple(_steps(Garment(cutting, making), beads, bead_minutes))


def _steps(garment: Garment, beads: int, bead_minutes: float) -> Iterator[Step]:
    yield from before_cutting(garment)
    yield from cut_and_mark(garment)
    yield from layer_up(garment)
    yield from close_front(garment)
    yield from sew_shell(garment)
    yield from fit_shell(garment)
    yield from stitch_channels(garment)
    yield from set_tape(garment)
    yield from sew_beads(beads, bead_minutes)
    yield from make_opening(garment)
    yield from put_in_bones(garment)
    yield from sew_lining(garment)
    yield from finish_edges(garment)
    yield from make_modesty(garment)
    yield from look_over(garment)


def minutes_by_stage(steps: tuple[Step, ...]) -> dict[str, float]:
    """Minutes of each stage that takes any, in the order in which the stages first come."""
    sums: dict[str, float] = {}
    for step in steps:
        sums[step.stage] = sums.get(step.stage, 0.0) + step.minutes
    return {stage: minutes for stage, minutes in sums.items() if minutes > 0}


def chapters(steps: tuple[Step, ...]) -> tuple[tuple[str, tuple[Step, ...]], ...]:
    """Runs of steps of one stage, in order; a stage that is taken up again has a run of its own."""
    return tuple((stage, tuple(run)) for stage, run in groupby(steps, key=lambda step: step.stage))

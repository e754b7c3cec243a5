"""The bead plan of a style on another body: drawn lines in proportion, all else as it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from workbench.beads import BeadPlan
from workbench.document.carry_lines import carried_line
from workbench.draft import Level, ShapePoint


def carried_beads(plan: BeadPlan, old: Sequence[Level], new: Sequence[Level]) -> BeadPlan:
    """The plan with every drawn line at the same part of the way from level to level as it was."""

    def carried(points: tuple[ShapePoint, ...]) -> tuple[ShapePoint, ...]:
        return carried_line(points, tuple(old), tuple(new)) or ()

    runs = tuple(replace(run, points=carried(run.points)) for run in plan.runs)
    scatters = tuple(replace(scatter, thin_to=carried(scatter.thin_to)) for scatter in plan.scatters)
    return replace(plan, runs=runs, scatters=scatters)

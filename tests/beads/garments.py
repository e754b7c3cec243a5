"""Bodices to bead, and plans for them (figures invented)."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from workbench.beads import (
    Beading,
    BeadKind,
    BeadPlan,
    BeadRun,
    BeadScatter,
    BeadWeight,
    beading_of,
    usual_kinds,
)
from workbench.body import complete
from workbench.draft import Outcome, ShapePoint, usual_design, work_out
from workbench.pieces import Bone, Making, bones_of

GIRTHS = {"bust_girth": 914.4, "waist_girth": 704.85, "underbust_girth": 790.575, "top_hip_girth": 889.0}
KINDS = usual_kinds()
LACED = Making()
PLAIN = replace(LACED, boning=replace(LACED.boning, places=()))
"""Without a bone anywhere."""


@cache
def bodice(waist: float = 50.8) -> Outcome:
    """Six panels in the half, under the bust."""
    design = usual_design()
    return work_out(complete(GIRTHS), replace(design, reductions=replace(design.reductions, waist=waist)))


@cache
def bones(making: Making = LACED) -> tuple[Bone, ...]:
    return bones_of(bodice(), making)[0]


def beading(plan: BeadPlan, making: Making = LACED, outcome: Outcome | None = None) -> Beading:
    outcome = outcome or bodice()
    return beading_of(outcome, making, bones_of(outcome, making)[0], plan)


def with_runs(*runs: BeadRun) -> BeadPlan:
    return BeadPlan(kinds=KINDS, runs=runs)


def with_scatters(*scatters: BeadScatter) -> BeadPlan:
    return BeadPlan(kinds=KINDS, scatters=scatters)


def over_all(kind: str = "Seed bead 11/0", density: float = 30.0, seed: int = 1) -> BeadScatter:
    return BeadScatter("All over", (0, 1, 2, 3, 4, 5), (BeadWeight(kind),), density, seed)


RICH = BeadPlan(
    kinds=KINDS,
    runs=(
        BeadRun("Edge", "neckline", ("Pearl 6 mm", "Pearl 4 mm"), 7.0, rows=2, row_mm=7.0),
        BeadRun("Hem", "hem", ("Pearl 4 mm",), 6.0),
        BeadRun("Beside", "seam", ("Seed bead 8/0",), 4.0, seam=2, inset_mm=12.0),
        BeadRun(
            "Swirl", "drawn", ("Pearl 4 mm",), 5.0, points=(ShapePoint(0.2, -20.0), ShapePoint(1.5, 40.0))
        ),
    ),
    scatters=(
        BeadScatter(
            "Front",
            (0, 1, 2),
            (BeadWeight("Pearl 4 mm"), BeadWeight("Seed bead 11/0", 3.0)),
            20.0,
            thin_from="neckline",
            thin_to=(ShapePoint(0.0, -10.0), ShapePoint(6.0, 10.0)),
        ),
        BeadScatter("Back", (3, 4, 5), (BeadWeight("Seed bead 8/0"),), 15.0),
    ),
)


def kind_called(name: str) -> BeadKind:
    return BeadPlan(kinds=KINDS).kind(name)

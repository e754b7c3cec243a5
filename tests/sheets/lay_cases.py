"""Invented cloths with plans on them, and where pieces lie, worked out apart from the program."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, replace
from math import cos, radians, sin

import numpy as np
from numpy.typing import NDArray

from workbench.cloth import Cloth, Copy, Placed, Plan, bottom_left, copies_of, plan_at
from workbench.pieces import Cutting
from workbench.sheets import Heading, print_lay

Array = NDArray[np.float64]

SATIN = Cloth("Ivory satin", ("fashion",))
CLOTHS = {
    "single": SATIN,
    "folded": replace(SATIN, laid="folded", step="half_yard"),
    "several": Cloth("Coutil", ("fashion", "strength", "lining")),
    "one way": replace(SATIN, run="one_way", repeat_mm=160.0, shrinkage_percent=4.0),
    "at hand": replace(SATIN, width_mm=1500.0, at_hand_mm=2500.0, step="ten_cm"),
    "remnant": replace(SATIN, remnant=((0, 20), (900, 60), (880, 1200), (300, 1300), (0, 1000))),
}


@dataclass(frozen=True, eq=False)
class LayJob:
    """One cloth with its plan, and the words above it."""

    cloth: Cloth
    plan: Plan
    cutting: Cutting
    heading: Heading

    def pdf(self, paper: str = "A4") -> bytes:
        return print_lay(((self.cloth, self.plan, self.cutting),), self.heading, paper)

    @property
    def copies(self) -> dict[tuple[str, int], Copy]:
        return {copy.key: copy for copy in copies_of(self.cutting, self.cloth)}

    @property
    def start(self) -> float:
        """The cut end; a remnant's is its foot between the selvedges, drawn by hand in these cases."""
        if self.cloth.remnant is None:
            return 0.0
        low, high = self.cloth.remnant[0], self.cloth.remnant[1]
        return low[1] + (high[1] - low[1]) * (self.cloth.selvedge_mm - low[0]) / (high[0] - low[0])

    def outline(self, placed: Placed) -> Array:
        """(n, 2) along from the cut end and across, by plain trigonometry."""
        points = self.copies[placed.piece, placed.copy].outline
        turn = radians(placed.degrees)
        x = -points[:, 0] if placed.mirrored else points[:, 0]
        across = x * cos(turn) - points[:, 1] * sin(turn) + placed.x
        along = x * sin(turn) + points[:, 1] * cos(turn) + placed.y - self.start
        return np.column_stack((along, across))


def laid(cutting: Cutting, cloth: Cloth, heading: Heading) -> LayJob:
    return LayJob(cloth, bottom_left(copies_of(cutting, cloth), cloth), cutting, heading)


def moved(job: LayJob, number: int, **changed: float) -> LayJob:
    """The same plan with one piece put elsewhere by hand."""
    placed = list(job.plan.placed)
    placed[number] = replace(placed[number], **changed)  # type: ignore[arg-type]
    plan = plan_at(placed, copies_of(job.cutting, job.cloth), job.cloth, "Moved by hand.")
    return replace(job, plan=plan)


FIGURE = r"(\d*[½¼¾⅛⅜⅝⅞]|\d+(?:\.\d+)?)"


def in_mm(figure: str, unit: str) -> float:
    """A printed figure: an inch is 25.4 mm (international yard and pound agreement of 1959, from memory)."""
    found = re.fullmatch(r"(\d*)(\D?)|(\d+\.\d+)", figure)
    assert found, figure
    if found[3]:
        return float(found[3]) * (25.4 if unit == "in" else 10.0)
    value = float(found[1] or 0) + (unicodedata.numeric(found[2]) if found[2] else 0.0)
    return value * (25.4 if unit == "in" else 10.0)

"""The beads as they lie on the half, and how many there are. Frozen values in millimetres."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from workbench.beads.records import BeadKind, BeadPlan
from workbench.draft import Finding

Array = NDArray[np.float64]
Ints = NDArray[np.intp]
Flags = NDArray[np.bool_]

BandWhy = Literal["bone", "seam", "edge", "opening", "arm"]
"""Why a place is kept free: a bone channel, a seam, neckline or hem, what opens, the arm."""


@dataclass(frozen=True)
class Strewn:
    """Single beads of the half, in the order in which they were placed."""

    points: Array
    """(n, 2) on the flat of their panels."""
    panels: Ints
    kinds: Ints
    """(n,) numbers of their kinds in the plan."""
    once: Flags
    """Those on the fold of the centre front: one on the garment, where every other one has a twin."""

    def __len__(self) -> int:
        return len(self.panels)

    def part(self, which: Flags | slice) -> Strewn:
        """Some of the beads."""
        return Strewn(self.points[which], self.panels[which], self.kinds[which], self.once[which])


@dataclass(frozen=True)
class RowCount:
    """One row of a run: its length in mm, places along it by length and spacing, and beads that lie there."""

    length: float
    asked: int
    placed: int


@dataclass(frozen=True)
class Beaded:
    """What one run or scatter came to; counts are of the whole garment, both halves."""

    name: str
    what: Literal["run", "scatter"]
    beads: Strewn
    counts: Mapping[str, int]
    """By kind."""
    rows: tuple[RowCount, ...] = ()
    """Of the half."""

    @property
    def total(self) -> int:
        """All its beads on the garment."""
        return sum(self.counts.values())


@dataclass(frozen=True)
class KindCount:
    """One line of the shopping list for beads; counts are of the whole garment."""

    kind: BeadKind
    in_runs: int
    in_scatters: int
    with_reserve: int
    strands: int
    cost: Decimal | None
    """Of the strands; None where the kind has no price yet."""

    @property
    def total(self) -> int:
        """As many as are sewn on."""
        return self.in_runs + self.in_scatters


@dataclass(frozen=True)
class BeadCount:
    """What is bought and how long it takes."""

    kinds: tuple[KindCount, ...]
    """Those that are used, in the order of the plan."""
    hours: Decimal
    """Time to sew them on, up to whole quarters; nothing where no rate is given."""

    @property
    def total(self) -> int:
        """All beads on the garment."""
        return sum(line.total for line in self.kinds)

    @property
    def cost(self) -> Decimal:
        """Of all that has a price."""
        return sum((line.cost for line in self.kinds if line.cost is not None), Decimal(0))


@dataclass(frozen=True)
class Band:
    """One stretch of a panel that is kept free, as closed rings for shading; the first is its outside."""

    panel: int
    why: BandWhy
    rings: tuple[Array, ...]


@dataclass(frozen=True)
class Beading:
    """All of it, for one draft, one way of making and one plan."""

    plan: BeadPlan
    beaded: tuple[Beaded, ...]
    """Runs and scatters in the order of the plan; one that cannot be laid has no beads and a finding."""
    count: BeadCount
    findings: tuple[Finding, ...]

    @property
    def all(self) -> Strewn:
        """Every bead of the half, runs first."""
        return together([each.beads for each in self.beaded])


def together(parts: list[Strewn]) -> Strewn:
    """The beads of several as one."""
    parts = parts or [NONE]
    return Strewn(
        np.concatenate([part.points for part in parts]),
        np.concatenate([part.panels for part in parts]),
        np.concatenate([part.kinds for part in parts]),
        np.concatenate([part.once for part in parts]),
    )


NONE = Strewn(np.zeros((0, 2)), np.zeros(0, np.intp), np.zeros(0, np.intp), np.zeros(0, np.bool_))
"""No beads."""

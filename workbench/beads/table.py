"""The panels laid out for beading: the room on each, what lies there so far, and how many beads there are."""

from __future__ import annotations

from collections import Counter

import numpy as np

from workbench.beads.ground import Ground
from workbench.beads.keep_out import Room, rooms_of
from workbench.beads.lattice import Lattice, lattice_over
from workbench.beads.records import BeadPlan
from workbench.beads.result import Array, Flags, Ints
from workbench.beads.trouble import MOST_HALF
from workbench.draft import Draft, Outcome
from workbench.pieces import Bone, Making


class Table:
    """What runs and scatters are laid on, one after the other."""

    def __init__(
        self, outcome: Outcome, draft: Draft, making: Making, bones: tuple[Bone, ...], plan: BeadPlan
    ) -> None:
        self.draft, self.plan = draft, plan
        self.rooms: tuple[Room, ...] = rooms_of(outcome, draft, making, bones, plan.bands)
        self.laid = 0
        self._numbers = {kind.name: number for number, kind in enumerate(plan.kinds)}
        self._sizes = np.array([kind.size_mm for kind in plan.kinds])
        used = self._sizes[self.numbers(_named(plan))]
        self._grounds = [
            Ground(panel.outline.min(axis=0), panel.outline.max(axis=0), used.min(), used.max())
            for panel in draft.panels
        ]
        self._clear: dict[int, Lattice] = {}

    @property
    def left(self) -> int:
        """Beads that may still be laid on the half."""
        return MOST_HALF - self.laid

    def ground(self, panel: int) -> Ground:
        """The beads on a panel so far."""
        return self._grounds[panel]

    def clear(self, panel: int) -> Lattice:
        """The clearance over a panel, at the points of a lattice."""
        if panel not in self._clear:
            room = self.rooms[panel]
            self._clear[panel] = lattice_over(room.panel.outline, room.clearance)
        return self._clear[panel]

    def numbers(self, names: list[str]) -> Ints:
        """Numbers of kinds in the plan."""
        return np.array([self._numbers[name] for name in names], dtype=np.intp)

    def sizes(self, kinds: Ints) -> Array:
        """Sizes in mm of kinds by their numbers."""
        sizes: Array = self._sizes[kinds]
        return sizes

    def counts(self, kinds: Ints, once: Flags) -> Counter[str]:
        """Beads of each kind on the whole garment: the other half mirrors all but those on the fold."""
        whole = Counter[str]()
        for number, kind in enumerate(self.plan.kinds):
            own = kinds == number
            whole[kind.name] = int(2 * own.sum() - (own & once).sum())
        return +whole


def _named(plan: BeadPlan) -> list[str]:
    """Kinds that runs and scatters name."""
    runs = [name for run in plan.runs for name in run.pattern]
    return runs + [part.kind for scatter in plan.scatters for part in scatter.mix]

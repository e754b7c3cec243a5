"""Copies and cloth as the packing library takes them, and its answer as places on the cloth.

The library packs into a strip of fixed height, which is the width of the cloth here; so everything
is given to it turned a quarter. It reckons in single precision: each outline is centred first, and
the strip is a hair higher than the cloth is wide. Figures are own choice, tried with the packing
library.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import spyrrow

from workbench.cloth.plan import Array, Copy, turned
from workbench.cloth.records import Cloth, Placed
from workbench.cloth.room import room_of
from workbench.cloth.ways import along_grain, turns_allowed

_LEAST_GAP = 0.05
"""mm; with none the library lets outlines overlap by a rounding error."""
_HAIR = 0.06
"""mm that the strip is wider than the cloth: a piece just as wide does not go in otherwise."""
_VALID = (spyrrow.ReportType.ExplFeas, spyrrow.ReportType.CmprFeas, spyrrow.ReportType.Final)
"""The only reports in which nothing overlaps."""

Report = tuple[spyrrow.ReportType, spyrrow.StripPackingSolution]


@dataclass(frozen=True)
class Group:
    """Copies of one shape that lie the same side up, and how they are given."""

    copies: tuple[Copy, ...]
    degrees: float
    middle: Array
    ring: Array
    """(n, 2) turned to the grain, about its middle."""


class Strip:
    """One packing problem."""

    def __init__(self, copies: Sequence[Copy], cloth: Cloth) -> None:
        room = room_of(cloth)
        self._gap = max(cloth.gap_mm, _LEAST_GAP)
        self._groups = _groups(copies)
        self._right = room.right + self._gap + 0.5 * _HAIR
        turns = list(turns_allowed(cloth))
        items = [_item(str(number), group, turns) for number, group in enumerate(self._groups)]
        # The library keeps the gap to the edges of the strip too; pieces may touch the selvedge.
        self.problem = spyrrow.StripPackingInstance("", room.width + 2 * self._gap + _HAIR, items)

    def config(self, seconds: float, workers: int, seed: int) -> spyrrow.StripPackingConfig:
        """How the library is to go about it; it counts whole seconds."""
        return spyrrow.StripPackingConfig(
            total_computation_time=max(round(seconds), 1),
            num_workers=workers,
            min_items_separation=self._gap,
            seed=seed,
        )

    def placed(self, solution: spyrrow.StripPackingSolution) -> tuple[Placed, ...]:
        """Where each copy lies, in the order of the groups."""
        left = {str(number): list(group.copies) for number, group in enumerate(self._groups)}
        return tuple(self._place(item, left[item.id].pop(0)) for item in solution.placed_items)

    def _place(self, item: spyrrow.PlacedItem, copy: Copy) -> Placed:
        group = self._groups[int(item.id)]
        along, up = item.translation
        x, y = turned(-group.middle[None], item.rotation, False)[0].tolist()
        degrees = round((group.degrees + item.rotation) % 360, 4) % 360
        return Placed(
            copy.piece, copy.number, x + self._right - up, y + along - self._gap, degrees, copy.mirrored
        )


def valid_ones(reports: Sequence[Report]) -> list[spyrrow.StripPackingSolution]:
    """The layouts among the library's reports in which nothing overlaps."""
    return [solution for kind, solution in reports if kind in _VALID]


def _groups(copies: Sequence[Copy]) -> list[Group]:
    """Copies of one shape together, whichever layer they are of: the library is quicker with few shapes."""
    alike: dict[tuple[int, bool], list[Copy]] = {}
    for copy in copies:
        alike.setdefault((id(copy.outline), copy.mirrored), []).append(copy)
    return [_group(tuple(group)) for group in alike.values()]


def _group(copies: tuple[Copy, ...]) -> Group:
    degrees = along_grain(copies[0], copies[0].mirrored)
    ring = turned(copies[0].outline, degrees, copies[0].mirrored)
    middle = 0.5 * (ring.min(axis=0) + ring.max(axis=0))
    return Group(copies, degrees, middle, ring - middle)


def _item(name: str, group: Group, turns: list[float]) -> spyrrow.Item:
    x, y = group.ring.T
    across_up = np.column_stack((y, -x)).tolist()
    return spyrrow.Item(name, [(a, b) for a, b in across_up], len(group.copies), turns)

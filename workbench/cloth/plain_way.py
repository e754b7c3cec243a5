"""One piece after the other, each as far down the cloth as it will go.

Quick, the same every time, and the one way here that goes round pinned pieces, keeps to the fold
and to the repeat of a print, and fills a remnant of any shape. Figures are own choice, how long a
plan may take.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import zip_longest

import numpy as np

from workbench.cloth.check import plan_at
from workbench.cloth.columns import Ground
from workbench.cloth.fits import must_fit
from workbench.cloth.plan import Copy, CopyKey, Plan, by_key, laid
from workbench.cloth.records import Cloth, Placed
from workbench.cloth.room import room_of
from workbench.cloth.solves import how_laid
from workbench.cloth.spans import Shape, guarded, shape_of, span_of
from workbench.cloth.ways import ways_of

COLUMN = 3.0
"""mm: the width of a column on a plain cloth; beside each piece up to so much is lost."""
_MOST_COLUMNS = 600
_FEW = 24
"""With more copies than this not every order is tried."""


@dataclass(frozen=True)
class Spot:
    """Where one copy came to lie, and how high up the cloth it reaches, mm."""

    placed: Placed
    top: float


class Table:
    """The cloth with its pinned pieces, on which orders of the others are tried."""

    def __init__(self, copies: Sequence[Copy], cloth: Cloth, pinned: Sequence[Placed] = ()) -> None:
        """LayError where the cloth cannot be, or a copy fits on it in no way."""
        self.cloth, self.room = cloth, room_of(cloth)
        must_fit(copies, cloth, self.room)
        self.pinned = _known(pinned, copies)
        held = {(own.piece, own.copy) for own in self.pinned}
        self.copies = [copy for copy in copies if copy.key not in held]
        # Whole columns, so that a piece just as wide as the cloth has room.
        self.step = self.room.width / min(max(round(self.room.width / COLUMN), 1), _MOST_COLUMNS)
        self._shapes = _shapes(self.copies, cloth, self.step)
        self._ground = Ground(self.room, self.step, _joined(self._shapes))
        self._pin(by_key(copies))

    def lay(self, order: Iterable[Copy]) -> tuple[list[Spot], list[CopyKey]]:
        """Where the copies come to lie in that order, and those there is no room for."""
        ground, spots, without = self._ground.copy(), [], []
        for copy in order:
            spot = self._best(ground, copy)
            if spot is None:
                without.append(copy.key)
            else:
                spots.append(spot)
        return spots, without

    def _best(self, ground: Ground, copy: Copy) -> Spot | None:
        """The place whose far end is lowest; further left of two that are equal."""
        best: tuple[float, int, Shape] | None = None
        for shape in self._shapes[id(copy.outline), copy.mirrored, copy.on_fold]:
            column, height = ground.lowest(shape.bare, self._rise(shape), copy.on_fold)
            top = height + shape.height
            if np.isfinite(top) and (best is None or top < best[0] - 1e-6):
                best = top, column, shape
        if best is None:
            return None
        top, column, shape = best
        ground.take(shape.guarded, column, top - shape.height)
        return Spot(self._placed(copy, shape, column, top - shape.height), top)

    def _rise(self, shape: Shape) -> tuple[float, float] | None:
        return (self.cloth.repeat_mm, shape.shift[1]) if self.cloth.repeat_mm > 0 else None

    def _placed(self, copy: Copy, shape: Shape, column: int, height: float) -> Placed:
        x = self.room.left + column * self.step + shape.shift[0]
        return Placed(copy.piece, copy.number, x, height + shape.shift[1], shape.degrees, shape.mirrored)

    def _pin(self, known: dict[CopyKey, Copy]) -> None:
        for placed in self.pinned:
            ring = laid(known[placed.piece, placed.copy], placed) - np.array([self.room.left, 0.0])
            self._ground.take(guarded(span_of(ring, self.step), self.step, self.cloth.gap_mm), 0, 0.0)


def bottom_left(copies: Sequence[Copy], cloth: Cloth, pinned: Sequence[Placed] = ()) -> Plan:
    """A checked plan, the same for the same copies; pinned pieces stay where they are.

    Copies there is no room for on a remnant are left over and named in a finding. Raises
    LayError where the cloth cannot be, or where a copy is wider than it.
    """
    table = Table(copies, cloth, pinned)
    tried = [table.lay(order) for order in orders_of(table.copies)[: _tries(table)]]
    spots, _ = min(tried, key=lambda found: (len(found[1]), longest(found[0])))
    return plan_of_spots(table, copies, spots, how_laid(copies, cloth, bool(table.pinned)))


def _tries(table: Table) -> int:
    """So many orders that a plan is there within a blink; walls of a remnant take longer to go round."""
    if len(table.copies) <= _FEW:
        return 3
    return 1 if table.room.shape is not None else 2


def plan_of_spots(table: Table, copies: Sequence[Copy], spots: Iterable[Spot], how: str) -> Plan:
    """The pinned pieces and what was laid round them, checked."""
    return plan_at((*table.pinned, *(spot.placed for spot in spots)), copies, table.cloth, how)


def longest(spots: Iterable[Spot]) -> float:
    """How far along the cloth the farthest one reaches, mm."""
    return max((spot.top for spot in spots), default=0.0)


def orders_of(copies: Sequence[Copy]) -> list[list[Copy]]:
    """Orders worth trying, halves on the fold first: tall and low in turn, the largest first, the tallest."""
    size = {id(copy): np.ptp(copy.outline, axis=0) for copy in copies}

    def by(across: float) -> list[Copy]:
        sizes = np.array([across, 1.0])
        return sorted(copies, key=lambda copy: (not copy.on_fold, -float(size[id(copy)] @ sizes)))

    tall, large = by(0.0), by(1.0)
    middle = (len(tall) + 1) // 2
    in_turn = [copy for pair in zip_longest(tall[:middle], tall[: middle - 1 : -1]) for copy in pair if copy]
    return [sorted(in_turn, key=lambda copy: not copy.on_fold), large, tall]


def _known(pinned: Sequence[Placed], copies: Sequence[Copy]) -> tuple[Placed, ...]:
    """The pinned pieces that are still to be laid; what was pinned and is no longer cut is forgotten."""
    known = by_key(copies)
    return tuple(own for own in pinned if (own.piece, own.copy) in known)


_Ways = dict[tuple[int, bool, bool], tuple[Shape, ...]]


def _shapes(copies: Sequence[Copy], cloth: Cloth, step: float) -> _Ways:
    """Each distinct shape in each way it may lie; layers that are cut alike share one."""
    found: _Ways = {}
    for copy in copies:
        key = (id(copy.outline), copy.mirrored, copy.on_fold)
        if key not in found:
            ways = ways_of(copy, cloth)
            found[key] = tuple(shape_of(copy, *way, step, cloth.gap_mm) for way in ways)
    return found


def _joined(shapes: _Ways) -> float:
    """Free stretches lower than a part of the lowest shape are not looked into again."""
    return 0.25 * min((way.height for ways in shapes.values() for way in ways), default=0.0)

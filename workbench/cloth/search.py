"""The same plain laying, tried in many orders: what serves where the packing library cannot."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random

from workbench.cloth.plain_way import Spot, Table, longest, orders_of, plan_of_spots
from workbench.cloth.plan import Copy, CopyKey, Plan
from workbench.cloth.solves import how_laid

_Rank = tuple[int, float, float]


def better_plans(table: Table, copies: Sequence[Copy], seed: int) -> Iterator[Plan | None]:
    """Goes on for ever: a plan each time a better order is found, None for one that is not.

    Two pieces change places, or one is put elsewhere; the new order is kept unless it is worse.
    """
    chance = Random(seed)
    order, best = list(table.copies), None
    for tried, trial in enumerate(_trials(table, order, chance), start=1):
        found = table.lay(trial)
        rank = _rank(*found)
        if best is not None and rank > best:
            yield None
            continue
        order[:] = trial
        shorter = best is None or rank[:2] < best[:2]
        best = rank
        how = f"{how_laid(copies, table.cloth, bool(table.pinned))} The best of {tried} orders."
        yield plan_of_spots(table, copies, found[0], how) if shorter else None


def _trials(table: Table, order: list[Copy], chance: Random) -> Iterator[list[Copy]]:
    """The usual orders, then changes to the one that is best so far."""
    yield from orders_of(table.copies)
    while True:
        yield _changed(order, chance)


def _changed(order: list[Copy], chance: Random) -> list[Copy]:
    trial = list(order)
    if len(trial) < 2:
        return trial
    one, other = chance.randrange(len(trial)), chance.randrange(len(trial))
    if chance.random() < 0.5:
        trial[one], trial[other] = trial[other], trial[one]
    else:
        trial.insert(other, trial.pop(one))
    return trial


def _rank(spots: list[Spot], without: list[CopyKey]) -> _Rank:
    """Fewer left over, then shorter, then lower on the whole."""
    return len(without), longest(spots), sum(spot.top for spot in spots)

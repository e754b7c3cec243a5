"""Process time, taken many times. Wall time is not asked: the machine may be shared."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from time import process_time

import numpy as np

Act = Callable[[], object]


@dataclass(frozen=True)
class Timing:
    """What one row of the table says, in milliseconds (or what ``unit`` names)."""

    what: str
    middle: float
    high: float
    goal: float | None = None
    floor: float | None = None
    unit: str = "ms"

    @property
    def ratio(self) -> float | None:
        """How many times the floor it takes."""
        return self.middle / self.floor if self.floor else None


def timed(acts: Iterable[Act]) -> tuple[float, float]:
    """Median and 95th percentile of the process time of each act, ms."""
    gc.collect()
    times = []
    for act in acts:
        start = process_time()
        act()
        times.append(1000 * (process_time() - start))
    return float(np.percentile(times, 50)), float(np.percentile(times, 95))


def best(act: Act, times: int) -> float:
    """The least process time of an act done many times, ms."""
    act()
    gc.collect()
    least = float("inf")
    for _ in range(times):
        start = process_time()
        act()
        least = min(least, process_time() - start)
    return 1000 * least


def table(rows: Sequence[Timing]) -> str:
    """The rows as text, one a line."""
    head = f"{'':44} {'median':>9} {'95 %':>9} {'goal':>9} {'floor':>9} {'times floor':>12}"
    return "\n".join([head, *map(_line, rows)])


def _line(row: Timing) -> str:
    figures = [_figure(row.middle), _figure(row.high), _figure(row.goal), _figure(row.floor)]
    ratio = f"{row.ratio:.1f}" if row.ratio else ""
    return f"{row.what + ', ' + row.unit:44} " + " ".join(f"{f:>9}" for f in figures) + f" {ratio:>12}"


def _figure(value: float | None) -> str:
    return "" if value is None else f"{value:.2f}" if value >= 0.1 else f"{value:.3f}"

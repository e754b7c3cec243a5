"""Seeking a shorter lay plan for a while, with word of each one found."""

from __future__ import annotations

from collections.abc import Callable
from time import monotonic, sleep

from workbench.cloth import Plan, Solve
from workbench.document.lays import Lay, lay_with
from workbench.draft import Finding

Told = Callable[[Plan, float], None]
"""Takes a plan that is better than those before, and the seconds it took to find."""
_LOOK_EVERY = 0.1
"""Seconds between two looks at what has been found (own choice)."""


def better_lay(lay: Lay, seconds: float, told: Told) -> tuple[Lay, tuple[Finding, ...]]:
    """The cloth with the best plan found in so many seconds, and what went wrong with the search.

    The plan on show counts too: what comes back is never longer. Pinned pieces of a kept plan
    stay where they are. Waits; what it has started is ended also when it is interrupted.
    """
    if lay.plan is None or not lay.copies or seconds <= 0:
        return lay, ()
    pinned = tuple(placed for placed in lay.plan.placed if placed.pinned)
    solve = Solve(lay.copies, lay.cloth, pinned, seconds)
    best, started = lay.plan, monotonic()
    try:
        running = True
        while running:
            # asleep, not waiting for the search: whoever interrupts it has it ended at once
            sleep(_LOOK_EVERY)
            solve.poll()
            running = solve.running
            if solve.best.better_than(best):
                best = solve.best
                told(best, monotonic() - started)
    finally:
        solve.cancel()
    return (lay if best is lay.plan else lay_with(lay.cloth, lay.copies, "found", best)), solve.findings

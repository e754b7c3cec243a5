"""The process in which a plan is sought: ``python -m workbench.cloth.child``.

A search of the packing library cannot be stopped from within its process, so it has one of its own
that can be ended. It reads one job from standard input and writes a line for every better plan to
standard output. When its input is closed the program that started it is gone, and it ends. Figures
are own choice, how the search is waited for.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from threading import Thread
from time import monotonic
from typing import BinaryIO

from workbench.cloth.check import plan_at
from workbench.cloth.plain_way import Table
from workbench.cloth.plan import LayError, Plan
from workbench.cloth.search import better_plans
from workbench.cloth.solves import how_solved, library_can
from workbench.cloth.wire import Job, line, plan_line, read_job

_LOOK_EVERY = 0.05
"""Seconds between two looks at what the library has found."""
_TELL_EVERY = 0.2
"""Seconds between two plans that are told: each one is checked and drawn by a window that has other work."""
_NICE = 10
"""The window goes before the search; more would leave it nothing beside other programs at work."""


def main() -> None:
    """Do one job and end."""
    given, told = sys.stdin.buffer, sys.stdout.buffer
    if hasattr(os, "nice"):
        os.nice(_NICE)
    job = read_job(given.readline())
    Thread(target=_end_with, args=(given,), daemon=True).start()
    _tell(told, line(_answer(job, told)))
    told.flush()
    # A thread still waits for input, and the library may still have some of its own.
    os._exit(0)


def _answer(job: Job, told: BinaryIO) -> dict[str, object]:
    """Tell every plan, and give back how it ended."""
    try:
        for plan in _now_and_then(_plans(job)):
            _tell(told, plan_line(plan.placed, plan.how))
    except LayError as error:
        return {"kind": "failed", "why": str(error)}
    # The library's own failures are not derived from Exception.
    except BaseException as error:
        return {"kind": "failed", "why": type(error).__name__}
    return {"kind": "done"}


def _now_and_then(plans: Iterator[Plan | None]) -> Iterator[Plan]:
    """The best plan so far, at most so often, and the last one whenever it was found."""
    newest: Plan | None = None
    due = monotonic()
    for plan in plans:
        newest = plan or newest
        if newest is not None and monotonic() >= due:
            yield newest
            newest, due = None, monotonic() + _TELL_EVERY
    if newest is not None:
        yield newest


def _plans(job: Job) -> Iterator[Plan | None]:
    """Plans each of which is better than those before; None where time has gone by without one."""
    if library_can(job.copies, job.cloth, job.pinned):
        return _packed(job)
    return _tried(job)


def _tried(job: Job) -> Iterator[Plan | None]:
    """Plans from many orders, for as long as the job says."""
    end = monotonic() + job.seconds
    for plan in better_plans(Table(job.copies, job.cloth, job.pinned), job.copies, job.seed):
        yield plan
        if monotonic() >= end:
            return


def _packed(job: Job) -> Iterator[Plan | None]:
    """Sound plans from the packing library, each shorter than the one before."""
    # Only here: nothing else in the program needs the library.
    import spyrrow

    from workbench.cloth.strip import Strip, valid_ones

    strip, reports = Strip(job.copies, job.cloth), spyrrow.ProgressQueue()
    failed: list[BaseException] = []
    config = strip.config(job.seconds, job.workers, job.seed)

    def solve() -> None:
        try:
            strip.problem.solve(config, reports)
        except BaseException as error:
            failed.append(error)

    work = Thread(target=solve, daemon=True)
    work.start()
    going = True
    while going:
        work.join(_LOOK_EVERY)
        going = work.is_alive()
        for solution in valid_ones(reports.drain())[-1:]:
            plan = plan_at(strip.placed(solution), job.copies, job.cloth, how_solved(job.copies, job.cloth))
            if plan.sound:
                yield plan
        yield None
    if failed:
        raise failed[0]


def _tell(told: BinaryIO, message: bytes) -> None:
    told.write(message)
    told.flush()


def _end_with(given: BinaryIO) -> None:
    """End this process when its input is closed."""
    while given.read(1024):
        pass
    os._exit(0)


if __name__ == "__main__":
    main()

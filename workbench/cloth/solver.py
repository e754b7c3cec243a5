"""Seeks a shorter plan beside the program: started, looked at, ended at once."""

from __future__ import annotations

import os
from collections.abc import Sequence
from time import monotonic

from workbench.cloth.check import plan_at
from workbench.cloth.plain_way import bottom_left
from workbench.cloth.plan import Copy, Plan
from workbench.cloth.records import Cloth, Placed
from workbench.cloth.wire import Job, job_line, read_placed
from workbench.cloth.worker import Message, Worker
from workbench.draft import Finding

FIRST_SECONDS = 3.0
"""How long a better plan is sought at first; own choice."""
_OVERRUN = 15.0
"""Seconds past its time after which a search is ended; the library is late by some (own choice)."""
_LAST = ("done", "failed")
"""After these a child says no more."""
_MOST_WORKERS = 3
"""More do not help (own choice, tried)."""


class Solve:
    """One cloth's plan, from the plain one to ever shorter ones.

    ``best`` is there from the start and only ever gets better; pinned pieces stay where they
    are. Nothing waits: ask :meth:`poll` from time to time.
    """

    def __init__(
        self,
        copies: Sequence[Copy],
        cloth: Cloth,
        pinned: Sequence[Placed] = (),
        seconds: float = FIRST_SECONDS,
        seed: int = 1,
        command: list[str] | None = None,
    ) -> None:
        """Raises LayError, and starts nothing, where the cloth cannot be or a copy does not fit on it."""
        self.copies, self.cloth, self.pinned = tuple(copies), cloth, tuple(pinned)
        self.best = bottom_left(copies, cloth, pinned)
        self.findings: tuple[Finding, ...] = ()
        self._seed, self._command = seed, command
        self._worker: Worker | None = None
        self._last: Message = {}
        if self.copies:
            self.improve(seconds)

    @property
    def running(self) -> bool:
        """Whether a search is going on."""
        return self._worker is not None

    def improve(self, seconds: float) -> None:
        """Seek on for so many seconds; a search that is going on is ended, ``best`` stays until beaten."""
        self.cancel()
        self.findings, self._last = (), {}
        job = Job(self.copies, self.cloth, self.pinned, seconds, self._seed, _workers())
        # Another seed each time, so that seeking on does not go the same way again.
        self._seed += 1
        self._over = monotonic() + seconds + _OVERRUN
        self._worker = Worker(job_line(job), self._command)

    def poll(self) -> list[Plan]:
        """Plans that are better than any before, the best last; each is checked. Never waits."""
        worker = self._worker
        if worker is None:
            return []
        ended = worker.ended or monotonic() > self._over
        messages = worker.messages()
        self._last = messages[-1] if messages else self._last
        found = self._better(messages)
        if ended or self._last.get("kind") in _LAST:
            self._finish(worker)
        return found

    def wait(self, seconds: float | None = None) -> Plan:
        """The best plan once the search is over, or after so many seconds."""
        end = None if seconds is None else monotonic() + seconds
        while self._worker is not None and (end is None or monotonic() < end):
            self._worker.wait(0.1 if end is None else min(0.1, max(end - monotonic(), 0.0)))
            self.poll()
        return self.best

    def cancel(self) -> None:
        """End the search at once; ``best`` stays."""
        if self._worker is not None:
            self._worker.end()
            self._worker = None

    def _better(self, messages: Sequence[Message]) -> list[Plan]:
        """The newest plan that holds; those before it are longer and are not looked at."""
        for message in reversed(messages):
            if message["kind"] == "plan":
                plan = plan_at(read_placed(message), self.copies, self.cloth, message["how"])
                if plan.better_than(self.best):
                    self.best = plan
                    return [plan]
        return []

    def _finish(self, worker: Worker) -> None:
        code = worker.end()
        self._worker = None
        if self._last.get("kind") == "failed":
            self.findings = (_failed(self.cloth, str(self._last["why"])),)
        elif self._last.get("kind") != "done" and monotonic() <= self._over:
            self.findings = (_stopped(self.cloth, code),)


def _workers() -> int:
    """One core is left to the window: giving way to it is not enough where it wants to go at once."""
    return min(_MOST_WORKERS, max((os.cpu_count() or 1) - 1, 1))


def _failed(cloth: Cloth, why: str) -> Finding:
    text = "The search for a shorter plan of {cloth} failed ({why}); the last plan stays."
    return Finding("attend", "search_failed", text, words={"cloth": cloth.name, "why": why})


def _stopped(cloth: Cloth, code: int) -> Finding:
    text = (
        "The search for a shorter plan of {cloth} was ended from outside (code {code}); the last plan stays."
    )
    return Finding("attend", "search_stopped", text, words={"cloth": cloth.name, "code": str(code)})

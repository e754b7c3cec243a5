"""A search for a shorter plan, looked at from time to time while the window goes on."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from time import monotonic
from typing import Protocol

from PySide6.QtCore import QObject, QTimer, Signal

from workbench.cloth import FIRST_SECONDS, Cloth, Copy, Placed, Plan, Solve
from workbench.draft import Finding
from workbench.ui.cloth.edits import pinned_in
from workbench.ui.cloth.lays import Lay, alike

LONGER_SECONDS = 45.0
"""What *Keep improving* asks for."""
_LOOK_MS = 100
"""How often it is looked at; the seconds on show count no finer."""


class Solving(Protocol):
    """What a search needs of the solver."""

    best: Plan
    findings: tuple[Finding, ...]

    @property
    def running(self) -> bool:
        """Whether it goes on."""

    def improve(self, seconds: float) -> None:
        """Seek on."""

    def poll(self) -> list[Plan]:
        """Better plans since it was last asked."""

    def cancel(self) -> None:
        """End it at once."""


Begin = Callable[[Sequence[Copy], Cloth, Sequence[Placed], float], Solving]


def begin_solve(copies: Sequence[Copy], cloth: Cloth, pinned: Sequence[Placed], seconds: float) -> Solving:
    """The solver in its own process."""
    return Solve(copies, cloth, pinned, seconds)


@dataclass(frozen=True)
class Progress:
    """How far a search has come."""

    cloth: str
    first: Plan
    """The plan there was before."""
    best: Plan
    """The shortest so far, the first one included."""
    seconds: float
    running: bool
    lengths: tuple[float, ...] = ()
    """Lengths of the plans one after the other, the first one's included, mm."""
    findings: tuple[Finding, ...] = ()

    @property
    def gained(self) -> float:
        """mm that it is shorter by than the plan there was before."""
        return self.first.length_mm - self.best.length_mm

    @property
    def found(self) -> bool:
        """Whether anything better has been found."""
        return self.best is not self.first


class Search(QObject):
    """Runs one search at a time for the cloth it was begun with."""

    moved = Signal(object)
    """A :class:`Progress`, at every look while it runs."""
    ended = Signal(object)
    """The last :class:`Progress`: it has ended by itself or was stopped."""

    def __init__(self, parent: QObject | None = None, begin: Begin = begin_solve) -> None:
        super().__init__(parent)
        self.begin: Begin = begin
        self._solve: Solving | None = None
        self._lay: Lay | None = None
        self._progress: Progress | None = None
        self._began = 0.0
        self._look = QTimer(self)
        self._look.setInterval(_LOOK_MS)
        self._look.timeout.connect(self.on_look)

    @property
    def running(self) -> bool:
        """Whether a search goes on."""
        return self._look.isActive()

    @property
    def progress(self) -> Progress | None:
        """The last that is known of the latest search."""
        return self._progress

    @property
    def lay(self) -> Lay | None:
        """What it was begun with."""
        return self._lay

    def start(self, lay: Lay, seconds: float = FIRST_SECONDS) -> None:
        """Seek a plan that is better than the one there is; LayError where nothing can be laid."""
        self.stop()
        first = lay.valid
        if first is None:
            return
        pinned = pinned_in(lay.plan)
        self._solve = self.begin(lay.copies, lay.cloth, pinned, seconds)
        self._run(lay, first)
        self._take(self._solve.best)

    def go_on(self, lay: Lay, seconds: float = LONGER_SECONDS) -> None:
        """Seek on where the last search for the same cloth ended, else begin anew."""
        if self._solve is None or not alike(lay, self._lay) or pinned_in(lay.plan) or lay.valid is None:
            self.start(lay, seconds)
            return
        self._solve.improve(seconds)
        self._run(lay, lay.valid)

    def _run(self, lay: Lay, first: Plan) -> None:
        self._lay = lay
        self._progress = Progress(lay.cloth.name, first, first, 0.0, True, (first.length_mm,))
        self._began = monotonic()
        self._look.start()
        self._tell()

    def stop(self) -> None:
        """End it at once; what was found is told."""
        if self.running and self._solve is not None:
            self._solve.cancel()
            self._end()

    def on_look(self) -> None:
        """Take what was found since the last look."""
        if self._solve is None:
            return
        for plan in self._solve.poll():
            self._take(plan)
        if self._solve.running:
            self._tell()
        else:
            self._end()

    def _take(self, plan: Plan) -> None:
        now = self._progress
        if now is not None and plan.better_than(now.best):
            self._progress = replace(now, best=plan, lengths=(*now.lengths, plan.length_mm))

    def _tell(self) -> None:
        now = self._progress
        if now is not None:
            self._progress = replace(now, seconds=monotonic() - self._began)
            self.moved.emit(self._progress)

    def _end(self) -> None:
        self._look.stop()
        now, solve = self._progress, self._solve
        if now is not None and solve is not None:
            seconds = monotonic() - self._began
            self._progress = replace(now, seconds=seconds, running=False, findings=solve.findings)
            self.ended.emit(self._progress)

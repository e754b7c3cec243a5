"""The bench of the fittings place: which fitting is on show, and what it did to the draft."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from PySide6.QtCore import QObject, Signal

from workbench.document import Picture
from workbench.draft import Corrections, Outcome, work_out
from workbench.fitting import (
    Change,
    Difference,
    Fitting,
    Reading,
    carried,
    differences,
    proposal,
    reading_of,
)
from workbench.ui.bench import PlaceBench
from workbench.ui.desk import Desk

Scope = Literal["this", "all"]
"""One fitting against the draft it was held with, or all that is carried against the design."""


@dataclass(frozen=True)
class Compared:
    """A draft before and after, and what the opening says; None where there is nothing of it."""

    picture: Picture
    scope: Scope
    fitting: Fitting | None
    before: Outcome | None = None
    after: Outcome | None = None
    worn: Outcome | None = None
    """What was made up for the fitting: with the corrections of those before it."""
    reading: Reading | None = None
    proposed: tuple[Change, ...] = ()
    differences: tuple[Difference, ...] = ()


class FittingBench(PlaceBench):
    """Says when a comparison is there: ``worked_out`` brings a :class:`Compared`."""

    shown = Signal(object)
    """A :class:`Picture` that the form shows at once."""
    fitting_shown = Signal(int)
    """The number of the fitting that is on show from now on."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._number: int | None = None
        self._scope: Scope = "this"
        self._latest: Compared | None = None
        self._session = desk.session

    @property
    def number(self) -> int:
        """Which fitting is on show, counted from 0: the last, until another was asked for; -1 for none."""
        last = len(self._desk.project.fittings) - 1
        return last if self._number is None else min(self._number, last)

    @property
    def fitting(self) -> Fitting | None:
        """The fitting on show; None where there is none yet."""
        fittings = self._desk.project.fittings
        return fittings[self.number] if fittings else None

    @property
    def scope(self) -> Scope:
        """What is compared."""
        return self._scope

    @property
    def latest(self) -> Compared | None:
        """The latest that was worked out; None before anything was."""
        return self._latest

    @property
    def known(self) -> Picture | None:
        """The picture of the latest comparison."""
        return self._latest.picture if self._latest is not None else None

    def show_fitting(self, number: int) -> None:
        """Put another fitting on show."""
        self._number = number
        self.fitting_shown.emit(number)
        self._again()

    def show_scope(self, scope: Scope) -> None:
        """Compare something else."""
        self._scope = scope
        self._again()

    def _again(self) -> None:
        if self.in_sight:
            self.follow(self._desk.picture)
            self.work(self._desk.picture)

    def follow(self, picture: Picture) -> None:
        """Let the form show it; another project begins with its last fitting."""
        if self._session is not self._desk.session:
            self._session, self._number = self._desk.session, None
        self.shown.emit(picture)

    def work(self, picture: Picture) -> None:
        """Draft the bodice without and with what is compared."""
        self._latest = _compared(picture, self.number, self._scope)
        self.worked_out.emit(self._latest)


def _compared(picture: Picture, number: int, scope: Scope) -> Compared:
    fittings = picture.project.fittings
    fitting = fittings[number] if fittings else None
    if picture.body is None or fitting is None:
        return Compared(picture, scope, fitting, picture.outcome, picture.outcome)
    worn = _drafted(picture, fittings[:number])
    if scope == "all":
        before, after = _drafted(picture, ()), picture.outcome
    else:
        before, after = worn, _drafted(picture, (*fittings[:number], replace(fitting, applied=True)))
    reading = reading_of(fitting.gaps, picture.project.design.opening_mm)
    readable = reading is not None and worn is not None and worn.draft is not None
    return Compared(
        picture,
        scope,
        fitting,
        before,
        after,
        worn,
        reading,
        proposal(reading, worn) if readable and reading is not None and worn is not None else (),
        differences(before, after) if before is not None and after is not None else (),
    )


def _drafted(picture: Picture, fittings: Sequence[Fitting]) -> Outcome | None:
    """The bodice with the corrections of these fittings."""
    body, design = picture.body, picture.project.design
    made = carried(fittings, design).corrections if fittings else Corrections()
    return work_out(body, design, made) if body is not None else None

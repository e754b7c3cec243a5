"""The bench of the beads place: when beads are placed, and which run or scatter is on show.

Nothing is worked out while another place is in sight. In sight, panels and drawn lines follow
every edit at once; beads follow too while placing them is quick, else when the hand rests.
"""

from __future__ import annotations

from dataclasses import dataclass
from time import perf_counter

from PySide6.QtCore import QObject, Signal

from workbench.beads import Band, BeadBands, Beading, bands_of
from workbench.document import Picture
from workbench.draft import Outcome
from workbench.pieces import Making
from workbench.ui.bench import PlaceBench
from workbench.ui.desk import Desk

QUICK_SECONDS = 0.008
"""What placing may take for the beads to follow every move of the hand."""


@dataclass(frozen=True)
class Worked:
    """The beads of one picture and what is kept free of them; no beads where nothing is drafted."""

    picture: Picture
    beading: Beading | None
    bands: tuple[Band, ...]


class BeadsBench(PlaceBench):
    """Says when beads are there. ``worked_out`` brings a :class:`Worked`."""

    followed = Signal(object)
    """A :class:`Picture` whose panels, lines and figures are shown at once."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._worked: Worked | None = None
        self._seconds = 0.0
        self._kept_free: tuple[Outcome, Making, BeadBands] | None = None

    @property
    def worked(self) -> Worked | None:
        """The latest that was worked out; None before anything was."""
        return self._worked

    @property
    def known(self) -> Picture | None:
        """The picture whose beads are placed."""
        return self._worked.picture if self._worked is not None else None

    def show_picture(self, picture: Picture) -> None:
        """Follow an edit; where placing was quick the time before, the beads follow at once."""
        super().show_picture(picture)
        if self._in_sight and self._seconds < QUICK_SECONDS and self.known is not None:
            self.work_out()

    def follow(self, picture: Picture) -> None:
        """Let panels, lines and form show it."""
        self.followed.emit(picture)

    def work(self, picture: Picture) -> None:
        """Place every bead."""
        began = perf_counter()
        current = picture.current and picture.good is not None
        beading = picture.beading if current else None
        bands = self._bands(picture) if current else ()
        self._worked = Worked(picture, beading, bands)
        self._seconds = perf_counter() - began
        self.worked_out.emit(self._worked)

    def _bands(self, picture: Picture) -> tuple[Band, ...]:
        """What is kept free, worked out anew only where something has changed that it hangs on."""
        outcome, project = picture.good, picture.project
        if outcome is None or picture.cutting is None:
            return ()
        hangs_on = (outcome, project.making, project.beads.bands)
        before, worked = self._kept_free, self._worked
        if worked is not None and before is not None and _same(hangs_on, before):
            return worked.bands
        self._kept_free = hangs_on
        return bands_of(outcome, project.making, picture.cutting.bones, project.beads)


def _same(one: tuple[Outcome, Making, BeadBands], other: tuple[Outcome, Making, BeadBands]) -> bool:
    """Drafts hold arrays, which are told apart by being the same object."""
    return one[0] is other[0] and one[1:] == other[1:]

"""The bench of the quote place: when the quote is worked out. Nothing is while nobody looks."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal

from workbench.cloth import Quote
from workbench.document import Picture
from workbench.pieces import Cutting
from workbench.ui.bench import PlaceBench
from workbench.ui.cloth.lays import hangs_on
from workbench.ui.desk import Desk


@dataclass(frozen=True)
class Reckoned:
    """The quote of one picture; None where there is nothing cut yet to reckon with."""

    picture: Picture
    cutting: Cutting | None
    quote: Quote | None


class QuoteBench(PlaceBench):
    """Says when a quote is there.

    ``worked_out`` brings a :class:`Reckoned`: at once where only prices changed, else when
    the hand rests.
    """

    shown = Signal(object)
    """A :class:`Picture` that the form shows at once."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._latest: Reckoned | None = None

    @property
    def latest(self) -> Reckoned | None:
        """The latest that was worked out; None before anything was."""
        return self._latest

    @property
    def known(self) -> Picture | None:
        """The picture of the latest quote."""
        return self._latest.picture if self._latest is not None else None

    def begin(self, picture: Picture) -> None:
        """Nothing: the form follows with the quote for whoever begins to look."""

    def show_picture(self, picture: Picture) -> None:
        """Follow a draft; where only prices changed the quote need not wait for the hand to rest."""
        super().show_picture(picture)
        if self._in_sight and self._quick(picture):
            self.work_out()

    def follow(self, picture: Picture) -> None:
        """Let the form show it."""
        self.shown.emit(picture)

    def _quick(self, picture: Picture) -> bool:
        """Whether nothing has to be cut or laid anew."""
        before = self.known
        if before is None or hangs_on(before) != hangs_on(picture):
            return False
        mine, theirs = picture.project, before.project
        return (mine.cloths, mine.plans) == (theirs.cloths, theirs.plans)

    def work(self, picture: Picture) -> None:
        """Work out the quote."""
        cutting = picture.cutting if picture.current else None
        self._latest = Reckoned(picture, cutting, picture.quote if cutting is not None else None)
        self.worked_out.emit(self._latest)

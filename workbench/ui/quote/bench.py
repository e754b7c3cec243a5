"""The bench of the quote place: when the quote is worked out. Nothing is while nobody looks."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QObject, QTimer, Signal

from workbench.cloth import Quote
from workbench.document import Picture
from workbench.pieces import Cutting
from workbench.ui.cloth.lays import hangs_on
from workbench.ui.desk import Desk

_REST_MS = 40
"""The hand rests after so many milliseconds without an edit."""


@dataclass(frozen=True)
class Reckoned:
    """The quote of one picture; None where there is nothing cut yet to reckon with."""

    picture: Picture
    cutting: Cutting | None
    quote: Quote | None


class QuoteBench(QObject):
    """Says when a quote is there."""

    shown = Signal(object)
    """A :class:`Picture` that the form shows at once."""
    reckoned = Signal(object)
    """A :class:`Reckoned`: at once where only prices changed, else when the hand rests."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._in_sight = False
        self._latest: Reckoned | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST_MS)
        self._rest.timeout.connect(self.work_out)
        desk.drafted.connect(self.show_picture)

    @property
    def latest(self) -> Reckoned | None:
        """The latest that was worked out; None before anything was."""
        return self._latest

    @property
    def in_sight(self) -> bool:
        """Whether anybody looks."""
        return self._in_sight

    def set_in_sight(self, in_sight: bool) -> None:
        """Whether anybody looks; whoever begins to look sees all of it at once."""
        if in_sight != self._in_sight:
            self._in_sight = in_sight
            self._rest.stop()
            if in_sight:
                self.work_out()

    def show_picture(self, picture: Picture) -> None:
        """Follow a draft."""
        if not self._in_sight:
            return
        self.shown.emit(picture)
        if self._quick(picture):
            self.work_out()
        else:
            self._rest.start()

    def _quick(self, picture: Picture) -> bool:
        """Whether nothing has to be cut or laid anew."""
        before = self._latest.picture if self._latest is not None else None
        if before is None or hangs_on(before) != hangs_on(picture):
            return False
        mine, theirs = picture.project, before.project
        return (mine.cloths, mine.plans) == (theirs.cloths, theirs.plans)

    def work_out(self) -> None:
        """Work the quote out now, unless it is known or nobody looks."""
        self._rest.stop()
        picture = self._desk.picture
        if not self._in_sight or (self._latest is not None and self._latest.picture is picture):
            return
        cutting = picture.cutting if picture.current else None
        self._latest = Reckoned(picture, cutting, picture.quote if cutting is not None else None)
        self.reckoned.emit(self._latest)

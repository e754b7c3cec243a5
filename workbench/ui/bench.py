"""The bench of a place: when what the place shows is worked out.

Nothing is worked out while another place is in sight. In sight, what is quick follows every
draft at once, and all the rest waits until the hand rests.
"""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer, Signal

from workbench.document import Picture
from workbench.ui.desk import Desk

_REST_MS = 40
"""The hand rests after so many milliseconds without an edit."""


class PlaceBench(QObject):
    """Knows whether anybody looks, and when the hand rests; whoever derives it does the work."""

    worked_out = Signal(object)
    """What was worked out, when the hand rests."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._in_sight = False
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST_MS)
        self._rest.timeout.connect(self.work_out)
        desk.drafted.connect(self.show_picture)

    @property
    def in_sight(self) -> bool:
        """Whether anybody looks."""
        return self._in_sight

    @property
    def known(self) -> Picture | None:
        """The picture of which everything is worked out; None before there is one."""
        raise NotImplementedError

    def set_in_sight(self, in_sight: bool) -> None:
        """Whether anybody looks; whoever begins to look sees all of it at once."""
        if in_sight == self._in_sight:
            return
        self._in_sight = in_sight
        self._rest.stop()
        if in_sight:
            self.begin(self._desk.picture)
            self.work_out()

    def show_picture(self, picture: Picture) -> None:
        """Follow a draft with what is quick, and work out the rest when the hand rests."""
        if self._in_sight:
            self.follow(picture)
            self._rest.start()

    def work_out(self) -> None:
        """Work out everything now, unless it is known or nobody looks."""
        self._rest.stop()
        picture = self._desk.picture
        if self._in_sight and self.known is not picture:
            self.work(picture)

    # --- what whoever derives it does ------------------------------------------------------

    def begin(self, picture: Picture) -> None:
        """Show what is quick to somebody who begins to look: the same as after an edit."""
        self.follow(picture)

    def follow(self, picture: Picture) -> None:
        """Show what is quick of a draft."""
        raise NotImplementedError

    def work(self, picture: Picture) -> None:
        """Work out everything of a picture, make it the one that is known, and say so."""
        raise NotImplementedError

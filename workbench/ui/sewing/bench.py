"""The bench of the sewing place: the sewing order is worked out when the hand rests."""

from __future__ import annotations

from workbench.document import Picture
from workbench.ui.bench import PlaceBench


class SewingBench(PlaceBench):
    """``worked_out`` brings the :class:`Picture` whose sewing order is known."""

    _known: Picture | None = None

    @property
    def known(self) -> Picture | None:
        """The latest picture that was looked through."""
        return self._known

    def follow(self, picture: Picture) -> None:
        """A tick is shown at once: it changes nothing that has to be worked out again."""
        if self._known is not None and "sewing" in vars(picture):
            self.work(picture)

    def work(self, picture: Picture) -> None:
        """Work the order out and say so."""
        _ = picture.sewing
        self._known = picture
        self.worked_out.emit(picture)

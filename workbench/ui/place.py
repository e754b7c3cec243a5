"""What the window asks of each of its places, whatever is done in it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QWidget


class PlacePage(QSplitter):
    """One place of the window: its form at the left, and the rest beside it.

    A place is made when it is first turned to, and works nothing out while it is out of sight.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setHandleWidth(1)
        self.setChildrenCollapsible(False)

    def has(self, field: str) -> bool:
        """Whether a field, as findings name it, is one of this place's."""
        raise NotImplementedError

    def fit(self) -> None:
        """Show all of the drawing; a place without one has nothing to do."""

    def switches(self) -> Mapping[str, Callable[[bool], None]]:
        """What can be shown and hidden here, by the action that does it."""
        return {}

    def deeds(self) -> Mapping[str, Callable[[], None]]:
        """What can be done here, by the action that does it."""
        return {}

    def rest(self) -> None:
        """End what goes on beside the window, and keep what it has found."""

"""Hand and keys on the overlay: a panel picked, the paper moved and zoomed."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent

from workbench.ui.board.paper_hand import PaperHand
from workbench.ui.board.view import Sight

_ZOOM = {Qt.Key.Key_Plus: 1.25, Qt.Key.Key_Equal: 1.25, Qt.Key.Key_Minus: 0.8}
_STEPS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}


class Surroundings(Protocol):
    """What hand and keys need of the overlay."""

    def pick_at(self, pixel: QPointF) -> None:
        """Pick what lies under a pixel."""

    def pick_next(self, step: int) -> None:
        """Pick the panel beside the one that is picked."""

    def zoom(self, factor: float) -> None:
        """Larger or smaller about the middle."""

    def fit(self) -> None:
        """Show all of it."""

    def refresh(self) -> None:
        """Paint again."""


class OverlayHand(PaperHand):
    """One mouse, from press to release; it carries the paper, and picks with a click."""

    def __init__(self, overlay: Surroundings, sight: Sight) -> None:
        super().__init__(sight)
        self._overlay = overlay

    def click(self, pixel: QPointF) -> None:
        """Pick what was clicked."""
        self._overlay.pick_at(pixel)

    def refresh(self) -> None:
        """Paint again."""
        self._overlay.refresh()


class OverlayKeys:
    """Left and right go from panel to panel; the others zoom."""

    def __init__(self, overlay: Surroundings) -> None:
        self._overlay = overlay

    def press(self, event: QKeyEvent) -> bool:
        """Do what the key says; False where it says nothing here."""
        key = Qt.Key(event.key())
        if key in _ZOOM:
            self._overlay.zoom(_ZOOM[key])
        elif key == Qt.Key.Key_0:
            self._overlay.fit()
        elif key in _STEPS:
            self._overlay.pick_next(_STEPS[key])
        else:
            return False
        return True

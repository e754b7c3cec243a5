"""Hand and keys on the overlay: a panel picked, the paper moved and zoomed."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent

from workbench.ui.board.gestures import SLACK, Pan
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


class OverlayHand:
    """One mouse, from press to release; it carries the paper, and picks with a click."""

    def __init__(self, overlay: Surroundings, sight: Sight) -> None:
        self._overlay, self._sight = overlay, sight
        self._pressed_at: QPointF | None = None
        self._pan: Pan | None = None
        self.carries_paper = False

    @property
    def panning(self) -> bool:
        """Whether the paper is being moved."""
        return self._pan is not None

    def press(self, event: QMouseEvent) -> None:
        """Take hold of the paper, or wait for what becomes of it."""
        if event.button() == Qt.MouseButton.MiddleButton or self.carries_paper:
            self._pan = Pan(self._sight, event.position())
        elif event.button() == Qt.MouseButton.LeftButton:
            self._pressed_at = event.position()

    def move(self, event: QMouseEvent) -> None:
        """Drag the paper."""
        pixel, start = event.position(), self._pressed_at
        if self._pan is None and start is not None and (pixel - start).manhattanLength() > SLACK:
            self._pan = Pan(self._sight, start)
        if self._pan is not None:
            self._pan.move(pixel, free=False)

    def release(self, _event: QMouseEvent) -> None:
        """End the drag, or pick what was clicked."""
        pan, self._pan = self._pan, None
        pressed_at, self._pressed_at = self._pressed_at, None
        if pan is None and pressed_at is not None:
            self._overlay.pick_at(pressed_at)
        self._overlay.refresh()

    def cancel(self) -> bool:
        """Put the paper back where it was; False where it is not being moved."""
        pan, self._pan, self._pressed_at = self._pan, None, None
        if pan is not None:
            pan.cancel()
        return pan is not None

    def leave(self) -> None:
        """Nothing lights up under the hand here."""


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

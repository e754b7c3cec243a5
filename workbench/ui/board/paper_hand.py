"""The hand on a paper where nothing is moved but the paper itself: a drag carries it, a click picks."""

from __future__ import annotations

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QMouseEvent

from workbench.ui.board.gestures import SLACK, Pan
from workbench.ui.board.view import Sight


class PaperHand:
    """One mouse, from hover to release; what a click and a look do is said by those who derive from it."""

    def __init__(self, sight: Sight) -> None:
        self._sight = sight
        self._pressed_at: QPointF | None = None
        self._pan: Pan | None = None
        self.carries_paper = False
        """Whether the space bar is down: then any press moves the paper."""

    @property
    def panning(self) -> bool:
        """Whether the paper is being moved."""
        return self._pan is not None

    def click(self, pixel: QPointF) -> None:
        """Pick what was clicked."""

    def look(self, pixel: QPointF | None) -> None:
        """See what lies under the hand while nothing is pressed; None where the hand is elsewhere."""

    def refresh(self) -> None:
        """Paint again."""

    def press(self, event: QMouseEvent) -> None:
        """Take hold of the paper, or wait for what becomes of it."""
        if event.button() == Qt.MouseButton.MiddleButton or self.carries_paper:
            self._pan = Pan(self._sight, event.position())
        elif event.button() == Qt.MouseButton.LeftButton:
            self._pressed_at = event.position()

    def move(self, event: QMouseEvent) -> None:
        """Drag the paper, or see what lies under the hand."""
        pixel, start = event.position(), self._pressed_at
        if self._pan is None and start is not None and (pixel - start).manhattanLength() > SLACK:
            self._pan = Pan(self._sight, start)
        if self._pan is not None:
            self._pan.move(pixel, free=False)
        elif start is None:
            self.look(pixel)

    def release(self, _event: QMouseEvent) -> None:
        """End the drag, or pick what was clicked."""
        pan, self._pan = self._pan, None
        pressed_at, self._pressed_at = self._pressed_at, None
        if pan is None and pressed_at is not None:
            self.click(pressed_at)
        self.refresh()

    def cancel(self) -> bool:
        """Put the paper back where it was; False where it is not being moved."""
        pan, self._pan, self._pressed_at = self._pan, None, None
        if pan is not None:
            pan.cancel()
        return pan is not None

    def leave(self) -> None:
        """The hand is elsewhere."""
        self.look(None)

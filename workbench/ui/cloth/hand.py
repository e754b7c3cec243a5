"""The hand on the cloth: what is under it, what a click picks, what a drag takes along."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QMouseEvent

from workbench.cloth import CopyKey, Placed, room_of
from workbench.ui.board.gestures import SLACK, Pan
from workbench.ui.board.view import Sight
from workbench.ui.cloth.gestures import MoveDrag, TurnDrag
from workbench.ui.cloth.paint_cloth import GUTTER, HANDLE, handle_at
from workbench.ui.cloth.spread import ClothSpread, LaidCopy

_REACH = 3.0
"""Pixels beyond the handle at which it counts as meant."""


class Surroundings(Protocol):
    """What the hand needs of the cloth."""

    @property
    def spread(self) -> ClothSpread | None:
        """What is on it."""

    @property
    def picked(self) -> CopyKey | None:
        """The piece that is picked."""

    @property
    def by_hand(self) -> bool:
        """Whether pieces may be moved now."""

    def pick(self, piece: LaidCopy | None) -> None:
        """Pick a piece, or none."""

    def hold(self, placed: Placed | None) -> None:
        """Show a piece where the hand holds it."""

    def keep(self, step_name: str) -> None:
        """Keep what the hand holds."""

    def turn(self) -> None:
        """Turn the picked piece to the next way it may lie."""

    def refresh(self) -> None:
        """Paint again."""


class ClothHand:
    """One mouse, from hover to release."""

    def __init__(self, cloth: Surroundings, sight: Sight) -> None:
        self._cloth, self._sight = cloth, sight
        self._pressed_at: QPointF | None = None
        self._target: LaidCopy | None = None
        self._on_handle = False
        self._pan: Pan | None = None
        self._drag: MoveDrag | TurnDrag | None = None
        self.carries_paper = False
        """Whether the space bar is down."""
        self.over: LaidCopy | None = None
        self.over_handle = False

    @property
    def panning(self) -> bool:
        """Whether it moves the paper."""
        return self._pan is not None

    @property
    def dragging(self) -> bool:
        """Whether it holds a piece."""
        return self._drag is not None

    def press(self, event: QMouseEvent) -> None:
        """Take hold of whatever is under it."""
        pixel = event.position()
        if event.button() == Qt.MouseButton.MiddleButton or (
            self.carries_paper and event.button() == Qt.MouseButton.LeftButton
        ):
            self._pan = Pan(self._sight, pixel)
            return
        if event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton):
            self._on_handle = self.handle_under(pixel)
            self._target = self._picked() if self._on_handle else self.piece_under(pixel)
            if not self._on_handle:
                self._cloth.pick(self._target)
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed_at = pixel

    def move(self, event: QMouseEvent) -> None:
        """Drag, or look."""
        pixel = event.position()
        start = self._pressed_at
        if self._pan is None and self._drag is None and start is not None:
            if (pixel - start).manhattanLength() <= SLACK:
                return
            self._begin(start)
        if self._pan is not None:
            self._pan.move(pixel, free=False)
        elif self._drag is not None:
            self._drag.move(pixel, free=bool(event.modifiers() & Qt.KeyboardModifier.AltModifier))
        elif start is None:
            self._look_under(pixel)

    def release(self, _event: QMouseEvent) -> None:
        """End the drag; a click on the handle turns the piece."""
        drag, pan, start = self._drag, self._pan, self._pressed_at
        self._drag = self._pan = self._pressed_at = None
        if drag is not None:
            self._cloth.keep(drag.step_name)
        elif pan is None and start is not None and self._on_handle:
            self._cloth.turn()
        self._cloth.refresh()

    def cancel(self) -> bool:
        """Put back what it holds; False where it holds nothing."""
        drag, pan = self._drag, self._pan
        self._drag = self._pan = self._pressed_at = None
        if pan is not None:
            pan.cancel()
        if drag is not None:
            self._cloth.hold(None)
        return drag is not None or pan is not None

    def leave(self) -> None:
        """The hand is elsewhere."""
        self.over, self.over_handle = None, False
        self._cloth.refresh()

    def piece_under(self, pixel: QPointF) -> LaidCopy | None:
        """The piece under a pixel, the one drawn last first."""
        spread = self._cloth.spread
        if spread is None or pixel.x() < GUTTER:
            return None
        x, y = self._sight.view.mm(pixel)
        return next((piece for piece in reversed(spread.pieces) if piece.holds(x, y)), None)

    def handle_under(self, pixel: QPointF) -> bool:
        """Whether the handle of the picked piece is under a pixel."""
        piece = self._picked()
        if piece is None:
            return False
        away = pixel - handle_at(piece, self._sight.view)
        return bool((away.x() ** 2 + away.y() ** 2) ** 0.5 <= HANDLE + _REACH)

    def _picked(self) -> LaidCopy | None:
        spread = self._cloth.spread
        return spread.piece(self._cloth.picked) if spread is not None else None

    def _begin(self, start: QPointF) -> None:
        spread, view, target = self._cloth.spread, self._sight.view, self._target
        if spread is None or target is None or not self._cloth.by_hand:
            self._pan = Pan(self._sight, start)
        elif self._on_handle:
            self._drag = TurnDrag(target, spread.lay, view, start, self._cloth.hold)
        else:
            room = room_of(spread.cloth)
            self._drag = MoveDrag(target, spread.lay, room, view, start, self._cloth.hold)

    def _look_under(self, pixel: QPointF) -> None:
        over, handle = self.piece_under(pixel), self.handle_under(pixel)
        if (over, handle) != (self.over, self.over_handle):
            self.over, self.over_handle = over, handle
            self._cloth.refresh()

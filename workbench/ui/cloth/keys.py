"""Keys on the cloth: from piece to piece, a nudge, a turn, a pin; zoom and pan."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

_ZOOM = {Qt.Key.Key_Plus: 1.25, Qt.Key.Key_Equal: 1.25, Qt.Key.Key_Minus: 0.8}
_PIECES = {Qt.Key.Key_PageUp: -1, Qt.Key.Key_PageDown: 1}
_NUDGES = {
    Qt.Key.Key_Left: (0, -1),
    Qt.Key.Key_Right: (0, 1),
    Qt.Key.Key_Up: (-1, 0),
    Qt.Key.Key_Down: (1, 0),
}
"""Across and along."""
_FAR = 8


class Surroundings(Protocol):
    """What the keys need of the cloth."""

    def step_pieces(self, step: int) -> None:
        """Pick the piece before or after."""

    def nudge(self, across: int, along: int) -> bool:
        """Move the picked piece by so many marks of the ruler; False where none is picked."""

    def rest(self) -> None:
        """Keep where the piece was nudged to."""

    def turn(self) -> None:
        """Turn the picked piece."""

    def toggle_pin(self) -> None:
        """Pin the picked piece, or free it."""

    def pick_none(self) -> None:
        """Pick nothing."""

    def zoom(self, factor: float) -> None:
        """Larger or smaller."""

    def fit(self) -> None:
        """Show all of it."""


class ClothKeys:
    """Says for each key whether it was of use."""

    def __init__(self, cloth: Surroundings) -> None:
        self._cloth = cloth

    def press(self, event: QKeyEvent) -> bool:
        """Do what the key says; False where it says nothing here."""
        key, cloth = Qt.Key(event.key()), self._cloth
        if event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.MetaModifier):
            return False
        if key in _NUDGES:
            far = _FAR if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
            across, along = _NUDGES[key]
            return cloth.nudge(far * across, far * along)
        if key in _ZOOM:
            cloth.zoom(_ZOOM[key])
        elif key in _PIECES:
            cloth.step_pieces(_PIECES[key])
        else:
            return self._other(key)
        return True

    def _other(self, key: Qt.Key) -> bool:
        cloth = self._cloth
        told = {
            Qt.Key.Key_0: cloth.fit,
            Qt.Key.Key_R: cloth.turn,
            Qt.Key.Key_P: cloth.toggle_pin,
            Qt.Key.Key_Escape: cloth.pick_none,
        }.get(key)
        if told is not None:
            told()
        return told is not None

    def release(self, event: QKeyEvent) -> bool:
        """A nudging key that is let go of ends the run; False for other keys."""
        mine = Qt.Key(event.key()) in _NUDGES and not event.isAutoRepeat()
        if mine:
            self._cloth.rest()
        return mine

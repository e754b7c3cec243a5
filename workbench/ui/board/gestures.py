"""Gestures: what a press begins, each move continues, and a release keeps or Escape takes back."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF

from workbench.ui.board.handles import Handle
from workbench.ui.board.scene import Scene
from workbench.ui.board.shape_edits import moved, snapped, spot_at
from workbench.ui.board.view import Sight
from workbench.ui.desk import Desk

SLACK = 3.0
"""Pixels the hand may tremble before a press becomes a drag."""
_MAGNET = 6.0
"""Pixels within which a seam draws a point onto it."""


class Gesture(Protocol):
    """One drag, from the first move to the release."""

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """Follow the hand; ``free`` leaves out the snapping."""

    def finish(self) -> None:
        """Keep what the drag did."""

    def cancel(self) -> None:
        """Leave everything as it was before."""


class Pan:
    """Moves the view with the hand."""

    def __init__(self, sight: Sight, start: QPointF, *, across: bool = True) -> None:
        self._sight = sight
        self._start = start
        self._view = sight.view
        self._across = across

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """The paper follows the hand."""
        away = pixel - self._start
        self._sight.show_view(self._view.panned(away.x() if self._across else 0.0, away.y()))

    def finish(self) -> None:
        """The view stays where it is."""

    def cancel(self) -> None:
        """The view goes back."""
        self._sight.show_view(self._view)


class HandleDrag:
    """Moves a shape point. Every move starts from the project and draft at the press, so nothing adds up."""

    def __init__(self, desk: Desk, sight: Sight, scene: Scene, handle: Handle, start: QPointF) -> None:
        self.handle = handle
        self._desk = desk
        self._sight = sight
        self._scene = scene
        self._project = desk.project
        self._grip = handle.pixel(sight.view) - start
        desk.begin(f"Move {handle.key.line} point")

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """The point follows the hand, in whole steps unless ``free``."""
        if not self._desk.gesturing:
            return  # undone under the hand: the rest of the drag does nothing
        view = self._sight.view
        x, y = view.mm(pixel + self._grip)
        spot = spot_at(self._scene, x, y, self.handle.placement.flip)
        if spot is None:
            return
        if not free:
            spot = snapped(self._scene, spot, _MAGNET / view.scale)
        self._desk.preview(moved(self._project, self._scene, self.handle, spot))

    def finish(self) -> None:
        """One step to undo."""
        self._desk.commit()

    def cancel(self) -> None:
        """The point goes back."""
        self._desk.cancel()

"""The hand on the map: drags points of a drawn line and the paper, picks runs, scatters and panels."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QMouseEvent

from workbench.document import Picture, Project, move_line_point
from workbench.ui.beads.spread import Owner, Spread
from workbench.ui.board.gestures import SLACK, Gesture, Pan
from workbench.ui.board.view import Sight
from workbench.ui.desk import Desk

REACH = 9.0
"""Pixels within which a point or a bead counts as meant."""


class Surroundings(Protocol):
    """What the hand needs of the map."""

    @property
    def sight(self) -> Sight:
        """Where the paper is."""

    @property
    def spread(self) -> Spread | None:
        """The panels."""

    @property
    def picture(self) -> Picture:
        """What is on show."""

    @property
    def owner(self) -> Owner | None:
        """The run or scatter that is picked."""

    def handle_at(self, pixel: QPointF, reach: float) -> int | None:
        """The point of the picked line under a pixel."""

    def owner_at(self, pixel: QPointF, reach: float) -> Owner | None:
        """The run or scatter whose bead is under a pixel."""

    def pick(self, owner: Owner | None, point: int | None = None, panel: int | None = None) -> None:
        """Pick in every pane."""

    def refresh(self) -> None:
        """Paint again."""


class PointDrag:
    """Moves one point of a drawn line; every move begins from the project at the press."""

    def __init__(self, desk: Desk, around: Surroundings, owner: Owner, point: int) -> None:
        self._desk, self._around, self._owner, self._point = desk, around, owner, point
        self._project: Project = desk.project
        desk.begin("Point of a drawn line")

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """The point follows the hand from panel to panel."""
        spread = self._around.spread
        if not self._desk.gesturing or spread is None:
            return  # undone under the hand: the rest of the drag does nothing
        place = spread.place(*self._around.sight.view.mm(pixel))
        if place is not None:
            owner = self._owner
            self._desk.preview(move_line_point(self._project, owner.what, owner.number, self._point, *place))

    def finish(self) -> None:
        """One step to undo."""
        self._desk.commit()

    def cancel(self) -> None:
        """The point goes back."""
        self._desk.cancel()


class MapHand:
    """One mouse, from hover to release."""

    reach = REACH

    def __init__(self, around: Surroundings, desk: Desk) -> None:
        self._around, self._desk = around, desk
        self._pressed_at: QPointF | None = None
        self._handle: int | None = None
        self._gesture: Gesture | None = None
        self.over: int | None = None
        """The point under the hand while nothing is pressed."""
        self.carries_paper = False
        """Whether the space bar is down: then any press moves the paper."""

    @property
    def panning(self) -> bool:
        """Whether the paper is being moved."""
        return isinstance(self._gesture, Pan)

    def press(self, event: QMouseEvent) -> None:
        """Take hold of the paper or a point, or wait for what becomes of it."""
        if event.button() == Qt.MouseButton.MiddleButton or self.carries_paper:
            self._gesture = Pan(self._around.sight, event.position())
        elif event.button() == Qt.MouseButton.LeftButton:
            self._pressed_at = event.position()
            self._handle = self._around.handle_at(event.position(), REACH)

    def move(self, event: QMouseEvent) -> None:
        """Drag what was taken hold of, or see what lies under the hand."""
        pixel, start = event.position(), self._pressed_at
        if self._gesture is None and start is not None and (pixel - start).manhattanLength() > SLACK:
            self._gesture = self._begun(start)
        if self._gesture is not None:
            self._gesture.move(pixel, free=False)
        elif start is None:
            self._show_over(self._around.handle_at(pixel, REACH))

    def _begun(self, start: QPointF) -> Gesture:
        owner = self._around.owner
        if self._handle is not None and owner is not None:
            self._around.pick(owner, self._handle)
            return PointDrag(self._desk, self._around, owner, self._handle)
        return Pan(self._around.sight, start)

    def release(self, event: QMouseEvent) -> None:
        """End the drag, or pick what was clicked."""
        gesture, self._gesture = self._gesture, None
        pressed_at, self._pressed_at = self._pressed_at, None
        if gesture is not None:
            gesture.finish()
        elif pressed_at is not None:
            self._click(pressed_at)
        self._around.refresh()

    def cancel(self) -> bool:
        """Take the drag back; False where there is none."""
        gesture, self._gesture, self._pressed_at = self._gesture, None, None
        if gesture is not None:
            gesture.cancel()
        return gesture is not None

    def leave(self) -> None:
        """The hand is elsewhere."""
        self._show_over(None)

    def _show_over(self, handle: int | None) -> None:
        if handle != self.over:
            self.over = handle
            self._around.refresh()

    def _click(self, pixel: QPointF) -> None:
        around = self._around
        if self._handle is not None and around.owner is not None:
            around.pick(around.owner, self._handle)
            return
        owner = around.owner_at(pixel, REACH)
        if owner is not None:
            around.pick(owner)
            return
        drawing = around.owner is not None and around.owner.draws(around.picture)
        if not drawing and around.spread is not None:
            # while a line is drawn a click beside it does not let go of it
            around.pick(None, panel=around.spread.panel_at(*around.sight.view.mm(pixel)))

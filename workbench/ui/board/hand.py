"""The hand on the canvas: what is under it, what a press takes hold of, what a click chooses."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QMouseEvent

from workbench.draft import Place
from workbench.ui.board.figures import Figure, figure_at
from workbench.ui.board.gestures import SLACK, Gesture, HandleDrag, Pan
from workbench.ui.board.handles import Handle, handle_at
from workbench.ui.board.near import edge_at, panel_at, seam_at
from workbench.ui.board.paint_levels import GUTTER, row_at
from workbench.ui.board.scene import Scene
from workbench.ui.board.shape_edits import added, spot_at
from workbench.ui.board.view import Sight
from workbench.ui.desk import Desk

Target = Handle | Figure | None


class Surroundings(Protocol):
    """What the hand needs of the canvas."""

    @property
    def scene(self) -> Scene | None:
        """What is on the canvas."""

    def open_figure(self, figure: Figure) -> None:
        """Lay the field over a figure."""

    def own_gesture(self, pixel: QPointF) -> Gesture | None:
        """What a press begins wherever it is, if anything."""

    def refresh(self) -> None:
        """Paint again."""


class Hand:
    """One mouse, from hover to release."""

    def __init__(self, canvas: Surroundings, desk: Desk, sight: Sight) -> None:
        self._canvas = canvas
        self._desk = desk
        self._sight = sight
        self._pressed_at: QPointF | None = None
        self._target: Target = None
        self.gesture: Gesture | None = None
        self.over: Target = None
        """What lies under the hand while nothing is pressed."""
        self.carries_paper = False
        """Whether the space bar is down: then any press moves the paper."""

    @property
    def held(self) -> Handle | None:
        """The handle being dragged."""
        return self.gesture.handle if isinstance(self.gesture, HandleDrag) else None

    @property
    def panning(self) -> bool:
        """Whether the hand is closed on the paper; with the space bar down, on whatever it drags."""
        return self.gesture is not None and (self.held is None or self.carries_paper)

    def press(self, event: QMouseEvent) -> None:
        """Take hold of what lies under the hand."""
        if self.gesture is not None:
            return
        pixel = event.position()
        if event.button() == Qt.MouseButton.MiddleButton or self.carries_paper:
            self.gesture = Pan(self._sight, pixel)
        elif event.button() == Qt.MouseButton.LeftButton:
            self.gesture = self._canvas.own_gesture(pixel)
            if self.gesture is not None:
                return
            self._pressed_at, self._target = pixel, self._under(pixel)
            if isinstance(self._target, Handle):
                self._desk.select(Place(line=self._target.key.line, point=self._target.key.number))

    def move(self, event: QMouseEvent) -> None:
        """Drag what is held, or see what lies under the hand."""
        pixel = event.position()
        if self.gesture is None and self._pressed_at is not None and _away(pixel, self._pressed_at) > SLACK:
            self.gesture = self._begun(self._pressed_at)
        if self.gesture is not None:
            self.gesture.move(pixel, free=bool(event.modifiers() & Qt.KeyboardModifier.AltModifier))
        elif self._pressed_at is None:
            self._look_under(pixel)

    def release(self, event: QMouseEvent) -> None:
        """End the drag, or choose what was clicked."""
        gesture, self.gesture = self.gesture, None
        pressed_at, self._pressed_at = self._pressed_at, None
        if gesture is not None:
            gesture.finish()
        elif pressed_at is not None:
            self._click(pressed_at)
        self._target = None
        self._canvas.refresh()

    def double_click(self, event: QMouseEvent) -> None:
        """A new point where a neckline or hem is double-clicked."""
        if (
            self._canvas.scene is None
            or event.button() != Qt.MouseButton.LeftButton
            or self._under(event.position()) is not None
        ):
            return
        self.add_point_at(event.position())

    def add_point_at(self, pixel: QPointF) -> bool:
        """Add a point to the line under a pixel; False where there is none."""
        scene, view = self._canvas.scene, self._sight.view
        found = edge_at(scene, view, pixel) if scene is not None else None
        if scene is None or not scene.editable or found is None:
            return False
        line, shape = found
        spot = spot_at(scene, *view.mm(pixel), flip=shape.placement.flip)
        if spot is None:
            return False
        try:
            self._desk.apply(f"Add {line} point", added(self._desk.project, scene, line, spot))
        except ValueError as error:
            self._desk.refuse(line, str(error))
        return True

    def leave(self) -> None:
        """The hand is elsewhere."""
        self._show_over(None)

    def cancel(self) -> bool:
        """Take back the drag under way; False where there is none."""
        gesture, self.gesture = self.gesture, None
        self._pressed_at = None
        if gesture is None:
            return False
        gesture.cancel()
        self._canvas.refresh()
        return True

    def _begun(self, start: QPointF) -> Gesture:
        scene = self._canvas.scene
        if isinstance(self._target, Handle) and scene is not None:
            return HandleDrag(self._desk, self._sight, scene, self._target, start)
        return Pan(self._sight, start)

    def _under(self, pixel: QPointF) -> Target:
        scene, view = self._canvas.scene, self._sight.view
        if scene is None or not scene.editable or pixel.x() < GUTTER:
            return None
        handle = handle_at(scene.handles, view, pixel)
        return handle or figure_at(scene.figures, view, pixel)

    def _look_under(self, pixel: QPointF) -> None:
        self._show_over(self._under(pixel))

    def _show_over(self, target: Target) -> None:
        before = self.over.key if self.over else None
        self.over = target
        if before != (target.key if target else None):
            self._canvas.refresh()

    def _click(self, pixel: QPointF) -> None:
        if isinstance(self._target, Figure):
            self._canvas.open_figure(self._target)
        elif self._target is None:
            self._desk.select(self._place_under(pixel))

    def _place_under(self, pixel: QPointF) -> Place | None:
        """The level named at the left, else the seam, line or panel under the hand."""
        scene, view = self._canvas.scene, self._sight.view
        if scene is None:
            return None
        if pixel.x() < GUTTER:
            row = row_at(scene, view, pixel)
            return Place(level=row.level) if row else None
        edge = edge_at(scene, view, pixel)
        if edge is not None:
            return Place(line=edge[0])
        seam = seam_at(scene, view, pixel)
        if seam is not None:
            return Place(seam=seam)
        panel = panel_at(scene, view, pixel)
        return None if panel is None else Place(panel=panel)


def _away(one: QPointF, other: QPointF) -> float:
    return float((one - other).manhattanLength())

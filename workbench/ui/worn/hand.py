"""The hand on the worn view: it turns her, takes hold of shape points, and picks panels."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QMouseEvent

from workbench.draft import Place
from workbench.ui.board.gestures import SLACK
from workbench.ui.board.handles import HandleKey
from workbench.ui.desk import Desk
from workbench.ui.worn.drag import GripDrag, TurnDrag
from workbench.ui.worn.grips import Grip, grip_at
from workbench.ui.worn.stage import Stage
from workbench.worn import Eye, Sight, Worn


class Surroundings(Protocol):
    """What the hand needs of the view."""

    @property
    def worn(self) -> Worn | None:
        """The bodice on show."""

    @property
    def eye(self) -> Eye:
        """From where she is seen."""

    @property
    def stage(self) -> Stage:
        """Where she stands."""

    @property
    def grips(self) -> tuple[Grip, ...]:
        """The shape points that can be taken hold of."""

    def turn_to(self, eye: Eye) -> None:
        """See her from somewhere else."""

    def refresh(self) -> None:
        """Paint again."""


class Hand:
    """One mouse, from hover to release."""

    def __init__(self, view: Surroundings, desk: Desk) -> None:
        self._view, self._desk = view, desk
        self._pressed: QPointF | None = None
        self._under: Grip | None = None
        self.gesture: GripDrag | TurnDrag | None = None
        self.over: HandleKey | None = None
        """The shape point under the hand while nothing is pressed."""

    @property
    def holds_point(self) -> bool:
        """Whether a shape point is being dragged: until then she must not move under the hand."""
        return isinstance(self.gesture, GripDrag)

    def press(self, event: QMouseEvent) -> None:
        """Take hold of a shape point, or of her."""
        if event.button() != Qt.MouseButton.LeftButton or self._view.worn is None:
            return
        self._pressed = event.position()
        self._under = grip_at(self._view.grips, self._view.stage, event.position())
        if self._under is not None:
            self._desk.select(Place(line=self._under.key.line, point=self._under.key.number))

    def move(self, event: QMouseEvent) -> None:
        """Drag what is held, or see what lies under the hand."""
        pixel, pressed = event.position(), self._pressed
        if pressed is not None and self.gesture is None and (pixel - pressed).manhattanLength() > SLACK:
            self.gesture = self._begun(pressed)
        if isinstance(self.gesture, GripDrag):
            self.gesture.move(pixel, free=bool(event.modifiers() & Qt.KeyboardModifier.AltModifier))
        elif isinstance(self.gesture, TurnDrag):
            self._view.turn_to(self.gesture.eye_at(pixel))
        elif pressed is None:
            self._show_over(grip_at(self._view.grips, self._view.stage, pixel))

    def release(self) -> None:
        """Keep what the drag did; a click lights up what was clicked."""
        gesture, self.gesture = self.gesture, None
        pressed, self._pressed = self._pressed, None
        if isinstance(gesture, GripDrag):
            gesture.finish()
        elif gesture is None and pressed is not None and self._under is None:
            self._desk.select(self._place_under(pressed))
        self._under = None

    def leave(self) -> None:
        """The hand is elsewhere."""
        self._show_over(None)

    def cancel(self) -> bool:
        """Take back the drag under way; False where there is none."""
        gesture, self.gesture, self._pressed = self.gesture, None, None
        if isinstance(gesture, GripDrag):
            gesture.cancel()
        elif isinstance(gesture, TurnDrag):
            self._view.turn_to(gesture.start)
        return gesture is not None

    def _begun(self, start: QPointF) -> GripDrag | TurnDrag:
        view = self._view
        if self._under is not None and view.worn is not None:
            return GripDrag(self._desk, Sight(view.worn, view.eye), view.stage, self._under, start)
        return TurnDrag(view.eye, start)

    def _place_under(self, pixel: QPointF) -> Place | None:
        """The panel under a pixel, as a place that lights up."""
        worn = self._view.worn
        if worn is None:
            return None
        found = Sight(worn, self._view.eye).place_at(*self._view.stage.mm(pixel))
        number = worn.panel_at(*worn.place_at(*found)) if found is not None else None
        return None if number is None else Place(panel=number)

    def _show_over(self, grip: Grip | None) -> None:
        key = grip.key if grip is not None else None
        if key != self.over:
            self.over = key
            self._view.refresh()

"""Paper on the screen: zoomed at the pointer, panned by hand, and fitted until she does either."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from workbench.ui import access
from workbench.ui.board.view import Bounds, Sight, fitted
from workbench.ui.focus_frame import fit_frame, show_focus
from workbench.ui.look import look

_A_NOTCH = 1.0015
"""How much larger for each eighth of a degree that the wheel is turned."""


class HandOnPaper(Protocol):
    """The mouse, from hover to release."""

    carries_paper: bool

    @property
    def panning(self) -> bool:
        """Whether the paper is in the hand."""

    def press(self, event: QMouseEvent) -> None:
        """Take hold."""

    def move(self, event: QMouseEvent) -> None:
        """Drag, or look."""

    def release(self, event: QMouseEvent) -> None:
        """End the drag, or choose what was clicked."""

    def cancel(self) -> bool:
        """Take the drag back; False where there is none."""

    def leave(self) -> None:
        """The hand is elsewhere."""


class KeysOnPaper(Protocol):
    """The keyboard, but for the space bar and what Escape does to a drag."""

    def press(self, event: QKeyEvent) -> bool:
        """Do what the key says; False where it says nothing here."""


class Paper(QWidget):
    """Passes the hand and the keys on; whoever derives it says what lies on it and paints that.

    ``sight`` is shared with other panes; without one it has its own. ``description`` is what a
    screen reader says while nothing is picked.
    """

    _hand: HandOnPaper
    _keys: KeysOnPaper

    def __init__(
        self,
        name: str,
        description: str,
        least: tuple[int, int],
        parent: QWidget | None = None,
        *,
        sight: Sight | None = None,
    ) -> None:
        super().__init__(parent)
        self.sight = Sight(self) if sight is None else sight
        self.sight.moved.connect(self.show_view)
        self._description = description
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMinimumSize(*least)
        self.setAccessibleName(name)
        self.setAccessibleDescription(description)

    # --- what whoever derives it says ------------------------------------------------------

    def bounds(self) -> Bounds | None:
        """What is fitted, in mm; None while there is nothing."""
        raise NotImplementedError

    def room(self) -> QRectF:
        """The pixels in which it is fitted."""
        raise NotImplementedError

    def paint(self, painter: QPainter) -> None:
        """Paint what lies on the paper, which is blank so far."""
        raise NotImplementedError

    def pointer(self) -> Qt.CursorShape:
        """How the pointer looks while the paper is not in the hand."""
        raise NotImplementedError

    def said(self) -> str:
        """What is picked, in words; empty while nothing is."""
        return ""

    # --- what is shown ---------------------------------------------------------------------

    def fit(self) -> None:
        """Show all of it."""
        bounds = self.bounds()
        if bounds is not None:
            self.sight.show_view(fitted(bounds, self.room()), by_hand=False)

    def zoom(self, factor: float) -> None:
        """Larger or smaller about the middle of the room."""
        self.sight.show_view(self.sight.view.zoomed(factor, self.room().center()))

    def show_view(self) -> None:
        """Paint from where the view is now."""
        self.refresh()

    def refresh(self) -> None:
        """Paint again."""
        self.show_pointer()
        self.update()

    def show_pointer(self) -> None:
        """Show at the pointer what a press would take hold of."""
        hand = self._hand
        if hand.panning:
            shape = Qt.CursorShape.ClosedHandCursor
        else:
            shape = Qt.CursorShape.OpenHandCursor if hand.carries_paper else self.pointer()
        if self.cursor().shape() != shape:
            self.setCursor(shape)

    def tell(self) -> None:
        """Say to a screen reader what is picked; what the keys do while nothing is."""
        said = self.said() or self._description
        if said != self.accessibleDescription():
            self.setAccessibleDescription(said)
            access.tell(self)

    # --- events ----------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """The blank paper, and what lies on it."""
        painter = QPainter(self)
        painter.fillRect(event.rect(), look().paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.paint(painter)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What was fitted is fitted again."""
        if not self.sight.by_hand:
            self.fit()
        fit_frame(self)
        super().resizeEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A press takes hold."""
        self._hand.press(event)
        self.show_pointer()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A move drags, or looks."""
        self._hand.move(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A release keeps, or picks."""
        self._hand.release(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the hand any more."""
        self._hand.leave()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel zooms at the pointer; with Shift it moves the paper sideways."""
        turn, view = event.angleDelta(), self.sight.view
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self.sight.show_view(view.panned(turn.y() or turn.x(), 0.0))
        else:
            self.sight.show_view(view.zoomed(_A_NOTCH ** turn.y(), event.position()))
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The space bar takes hold of the paper, Escape takes a drag back; the other keys are passed on."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._carry(True)
        elif event.key() == Qt.Key.Key_Escape and self.give_up():
            self.refresh()
        elif not self._keys.press(event):
            super().keyPressEvent(event)

    def give_up(self) -> bool:
        """Take back what is under way; False where nothing is."""
        return self._hand.cancel()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Let go of the paper with the space bar."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._carry(False)
        else:
            super().keyReleaseEvent(event)

    def _carry(self, on: bool) -> None:
        self._hand.carries_paper = on
        self.show_pointer()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show where the keys are."""
        show_focus(self, event)
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """A space bar that is let go of elsewhere is let go of."""
        self._hand.carries_paper = False
        show_focus(self, event)
        super().focusOutEvent(event)

    def on_closed(self) -> None:
        """A field that was laid over the paper is put away: the keys go on here."""
        if self.isVisible() and not self.hasFocus():
            self.setFocus(Qt.FocusReason.OtherFocusReason)

    def changeEvent(self, event: QEvent) -> None:
        """Light and dark can change under it."""
        if event.type() == QEvent.Type.PaletteChange:
            self.update()
        super().changeEvent(event)

"""The worn view: the bodice on her body, turned by hand or by key; its shape points can be dragged here."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.body import LEVEL_LABEL, LevelName
from workbench.document import Picture
from workbench.draft import Place
from workbench.ui import access
from workbench.ui.board.handles import HandleKey
from workbench.ui.desk import Desk
from workbench.ui.focus_frame import fit_frame, show_focus
from workbench.ui.look import GRID, fonts, look
from workbench.ui.worn.drag import nudged
from workbench.ui.worn.dressed import Dressed
from workbench.ui.worn.grips import Grip, grips_of
from workbench.ui.worn.hand import Hand
from workbench.ui.worn.labels import ROOM, Label, labels_of, paint_labels
from workbench.ui.worn.paint_worn import paint_grips, paint_veil, paint_worn
from workbench.ui.worn.stage import Stage, stage_for
from workbench.worn import FRONT, THREE_QUARTER, Eye, Seen, Sight, Worn, seen_from

STEP = 15.0
"""Degrees that one key turns her by."""
_DOWN = 6.0
_RESTING_MS = 150
_AIR = 3.0 * GRID
_NAME = "The bodice as worn"
_KEYS = (
    "Left and right turn her by fifteen degrees, Home turns to the front. "
    "H goes from one shape point to the next; with Shift the arrow keys move the one that is chosen."
)
_EMPTY = "The bodice is shown on her body as soon as it can be worked out from the measurements."


class WornView(QWidget):
    """Shows a picture's bodice on the body of its measurements."""

    turned = Signal(object)
    """The :class:`Eye` she is seen from now."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._picture: Picture | None = None
        self._dressed = Dressed()
        self._seen: Seen | None = None
        self._grips: tuple[Grip, ...] = ()
        self._labels: tuple[Label, ...] = ()
        self._eye = Eye(THREE_QUARTER, _DOWN)
        self._stage = Stage(1.0, 0.0, 0.0)
        self._hand = Hand(self, desk)
        self._resting = QTimer(self)
        self._resting.setSingleShot(True)
        self._resting.setInterval(_RESTING_MS)
        self._resting.timeout.connect(self.show_inside)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMinimumSize(60 * GRID, 70 * GRID)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(_NAME)
        self.setAccessibleDescription(_KEYS)

    # --- what is shown ---------------------------------------------------------------------

    @property
    def desk(self) -> Desk:
        """Where its edits go."""
        return self._desk

    @property
    def labels(self) -> tuple[Label, ...]:
        """What is said beside the levels."""
        return self._labels

    @property
    def eye(self) -> Eye:
        """From where she is seen."""
        return self._eye

    @property
    def worn(self) -> Worn | None:
        """The bodice on show; None while there is none."""
        return self._dressed.worn

    @property
    def grips(self) -> tuple[Grip, ...]:
        """The shape points that face the eye."""
        return self._grips

    @property
    def stage(self) -> Stage:
        """Where she stands in the pane."""
        return self._stage

    def level_at(self, level: LevelName) -> float:
        """The pixel at which a level line ends at the right; nought while none is seen."""
        if self._seen is None:
            return 0.0
        return float(self._stage.pixels(self._seen.levels[level][-1:])[0, 1])

    def sizeHint(self) -> QSize:
        """Tall, as she stands."""
        return QSize(80 * GRID, 130 * GRID)

    def show_picture(self, picture: Picture) -> None:
        """Show the bodice of a picture; bones and lacing are looked up again when the hand rests."""
        self._picture = picture
        self._dressed.follow(picture)
        self._labels = labels_of(picture)
        if not self._dressed.is_whole(picture):
            self._resting.start()
        self._look()

    def show_inside(self) -> None:
        """Show bones and lacing of the draft as it stands."""
        self._resting.stop()
        if self._picture is not None and self.isVisible():
            self._dressed.look_inside(self._picture)
            self._look()

    def show_selection(self, _place: Place | None) -> None:
        """Light up what the desk has lit up."""
        self.tell()
        self.update()

    def turn_to(self, eye: Eye) -> None:
        """See her from somewhere else."""
        if eye != self._eye:
            self._eye = eye
            self._look()
            self.turned.emit(eye)

    def refresh(self) -> None:
        """Paint again; the pointer says what a press would take hold of."""
        over = self._hand.over is not None
        self.setCursor(Qt.CursorShape.SizeAllCursor if over else Qt.CursorShape.ArrowCursor)
        self.update()

    def _look(self) -> None:
        """Look at her anew."""
        self._seen, self._grips = None, ()
        if self.worn is not None:
            self._seen = seen_from(self.worn, self._eye)
            if self._picture is not None and self._picture.current:
                self._grips = grips_of(Sight(self.worn, self._eye))
            if not self._hand.holds_point:
                self._stage = stage_for(self.worn, self._room(), self._eye.down)
        self.tell()
        self.update()

    def _room(self) -> QRectF:
        return QRectF(self.rect()).adjusted(_AIR, _AIR, -_AIR - ROOM, -_AIR)

    @property
    def chosen(self) -> Grip | None:
        """The shape point that is selected, where it faces the eye."""
        place = self._desk.selection
        if place is None or place.line is None or place.point is None:
            return None
        return self._grip(HandleKey(place.line, place.point))

    def _grip(self, key: HandleKey | None) -> Grip | None:
        return next((grip for grip in self._grips if grip.key == key), None)

    def tell(self) -> None:
        """Say to a screen reader from where she is seen, the girths, and what the keys do."""
        chosen = self.chosen
        said = [f"Seen from {round(self._eye.degrees)} degrees."]
        if chosen is not None:
            said.append(f"{chosen.key.line.capitalize()} point {chosen.key.number + 1} is chosen.")
        said += [f"{LEVEL_LABEL[label.level]}: {label.girths}." for label in self._labels]
        words = " ".join((*said, _KEYS))
        if not self._desk.gesturing and words != self.accessibleDescription():
            self.setAccessibleDescription(words)
            access.tell(self)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The body with the bodice, or why there is none."""
        painter = QPainter(self)
        painter.fillRect(event.rect(), look().paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._seen is None or self._picture is None:
            self._paint_empty(painter)
            return
        place = self._desk.selection
        paint_worn(painter, self._seen, self._stage, place)
        if not self._picture.current:
            paint_veil(painter, QRectF(self.rect()))
        else:
            paint_grips(painter, self._grips, self._stage, self._grip(self._hand.over), self.chosen)
        lit = place.level if place is not None else None
        paint_labels(painter, self._labels, self._seen, self._stage, self._label_room(), lit)

    def _label_room(self) -> QRectF:
        return QRectF(self.rect()).adjusted(0, _AIR, -_AIR, -_AIR)

    def _paint_empty(self, painter: QPainter) -> None:
        painter.setFont(fonts().body)
        painter.setPen(look().soft_ink)
        box = self.rect().adjusted(6 * GRID, 0, -6 * GRID, 0)
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(box, flags, _EMPTY)

    # --- hand and keys ---------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A press takes hold."""
        self._hand.press(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A move drags, or looks."""
        self._hand.move(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A release keeps, or picks."""
        self._hand.release()

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the hand any more."""
        super().leaveEvent(event)
        self._hand.leave()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Turn her, choose a shape point, move it, or take a drag back."""
        key = Qt.Key(event.key())
        moves = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if key == Qt.Key.Key_Escape and self._hand.cancel():
            self.update()
        elif moves and key in _ARROWS and self.chosen is not None:
            self._nudge(self.chosen, *_ARROWS[key])
        elif key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self.turn_by(STEP if key == Qt.Key.Key_Left else -STEP)
        elif key == Qt.Key.Key_Home:
            self.turn_to(Eye(FRONT, self._eye.down))
        elif key == Qt.Key.Key_H:
            self._next(-1 if moves else 1)
        else:
            super().keyPressEvent(event)

    def turn_by(self, degrees: float) -> None:
        """Walk on round her, to whole steps."""
        now = STEP * round(self._eye.degrees / STEP)
        self.turn_to(Eye((now + degrees) % 360.0, self._eye.down))

    def _nudge(self, grip: Grip, right: int, up: int) -> None:
        outcome = self.worn.outcome if self.worn is not None else None
        if outcome is not None and self._picture is not None and self._picture.current:
            changed = nudged(self._desk.project, outcome, grip, right, up)
            self._desk.apply(f"Move {grip.key.line} point", changed)
            self._desk.now()

    def _next(self, step: int) -> None:
        """The next shape point that faces the eye."""
        keys = list(dict.fromkeys(grip.key for grip in self._grips))
        if not keys:
            return
        chosen = self.chosen
        at = keys.index(chosen.key) + step if chosen is not None else (0 if step > 0 else -1)
        key = keys[at % len(keys)]
        self._desk.select(Place(line=key.line, point=key.number))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """She is as large as the pane allows."""
        fit_frame(self)
        self._look()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show where the keys are."""
        show_focus(self, event)
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The keys are elsewhere."""
        show_focus(self, event)
        super().focusOutEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        """Light and dark can change under it."""
        if event.type() == QEvent.Type.PaletteChange:
            self.update()
        super().changeEvent(event)


_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}

"""A line edit for one figure: it shows what is stored, hands in what is typed, and loses nothing.

It knows no measurements and no units; whoever owns it reads what it hands in.
"""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSignalBlocker, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QFont,
    QFontMetrics,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QWheelEvent,
)
from PySide6.QtWidgets import QLineEdit, QSizePolicy, QWidget

from workbench.ui.look import GRID, fonts, look

HEIGHT = 7 * GRID
_NOTCH = 120
"""What a mouse wheel reports for one click, in eighths of a degree."""
_STEPS = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1, Qt.Key.Key_PageUp: 8, Qt.Key.Key_PageDown: -8}
_NEVER_SHOWN = object()


class Entry(QLineEdit):
    """Enter or leaving hands in what was typed, Escape brings back what was there.

    Arrow keys step; so does the wheel, while the field has the focus.
    """

    entered = Signal(str)
    """What was typed, to be read."""
    stepped = Signal(int)
    """So many steps up, or down where less than nothing."""
    rested = Signal()
    """The key that stepped was let go, or the wheel has turned."""
    restored = Signal()
    """What was typed has been given up."""
    focused = Signal()
    """The field has the focus now."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setFrame(False)
        self.setFixedHeight(HEIGHT)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self._stamp: object = _NEVER_SHOWN
        self._kept = ""
        self._suffix = ""
        self._troubled = False
        self._turned = 0
        self._stepping = False
        self.setFont(fonts().body)
        self.textChanged.connect(self._lean)
        self._make_room()

    @property
    def pending(self) -> bool:
        """Whether it holds something that was typed and has not been taken over."""
        return self.text() != self._kept

    def show_value(self, stamp: object, text: str, estimate: str = "") -> None:
        """Show a stored value; what is being typed stays while the value behind it is the same.

        ``stamp`` is that value, ``estimate`` is shown, in italics, where ``text`` is empty.
        """
        other = stamp != self._stamp
        typing = self.pending and not other
        self._stamp, self._kept = stamp, text
        if estimate != self.placeholderText():
            self.setPlaceholderText(estimate)
            self.setAccessibleDescription(estimate)
            self._lean()
        # put anew even where it reads the same: what was typed on the way is no longer the field's to undo
        if not typing and (self.text() != text or (other and self.isUndoAvailable())):
            self._put(text)

    def show_suffix(self, suffix: str) -> None:
        """Show a unit behind the figure."""
        if suffix != self._suffix:
            self._suffix = suffix
            self._make_room()
            self.update()

    def show_trouble(self, troubled: bool) -> bool:
        """Show whether what it holds could not be read; the words stand elsewhere. Whether that was new."""
        new = troubled != self._troubled
        if new:
            self._troubled = troubled
            self.update()
        return new

    def forget(self) -> None:
        """Hold on to nothing that was typed: the next value is shown whatever it is."""
        self._stamp = _NEVER_SHOWN

    def commit(self) -> None:
        """Hand in what was typed, if anything was."""
        if self.pending:
            self.entered.emit(self.text())

    def restore(self) -> None:
        """Bring back what was there before."""
        self._put(self._kept)
        self.show_trouble(False)
        self.selectAll()
        self.restored.emit()

    def _put(self, text: str) -> None:
        """Set the text without telling anybody: showing never edits."""
        with QSignalBlocker(self):
            self.setText(text)
        self._lean()
        if self.hasFocus():
            self.selectAll()
        else:
            self.setCursorPosition(0)  # a long text is read from its beginning

    def _lean(self) -> None:
        """An estimate stands in italics, so that it is never taken for a measurement."""
        italic = not self.text() and bool(self.placeholderText())
        if italic != self.font().italic():
            self.setFont(_leaning(italic))

    def _make_room(self) -> None:
        width = QFontMetrics(fonts().body).horizontalAdvance(self._suffix) if self._suffix else 0
        self.setTextMargins(GRID, 0, width + GRID, 0)

    def text_room(self) -> int:
        """Pixels there are for the figure or its estimate."""
        margins = self.textMargins()
        return self.width() - margins.left() - margins.right() - GRID

    # --- what she does -----------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter, Escape and the keys that step; the rest is typing."""
        key = Qt.Key(event.key())
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.commit()
            self.selectAll()
        elif key == Qt.Key.Key_Escape and (self.pending or self._troubled):
            self.restore()
        elif key in _STEPS and not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            self._step(_STEPS[key])
            self._stepping = True
        else:
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """A key held down is one run of steps, and ends when it is let go."""
        if not event.isAutoRepeat():
            self._rest()
        super().keyReleaseEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Without the focus the wheel belongs to the form, which scrolls."""
        if not self.hasFocus():
            event.ignore()
            return
        self._turned += event.angleDelta().y()
        notches = int(self._turned / _NOTCH)
        self._turned -= notches * _NOTCH
        if notches:
            self._step(notches)
            self.rested.emit()
        event.accept()

    def _step(self, steps: int) -> None:
        self.commit()
        if not self.pending:
            self.stepped.emit(steps)

    def _rest(self) -> None:
        if self._stepping:
            self._stepping = False
            self.rested.emit()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Say so, and begin the wheel anew."""
        super().focusInEvent(event)
        self._turned = 0
        self.focused.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving hands in; a menu over the field is not leaving it."""
        super().focusOutEvent(event)
        self._rest()
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.commit()

    def paintEvent(self, event: QPaintEvent) -> None:
        """The figure, its unit, and a border that says what state it is in."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._suffix:
            painter.setPen(look().soft_ink)
            painter.setFont(_leaning(False))
            place = self.rect().adjusted(0, 0, -GRID - 2, 0)
            painter.drawText(place, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, self._suffix)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(self._border())
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 3, 3)
        painter.end()

    def _border(self) -> QPen:
        if self._troubled:
            return QPen(look().attend, 2)
        if self.hasFocus():
            return QPen(look().selected, 2)
        return QPen(look().rule if self.isEnabled() else look().hairline, 1)


def _leaning(italic: bool) -> QFont:
    """The font of figures, or the smaller, italic one of estimates.

    Upright must be said: a painter takes what is not said from its widget.
    """
    font = QFont(fonts().small if italic else fonts().body)
    font.setItalic(italic)
    return font

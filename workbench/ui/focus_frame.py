"""A frame round a canvas that the keys have come to: a field shows its own, a canvas has none."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.ui.look import look

_BY_KEY = (
    Qt.FocusReason.TabFocusReason,
    Qt.FocusReason.BacktabFocusReason,
    Qt.FocusReason.ShortcutFocusReason,
)
_WIDE = 2.0


class FocusFrame(QWidget):
    """Lies over the whole of a canvas and lets everything through."""

    def __init__(self, around: QWidget) -> None:
        super().__init__(around)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAccessibleName("Frame")
        self.hide()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A line along the edge."""
        painter = QPainter(self)
        painter.setPen(QPen(look().selected, _WIDE))
        half = 0.5 * _WIDE
        painter.drawRect(QRectF(self.rect()).adjusted(half, half, -half, -half))
        painter.end()


def show_focus(canvas: QWidget, event: QFocusEvent) -> None:
    """Frame a canvas that was come to by key, until it is left; who clicks on it knows where she is."""
    frame = _frame_of(canvas)
    if not event.gotFocus() or event.reason() not in _BY_KEY:
        if frame is not None:
            frame.hide()
        return
    frame = frame or FocusFrame(canvas)
    frame.setGeometry(canvas.rect())
    frame.raise_()
    frame.show()


def fit_frame(canvas: QWidget) -> None:
    """Let the frame of a canvas, if it has one, go along with its size."""
    frame = _frame_of(canvas)
    if frame is not None:
        frame.setGeometry(canvas.rect())


def _frame_of(canvas: QWidget) -> FocusFrame | None:
    return next((child for child in canvas.children() if isinstance(child, FocusFrame)), None)

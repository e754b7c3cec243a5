"""One picture to look at: larger at the pointer, moved by hand, and measured between two points."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.document import WishPicture
from workbench.ui.board.behind import decoded
from workbench.ui.look import GRID, fonts, look
from workbench.ui.wish.lens import Lens, Spot, fitted, held_inside

_NAME = "Picture"
_DESCRIPTION = "Plus and minus zoom, 0 shows all of it, arrow keys move it."
_MEASURING = "Arrow keys move the cross, Enter sets a point, Escape leaves it."
_A_NOTCH = 1.0015
_ZOOM, _PAN, _LEAP = 1.25, 40.0, 8.0
_CROSS = 9.0
_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}


class PictureView(QWidget):
    """Shows a picture; while two points are wanted a click sets one."""

    measured = Signal(object, object)
    """The two points, each a :data:`Spot`."""
    left = Signal()
    """No points are wanted any more."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pixmap = QPixmap()
        self._shown: WishPicture | None = None
        self._lens, self._by_hand = Lens(), False
        self._grip: QPointF | None = None
        self._wanted = False
        self._points: tuple[Spot, ...] = ()
        self._cross: Spot = (0.0, 0.0)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(60 * GRID, 34 * GRID)
        self.setAccessibleName(_NAME)
        self.setAccessibleDescription(_DESCRIPTION)

    def sizeHint(self) -> QSize:
        """Most of the pane."""
        return QSize(76 * GRID, 76 * GRID)

    @property
    def lens(self) -> Lens:
        """Where the picture lies."""
        return self._lens

    @property
    def points(self) -> tuple[Spot, ...]:
        """The points set so far."""
        return self._points

    @property
    def size_in_pixels(self) -> QSizeF:
        """Of the picture."""
        return QSizeF(self._pixmap.size())

    def show_wish(self, picture: WishPicture | None) -> None:
        """Show another picture, all of it; the same one stays as it is."""
        same = picture is not None and self._shown is not None and picture.jpeg == self._shown.jpeg
        self._shown = picture
        self.setAccessibleName(f"{_NAME}: {picture.name}" if picture else _NAME)
        if not same:
            self._pixmap = decoded(picture) if picture is not None else QPixmap()
            self.want_points(False)
            self.fit()

    def fit(self) -> None:
        """Show all of it."""
        self._by_hand = False
        edge = 2 * GRID
        room = QRectF(self.rect()).adjusted(edge, edge, -edge, -edge)
        self._look_through(fitted(self.size_in_pixels, room))

    def zoom(self, factor: float, at: QPointF | None = None) -> None:
        """Larger or smaller, about the middle or where said."""
        self._by_hand = True
        self._look_through(self._lens.zoomed(factor, at or QPointF(self.rect().center())))

    def want_points(self, wanted: bool) -> None:
        """Ask for two points, beginning anew, or leave it."""
        leaves = self._wanted and not wanted
        self._wanted, self._points = wanted, ()
        size = self.size_in_pixels
        self._cross = 0.5 * size.width(), 0.5 * size.height()
        self.setAccessibleDescription(_MEASURING if wanted else _DESCRIPTION)
        self.setCursor(Qt.CursorShape.CrossCursor if wanted else Qt.CursorShape.OpenHandCursor)
        if wanted:
            self.setFocus()
        self.update()
        if leaves:
            self.left.emit()

    def _look_through(self, lens: Lens) -> None:
        self._lens = lens
        self.update()

    def _set_point(self, spot: Spot) -> None:
        """The third begins anew."""
        kept = self._points if len(self._points) < 2 else ()
        self._points = (*kept, held_inside(spot, self.size_in_pixels))
        self.update()
        if len(self._points) == 2:
            self.measured.emit(*self._points)

    # --- events ----------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What was all in sight stays all in sight."""
        super().resizeEvent(event)
        if not self._by_hand:
            self.fit()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look."""
        super().changeEvent(event)
        self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Larger or smaller at the pointer."""
        self.zoom(_A_NOTCH ** event.angleDelta().y(), event.position())
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Set a point where one is wanted, else take hold of the picture."""
        pans = event.button() == Qt.MouseButton.MiddleButton
        if self._wanted and event.button() == Qt.MouseButton.LeftButton:
            self._set_point(self._lens.spot(event.position()))
        elif pans or event.button() == Qt.MouseButton.LeftButton:
            self._grip = event.position()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The picture follows the hand; so does the cross."""
        if self._grip is not None:
            away, self._grip = event.position() - self._grip, event.position()
            self._by_hand = True
            self._look_through(self._lens.moved(away.x(), away.y()))
        elif self._wanted:
            self._cross = held_inside(self._lens.spot(event.position()), self.size_in_pixels)
            self.update()

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        """Let go."""
        self._grip = None
        self.setCursor(Qt.CursorShape.CrossCursor if self._wanted else Qt.CursorShape.OpenHandCursor)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Show all of it."""
        if not self._wanted and event.button() == Qt.MouseButton.LeftButton:
            self.fit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Zoom and move, or set points, without the mouse."""
        key = Qt.Key(event.key())
        leap = _LEAP if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1.0
        if key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom(_ZOOM)
        elif key in (Qt.Key.Key_Minus, Qt.Key.Key_Underscore):
            self.zoom(1 / _ZOOM)
        elif key == Qt.Key.Key_0:
            self.fit()
        elif key in _ARROWS:
            self._arrow(*_ARROWS[key], leap)
        elif self._wanted and key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self._set_point(self._cross)
        elif self._wanted and key == Qt.Key.Key_Escape:
            self.want_points(False)
        else:
            super().keyPressEvent(event)

    def _arrow(self, right: int, down: int, leap: float) -> None:
        if self._wanted:
            step = leap / self._lens.scale
            across, from_top = self._cross[0] + right * step, self._cross[1] + down * step
            self._cross = held_inside((across, from_top), self.size_in_pixels)
            self.update()
        else:
            self._by_hand = True
            self._look_through(self._lens.moved(-right * _PAN, -down * _PAN))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The picture on paper, and the points."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().paper)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._pixmap.isNull():
            painter.setPen(look().soft_ink)
            painter.setFont(fonts().body)
            said = "This picture cannot be shown." if self._shown else ""
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, said)
        else:
            whole = QRectF(self._pixmap.rect())
            painter.drawPixmap(self._lens.box(self.size_in_pixels), self._pixmap, whole)
            if self._wanted:
                self._paint_points(painter)
        if self.hasFocus():
            painter.setPen(QPen(look().selected, 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        painter.end()

    def _paint_points(self, painter: QPainter) -> None:
        """Each twice, light under dark, so that it is seen on any ground."""
        spots = [self._lens.at(spot) for spot in (*self._points, self._cross)]
        if len(self._points) == 2:
            spots.pop()
        for colour, width in ((look().paper, 4.0), (look().selected, 1.6)):
            painter.setPen(QPen(colour, width))
            if len(spots) >= 2:
                painter.drawLine(spots[0], spots[1])
            for spot in spots:
                painter.drawLine(spot - QPointF(_CROSS, 0), spot + QPointF(_CROSS, 0))
                painter.drawLine(spot - QPointF(0, _CROSS), spot + QPointF(0, _CROSS))

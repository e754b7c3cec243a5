"""The girth strip: every level's girths on its own line; the end of a bar can be dragged."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
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

from workbench.body import LevelName, snap, step_mm
from workbench.document import Picture, set_reduction
from workbench.draft import Place
from workbench.ui import access
from workbench.ui.board.bar_drag import BarDrag, reduction_name
from workbench.ui.board.bars import Axis, Bar, bars_of, extent_of
from workbench.ui.board.gestures import SLACK, Gesture, Pan
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.paint_bars import (
    FIGURES,
    PAD,
    Manner,
    drag_lines,
    paint_bar,
    paint_figures_of,
)
from workbench.ui.board.paint_levels import RULER
from workbench.ui.board.pens import across, pen, upright
from workbench.ui.board.strip_edges import GirthRuler, Legend
from workbench.ui.board.view import Sight
from workbench.ui.desk import Desk
from workbench.ui.focus_frame import fit_frame, show_focus
from workbench.ui.look import fonts, look

_NAME = "Girth strip"
_DESCRIPTION = (
    "One bar a level: body, finished, laced shut, and your limit. Up and Down choose a level, "
    "Left draws it in by a step, Right lets it out."
)
_PAST = 0.45
_REACH = 12.0
"""Pixels above and below a level line at which its bar is taken hold of."""


class Strip(QWidget):
    """Shows the bars of a picture; a drag sets the reduction of a level."""

    def __init__(self, desk: Desk, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._sight = sight
        self._picture: Picture | None = None
        self._bars: tuple[Bar, ...] = ()
        self._ghosts: dict[LevelName, Bar] = {}
        self._extent = (600.0, 1000.0)
        self._place: Place | None = None
        self._hover: LevelName | None = None
        self._pressed: tuple[QPointF, Bar | None] | None = None
        self._gesture: Gesture | None = None
        self._ruler, self._legend = GirthRuler(self), Legend(self)
        sight.moved.connect(self.refresh)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMinimumWidth(236)
        self.setAccessibleName(_NAME)
        self.setAccessibleDescription(_DESCRIPTION)

    def sizeHint(self) -> QSize:
        """Wide enough for an eighth to be seen."""
        return QSize(288, 480)

    @property
    def desk(self) -> Desk:
        """Where its edits go."""
        return self._desk

    @property
    def bars(self) -> tuple[Bar, ...]:
        """What is on show, bottom to top."""
        return self._bars

    @property
    def axis(self) -> Axis:
        """Girths to pixels; it stands still while a bar is dragged."""
        if isinstance(self._gesture, BarDrag):
            return self._gesture.axis
        return Axis(*self._extent, PAD, max(self.width() - PAD - FIGURES, 40.0))

    def end_of(self, level: LevelName) -> QPointF:
        """The pixel of a bar's end; KeyError where this style has no such level."""
        for bar in self._bars:
            if bar.level == level:
                return QPointF(self.axis.x(bar.finished), self._sight.view.y(bar.walk))
        raise KeyError(level)

    def refresh(self) -> None:
        """Paint the bars again, and the ruler only where its axis is another."""
        if self._picture is not None:
            self._ruler.show_axis(self.axis, self._picture.project.unit)
        for edge in (self._ruler, self._legend):
            edge.setVisible(bool(self._bars))
        self.update(self.rect().adjusted(0, int(RULER), 0, -self._legend.height()))

    def show_picture(self, picture: Picture) -> None:
        """Paint another picture; while a drag is under way, where its bars began stays on."""
        before, self._bars = self._bars, bars_of(picture)
        same = before == self._bars and self._picture is not None and _same_words(picture, self._picture)
        self._picture = picture
        if same and self._desk.gesturing:
            return  # a neckline is being dragged: nothing here changes
        if not self._desk.gesturing:
            self._ghosts = {}
            if self._bars:
                self._extent = extent_of(self._bars)
        elif not self._ghosts:
            self._ghosts = {bar.level: bar for bar in before}
        self.refresh()
        if not self._desk.gesturing:
            access.tell(self)

    def show_selection(self, place: Place | None) -> None:
        """Light up a level."""
        self._place = place
        self.refresh()
        access.tell(self)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Level lines, bars, figures, legend."""
        painter = QPainter(self)
        painter.fillRect(event.rect(), look().paper)
        upright(painter, 0, 0, self.height(), look().hairline)
        if self._picture is None or not self._bars:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._picture.outcome is None:
            painter.setOpacity(_PAST)  # the last bars that could be reckoned, not those of the project
        self._paint_bars(painter, self._picture)
        painter.setOpacity(1.0)
        if isinstance(self._gesture, BarDrag):
            self._paint_words(painter, self._gesture.bar.level)

    def _paint_bars(self, painter: QPainter, picture: Picture) -> None:
        project = picture.project
        held = self._gesture.bar.level if isinstance(self._gesture, BarDrag) else None
        manner = Manner(project.unit, project.fraction, self._place, self._hover, held)
        axis, view = self.axis, self._sight.view
        below = -1e9
        for bar in self._bars:
            self._paint_line(painter, bar)
            paint_bar(painter, bar, self._ghosts.get(bar.level), axis, view, manner)
            paint_figures_of(painter, bar, view, self.width(), manner, view.scale * (bar.walk - below))
            below = bar.walk

    def _paint_line(self, painter: QPainter, bar: Bar) -> None:
        """The level line, come over from the canvas."""
        shown = look()
        chosen = self._place is not None and self._place.level == bar.level
        colour = shown.selected if chosen else shown.soft_ink if bar.level == "waist" else shown.level
        across(painter, self._sight.view.y(bar.walk), 0, self.width(), colour)

    def _paint_words(self, painter: QPainter, level: LevelName) -> None:
        """Both ways to say the reduction, in a box under the bar that is dragged."""
        bar = next((bar for bar in self._bars if bar.level == level), None)
        if bar is None or self._picture is None:
            return
        project, shown, font = self._picture.project, look(), fonts().body
        lines = drag_lines(bar, project.unit, project.fraction)
        wide = max(width_of(words, font) for words in lines) + 16
        at = self.end_of(level)
        left = min(max(at.x() - 0.5 * wide, 4.0), self.width() - wide - 4)
        box = QRectF(left, at.y() + 22, wide, 42)
        painter.setPen(pen(shown.selected))
        painter.setBrush(shown.field)
        painter.drawRoundedRect(box, 4, 4)
        painter.setPen(shown.ink)
        for number, words in enumerate(lines):
            put(painter, words, box.left() + 8, box.top() + 12 + 18 * number, font)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Ruler and legend keep to their edges."""
        high = self._legend.heightForWidth(self.width())
        self._ruler.setGeometry(0, 0, self.width(), int(RULER))
        self._legend.setGeometry(0, self.height() - high, self.width(), high)
        self.refresh()
        fit_frame(self)
        super().resizeEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of a bar, or of the paper."""
        if self._gesture is not None:
            return
        pixel = event.position()
        if event.button() == Qt.MouseButton.MiddleButton:
            self._gesture = Pan(self._sight, pixel, across=False)
        elif event.button() == Qt.MouseButton.LeftButton:
            self._pressed = (pixel, self._bar_at(pixel))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag, or see what lies under the hand."""
        pixel = event.position()
        if self._gesture is None and self._pressed is not None:
            start, bar = self._pressed
            if (pixel - start).manhattanLength() > SLACK:
                self._gesture = self._begun(start, bar)
        if self._gesture is not None:
            self._gesture.move(pixel, free=bool(event.modifiers() & Qt.KeyboardModifier.AltModifier))
        elif self._pressed is None:
            bar_here = self._bar_at(pixel)
            self._show_hover(bar_here.level if bar_here else None)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Keep what was dragged, or select the level that was clicked."""
        gesture, self._gesture = self._gesture, None
        pressed, self._pressed = self._pressed, None
        if gesture is not None:
            gesture.finish()
        elif pressed is not None:
            bar = pressed[1] or self._row_at(pressed[0])
            self._desk.select(Place(level=bar.level) if bar else None)
        self.refresh()

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the hand any more."""
        self._show_hover(None)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel zooms the canvas and the strip together, about the line under the pointer."""
        at = QPointF(self._sight.view.x(0.0), event.position().y())
        self._sight.show_view(self._sight.view.zoomed(1.0015 ** event.angleDelta().y(), at))
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and Down choose a level; Left and Right set it; Escape takes a drag back."""
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape and self._cancel():
            return
        if key in (Qt.Key.Key_Up, Qt.Key.Key_Down) and self._bars:
            self._choose(1 if key == Qt.Key.Key_Up else -1)
        elif key in (Qt.Key.Key_Left, Qt.Key.Key_Right) and self._chosen is not None:
            self._step(self._chosen, 1 if key == Qt.Key.Key_Left else -1)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show where the keys are."""
        show_focus(self, event)
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The keys are elsewhere."""
        show_focus(self, event)
        super().focusOutEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        """Light and dark can change under the strip."""
        if event.type() == QEvent.Type.PaletteChange:
            self.update()
        super().changeEvent(event)

    @property
    def _chosen(self) -> Bar | None:
        level = self._place.level if self._place else None
        return next((bar for bar in self._bars if bar.level == level), None)

    def _begun(self, start: QPointF, bar: Bar | None) -> Gesture:
        if bar is None:
            return Pan(self._sight, start, across=False)
        return BarDrag(self._desk, bar, self.axis, start)

    def _cancel(self) -> bool:
        gesture, self._gesture = self._gesture, None
        self._pressed = None
        if gesture is not None:
            gesture.cancel()
        return gesture is not None

    def _choose(self, up: int) -> None:
        levels = [bar.level for bar in self._bars]
        now = levels.index(self._chosen.level) if self._chosen else levels.index("waist") - up
        self._desk.select(Place(level=levels[min(max(now + up, 0), len(levels) - 1)]))

    def _step(self, bar: Bar, inward: int) -> None:
        project = self._desk.project
        now = bar.reckoned - bar.finished
        wanted = snap(now + inward * step_mm(project.unit, project.fraction), project.unit, project.fraction)
        self._desk.apply(reduction_name(bar), set_reduction(project, bar.sets, wanted))
        self._desk.now()

    def _bar_at(self, pixel: QPointF) -> Bar | None:
        """The bar under the hand: anywhere along it, and a little beyond its end."""
        if not RULER < pixel.y() < self._legend.y():
            return None
        for bar in self._bars:
            beyond = max(self.axis.x(bar.finished), self.axis.x(bar.body)) + _REACH
            if abs(pixel.y() - self._sight.view.y(bar.walk)) <= _REACH and pixel.x() <= beyond:
                return bar
        return None

    def _row_at(self, pixel: QPointF) -> Bar | None:
        """The level whose figures are under the hand."""
        near = [bar for bar in self._bars if abs(pixel.y() - self._sight.view.y(bar.walk)) <= 2 * _REACH]
        return min(near, key=lambda bar: abs(pixel.y() - self._sight.view.y(bar.walk))) if near else None

    def _show_hover(self, level: LevelName | None) -> None:
        if level != self._hover:
            self._hover = level
            self.setCursor(Qt.CursorShape.SizeHorCursor if level else Qt.CursorShape.ArrowCursor)
            self.refresh()


def _same_words(one: Picture, other: Picture) -> bool:
    """Whether both say their figures in the same unit."""
    return (one.project.unit, one.project.fraction) == (other.project.unit, other.project.fraction)

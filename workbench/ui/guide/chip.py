"""One step of the guide: its number in a ring, a tick once it is done, and its name."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from workbench.ui.guide.steps import STEPS, Step
from workbench.ui.look import GRID, fonts, look

_RING = 22
_HEIGHT = 9 * GRID


class StepChip(QAbstractButton):
    """A click shows where the step is done."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.step: Step | None = None
        self.named = True
        """Whether there is room for its name."""
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_step(self, step: Step, named: bool) -> None:
        """Show a step as it stands; the current one always has its name."""
        if (step, named or step.current) == (self.step, self.named):
            return
        self.step, self.named = step, named or step.current
        state = "done" if step.done else "next" if step.current else "still to come"
        self.setAccessibleName(f"Step {step.number} of {len(STEPS)}, {step.title}, {state}")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """The ring, and its name where there is room."""
        wide = _RING + 2 * GRID
        if self.step is not None and self.named:
            self.ensurePolished()
            wide += self._metrics_width() + 2 * GRID
        return QSize(wide, _HEIGHT)

    def _metrics_width(self) -> int:
        title = self.step.title if self.step is not None else ""
        return QFontMetrics(fonts().strong).horizontalAdvance(title)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what a click does."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Filled where she is, a tick where she was, a bare ring where she will be."""
        step = self.step
        if step is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.underMouse() or self.hasFocus():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look().selected_fill)
            painter.drawRoundedRect(QRectF(self.rect()), 4, 4)
        ring = QRectF(GRID, (self.height() - _RING) / 2, _RING, _RING)
        self._paint_ring(painter, ring, step)
        if self.named:
            painter.setFont(fonts().strong if step.current else fonts().body)
            painter.setPen(look().ink if step.current else look().soft_ink)
            room = QRect(_RING + 2 * GRID, 0, self.width() - _RING - 2 * GRID, self.height())
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, step.title)
        painter.end()

    def _paint_ring(self, painter: QPainter, ring: QRectF, step: Step) -> None:
        colour = look().selected if step.current or step.done else look().rule
        painter.setPen(QPen(colour, 1.4))
        painter.setBrush(look().selected if step.current else look().field)
        painter.drawEllipse(ring.adjusted(1, 1, -1, -1))
        if step.done:
            x, y = ring.center().x(), ring.center().y()
            tick = [QPointF(x - 4.5, y + 0.5), QPointF(x - 1.5, y + 3.5), QPointF(x + 4.5, y - 4)]
            painter.setPen(QPen(colour, 1.8, c=Qt.PenCapStyle.RoundCap, j=Qt.PenJoinStyle.RoundJoin))
            painter.drawPolyline(QPolygonF(tick))
            return
        painter.setFont(fonts().strong)
        painter.setPen(look().on_selected if step.current else look().soft_ink)
        painter.drawText(ring, Qt.AlignmentFlag.AlignCenter, str(step.number))

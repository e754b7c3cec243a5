"""The numbered drawing of a piece as far as the hand has come: what is new in this step is lit up."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPaintEvent, QPen, QResizeEvent, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.marking import PieceGuide
from workbench.sheets import Drawing, MarkingPicture, Role, marking_picture
from workbench.ui.board.polygons import polygon
from workbench.ui.look import GRID, fonts, look

_EDGE = 7 * GRID
_NUMBER = 15
"""Height of a number, pixels."""
_WRAP = int(Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap)
_WIDTHS: dict[Role, float] = {
    "stitch": 2.0,
    "cut": 1.0,
    "mark": 1.6,
    "grain": 1.0,
    "waist": 1.0,
    "level": 1.0,
}
_DASHED: tuple[Role, ...] = ("grain", "waist", "level")
_TINTS: tuple[Role, ...] = ("grain", "waist", "level", "mark", "cut", "stitch")
"""In the order they are drawn."""
_FAINT = 130
"""Of 255: what comes later is seen, but never taken for what is drawn already."""


class MarkingBoard(QWidget):
    """Paints one piece as large as there is room for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._piece: PieceGuide | None = None
        self._step = 0
        self._missing = ""
        self._picture: MarkingPicture | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(70 * GRID, 70 * GRID)
        self.setAccessibleName("The piece as marked so far")

    def sizeHint(self) -> QSize:
        """Most of the pane."""
        return QSize(130 * GRID, 140 * GRID)

    def show_step(self, piece: PieceGuide | None, step: int, missing: str = "") -> None:
        """Show a piece at a step, or say what is ``missing``."""
        self._piece, self._step, self._missing = piece, step, missing
        said = missing
        if piece is not None:
            marks = ", ".join(map(str, piece.steps[step].marks))
            said = f"{piece.name}, step {step + 1}" + (f": new are the marks {marks}" if marks else "")
        self.setAccessibleDescription(said)
        self._picture = None
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Numbers keep their height, so where they stand depends on the room."""
        super().resizeEvent(event)
        self._picture = None

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look."""
        super().changeEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """What comes later is faint, what is done in ink, what is new lit up."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._piece is None:
            painter.setFont(fonts().body)
            painter.setPen(look().soft_ink)
            room = QRectF(self.rect()).adjusted(_EDGE, _EDGE, -_EDGE, -_EDGE)
            painter.drawText(room, _WRAP, self._missing)
        else:
            self._paint(painter, self._piece)
        painter.end()

    def _paint(self, painter: QPainter, piece: PieceGuide) -> None:
        scale = self._scale(piece)
        if self._picture is None:
            self._picture = marking_picture(piece, _NUMBER / scale, self._step)
        picture = self._picture
        view = self._view(picture, scale)
        colours = look()
        faint = QColor(colours.rule)
        faint.setAlpha(_FAINT)
        for drawing, ink in (
            (picture.later, faint),
            (picture.before, colours.ink),
            (picture.now, colours.selected),
        ):
            _strokes(painter, drawing, ink, view)
        for drawing, ink in ((picture.before, colours.ink), (picture.now, colours.selected)):
            _numbers(painter, drawing, ink, view)

    def _scale(self, piece: PieceGuide) -> float:
        """Pixels to the millimetre."""
        low, high = piece.cut.min(axis=0), piece.cut.max(axis=0)
        room = self.rect().adjusted(_EDGE, _EDGE, -_EDGE, -_EDGE)
        wide, tall = max(float(high[0] - low[0]), 1.0), max(float(high[1] - low[1]), 1.0)
        return max(min(room.width() / wide, room.height() / tall), 0.01)

    def _view(self, picture: MarkingPicture, scale: float) -> QTransform:
        left, bottom, right, top = picture.bounds()
        middle = self.rect().center()
        view = QTransform()
        view.translate(middle.x(), middle.y())
        view.scale(scale, -scale)
        view.translate(-0.5 * (left + right), -0.5 * (bottom + top))
        return view


def _strokes(painter: QPainter, drawing: Drawing, ink: QColor, view: QTransform) -> None:
    for role in _TINTS:
        pen = QPen(ink, _WIDTHS[role])
        if role in _DASHED:
            pen.setDashPattern([5, 4])
        painter.setPen(pen)
        for stroke in drawing.strokes:
            if stroke.role == role:
                line = view.map(polygon(stroke.points))
                if stroke.closed:
                    painter.setBrush(Qt.BrushStyle.NoBrush)
                    painter.drawPolygon(line)
                else:
                    painter.drawPolyline(line)


def _numbers(painter: QPainter, drawing: Drawing, ink: QColor, view: QTransform) -> None:
    font = QFont(fonts().strong)
    font.setPixelSize(_NUMBER)
    painter.setFont(font)
    painter.setPen(ink)
    for label in drawing.labels:
        at = view.map(QPointF(label.x, label.y))
        wide = painter.fontMetrics().horizontalAdvance(label.text)
        painter.drawText(round(at.x() - 0.5 * wide), round(at.y()), label.text)

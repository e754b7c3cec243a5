"""What an exported file will hold, small: the page and the pieces on it, or the words why there is none."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.exchange import LargePage, Projector
from workbench.ui.board.polygons import polygon
from workbench.ui.look import GRID, fonts, look

_EDGE = 5 * GRID
_WRAP = int(Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap)
_SHOWN = ("cut", "stitch", "fold", "notch")


class ExportPreview(QWidget):
    """Paints a page as large as there is room for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._page: LargePage | None = None
        self._projector: Projector | None = None
        self._words = ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(100 * GRID, 90 * GRID)
        self.setAccessibleName("What the file will hold")

    def sizeHint(self) -> QSize:
        """A good half of the dialog."""
        return QSize(140 * GRID, 120 * GRID)

    def show_page(self, page: LargePage | None, projector: Projector | None, words: str = "") -> None:
        """Show a page, as a projector shows it where one is given; or words in its place."""
        self._page, self._projector, self._words = page, projector, words
        names = ", ".join(thing.title for thing in page.things) if page is not None else words
        self.setAccessibleDescription(names)
        self.update()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look."""
        super().changeEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Ground, page, pieces."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        room = QRectF(self.rect()).adjusted(_EDGE, _EDGE, -_EDGE, -_EDGE)
        if self._page is None:
            painter.setFont(fonts().body)
            painter.setPen(look().soft_ink)
            painter.drawText(room, _WRAP, self._words)
        else:
            self._paint_page(painter, self._page, room)
        painter.end()

    def _paint_page(self, painter: QPainter, page: LargePage, room: QRectF) -> None:
        scale = min(room.width() / page.width, room.height() / page.height)
        view = QTransform()
        view.translate(room.center().x(), room.center().y())
        view.scale(scale, -scale)
        view.translate(-0.5 * page.width, -0.5 * page.height)
        ground, ink = self._colours()
        sheet = view.mapRect(QRectF(0, 0, page.width, page.height))
        painter.fillRect(sheet, ground)
        if self._projector is not None:
            self._paint_grid(painter, page, view, ink)
        pen = QPen(ink, 1.0)
        if self._projector is not None:
            pen.setWidthF(max(self._projector.line_mm * scale, 1.0))
        # where nothing is cut, the stitch lines are what there is: dotted they would hardly be seen
        cut = any(stroke.role == "cut" for thing in page.things for stroke in thing.drawing.strokes)
        for thing in page.things:
            placed = QTransform.fromTranslate(thing.dx, thing.dy) * view
            for stroke in thing.drawing.strokes:
                if stroke.role in _SHOWN:
                    dotted = cut and stroke.role == "stitch"
                    pen.setStyle(Qt.PenStyle.DotLine if dotted else Qt.PenStyle.SolidLine)
                    painter.setPen(pen)
                    line = placed.map(polygon(stroke.points))
                    if stroke.closed:
                        painter.setBrush(Qt.BrushStyle.NoBrush)
                        painter.drawPolygon(line)
                    else:
                        painter.drawPolyline(line)
        painter.setPen(QPen(look().rule, 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(sheet)

    def _colours(self) -> tuple[QColor, QColor]:
        """Of ground and lines: a sheet's own, or those a projector throws."""
        if self._projector is None:
            return look().panel, look().ink
        dark = self._projector.ground == "dark"
        shade = round(255 * self._projector.contrast)
        return (QColor(0, 0, 0), QColor(shade, shade, shade)) if dark else _light(shade)

    def _paint_grid(self, painter: QPainter, page: LargePage, view: QTransform, ink: QColor) -> None:
        assert self._projector is not None, "asked for only with a projector"
        faint = QColor(ink)
        faint.setAlpha(80)
        painter.setPen(QPen(faint, 1))
        side = self._projector.grid_mm
        for across, length in ((True, page.width), (False, page.height)):
            count = int(0.5 * length // side)
            for number in range(-count, count + 1):
                at = 0.5 * length + number * side
                ends = ((at, 0.0), (at, page.height)) if across else ((0.0, at), (page.width, at))
                painter.drawLine(*(view.map(QPointF(*end)) for end in ends))


def _light(shade: int) -> tuple[QColor, QColor]:
    return QColor(255, 255, 255), QColor(255 - shade, 255 - shade, 255 - shade)

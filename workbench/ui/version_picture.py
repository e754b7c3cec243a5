"""A small picture of a project: the panels of its draft, laid apart."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.document import Project, picture_of
from workbench.sheets import placements
from workbench.ui.look import GRID, fonts, look

_EDGE = 3 * GRID
_NO_DRAFT = "Nothing can be drawn from this one yet"


class VersionPicture(QWidget):
    """Paints the draft of one project as large as there is room for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.outlines: tuple[QPolygonF, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(70 * GRID, 45 * GRID)
        self.setAccessibleName("Picture of the version")

    def show_project(self, project: Project | None) -> None:
        """Draw a project; empty paper for none, a sentence for one that cannot be drafted."""
        self.outlines = _outlines(project) if project is not None else ()
        self.setAccessibleDescription(f"{len(self.outlines)} panels" if self.outlines else _NO_DRAFT)
        self.update()

    def sizeHint(self) -> QSize:
        """A good half of the dialog."""
        return QSize(110 * GRID, 60 * GRID)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look."""
        super().changeEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The panels, on paper."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().paper)
        if self.outlines:
            self._paint_panels(painter)
        else:
            painter.setPen(look().soft_ink)
            painter.setFont(fonts().body)
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, _NO_DRAFT)
        painter.end()

    def _paint_panels(self, painter: QPainter) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setTransform(self._view())
        pen = QPen(look().ink)
        pen.setCosmetic(True)
        painter.setPen(pen)
        painter.setBrush(look().panel)
        for outline in self.outlines:
            painter.drawPolygon(outline)

    def _view(self) -> QTransform:
        """From millimetres, y up, to pixels, y down: all panels in sight, in the middle."""
        box = QRectF()
        for outline in self.outlines:
            box = box.united(outline.boundingRect())
        room = self.rect().adjusted(_EDGE, _EDGE, -_EDGE, -_EDGE)
        scale = min(room.width() / max(box.width(), 1.0), room.height() / max(box.height(), 1.0))
        view = QTransform()
        view.translate(room.center().x(), room.center().y())
        view.scale(scale, -scale)
        view.translate(-box.center().x(), -box.center().y())
        return view


def _outlines(project: Project) -> tuple[QPolygonF, ...]:
    good = picture_of(project).good
    if good is None or good.draft is None:
        return ()
    panels = good.draft.panels
    rings = (place.put(panels[place.panel].outline) for place in placements(good, "apart"))
    return tuple(QPolygonF([QPointF(x, y) for x, y in ring.tolist()]) for ring in rings)

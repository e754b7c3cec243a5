"""A strip under the map that says what the shades and the beads mean."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.beads import BandWhy
from workbench.ui.beads.bench import BeadsBench, Worked
from workbench.ui.beads.paint_map import band_brush
from workbench.ui.beads.sprites import draw_bead
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.pens import pen
from workbench.ui.look import GRID, fonts, look

_WORDS: tuple[tuple[BandWhy, str], ...] = (
    ("bone", "Bone channel"),
    ("seam", "Seam, edge"),
    ("opening", "Opening"),
    ("arm", "Under the arm"),
)
_BOX, _LINE = 14.0, 22
_EDGE = 12.0


class Legend(QWidget):
    """Bands and the kinds that are used, wrapped where the strip is narrow."""

    def __init__(self, bench: BeadsBench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._worked: Worked | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("What the map shows")
        bench.worked_out.connect(self.show_worked)

    def show_worked(self, worked: Worked) -> None:
        """Show the kinds that are on the map."""
        self._worked = worked
        words = [text for _, text in _WORDS] + [name for name, _ in self._kinds()]
        self.setAccessibleDescription(", ".join(words))
        self.updateGeometry()
        self.update()

    def _kinds(self) -> list[tuple[str, int]]:
        worked = self._worked
        if worked is None or worked.beading is None:
            return []
        names = [kind.name for kind in worked.beading.plan.kinds]
        return [(line.kind.name, names.index(line.kind.name)) for line in worked.beading.count.kinds]

    def _places(self, width: float) -> list[tuple[str, float, float]]:
        """Words with the pixel at which each begins."""
        x, y, found = _EDGE, 0.5 * _LINE + 4, []
        for text in [text for _, text in _WORDS] + [name for name, _ in self._kinds()]:
            shown = text if len(text) <= 30 else f"{text[:29]}…"
            wide = _BOX + 6 + width_of(shown, fonts().small) + 16
            if x + wide > width - _EDGE and x > _EDGE:
                x, y = _EDGE, y + _LINE
            found.append((shown, x, y))
            x += wide
        return found

    def sizeHint(self) -> QSize:
        """As many lines as the words take."""
        last = self._places(max(self.width(), 320))[-1][2]
        return QSize(80 * GRID, int(last + 0.5 * _LINE + 4))

    def heightForWidth(self, width: int) -> int:
        """Likewise."""
        return int(self._places(width)[-1][2] + 0.5 * _LINE + 4)

    def hasHeightForWidth(self) -> bool:
        """Words wrap."""
        return True

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A hairline over it, then boxes and beads with their words."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), look().paper)
        painter.fillRect(0, 0, self.width(), 1, look().hairline)
        places = self._places(self.width())
        for (why, _), (text, x, y) in zip(_WORDS, places, strict=False):
            box = QRectF(x, y - 0.5 * _BOX, _BOX, _BOX)
            painter.fillRect(box, look().panel)
            painter.fillRect(box, band_brush(why))
            painter.setPen(pen(look().hairline))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box)
            self._word(painter, text, x, y)
        for (_, number), (text, x, y) in zip(self._kinds(), places[len(_WORDS) :], strict=True):
            assert self._worked is not None
            assert self._worked.beading is not None
            mark = self._worked.beading.plan.kinds[number].mark
            draw_bead(painter, mark, QPointF(x + 0.5 * _BOX, y), 12.0)
            self._word(painter, text, x, y)
        painter.end()

    def _word(self, painter: QPainter, text: str, x: float, y: float) -> None:
        painter.setPen(look().soft_ink)
        put(painter, text, x + _BOX + 6, y, fonts().small)

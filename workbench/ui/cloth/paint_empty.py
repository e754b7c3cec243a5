"""Words where there is no cloth to show: why, and what to do about it."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from workbench.ui.board.lettering import put
from workbench.ui.board.paint_words import missing_words, stop_of
from workbench.ui.cloth.bench import OnShow
from workbench.ui.look import fonts, look
from workbench.ui.marks import draw_mark

_NO_PIECES = "Nothing to lay yet"
_NO_LAYERS = "No layer that is made is cut from it. Give it layers at the left."
_NO_CLOTH = "The project has no cloth. Add one at the left."
_WRAP = int(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)


def empty_words(shown: OnShow) -> tuple[str, str]:
    """A title, and one sentence on what is missing."""
    picture, lay = shown.picture, shown.lay
    project = picture.project
    if lay is None:
        return "No cloth", _NO_CLOTH
    if not picture.current:
        stop = stop_of(picture)
        told = stop.text(project.unit, project.fraction) if stop is not None else ""
        return _NO_PIECES, missing_words(picture) or told
    if lay.trouble is not None:
        return f"{lay.cloth.name}: cannot be laid", lay.trouble.text(project.unit, project.fraction)
    return f"{lay.cloth.name}: no pieces", _NO_LAYERS


def paint_empty(painter: QPainter, shown: OnShow, room: QRectF) -> None:
    """The title and the sentence in the middle, with a mark where something is wrong."""
    title, sentence = empty_words(shown)
    middle = room.center()
    if shown.lay is not None and shown.lay.trouble is not None and shown.picture.current:
        draw_mark(painter, QRectF(middle.x() - 12, middle.y() - 66, 24, 24), "stop", look().paper)
    painter.setPen(look().ink)
    put(painter, title, middle.x(), middle.y() - 18, fonts().title, "middle")
    painter.setFont(fonts().body)
    painter.setPen(look().soft_ink)
    painter.drawText(QRectF(middle.x() - 210, middle.y() + 4, 420, 140), _WRAP, sentence)

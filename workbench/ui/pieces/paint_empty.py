"""Words on a table without pieces: why there are none, and what to do about it."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from workbench.pieces import label_of
from workbench.ui.board.lettering import put
from workbench.ui.board.paint_words import missing_words, stop_of
from workbench.ui.look import fonts, look
from workbench.ui.pieces.bench import Laid

_NOTHING = "No pieces yet"
_SWITCHED_OFF = "Tick it under Layers, at the left, and its pieces are laid out here."
_LEFT_OUT = "Every piece of it is left out. Put pieces back under Layers, at the left."
_NEEDLESS = "This way of closing the back needs none, or a finding says why there are none."
_WRAP = int(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)


def empty_words(laid: Laid) -> tuple[str, str]:
    """A title, and one sentence on what is missing."""
    picture = laid.picture
    if laid.layer is None:
        stop, project = stop_of(picture), picture.project
        told = stop.text(project.unit, project.fraction) if stop is not None else ""
        return _NOTHING, missing_words(picture) or told
    choice = picture.project.making.layer(laid.name)
    label = label_of(laid.name, picture.project.making)
    if not choice.made:
        return f"{label}: not made", _SWITCHED_OFF
    everything = len(choice.left_out) >= picture.project.design.panel_count
    return f"{label}: no pieces", _LEFT_OUT if everything else _NEEDLESS


def paint_empty(painter: QPainter, laid: Laid, room: QRectF) -> None:
    """The title and the sentence in the middle of the table."""
    title, sentence = empty_words(laid)
    middle = room.center()
    painter.setPen(look().ink)
    put(painter, title, middle.x(), middle.y() - 18, fonts().title, "middle")
    painter.setFont(fonts().body)
    painter.setPen(look().soft_ink)
    painter.drawText(QRectF(middle.x() - 200, middle.y() + 4, 400, 120), _WRAP, sentence)

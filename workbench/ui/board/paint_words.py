"""Draws the sentences that stand on the canvas: what is missing to begin, and what stops the draft."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter

from workbench.body import BY_KEY, MEASUREMENTS
from workbench.document import Picture
from workbench.draft import Finding
from workbench.ui.board.lettering import put
from workbench.ui.board.pens import pen
from workbench.ui.look import fonts, look
from workbench.ui.marks import draw_mark

_TITLE = "Nothing to draw yet"
_STOPPED = "Not drafted. The panels shown are the last that could be."
_WRAP = Qt.TextFlag.TextWordWrap
_UNDER_BUST_GIRTHS = ("bust_girth", "underbust_girth", "upper_chest_girth")


def missing_words(picture: Picture) -> str:
    """One sentence: which measurements are still needed to begin."""
    taken = picture.project.measurements
    missing = [m.label.lower() for m in MEASUREMENTS if m.needed and m.key not in taken]
    if any(key in taken for key in _UNDER_BUST_GIRTHS):
        missing = [label for label in missing if label != BY_KEY["bust_girth"].label.lower()]
    return f"Type the {' and the '.join(missing)} to begin." if missing else ""


def stop_of(picture: Picture) -> Finding | None:
    """The finding that keeps the project from being drafted."""
    return next((finding for finding in picture.findings if finding.severity == "stop"), None)


def why_none(picture: Picture) -> str:
    """One sentence: why there is no draft; empty where there is one."""
    stop, project = stop_of(picture), picture.project
    told = stop.text(project.unit, project.fraction) if stop is not None else ""
    return missing_words(picture) or told


def paint_empty(painter: QPainter, picture: Picture, room: QRectF) -> None:
    """A title and one sentence in the middle of the canvas."""
    shown = look()
    stop = stop_of(picture)
    project = picture.project
    sentence = missing_words(picture) or (stop.text(project.unit, project.fraction) if stop else "")
    middle = room.center()
    painter.setPen(shown.ink)
    put(painter, _TITLE, middle.x(), middle.y() - 18, fonts().title, "middle")
    painter.setFont(fonts().body)
    painter.setPen(shown.soft_ink)
    box = QRectF(middle.x() - 200, middle.y() + 4, 400, 120).intersected(room)
    painter.drawText(
        box, int(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop) | int(_WRAP), sentence
    )


def paint_stop(painter: QPainter, picture: Picture, room: QRectF) -> QRectF:
    """The sentence that stops the draft, across the top; returns the pixels it covers."""
    stop = stop_of(picture)
    if stop is None:
        return QRectF()
    shown, font = look(), fonts().body
    said = stop.text(picture.project.unit, picture.project.fraction)
    words = QRectF(room.left() + 40, room.top() + 12, room.width() - 60, 200)
    high = QFontMetricsF(font).boundingRect(words, int(_WRAP), said).height()
    box = QRectF(room.left() + 8, room.top() + 8, room.width() - 16, high + 28)
    painter.setPen(pen(shown.attend))
    painter.setBrush(shown.attend_fill)
    painter.drawRoundedRect(box, 4, 4)
    draw_mark(painter, QRectF(box.left() + 10, box.top() + 7, 15, 15), "stop", shown.attend_fill)
    painter.setFont(font)
    painter.setPen(shown.ink)
    painter.drawText(words, int(_WRAP), said)
    if picture.good is not None:
        painter.setPen(shown.soft_ink)
        put(painter, _STOPPED, words.left(), words.top() + high + 7, fonts().small)
    return box

"""Paints the picture that lies behind the panels.

Decoded once, and laid on paper once for every scale and strength: while panels are dragged
over it, it is only copied. While the scale changes it is drawn roughly, and well once that rests.
"""

from __future__ import annotations

import base64
from collections.abc import Callable

from PySide6.QtCore import QObject, QRect, QRectF, Qt, QTimer
from PySide6.QtGui import QColor, QImage, QPainter, QPixmap

from workbench.document import Behind, Project, WishPicture
from workbench.ui.board.view import View
from workbench.ui.look import look

_REST_MS = 120
_LARGEST = 2600
"""Pixels of a side up to which the scaled picture is kept: larger, only a part of it is in sight."""
_Kept = tuple[str, int, int, float, int]
"""Picture, width and height in pixels, strength, and the colour of the paper."""


def behind_of(project: Project) -> tuple[WishPicture, Behind] | None:
    """The picture behind the panels and how it lies; None where there is none."""
    behind = project.behind
    if behind is None:
        return None
    found = (picture for picture in project.pictures if picture.name == behind.picture)
    picture = next(found, None)
    return None if picture is None else (picture, behind)


def decoded(picture: WishPicture) -> QPixmap:
    """The picture as Qt draws it; empty where Qt cannot read it. It is bounded by the checks of a project."""
    image = QImage.fromData(base64.b64decode(picture.jpeg))
    return QPixmap.fromImage(image)


def place_of(picture: WishPicture, behind: Behind, view: View) -> QRectF:
    """The pixels of the canvas it lies on."""
    scale = view.scale * behind.mm_per_pixel
    corner = view.at(behind.x_mm, behind.walk_mm)
    return QRectF(corner.x(), corner.y(), scale * picture.width, scale * picture.height)


class BehindPainter(QObject):
    """Keeps what it has decoded and scaled for one canvas; ``refresh`` has that painted again."""

    def __init__(self, refresh: Callable[[], None], parent: QObject) -> None:
        super().__init__(parent)
        self._jpeg = ""
        self._whole = QPixmap()
        self._key: _Kept | None = None
        self._scaled = QPixmap()
        self._wanted: _Kept | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST_MS)
        self._rest.timeout.connect(self.settle)
        self._refresh = refresh

    @property
    def settled(self) -> bool:
        """Whether what was painted last was painted well."""
        return self._wanted is None

    def paint(self, painter: QPainter, project: Project, view: View, room: QRect) -> None:
        """Paint the picture where it lies, if there is one and it is in sight in the room."""
        found = behind_of(project)
        if found is None:
            return
        picture, behind = found
        place = place_of(picture, behind, view)
        if behind.opacity <= 0 or not place.intersects(QRectF(room)):
            return
        self._decode(picture)
        if self._whole.isNull():
            return  # a head that is sound, and nothing behind it that can be shown
        box = place.toRect()
        key = (picture.jpeg, box.width(), box.height(), behind.opacity, look().paper.rgb())
        if key == self._key:
            painter.drawPixmap(box.topLeft(), self._scaled)
            return
        sides = box.width(), box.height()
        if min(sides) > 0 and max(sides) <= _LARGEST:
            self._wanted = key
            self._rest.start()
        self._paint_roughly(painter, place, behind.opacity, room)

    def settle(self) -> None:
        """Lay the picture on paper at the scale it has come to rest at."""
        if self._wanted is None:
            return
        _, wide, high, opacity, paper = self._wanted
        laid = QPixmap(wide, high)
        laid.fill(QColor(paper))
        painter = QPainter(laid)
        painter.setOpacity(opacity)
        smooth = Qt.TransformationMode.SmoothTransformation
        keep = Qt.AspectRatioMode.IgnoreAspectRatio
        painter.drawPixmap(0, 0, self._whole.scaled(wide, high, keep, smooth))
        painter.end()
        self._scaled, self._key, self._wanted = laid, self._wanted, None
        self._refresh()

    def _decode(self, picture: WishPicture) -> None:
        if picture.jpeg is not self._jpeg and picture.jpeg != self._jpeg:
            self._jpeg, self._whole = picture.jpeg, decoded(picture)

    def _paint_roughly(self, painter: QPainter, place: QRectF, opacity: float, room: QRect) -> None:
        """Only what is in sight, pixel by pixel."""
        seen = place.intersected(QRectF(room))
        across, down = self._whole.width() / place.width(), self._whole.height() / place.height()
        part = QRectF(
            (seen.left() - place.left()) * across,
            (seen.top() - place.top()) * down,
            seen.width() * across,
            seen.height() * down,
        )
        painter.save()
        painter.setOpacity(opacity)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, False)
        painter.drawPixmap(seen, self._whole, part)
        painter.restore()

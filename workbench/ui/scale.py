"""How large everything is: as many times larger as the system's font is larger than usual.

The window is laid out in pixels round a type of 13 pixels. Where the system writes larger than nine
points on a screen of 96 dots an inch, all of it is scaled alike, so that no word outgrows its place.
"""

from __future__ import annotations

import os
from collections.abc import Sequence

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QApplication

USUAL = 12.0
"""Pixels of nine points at 96 dots an inch, beside which a type of 13 pixels was chosen."""
LEAST_ROOM = QSize(960, 600)
"""Pixels that the window needs: it is scaled no further than leaves it them."""
_WORTH, _MOST = 1.1, 2.5
"""The smallest scale that is worth the while, and the largest."""
_FACTOR = "QT_SCALE_FACTOR"
"""What Qt reads it from, once for each application."""


def scale_for(pixels: float, room: QSize) -> float:
    """How many times larger everything is for a system font so high, in a room on the screen; at least 1."""
    fits = min(room.width() / LEAST_ROOM.width(), room.height() / LEAST_ROOM.height())
    scale = round(min(pixels / USUAL, fits, _MOST), 2)
    return scale if scale >= _WORTH else 1.0


def made_application(words: Sequence[str]) -> QApplication:
    """The application, scaled as the system's font has it.

    That font is known only once there is an application, and an application cannot be scaled
    afterwards: where it has to be, it is made a second time, before anything is shown.
    """
    application = QApplication(list(words))
    scale = _scale_of(application)
    if scale == 1.0:
        return application
    application.shutdown()
    del application
    before = os.environ.get(_FACTOR)
    os.environ[_FACTOR] = str(scale * float(before or 1.0))
    try:
        return QApplication(list(words))
    finally:
        # children of this process are none of Qt's business
        if before is None:
            del os.environ[_FACTOR]
        else:
            os.environ[_FACTOR] = before


def _scale_of(application: QApplication) -> float:
    font, screen = application.font(), application.primaryScreen()
    if screen is None:
        return 1.0
    pixels = font.pointSizeF() * screen.logicalDotsPerInchY() / 72.0
    return scale_for(max(pixels, float(font.pixelSize())), screen.availableSize())

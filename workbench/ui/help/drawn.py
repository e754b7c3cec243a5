"""The pictures of a page: grabbed from the program beforehand, or drawn as it is shown."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QPoint, QSize, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import QWidget

from workbench.body import BY_KEY
from workbench.resources import resource
from workbench.ui.form.take_drawing import TakeDrawing
from workbench.ui.help.html import PICTURE
from workbench.ui.help.made import TAKE
from workbench.ui.help.pages import Page
from workbench.ui.look import GRID, look

_TAKE_SIZE = QSize(24 * GRID, 37 * GRID)


def pictures_of(page: Page, width: int, ratio: float) -> Iterator[tuple[str, QPixmap]]:
    """Each picture by its address, no wider than ``width`` pixels of the window, sharp at its ratio."""
    for block in page.blocks:
        if block.kind == "picture":
            yield f"{PICTURE}{block.name}", _grabbed(block.name, width, ratio)
        elif block.kind == "made" and block.name == "measurements":
            yield from ((f"{TAKE}{key}", _taking(key, ratio)) for key in BY_KEY)


def _grabbed(name: str, width: int, ratio: float) -> QPixmap:
    picture = QPixmap(str(resource(f"help/pictures/{name}.png")))
    fitted = picture.scaledToWidth(
        round(min(width, picture.width()) * ratio), Qt.TransformationMode.SmoothTransformation
    )
    fitted.setDevicePixelRatio(ratio)
    return fitted


def _taking(key: str, ratio: float) -> QPixmap:
    """Where the tape goes, as it stands beside the field."""
    drawing = TakeDrawing()
    drawing.setFixedSize(_TAKE_SIZE)
    drawing.show_measurement(BY_KEY[key])
    pixmap = QPixmap(_TAKE_SIZE * ratio)
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(look().paper)
    painter = QPainter(pixmap)
    drawing.render(painter, QPoint(), renderFlags=QWidget.RenderFlag.DrawChildren)
    painter.end()
    return pixmap

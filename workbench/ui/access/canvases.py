"""Which canvas says its items where; each is read when a screen reader first comes upon that canvas."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module
from weakref import WeakKeyDictionary

import shiboken6
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from workbench.ui.access.item import Item
from workbench.ui.access.readers import CanvasReader

_SAYING = {
    "workbench.ui.board.canvas.Canvas": "on_board",
    "workbench.ui.board.strip.Strip": "on_strip",
    "workbench.ui.pieces.table.Table": "on_table",
    "workbench.ui.beads.bead_map.BeadMap": "on_map",
    "workbench.ui.cloth.canvas.ClothCanvas": "on_cloth",
    "workbench.ui.fitting.overlay.Overlay": "on_overlay",
    "workbench.ui.worn.view.WornView": "on_worn",
}
"""The class of a canvas, and the file here that says what lies on it, in a function ``items_of``."""
_readers: WeakKeyDictionary[QWidget, CanvasReader] = WeakKeyDictionary()


def reader_of(watched: QObject) -> CanvasReader | None:
    """The reader of a canvas, made if need be; None for any other widget."""
    kind = type(watched)
    file = _SAYING.get(f"{kind.__module__}.{kind.__qualname__}")
    if file is None or not isinstance(watched, QWidget):
        return None
    known = _readers.get(watched)
    if known is None or not shiboken6.isValid(known):
        items_of: Callable[[QWidget], tuple[Item, ...]]
        items_of = import_module(f"workbench.ui.access.{file}").items_of
        known = _readers[watched] = CanvasReader(watched, items_of)
    return known


def known_reader(canvas: QWidget) -> CanvasReader | None:
    """The reader of a canvas that somebody has asked after; None while nobody has."""
    known = _readers.get(canvas)
    return known if known is not None and shiboken6.isValid(known) else None

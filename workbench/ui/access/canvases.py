"""Which canvas says its items where; each is read when a screen reader first comes upon that canvas."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module

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
_readers: list[CanvasReader] = []
"""They are held here: Qt deletes what it was handed when the canvas goes, and Python must not before."""


def reader_of(watched: QObject) -> CanvasReader | None:
    """A reader of a canvas; None for any other widget.

    Qt asks anew once a widget has become another class than while it was made, and deletes each that it
    was handed: none is handed out twice.
    """
    kind = type(watched)
    file = _SAYING.get(f"{kind.__module__}.{kind.__qualname__}")
    if file is None or not isinstance(watched, QWidget):
        return None
    _let_go()
    said = import_module(f"workbench.ui.access.{file}")
    items_of: Callable[[QWidget], tuple[Item, ...]] = said.items_of
    _readers.append(CanvasReader(watched, items_of, getattr(said, "shown_by", None)))
    return _readers[-1]


def known_reader(canvas: QWidget) -> CanvasReader | None:
    """The latest reader of a canvas that somebody has asked after; None while nobody has."""
    known = (reader for reader in reversed(_readers) if shiboken6.isValid(reader))
    return next((reader for reader in known if reader.canvas is canvas), None)


def _let_go() -> None:
    """Forget the readers of canvases that are gone, with those of their items, which Qt holds by number."""
    for reader in [reader for reader in _readers if not shiboken6.isValid(reader)]:
        reader.forget_items()
        _readers.remove(reader)

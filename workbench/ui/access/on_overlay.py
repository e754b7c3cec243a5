"""What lies on the comparison of two fittings: each panel before and after."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QRectF

from workbench.draft import Place
from workbench.ui.access.item import Item
from workbench.ui.fitting.laid import Pair
from workbench.ui.fitting.overlay import Overlay


def items_of(overlay: Overlay) -> tuple[Item, ...]:
    """The panels from the centre front on."""
    laid = overlay.laid
    return tuple(_item(overlay, pair) for pair in laid.pairs) if laid is not None else ()


def _item(overlay: Overlay, pair: Pair) -> Item:
    left, bottom, right, top = pair.box
    view, number = overlay.sight.view, pair.after.index
    name, _, said = overlay.told(number).partition(": ")
    return Item(
        key=number,
        kind="piece",
        name=name,
        said=said,
        box=QRectF(view.at(left, top), view.at(right, bottom)),
        picked=overlay.picked == number,
        pick=partial(overlay.desk.select, Place(panel=number)),
    )

"""What lies on the cloth: every piece of the plan on show."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from PySide6.QtCore import QRectF

from workbench.cloth import room_of
from workbench.ui.access.item import Amount, Item, amount_of
from workbench.ui.cloth.canvas import ClothCanvas
from workbench.ui.cloth.gestures import within
from workbench.ui.cloth.spoken import spoken_piece
from workbench.ui.cloth.spread import ClothSpread, LaidCopy


def items_of(canvas: ClothCanvas) -> tuple[Item, ...]:
    """The pieces from the cut end on, as Page Down goes through them."""
    spread = canvas.spread
    if spread is None:
        return ()
    order = sorted(spread.pieces, key=lambda piece: (piece.box[0], -piece.box[3]))
    return tuple(_item(canvas, spread, piece) for piece in order)


def _item(canvas: ClothCanvas, spread: ClothSpread, piece: LaidCopy) -> Item:
    left, bottom, right, top = piece.box
    view = canvas.sight.view
    said = spoken_piece(spread, piece).removeprefix(f"{piece.copy.name}, ")
    return Item(
        key=piece.key,
        kind="piece",
        name=piece.copy.name,
        said=said,
        box=QRectF(view.at(left, top), view.at(right, bottom)),
        picked=canvas.picked == piece.key,
        amount=_along(canvas, spread, piece) if canvas.by_hand else None,
        pick=partial(canvas.pick, piece),
        deeds=(
            ("Turn", _picked(canvas, piece, canvas.turn)),
            ("Pin or free", _picked(canvas, piece, canvas.toggle_pin)),
        ),
    )


def _picked(canvas: ClothCanvas, piece: LaidCopy, deed: Callable[[], None]) -> Callable[[], None]:
    """A deed that is done with the picked piece, done with this one."""

    def do() -> None:
        canvas.pick(piece)
        deed()

    return do


def _along(canvas: ClothCanvas, spread: ClothSpread, piece: LaidCopy) -> Amount:
    """How far from the cut end it begins."""
    project, at = spread.project, piece.box[0]

    def put(mm: float) -> None:
        canvas.pick(piece)
        moved = replace(piece.placed, y=piece.placed.y + mm - at)
        canvas.hold(within(moved, piece.copy, spread.lay, room_of(spread.cloth)))
        canvas.keep("Move a piece on the cloth")

    return amount_of(at, (0.0, spread.end), project.unit, project.fraction, put)

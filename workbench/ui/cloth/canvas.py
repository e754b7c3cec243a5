"""The cloth on the screen: it shows a plan, and lets her move, turn and pin pieces."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QPainter,
)
from PySide6.QtWidgets import QWidget

from workbench.body import step_mm
from workbench.cloth import CopyKey, Placed, Plan, room_of
from workbench.draft import Place
from workbench.ui.board.paper import Paper
from workbench.ui.board.view import Bounds, fitted
from workbench.ui.cloth.bench import ClothBench, OnShow
from workbench.ui.cloth.edits import keeping, turned_on, with_placed
from workbench.ui.cloth.gestures import within
from workbench.ui.cloth.hand import ClothHand
from workbench.ui.cloth.keys import ClothKeys
from workbench.ui.cloth.paint_cloth import GUTTER, Shown, paint_cloth
from workbench.ui.cloth.paint_empty import paint_empty
from workbench.ui.cloth.piece_menu import PieceMenu
from workbench.ui.cloth.search import Progress
from workbench.ui.cloth.spoken import spoken_piece
from workbench.ui.cloth.spread import ClothSpread, LaidCopy, spread_of
from workbench.ui.cloth.tape import TAPE
from workbench.ui.desk import Desk

_NAME = "Cloth with its pieces"
_DESCRIPTION = (
    "Page Up and Page Down go from piece to piece, arrows move the picked piece, with Shift further. "
    "R turns it, P pins it or frees it."
)
_AIR, _SIDE = 14.0, 72.0
"""Pixels of paper over and under the cloth, and at its end for the flags."""


class ClothCanvas(Paper):
    """Shows one plan at a time: the one kept, one in the hand, or the best of a search."""

    handled = Signal()
    """The hand is about to move a piece: a search has to end."""

    def __init__(self, desk: Desk, bench: ClothBench, parent: QWidget | None = None) -> None:
        super().__init__(_NAME, _DESCRIPTION, (320, 240), parent)
        self._desk, self._bench = desk, bench
        self._shown: OnShow | None = None
        self._spread: ClothSpread | None = None
        self._held: Placed | None = None
        self._held_plan: Plan | None = None
        self._progress: Progress | None = None
        self._place: Place | None = desk.selection
        self._picked: CopyKey | None = None
        self._hand: ClothHand = ClothHand(self, self.sight)
        self._keys: ClothKeys = ClothKeys(self)
        self.menu = PieceMenu(self)
        bench.laid.connect(self.show_laid)
        desk.selected.connect(self.show_selection)

    # --- what is on it -------------------------------------------------------------------

    @property
    def spread(self) -> ClothSpread | None:
        """What is on it; None while there is nothing to lay."""
        return self._spread

    @property
    def picked(self) -> CopyKey | None:
        """The one piece that is picked."""
        return self._picked

    @property
    def picked_piece(self) -> LaidCopy | None:
        """The same, where it lies."""
        return self._spread.piece(self._picked) if self._spread is not None else None

    @property
    def by_hand(self) -> bool:
        """Whether pieces may be moved: not of a stale plan, which is first laid anew."""
        return self._spread is not None and not self._spread.stale

    @property
    def dragging(self) -> bool:
        """Whether a piece is in the hand."""
        return self._hand.dragging

    def bounds(self) -> Bounds | None:
        """The cloth that is used."""
        return self._spread.bounds if self._spread is not None else None

    def room(self) -> QRectF:
        """The pixels in which the cloth is fitted."""
        return QRectF(self.rect()).adjusted(GUTTER + 4, _AIR, -_SIDE, -TAPE - _AIR)

    def fit(self) -> None:
        """Show all of the cloth that is used."""
        if self._spread is not None:
            room = self.room()
            view = fitted(self._spread.bounds, room)
            # The cut end lies at the left, beside the width, however short the plan is.
            left = room.left() - view.scale * self._spread.bounds[0]
            self.sight.show_view(replace(view, left=left), by_hand=False)

    # --- what is shown -------------------------------------------------------------------

    def show_laid(self, shown: OnShow) -> None:
        """Show another cloth, or another plan of it."""
        self._shown = shown
        self._held = self._held_plan = None
        self._lay()

    def show_progress(self, progress: Progress | None) -> None:
        """Show the best plan of a search while it runs, or none any more."""
        before = self._progress
        self._progress = progress
        if progress is None or before is None or before.best is not progress.best:
            self._lay()

    def show_selection(self, place: Place | None) -> None:
        """Light up a place."""
        self._place = place
        piece = self.picked_piece
        if place is not None and (piece is None or piece.copy.panel != place.panel):
            self._picked = None
        self.tell()
        self.refresh()

    def _lay(self) -> None:
        before, self._spread = self._spread, self._laid_out()
        spread = self._spread
        if spread is not None and not self.dragging:
            known = before is not None and before.kind == spread.kind
            moved = before is None or before.bounds != spread.bounds
            if not known or (moved and not self.sight.by_hand and self._progress is None):
                self.fit()
        self.tell()
        self.refresh()

    def _laid_out(self) -> ClothSpread | None:
        shown = self._shown
        lay = shown.lay if shown is not None else None
        if shown is None or lay is None or lay.plan is None:
            return None
        project, progress = shown.picture.project, self._progress
        if self._held_plan is not None:
            return spread_of(project, lay, self._held_plan, stale=False)
        if progress is not None and progress.cloth == lay.cloth.name:
            return spread_of(project, lay, progress.best, stale=False)
        stale = lay.stale or (shown.behind and lay.own)
        return spread_of(project, lay, lay.plan, stale)

    def said(self) -> str:
        """What is picked, in words."""
        piece, spread = self.picked_piece, self._spread
        return spoken_piece(spread, piece) if spread is not None and piece is not None else ""

    def pointer(self) -> Qt.CursorShape:
        """Whether a press would turn a piece, move one, or neither."""
        if self._hand.over_handle:
            return Qt.CursorShape.PointingHandCursor
        movable = self._hand.over and self.by_hand
        return Qt.CursorShape.SizeAllCursor if movable else Qt.CursorShape.ArrowCursor

    # --- what she does -------------------------------------------------------------------

    def pick(self, piece: LaidCopy | None) -> None:
        """Pick a piece here, and its panel everywhere."""
        self._picked = piece.key if piece is not None else None
        panel = piece.copy.panel if piece is not None else None
        self._desk.select(Place(panel=panel) if panel is not None else None)
        self.tell()
        self.refresh()

    def pick_none(self) -> None:
        """Pick nothing."""
        self.pick(None)

    def step_pieces(self, step: int) -> None:
        """Pick the piece before or after, along the cloth."""
        spread = self._spread
        if spread is None or not spread.pieces:
            return
        order = sorted(spread.pieces, key=lambda piece: (piece.box[0], -piece.box[3]))
        keys = [piece.key for piece in order]
        at = keys.index(self._picked) if self._picked in keys else (-1 if step > 0 else 0)
        self.pick(order[(at + step) % len(order)])

    def hold(self, placed: Placed | None) -> None:
        """Show a piece where the hand holds it, or again where it lies."""
        lay = self._shown.lay if self._shown is not None else None
        self._held = placed
        if placed is None or lay is None or lay.plan is None:
            self._held_plan = None
        else:
            if self._progress is not None:
                self.handled.emit()
                lay = self._shown.lay if self._shown is not None else lay
            if lay is None or lay.plan is None:
                return
            self._held_plan = with_placed(lay.plan, lay, placed)
        self._lay()

    def keep(self, step_name: str) -> None:
        """Keep what the hand holds: one step to undo."""
        plan, self._held, self._held_plan = self._held_plan, None, None
        if plan is not None:
            self._desk.apply(step_name, keeping(self._desk.project, plan))
            self._desk.now()

    def turn(self) -> None:
        """Turn the picked piece to the next way it may lie."""
        piece, spread = self.picked_piece, self._spread
        if piece is None or spread is None or not self.by_hand:
            return
        turned = turned_on(piece.placed, piece.copy, spread.cloth)
        # where it lies is reckoned anew, and may be a hair of a hair beside where it lay
        if turned.degrees == piece.placed.degrees:
            self._desk.refuse("cloth.run", f"{piece.copy.name} may lie only one way on {spread.cloth.name}.")
            return
        self.hold(within(turned, piece.copy, spread.lay, room_of(spread.cloth)))
        self.keep("Turn a piece on the cloth")

    def toggle_pin(self) -> None:
        """Pin the picked piece where it lies, or free it."""
        piece = self.picked_piece
        if piece is None or not self.by_hand:
            return
        on = not piece.placed.pinned
        self._pin(replace(piece.placed, pinned=on), "Pin a piece" if on else "Free a pinned piece")

    def _pin(self, placed: Placed, step_name: str) -> None:
        """A pin moves nothing, so how the plan was found stays as it was."""
        lay = self._shown.lay if self._shown is not None else None
        if lay is not None and lay.plan is not None:
            plan = replace(with_placed(lay.plan, lay, placed), how=lay.plan.how)
            self._desk.apply(step_name, keeping(self._desk.project, plan))
            self._desk.now()

    def nudge(self, across: int, along: int) -> bool:
        """Move the picked piece by so many marks of the ruler."""
        piece, spread = self.picked_piece, self._spread
        if piece is None or spread is None or not self.by_hand:
            return False
        step = step_mm(spread.project.unit, spread.project.fraction)
        repeat = spread.cloth.repeat_mm
        placed = piece.placed
        moved = replace(placed, x=placed.x + across * step, y=placed.y + along * (repeat or step))
        self.hold(within(moved, piece.copy, spread.lay, room_of(spread.cloth)))
        return True

    def rest(self) -> None:
        """Keep where the piece was nudged to."""
        if not self.dragging:
            self.keep("Move a piece on the cloth")

    # --- events ----------------------------------------------------------------------------

    def paint(self, painter: QPainter) -> None:
        """The cloth, or why there is none."""
        if self._spread is not None:
            paint_cloth(painter, self._now(self._spread))
        elif self._shown is not None:
            paint_empty(painter, self._shown, QRectF(self.rect()))

    def _now(self, spread: ClothSpread) -> Shown:
        lengths = self._progress.lengths[:-1] if self._progress is not None else ()
        return Shown(
            spread=spread,
            view=self.sight.view,
            size=self.size(),
            place=self._place,
            picked=self._picked,
            over_handle=self._hand.over_handle,
            trail=lengths,
        )

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """What can be done with the piece under the hand."""
        self.menu.show_piece(self.picked_piece, self.by_hand)
        self.menu.popup(event.globalPos())

    def give_up(self) -> bool:
        """Put back what the hand or a key holds; False where nothing is held."""
        held = self._held is not None
        gave_up = self._hand.cancel()
        if held:
            self.hold(None)
        return gave_up or held

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Let go of the paper with the space bar, and of a piece with an arrow."""
        if event.key() == Qt.Key.Key_Space or not self._keys.release(event):
            super().keyReleaseEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """What a key holds is kept where it is."""
        self.rest()
        super().focusOutEvent(event)

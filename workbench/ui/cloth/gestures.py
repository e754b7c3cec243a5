"""Drags on the cloth: a piece that is moved or turned, shown at once and kept on release."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import atan2, degrees

import numpy as np
from PySide6.QtCore import QPointF

from workbench.cloth import Copy, Placed, Room, laid, ways_of
from workbench.ui.board.view import View
from workbench.ui.cloth.edits import about_middle, at_repeat, nearest_way
from workbench.ui.cloth.lays import Lay
from workbench.ui.cloth.spread import LaidCopy, cloth_point

Show = Callable[[Placed], None]


def within(placed: Placed, copy: Copy, lay: Lay, room: Room) -> Placed:
    """The piece moved as little as need be to lie between the selvedges and not before the cut end.

    A half keeps its fold edge on the fold, and waist lines lie at whole repeats of a print.
    """
    placed = replace(placed, y=at_repeat(placed.y, lay.cloth))
    ring = laid(copy, placed)
    (left, low), (right, _) = ring.min(axis=0).tolist(), ring.max(axis=0).tolist()
    x = placed.x
    if copy.on_fold:
        x += room.left - left
    elif room.shape is None and right - left <= room.width:
        x += float(np.clip(0.0, room.left - left, room.right - right))
    y = placed.y
    if low < 0 and room.shape is None:
        step = lay.cloth.repeat_mm
        y += step * np.ceil(-low / step) if step > 0 else -low
    return replace(placed, x=x, y=float(y))


class MoveDrag:
    """Moves one piece with the hand; every move starts from where it lay at the press."""

    step_name = "Move a piece on the cloth"

    def __init__(self, piece: LaidCopy, lay: Lay, room: Room, view: View, start: QPointF, show: Show) -> None:
        self._piece, self._lay, self._room, self._show = piece, lay, room, show
        self._view = view
        self._from = cloth_point(view, start)

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """The piece follows; it stays on the cloth unless ``free``."""
        across, along = cloth_point(self._view, pixel)
        placed = self._piece.placed
        moved = replace(placed, x=placed.x + across - self._from[0], y=placed.y + along - self._from[1])
        self._show(moved if free else within(moved, self._piece.copy, self._lay, self._room))


class TurnDrag:
    """Turns one piece about its middle: to the ways it may lie, and off the grain as far as is allowed."""

    step_name = "Turn a piece on the cloth"

    def __init__(self, piece: LaidCopy, lay: Lay, view: View, start: QPointF, show: Show) -> None:
        self._piece, self._lay, self._show = piece, lay, show
        self._middle = view.at(*piece.middle)
        self._from = self._angle(start)

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """The piece follows as far as the grain lets it; ``free`` lets it go anywhere."""
        # Clockwise on the screen is clockwise on the cloth: the picture is turned, never mirrored.
        turned = self._piece.placed.degrees - (self._angle(pixel) - self._from)
        copy = self._piece.copy
        mirrored = self._piece.placed.mirrored
        if not free:
            turned, mirrored = self._allowed(turned)
        self._show(about_middle(self._piece.placed, copy, turned, mirrored))

    def _angle(self, pixel: QPointF) -> float:
        away = pixel - self._middle
        return degrees(atan2(away.y(), away.x()))

    def _allowed(self, wanted: float) -> tuple[float, bool]:
        """The nearest way that may be, leant over by no more than the tilt."""
        ways, tilt = ways_of(self._piece.copy, self._lay.cloth), self._lay.cloth.tilt_degrees
        ways = tuple(way for way in ways if way[1] == self._piece.placed.mirrored) or ways
        if self._piece.copy.on_fold:
            ways, tilt = ways_of(self._piece.copy, self._lay.cloth), 0.0
        turn, mirrored = ways[nearest_way(replace(self._piece.placed, degrees=wanted), ways)]
        lean = (wanted - turn + 180) % 360 - 180
        lean = 0.0 if abs(lean) < 1.0 else float(np.clip(lean, -tilt, tilt))
        return turn + lean, mirrored

"""What lies where on a cloth, in the order in which it is laid, with the measures to lay it by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import atan2, degrees

import numpy as np

from workbench.cloth import Cloth, Copy, Placed, Plan, copies_of, digest, laid, room_of
from workbench.pieces import Cutting, Piece
from workbench.sheets.drawing import Array
from workbench.sheets.fonts import clean
from workbench.sheets.lay_corners import farthest_corner, nearest_corner
from workbench.sheets.paper import PrintError

AS_DRAWN = "—"
_OUT_OF_DATE = (
    "The plan for {cloth} is out of date: its pieces or its cloth have changed since, so lay it again first."
)
_BAND = 60.0
"""Pieces whose corners lie within so many mm along are numbered across the cloth."""
_TRUE = 0.05
"""Degrees off the grain that nobody could lay a piece by."""


@dataclass(frozen=True)
class Spot:
    """Where a corner lies: mm along from the cut end, and across from the selvedge or the fold."""

    along: float
    across: float


@dataclass(frozen=True, eq=False)
class Lying:
    """One shape on the cloth, numbered in the order of laying from the cut end on."""

    number: int
    name: str
    what: str
    """Which side it is, or what comes out: ``left``, ``opened out``; may be empty."""
    layer: str
    """Its layer where several are cut from the cloth."""
    outline: Array
    """(n, 2): x along from the cut end, y across, downwards; as it is seen with the tape on top."""
    grain: Array
    """(2, 2) foot and head of its grain line, likewise."""
    turned: str
    spots: tuple[Spot, ...]
    """The corner to lay it by; where it is off the grain, one more."""
    on_fold: bool

    @property
    def title(self) -> str:
        """Name and side."""
        return f"{self.name}, {self.what}" if self.what else self.name


def start_of(cloth: Cloth) -> float:
    """Where the cut end lies along the cloth, mm: 0, or the foot of a remnant."""
    shape = room_of(cloth).shape
    return 0.0 if shape is None else float(shape.bounds[1])


def lying_of(cloth: Cloth, plan: Plan, cutting: Cutting) -> tuple[Lying, ...]:
    """Everything on the plan; PrintError where the plan was made from something else."""
    copies = copies_of(cutting, cloth)
    if plan.made_from != digest(copies, cloth):
        raise PrintError(_OUT_OF_DATE.format(cloth=clean(cloth.name)))
    known = {copy.key: copy for copy in copies}
    pieces = {piece.key: piece for piece in cutting.pieces}
    several = len({copy.layer for copy in copies}) > 1
    found = [
        _lying(known[own.piece, own.copy], own, pieces[own.piece], cloth, several)
        for own in plan.placed
        if (own.piece, own.copy) in known
    ]
    return tuple(replace(one, number=number) for number, one in enumerate(_in_order(found), 1))


def _in_order(found: Sequence[Lying]) -> Iterator[Lying]:
    """From the cut end on; those that begin at about the same place from the tape across."""
    left = sorted(found, key=lambda one: (one.spots[0].along, one.spots[0].across))
    while left:
        band = [one for one in left if one.spots[0].along <= left[0].spots[0].along + _BAND]
        yield from sorted(band, key=lambda one: one.spots[0].across)
        left = left[len(band) :]


def _lying(copy: Copy, placed: Placed, piece: Piece, cloth: Cloth, several: bool) -> Lying:
    start = np.array([0.0, start_of(cloth)])
    outline = laid(copy, placed) - start
    grain = laid(replace(copy, outline=np.array(piece.grain)), placed) - start
    near = nearest_corner(outline)
    off = _off_grain(grain)
    corners = (near, farthest_corner(outline, near)) if abs(off) > _TRUE else (near,)
    return Lying(
        0,
        copy.name,
        _what(copy, piece, cloth),
        _layer(piece) if several else "",
        outline[:, ::-1],
        grain[:, ::-1],
        _turned(placed, grain, off),
        tuple(Spot(y, x) for x, y in corners),
        copy.on_fold,
    )


def _layer(piece: Piece) -> str:
    """The layer of a piece of a panel; other pieces say it in their own names."""
    return piece.layer if piece.panel is not None else ""


def _off_grain(grain: Array) -> float:
    """Degrees that the grain lies off the length of the cloth, -90 to 90."""
    x, y = (grain[1] - grain[0]).tolist()
    return degrees(atan2(x, y) if y >= 0 else atan2(-x, -y))


def _turned(placed: Placed, grain: Array, off: float) -> str:
    """How the pattern is turned: ``over`` on its face, ``round`` end for end, and how far off the grain."""
    words = []
    if placed.mirrored:
        words.append("over")
    if grain[1, 1] < grain[0, 1]:
        words.append("round")
    if abs(off) > _TRUE:
        words.append(f"{abs(off):.1f}° off grain")
    return ", ".join(words) or AS_DRAWN


def _what(copy: Copy, piece: Piece, cloth: Cloth) -> str:
    """Which of several it is, or what is had when it is cut out."""
    if copy.on_fold:
        return "on the fold"
    if copy.opened:
        return "opened out"
    if cloth.laid == "folded":
        return _through_both(copy, piece)
    if piece.mirrored:
        pair = (copy.number - 1) % ((piece.count + 1) // 2) + 1
        side = "right" if copy.mirrored else "left"
        return f"{side} {pair}" if piece.count > 2 else side
    return f"{copy.number} of {piece.count}" if piece.count > 1 else ""


def _through_both(copy: Copy, piece: Piece) -> str:
    if copy.gives == 1:
        return "upper layer only"
    return "left and right" if piece.mirrored else "both layers"

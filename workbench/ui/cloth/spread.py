"""One cloth with its pieces, ready to be drawn and to be pointed at.

The cloth lies from left to right, a selvedge or the fold at the top: what the plan calls
*along* runs to the right here, and *across* runs down.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPolygonF

from workbench.cloth import Cloth, Copy, CopyKey, Placed, Plan, laid, room_of, turned
from workbench.document import Project
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.view import Bounds, View
from workbench.ui.cloth.edits import is_turned, key_of
from workbench.ui.cloth.lays import Lay

_SHARED = 0.5
"""Square mm that two outlines may share and still only touch."""
_HAIR = 0.05
_LEAST_LENGTH = 300.0
"""mm of cloth that are shown even where next to nothing lies on it."""


@dataclass(frozen=True)
class LaidCopy:
    """One piece where it lies, in the coordinates of the picture."""

    copy: Copy
    placed: Placed
    ring: QPolygonF
    box: Bounds
    """Left, bottom, right, top."""
    turned: bool
    """Whether it lies end for end."""

    @property
    def key(self) -> CopyKey:
        """What it is found by."""
        return self.copy.key

    @property
    def middle(self) -> tuple[float, float]:
        """Middle of its box."""
        left, bottom, right, top = self.box
        return 0.5 * (left + right), 0.5 * (bottom + top)

    @property
    def head(self) -> tuple[float, float]:
        """Unit vector along the picture that the head of its grain points in."""
        x, y = turned(np.array([self.copy.grain]), self.placed.degrees, self.placed.mirrored)[0].tolist()
        return y, -x

    def holds(self, x: float, y: float) -> bool:
        """Whether a point lies in it."""
        return self.ring.containsPoint(QPointF(x, y), Qt.FillRule.OddEvenFill)


@dataclass(frozen=True)
class ClothSpread:
    """What is drawn of one cloth."""

    project: Project
    lay: Lay
    plan: Plan
    pieces: tuple[LaidCopy, ...]
    stale: bool

    @property
    def cloth(self) -> Cloth:
        """The cloth."""
        return self.lay.cloth

    @property
    def width(self) -> float:
        """How wide it lies: half of it where it is folded, mm."""
        return 0.5 * self.cloth.width_mm if self.cloth.laid == "folded" else self.cloth.width_mm

    @property
    def shrunk(self) -> float:
        """What is left of a millimetre that was bought."""
        return 1.0 - self.cloth.shrinkage_percent / 100.0

    @property
    def bought(self) -> float:
        """Where the length to buy ends once the cloth has shrunk, mm; 0 where nothing is bought."""
        buy = self.lay.buy
        return buy.length_mm * self.shrunk if buy is not None else 0.0

    @property
    def at_hand(self) -> float:
        """Where what she has ends once it has shrunk, mm."""
        return self.cloth.at_hand_mm * self.shrunk

    @property
    def end(self) -> float:
        """How far the cloth is drawn, mm."""
        has = self.at_hand if self.lay.buy is not None and self.lay.buy.fits else 0.0
        return max(self.plan.length_mm, self.bought, has, _LEAST_LENGTH)

    @cached_property
    def remnant(self) -> QPolygonF | None:
        """The outline of a piece at hand that is no rectangle."""
        corners = self.cloth.remnant
        return polygon(flat(np.array(corners, dtype=float))) if corners is not None else None

    @cached_property
    def bounds(self) -> Bounds:
        """All that should be in view."""
        if self.remnant is not None:
            box = self.remnant.boundingRect()
            return min(box.left(), 0.0), box.top(), box.right(), box.bottom()
        return 0.0, -self.width, max(self.plan.length_mm, self.bought, _LEAST_LENGTH), 0.0

    @cached_property
    def faulty(self) -> dict[CopyKey, str]:
        """Pieces that cannot be cut so, each with a word that says why."""
        return dict(_faults(self)) if not self.stale and self.plan.findings else {}

    @cached_property
    def kind(self) -> tuple[object, ...]:
        """What must change for the cloth to be fitted afresh."""
        return self.cloth.name, self.cloth.laid, self.cloth.width_mm, self.cloth.remnant

    def piece(self, key: CopyKey | None) -> LaidCopy | None:
        """One of the pieces."""
        return next((piece for piece in self.pieces if piece.key == key), None)


def spread_of(project: Project, lay: Lay, plan: Plan, stale: bool) -> ClothSpread:
    """The plan laid out on its cloth."""
    known = {copy.key: copy for copy in lay.copies}
    pieces = tuple(
        laid_copy(known[key_of(placed)], placed, lay.cloth)
        for placed in plan.placed
        if key_of(placed) in known
    )
    return ClothSpread(project, lay, plan, pieces, stale)


def laid_copy(copy: Copy, placed: Placed, cloth: Cloth) -> LaidCopy:
    """One piece where it lies."""
    ring = flat(laid(copy, placed))
    left, bottom = ring.min(axis=0).tolist()
    right, top = ring.max(axis=0).tolist()
    return LaidCopy(copy, placed, polygon(ring), (left, bottom, right, top), is_turned(placed, copy, cloth))


def flat(points: Array) -> Array:
    """Points (across, along) as they lie in the picture: along to the right, across down."""
    return np.column_stack((points[:, 1], -points[:, 0]))


def cloth_point(view: View, pixel: QPointF) -> tuple[float, float]:
    """Across and along, mm, under a pixel."""
    along, up = view.mm(pixel)
    return -up, along


def _faults(spread: ClothSpread) -> Iterator[tuple[CopyKey, str]]:
    """A later word is the graver one."""
    outlines = [laid(piece.copy, piece.placed) for piece in spread.pieces]
    shapes = shapely.polygons([shapely.linearrings(ring) for ring in outlines])
    codes = {finding.code for finding in spread.plan.findings}
    keys = [piece.key for piece in spread.pieces]
    if codes & {"overlap", "gap"}:
        yield from _close(shapes, keys, spread.cloth.gap_mm)
    if "outside" in codes:
        usable = shapely.buffer(room_of(spread.cloth).polygon, _HAIR, join_style="mitre")
        inside = shapely.covers(usable, shapes).tolist()
        yield from ((key, "outside") for key, within in zip(keys, inside, strict=True) if not within)


def _close(
    shapes: np.ndarray[tuple[int, ...], np.dtype[np.object_]], keys: list[CopyKey], gap: float
) -> Iterator[tuple[CopyKey, str]]:
    one, other = shapely.STRtree(shapes).query(shapes, "dwithin", max(gap - _HAIR, 0.0))
    pairs = one < other
    one, other = one[pairs], other[pairs]
    shared = shapely.area(shapely.intersection(shapes[one], shapes[other]))
    rows = sorted(zip(shared.tolist(), one.tolist(), other.tolist(), strict=True))
    for area, first, second in rows:
        word = "overlaps" if area > _SHARED else "too close"
        yield keys[first], word
        yield keys[second], word

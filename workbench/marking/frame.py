"""A piece seen from the corner it is marked from: the upright, the base line, its edges and its levels."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np

from workbench.body import LEVEL_LABEL, LevelName
from workbench.marking.records import Side
from workbench.marking.smooth import Array
from workbench.pieces import EdgeName, Piece

_STRAIGHT = 1e-6
"""mm that a straight upright edge may wander: floating point (own choice)."""
_CLEAR = 6.0
"""mm: a level that ends so near a corner cannot be told from it with chalk (own choice)."""
_NAMES: Mapping[str, LevelName] = {label: name for name, label in LEVEL_LABEL.items()}
_BACKWARDS: tuple[EdgeName, ...] = ("neckline", "left")
"""Edges that a ring runs along from the right or from the top."""


@dataclass(frozen=True)
class Frame:
    """One piece as the hand meets it. Lines are mm right of and above the corner."""

    piece: Piece
    side: Side
    corner: tuple[float, float]
    """In the piece's own coordinates."""
    on_waist: bool
    """Whether the base line is the waist line."""
    edges: Mapping[EdgeName, Array]
    """Sides from the bottom up, hem and neckline from the left."""
    levels: Mapping[LevelName, tuple[Array, Array]]
    """Where each level that can be marked meets the left and the right side; without the waist."""

    @property
    def near(self) -> EdgeName:
        """The side at the upright."""
        return "left" if self.side > 0 else "right"

    @property
    def far(self) -> EdgeName:
        """The side away from it."""
        return "right" if self.side > 0 else "left"

    def moved(self, points: Array) -> Array:
        """Points of the piece as seen from the corner."""
        moved: Array = points - np.array(self.corner)
        return moved


def frame_of(piece: Piece) -> Frame:
    """The frame of a piece: the corner is where its upright meets the waist line.

    A piece that does not lie across the waist is marked from the lower end of its upright. The upright
    is the left side's place there, or the right side's where only that is straight, as at a centre back.
    """
    own = edges_of(piece)
    side: Side = -1 if _upright(own["right"]) and not _upright(own["left"]) else 1
    near = own["right"] if side < 0 else own["left"]
    levels = _levels(piece)
    waist = levels.pop("waist", None)
    if waist is not None and _markable(waist, own):
        corner = (float(waist[1 if side < 0 else 0][0]), float(waist[0][1]))
    else:
        waist, corner = None, (float(near[0, 0]), float(near[0, 1]))
    shift = np.array(corner)
    return Frame(
        piece,
        side,
        corner,
        waist is not None,
        {name: line - shift for name, line in own.items()},
        {
            name: (ends[0] - shift, ends[1] - shift)
            for name, ends in levels.items()
            if waist is not None and _markable(ends, own)
        },
    )


def edges_of(piece: Piece) -> dict[EdgeName, Array]:
    """The four stitch lines (n, 2) of a piece, sides from the bottom up, hem and neckline from the left."""
    return {edge.name: edge.stitch[::-1] if edge.name in _BACKWARDS else edge.stitch for edge in piece.edges}


def edge_base(on_waist: bool) -> Literal["waist line", "base line"]:
    """What the base line is called."""
    return "waist line" if on_waist else "base line"


def _upright(line: Array) -> bool:
    return bool(np.ptp(line[:, 0]) < _STRAIGHT)


def _levels(piece: Piece) -> dict[LevelName, tuple[Array, Array]]:
    """Ends of the level lines of a piece, bottom to top."""
    found = {
        _NAMES[mark.label]: (mark.points[0], mark.points[-1])
        for mark in piece.marks
        if mark.kind in ("waist", "level") and mark.label in _NAMES
    }
    return dict(sorted(found.items(), key=lambda item: float(item[1][0][1])))


def _markable(ends: tuple[Array, Array], edges: Mapping[EdgeName, Array]) -> bool:
    """Whether both ends keep clear of the corners."""
    sides = (edges["left"], ends[0]), (edges["right"], ends[1])
    return all(float(np.hypot(*(end - side[place]))) > _CLEAR for side, end in sides for place in (0, -1))

"""Where the grain line is drawn: beside a bone, not on it."""

from __future__ import annotations

import numpy as np
import shapely

from workbench.pieces import Piece

_APART, _INSIDE = 5.0, 4.0
"""Least distance from a line that runs along it, and from the stitch line, mm."""
_SHIFTS = (0.0, 8.0, -8.0, 14.0, -14.0, 20.0, -20.0, 28.0, -28.0)
"""How far it is moved sideways, mm, in the order they are tried."""
LONG_GRAIN = 90.0
"""A longer grain line may be interrupted by words; a shorter one is kept whole and gives way to them."""
_TO_ONE_SIDE = (24.0, 20.0, 16.0, 12.0, 8.0, 4.0, 0.0, -6.0, -12.0)
_INSIDE_SHORT = 6.5

Grain = tuple[tuple[float, float], tuple[float, float]]


def clear_grain(piece: Piece) -> Grain:
    """The grain line of a piece, moved sideways where it would run along a bone or leave words no room."""
    bones = [shapely.LineString(mark.points) for mark in piece.marks if mark.kind == "bone"]
    ends = np.array(piece.grain)
    along = ends[1] - ends[0]
    length = float(np.hypot(*along))
    if not bones and length >= LONG_GRAIN:
        return piece.grain
    aside = np.array([-along[1], along[0]]) / max(length, 1e-9)
    shape = shapely.Polygon(piece.stitch)
    shifts, inset = (_SHIFTS, _INSIDE) if length >= LONG_GRAIN else (_TO_ONE_SIDE, _INSIDE_SHORT)
    inside = shape.buffer(-inset)
    for shift in shifts:
        line = shapely.LineString(ends + shift * aside)
        if inside.contains(line) and all(line.distance(bone) >= _APART for bone in bones):
            (x0, y0), (x1, y1) = (ends + shift * aside).tolist()
            return (x0, y0), (x1, y1)
    return piece.grain

"""Where the grain line is drawn: beside a bone, not on it."""

from __future__ import annotations

import numpy as np
import shapely

from workbench.pieces import Piece

_APART, _INSIDE = 5.0, 4.0
"""Least distance from a line that runs along it, and from the stitch line, mm."""
_SHIFTS = (0.0, 8.0, -8.0, 14.0, -14.0, 20.0, -20.0, 28.0, -28.0)
"""How far it is moved sideways, mm, in the order they are tried."""

Grain = tuple[tuple[float, float], tuple[float, float]]


def clear_grain(piece: Piece) -> Grain:
    """The grain line of a piece, moved sideways where it would run along a bone."""
    bones = [shapely.LineString(mark.points) for mark in piece.marks if mark.kind == "bone"]
    if not bones:
        return piece.grain
    ends = np.array(piece.grain)
    along = ends[1] - ends[0]
    aside = np.array([-along[1], along[0]]) / max(float(np.hypot(*along)), 1e-9)
    inside = shapely.Polygon(piece.stitch).buffer(-_INSIDE)
    for shift in _SHIFTS:
        line = shapely.LineString(ends + shift * aside)
        if inside.contains(line) and all(line.distance(bone) >= _APART for bone in bones):
            (x0, y0), (x1, y1) = (ends + shift * aside).tolist()
            return (x0, y0), (x1, y1)
    return piece.grain

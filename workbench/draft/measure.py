"""What is measured on the panels as drawn: lengths, slopes and corners, when they are asked for."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Corners = tuple[float, float, float, float]


def length_along(points: Array) -> float:
    """Length in mm of a polyline (n, 2)."""
    steps = points[1:] - points[:-1]
    return float(np.hypot(steps[:, 0], steps[:, 1]).sum())


def slopes_along(points: Array, walks: Array) -> Array:
    """(n - 1,) run per walk, absolute, from point to point of an edge (n, 2) drawn at these walks (n,)."""
    runs = points[1:, 0] - points[:-1, 0]
    return np.abs(runs / (walks[1:] - walks[:-1]))


def corner_angles(left: Array, right: Array, hem: Array, neckline: Array) -> Corners:
    """Degrees at the corners of a panel: hem left and right, neckline right and left.

    Its sides run from hem to neckline, its lines from left to right.
    """
    along = np.stack((hem[:3], hem[:-4:-1], neckline[:-4:-1], neckline[:3]))
    up = np.stack((left[:3], right[:3], right[:-4:-1], left[:-4:-1]))
    a, b = _start_directions(along), _start_directions(up)
    cross = np.abs(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0])
    one, two, three, four = np.degrees(np.arctan2(cross, (a * b).sum(axis=-1))).tolist()
    return one, two, three, four


def _start_directions(lines: Array) -> Array:
    """Directions (..., 2) of the parabolas through the first three points (..., 3, 2), at the first."""
    first, second = lines[..., 1, :] - lines[..., 0, :], lines[..., 2, :] - lines[..., 0, :]
    near, far = np.hypot(first[..., 0], first[..., 1]), np.hypot(second[..., 0], second[..., 1])
    ratio = (far / near)[..., None]
    directions: Array = first * ratio - second / ratio
    return directions

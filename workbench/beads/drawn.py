"""A line drawn over the half: a smooth curve through its points, cut by the seams it crosses.

The curve is drawn where the half lies unrolled, across by the real distance from the centre front
and up by the walk, so that it runs on over a closed seam; then each part is mapped to the flat of
its panel. Smoothness is that of the centripetal Catmull-Rom spline (Catmull and Rom 1974; Barry and
Goldman, SIGGRAPH 1988; from memory): it goes through every point, without loops. Figures are own
choice, how finely a line is drawn.
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from workbench.beads.result import Array, Flags, Ints
from workbench.draft import ShapePoint, Surface

STEP_MM = 1.0
_LEAST_APART_MM = 0.01
_MOST_STEPS = 2000

Part = tuple[int, Array]
"""A panel and a line (n, 2) on its flat."""


def drawn_parts(points: tuple[ShapePoint, ...], surface: Surface) -> tuple[list[Part], bool]:
    """The line panel by panel in the order it runs, and whether some of it lies past either centre line.

    No parts where fewer than two points lie apart.
    """
    unrolled = curve_through(*_unrolled(points, surface))
    if len(unrolled) < 2:
        return [], False
    panels, across, inside = _across(unrolled, surface)
    parts: list[Part] = []
    for first, last in _stretches(panels, inside):
        own = _with_seams(unrolled, panels, across, inside, first, last)
        flat = surface.points(np.full(len(own), panels[first]), own[:, 0], own[:, 1])
        parts.append((int(panels[first]), flat))
    return parts, not bool(inside.all())


def curve_through(points: Array, smooth: list[bool]) -> Array:
    """(m, 2) along the curve through the points (n, 2), a millimetre apart; a corner where not smooth."""
    kept = [0, *(i for i in range(1, len(points)) if _apart(points[i], points[i - 1]))] if len(points) else []
    points, smooth = points[kept], [smooth[i] for i in kept]
    if len(points) < 2:
        return points
    corners = [0, *(i for i in range(1, len(points) - 1) if not smooth[i]), len(points) - 1]
    pieces = [_spline(points[a : b + 1]) for a, b in pairwise(corners)]
    return np.vstack((*(piece[:-1] for piece in pieces), pieces[-1][-1:]))


def _apart(one: Array, other: Array) -> bool:
    return bool(np.hypot(*(one - other)) > _LEAST_APART_MM)


def _unrolled(points: tuple[ShapePoint, ...], surface: Surface) -> tuple[Array, list[bool]]:
    """Points as distance from the centre front and walk; past a centre line straight on at panel width."""
    u, t = np.array([p.u for p in points]), np.array([p.t for p in points])
    if not len(points):
        return np.zeros((0, 2)), []
    chords = surface.chords(t)
    past = np.minimum(u, 0.0) * chords[0] + np.maximum(u - surface.panel_count, 0.0) * chords[-1]
    return np.stack((surface.runs(surface.shares(u), t) + past, t), axis=1), [p.smooth for p in points]


def _spline(points: Array) -> Array:
    """The centripetal spline from the first to the last point, by the pyramid of Barry and Goldman."""
    if len(points) == 2:
        return _straight(points[0], points[1])
    # a point beyond either end, mirrored, lets the curve leave it freely
    ends = 2 * points[0] - points[1], 2 * points[-1] - points[-2]
    reached = np.vstack((ends[0], points, ends[1]))
    pieces = [_span(reached[i : i + 4])[:-1] for i in range(len(points) - 1)]
    return np.vstack((*pieces, points[-1:]))


def _straight(start: Array, end: Array) -> Array:
    share = np.linspace(0.0, 1.0, _steps(float(np.hypot(*(end - start)))) + 1)[:, None]
    line: Array = start + share * (end - start)
    return line


def _span(four: Array) -> Array:
    """From the second to the third of four points."""
    lengths = np.hypot(*np.diff(four, axis=0).T)
    k0, k1, k2, k3 = np.concatenate(([0.0], np.cumsum(np.sqrt(lengths)))).tolist()
    t = np.linspace(k1, k2, _steps(float(lengths[1])) + 1)[:, None]

    def between(one: Array, other: Array, low: float, high: float) -> Array:
        return ((high - t) * one + (t - low) * other) / (high - low)

    a, b, c = (
        between(four[0], four[1], k0, k1),
        between(four[1], four[2], k1, k2),
        between(four[2], four[3], k2, k3),
    )
    return between(between(a, b, k0, k2), between(b, c, k1, k3), k1, k2)


def _steps(length: float) -> int:
    return min(max(int(np.ceil(length / STEP_MM)), 2), _MOST_STEPS)


def _across(unrolled: Array, surface: Surface) -> tuple[Ints, Array, Flags]:
    """Panel (n,) and place across it (n,) of unrolled points, and which lie between the centre lines."""
    chords = surface.chords(unrolled[:, 1])
    reached = np.cumsum(chords, axis=0)
    run = unrolled[:, 0]
    panels = np.minimum((reached < run - 1e-9).sum(axis=0), surface.panel_count - 1)
    here = np.arange(len(run))
    across = 1.0 - (reached[panels, here] - run) / chords[panels, here]
    inside: Flags = (run >= -1e-9) & (run <= reached[-1] + 1e-9)
    return panels, np.clip(across, 0.0, 1.0), inside


def _stretches(panels: Ints, inside: Flags) -> list[tuple[int, int]]:
    """First and last of the points in a row that lie on one panel, stretch by stretch."""
    marks = np.where(inside, panels, -1)
    starts = np.flatnonzero(np.concatenate(([True], np.diff(marks) != 0)))
    ends = np.concatenate((starts[1:] - 1, [len(marks) - 1]))
    return [(int(a), int(b)) for a, b in zip(starts, ends, strict=True) if marks[a] >= 0]


def _with_seams(unrolled: Array, panels: Ints, across: Array, inside: Flags, first: int, last: int) -> Array:
    """Places (across, walk) of one stretch, on to the seam at either end where it crosses one there."""
    own = np.stack((across[first : last + 1], unrolled[first : last + 1, 1]), axis=1)
    rows = [own]
    if first > 0 and inside[first - 1]:
        rows.insert(0, _on_seam(unrolled, panels, across, first, first - 1))
    if last + 1 < len(panels) and inside[last + 1]:
        rows.append(_on_seam(unrolled, panels, across, last, last + 1))
    return np.vstack(rows)


def _on_seam(unrolled: Array, panels: Ints, across: Array, own: int, other: int) -> Array:
    """(1, 2) where the step from one's own point to the other crosses the seam between them."""
    forwards = panels[other] > panels[own]
    to_seam = 1.0 - across[own] if forwards else across[own]
    beyond = across[other] if forwards else 1.0 - across[other]
    share = to_seam / max(to_seam + beyond, 1e-12)
    walk = unrolled[own, 1] + share * (unrolled[other, 1] - unrolled[own, 1])
    return np.array([[1.0 if forwards else 0.0, walk]])

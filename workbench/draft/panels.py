"""Panels: edges from the ledger, the girth held at every level, outlines between hem and neckline."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from workbench.body import LevelName
from workbench.draft.design import Design, QuarterName, Seam
from workbench.draft.edges import Edges, Index, heights_at_levels
from workbench.draft.lines import Nodes, at_seams
from workbench.draft.monotone import Array, Spacing
from workbench.draft.names import panel_name, seam_name
from workbench.draft.result import LedgerLine, Level, Panel, SeamLine
from workbench.draft.surface import Surface, across

EDGE_SAMPLES = 129
"""Points along each side of a seam; at 3 mm the polyline is short of the curve by a few thousandths."""
_NEAR_ENDS = np.array([0.001, 0.003])
_EDGE_SHARE = np.sort(np.concatenate((np.linspace(0.0, 1.0, EDGE_SAMPLES - 4), _NEAR_ENDS, 1 - _NEAR_ENDS)))
"""Evenly spread, with two more points at either end, where the direction counts at the corners."""
_LEVEL_SAMPLES = np.linspace(0.0, 1.0, 13)
_USUAL_ROUNDS, _MOST_ROUNDS = 3, 10
_SETTLED = 0.02
"""mm that the last round still moved: the next would move less than half of it."""

Corners = tuple[float, float, float, float]


def edge_places(
    design: Design,
    levels: tuple[Level, ...],
    blocks: Mapping[QuarterName, float],
    ledger: tuple[LedgerLine, ...],
    bust_span: float,
) -> Array:
    """x (2 * panels, levels) of every edge on its quarter's block, the back block starting at the side."""
    walks = np.array([level.walk for level in levels])
    rise = (walks - walks[0]) / (walks[-1] - walks[0])
    x = np.zeros((2 * design.panel_count, len(levels)))
    _place_quarter(x, "front", design, blocks["front"], rise, _bust_place(levels, rise, bust_span))
    _place_quarter(x, "back", design, blocks["back"], rise, None)
    x[2 * design.front.panel_count - 1] = blocks["front"]
    x[-1] = blocks["back"] - 0.5 * design.opening_mm
    row = {level.name: i for i, level in enumerate(levels)}
    for line in ledger:
        for taking in line.takings:
            x[2 * taking.seam - 1, row[line.level]] -= taking.left
            x[2 * taking.seam, row[line.level]] += taking.right
    return x


def _bust_place(levels: tuple[Level, ...], rise: Array, bust_span: float) -> tuple[float, float]:
    """How far up the block the bust level is (0..1), and half the bust span in mm."""
    at = next(i for i, level in enumerate(levels) if level.name == "bust")
    return float(rise[at]), 0.5 * bust_span


def _place_quarter(
    x: Array,
    quarter: QuarterName,
    design: Design,
    block: float,
    rise: Array,
    bust: tuple[float, float] | None,
) -> None:
    described, first = (
        (design.front, 1) if quarter == "front" else (design.back, design.front.panel_count + 1)
    )
    for number, seam in enumerate(described.seams):
        place = seam_places(seam, block, rise, bust)
        row = 2 * (first + number)
        x[row - 1] = x[row] = place if quarter == "front" else block - place


def seam_places(seam: Seam, block: float, rise: Array, bust: tuple[float, float] | None) -> Array:
    """Distance (levels,) in mm of a seam from its quarter's own centre line."""
    lower, upper = seam.lower * block, seam.upper * block
    place = lower + (upper - lower) * rise
    if seam.through_bust_point and bust is not None:
        share, half_span = bust
        place = place + half_span - (lower + (upper - lower) * share)
    return place


def hold_girths(levels: Spacing, x: Array) -> Array:
    """Edge places moved so that every panel measures its width along the straight tape.

    The two edge points of a panel stand at slightly different heights, so their distance
    is more than the difference in x; each edge gives half of the excess, the centre
    lines nothing. Three rounds do for a usual body; sharp flares get more.
    """
    wanted = x[1::2] - x[::2]
    left_gives = np.full((len(wanted), 1), 0.5)
    left_gives[0], left_gives[-1] = 0.0, 1.0
    moved = x.copy()
    for turn in range(_MOST_ROUNDS):
        y = heights_at_levels(levels, moved)
        excess = np.hypot(moved[1::2] - moved[::2], y[1::2] - y[::2]) - wanted
        moved[::2] += left_gives * excess
        moved[1::2] -= (1 - left_gives) * excess
        if turn >= _USUAL_ROUNDS - 1 and np.abs(excess).max() < _SETTLED:
            break
    return moved


@dataclass(frozen=True)
class Sides:
    """Both sides of every edge of the drawn panels, sampled at shared walks (edges, EDGE_SAMPLES)."""

    walks: Array
    points: Array


def sides_of(edges: Edges, hem: tuple[float, ...], neckline: tuple[float, ...]) -> Sides:
    """The drawn part of each edge, from the hem's walk to the neckline's at its seam (panels + 1,)."""
    low, high = np.array(hem)[:, None], np.array(neckline)[:, None]
    seams = low + (high - low) * _EDGE_SHARE
    row = np.arange(2 * (len(hem) - 1))
    walks = seams[(row + 1) // 2]
    return Sides(walks, np.stack(edges.xy(row[:, None], walks), axis=-1))


def level_points(surface: Surface) -> tuple[Array, Array]:
    """Lines (panels, levels, j, 2) of equal walk across the panels, and straight widths (panels, levels)."""
    x, y, lean = surface.edges.at_levels
    left = (x[::2, :, None], y[::2, :, None], lean[::2, :, None])
    right = (x[1::2, :, None], y[1::2, :, None], lean[1::2, :, None])
    widths = np.hypot(x[1::2] - x[::2], y[1::2] - y[::2])
    return across(_LEVEL_SAMPLES, left, right), widths


def panels_of(
    design: Design,
    levels: tuple[Level, ...],
    surface: Surface,
    sides: Sides,
    hem: list[Array],
    neckline: list[Array],
) -> tuple[Panel, ...]:
    """The panels in drawing order; ``hem`` and ``neckline`` as :func:`by_panel` gives them."""
    crossing, widths = level_points(surface)
    angles = _corner_angles(sides.points, hem, neckline)
    return tuple(
        Panel(
            index=index,
            name=panel_name(index, design),
            quarter="front" if index < design.front.panel_count else "back",
            left=sides.points[2 * index],
            right=sides.points[2 * index + 1],
            neckline=neckline[index],
            hem=hem[index],
            level_lines=_crossing_lines(index, levels, sides.walks, crossing[index]),
            widths=dict(zip(design.levels, widths[index].tolist(), strict=True)),
            corner_angles=angles[index],
        )
        for index in range(design.panel_count)
    )


def by_panel(owner: Index, points: Array, panel_count: int) -> list[Array]:
    """A line (k, 2) in each panel, from its pieces (p, samples, 2); joints once."""
    starts = np.searchsorted(owner, np.arange(panel_count + 1)).tolist()
    parts = []
    for first, end in pairwise(starts):
        own = points[first:end]
        parts.append(
            own[0] if end - first == 1 else np.concatenate((own[:, :-1].reshape(-1, 2), own[-1, -1:]))
        )
    return parts


def _crossing_lines(
    index: int, levels: tuple[Level, ...], walks: Array, lines: Array
) -> dict[LevelName, Array]:
    """The level lines that run inside the panel from edge to edge."""
    low = max(walks[2 * index, 0], walks[2 * index + 1, 0])
    high = min(walks[2 * index, -1], walks[2 * index + 1, -1])
    return {level.name: line for level, line in zip(levels, lines, strict=True) if low <= level.walk <= high}


def _corner_angles(sides: Array, hem: list[Array], neckline: list[Array]) -> list[Corners]:
    """Degrees at the corners of every panel as drawn: hem left and right, neckline right and left."""
    ends = np.stack(
        [np.concatenate((line[:3], line[-3:])) for pair in zip(hem, neckline, strict=True) for line in pair]
    )
    ends = ends.reshape(-1, 2, 6, 2)
    low, high = ends[:, 0], ends[:, 1]
    left, right = sides[::2], sides[1::2]
    along = np.stack((low[:, :3], low[:, :2:-1], high[:, :2:-1], high[:, :3]), axis=1)
    up = np.stack((left[:, :3], right[:, :3], right[:, :-4:-1], left[:, :-4:-1]), axis=1)
    a, b = _start_directions(along), _start_directions(up)
    cross = np.abs(a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0])
    angles = np.degrees(np.arctan2(cross, (a * b).sum(axis=-1)))
    return [(one, two, three, four) for one, two, three, four in angles.tolist()]


def _start_directions(lines: Array) -> Array:
    """Directions (..., 2) of the parabolas through the first three points (..., 3, 2), at the first."""
    first, second = lines[..., 1, :] - lines[..., 0, :], lines[..., 2, :] - lines[..., 0, :]
    near, far = np.hypot(first[..., 0], first[..., 1]), np.hypot(second[..., 0], second[..., 1])
    ratio = (far / near)[..., None]
    directions: Array = first * ratio - second / ratio
    return directions


def seams_of(
    design: Design,
    levels: tuple[Level, ...],
    sides: Sides,
    panels: tuple[Panel, ...],
    hem: Nodes,
    neckline: Nodes,
) -> tuple[SeamLine, ...]:
    """The sewn seams, with both sides measured on the points as drawn."""
    steps = np.diff(sides.points, axis=1)
    lengths = np.hypot(steps[..., 0], steps[..., 1]).sum(axis=1).tolist()
    slopes = np.abs(steps[..., 0] / np.diff(sides.walks, axis=1))
    steepest = slopes.max(axis=1).tolist()
    below, above = at_seams(hem), at_seams(neckline)
    seams = []
    for k in range(1, design.panel_count):
        before, after = panels[k - 1], panels[k]
        row = 2 * k - 1 if steepest[2 * k - 1] >= steepest[2 * k] else 2 * k
        seams.append(
            SeamLine(
                index=k,
                name=seam_name(k, design),
                left_panel=before.name,
                right_panel=after.name,
                hem_walk=below[k].walk,
                neckline_walk=above[k].walk,
                left_length=lengths[2 * k - 1],
                right_length=lengths[2 * k],
                hem_angle_sum=before.corner_angles[1] + after.corner_angles[0],
                neckline_angle_sum=before.corner_angles[2] + after.corner_angles[3],
                hem_smooth=below[k].smooth,
                neckline_smooth=above[k].smooth,
                steepest=steepest[row],
                steepest_between=_between(levels, sides.walks[row].item(int(slopes[row].argmax()))),
            )
        )
    return tuple(seams)


def _between(levels: tuple[Level, ...], walk: float) -> tuple[LevelName, LevelName]:
    """The two levels a walk lies between, or the two nearest ones."""
    above = next((i for i, level in enumerate(levels) if level.walk > walk), len(levels) - 1)
    above = max(above, 1)
    return levels[above - 1].name, levels[above].name

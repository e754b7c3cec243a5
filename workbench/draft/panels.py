"""Panels: edges from the ledger, the girth held at every level, outlines between hem and neckline."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from workbench.body import LevelName
from workbench.draft.design import Design, QuarterName, Seam
from workbench.draft.edges import Edges, edges_through, heights_at_levels
from workbench.draft.lines import Nodes, Sampled
from workbench.draft.monotone import Array
from workbench.draft.result import LedgerLine, Level, Panel, SeamLine
from workbench.draft.surface import Surface, across

EDGE_SAMPLES = 129
"""Points along each side of a seam; at 3 mm the polyline is short of the curve by a few thousandths."""
_LEVEL_SAMPLES = np.linspace(0.0, 1.0, 13)
_GIRTH_ROUNDS = 3


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
    described, first = (design.front, 1) if quarter == "front" else (design.back, design.front.panel_count + 1)
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


def hold_girths(walks: Array, x: Array, rounds: int = _GIRTH_ROUNDS) -> Array:
    """Edge places moved so that every panel measures its width along the straight tape.

    The two edge points of a panel stand at slightly different heights, so their distance
    is more than the difference in x; each edge gives half of the excess, the centre
    lines nothing.
    """
    wanted = x[1::2] - x[::2]
    left_gives = np.full((len(wanted), 1), 0.5)
    left_gives[0], left_gives[-1] = 0.0, 1.0
    moved = x.copy()
    for _ in range(rounds):
        y = heights_at_levels(walks, moved)
        excess = np.hypot(moved[1::2] - moved[::2], y[1::2] - y[::2]) - wanted
        moved[::2] += left_gives * excess
        moved[1::2] -= (1 - left_gives) * excess
    return moved


@dataclass(frozen=True)
class Sides:
    """Both sides of every edge of the drawn panels, sampled at shared walks (edges, EDGE_SAMPLES)."""

    walks: Array
    points: Array
    slopes: Array


def sides_of(edges: Edges, hem: Array, neckline: Array) -> Sides:
    """The drawn part of each edge, from the hem's walk to the neckline's at its seam (panels + 1,)."""
    share = np.linspace(0.0, 1.0, EDGE_SAMPLES)
    seams = hem[:, None] + (neckline - hem)[:, None] * share
    row = np.arange(2 * (len(hem) - 1))
    walks = seams[(row + 1) // 2]
    x, y = edges.at(row[:, None], walks)
    return Sides(walks, np.stack((x, y), axis=-1), edges.slope(row[:, None], walks))


def level_points(surface: Surface, levels: tuple[Level, ...]) -> tuple[Array, Array]:
    """Lines (panels, levels, j, 2) of equal walk across the panels, and straight widths (panels, levels)."""
    walks = np.array([level.walk for level in levels])
    row = np.arange(2 * surface.panel_count)[:, None]
    x, y = surface.edges.at(row, walks)
    lean = surface.edges.slope(row, walks)
    left = (x[::2, :, None], y[::2, :, None], lean[::2, :, None])
    right = (x[1::2, :, None], y[1::2, :, None], lean[1::2, :, None])
    widths = np.hypot(x[1::2] - x[::2], y[1::2] - y[::2])
    return across(_LEVEL_SAMPLES, left, right), widths


def panels_of(
    design: Design, levels: tuple[Level, ...], surface: Surface, sides: Sides, hem: Sampled, neckline: Sampled
) -> tuple[Panel, ...]:
    """The panels in drawing order."""
    both = Sampled(*(np.concatenate(pair) for pair in zip(_parts(hem), _parts(neckline), strict=True)))
    points = surface.points(both.panel[:, None], both.v, both.t)
    hem_points, neckline_points = points[: len(hem.panel)], points[len(hem.panel) :]
    lines, widths = level_points(surface, levels)
    panels = []
    for index in range(design.panel_count):
        left, right = sides.points[2 * index], sides.points[2 * index + 1]
        low, high = hem.of_panel(index, hem_points), neckline.of_panel(index, neckline_points)
        panels.append(
            Panel(
                index=index,
                name=panel_name(index, design),
                quarter="front" if index < design.front.panel_count else "back",
                left=left,
                right=right,
                neckline=high,
                hem=low,
                level_lines=_crossing_lines(index, levels, sides.walks, lines[index]),
                widths={level.name: float(w) for level, w in zip(levels, widths[index], strict=True)},
                corner_angles=(
                    _angle(low, left),
                    _angle(low[::-1], right),
                    _angle(high[::-1], right[::-1]),
                    _angle(high, left[::-1]),
                ),
            )
        )
    return tuple(panels)


def _parts(line: Sampled) -> tuple[Array, Array, Array]:
    return line.panel, line.v, line.t  # type: ignore[return-value]  # panel numbers are whole


def _crossing_lines(
    index: int, levels: tuple[Level, ...], walks: Array, lines: Array
) -> dict[LevelName, Array]:
    """The level lines that run inside the panel from edge to edge."""
    low = max(walks[2 * index, 0], walks[2 * index + 1, 0])
    high = min(walks[2 * index, -1], walks[2 * index + 1, -1])
    return {level.name: line for level, line in zip(levels, lines, strict=True) if low <= level.walk <= high}


def _angle(one: Array, other: Array) -> float:
    """Degrees between two lines that start at the same corner, from the points as drawn.

    The direction at the corner is that of the parabola through the first three points.
    """
    a, b = _start_direction(one), _start_direction(other)
    return float(np.degrees(np.arctan2(abs(a[0] * b[1] - a[1] * b[0]), a @ b)))


def _start_direction(line: Array) -> Array:
    first, second = line[1] - line[0], line[2] - line[0]
    near, far = np.hypot(*first), np.hypot(*second)
    direction: Array = first * far / near - second * near / far
    return direction


def panel_name(index: int, design: Design) -> str:
    """``Front 1`` at the centre front, ``Back 1`` beyond the side seam."""
    front = design.front.panel_count
    return f"Front {index + 1}" if index < front else f"Back {index - front + 1}"


def seam_name(index: int, design: Design) -> str:
    """Seams are counted like panels; the one between front and back is the side seam."""
    front = design.front.panel_count
    if index == 0:
        return "centre front"
    if index == design.panel_count:
        return "centre back"
    if index == front:
        return "side seam"
    return f"front seam {index}" if index < front else f"back seam {index - front}"


def seams_of(
    design: Design,
    levels: tuple[Level, ...],
    sides: Sides,
    panels: tuple[Panel, ...],
    hem: Nodes,
    neckline: Nodes,
) -> tuple[SeamLine, ...]:
    """The sewn seams, with both sides measured on the points as drawn."""
    lengths = np.hypot(*np.moveaxis(np.diff(sides.points, axis=1), -1, 0)).sum(axis=1)
    hem_walks, neckline_walks = hem.at_seams(), neckline.at_seams()
    hem_smooth, neckline_smooth = hem.smooth_at_seams(), neckline.smooth_at_seams()
    seams = []
    for k in range(1, design.panel_count):
        before, after = panels[k - 1], panels[k]
        steepest, between = _steepest(levels, sides, 2 * k - 1)
        seams.append(
            SeamLine(
                index=k,
                name=seam_name(k, design),
                left_panel=before.name,
                right_panel=after.name,
                hem_walk=float(hem_walks[k]),
                neckline_walk=float(neckline_walks[k]),
                left_length=float(lengths[2 * k - 1]),
                right_length=float(lengths[2 * k]),
                hem_angle_sum=before.corner_angles[1] + after.corner_angles[0],
                neckline_angle_sum=before.corner_angles[2] + after.corner_angles[3],
                hem_smooth=bool(hem_smooth[k]),
                neckline_smooth=bool(neckline_smooth[k]),
                steepest=steepest,
                steepest_between=between,
            )
        )
    return tuple(seams)


def _steepest(levels: tuple[Level, ...], sides: Sides, row: int) -> tuple[float, tuple[LevelName, LevelName]]:
    """Largest run per walk of either side of a seam where it is sewn, and the two levels it lies between."""
    slopes = np.abs(sides.slopes[row : row + 2])
    at = int(slopes.argmax())
    walk = sides.walks[row].item(at % slopes.shape[1])
    above = next((i for i, level in enumerate(levels) if level.walk > walk), len(levels) - 1)
    above = max(above, 1)
    return float(slopes.flat[at]), (levels[above - 1].name, levels[above].name)

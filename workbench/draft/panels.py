"""Panels: edges from the ledger, the girth held at every level, outlines between hem and neckline.

Figures are own choice, how exactly a panel is drawn, unless said.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

import numpy as np

from workbench.body import LevelName
from workbench.draft.design import Design, QuarterName, Seam
from workbench.draft.edges import Edges, Index, heights_at_levels
from workbench.draft.lines import Nodes, at_seams
from workbench.draft.monotone import Array, Spacing, hermite_weights
from workbench.draft.names import panel_name, seam_name
from workbench.draft.result import LedgerLine, Level, Panel, SeamLine
from workbench.draft.surface import Surface, across
from workbench.frozen import dataclass

EDGE_SAMPLES = 129
"""Points along each side of a seam; at 3 mm the polyline is short of the curve by a few thousandths."""
_NEAR_ENDS = np.array([0.001, 0.003])
_EDGE_SHARE = np.sort(np.concatenate((np.linspace(0.0, 1.0, EDGE_SAMPLES - 4), _NEAR_ENDS, 1 - _NEAR_ENDS)))
"""Evenly spread, with two more points at either end, where the direction counts at the corners."""
_LEVEL_WEIGHTS = hermite_weights(np.linspace(0.0, 1.0, 13))
_USUAL_ROUNDS, _MOST_ROUNDS = 3, 10
_SETTLED = 0.02
"""mm that the last round still moved: the next would move less than half of it."""


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
    x += _moves(levels, ledger, len(x))
    return x


def _moves(levels: tuple[Level, ...], ledger: tuple[LedgerLine, ...], edges: int) -> list[list[float]]:
    """(edges, levels) how far the ledger moves every edge from its seam; plain numbers, for one at a time."""
    place = {level.name: i for i, level in enumerate(levels)}
    moves = [[0.0] * len(levels) for _ in range(edges)]
    for line in ledger:
        at = place[line.level]
        for taking in line.takings:
            moves[2 * taking.seam - 1][at] -= taking.left
            moves[2 * taking.seam][at] += taking.right
    return moves


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
    gives = np.empty((len(wanted), 2, 1))
    gives[:] = [[0.5], [-0.5]]
    gives[0], gives[-1] = [[0.0], [-1.0]], [[1.0], [0.0]]
    moved = x.copy()
    pairs = moved.reshape(-1, 2, x.shape[1])  # left and right edge of each panel, the same numbers
    for turn in range(_MOST_ROUNDS):
        y = heights_at_levels(levels, moved)
        excess = np.hypot(pairs[:, 1] - pairs[:, 0], y[1::2] - y[::2])
        excess -= wanted
        pairs += gives * excess[:, None]
        if turn >= _USUAL_ROUNDS - 1 and np.abs(excess).max() < _SETTLED:
            break
    return moved


@dataclass(frozen=True)
class Sides:
    """The sides of the panels as drawn, from the hem's walk to the neckline's at each seam."""

    low: tuple[float, ...]
    """(panels + 1,) walks of the hem at the centre front, the seams and the centre back."""
    high: tuple[float, ...]
    """(panels + 1,) and those of the neckline."""
    walks: Array
    """(panels + 1, EDGE_SAMPLES) at which the seams are drawn."""
    points: Array
    """(edges, EDGE_SAMPLES, 2); edge 2k - 1 and edge 2k lie on seam k."""


def sides_of(edges: Edges, hem: tuple[float, ...], neckline: tuple[float, ...]) -> Sides:
    """The drawn part of each edge, between the walks of hem and neckline at its seam (panels + 1,)."""
    low, high = np.array(hem)[:, None], np.array(neckline)[:, None]
    walks = low + (high - low) * _EDGE_SHARE
    row = np.arange(2 * (len(hem) - 1))
    x, y = edges.xy(row[:, None], walks.take((row + 1) // 2, axis=0))
    points = np.empty((*x.shape, 2))
    points[..., 0], points[..., 1] = x, y
    return Sides(hem, neckline, walks, points)


def level_points(surface: Surface) -> tuple[Array, Array]:
    """Lines (panels, levels, j, 2) of equal walk across the panels, and straight widths (panels, levels)."""
    pairs = (surface.panel_count, 2, -1)
    x, y, lean = (values.reshape(pairs).swapaxes(0, 1) for values in surface.edges.at_levels)
    widths = np.hypot(x[1] - x[0], y[1] - y[0])
    return across(_LEVEL_WEIGHTS, x[..., None], y[..., None], lean[..., None]), widths


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
    return tuple(
        Panel(
            index=index,
            name=panel_name(index, design),
            quarter="front" if index < design.front.panel_count else "back",
            left=sides.points[2 * index],
            right=sides.points[2 * index + 1],
            neckline=neckline[index],
            hem=hem[index],
            level_lines=_crossing_lines(index, levels, sides, crossing[index]),
            widths=dict(zip(design.levels, widths[index].tolist(), strict=True)),
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
    index: int, levels: tuple[Level, ...], sides: Sides, lines: Array
) -> dict[LevelName, Array]:
    """The level lines that run inside the panel from edge to edge."""
    low, high = max(sides.low[index : index + 2]), min(sides.high[index : index + 2])
    return {level.name: line for level, line in zip(levels, lines, strict=True) if low <= level.walk <= high}


def seams_of(
    design: Design,
    levels: tuple[Level, ...],
    sides: Sides,
    panels: tuple[Panel, ...],
    hem: Nodes,
    neckline: Nodes,
) -> tuple[SeamLine, ...]:
    """The sewn seams, front to back."""
    below, above = at_seams(hem), at_seams(neckline)
    return tuple(
        SeamLine(
            k,
            seam_name(k, design),
            panels[k - 1],
            panels[k],
            sides.walks[k],
            levels,
            below[k].smooth,
            above[k].smooth,
        )
        for k in range(1, design.panel_count)
    )

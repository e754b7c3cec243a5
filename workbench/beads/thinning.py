"""How a scatter thins out: from all of its density at an edge to nothing at a line."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import shapely

from workbench.beads.drawn import drawn_parts
from workbench.beads.lattice import Lattice, lattice_over
from workbench.beads.records import BeadScatter
from workbench.beads.result import Array
from workbench.draft import Draft, ShapePoint


def thin_line(points: tuple[ShapePoint, ...], panel_count: int) -> tuple[ShapePoint, ...] | None:
    """The line on which no beads are left, level on to both centre lines.

    None where it has fewer than two points, does not run from front to back, or leaves the half.
    """
    places = [point.u for point in points]
    if len(points) < 2 or any(b <= a for a, b in pairwise(places)):
        return None
    if places[0] < 0 or places[-1] > panel_count:
        return None
    first, last = points[0], points[-1]
    before = (ShapePoint(0.0, first.t),) if first.u > 0 else ()
    after = (ShapePoint(float(panel_count), last.t),) if last.u < panel_count else ()
    return (*before, *points, *after)


def thinning_of(scatter: BeadScatter, draft: Draft) -> dict[int, Lattice] | None:
    """By panel, the share of the density at each place; None for a scatter that does not thin out.

    It falls with the distance from the edge, as a part of the way from the edge to the line.
    """
    if scatter.thin_from == "none":
        return None
    points = thin_line(scatter.thin_to, len(draft.panels)) or ()
    parts: dict[int, list[Array]] = {}
    for panel, line in drawn_parts(points, draft.surface)[0]:
        parts.setdefault(panel, []).append(line)
    return {
        number: _shares(scatter, draft, number, np.vstack(parts[number]))
        for number in scatter.panels
        if number in parts
    }


def _shares(scatter: BeadScatter, draft: Draft, number: int, line: Array) -> Lattice:
    panel = draft.panels[number]
    edge = shapely.linestrings(panel.neckline if scatter.thin_from == "neckline" else panel.hem)
    end = shapely.linestrings(line)
    order = np.argsort(line[:, 0], kind="stable")
    upwards = 1.0 if scatter.thin_from == "neckline" else -1.0

    def share(points: Array) -> Array:
        dots = shapely.points(points)
        to_edge, to_end = shapely.distance(edge, dots), shapely.distance(end, dots)
        height = points[:, 1] - np.interp(points[:, 0], line[order, 0], line[order, 1])
        shares: Array = np.where(upwards * height > 0, to_end / (to_edge + to_end + 1e-9), 0.0)
        return shares

    return lattice_over(panel.outline, share)

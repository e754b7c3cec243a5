"""A seam allowance of one width all round a panel."""

from __future__ import annotations

import numpy as np
import shapely
from numpy.typing import NDArray

from workbench.draft import Panel

Array = NDArray[np.float64]

_MITRE_LIMIT = 1.6
"""Corners sharper than about 77 degrees are cut blunt, so that no corner runs out into a spike."""


def cut_outlines(panels: tuple[Panel, ...], allowance: float) -> tuple[Array, ...]:
    """Cut line (n, 2) of each panel, mm, anticlockwise, the first point not repeated.

    With no allowance the stitch line is the cut line.
    """
    outlines = [panel.outline for panel in panels]
    if allowance <= 0:
        return tuple(outlines)
    stitched = shapely.polygons([shapely.linearrings(outline) for outline in outlines])
    grown = shapely.buffer(stitched, allowance, join_style="mitre", mitre_limit=_MITRE_LIMIT)
    rings = shapely.get_exterior_ring(shapely.orient_polygons(grown))
    return tuple(shapely.get_coordinates(ring)[:-1] for ring in rings)

"""An outline as a shape that can be cut with others, whatever the outline is like."""

from __future__ import annotations

import shapely

from workbench.sheets.drawing import Array


def shape_of(outline: Array) -> shapely.Polygon:
    """The polygon in an outline (n, 2); of one that crosses itself its largest part.

    A piece that is narrower than its turn of cloth crosses itself. That is told where it is cut; on
    paper it only has to find room, and words a place.
    """
    polygon = shapely.Polygon(outline)
    if polygon.is_valid:
        return polygon
    parts = shapely.get_parts(shapely.make_valid(polygon))
    flat = [part for part in parts if isinstance(part, shapely.Polygon)]
    return max(flat, key=shapely.area, default=polygon)

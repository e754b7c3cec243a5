"""Every cut line is looked over, by other means than it was drawn with.

It must be one simple ring that holds the stitch line, at the allowance from each edge away
from the corners. One that is not is reported, never quietly replaced.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely

from workbench.draft import Finding, Place
from workbench.pieces.cutline import CutShape
from workbench.pieces.kinds import edge_words, place_of
from workbench.pieces.outline import IN_RING
from workbench.pieces.result import Array, EdgeName

WITHIN = 0.1
"""mm by which a cut line may miss its allowance."""
_HELD = 1e-6
_EVERY = 4
"""Every fourth point is measured: they lie a few millimetres apart, and a fault is wider than that."""


def look_over(
    shapes: Sequence[CutShape], names: Sequence[str], panels: Sequence[int] = ()
) -> tuple[list[CutShape], list[Finding]]:
    """The shapes, and a finding for each that does not come out.

    A cut line that crosses itself becomes the outer edge of all it runs round, so that the
    rest can be laid and printed; the finding says so. ``panels`` are their numbers, if they are panels.
    """
    found: list[Finding] = []
    kept = []
    for row, (shape, name) in enumerate(zip(shapes, names, strict=True)):
        panel = panels[row] if panels else None
        sound = _is_sound(shape)
        if panel is not None:
            found += [_tight(shape, edge, name, panel) for edge in _hollow_edges(shape)]
        if not sound:
            found.append(_crosses(name, panel))
            shape = replace(shape, ring=_outer_edge(shape))
        else:
            found += [_misses(shape, edge, name, panel) for edge in missed_edges(shape)]
        kept.append(shape)
    return kept, found


def _is_sound(shape: CutShape) -> bool:
    """One simple ring, anticlockwise, with all of the stitch line inside or on it."""
    ring = shapely.linearrings(shape.ring)
    if not (shapely.is_simple(ring) and shapely.is_ccw(ring)):
        return False
    cloth = shapely.polygons(ring)
    shapely.prepare(cloth)
    inside: bool = shapely.dwithin(cloth, shapely.points(shape.outline.ring[::_EVERY]), _HELD).all()
    return inside


def missed_edges(shape: CutShape) -> Iterator[EdgeName]:
    """Edges whose cut line is not at the allowance from their stitch line."""
    for place, (name, width, line) in enumerate(
        zip(IN_RING, shape.widths, shape.outline.in_ring, strict=True)
    ):
        first, end = shape.spans[place]
        if width == 0 or first == end:
            continue
        stitched, cut = shapely.linestrings(line), shapely.points(shape.ring[first:end:_EVERY])
        shapely.prepare(stitched)
        too_near = shapely.dwithin(stitched, cut, width - WITHIN).any()
        if too_near or not (
            shape.cornered[place]
            or shape.hollow[place]
            or shapely.dwithin(stitched, cut, width + WITHIN).all()
        ):
            yield name


def _hollow_edges(shape: CutShape) -> list[EdgeName]:
    return [name for name, hollow in zip(IN_RING, shape.hollow, strict=True) if hollow]


def _outer_edge(shape: CutShape) -> Array:
    cloth = shapely.union(
        shapely.make_valid(shapely.polygons(shape.ring)),
        shapely.make_valid(shapely.polygons(shape.outline.ring)),
    )
    parts = [part for part in shapely.get_parts(cloth) if part.geom_type == "Polygon"]
    largest = shapely.orient_polygons(max(parts, key=shapely.area))
    ring: Array = shapely.get_coordinates(shapely.get_exterior_ring(largest))[:-1]
    return ring


def _place(panel: int | None, edge: EdgeName | None = None) -> Place:
    if panel is None:
        return Place()
    return place_of(panel, edge) if edge else Place(panel=panel)


def _crosses(name: str, panel: int | None) -> Finding:
    return Finding(
        "attend",
        "cut_line_crosses",
        "The cut line of {piece} crosses itself: its allowances are too wide for its shape.",
        words={"piece": name},
        place=_place(panel),
        remedy="Give its edges less, or draw this cut line by hand.",
    )


def _tight(shape: CutShape, edge: EdgeName, name: str, panel: int) -> Finding:
    width = shape.widths[IN_RING.index(edge)]
    return Finding(
        "note",
        "allowance_in_hollow",
        "The {edge} of {piece} is more hollow than its allowance, {width}, can follow; it is cut off there.",
        {"width": width},
        {"edge": edge_words(edge), "piece": name},
        place_of(panel, edge),
        "Clip the allowance there, or give this edge less.",
        value_mm=width,
    )


def _misses(shape: CutShape, edge: EdgeName, name: str, panel: int | None) -> Finding:
    width = shape.widths[IN_RING.index(edge)]
    return Finding(
        "attend",
        "cut_line_misses",
        "The cut line at the {edge} of {piece} is not everywhere {width} from the stitch line.",
        {"width": width},
        {"edge": edge_words(edge), "piece": name},
        _place(panel, edge),
        "Check it with a ruler before cutting.",
        value_mm=width,
    )

"""Every cut line is looked over, by other means than it was drawn with.

It must be one simple ring that holds the stitch line, at the allowance from each edge away from the
corners. One that is not is reported, never quietly replaced. Figures are own choice, how closely a
cut line is looked over, unless said.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np
import shapely
from numpy.typing import NDArray

from workbench.draft import Finding, Place
from workbench.frozen import dataclass
from workbench.pieces.cutline import CutShape
from workbench.pieces.kinds import edge_words, place_of
from workbench.pieces.making import EdgeName
from workbench.pieces.outline import IN_RING
from workbench.pieces.polyline import Array

Flags = NDArray[np.bool_]

WITHIN = 0.1
"""mm by which a cut line may miss its allowance."""
_HELD = 1e-6
_EVERY = 4
"""Every fourth point is measured: they lie a few millimetres apart, and a fault is wider than that."""


def look_over(
    shapes: Sequence[CutShape], names: Sequence[str], panels: Sequence[int | None] = ()
) -> tuple[list[CutShape], list[Finding]]:
    """The shapes, and a finding for each that does not come out.

    A cut line that crosses itself becomes the outer edge of all it runs round, so that the
    rest can be laid and printed; the finding says so. ``panels`` are their numbers, None for
    what is no panel.
    """
    found: list[Finding] = []
    kept = []
    numbers = panels or [None] * len(shapes)
    looks = zip(shapes, names, numbers, _are_sound(shapes), _missed(shapes), strict=True)
    for shape, name, panel, sound, missed in looks:
        if panel is not None:
            found += [_tight(shape, edge, name, panel) for edge in _hollow_edges(shape)]
        if sound:
            found += [_misses(shape, edge, name, panel) for edge in missed]
            kept.append(shape)
        else:
            found.append(_crosses(name, panel))
            kept.append(replace(shape, ring=_outer_edge(shape)))
    return kept, found


def _are_sound(shapes: Sequence[CutShape]) -> list[bool]:
    """Whether each is one simple ring, anticlockwise, with all of the stitch line inside or on it."""
    if not shapes:
        return []
    points, owner = _in_one([shape.ring for shape in shapes])
    rings = shapely.linearrings(points, indices=owner)
    sound: Flags = shapely.is_simple(rings) & shapely.is_ccw(rings)
    rows = [row for row in np.flatnonzero(sound).tolist() if not _is_stitch_line(shapes[row])]
    if rows:
        cloths = shapely.polygons(rings[rows])
        shapely.prepare(cloths)
        points, owner = _in_one([shapes[row].outline.ring[::_EVERY] for row in rows])
        inside = shapely.intersects_xy(cloths[owner], points[:, 0], points[:, 1])
        # a point on the cut line itself may lie beside it by what numbers are rounded to
        beside = np.flatnonzero(~inside)
        inside[beside] = shapely.dwithin(cloths[owner[beside]], shapely.points(points[beside]), _HELD)
        sound[rows] = np.logical_and.reduceat(inside, np.searchsorted(owner, np.arange(len(rows))))
    answers: list[bool] = sound.tolist()
    return answers


def _is_stitch_line(shape: CutShape) -> bool:
    """Whether the cut line is the stitch line itself, begun one point further on."""
    cut, stitched = shape.ring, shape.outline.ring
    return len(cut) == len(stitched) and bool(
        (cut[:-1] == stitched[1:]).all() and (cut[-1] == stitched[0]).all()
    )


def missed_edges(shape: CutShape) -> tuple[EdgeName, ...]:
    """Edges whose cut line is not at the allowance from their stitch line."""
    return _missed([shape])[0]


@dataclass(frozen=True)
class _Run:
    """The cut line along one edge of one piece, as it is measured."""

    row: int
    place: int
    """Number of the edge in the ring."""
    width: float
    stitched: Array
    cut: Array
    """Every fourth point."""
    beside: Array
    """The point of the stitch line each was set out from; not a number where that is not known."""
    even: bool
    """Whether it may lie no further out than the allowance either."""


def _runs(row: int, shape: CutShape) -> Iterator[_Run]:
    for place, (width, line) in enumerate(zip(shape.widths, shape.outline.in_ring, strict=True)):
        (first, end), (start, stop) = shape.spans[place], shape.kept[place]
        if width == 0 or first == end:
            continue
        cut = shape.ring[first:end:_EVERY]
        known = stop - start == end - first
        beside = line[start:stop:_EVERY] if known else np.full_like(cut, np.nan)
        yield _Run(row, place, width, line, cut, beside, not (shape.cornered[place] or shape.hollow[place]))


def _missed(shapes: Sequence[CutShape]) -> list[tuple[EdgeName, ...]]:
    """The edges of each shape that are nearer to their stitch line, or further off, than they should be."""
    runs = [run for row, shape in enumerate(shapes) for run in _runs(row, shape)]
    found: list[tuple[EdgeName, ...]] = [()] * len(shapes)
    if runs:
        for run, missed in zip(runs, _are_missed(runs), strict=True):
            if missed:
                found[run.row] = (*found[run.row], IN_RING[run.place])
    return found


def _are_missed(runs: list[_Run]) -> list[bool]:
    line, owner = _in_one([run.stitched for run in runs])
    stitched = shapely.linestrings(line, indices=owner)
    shapely.prepare(stitched)
    cut, owner = _in_one([run.cut for run in runs])
    width, points = np.array([run.width for run in runs])[owner], shapely.points(cut)
    amiss: Flags = shapely.dwithin(stitched[owner], points, width - WITHIN)
    # what is near enough to one point of the stitch line is near enough to the line; the rest is measured
    apart = cut - np.concatenate([run.beside for run in runs])
    near_enough = np.hypot(apart[:, 0], apart[:, 1]) <= width + WITHIN
    far = ~near_enough & np.array([run.even for run in runs])[owner]
    if far.any():
        amiss[far] |= ~shapely.dwithin(stitched[owner[far]], points[far], (width + WITHIN)[far])
    missed: list[bool] = np.logical_or.reduceat(amiss, np.searchsorted(owner, np.arange(len(runs)))).tolist()
    return missed


def _in_one(lines: Sequence[Array]) -> tuple[Array, NDArray[np.intp]]:
    """All points (n, 2) in one array, and the number (n,) of the line each belongs to."""
    counts = np.fromiter(map(len, lines), np.intp, len(lines))
    return np.concatenate(lines), np.repeat(np.arange(len(lines)), counts)


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

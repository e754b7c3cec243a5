"""Where the panels lie over the joined sheets, so that the fewest sheets are printed.

Panels are never turned. They stand in rows ("shelves"), in drawing order, all panels of
a shelf on the same waist line. The plane has its origin at the upper left printable
corner of the first sheet; x runs right and y up, so everything lies below y = 0.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

import numpy as np
import shapely
from numpy.typing import NDArray

from workbench.sheets.coverage import Coverage
from workbench.sheets.drawing import Array
from workbench.sheets.paper import MOST_SHEETS, ROLL, PaperSize, PrintError

SPACE = 6.0
"""Left between two panels, mm: room for the scissors."""
_MOST_COLUMNS_TRIED = 14
_FEW_COLUMNS_TRIED = 4
_MANY_COLUMNS = 30
"""Past so many columns a sheet is a shred of paper, and trying every width of shelf would take seconds."""
_EPS = 1e-6


@dataclass(frozen=True)
class Extent:
    """How far a panel reaches from its own origin, which is on the waist line."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Left to right, mm."""
        return self.right - self.left


@dataclass(frozen=True)
class Arrangement:
    """One way to lay the panels: how far each is moved, and which sheets (rows, columns) that needs."""

    paper: PaperSize
    moves: Array
    """(panels, 2) mm, added to a panel's own coordinates."""
    needed: NDArray[np.bool_]
    depth: float
    """From the top of the first shelf to the foot of the last, mm."""

    @property
    def sheets(self) -> int:
        """How many sheets are printed."""
        return int(self.needed.sum())


@dataclass(frozen=True)
class _Way:
    """How one arrangement is tried."""

    paper: PaperSize
    columns: int
    snap_across: bool
    snap_down: bool


def arrange(outlines: tuple[Array, ...], paper: PaperSize) -> Arrangement:
    """The arrangement that needs the fewest sheets; upright sheets win a tie, then the smaller grid.

    PrintError where it would take more than :data:`MOST_SHEETS`.
    """
    extents = [_extent(outline) for outline in outlines]
    polygons = shapely.polygons([shapely.linearrings(outline) for outline in outlines])
    _refuse_tiny_sheets(float(shapely.area(polygons).sum()), paper)
    best: Arrangement | None = None
    for way in _ways(extents, paper):
        found = _tried(way, extents, polygons)
        if found is not None and (best is None or _cost(found) < _cost(best)):
            best = found
    if best is None or best.sheets > MOST_SHEETS:
        raise _too_many(paper)
    return best


def _extent(outline: Array) -> Extent:
    low, high = outline.min(axis=0), outline.max(axis=0)
    return Extent(float(low[0]), float(low[1]), float(high[0]), float(high[1]))


def _cost(arrangement: Arrangement) -> tuple[int, bool, int]:
    lying = arrangement.paper.width > arrangement.paper.height
    return arrangement.sheets, lying, arrangement.needed.size


def _refuse_tiny_sheets(area: float, paper: PaperSize) -> None:
    if area > MOST_SHEETS * paper.print_width * paper.print_height:
        raise _too_many(paper)


def _too_many(paper: PaperSize) -> PrintError:
    return PrintError(
        f"With these margins and this overlap the panels need more than {MOST_SHEETS} sheets of {paper.name}."
    )


def _ways(extents: list[Extent], paper: PaperSize) -> Iterator[_Way]:
    """Every width of shelf worth trying, upright and lying, with panels snapped to sheets or not."""
    turns = (paper,) if paper.name == ROLL else (paper, paper.turned())
    for turn in turns:
        for columns in _column_counts(extents, turn):
            for snap_across in (False, True):
                for snap_down in (False, True):
                    yield _Way(turn, columns, snap_across, snap_down)


def _column_counts(extents: list[Extent], paper: PaperSize) -> list[int]:
    if paper.name == ROLL:
        return [1]
    total = sum(extent.width + SPACE for extent in extents) + len(extents) * paper.pitch[0]
    most = ceil(total / paper.pitch[0])
    step = ceil(most / (_MOST_COLUMNS_TRIED if most <= _MANY_COLUMNS else _FEW_COLUMNS_TRIED))
    return [*range(1, most, step), most]


def _tried(way: _Way, extents: list[Extent], polygons: NDArray[np.object_]) -> Arrangement | None:
    """The panels laid this way, or None where a panel is wider than the shelf or the grid is out of hand."""
    shelves = _shelves(way, extents)
    if shelves is None:
        return None
    moves, depth = _moves(shelves, way, extents)
    rows = _sheets_across(0.0, depth, way.paper.pitch[1], way.paper.print_height)
    if rows * way.columns > 4 * MOST_SHEETS:
        return None
    placed = shapely.transform(polygons, _Mover(moves, polygons))
    needed = Coverage(way.paper, rows, way.columns).needed(placed)
    return Arrangement(way.paper, moves, needed, depth)


class _Mover:
    """Adds each polygon's own move to its points."""

    def __init__(self, moves: Array, polygons: NDArray[np.object_]) -> None:
        self._shift = np.repeat(moves, shapely.get_num_coordinates(polygons), axis=0)

    def __call__(self, points: Array) -> Array:
        """The moved points."""
        return points + self._shift


Shelf = list[tuple[int, float]]
"""Panels of one shelf, each with its left end, mm."""


def _shelves(way: _Way, extents: list[Extent]) -> list[Shelf] | None:
    pitch, seen = way.paper.pitch[0], way.paper.print_width
    room = (way.columns - 1) * pitch + seen
    shelves: list[Shelf] = [[]]
    cursor = 0.0
    for number, extent in enumerate(extents):
        if extent.width > room + _EPS:
            return None
        start = _snapped(cursor, extent.width, pitch, seen) if way.snap_across else cursor
        if start + extent.width > room + _EPS:
            shelves.append([])
            start = 0.0
        shelves[-1].append((number, start))
        cursor = start + extent.width + SPACE
    return shelves


def _sheets_across(start: float, size: float, pitch: float, seen: float) -> int:
    """How many sheets in a row it takes to print a stretch."""
    first = int((start + _EPS) // pitch)
    beyond = start + size - (first * pitch + seen)
    return 1 + max(0, ceil((beyond - _EPS) / pitch))


def _snapped(start: float, size: float, pitch: float, seen: float) -> float:
    """The start, or the next sheet's edge where that crosses fewer sheets."""
    later = ceil((start - _EPS) / pitch) * pitch
    fewer = _sheets_across(later, size, pitch, seen) < _sheets_across(start, size, pitch, seen)
    return later if fewer else start


def _moves(shelves: list[Shelf], way: _Way, extents: list[Extent]) -> tuple[Array, float]:
    """(panels, 2) moves and the depth of all shelves together."""
    moves = np.zeros((len(extents), 2))
    depth = foot = 0.0
    for shelf in shelves:
        above = max(extents[number].top for number, _ in shelf)
        height = above - min(extents[number].bottom for number, _ in shelf)
        top = depth
        if way.snap_down:
            top = _snapped(depth, height, way.paper.pitch[1], way.paper.print_height)
        for number, start in shelf:
            moves[number] = start - extents[number].left, -(top + above)
        foot = top + height
        depth = foot + SPACE
    return moves, foot

"""Finished pieces, measured: how long their edges are, and where along them their notches point.

Everything is read off the pieces as they are cut and sewn, nothing off the draft.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np

from workbench.pieces.polyline import Array, Index, Lines
from workbench.pieces.result import Layer, Notch, Piece, PieceEdge

Sides = Sequence[tuple[PieceEdge, Sequence[Notch]]]
"""Edges, and of each the notches that point at it."""


class Measured:
    """The stitch lines of pieces in one array; pieces of layers that are cut alike share theirs."""

    def __init__(self, pieces: Iterable[Piece]) -> None:
        known = {id(edge.stitch): edge.stitch for piece in pieces for edge in piece.edges}
        self._rows = {key: row for row, key in enumerate(known)}
        self._lines = Lines(list(known.values()))
        self._lengths: list[float] = self._lines.totals.tolist() if known else []

    def length(self, edge: PieceEdge) -> float:
        """Length in mm of the stitch line of an edge of one of the pieces."""
        return self._lengths[self._rows[id(edge.stitch)]]

    def notched(self, sides: Sides) -> list[list[float]]:
        """How far along each edge, as its ring runs, each of its notches points at it, mm."""
        marks = [(notch.at, notch.towards) for _, notches in sides for notch in notches]
        if not marks:
            return [[] for _ in sides]
        rows = [self._rows[id(edge.stitch)] for edge, _ in sides]
        owner = np.repeat(np.array(rows), [len(notches) for _, notches in sides])
        places = iter(self._feet(owner, np.array(marks)).tolist())
        return [[next(places) for _ in notches] for _, notches in sides]

    def _feet(self, owner: Index, marks: Array) -> Array:
        """(k,) of each mark (k, 2, 2), a point and a direction, on its own line: the nearest place ahead or
        behind; at the point that it misses by least where it points past the line."""
        lines, (at, towards) = self._lines, (marks[:, 0], marks[:, 1])
        counts = lines.counts[owner]
        begins = np.cumsum(counts) - counts
        mark = np.repeat(np.arange(len(owner)), counts)
        spot = np.arange(len(mark)) + np.repeat(lines.firsts[owner] - begins, counts)
        aside = _aside(lines.points[spot], at, towards, counts)
        found = np.flatnonzero((aside[1:] > 0) != (aside[:-1] > 0))
        found = found[mark[found] == mark[found + 1]]
        bit, own = spot[found], mark[found]
        part = aside[found] / (aside[found] - aside[found + 1])
        away = lines.points[bit] + part[:, None] * lines.steps[bit] - at[own]
        reach = np.abs(away[:, 0] * towards[own, 0] + away[:, 1] * towards[own, 1])
        place = np.full(len(owner), np.nan)
        # the last one written stays: the nearest
        order = np.argsort(-reach, kind="stable")
        place[own[order]] = (lines.along[bit] + part * lines.lengths[bit])[order]
        for missed in np.flatnonzero(np.isnan(place)).tolist():
            own_points = slice(begins[missed], begins[missed] + counts[missed])
            place[missed] = lines.along[spot[own_points][np.abs(aside[own_points]).argmin()]]
        found_at: Array = place - lines.starts[owner]
        return found_at


def measured_of(layers: Iterable[Layer]) -> Measured:
    """All pieces of some layers."""
    return Measured(piece for layer in layers for piece in layer.pieces)


def _aside(points: Array, at: Array, towards: Array, counts: Index) -> Array:
    """How far points lie to the left of the straight lines, ``counts`` of them to each line."""
    behind = towards[:, 1] * at[:, 0] - towards[:, 0] * at[:, 1]
    ahead, across, base = (np.repeat(own, counts) for own in (towards[:, 0], towards[:, 1], behind))
    found: Array = ahead * points[:, 1] - across * points[:, 0] + base
    return found

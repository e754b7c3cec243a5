"""The last look at the seams, measured on the finished pieces and not on the draft's own numbers."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import atan2, degrees, hypot

import numpy as np

from workbench.body import LEVEL_LABEL
from workbench.draft import Design, Draft, LineName, seam_name
from workbench.pieces.making import LAYERS, LayerName
from workbench.pieces.polyline import length_of
from workbench.pieces.result import AngleRow, Array, EdgeName, Layer, Notch, Piece, PieceEdge, WalkRow

TOLERANCE = 0.01
"""mm by which the two sides of a seam may differ."""
SHARP_TOLERANCE = 0.05
"""The same where the flare is sharp, which the draft says."""
SHARP_LEAN = 0.5
SMOOTH = 0.5
"""Degrees by which a smooth edge may miss 180 where a seam is closed."""
_WHOLE = "whole seam"
_AGAINST = "against the fashion cloth"
_FACED: dict[LayerName, LineName] = {"top_facing": "neckline", "hem_facing": "hem"}
_OFF = 1e3
"""A bit of a line that a notch points past is taken only where it points at none."""


@dataclass(frozen=True)
class _Edge:
    """A side of a finished piece, with its notches from hem to neckline."""

    piece: Piece
    edge: PieceEdge

    @property
    def upward(self) -> Array:
        return self.edge.stitch if self.edge.name == "right" else self.edge.stitch[::-1]

    @property
    def length(self) -> float:
        return length_of(self.edge.stitch)

    @property
    def known_by(self) -> tuple[int, int]:
        """What layers that are cut alike have in common: the edge and the notches themselves."""
        return id(self.edge), id(self.piece.notches)

    def stops(self) -> list[tuple[float, str, float]]:
        """Walk, name and place along the edge of every notch, measured on the piece."""
        own = [notch for notch in self.piece.notches if notch.edge == self.edge.name]
        if not own:
            return []
        places = _feet(self.upward, np.array([(notch.at, notch.towards) for notch in own])).tolist()
        return [(notch.walk, _name(notch), place) for notch, place in zip(own, places, strict=True)]


def _feet(line: Array, marks: Array) -> Array:
    """How far along a line (n, 2) each of the marks (k, 2, 2), a point and a direction, points at it, mm."""
    steps = np.diff(line, axis=0)
    lengths = np.hypot(steps[:, 0], steps[:, 1])
    at, towards = marks[:, 0, None], marks[:, 1, None]
    apart = line[:-1] - at
    base = towards[..., 0] * steps[:, 1] - towards[..., 1] * steps[:, 0]
    base[base == 0] = np.nan
    reach = (apart[..., 0] * steps[:, 1] - apart[..., 1] * steps[:, 0]) / base
    part = (apart[..., 0] * towards[..., 1] - apart[..., 1] * towards[..., 0]) / base
    missed = np.maximum(np.maximum(-part, part - 1), 0) * lengths
    bit = np.nanargmin(np.abs(reach) + _OFF * missed, axis=1)
    start = np.cumsum(lengths)[bit] - lengths[bit]
    found: Array = start + np.clip(part[np.arange(len(bit)), bit], 0, 1) * lengths[bit]
    return found


def _name(notch: Notch) -> str:
    return LEVEL_LABEL[notch.level].lower() if notch.level else "curve mark"


def tolerance_of(draft: Draft) -> float:
    """How far the two sides of a seam may differ on the pieces of this draft, mm."""
    return SHARP_TOLERANCE if float(draft.surface.edges.steepest.max()) > SHARP_LEAN else TOLERANCE


def check_walks(
    layers: Sequence[Layer],
    design: Design,
    tolerance: float = TOLERANCE,
    alike: Collection[LayerName] = LAYERS,
) -> tuple[WalkRow, ...]:
    """Each seam of each layer, whole and from notch to notch, then against the shell's.

    Sides that no piece has are not sewn and have no row. ``alike`` are the layers as wide as
    the shell: a facing that is a hair wider or narrower on purpose is not held to its neckline.
    """
    shell = next((layer for layer in layers if layer.name == "fashion"), None)
    outer = _sides(shell) if shell else {}
    rows: list[WalkRow] = []
    known: dict[tuple[int, ...], list[WalkRow]] = {}
    for layer in layers:
        sides = _sides(layer)
        for seam in sorted({seam for seam, _ in sides}):
            name = seam_name(seam, design)
            left, right = sides.get((seam, "right")), sides.get((seam, "left"))
            if left and right:
                key = left.known_by + right.known_by
                if key not in known:
                    known[key] = list(_seam_rows(layer, seam, name, left, right, tolerance))
                rows += [replace(row, layer=layer.name) for row in known[key]]
            if layer is not shell:
                rows += _against_shell(layer, seam, name, sides, outer, tolerance)
        if shell and layer.name in _FACED and layer.name in alike:
            rows += _faced_rows(layer, shell, _FACED[layer.name], tolerance)
    return tuple(rows)


def _sides(layer: Layer) -> dict[tuple[int, EdgeName], _Edge]:
    """The sides of a layer's pieces by their seam: its ``right`` edge lies left of the seam."""
    return {
        (edge.seam, edge.name): _Edge(piece, edge)
        for piece in layer.pieces
        for edge in piece.edges
        if edge.seam is not None and edge.kind != "fold"
    }


def _seam_rows(
    layer: Layer, seam: int, name: str, left: _Edge, right: _Edge, tolerance: float
) -> Iterator[WalkRow]:
    def row(part: str, one: float, other: float) -> WalkRow:
        return WalkRow(layer.name, seam, name, part, one, other, abs(one - other) <= tolerance)

    yield row(_WHOLE, left.length, right.length)
    ours, theirs = left.stops(), right.stops()
    if [stop[:2] for stop in ours] != [stop[:2] for stop in theirs]:
        yield WalkRow(layer.name, seam, name, "notches do not pair", len(ours), len(theirs), False)
        return
    if not ours:
        return
    low, high = _ends(left.piece)
    one, other = ([0.0, *(stop[2] for stop in stops)] for stops in (ours, theirs))
    words = [low, *(stop[1] for stop in ours), high]
    steps = zip(pairwise(words), pairwise([*one, left.length]), pairwise([*other, right.length]), strict=True)
    for (below, above), (a, b), (c, d) in steps:
        yield row(f"{below} to {above}", b - a, d - c)


def _ends(piece: Piece) -> tuple[str, str]:
    """What the lower and the upper end of a piece's sides are called."""
    free = {edge.name for edge in piece.edges if edge.kind == "free"}
    return "far edge" if "hem" in free else "hem", "far edge" if "neckline" in free else "neckline"


def _against_shell(
    layer: Layer,
    seam: int,
    name: str,
    sides: dict[tuple[int, EdgeName], _Edge],
    shell: dict[tuple[int, EdgeName], _Edge],
    tolerance: float,
) -> Iterator[WalkRow]:
    """The side of a seam that differs most from the shell's; a facing's is shorter and not compared."""
    names: tuple[EdgeName, EdgeName] = ("right", "left")
    pairs = [
        (sides[seam, side].length, shell[seam, side].length)
        for side in names
        if (seam, side) in sides
        and (seam, side) in shell
        and "far edge" not in _ends(sides[seam, side].piece)
    ]
    if pairs:
        own, outer = max(pairs, key=lambda pair: abs(pair[0] - pair[1]))
        yield WalkRow(layer.name, seam, name, _AGAINST, own, outer, abs(own - outer) <= tolerance)


def _faced_rows(layer: Layer, shell: Layer, line: LineName, tolerance: float) -> Iterator[WalkRow]:
    """Neckline or hem of each piece of a facing against that of the panels it is laid over."""
    panels = {piece.panel: length_of(_edge(piece, line).stitch) for piece in shell.pieces}
    for piece in layer.pieces:
        first, end = _edge(piece, "left").seam, _edge(piece, "right").seam
        if first is None or end is None or not all(panel in panels for panel in range(first, end)):
            continue
        own, outer = length_of(_edge(piece, line).stitch), sum(panels[panel] for panel in range(first, end))
        yield WalkRow(
            layer.name, first, f"{line}, {piece.name}", _AGAINST, own, outer, abs(own - outer) <= tolerance
        )


def _edge(piece: Piece, name: EdgeName) -> PieceEdge:
    return next(edge for edge in piece.edges if edge.name == name)


def check_angles(layer: Layer, draft: Draft) -> tuple[AngleRow, ...]:
    """What neckline and hem do at each closed seam, from the corners of the finished pieces."""
    sides = _sides(layer)
    return tuple(
        row
        for seam in draft.seams
        if (seam.index, "right") in sides and (seam.index, "left") in sides
        for row in _angles(
            sides[seam.index, "right"].piece,
            sides[seam.index, "left"].piece,
            seam.index,
            seam.name,
            {"hem": seam.hem_smooth, "neckline": seam.neckline_smooth},
        )
    )


def _angles(
    left: Piece, right: Piece, seam: int, name: str, wanted: dict[LineName, bool]
) -> Iterator[AngleRow]:
    for line, smooth in wanted.items():
        total = _corner(left, "right", line) + _corner(right, "left", line)
        yield AngleRow(seam, name, line, total, smooth, not smooth or abs(total - 180) <= SMOOTH)


def _corner(piece: Piece, side: EdgeName, line: LineName) -> float:
    """Degrees inside a piece at one end of a side."""
    edges = {edge.name: edge.stitch for edge in piece.edges}
    one, other = edges[side], edges[line]
    # as the ring runs, the right side ends at the neckline and the left one at the hem
    ends = (side == "right") == (line == "neckline")
    (ax, ay), (bx, by) = _direction(one[::-1] if ends else one), _direction(other if ends else other[::-1])
    return degrees(atan2(abs(ax * by - ay * bx), ax * bx + ay * by))


def _direction(line: Array) -> tuple[float, float]:
    """Where a line sets out to, from the parabola through its first three points."""
    (x0, y0), (x1, y1), (x2, y2) = line[:3].tolist()
    near, far = hypot(x1 - x0, y1 - y0), hypot(x2 - x0, y2 - y0)
    ratio = far / near
    return (x1 - x0) * ratio - (x2 - x0) / ratio, (y1 - y0) * ratio - (y2 - y0) / ratio

"""The last look at the seams, measured on the finished pieces and not on the draft's own numbers.

Figures are own choice, how true a piece has to be, unless said.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import pairwise
from math import atan2, degrees, hypot

from workbench.body import LEVEL_LABEL
from workbench.draft import Design, Draft, LineName, seam_name
from workbench.frozen import dataclass
from workbench.pieces.making import LAYERS, EdgeName, LayerName
from workbench.pieces.measured import Measured, measured_of
from workbench.pieces.polyline import Array
from workbench.pieces.result import AngleRow, Layer, Notch, Piece, PieceEdge, WalkRow

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
_FAR = "far edge"


@dataclass(frozen=True)
class _Edge:
    """A side of a finished piece."""

    piece: Piece
    edge: PieceEdge
    ends: tuple[str, str]
    """What its lower and its upper end are called."""

    @property
    def known_by(self) -> tuple[int, int]:
        """What layers that are cut alike have in common: the edge and the notches themselves."""
        return id(self.edge), id(self.piece.notches)


_Sides = dict[tuple[int, EdgeName], _Edge]
_Stop = tuple[float, str, float]
"""Walk, name and place along the edge, from the hem, of one notch."""
_Part = tuple[str, float, float, bool]
"""What a row says, whichever layer it is of."""


@dataclass(frozen=True)
class _Look:
    """Everything that is measured once for all layers."""

    measured: Measured
    stops: dict[tuple[int, int], list[_Stop]]
    """By what a side is known by."""
    tolerance: float

    def length(self, side: _Edge) -> float:
        return self.measured.length(side.edge)

    def part(self, name: str, one: float, other: float) -> _Part:
        return name, one, other, abs(one - other) <= self.tolerance


def _look(measured: Measured, sides: Sequence[_Sides], tolerance: float) -> _Look:
    known = {side.known_by: side for own in sides for side in own.values()}
    notches = [
        [notch for notch in side.piece.notches if notch.edge == side.edge.name] for side in known.values()
    ]
    places = measured.notched([(side.edge, own) for side, own in zip(known.values(), notches, strict=True)])
    stops = {
        key: _stops(own, place, None if side.edge.name == "right" else measured.length(side.edge))
        for (key, side), own, place in zip(known.items(), notches, places, strict=True)
    }
    return _Look(measured, stops, tolerance)


def _stops(notches: list[Notch], places: list[float], downwards: float | None) -> list[_Stop]:
    """``downwards`` is the length of an edge that the ring runs down."""
    return [
        (notch.walk, _name(notch), place if downwards is None else downwards - place)
        for notch, place in zip(notches, places, strict=True)
    ]


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
    measured: Measured | None = None,
) -> tuple[WalkRow, ...]:
    """Each seam of each layer, whole and from notch to notch, then against the shell's.

    Sides that no piece has are not sewn and have no row. ``alike`` are the layers as wide as
    the shell: a facing that is a hair wider or narrower on purpose is not held to its neckline.
    ``measured`` are the edges, where they have been measured already.
    """
    every = [_sides(layer) for layer in layers]
    look, known = _look(measured or measured_of(layers), every, tolerance), {}
    shell = next((layer for layer in layers if layer.name == "fashion"), None)
    outer = every[layers.index(shell)] if shell else {}
    rows: list[WalkRow] = []
    for layer, sides in zip(layers, every, strict=True):
        for seam in sorted({seam for seam, _ in sides}):
            name = seam_name(seam, design)
            left, right = sides.get((seam, "right")), sides.get((seam, "left"))
            if left and right:
                key = left.known_by + right.known_by
                if key not in known:
                    known[key] = list(_seam_parts(left, right, look))
                rows += [WalkRow(layer.name, seam, name, *part) for part in known[key]]
            if layer is not shell:
                rows += [
                    WalkRow(layer.name, seam, name, *part) for part in _against(seam, sides, outer, look)
                ]
        if shell and layer.name in _FACED and layer.name in alike:
            rows += _faced_rows(layer, shell, _FACED[layer.name], look)
    return tuple(rows)


def _sides(layer: Layer) -> _Sides:
    """The sides of a layer's pieces by their seam: its ``right`` edge lies left of the seam."""
    return {
        (edge.seam, edge.name): _Edge(piece, edge, ends)
        for piece, ends in ((piece, _ends(piece)) for piece in layer.pieces)
        for edge in piece.edges
        if edge.seam is not None and edge.kind != "fold"
    }


def _seam_parts(left: _Edge, right: _Edge, look: _Look) -> Iterator[_Part]:
    one_length, other_length = look.length(left), look.length(right)
    yield look.part(_WHOLE, one_length, other_length)
    ours, theirs = look.stops[left.known_by], look.stops[right.known_by]
    if [stop[:2] for stop in ours] != [stop[:2] for stop in theirs]:
        yield "notches do not pair", len(ours), len(theirs), False
        return
    if not ours:
        return
    low, high = left.ends
    one, other = ([0.0, *(stop[2] for stop in stops)] for stops in (ours, theirs))
    words = [low, *(stop[1] for stop in ours), high]
    steps = zip(pairwise(words), pairwise([*one, one_length]), pairwise([*other, other_length]), strict=True)
    for (below, above), (a, b), (c, d) in steps:
        yield look.part(f"{below} to {above}", b - a, d - c)


def _ends(piece: Piece) -> tuple[str, str]:
    """What the lower and the upper end of a piece's sides are called."""
    low, high = "hem", "neckline"
    for edge in piece.edges:
        if edge.kind == "free":
            low, high = _FAR if edge.name == low else low, _FAR if edge.name == high else high
    return low, high


def _against(seam: int, sides: _Sides, shell: _Sides, look: _Look) -> Iterator[_Part]:
    """The side of a seam that differs most from the shell's; a facing's is shorter and not compared."""
    names: tuple[EdgeName, EdgeName] = ("right", "left")
    pairs = [
        (look.length(sides[seam, side]), look.length(shell[seam, side]))
        for side in names
        if (seam, side) in sides and (seam, side) in shell and _FAR not in sides[seam, side].ends
    ]
    if pairs:
        yield look.part(_AGAINST, *max(pairs, key=lambda pair: abs(pair[0] - pair[1])))


def _faced_rows(layer: Layer, shell: Layer, line: LineName, look: _Look) -> Iterator[WalkRow]:
    """Neckline or hem of each piece of a facing against that of the panels it is laid over."""
    panels = {piece.panel: look.measured.length(_edge(piece, line)) for piece in shell.pieces}
    for piece in layer.pieces:
        first, end = _edge(piece, "left").seam, _edge(piece, "right").seam
        if first is None or end is None or not all(panel in panels for panel in range(first, end)):
            continue
        own, outer = (
            look.measured.length(_edge(piece, line)),
            sum(panels[panel] for panel in range(first, end)),
        )
        yield WalkRow(layer.name, first, f"{line}, {piece.name}", *look.part(_AGAINST, own, outer))


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

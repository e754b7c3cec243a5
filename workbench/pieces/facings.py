"""Facings of neckline and hem: the tops or feet of the panels, laid edge to edge with their seams closed."""

from __future__ import annotations

import numpy as np

from workbench.draft import Finding, Panel
from workbench.pieces.bands import Band, Line, Part, band_of, joined_parts, levelled, outline_in
from workbench.pieces.cutline import CutShape, Widths
from workbench.pieces.kinds import Kinds, choice_of, panels_in
from workbench.pieces.making import LayerChoice
from workbench.pieces.marks import fold_mark, grain_inside
from workbench.pieces.notches import Side, Stop, count_at, notches_on
from workbench.pieces.outline import Outline, outline_of
from workbench.pieces.panel_pieces import Bench, edges_of
from workbench.pieces.result import Notch, Piece

_FROM_END = 1.0
"""mm of a seam at its ends that are not notched."""


def facing_pieces(bench: Bench, line: Line) -> tuple[Piece, ...]:
    """The pieces of one facing; none, and a finding, where it is deeper than a panel is high."""
    choice = choice_of(bench.making, "top_facing" if line == "neckline" else "hem_facing")
    depth = bench.making.facing_depth_mm
    if not 0 < depth < float("inf"):
        bench.findings.append(_no_depth(line))
        return ()
    parts = [_part(bench, choice, panel, line) for panel in panels_in(choice, bench.draft)]
    bands = levelled(
        [band for band in (band_of(own, depth, line) for own in joined_parts(parts, depth)) if band]
    )
    outlines = [outline_in(band, line) for band in bands]
    if not bands or not all(outlines) or sum(len(band.parts) for band in bands) < len(parts):
        bench.findings.append(_too_deep(line, depth))
        return ()
    return tuple(
        _piece(bench, choice, band, outline, line, f" {number}" if len(bands) > 1 else "")
        for number, (band, outline) in enumerate(zip(bands, outlines, strict=True), 1)
        if outline
    )


def _part(bench: Bench, choice: LayerChoice, panel: Panel, line: Line) -> Part:
    own = outline_of(panel, *bench.turns(panel.index, choice.turn_mm))
    if line == "neckline":
        return Part(panel.index, own.neckline, own.left[::-1], own.right[::-1])
    return Part(panel.index, own.hem, own.left, own.right)


def _piece(bench: Bench, choice: LayerChoice, band: Band, outline: Outline, line: Line, number: str) -> Piece:
    first, last = band.parts[0].panel, band.parts[-1].panel
    kinds = _kinds(bench, first, last, line)
    folded = "fold" in kinds
    name = f"{'Top' if line == 'neckline' else 'Hem'} facing{number}"
    shape = bench.cut([outline], [_widths(bench, choice, first, last, kinds)], [name])[0]
    return Piece(
        key=f"{choice.layer}/{name}",
        name=name,
        layer=choice.layer,
        count=1 if folded else 2,
        mirrored=not folded,
        on_fold=folded,
        panel=None,
        stitch=shape.outline.ring,
        cut=shape.ring,
        edges=edges_of(shape, kinds, first, last + 1),
        notches=(*_side_notches(bench, shape, band, line), *_seam_notches(bench, shape, band, line)),
        grain=grain_inside(shape.outline),
        marks=(fold_mark(shape.outline),) if folded else (),
    )


def _kinds(bench: Bench, first: int, last: int, line: Line) -> Kinds:
    left, right = bench.edging.side(first), bench.edging.side(last + 1)
    return ("free", right, "neckline", left) if line == "neckline" else ("hem", right, "free", left)


def _widths(bench: Bench, choice: LayerChoice, first: int, last: int, kinds: Kinds) -> Widths:
    def width(place: int, panel: int) -> float:
        return bench.edging.width(
            choice.layer, panel, ("hem", "right", "neckline", "left")[place], kinds[place]
        )

    return width(0, first), width(1, last), width(2, first), width(3, first)


def _side_notches(bench: Bench, shape: CutShape, band: Band, line: Line) -> tuple[Notch, ...]:
    """Levels on the two ends of the piece, where its seams are sewn."""
    first, last = band.parts[0].panel, band.parts[-1].panel + 1
    left = _stops(bench, first, band.left_depth, line) if bench.edging.side(first) != "fold" else (0.0, ())
    right = _stops(bench, last, band.right_depth, line)
    sides = [Side(shape, "left", first, *left), Side(shape, "right", last, *right)]
    one, other = notches_on(sides, bench.front)
    return one + other


def _stops(bench: Bench, seam: int, depth: float, line: Line) -> tuple[float, tuple[Stop, ...]]:
    """The walk at which a facing's side begins, and the stops of its seam that lie on it."""
    if line == "neckline":
        high = bench.draft.neckline.seam_walks[seam]
        low = high - depth
    else:
        low = bench.draft.hem.seam_walks[seam]
        high = low + depth
    return low, tuple(stop for stop in bench.stops[seam] if low + _FROM_END < stop.walk < high - _FROM_END)


def _seam_notches(bench: Bench, shape: CutShape, band: Band, line: Line) -> tuple[Notch, ...]:
    """Where the facing meets the closed seams of the panels it was joined from."""
    upper = line == "neckline"
    width = shape.widths[2 if upper else 0]
    walks = bench.draft.neckline.seam_walks if upper else bench.draft.hem.seam_walks
    found, place = [], 0
    for part in band.parts[:-1]:
        place += len(part.line) - 1
        seam = part.panel + 1
        ahead = band.outer[place + 1] - band.outer[place - 1]
        out = np.array([-ahead[1], ahead[0]] if upper else [ahead[1], -ahead[0]]) / np.hypot(*ahead)
        (x, y), (dx, dy) = (band.outer[place] + width * out).tolist(), (-out).tolist()
        found.append(Notch((x, y), (dx, dy), count_at(seam, bench.front), line, walks[seam], seam, "seam"))
    return tuple(found)


def _too_deep(line: Line, depth: float) -> Finding:
    return Finding(
        "attend",
        "facing_too_deep",
        "A facing {depth} deep does not fit at the {line}; it is left out.",
        {"depth": depth},
        {"line": line},
        remedy="Make the facing less deep, or leave out the panels that are too low for it.",
    )


def _no_depth(line: Line) -> Finding:
    return Finding(
        "attend",
        "facing_no_depth",
        "The facing of the {line} has no depth; it is left out.",
        words={"line": line},
        remedy="Give the facings a depth.",
    )

"""Facings of neckline and hem: the tops or feet of the panels, laid edge to edge with their seams closed."""

from __future__ import annotations

from functools import partial
from math import hypot

import numpy as np

from workbench.draft import Finding, Panel
from workbench.frozen import dataclass
from workbench.pieces.bands import Band, Line, Part, bands_of, joined_parts, outline_in
from workbench.pieces.bench import Bench, Blank
from workbench.pieces.cutline import CutShape, Widths
from workbench.pieces.kinds import Kinds, choice_of, panels_in
from workbench.pieces.making import LayerChoice
from workbench.pieces.marks import Grain, fold_mark, grains_inside
from workbench.pieces.notches import Side, Stop, count_at
from workbench.pieces.outline import IN_RING, Outline, outline_of
from workbench.pieces.panel_pieces import edges_of
from workbench.pieces.result import Notch, Piece

_FROM_END = 1.0
"""mm of a seam at its ends that are not notched (own choice)."""


def facing_blanks(bench: Bench, line: Line) -> tuple[Blank, ...]:
    """The blanks of one facing; none, and a finding, where it is deeper than a panel is high."""
    facing = _Facing(
        bench, choice_of(bench.making, "top_facing" if line == "neckline" else "hem_facing"), line
    )
    depth = bench.making.facing_depth_mm
    if not 0 < depth < float("inf"):
        bench.findings.append(_no_depth(line))
        return ()
    parts = [facing.part(panel) for panel in panels_in(facing.choice, bench.draft)]
    if not parts:
        return ()
    bands = bands_of(joined_parts(parts, depth), depth, line) or []
    outlines = [outline for outline in (outline_in(band, line) for band in bands) if outline]
    if not bands or len(outlines) < len(bands):
        bench.findings.append(_too_deep(line, depth))
        return ()
    return facing.blanks(bands, outlines)


@dataclass(frozen=True)
class _Facing:
    """The facing of one edge."""

    bench: Bench
    choice: LayerChoice
    line: Line

    def part(self, panel: Panel) -> Part:
        """What a panel gives to it."""
        own = outline_of(panel, *self.bench.edging.turns(panel.index, self.choice.turn_mm))
        if self.line == "neckline":
            return Part(panel.index, own.neckline, own.left[::-1], own.right[::-1])
        return Part(panel.index, own.hem, own.left, own.right)

    def blanks(self, bands: list[Band], outlines: list[Outline]) -> tuple[Blank, ...]:
        """The blanks, numbered from the centre front where there are several."""
        name = "Top facing" if self.line == "neckline" else "Hem facing"
        names = [f"{name} {number + 1}" for number in range(len(bands))] if len(bands) > 1 else [name]
        return tuple(map(self._blank, names, bands, outlines, grains_inside(outlines)))

    def _blank(self, name: str, band: Band, outline: Outline, grain: Grain) -> Blank:
        finish = partial(self._piece, name, band, grain)
        return Blank(outline, self._widths(band), name, self._sides(band), finish)

    def _piece(
        self, name: str, band: Band, grain: Grain, shape: CutShape, notches: tuple[Notch, ...]
    ) -> Piece:
        kinds = self._kinds(band)
        folded = "fold" in kinds
        return Piece(
            key=f"{self.choice.layer}/{name}",
            name=name,
            layer=self.choice.layer,
            count=1 if folded else 2,
            mirrored=not folded,
            on_fold=folded,
            panel=None,
            stitch=shape.outline.ring,
            cut=shape.ring,
            edges=edges_of(shape, kinds, *band.seams),
            notches=(*notches, *self._seam_notches(shape, band)),
            grain=grain,
            marks=(fold_mark(shape.outline),) if folded else (),
        )

    def _kinds(self, band: Band) -> Kinds:
        left, right = map(self.bench.edging.side, band.seams)
        return ("free", right, "neckline", left) if self.line == "neckline" else ("hem", right, "free", left)

    def _widths(self, band: Band) -> Widths:
        """The neckline's or hem's is that of its first panel."""
        first, last = band.parts[0].panel, band.parts[-1].panel
        hem, right, neckline, left = (
            self.bench.edging.width(self.choice.layer, panel, name, kind)
            for panel, name, kind in zip((first, last, first, first), IN_RING, self._kinds(band), strict=True)
        )
        return hem, right, neckline, left

    def _sides(self, band: Band) -> tuple[Side, Side]:
        """The two ends of the piece, where its seams are sewn, with the levels that cross them."""
        (first, last), low_left, low_right = band.seams, *self._lows(band)
        left = (
            () if self.bench.edging.side(first) == "fold" else self._stops(first, low_left, band.left_depth)
        )
        right = self._stops(last, low_right, band.right_depth)
        return Side("left", first, low_left, left), Side("right", last, low_right, right)

    def _lows(self, band: Band) -> tuple[float, float]:
        """Walks at which the two ends of the piece begin."""
        (first, last), draft = band.seams, self.bench.draft
        if self.line == "hem":
            return draft.hem.seam_walks[first], draft.hem.seam_walks[last]
        high = draft.neckline.seam_walks
        return high[first] - band.left_depth, high[last] - band.right_depth

    def _stops(self, seam: int, low: float, depth: float) -> tuple[Stop, ...]:
        """The stops of a seam that lie on the end of a facing."""
        return tuple(
            stop for stop in self.bench.stops[seam] if _FROM_END < stop.walk - low < depth - _FROM_END
        )

    def _seam_notches(self, shape: CutShape, band: Band) -> tuple[Notch, ...]:
        """Where the facing meets the closed seams of the panels it was joined from."""
        width = shape.widths[IN_RING.index(self.line)]
        walks = self.bench.draft.line(self.line).seam_walks
        found, place = [], 0
        for part in band.parts[:-1]:
            place += len(part.line) - 1
            seam = part.panel + 1
            dx, dy = (band.outer[place + 1] - band.outer[place - 1]).tolist()
            inwards = np.array([dy, -dx] if self.line == "neckline" else [-dy, dx]) / hypot(dx, dy)
            x, y = (band.outer[place] - width * inwards).tolist()
            ix, iy = inwards.tolist()
            count = count_at(seam, self.bench.front)
            found.append(Notch((x, y), (ix, iy), count, self.line, walks[seam], seam, "seam"))
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

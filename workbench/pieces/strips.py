"""What is cut beside the panels: the strip along the centre back, the modesty panel, the waist tape."""

from __future__ import annotations

import numpy as np
import shapely

from workbench.frozen import dataclass
from workbench.pieces.bands import run_on
from workbench.pieces.bench import Bench, Blank
from workbench.pieces.bone_lines import BUSK_HALF_MM, insets
from workbench.pieces.crossing import first_crossings
from workbench.pieces.cutline import CutShape
from workbench.pieces.kinds import Kind, Kinds
from workbench.pieces.making import LayerName
from workbench.pieces.marks import Grain, grain_of
from workbench.pieces.notches import Side
from workbench.pieces.offset import set_out
from workbench.pieces.outline import Outline, distinct
from workbench.pieces.panel_pieces import edges_of
from workbench.pieces.polyline import Array
from workbench.pieces.result import MarkLine, Notch, Piece

LOOP_STRIP = 31.75
"""Width of the strip that holds the loops: 1 1/4 in (common practice, no source)."""
EYELET_FACING = 50.8
"""Width of the facing behind eyelets and their two bones: 2 in (common practice, no source)."""
PAST_GAP = 50.8
"""A modesty panel is wider than the widest gap by 2 in (common practice, no source)."""
PAST_LENGTH = 25.4
"""And longer than the centre back by an inch (common practice, no source)."""
TURNED = 12.7
"""Each end of the waist tape that is turned under: 1/2 in (common practice, no source)."""
_UPRIGHT_ENDS, _TAPE_ENDS = 0.15, 0.1
"""Parts of a strip, or of the tape, that its grain line stops short of either end (own choice)."""
_NARROWER, _TRIES = 0.8, 12
"""Parts a strip is made narrower by, and how often, until it lies flat; own choice."""


def strip_blanks(bench: Bench) -> tuple[Blank, ...]:
    """The strip along either centre back, cut from the last panel so that it follows neckline and hem."""
    if bench.making.opening.closing == "side_zip":
        return ()
    eyelets = bench.making.opening.closing == "eyelets"
    outline = _along_centre_back(bench, EYELET_FACING if eyelets else LOOP_STRIP)
    seam = len(bench.draft.panels)
    kinds: Kinds = ("hem", "centre_back", "neckline", "free")
    hem, right, neckline, _ = bench.edging.widths("strip", seam - 1)
    name = "Eyelet facing" if eyelets else "Loop strip"
    side = Side("right", seam, bench.draft.hem.seam_walks[seam], bench.stops[seam])

    def finish(shape: CutShape, notches: tuple[Notch, ...]) -> Piece:
        return Piece(
            key=f"strip/{name}",
            name=name,
            layer="strip",
            count=2,
            mirrored=True,
            on_fold=False,
            panel=None,
            stitch=outline.ring,
            cut=shape.ring,
            edges=edges_of(shape, kinds, None, seam),
            notches=notches,
            grain=grain_of(outline),
            marks=(),
        )

    return (Blank(outline, (hem, right, neckline, 0.0), name, (side,), finish),)


def _along_centre_back(bench: Bench, width: float) -> Outline:
    """The last panel as far in as the strip is wide, or as the panel has room."""
    panel = bench.draft.panels[-1]
    room = min((panel.widths[name] for name in panel.level_lines), default=width)
    for _ in range(_TRIES):
        if width > room:
            # the other side of the panel is nearer than that at one level already
            width *= _NARROWER
            continue
        inner = run_on(
            set_out([panel.right[::-1]], [width], bench.making.corner_limit)[0].points[::-1], 4 * width
        )
        low, high = first_crossings([(inner, panel.hem), (inner, panel.neckline)])
        if low and high and low.first < high.first and not _meet(inner, panel.left):
            return Outline(
                distinct(_from(panel.hem, low.point, low.second)),
                panel.right,
                distinct(_from(panel.neckline, high.point, high.second)),
                distinct(
                    np.concatenate((low.point[None], _amid(inner, low.first, high.first), high.point[None]))
                ),
            )
        width *= _NARROWER
    return Outline(panel.hem, panel.right, panel.neckline, panel.left)


def _meet(one: Array, other: Array) -> bool:
    return bool(shapely.intersects(shapely.linestrings(one), shapely.linestrings(other)))


def _from(line: Array, start: Array, place: float) -> Array:
    """The rest of a line after a place counted in bits."""
    return np.concatenate((start[None], line[int(np.floor(place)) + 1 :]))


def _amid(line: Array, first: float, last: float) -> Array:
    return line[int(np.floor(first)) + 1 : int(np.ceil(last))]


def modesty_blanks(bench: Bench) -> tuple[Blank, ...]:
    """A rectangle behind the gap of the lacing: a face and a back."""
    if bench.making.opening.closing == "side_zip":
        return ()
    low, high = bench.draft.hem.seam_walks[-1], bench.draft.neckline.seam_walks[-1]
    half = 0.5 * (bench.outcome.design.opening_mm + PAST_GAP)
    width = bench.edging.width("modesty", -1, "left", "seam")
    outline = _rectangle(-half, half, low - 0.5 * PAST_LENGTH, high + 0.5 * PAST_LENGTH)
    waist = MarkLine("waist", np.array([[-half, 0.0], [half, 0.0]]), "Waist")
    plain = _Plain(
        "modesty", "Modesty panel", 2, "seam", _upright(outline), (waist,) if low < 0 < high else ()
    )
    return (Blank(outline, (width, width, width, width), plain.name, (), plain.finish),)


def tape_blanks(bench: Bench) -> tuple[Blank, ...]:
    """A length of tape from bone to bone: in one across a whole front, else one for each half."""
    draft = bench.draft
    if not all(
        low < 0 < high for low, high in zip(draft.hem.seam_walks, draft.neckline.seam_walks, strict=True)
    ):
        return ()
    half = sum(panel.widths["waist"] for panel in draft.panels)
    half -= 0.0 if bench.making.opening.closing == "side_zip" else insets(bench.making)[1]
    busk = bench.making.front == "busk"
    long = (half - BUSK_HALF_MM if busk else 2 * half) + 2 * TURNED
    wide = bench.making.tape_width_mm
    if not (0 < wide < float("inf") and long > 0):
        return ()
    outline = _rectangle(0.0, long, -0.5 * wide, 0.5 * wide)
    grain = (_TAPE_ENDS * long, 0.0), ((1 - _TAPE_ENDS) * long, 0.0)
    plain = _Plain("waist_tape", "Waist tape", 2 if busk else 1, "free", grain, ())
    return (Blank(outline, (0.0, 0.0, 0.0, 0.0), plain.name, (), plain.finish),)


def _rectangle(left: float, right: float, low: float, high: float) -> Outline:
    across, up = np.linspace(left, right, 9), np.linspace(low, high, 9)

    def level(y: float) -> Array:
        return np.stack((across, np.full(9, y)), axis=1)

    def upright(x: float) -> Array:
        return np.stack((np.full(9, x), up), axis=1)

    return Outline(level(low), upright(right), level(high), upright(left))


def _upright(outline: Outline) -> Grain:
    """Straight grain up the middle of a rectangle."""
    (left, low), (right, high) = outline.left[0].tolist(), outline.right[-1].tolist()
    x, inset = 0.5 * (left + right), _UPRIGHT_ENDS * (high - low)
    return (x, low + inset), (x, high - inset)


@dataclass(frozen=True)
class _Plain:
    """A piece that is the same turned over, all its edges of one kind."""

    layer: LayerName
    name: str
    count: int
    kind: Kind
    grain: Grain
    marks: tuple[MarkLine, ...]

    def finish(self, shape: CutShape, _notches: tuple[Notch, ...]) -> Piece:
        """The piece, once it is cut."""
        return Piece(
            key=f"{self.layer}/{self.name}",
            name=self.name,
            layer=self.layer,
            count=self.count,
            mirrored=False,
            on_fold=False,
            panel=None,
            stitch=shape.outline.ring,
            cut=shape.ring,
            edges=edges_of(shape, (self.kind, self.kind, self.kind, self.kind), None, None),
            notches=(),
            grain=self.grain,
            marks=self.marks,
        )

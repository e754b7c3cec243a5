"""The pieces of a layer that has one for each panel."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from workbench.draft import Panel
from workbench.frozen import dataclass
from workbench.pieces.bench import Bench, Blank, Ground
from workbench.pieces.cutline import CutShape, Widths
from workbench.pieces.kinds import Kinds, choice_of, panels_in
from workbench.pieces.making import EdgeName, LayerChoice, LayerName, Making
from workbench.pieces.marks import bone_marks, tape_marks
from workbench.pieces.notches import Side
from workbench.pieces.outline import IN_RING, widened
from workbench.pieces.result import MarkLine, Notch, Piece, PieceEdge


def panel_blanks(bench: Bench, choice: LayerChoice) -> list[Blank]:
    """The blanks of a layer, in the order of its panels; layers that are cut alike share them."""
    found = []
    for panel in panels_in(choice, bench.draft):
        widths = bench.edging.widths(choice.layer, panel.index)
        key = panel.index, choice.turn_mm, widths
        if key not in bench.blanks:
            bench.blanks[key] = _blank(bench, choice, panel, widths)
        found.append(bench.blanks[key])
    return found


def panel_pieces(
    bench: Bench, choice: LayerChoice, blanks: Sequence[Blank], pieces: Mapping[Blank, Piece]
) -> tuple[Piece, ...]:
    """The finished pieces of a layer, with what it carries drawn on them."""
    more = _carried(bench, choice) if carrier(bench.making) == choice.layer else {}
    return tuple(_named(pieces[blank], choice.layer, more.get(blank.panel, ())) for blank in blanks)


def _blank(bench: Bench, choice: LayerChoice, panel: Panel, widths: Widths) -> Blank:
    ground = bench.ground(panel, choice.turn_mm)
    centre = bench.lows(0)[0], bench.draft.neckline.seam_walks[0]
    piece = _PanelPiece(panel, choice.layer, ground, bench.edging.panel(panel.index), centre)
    return Blank(ground.outline, widths, panel.name, _sides(bench, panel.index), piece.finish, panel.index)


def _sides(bench: Bench, panel: int) -> tuple[Side, ...]:
    """Both sides with their stops; a fold cannot be notched."""
    low_left, low_right = bench.lows(panel)
    right = Side("right", panel + 1, low_right, bench.stops[panel + 1])
    if bench.edging.side(panel) == "fold":
        return (right,)
    return Side("left", panel, low_left, bench.stops[panel]), right


@dataclass(frozen=True)
class _PanelPiece:
    """One panel that becomes a piece."""

    panel: Panel
    layer: LayerName
    ground: Ground
    kinds: Kinds
    centre: tuple[float, float]
    """Walks of hem and neckline at the centre front."""

    def finish(self, shape: CutShape, notches: tuple[Notch, ...]) -> Piece:
        """The piece, once it is cut."""
        number, name = self.panel.index, self.panel.name
        folded = "fold" in self.kinds
        if folded:
            notches += centre_notches(shape, *self.centre)
        return Piece(
            key=f"{self.layer}/{name}",
            name=name,
            layer=self.layer,
            count=1 if folded else 2,
            mirrored=not folded,
            on_fold=folded,
            panel=number,
            stitch=shape.outline.ring,
            cut=shape.ring,
            edges=edges_of(shape, self.kinds, number, number + 1),
            notches=notches,
            grain=self.ground.grain,
            marks=self.ground.marks,
        )


def _carried(bench: Bench, choice: LayerChoice) -> dict[int | None, tuple[MarkLine, ...]]:
    """The lines of the layer that carries the bones and the tape, by the panel's number."""
    taped = choice_of(bench.making, "waist_tape").made
    tape = tape_marks(bench.draft, bench.making.tape_width_mm) if taped else {}
    found: dict[int | None, tuple[MarkLine, ...]] = {}
    for panel in panels_in(choice, bench.draft):
        turns = bench.edging.turns(panel.index, choice.turn_mm)
        taped_here = (
            replace(mark, points=widened(mark.points, *turns)) if any(turns) else mark
            for mark in tape.get(panel.index, ())
        )
        found[panel.index] = (*taped_here, *bone_marks(bench.bones, panel, *turns))
    return found


def _named(piece: Piece, layer: LayerName, more: tuple[MarkLine, ...]) -> Piece:
    if piece.layer == layer and not more:
        return piece
    return replace(piece, key=f"{layer}/{piece.name}", layer=layer, marks=piece.marks + more)


def carrier(making: Making) -> LayerName:
    """The layer the bone channels and the waist tape are sewn to: the strength layer, where there is one."""
    return "strength" if choice_of(making, "strength").made else "fashion"


def edges_of(shape: CutShape, kinds: Kinds, left: int | None, right: int | None) -> tuple[PieceEdge, ...]:
    """The edges of a piece in the order of the ring; ``left`` and ``right`` are the seams of its sides."""
    seams = (None, right, None, left)
    parts = zip(IN_RING, kinds, shape.outline.in_ring, shape.widths, seams, strict=True)
    return tuple(PieceEdge(name, kind, line, width, seam) for name, kind, line, width, seam in parts)


def centre_notches(shape: CutShape, hem: float, neckline: float) -> tuple[Notch, ...]:
    """The middle of neckline and hem where a piece is cut on the fold and has allowance to notch."""
    ends: tuple[tuple[EdgeName, int, float, float], ...] = (
        ("hem", 3, hem, 1.0),
        ("neckline", 2, neckline, -1.0),
    )
    return tuple(
        Notch(shape.corners[corner].points[0], (0.0, inwards), 1, edge, walk, 0, "centre")
        for edge, corner, walk, inwards in ends
        if shape.widths[IN_RING.index(edge)] > 0
    )

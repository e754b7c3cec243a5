"""The pieces of a layer that has one for each panel."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from workbench.draft import Draft, Finding, Outcome, Panel
from workbench.pieces.cutline import CutShape, Widths, cut_shapes
from workbench.pieces.kinds import Edging, Kinds, choice_of, panels_in
from workbench.pieces.making import LayerChoice, LayerName, Making
from workbench.pieces.marks import bone_marks, fold_mark, grain_of, level_marks, tape_marks
from workbench.pieces.notches import Side, Stops, notches_on, stops_of
from workbench.pieces.outline import IN_RING, Outline, outline_of
from workbench.pieces.result import Bone, EdgeName, MarkLine, Notch, Piece, PieceEdge
from workbench.pieces.verify import look_over

Turns = tuple[float, float]
"""How far the left and the right side are set out for the turn of cloth, mm."""
_Shape = tuple[tuple[int, ...], float, tuple[Widths, ...]]


@dataclass
class Bench:
    """One draft and one way of making, with what its layers have in common worked out once."""

    outcome: Outcome
    draft: Draft
    making: Making
    bones: tuple[Bone, ...] = ()
    checked: bool = False
    """Whether every cut line is looked over, and mended where it crosses itself."""
    edging: Edging = field(init=False)
    stops: tuple[Stops, ...] = field(init=False)
    findings: list[Finding] = field(init=False, default_factory=list)
    """What was found while the pieces were made."""
    _cut: dict[_Shape, list[CutShape]] = field(init=False, default_factory=dict)
    _pieces: dict[_Shape, tuple[Piece, ...]] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        self.edging = Edging(self.outcome.design, self.making)
        self.stops = stops_of(self.outcome, self.draft, self.making)

    @property
    def front(self) -> int:
        """The number of the side seam."""
        return self.outcome.design.front.panel_count

    def turns(self, panel: int, turn: float) -> Turns:
        """A hair at every joining seam; centre front and centre back keep their place."""
        left, right = self.edging.side(panel), self.edging.side(panel + 1)
        joined = ("seam", "side")
        return turn if left in joined else 0.0, turn if right in joined else 0.0

    def lows(self, panel: int) -> tuple[float, float]:
        """Walks at which the left and the right side of a panel begin."""
        walks = self.draft.hem.seam_walks
        return walks[panel], walks[panel + 1]

    def shapes(self, choice: LayerChoice) -> list[CutShape]:
        """The cut panels of a layer, in the order of its panels; layers that are cut alike share them."""
        key, panels = self._key(choice)
        if key not in self._cut:
            outlines = [outline_of(panel, *self.turns(panel.index, choice.turn_mm)) for panel in panels]
            self._cut[key] = self.cut(outlines, key[2], [panel.name for panel in panels], panels)
        return self._cut[key]

    def cut(
        self,
        outlines: Sequence[Outline],
        widths: Sequence[Widths],
        names: Sequence[str],
        panels: Sequence[Panel] = (),
    ) -> list[CutShape]:
        """The cut line of each piece; with a finding where one does not come out, if the bench checks."""
        shapes = cut_shapes(outlines, widths, self.making.corner_limit)
        if not self.checked:
            return shapes
        looked_over, findings = look_over(shapes, names, [panel.index for panel in panels])
        self.findings += [finding for finding in findings if finding not in self.findings]
        return looked_over

    def panel_pieces(self, choice: LayerChoice) -> tuple[Piece, ...]:
        """The finished pieces of a layer."""
        key, panels = self._key(choice)
        if key not in self._pieces:
            self._pieces[key] = self._pieces_of(choice, panels)
        pieces = self._pieces[key]
        more = self._carried() if carrier(self.making) == choice.layer else {}
        return tuple(
            _named(piece, choice.layer, more.get(panel.index, ()))
            for piece, panel in zip(pieces, panels, strict=True)
        )

    def _key(self, choice: LayerChoice) -> tuple[_Shape, list[Panel]]:
        panels = panels_in(choice, self.draft)
        widths = tuple(self.edging.widths(choice.layer, panel.index) for panel in panels)
        return (tuple(panel.index for panel in panels), choice.turn_mm, widths), panels

    def _pieces_of(self, choice: LayerChoice, panels: list[Panel]) -> tuple[Piece, ...]:
        shapes = self.shapes(choice)
        sides = [
            side for panel, shape in zip(panels, shapes, strict=True) for side in self._sides(panel, shape)
        ]
        notches = notches_on(sides, self.front)
        return tuple(
            self._piece(choice, panel, shape, left + right)
            for panel, shape, left, right in zip(panels, shapes, notches[::2], notches[1::2], strict=True)
        )

    def _sides(self, panel: Panel, shape: CutShape) -> tuple[Side, Side]:
        """Both sides with their stops; a fold cannot be notched."""
        left, right = panel.index, panel.index + 1
        low_left, low_right = self.lows(panel.index)
        folded = self.edging.side(left) == "fold"
        return (
            Side(shape, "left", left, low_left, () if folded else self.stops[left]),
            Side(shape, "right", right, low_right, self.stops[right]),
        )

    def _piece(self, choice: LayerChoice, panel: Panel, shape: CutShape, notches: tuple[Notch, ...]) -> Piece:
        kinds = self.edging.panel(panel.index)
        folded = "fold" in kinds
        marks = [*level_marks(panel, *self.turns(panel.index, choice.turn_mm))]
        if folded:
            marks.append(fold_mark(shape.outline))
            notches += centre_notches(shape, self.lows(0)[0], self.draft.neckline.seam_walks[0])
        return Piece(
            key=f"{choice.layer}/{panel.name}",
            name=panel.name,
            layer=choice.layer,
            count=1 if folded else 2,
            mirrored=not folded,
            on_fold=folded,
            panel=panel.index,
            stitch=shape.outline.ring,
            cut=shape.ring,
            edges=edges_of(shape, kinds, panel.index, panel.index + 1),
            notches=notches,
            grain=grain_of(shape.outline),
            marks=tuple(marks),
        )

    def _carried(self) -> dict[int, tuple[MarkLine, ...]]:
        """The lines of the layer that carries the bones and the tape, by the panel's number."""
        taped = choice_of(self.making, "waist_tape").made
        tape = tape_marks(self.draft, self.making.tape_width_mm) if taped else {}
        return {
            panel.index: (*tape.get(panel.index, ()), *bone_marks(self.bones, panel.index))
            for panel in self.draft.panels
        }


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

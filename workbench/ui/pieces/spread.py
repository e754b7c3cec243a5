"""The spread: one layer laid on the table, in mm, ready to be drawn and to be pointed at.

It is made afresh for each draft, so that what is painted and what is hit by the pointer can
never be of different drafts.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from PySide6.QtCore import QLineF
from PySide6.QtGui import QPolygonF

from workbench.body import LEVEL_LABEL, LevelName
from workbench.document import Project
from workbench.pieces import Bone, Layer, Making, Piece, PieceEdge
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.scene import speaker
from workbench.ui.board.view import Bounds
from workbench.ui.pieces.bench import Laid
from workbench.ui.pieces.notch_lines import notch_lines

_GAP = 14.0
"""mm between the cut lines of two pieces."""


@dataclass(frozen=True)
class LaidPiece:
    """One piece where it lies: moved sideways only, so that waist and levels stay on their lines."""

    piece: Piece
    dx: float
    cut: QPolygonF
    stitch: QPolygonF
    box: Bounds
    """Of its cut line."""

    def put(self, points: Array) -> Array:
        """Points of the piece where they lie."""
        moved: Array = points + np.array([self.dx, 0.0])
        return moved

    @cached_property
    def turned(self) -> QPolygonF:
        """The cut line of the other half's piece, on the other side of the centre front."""
        return polygon(self.put(self.piece.cut) * np.array([-1.0, 1.0]))

    @cached_property
    def marks(self) -> tuple[tuple[str, QPolygonF], ...]:
        """The lines inside it, each with its kind."""
        return tuple((mark.kind, polygon(self.put(mark.points))) for mark in self.piece.marks)

    @cached_property
    def fold(self) -> PieceEdge | None:
        """The edge on the fold."""
        return next((edge for edge in self.piece.edges if edge.kind == "fold"), None)

    def edge(self, name: str) -> PieceEdge | None:
        """One of its edges."""
        return next((edge for edge in self.piece.edges if edge.name == name), None)


@dataclass(frozen=True)
class Spread:
    """One layer on the table."""

    layer: Layer
    project: Project
    pieces: tuple[LaidPiece, ...]
    levels: tuple[tuple[LevelName, str, float], ...]
    """Each level's name, label and walk; none where no piece is cut from a panel."""
    halves: bool
    """Whether the other half is seen too."""

    @property
    def making(self) -> Making:
        """How it is made."""
        return self.project.making

    def say(self, mm: float) -> str:
        """A length in the user's unit, without the unit."""
        return speaker(self.project.unit, self.project.fraction)(mm)

    @cached_property
    def bounds(self) -> Bounds:
        """All that should be in view."""
        if not self.pieces:
            return -200.0, -100.0, 200.0, 100.0
        lefts, bottoms, rights, tops = zip(*(laid.box for laid in self.pieces), strict=True)
        left, bottom, right, top = min(lefts), min(bottoms), max(rights), max(tops)
        return (-right if self.halves else left), bottom, right, top

    @cached_property
    def notches(self) -> list[QLineF]:
        """The notches of every piece."""
        return [line for laid in self.pieces for line in notch_lines(laid.piece, laid.dx, self.making.marks)]

    @cached_property
    def kind(self) -> tuple[object, ...]:
        """What must change for the pieces to be fitted afresh."""
        return self.layer.name, len(self.pieces), self.halves, self.project.design.style

    def of_panel(self, panel: int | None) -> Iterator[LaidPiece]:
        """The pieces that are cut from a panel."""
        return (laid for laid in self.pieces if panel is not None and laid.piece.panel == panel)

    def bone_lines(self, bones: tuple[Bone, ...]) -> Iterator[QPolygonF]:
        """The lines of bones, on the pieces they lie on; where they are drawn on a piece, there."""
        for bone in bones:
            for laid in self.of_panel(bone.panel):
                drawn = {mark.label: mark.points for mark in laid.piece.marks if mark.kind == "bone"}
                yield polygon(laid.put(drawn.get(bone.where, bone.line)))


def spread_of(laid: Laid, halves: bool) -> Spread | None:
    """The layer laid out; None where there is none."""
    layer, outcome = laid.layer, laid.picture.outcome
    if layer is None or outcome is None:
        return None
    levelled = any(piece.panel is not None for piece in layer.pieces)
    return Spread(
        layer=layer,
        project=laid.picture.project,
        pieces=tuple(_laid_out(layer.pieces)),
        levels=tuple((level.name, LEVEL_LABEL[level.name], level.walk) for level in outcome.levels)
        if levelled
        else (),
        halves=halves and _has_other_half(layer),
    )


def _has_other_half(layer: Layer) -> bool:
    """Whether anything of it is cut twice, or opens from a fold."""
    return any(piece.mirrored or piece.on_fold for piece in layer.pieces)


def _laid_out(pieces: tuple[Piece, ...]) -> Iterator[LaidPiece]:
    """From left to right; a fold lies at nought, where the other half begins."""
    at = 0.0 if pieces and pieces[0].on_fold else 0.5 * _GAP
    for piece in pieces:
        left, bottom = piece.cut.min(axis=0).tolist()
        right, top = piece.cut.max(axis=0).tolist()
        dx = at - left
        moved = np.array([dx, 0.0])
        yield LaidPiece(
            piece,
            dx,
            polygon(piece.cut + moved),
            polygon(piece.stitch + moved),
            (at, bottom, at + right - left, top),
        )
        at += right - left + _GAP

"""How much there is to sew and to bind, read off the draft and the finished pieces."""

from __future__ import annotations

from workbench.draft import Draft, LineName
from workbench.pieces.making import Making
from workbench.pieces.measured import Measured
from workbench.pieces.polyline import lengths_of
from workbench.pieces.result import Layer, Piece

_HALVES = 2
"""Of a bodice (derived: two)."""


def bound_edges(draft: Draft, making: Making) -> tuple[float, float]:
    """Length in mm of neckline and hem round the whole garment, where the fashion cloth has no allowance."""
    return _bound(draft, making, "neckline"), _bound(draft, making, "hem")


def sewn_lengths(layer: Layer, measured: Measured) -> float:
    """Length in mm of the joining seams of one layer, each once, on the whole garment.

    An edge without allowance is not sewn; a piece cut on the fold has every edge twice.
    """
    both_sides = sum(
        piece.count * (_HALVES if piece.on_fold else 1) * measured.length(edge)
        for piece in layer.pieces
        for edge in piece.edges
        if edge.kind in ("seam", "side") and edge.allowance > 0
    )
    return 0.5 * both_sides


def finished_size(piece: Piece) -> tuple[float, float]:
    """Width and height in mm of a strip when it is sewn."""
    across, up = piece.stitch.max(axis=0) - piece.stitch.min(axis=0)
    return float(across), float(up)


def _bound(draft: Draft, making: Making, name: LineName) -> float:
    own = {
        choice.panel: choice.allowance_mm
        for choice in making.own_allowances
        if (choice.layer, choice.edge) == ("fashion", name)
    }
    usual = making.allowances.of(name)
    bound = [panel for panel in draft.panels if own.get(panel.index, usual) <= 0]
    return _HALVES * sum(lengths_of([panel.neckline if name == "neckline" else panel.hem for panel in bound]))

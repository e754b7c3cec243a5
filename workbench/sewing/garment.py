"""What the steps are made from: the cutting, looked at the way the needle meets it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from workbench.pieces import Cutting, Layer, LayerName, Making, Notion, Piece, WalkRow

WHOLE_SEAM = "whole seam"


@dataclass(frozen=True)
class Garment:
    """One cutting with the choices that made it."""

    cutting: Cutting
    making: Making

    def layer(self, name: LayerName) -> Layer | None:
        """A layer that is made, with at least one piece; None for any other."""
        return next((each for each in self.cutting.layers if each.name == name and each.pieces), None)

    def pieces_in(self, name: LayerName) -> int:
        """Pieces to cut of one layer."""
        layer = self.layer(name)
        return sum(piece.count for piece in layer.pieces) if layer else 0

    def piece(self, name: LayerName) -> Piece | None:
        """The one shape of a strip, a tape or a panel behind the lacing."""
        layer = self.layer(name)
        return layer.pieces[0] if layer else None

    @cached_property
    def shell(self) -> Layer | None:
        """The layer that shows, or the first one there is."""
        return self.layer("fashion") or next((each for each in self.cutting.layers if each.pieces), None)

    @cached_property
    def listed(self) -> dict[str, Notion]:
        """The shopping list by key."""
        return {notion.key: notion for notion in self.cutting.notions}

    def count(self, key: str) -> int:
        """How many of one notion there are."""
        notion = self.listed.get(key)
        return (notion.count or 0) if notion else 0

    def sewn(self, what: str) -> float:
        """Length in mm of ``seams``, ``edges`` or ``rows``, as it was worked out for the thread."""
        thread = self.listed.get("thread")
        return thread.lengths.get(what, 0.0) if thread else 0.0

    def seams(self, layer: LayerName) -> tuple[WalkRow, ...]:
        """The seams of a layer, from the centre front to the centre back."""
        return tuple(row for row in self.cutting.walks if row.layer == layer and row.part == WHOLE_SEAM)

    @cached_property
    def has_busk(self) -> bool:
        """Whether the centre front opens."""
        return self.cutting.busk_mm is not None

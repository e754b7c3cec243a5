"""Where each panel of the half lies when they are shown together."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

import numpy as np

from workbench.draft import Outcome, Panel
from workbench.frozen import dataclass

if TYPE_CHECKING:
    from workbench.sheets.drawing import Array

Layout = Literal["apart", "block", "both"]
"""Laid out apart; on the block, the intake between them; both halves, the centre front in the middle."""

GAP = 30.0
"""Space between panels laid apart, mm."""


@dataclass(frozen=True)
class Placement:
    """A panel put somewhere: turned over left to right where ``flip``, then moved by ``dx``.

    Heights never change.
    """

    panel: int
    dx: float
    flip: bool = False

    @property
    def key(self) -> str:
        """A name for this copy of the panel that stays the same from draft to draft."""
        return f"{self.panel}{'m' if self.flip else ''}"

    def put(self, points: Array) -> Array:
        """Points (..., 2) of the panel where they are shown."""
        shown = points.copy()
        shown[..., 0] = self.dx - points[..., 0] if self.flip else self.dx + points[..., 0]
        return shown

    def back(self, x: float, y: float) -> tuple[float, float]:
        """A shown point in the panel's own coordinates."""
        return (self.dx - x if self.flip else x - self.dx), y


def placements(outcome: Outcome, layout: Layout, gap: float = GAP) -> tuple[Placement, ...]:
    """Placements from left to right, ``gap`` mm between panels laid apart; nothing without a draft."""
    if outcome.draft is None:
        return ()
    if layout == "block":
        front = outcome.blocks["front"]
        return tuple(Placement(p.index, 0.0 if p.quarter == "front" else front) for p in outcome.draft.panels)
    half = _apart(outcome.draft.panels, gap)
    if layout == "apart":
        return half
    return (*(Placement(p.panel, -p.dx, flip=True) for p in reversed(half)), *half)


def _apart(panels: tuple[Panel, ...], gap: float) -> tuple[Placement, ...]:
    """Side by side from the centre front at x = 0, each clear of the one before by the gap."""
    placed, edge = [], 0.0
    for panel in panels:
        low, high = _extent(panel)
        placed.append(Placement(panel.index, edge - low))
        edge += high - low + gap
    return tuple(placed)


def _extent(panel: Panel) -> tuple[float, float]:
    """Smallest and largest x of the panel."""
    x = [line[:, 0] for line in (panel.left, panel.right, panel.neckline, panel.hem)]
    return float(min(np.min(part) for part in x)), float(max(np.max(part) for part in x))

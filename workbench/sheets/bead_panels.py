"""Panels with their beads in true size, ready for any sheet."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import shapely

from workbench.beads import Band, Beading, Strewn
from workbench.draft import Outcome, Panel
from workbench.sheets.bead_marks import BEAD, bead_code
from workbench.sheets.drawing import Array, Drawing, Label, Stroke
from workbench.sheets.fonts import text_width
from workbench.sheets.pen import HAIR, LineStyle, path_code
from workbench.sheets.sheetmap import SheetMap
from workbench.sheets.tile_page import InkedPanel, inked

_CHANNEL = LineStyle(0.12, HAIR, (1.0, 1.0))
_NAME = 4.2
_TRIED = np.linspace(0.06, 0.94, 45)
"""How far up a panel its name is tried."""
_ACROSS = (0.5, 0.35, 0.65)


def beaded_panels(
    outcome: Outcome, sheets: SheetMap, beading: Beading, bands: tuple[Band, ...]
) -> tuple[InkedPanel, ...]:
    """Stitch line, level lines, bone channels and beads of every panel of the half, and its name."""
    assert outcome.draft is not None, "sheet_map refuses an outcome without a draft"
    lying = beading.all
    found = []
    for panel, placed in zip(outcome.draft.panels, sheets.panels, strict=True):
        own = lying.part(lying.panels == panel.index)
        plain = inked(_drawing(panel, own), panel.name, placed.dx, placed.dy, shapely.Polygon(placed.outline))
        orders = (*plain.orders, *_channels(panel, bands), *_beads(own, beading))
        found.append(
            InkedPanel(plain.name, plain.dx, plain.dy, plain.polygon, orders, plain.labels, plain.group)
        )
    return tuple(found)


def _drawing(panel: Panel, beads: Strewn) -> Drawing:
    strokes = [Stroke("stitch", panel.outline, closed=True)]
    strokes += [
        Stroke("waist" if name == "waist" else "level", line) for name, line in panel.level_lines.items()
    ]
    return Drawing(tuple(strokes), (_name(panel, beads.points),))


def _name(panel: Panel, points: Array) -> Label:
    """The panel's name where the fewest beads would lie under it, and as near to the middle as can be."""
    half = 0.5 * text_width(panel.name, _NAME, bold=True) + 1.0
    low, high = panel.outline[:, 1].min(), panel.outline[:, 1].max()

    def cost(spot: tuple[float, float]) -> tuple[int, float]:
        x, y = spot
        under = (np.abs(points[:, 0] - x) < half + 3.0) & (np.abs(points[:, 1] - y - 0.35 * _NAME) < _NAME)
        left, right = _sides(panel, y)
        out = max(left + half - x, x + half - right, 0.0)
        return int(under.sum()) + (1000 if out > 0 else 0), abs(y - 0.5 * (low + high)) + out

    heights = [low + part * (high - low) for part in _TRIED.tolist()]
    spots = [(_across(panel, y, part), y) for y in heights for part in _ACROSS]
    x, y = min(spots, key=cost)
    return Label("title", panel.name, x, y, _NAME)


def _across(panel: Panel, y: float, part: float) -> float:
    left, right = _sides(panel, y)
    return left + part * (right - left)


def _sides(panel: Panel, y: float) -> tuple[float, float]:
    """Where both sides of the panel are at a height."""
    left, right = (float(np.interp(y, side[:, 1], side[:, 0])) for side in (panel.left, panel.right))
    return left, right


def _channels(panel: Panel, bands: tuple[Band, ...]) -> Iterator[tuple[LineStyle, str]]:
    """The borders of what is kept free for bones, so that she sees why nothing lies there."""
    for band in bands:
        if band.panel == panel.index and band.why == "bone":
            for ring in band.rings:
                yield _CHANNEL, path_code(ring, closed=True)


def _beads(beads: Strewn, beading: Beading) -> Iterator[tuple[LineStyle, str]]:
    for number, kind in enumerate(beading.plan.kinds):
        own = beads.kinds == number
        if own.any():
            yield BEAD, bead_code(kind.mark, kind.size_mm, beads.points[own])

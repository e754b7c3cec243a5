"""Places on neckline and hem, pointed at in the drawing: which line, and how far round the body."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF

from workbench.draft import Design, LineName, Place
from workbench.fitting import Change, Fitting, field_of, u_now
from workbench.ui.board.near import distance
from workbench.ui.board.view import View
from workbench.ui.fitting.bench import Compared
from workbench.ui.fitting.laid import Laid, Pair

_REACH = 8.0
"""Pixels from a line at which it counts as meant, and from a seam or middle at which that does."""
_PARTS = 20
"""Elsewhere a place is taken to the nearest twentieth of its panel."""
LINES: tuple[LineName, ...] = ("neckline", "hem")
Spot = tuple[LineName, float]
"""A line, and a place round the body in the panels of today."""


def spot_at(laid: Laid, compared: Compared, view: View, pixel: QPointF) -> Spot | None:
    """The place on neckline or hem under a pixel; None where neither is within reach."""
    draft = compared.after.draft if compared.after is not None else None
    if draft is None:
        return None
    x, y = view.mm(pixel)
    for pair in laid.pairs:
        for line in LINES:
            if distance(_edge(pair, line), x - pair.dx, y) <= _REACH / view.scale:
                u, t = draft.surface.locate(pair.after.index, x - pair.dx, y)
                wide = float(draft.surface.chords(np.array([t]))[pair.after.index, 0])
                return line, _drawn_in(u, pair.after.index, _REACH / view.scale / max(wide, 1.0))
    return None


def _edge(pair: Pair, line: LineName) -> np.ndarray:
    return pair.after.neckline if line == "neckline" else pair.after.hem


def _drawn_in(u: float, panel: int, magnet: float) -> float:
    """Onto the nearest seam or middle of the panel, or to a twentieth of it."""
    v = min(max(u - panel, 0.0), 1.0)
    for stop in (0.0, 0.5, 1.0):
        if abs(v - stop) <= magnet:
            return panel + stop
    return panel + round(_PARTS * v) / _PARTS


def u_then(u: float, fitting: Fitting, design: Design) -> float:
    """A place round the body of today, in the panels of a fitting: the same part of its quarter."""
    front_then, back_then = fitting.panels
    front, back = design.front.panel_count, design.back.panel_count
    there = u * front_then / front if u <= front else front_then + (u - front) * back_then / back
    return round(there, 6)  # a place picked from the list is a plain figure, and so is this


def pinned_at(place: Place | None, number: int, fitting: Fitting) -> int | None:
    """Which line of this fitting is picked; None where none is."""
    for which in range(len(fitting.changes)):
        if place is not None and place.field == field_of(number, which):
            return which
    return None


def nearest(spot: Spot, fitting: Fitting, design: Design) -> int | None:
    """The line pinned nearest to a place on the same edge; None where nothing is pinned there."""
    line, u = spot
    away = {
        which: abs(u_now(change.u, fitting, design) - u)
        for which, change in enumerate(fitting.changes)
        if change.kind == line and change.u is not None
    }
    return min(away, key=lambda which: away[which], default=None)


def dot_of(laid: Laid, change: Change, u: float) -> QPointF | None:
    """Where a pinned place lies in the drawing, mm; None for what is pinned on no edge."""
    if change.kind not in LINES:
        return None
    pair = laid.pairs[min(int(u), len(laid.pairs) - 1)]
    edge = pair.after.neckline if change.kind == "neckline" else pair.after.hem
    x = float(edge[0, 0] + (u - pair.after.index) * (edge[-1, 0] - edge[0, 0]))
    order = np.argsort(edge[:, 0])
    return QPointF(x + pair.dx, float(np.interp(x, edge[order, 0], edge[order, 1])))

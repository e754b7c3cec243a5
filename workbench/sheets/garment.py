"""The design with its seams closed, seen from the front and from the back, as it lies flat.

A panel is bent so that at every height the panels stand edge to edge; heights never change.
It is a picture of the pattern, not of how the garment looks when it is worn.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from workbench.draft import Outcome, Panel
from workbench.pieces import Cutting
from workbench.sheets.drawing import Array, Role, Stroke

EYELET_IN = 6.0
"""How far inside the edge the lacing is drawn, mm."""
_BODY: tuple[Role, ...] = ("frame", "fold")
"""Outlines of the wearer, which reach beyond the garment."""


@dataclass(frozen=True, eq=False)
class View:
    """One side of the garment, both halves; mm at life size, x from the middle, y up from the waist."""

    name: str
    fills: tuple[Array, ...]
    """Rings of the panels, for the ground."""
    strokes: tuple[Stroke, ...]

    def bounds(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top."""
        body = [stroke.points for stroke in self.strokes if stroke.role in _BODY]
        points = np.concatenate((*self.fills, *body))
        left, bottom = points.min(axis=0).tolist()
        right, top = points.max(axis=0).tolist()
        return left, bottom, right, top


def garment_views(outcome: Outcome, cutting: Cutting | None = None) -> tuple[View, ...]:
    """Front and back, with bones and lacing where there is a cutting; nothing without a draft."""
    if outcome.draft is None:
        return ()
    front = [panel for panel in outcome.draft.panels if panel.quarter == "front"]
    back = [panel for panel in outcome.draft.panels if panel.quarter == "back"]
    half_gap = 0.5 * outcome.design.opening_mm
    return (
        _view(Closed(front, 0.0, outwards=True), "Front", cutting),
        _view(Closed(back, half_gap, outwards=False), "Back", cutting, _lacing(back[-1], half_gap, cutting)),
    )


class Closed:
    """A quarter with closed seams; the middle of the garment is at x = 0, the side seam at its right."""

    def __init__(self, panels: Sequence[Panel], start: float, outwards: bool) -> None:
        """``start``: from the middle to the quarter's own edge, mm; ``outwards``: its panels run that way."""
        self.panels = list(panels) if outwards else list(reversed(panels))
        self._start, self.outwards = start, outwards

    def at(self, number: int, points: Array) -> Array:
        """Points (n, 2) of a panel, counted from the middle, where they lie when the seams are closed."""
        x, y = points.T
        inner = self._start + sum((_width(panel, y) for panel in self.panels[:number]), np.zeros(len(y)))
        panel = self.panels[number]
        own = x - _edge(panel.left, y) if self.outwards else _edge(panel.right, y) - x
        return np.column_stack((inner + own, y))


def _edge(line: Array, y: Array) -> Array:
    """Where an edge lies across at each height; above and below its ends as at the end."""
    order = np.argsort(line[:, 1], kind="stable")
    found: Array = np.interp(y, line[order, 1], line[order, 0])
    return found


def _width(panel: Panel, y: Array) -> Array:
    return _edge(panel.right, y) - _edge(panel.left, y)


def _view(closed: Closed, name: str, cutting: Cutting | None, more: Sequence[Stroke] = ()) -> View:
    """Both halves of a quarter; ``more`` are strokes that cross the middle."""
    fills = [closed.at(number, panel.outline) for number, panel in enumerate(closed.panels)]
    strokes = [stroke for number in range(len(closed.panels)) for stroke in _strokes(closed, number, cutting)]
    both = [stroke for one in strokes for stroke in (one, Stroke(one.role, _turned(one.points)))]
    return View(name, tuple(ring for fill in fills for ring in (fill, _turned(fill))), (*both, *more))


def _strokes(closed: Closed, number: int, cutting: Cutting | None) -> Iterator[Stroke]:
    """Neckline, hem and outer seam of a panel, the seam in the middle where there is one, and bones."""
    panel, last = closed.panels[number], number == len(closed.panels) - 1
    inner, outer = (panel.left, panel.right) if closed.outwards else (panel.right, panel.left)
    yield Stroke("cut" if last else "stitch", closed.at(number, outer))
    yield from (Stroke("cut", closed.at(number, edge)) for edge in (panel.neckline, panel.hem))
    if number == 0 and not closed.outwards:
        yield Stroke("cut", closed.at(0, inner))
    elif number == 0 and _parted(cutting):
        yield Stroke("stitch", closed.at(0, inner))
    for bone in cutting.bones if cutting else ():
        if bone.panel == panel.index:
            yield Stroke("bone", closed.at(number, bone.line))


def _turned(points: Array) -> Array:
    """The other half."""
    turned: Array = points * np.array([-1.0, 1.0])
    return turned


def _parted(cutting: Cutting | None) -> bool:
    """Whether the front is in two halves: not where it is cut on the fold."""
    return cutting is not None and any(
        edge.kind == "centre_front" for piece in cutting.pieces if piece.panel == 0 for edge in piece.edges
    )


def _lacing(panel: Panel, half_gap: float, cutting: Cutting | None) -> tuple[Stroke, ...]:
    """The cord, crossing from each hole to the next one above it on the other side."""
    if cutting is None or cutting.opening is None:
        return ()
    edge = panel.right
    walked = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(edge, axis=0).T))))
    walks = np.array(cutting.opening.walks) + np.interp(0.0, edge[:, 1], walked)
    sides = np.where(np.arange(len(walks)) % 2 == 0, 1.0, -1.0) * (half_gap + EYELET_IN)
    cord = np.column_stack((sides, np.interp(walks, walked, edge[:, 1])))
    return Stroke("tape", cord), Stroke("tape", _turned(cord))

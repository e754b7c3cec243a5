"""Handles: the shape points of neckline and hem, where they lie on the panels."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import numpy as np
from PySide6.QtCore import QPointF

from workbench.draft import Draft, LineName, ShapePoint
from workbench.frozen import dataclass
from workbench.sheets import Placement
from workbench.ui.board.view import View

REACH = 9.0
"""Pixels from a handle at which the hand takes hold of it."""

LINES: tuple[LineName, LineName] = ("neckline", "hem")


class HandleKey(NamedTuple):
    """Which shape point of which line."""

    line: LineName
    number: int


@dataclass(frozen=True)
class Handle:
    """A shape point as shown on one copy of one panel; a point on a seam shows on both its panels."""

    key: HandleKey
    point: ShapePoint
    placement: Placement
    x: float
    y: float
    end: bool
    """Whether it is the first or the last point, which stays on its centre line."""

    def pixel(self, view: View) -> QPointF:
        """Where its middle is on the screen."""
        return view.at(self.x, self.y)


def handles_of(draft: Draft, placements: tuple[Placement, ...]) -> tuple[Handle, ...]:
    """The handles of both lines, neckline first, front to back, for each copy of their panels on show."""
    found = [
        (HandleKey(name, number), point, panel, point.u - panel)
        for name in LINES
        for number, point in enumerate(draft.line(name).points)
        for panel in _panels_at(point.u, draft.surface.panel_count)
    ]
    panels = np.array([panel for _, _, panel, _ in found], dtype=np.intp)
    across = np.array([v for *_, v in found])
    walks = np.array([point.t for _, point, _, _ in found])
    points = draft.surface.points(panels, across, walks).tolist()
    last = {name: len(draft.line(name).points) - 1 for name in LINES}
    return tuple(
        Handle(
            key,
            point,
            copy,
            copy.dx - x if copy.flip else copy.dx + x,
            y,
            key.number in (0, last[key.line]),
        )
        for (key, point, panel, _), (x, y) in zip(found, points, strict=True)
        for copy in placements
        if copy.panel == panel
    )


def _panels_at(u: float, panel_count: int) -> Iterator[int]:
    """The panel a place lies on; both where it lies on a seam between two."""
    whole = round(u)
    if abs(u - whole) < 1e-9 and 0 < whole < panel_count:
        yield from (whole - 1, whole)
    else:
        yield min(max(int(u), 0), panel_count - 1)


def handle_at(handles: Iterable[Handle], view: View, pixel: QPointF) -> Handle | None:
    """The nearest handle within reach of a pixel."""
    best, nearest = None, REACH
    for handle in handles:
        away = handle.pixel(view) - pixel
        distance = (away.x() ** 2 + away.y() ** 2) ** 0.5
        if distance <= nearest:
            best, nearest = handle, distance
    return best

"""What a dressmaker would measure at a point of the neckline or hem while she moves it."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPolygonF

from workbench.draft import Draft, seam_name
from workbench.frozen import dataclass
from workbench.ui.board.handles import Handle
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.scene import Scene

_STEPS = np.linspace(0.0, 1.0, 17)


@dataclass(frozen=True)
class Measures:
    """The distances of a handle, in words, and the two lines they are taken along."""

    handle: Handle
    from_waist: str
    from_seam: str
    along_edge: str
    up: QPolygonF
    """From the waist line to the handle, along the panel."""
    across: QPolygonF
    """From the nearest seam or centre line to the handle, round the body."""

    @property
    def lines(self) -> tuple[str, ...]:
        """One line of words for each distance."""
        return tuple(words for words in (self.from_waist, self.from_seam, self.along_edge) if words)


def measures_of(scene: Scene, handle: Handle) -> Measures | None:
    """The distances of a handle in the scene; None without a draft."""
    draft = scene.outcome.draft
    if draft is None:
        return None
    panel, point = handle.placement.panel, handle.point
    v = point.u - panel
    near = round(v)
    seam = seam_name(panel + near, scene.outcome.design)
    run = abs(v - near) * float(draft.surface.chords(np.array([point.t]))[panel, 0])
    along = _along_edge(draft, handle, near)
    at_seam = run < 0.01
    return Measures(
        handle,
        f"{scene.say(abs(point.t))} {'above' if point.t >= 0 else 'below'} the waist",
        f"on the {seam}" if at_seam else f"{scene.say(run)} from the {seam}",
        "" if at_seam else f"{scene.say(along)} along the {handle.key.line}",
        _line(draft, handle, np.full_like(_STEPS, v), _STEPS * point.t),
        _line(draft, handle, near + (v - near) * _STEPS, np.full_like(_STEPS, point.t)),
    )


def _line(draft: Draft, handle: Handle, v: Array, t: Array) -> QPolygonF:
    panel = np.full(len(v), handle.placement.panel, dtype=np.intp)
    return polygon(handle.placement.put(draft.surface.points(panel, v, t)))


def _along_edge(draft: Draft, handle: Handle, near: int) -> float:
    """mm along the drawn line from its panel's left (0) or right (1) edge to the handle."""
    panel = draft.panels[handle.placement.panel]
    line = panel.neckline if handle.key.line == "neckline" else panel.hem
    here = np.array(handle.placement.back(handle.x, handle.y))
    nearest = int(np.hypot(*(line - here).T).argmin())
    part = line[: nearest + 1] if near == 0 else line[nearest:]
    return float(np.hypot(*np.diff(part, axis=0).T).sum())


def middle_of(line: QPolygonF) -> QPointF:
    """The point halfway along the list of points of a line."""
    return line.at(line.size() // 2)

"""Before and after laid over each other, in mm, ready to be drawn and to be pointed at.

Both drafts stand on one block, so that what a panel lost on either side is where it was lost.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPolygonF

from workbench.body import LEVEL_LABEL, LevelName
from workbench.draft import Panel
from workbench.fitting import Difference
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.view import Bounds
from workbench.ui.fitting.bench import Compared
from workbench.ui.fitting.words import signed, told

_GAP = 26.0
"""mm between two panels, for the differences at their corners."""


@dataclass(frozen=True)
class Pair:
    """One panel before and after, where it lies: moved sideways only."""

    after: Panel
    dx: float
    outline: QPolygonF
    ghost: QPolygonF
    """The outline before."""
    levels: tuple[tuple[LevelName, QPolygonF], ...]
    box: Bounds

    def edges(self, seam: int | None, line: str | None) -> Iterator[QPolygonF]:
        """Its edges that lie on a seam or belong to a line."""
        panel = self.after
        if line is not None:
            yield self.put(panel.neckline if line == "neckline" else panel.hem)
        elif seam is not None and seam in (panel.index, panel.index + 1):
            yield self.put(panel.left if seam == panel.index else panel.right)

    def put(self, points: Array) -> QPolygonF:
        """Points of the panel where they lie."""
        return polygon(points + np.array([self.dx, 0.0]))


@dataclass(frozen=True)
class Figure:
    """One difference where it stands, in mm."""

    words: str
    x: float
    y: float
    above: int
    """1 above its place, -1 below, 0 on it."""


@dataclass(frozen=True)
class Laid:
    """All that is drawn."""

    pairs: tuple[Pair, ...]
    levels: tuple[tuple[LevelName, str, float], ...]
    """Name, label and walk after."""
    figures: tuple[Figure, ...]
    bounds: Bounds

    def at(self, x: float, y: float) -> int | None:
        """The number of the panel under a point."""
        point = QPointF(x, y)
        for pair in self.pairs:
            if pair.outline.containsPoint(point, Qt.FillRule.OddEvenFill):
                return pair.after.index
        return None


def laid_of(compared: Compared) -> Laid | None:
    """The comparison laid out; None while either draft is missing."""
    before, after = compared.before, compared.after
    if before is None or after is None or before.draft is None or after.draft is None:
        return None
    if len(before.draft.panels) != len(after.draft.panels):
        return None
    pairs = tuple(_pairs(before.draft.panels, after.draft.panels))
    levels = tuple((level.name, LEVEL_LABEL[level.name], level.walk) for level in after.levels)
    boxes = np.array([pair.box for pair in pairs])
    left, bottom = boxes[:, :2].min(axis=0).tolist()
    right, top = boxes[:, 2:].max(axis=0).tolist()
    return Laid(pairs, levels, tuple(_figures(pairs, compared)), (left, bottom, right, top))


def _pairs(before: tuple[Panel, ...], after: tuple[Panel, ...]) -> Iterator[Pair]:
    edge = 0.0
    for one, other in zip(before, after, strict=True):
        both = np.concatenate((one.outline, other.outline))
        left, bottom = both.min(axis=0).tolist()
        right, top = both.max(axis=0).tolist()
        moved = np.array([edge - left, 0.0])
        yield Pair(
            other,
            edge - left,
            polygon(other.outline + moved),
            polygon(one.outline + moved),
            tuple((name, polygon(line + moved)) for name, line in other.level_lines.items()),
            (edge, bottom, edge + right - left, top),
        )
        edge += right - left + _GAP


def _figures(pairs: tuple[Pair, ...], compared: Compared) -> Iterator[Figure]:
    for one in told(compared):
        if one.what == "width" and one.place.panel is not None:
            yield from _on_level(pairs[one.place.panel], one, compared)
        elif one.what in ("neckline", "hem") and one.place.seam is not None:
            yield _on_line(pairs, one, one.place.seam, compared)


def _on_level(pair: Pair, one: Difference, compared: Compared) -> Iterator[Figure]:
    """In the middle of the level line, where the level crosses the panel."""
    for name, line in pair.levels:
        if name == one.place.level:
            middle = line.at(line.size() // 2)
            yield Figure(signed(one.change, compared.picture.project), middle.x(), middle.y(), 1)


def _on_line(pairs: tuple[Pair, ...], one: Difference, seam: int, compared: Compared) -> Figure:
    """At the neckline or hem: in the gap where a seam is, over the panel where a centre line is."""
    pair = pairs[max(seam - 1, 0)]
    side = pair.after.left if seam == 0 else pair.after.right
    x, y = side[-1 if one.what == "neckline" else 0].tolist()
    last = seam == len(pairs)
    beside = 0.7 * _GAP if seam == 0 else -0.7 * _GAP if last else 0.5 * _GAP
    words = signed(one.change, compared.picture.project)
    return Figure(words, pair.dx + x + beside, y, 1 if one.what == "neckline" else -1)

"""Drawing a level in by the end of its bar."""

from __future__ import annotations

from PySide6.QtCore import QPointF

from workbench.body import LEVEL_LABEL, snap
from workbench.document import set_reduction
from workbench.ui.board.bars import Axis, Bar
from workbench.ui.desk import Desk

MM_PER_INCH = 25.4

RESISTANCE = 12.0
"""Pixels that the hand must go on past a limit before the bar gives way."""


def reduction_name(bar: Bar) -> str:
    """What the step is called that undoes a drag of this bar."""
    return f"{LEVEL_LABEL[bar.sets]} reduction"


class BarDrag:
    """Sets the reduction of a level; axis, bar and project are those at the press."""

    def __init__(self, desk: Desk, bar: Bar, axis: Axis, start: QPointF) -> None:
        self.bar = bar
        self._desk = desk
        self._axis = axis
        self._project = desk.project
        self._grip = axis.x(bar.finished) - start.x()
        self.axis = axis
        desk.begin(reduction_name(bar))

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """The bar's end follows the hand, in whole steps unless ``free``."""
        if not self._desk.gesturing:
            return  # undone under the hand: the rest of the drag does nothing
        girth = self.resisted(pixel.x() + self._grip)
        reduction = self.bar.reckoned - girth
        if not free:
            reduction = self._snapped(reduction)
        self._desk.preview(set_reduction(self._project, self.bar.sets, reduction))

    def resisted(self, x: float) -> float:
        """The girth for the bar's end at a pixel: past the limit it comes after the hand only with a pull."""
        limit = self.bar.limit
        if limit is None or self.bar.finished < limit:
            return self._axis.girth(x)
        at_limit = self._axis.x(limit)
        return self._axis.girth(x if x >= at_limit else min(x + RESISTANCE, at_limit))

    def _snapped(self, reduction: float) -> float:
        """The nearest step; while the limit holds the bar, the last step that keeps it."""
        project, limit = self._project, self.bar.limit
        near = snap(reduction, project.unit, project.fraction)
        if (
            limit is None
            or reduction > self.bar.reckoned - limit + 1e-9
            or near <= self.bar.reckoned - limit + 1e-6
        ):
            return near
        return near - (MM_PER_INCH / project.fraction if project.unit == "in" else 1.0)

    def finish(self) -> None:
        """One step to undo."""
        self._desk.commit()

    def cancel(self) -> None:
        """The bar goes back."""
        self._desk.cancel()

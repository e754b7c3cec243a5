"""The canvas of the fittings place: every panel before and after, with what differs written on it."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from workbench.document import set_pinned
from workbench.draft import Place
from workbench.fitting import Fitting, field_of
from workbench.ui.board.paper import Paper
from workbench.ui.board.view import Bounds
from workbench.ui.desk import Desk
from workbench.ui.fitting.bench import Compared, FittingBench
from workbench.ui.fitting.hand import OverlayHand, OverlayKeys
from workbench.ui.fitting.laid import Laid, laid_of
from workbench.ui.fitting.paint_overlay import GUTTER, Shown, paint_nothing, paint_overlay
from workbench.ui.fitting.point import Spot, nearest, pinned_at, spot_at, u_then

_NAME = "Before and after"
_DESCRIPTION = "Left and Right go from panel to panel. Plus and minus zoom, 0 shows all of it."
_LEAST = (320, 240)
_AIR, _TOP, _WORDS = 24.0, 52.0, 44.0
"""Pixels left at the sides, above for what the lines mean, below for names."""


class Overlay(Paper):
    """Shows the comparison; a click puts the picked line of a fitting elsewhere on neckline or hem."""

    _hand: OverlayHand
    _keys: OverlayKeys

    def __init__(self, desk: Desk, bench: FittingBench, parent: QWidget | None = None) -> None:
        super().__init__(_NAME, _DESCRIPTION, _LEAST, parent)
        self._desk, self._bench = desk, bench
        self._compared: Compared | None = None
        self._laid: Laid | None = None
        self._place: Place | None = desk.selection
        self._hand = OverlayHand(self, self.sight)
        self._keys = OverlayKeys(self)
        bench.worked_out.connect(self.show_compared)
        desk.selected.connect(self.show_selection)

    @property
    def desk(self) -> Desk:
        """Where its edits go."""
        return self._desk

    @property
    def picked(self) -> int | None:
        """The number of the panel that is picked."""
        return self._place.panel if self._place is not None else None

    @property
    def laid(self) -> Laid | None:
        """What is on it; None before there is anything."""
        return self._laid

    def bounds(self) -> Bounds | None:
        """The panels of both drafts, in mm."""
        return self._laid.bounds if self._laid is not None else None

    def room(self) -> QRectF:
        """The pixels in which they are fitted."""
        return QRectF(self.rect()).adjusted(GUTTER + _AIR, _TOP, -_AIR, -_WORDS)

    def pointer(self) -> Qt.CursorShape:
        """An arrow: there is nothing to take hold of but the paper."""
        return Qt.CursorShape.ArrowCursor

    def said(self) -> str:
        """The panel that is picked, and what differs on it."""
        return self.told(self.picked) if self.picked is not None else ""

    def told(self, panel: int) -> str:
        """A panel, and what differs on it; empty where there is none of that number."""
        if self._compared is None or self._laid is None:
            return ""
        pairs = self._laid.pairs
        if not 0 <= panel < len(pairs):
            return ""
        count = sum(1 for one in self._compared.differences if one.place.panel == panel)
        return f"{pairs[panel].after.name}: {count} widths differ"

    def show_compared(self, compared: Compared) -> None:
        """Lay out another comparison; it is fitted anew where the panels are others."""
        before = self._laid
        self._compared, self._laid = compared, laid_of(compared)
        now = self._laid
        fresh = now is not None and (before is None or len(before.pairs) != len(now.pairs))
        if fresh or not self.sight.by_hand:
            self.fit()
        self.tell()
        self.refresh()

    def show_selection(self, place: Place | None) -> None:
        """Light up a place."""
        self._place = place
        self.tell()
        self.refresh()

    # --- what she does ---------------------------------------------------------------------

    def pick_at(self, pixel: QPointF) -> None:
        """Put the picked line on the neckline or hem under a pixel; else pick what is there."""
        if self._laid is None or self._compared is None:
            self._desk.select(None)
            return
        spot = spot_at(self._laid, self._compared, self.sight.view, pixel)
        if spot is not None and self._bench.fitting is not None:
            self._pick_spot(spot, self._bench.fitting)
            return
        panel = self._laid.at(*self.sight.view.mm(pixel))
        self._desk.select(Place(panel=panel) if panel is not None else None)

    def _pick_spot(self, spot: Spot, fitting: Fitting) -> None:
        """Move the line that is picked there; where none on that edge is, pick the nearest one."""
        project, number, (line, u) = self._desk.project, self._bench.number, spot
        picked = pinned_at(self._place, number, fitting)
        if picked is not None and fitting.changes[picked].kind == line:
            there = u_then(u, fitting, project.design)
            self._desk.apply("Place pinned", set_pinned(project, number, picked, u=there))
            return
        near = nearest(spot, fitting, project.design)
        self._desk.select(Place(field=field_of(number, near) if near is not None else None, line=line))

    def pick_next(self, step: int) -> None:
        """Pick the panel beside the one that is picked; the first or the last where none is."""
        if self._laid is None:
            return
        count = len(self._laid.pairs)
        panel = self._place.panel if self._place is not None else None
        at = panel + step if panel is not None else (0 if step > 0 else count - 1)
        self._desk.select(Place(panel=min(max(at, 0), count - 1)))

    def paint(self, painter: QPainter) -> None:
        """The panels, or why there are none."""
        if self._laid is not None and self._compared is not None:
            number = self._bench.number
            shown = Shown(self._laid, self._compared, self.sight.view, self.size(), self._place, number)
            paint_overlay(painter, shown)
        elif self._compared is not None:
            paint_nothing(painter, self._compared, QRectF(self.rect()))

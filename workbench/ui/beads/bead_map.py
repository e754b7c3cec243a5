"""The map: the panels of the half with every bead in its true size, and lines that can be drawn."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QMouseEvent, QPainter
from PySide6.QtWidgets import QWidget

from workbench.body import say_with_unit
from workbench.document import (
    Picture,
    add_line_point,
    remove_line_point,
    toggle_line_corner,
)
from workbench.draft import Place
from workbench.ui.beads.bench import BeadsBench, Worked
from workbench.ui.beads.map_hand import MapHand
from workbench.ui.beads.map_keys import MapKeys
from workbench.ui.beads.paint_map import KindShown, Shown, paint_map
from workbench.ui.beads.spread import Owner, Spread, owner_of, spread_of
from workbench.ui.beads.words import paint_nothing
from workbench.ui.board.paper import Paper
from workbench.ui.board.polygons import Array
from workbench.ui.board.view import Bounds
from workbench.ui.desk import Desk

Ints = NDArray[np.intp]
_NAME = "Bead map"
_DESCRIPTION = (
    "The half, centre front at the left. Left and Right go from panel to panel. With a drawn line picked, "
    "N and P go from point to point, the arrow keys move the picked one, Delete takes it out, "
    "C makes it a corner or smooth. A double click adds a point."
)
_LEAST = (320, 240)
_AIR, _WORDS = 28.0, 48.0
STEP_NAME = "Point of a drawn line"


class BeadMap(Paper):
    """Shows the beads, and lets her pick runs and panels and draw lines."""

    _hand: MapHand
    _keys: MapKeys

    def __init__(self, desk: Desk, bench: BeadsBench, parent: QWidget | None = None) -> None:
        super().__init__(_NAME, _DESCRIPTION, _LEAST, parent)
        self._desk, self._bench = desk, bench
        self._spread: Spread | None = None
        self._picture: Picture | None = None
        self._worked: Worked | None = None
        self._kinds: tuple[KindShown, ...] = ()
        self._hand = MapHand(self, desk)
        self._keys = MapKeys(self, desk)
        bench.followed.connect(self.show_followed)
        bench.worked_out.connect(self.show_worked)
        desk.selected.connect(self.show_selection)

    # --- what is on it -------------------------------------------------------------------

    @property
    def desk(self) -> Desk:
        """Where its edits go."""
        return self._desk

    @property
    def spread(self) -> Spread | None:
        """The panels; None while there are none."""
        return self._spread

    @property
    def picture(self) -> Picture:
        """What is on show."""
        return self._picture if self._picture is not None else self._desk.picture

    @property
    def owner(self) -> Owner | None:
        """The run or scatter that is picked."""
        place = self._desk.selection
        return owner_of(place.field) if place is not None else None

    @property
    def point(self) -> int | None:
        """The picked point of its line."""
        place = self._desk.selection
        return place.point if place is not None and self.owner is not None else None

    @property
    def handles(self) -> tuple[tuple[float, float], ...]:
        """The points of the picked line, in mm on the map."""
        owner, spread = self.owner, self._spread
        if owner is None or spread is None:
            return ()
        return tuple(spread.point(point.u, point.t)[:2] for point in owner.line(self.picture))

    def handle_at(self, pixel: QPointF, reach: float) -> int | None:
        """The point of the picked line under a pixel."""
        near = [
            ((self.sight.view.at(x, y) - pixel).manhattanLength(), number)
            for number, (x, y) in enumerate(self.handles)
        ]
        away, number = min(near, default=(reach + 1, 0))
        return number if away <= reach else None

    def owner_at(self, pixel: QPointF, reach: float) -> Owner | None:
        """The run or scatter whose bead is nearest to a pixel."""
        worked, spread = self._worked, self._spread
        if worked is None or worked.beading is None or spread is None:
            return None
        x, y = self.sight.view.mm(pixel)
        best: tuple[float, Owner | None] = (reach / self.sight.view.scale, None)
        runs = len(worked.beading.plan.runs)
        for number, each in enumerate(worked.beading.beaded):
            if len(each.beads):
                far = _placed(each.beads.points, each.beads.panels, spread) - np.array([x, y])
                sizes = np.array([kind.size_mm for kind in worked.beading.plan.kinds])[each.beads.kinds]
                away = float((np.hypot(far[:, 0], far[:, 1]) - 0.5 * sizes).min())
                owner = Owner("runs", number) if number < runs else Owner("scatters", number - runs)
                best = min(best, (away, owner), key=lambda one: one[0])
        return best[1]

    def room(self) -> QRectF:
        """The pixels in which the panels are fitted."""
        return QRectF(self.rect()).adjusted(_AIR, _AIR, -_AIR, -_WORDS)

    def bounds(self) -> Bounds | None:
        """All panels, mm; None while there are none."""
        return self._spread.bounds if self._spread is not None else None

    # --- what is shown -------------------------------------------------------------------

    def show_followed(self, picture: Picture) -> None:
        """Show panels and lines of an edit; beads stay where they are until they are placed anew."""
        before, old = self._spread, self._picture
        self._picture = picture
        if old is None or before is None or picture.outcome is not old.outcome:
            self._spread = spread_of(picture)
            if self._spread is None or (before is not None and before.draft is not self._spread.draft):
                self._kinds = ()
        if (
            self._spread is not None
            and not self.sight.by_hand
            and (before is None or before is not self._spread)
        ):
            self.fit()
        self.tell()
        self.refresh()

    def show_worked(self, worked: Worked) -> None:
        """Show the beads where they lie."""
        self._worked = worked
        if self._picture is not worked.picture:
            self.show_followed(worked.picture)
        self._sort()
        self.refresh()

    def show_selection(self, _place: Place | None) -> None:
        """Light up a run, a scatter, a point or a panel."""
        self._sort()
        self.tell()
        self.refresh()

    def _sort(self) -> None:
        """Beads by kind, in the mm of the map, with what is picked marked."""
        worked, spread = self._worked, self._spread
        if worked is None or worked.beading is None or spread is None:
            self._kinds = ()
            return
        beading, owner = worked.beading, self.owner
        lying = beading.all
        source = np.repeat(np.arange(len(beading.beaded)), [len(each.beads) for each in beading.beaded])
        lit = np.ones(len(lying), np.bool_)
        if owner is not None:
            picked = owner.number + (len(beading.plan.runs) if owner.what == "scatters" else 0)
            lit = source == picked
        points = _placed(lying.points, lying.panels, spread)
        self._kinds = tuple(
            KindShown(kind.mark, kind.size_mm, points[lying.kinds == number], lit[lying.kinds == number])
            for number, kind in enumerate(beading.plan.kinds)
            if (lying.kinds == number).any()
        )

    def said(self) -> str:
        """What is picked, in words."""
        owner, place, spread = self.owner, self._desk.selection, self._spread
        told = self.told(owner) if owner is not None else ""
        if told:
            return f"{told}.{self._point_said()}"
        panel = place.panel if place is not None else None
        if spread is not None and panel is not None and panel < len(spread.panels):
            return spread.panels[panel].panel.name
        return ""

    def told(self, owner: Owner) -> str:
        """A run or scatter and how many beads it comes to; empty while that is not known."""
        worked = self._worked
        if worked is None or worked.beading is None:
            return ""
        number = owner.number + (len(worked.beading.plan.runs) if owner.what == "scatters" else 0)
        if number >= len(worked.beading.beaded):
            return ""
        each = worked.beading.beaded[number]
        return f"{each.name}: {each.total:,} beads on the garment"

    def _point_said(self) -> str:
        owner, point, project = self.owner, self.point, self._desk.project
        line = owner.line(self.picture) if owner is not None else ()
        if point is None or point >= len(line):
            return ""
        walk = say_with_unit(abs(line[point].t), project.unit, project.fraction)
        where = "above" if line[point].t >= 0 else "below"
        return f" Point {point + 1} of {len(line)}, {walk} {where} the waist."

    def pointer(self) -> Qt.CursorShape:
        """A point can be dragged."""
        return Qt.CursorShape.SizeAllCursor if self._hand.over is not None else Qt.CursorShape.ArrowCursor

    # --- what she does -------------------------------------------------------------------

    def pick(self, owner: Owner | None, point: int | None = None, panel: int | None = None) -> None:
        """Pick a run or scatter, a point of its line, or a panel, in every pane."""
        if owner is not None:
            self._desk.select(Place(field=owner.field, point=point))
        else:
            self._desk.select(Place(panel=panel) if panel is not None else None)

    def add_point(self, pixel: QPointF) -> bool:
        """Add a point to the picked line; False where there is no line or no panel."""
        owner, spread = self.owner, self._spread
        if owner is None or spread is None or not owner.draws(self.picture):
            return False
        place = spread.place(*self.sight.view.mm(pixel))
        if place is None:
            return False
        try:
            project = add_line_point(self._desk.project, owner.what, owner.number, *place)
        except ValueError as error:
            self._desk.refuse(owner.field, str(error))
            return True
        self._desk.apply("Add a point to a drawn line", project)
        self._desk.now()
        return True

    def remove_point(self, point: int) -> None:
        """Take a point out of the picked line."""
        owner = self.owner
        if owner is not None and point < len(owner.line(self.picture)):
            project = remove_line_point(self._desk.project, owner.what, owner.number, point)
            self._desk.apply("Take a point out of a drawn line", project)
            self.pick(owner)

    def toggle_corner(self, point: int) -> None:
        """Make a point a corner, or smooth."""
        owner = self.owner
        if owner is not None and point < len(owner.line(self.picture)):
            project = toggle_line_corner(self._desk.project, owner.what, owner.number, point)
            self._desk.apply("Corner of a drawn line", project)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """A double click adds a point to the picked line, or makes the one under it a corner."""
        number = self.handle_at(event.position(), MapHand.reach)
        if number is not None:
            self.toggle_corner(number)
        elif not self.add_point(event.position()):
            super().mouseDoubleClickEvent(event)

    # --- painting --------------------------------------------------------------------------

    def paint(self, painter: QPainter) -> None:
        """The map, or why there is none."""
        if self._spread is None:
            paint_nothing(painter, self.picture, QRectF(self.rect()))
            return
        paint_map(painter, self.shown(self._spread))

    def shown(self, spread: Spread) -> Shown:
        """Everything that the painter has to know."""
        picture, owner, place = self.picture, self.owner, self._desk.selection
        worked = self._worked
        same = worked is not None and worked.picture.outcome is picture.outcome
        plan = picture.project.beads
        owners = [Owner("runs", n) for n in range(len(plan.runs))]
        owners += [Owner("scatters", n) for n in range(len(plan.scatters))]
        lines = ((spread.lines(each.line(picture)), each == owner) for each in owners)
        return Shown(
            spread=spread,
            bands=worked.bands if worked is not None and same else (),
            kinds=self._kinds,
            lines=tuple((parts, picked) for parts, picked in lines if parts),
            handles=self.handles,
            corners=tuple(point.smooth for point in owner.line(picture)) if owner is not None else (),
            point=self.point,
            panel=place.panel if place is not None else None,
            view=self.sight.view,
            size=self.size(),
            ratio=self.devicePixelRatioF(),
        )


def _placed(points: Array, panels: Ints, spread: Spread) -> Array:
    """(n, 2) where beads lie on the map; those of a panel that is gone lie on the last one."""
    moves = spread.moves
    placed: Array = points.copy()
    placed[:, 0] += moves[np.minimum(panels, len(moves) - 1)]
    return placed

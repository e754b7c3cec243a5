"""Keys on the map: from panel to panel, from point to point; a point moved by an eighth; zoom."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from workbench.body import step_mm
from workbench.document import Picture, move_line_point
from workbench.ui.beads.spread import Owner, Spread
from workbench.ui.desk import Desk

_ZOOM = {Qt.Key.Key_Plus: 1.25, Qt.Key.Key_Equal: 1.25, Qt.Key.Key_Minus: 0.8}
_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}


class Surroundings(Protocol):
    """What the keys need of the map."""

    @property
    def spread(self) -> Spread | None:
        """The panels."""

    @property
    def picture(self) -> Picture:
        """What is on show."""

    @property
    def owner(self) -> Owner | None:
        """The run or scatter that is picked."""

    @property
    def point(self) -> int | None:
        """The picked point of its line."""

    def pick(self, owner: Owner | None, point: int | None = None, panel: int | None = None) -> None:
        """Pick in every pane."""

    def remove_point(self, point: int) -> None:
        """Take a point out of the picked line."""

    def toggle_corner(self, point: int) -> None:
        """Make a point a corner, or smooth."""

    def zoom(self, factor: float) -> None:
        """Larger or smaller about the middle."""

    def fit(self) -> None:
        """Show all of it."""


class MapKeys:
    """Says for each key whether it was of use."""

    def __init__(self, around: Surroundings, desk: Desk) -> None:
        self._around, self._desk = around, desk

    def press(self, event: QKeyEvent) -> bool:
        """Do what the key says; False where it says nothing here."""
        key, around = Qt.Key(event.key()), self._around
        if event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.MetaModifier):
            return False
        if key in _ZOOM:
            around.zoom(_ZOOM[key])
        elif key == Qt.Key.Key_0:
            around.fit()
        elif key == Qt.Key.Key_Escape:
            around.pick(around.owner if around.point is not None else None)
        elif key in (Qt.Key.Key_N, Qt.Key.Key_P):
            return self._go_to_point(1 if key == Qt.Key.Key_N else -1)
        else:
            return self._on_point(key) if around.point is not None else self._go_to_panel(key)
        return True

    def _on_point(self, key: Qt.Key) -> bool:
        point = self._around.point
        assert point is not None
        if key in _ARROWS:
            return self._step(point, *_ARROWS[key])
        if key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self._around.remove_point(point)
            return True
        if key == Qt.Key.Key_C:
            self._around.toggle_corner(point)
            return True
        return False

    def _step(self, point: int, right: int, up: int) -> bool:
        """The point by one mark of the ruler, along the body."""
        owner, spread, project = self._around.owner, self._around.spread, self._desk.project
        line = owner.line(self._around.picture) if owner is not None else ()
        if owner is None or spread is None or point >= len(line):
            return False
        step = step_mm(project.unit, project.fraction)
        old = line[point]
        panel = min(max(int(old.u), 0), len(spread.panels) - 1)
        width = float(
            spread.draft.panels[panel].outline[:, 0].max() - spread.draft.panels[panel].outline[:, 0].min()
        )
        u = min(max(old.u + right * step / width, 0.0), float(len(spread.panels)))
        moved = move_line_point(project, owner.what, owner.number, point, u, old.t + up * step)
        self._desk.apply("Point of a drawn line", moved)
        return True

    def _go_to_point(self, step: int) -> bool:
        owner = self._around.owner
        count = len(owner.line(self._around.picture)) if owner is not None else 0
        if not count:
            return False
        at = self._around.point
        first = 0 if step > 0 else count - 1
        self._around.pick(owner, first if at is None else (at + step) % count)
        return True

    def _go_to_panel(self, key: Qt.Key) -> bool:
        spread = self._around.spread
        if spread is None or key not in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            return False
        place = self._desk.selection
        at = place.panel if place is not None else None
        step = 1 if key == Qt.Key.Key_Right else -1
        start = -1 if step > 0 else 0
        self._around.pick(None, panel=((start if at is None else at) + step) % len(spread.panels))
        return True

"""Keys on the canvas: choose, move, add, remove, zoom and pan without the mouse."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol, TypeVar

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from workbench.document import remove_point, toggle_smooth
from workbench.draft import Place
from workbench.ui.board.figures import Figure, FigureKey
from workbench.ui.board.handles import Handle, HandleKey
from workbench.ui.board.scene import Scene
from workbench.ui.board.shape_edits import nudged
from workbench.ui.board.view import Sight
from workbench.ui.desk import Desk

_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}
_LEAP = 4
"""Steps that an arrow key goes with Shift: half an inch in eighths."""
_PAN = 40.0
_ZOOM = 1.25
_T = TypeVar("_T")


class Board(Protocol):
    """What the keys need of the canvas."""

    @property
    def scene(self) -> Scene | None:
        """What is on the canvas."""

    @property
    def chosen_handle(self) -> Handle | None:
        """The selected handle."""

    @property
    def chosen_figure(self) -> Figure | None:
        """The selected intake figure."""

    def choose_figure(self, figure: Figure | None) -> None:
        """Select a figure."""

    def open_figure(self, figure: Figure) -> None:
        """Type a figure."""

    def unpin(self, figure: Figure) -> None:
        """Let a seam share again."""

    def nudge_behind(self, right: int, up: int) -> bool:
        """Move the picture behind the panels, if it is in the hand."""

    def let_go_behind(self) -> bool:
        """Let it go, if it is in the hand."""

    def zoom(self, factor: float) -> None:
        """Larger or smaller about the middle."""

    def fit(self) -> None:
        """Show all of it."""


class Keys:
    """The keyboard on the canvas; says for each key whether it was of use."""

    def __init__(self, canvas: Board, desk: Desk, sight: Sight) -> None:
        self._canvas = canvas
        self._desk = desk
        self._sight = sight

    def press(self, event: QKeyEvent) -> bool:
        """Do what the key says; False where it says nothing here."""
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape:
            return self._escape()
        if event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.MetaModifier):
            return False
        if key in _ARROWS:
            return self._arrow(
                *_ARROWS[key], leap=bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            )
        return self._view_key(key) or self._choice_key(key, event) or self._change_key(key)

    def figure_beside(self, key: FigureKey, step: int) -> Figure | None:
        """The figure ``step`` further along the same level, round to the other end."""
        scene = self._canvas.scene
        row = _distinct(f for f in scene.figures if f.key.level == key.level) if scene else []
        keys = [figure.key for figure in row]
        return row[(keys.index(key) + step) % len(row)] if key in keys else None

    def _escape(self) -> bool:
        if self._canvas.let_go_behind():
            return True
        if self._desk.selection is None:
            return False
        self._desk.select(None)
        return True

    def _arrow(self, right: int, up: int, *, leap: bool) -> bool:
        """Move the chosen point, go to the next figure, or pan, whichever there is something to do for."""
        steps = _LEAP if leap else 1
        if self._canvas.nudge_behind(right * steps, up * steps):
            return True
        handle, figure = self._canvas.chosen_handle, self._canvas.chosen_figure
        if handle is not None:
            self._nudge(handle, right * steps, up * steps)
        elif figure is not None:
            self._go_on(figure, right, up)
        else:
            self._sight.show_view(self._sight.view.panned(-right * steps * _PAN, up * steps * _PAN))
        return True

    def _nudge(self, handle: Handle, right: int, up: int) -> None:
        scene = self._canvas.scene
        if scene is not None:
            moved = nudged(self._desk.project, scene, handle, right, up)
            self._desk.apply(f"Move {handle.key.line} point", moved)
            self._desk.now()

    def _go_on(self, figure: Figure, right: int, up: int) -> None:
        following = self.figure_beside(figure.key, right) if right else self._figure_above(figure, up)
        if following is not None:
            self._canvas.choose_figure(following)

    def _figure_above(self, figure: Figure, up: int) -> Figure | None:
        """The same side of the same seam at the nearest level above (+1) or below (-1) that has a figure."""
        scene = self._canvas.scene
        if scene is None:
            return None
        column = _distinct(
            f for f in scene.figures if (f.key.seam, f.key.side) == (figure.key.seam, figure.key.side)
        )
        beyond = [f for f in column if (f.y - figure.y) * up > 0]
        return min(beyond, key=lambda f: abs(f.y - figure.y)) if beyond else None

    def _view_key(self, key: Qt.Key) -> bool:
        if key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self._canvas.zoom(_ZOOM)
        elif key in (Qt.Key.Key_Minus, Qt.Key.Key_Underscore):
            self._canvas.zoom(1 / _ZOOM)
        elif key == Qt.Key.Key_0:
            self._canvas.fit()
        else:
            return False
        return True

    def _choice_key(self, key: Qt.Key, event: QKeyEvent) -> bool:
        back = -1 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
        if key == Qt.Key.Key_H:
            return self._next_handle(back)
        if key == Qt.Key.Key_I:
            return self._next_figure(back)
        figure = self._canvas.chosen_figure
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F2) and figure is not None:
            self._canvas.open_figure(figure)
            return True
        return False

    def _next_handle(self, step: int) -> bool:
        scene, chosen = self._canvas.scene, self._canvas.chosen_handle
        keys = list(dict.fromkeys(handle.key for handle in scene.handles)) if scene else []
        following = _after(keys, chosen.key if chosen else None, step)
        if following is not None:
            self._desk.select(Place(line=following.line, point=following.number))
        return following is not None

    def _next_figure(self, step: int) -> bool:
        scene, chosen = self._canvas.scene, self._canvas.chosen_figure
        figures = _distinct(scene.figures) if scene else []
        following = _after(figures, chosen, step)
        if following is not None:
            self._canvas.choose_figure(following)
        return following is not None

    def _change_key(self, key: Qt.Key) -> bool:
        """Delete and T, on what is chosen."""
        handle, figure = self._canvas.chosen_handle, self._canvas.chosen_figure
        removes = key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace)
        if handle is not None and removes:
            remove(self._desk, self._canvas.scene, handle.key)
        elif handle is not None and key == Qt.Key.Key_T:
            toggle(self._desk, self._canvas.scene, handle.key)
        elif figure is not None and removes:
            self._canvas.unpin(figure)
        else:
            return False
        return True


def remove(desk: Desk, scene: Scene | None, key: HandleKey) -> None:
    """Take a shape point away; an end point is refused in words."""
    draft = scene.outcome.draft if scene else None
    if draft is None:
        return
    try:
        changed = remove_point(desk.project, key.line, key.number, draft.line(key.line).designed)
    except ValueError as error:
        desk.refuse(key.line, str(error))
        return
    desk.apply(f"Remove {key.line} point", changed)
    desk.select(None)


def toggle(desk: Desk, scene: Scene | None, key: HandleKey) -> None:
    """Make a smooth point a corner, or a corner smooth."""
    draft = scene.outcome.draft if scene else None
    if draft is None:
        return
    points = draft.line(key.line).designed
    name = f"Make {key.line} point {'a corner' if points[key.number].smooth else 'smooth'}"
    desk.apply(name, toggle_smooth(desk.project, key.line, key.number, points))


def _distinct(figures: Iterable[Figure]) -> list[Figure]:
    """One figure of each key: the second half shows them all again."""
    kept: dict[FigureKey, Figure] = {}
    for figure in figures:
        kept.setdefault(figure.key, figure)
    return list(kept.values())


def _after(things: list[_T], chosen: _T | None, step: int) -> _T | None:
    if not things:
        return None
    if chosen not in things:
        return things[0 if step > 0 else -1]
    return things[(things.index(chosen) + step) % len(things)]

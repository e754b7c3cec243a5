"""The picture behind the panels, taken in the hand: by a drag, or by the arrow keys.

While it is, the canvas takes hold of nothing else, so that a neckline is not moved by mistake.
"""

from __future__ import annotations

from PySide6.QtCore import QObject, QPointF, Signal

from workbench.body import step_mm
from workbench.document import Project, move_behind
from workbench.ui.board.view import Bounds, Sight
from workbench.ui.desk import Desk

STEP = "Move the picture"


class Tracing(QObject):
    """Whether the picture is in the hand. There is one for each desk, whoever asks."""

    changed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self._moving = False
        self.on_show: Bounds | None = None
        """What the canvas shows, mm; None where there is no draft on it, or where nothing lies behind it."""
        desk.drafted.connect(self.show_picture)

    @property
    def moving(self) -> bool:
        """Whether a drag on the canvas moves the picture."""
        return self._moving

    def set_moving(self, on: bool) -> None:
        """Take the picture in the hand, or let it go; there must be one."""
        on = on and self._desk.project.behind is not None
        if on != self._moving:
            self._moving = on
            self.changed.emit()

    def show_picture(self) -> None:
        """Nothing is in the hand once nothing lies behind the panels."""
        self.set_moving(self._moving)

    def nudge(self, right: int, up: int) -> None:
        """Move the picture by so many steps of the ruler."""
        project = self._desk.project
        step = step_mm(project.unit, project.fraction)
        self._desk.apply(STEP, _moved(project, right * step, up * step))
        self._desk.now()


def tracing_of(desk: Desk) -> Tracing:
    """The one of this desk, made when it is first asked for."""
    found = desk.findChild(Tracing)
    return found if isinstance(found, Tracing) else Tracing(desk)


class PictureDrag:
    """Moves the picture with the hand. Every move starts from where it lay at the press."""

    def __init__(self, desk: Desk, sight: Sight, start: QPointF) -> None:
        self._desk, self._sight = desk, sight
        self._start, self._project = start, desk.project
        desk.begin(STEP)

    def move(self, pixel: QPointF, *, free: bool) -> None:
        """The picture follows the hand; there is nothing to snap it to."""
        if not self._desk.gesturing:
            return  # undone under the hand: the rest of the drag does nothing
        away = pixel - self._start
        scale = self._sight.view.scale
        self._desk.preview(_moved(self._project, away.x() / scale, -away.y() / scale))

    def finish(self) -> None:
        """One step to undo."""
        self._desk.commit()

    def cancel(self) -> None:
        """The picture goes back."""
        self._desk.cancel()


def _moved(project: Project, right: float, up: float) -> Project:
    """The project with the picture moved as far as that is possible."""
    try:
        return move_behind(project, right, up)
    except ValueError:
        return project

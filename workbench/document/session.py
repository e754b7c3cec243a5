"""One open project: edits, undo and redo, gestures, and whoever wants to know.

Undo keeps whole projects, a few kilobytes each: there is no inverse of an edit to get
wrong. Reading a picture is cheap; it is worked out once for each project shown.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from workbench.document.picture import Picture, picture_of
from workbench.document.project import Project
from workbench.frozen import dataclass

KEPT_STEPS = 500
"""Own choice: steps that can be undone."""


@dataclass(frozen=True)
class Step:
    """What an edit was called, and the project before it."""

    name: str
    before: Project


class Session:
    """Holds the one project that is open.

    ``changed`` is called after every change of project, path or saved state; a listener
    reads what it needs and edits nothing.
    """

    def __init__(self, project: Project, path: Path | None = None) -> None:
        self.changed: Callable[[], None] = lambda: None
        self._path = path
        self._saved = project
        self._project = project
        self._picture: Picture | None = None
        self._undo: list[Step] = []
        self._redo: list[Step] = []
        self._gesture: Step | None = None

    @property
    def project(self) -> Project:
        """The project as it stands, with a gesture under way included."""
        return self._project

    @property
    def path(self) -> Path | None:
        """Where it was opened from or last saved to."""
        return self._path

    @property
    def unsaved(self) -> bool:
        """Whether it differs from what is on disk."""
        return self._project != self._saved

    @property
    def picture(self) -> Picture:
        """The project worked out, once for each change, however many ask."""
        if self._picture is None or self._picture.project is not self._project:
            self._picture = picture_of(self._project, self._picture)
        return self._picture

    @property
    def gesture(self) -> str | None:
        """Name of the gesture under way."""
        return self._gesture.name if self._gesture else None

    @property
    def before_gesture(self) -> Project | None:
        """The project as it was when the gesture began."""
        return self._gesture.before if self._gesture else None

    def apply(self, name: str, project: Project) -> None:
        """One finished edit, and one step to undo; an edit that changes nothing is none."""
        self.cancel()
        if project == self._project:
            return
        self._remember(Step(name, self._project))
        self._show(project)

    def begin(self, name: str) -> None:
        """Begin a gesture: what it previews becomes one step when it is committed."""
        self.cancel()
        self._gesture = Step(name, self._project)

    def preview(self, project: Project) -> None:
        """The project in the middle of a gesture."""
        if self._gesture is None:
            raise RuntimeError("a preview outside a gesture")
        self._show(project)

    def commit(self) -> None:
        """End the gesture and keep what it did."""
        gesture, self._gesture = self._gesture, None
        if gesture is not None and gesture.before != self._project:
            self._remember(gesture)
            self.changed()

    def cancel(self) -> None:
        """End the gesture as if it had not been."""
        gesture, self._gesture = self._gesture, None
        if gesture is not None:
            self._show(gesture.before)

    def undo(self) -> None:
        """Take back the last step, or the gesture under way."""
        if self._gesture is not None:
            self.cancel()
        elif self._undo:
            step = self._undo.pop()
            self._redo.append(Step(step.name, self._project))
            self._show(step.before)

    def redo(self) -> None:
        """Do again what was taken back."""
        if self._redo and self._gesture is None:
            step = self._redo.pop()
            self._undo.append(Step(step.name, self._project))
            self._show(step.before)

    @property
    def undo_name(self) -> str | None:
        """What :meth:`undo` would take back."""
        return self._undo[-1].name if self._undo else None

    @property
    def redo_name(self) -> str | None:
        """What :meth:`redo` would do again."""
        return self._redo[-1].name if self._redo else None

    def mark_saved(self, path: Path) -> None:
        """Note that the project as it stands is whole on disk at ``path``."""
        self._path, self._saved = path, self._project
        self.changed()

    def _remember(self, step: Step) -> None:
        self._undo.append(step)
        del self._undo[:-KEPT_STEPS]
        self._redo.clear()

    def _show(self, project: Project) -> None:
        if project is not self._project:
            self._project = project
            self.changed()

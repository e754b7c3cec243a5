"""The desk: where the window and the open project meet.

Every pane edits through the desk and shows what the desk says has been drafted. Panes
never speak to each other, so there is one way an edit can travel.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from workbench.document import Picture, Project, Session, new_project
from workbench.draft import Place


class Desk(QObject):
    """Holds the session, and redrafts once however many edits arrive in one turn of the event loop."""

    drafted = Signal(object)
    """A :class:`Picture`, after every change that can be seen."""
    session_changed = Signal()
    """Undo names, path or saved state are no longer what they were."""
    selected = Signal(object)
    """The :class:`Place` that lights up, or None."""
    refused = Signal(str, str)
    """A field and one sentence: an edit that could not be read."""

    def __init__(self, session: Session | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._before: Picture | None = None
        self._selection: Place | None = None
        self._told: tuple[object, ...] = ()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._redraft)
        self._session = session or Session(new_project())
        self._session.changed = self._timer.start

    @property
    def session(self) -> Session:
        """The open session; saving reads it, panes have no need of it."""
        return self._session

    @property
    def picture(self) -> Picture:
        """The project worked out as it stands, without waiting for the redraft."""
        return self._session.picture

    @property
    def project(self) -> Project:
        """The project as it stands, with a gesture under way included."""
        return self._session.project

    @property
    def path(self) -> Path | None:
        """Where the project was opened from or last saved to."""
        return self._session.path

    @property
    def unsaved(self) -> bool:
        """Whether the project differs from what is on disk."""
        return self._session.unsaved

    @property
    def undo_name(self) -> str | None:
        """What undo would take back."""
        return self._session.undo_name

    @property
    def redo_name(self) -> str | None:
        """What redo would do again."""
        return self._session.redo_name

    @property
    def gesturing(self) -> bool:
        """Whether a gesture is under way."""
        return self._session.gesture is not None

    @property
    def before_gesture(self) -> Picture | None:
        """The picture as it was when the gesture began; None outside a gesture."""
        return self._before if self.gesturing else None

    @property
    def selection(self) -> Place | None:
        """What is lit up now."""
        return self._selection

    def open_session(self, session: Session) -> None:
        """Put another project on the desk; the one before is let go."""
        self._session.changed = _nobody
        self._before = None
        self._session = session
        session.changed = self._timer.start
        self.select(None)
        self.now()

    def apply(self, name: str, project: Project) -> None:
        """One finished edit, one step to undo, called ``name``."""
        self._session.apply(name, project)

    def begin(self, name: str) -> None:
        """Begin a gesture that will be one step called ``name``."""
        self._session.begin(name)
        self._before = self._session.picture

    def preview(self, project: Project) -> None:
        """Show the project in the middle of a gesture."""
        self._session.preview(project)

    def commit(self) -> None:
        """End the gesture and keep what it did."""
        self._session.commit()
        self._timer.start()

    def cancel(self) -> None:
        """End the gesture as if it had not been."""
        self._session.cancel()
        self._timer.start()

    def undo(self) -> None:
        """Take back the last step, or the gesture under way."""
        self._session.undo()

    def redo(self) -> None:
        """Do again what was taken back."""
        self._session.redo()

    def mark_saved(self, path: Path) -> None:
        """Note that the project as it stands is whole on disk at ``path``."""
        self._session.mark_saved(path)

    def select(self, place: Place | None) -> None:
        """Light up a place, or nothing."""
        if place != self._selection:
            self._selection = place
            self.selected.emit(place)

    def refuse(self, field: str, sentence: str) -> None:
        """Say that an edit of ``field`` could not be read; the project stays as it is."""
        self.refused.emit(field, sentence)

    def now(self) -> None:
        """Redraft at once instead of at the next turn of the event loop."""
        self._redraft()

    def _redraft(self) -> None:
        self._timer.stop()
        self.drafted.emit(self._session.picture)
        told = (self._session, self.undo_name, self.redo_name, self.unsaved, self.path, self.gesturing)
        if told != self._told:
            self._told = told
            self.session_changed.emit()


def _nobody() -> None:
    """Take no notice of a session that has left the desk."""

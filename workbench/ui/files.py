"""New, open, save: the ways a project comes on the desk and leaves it."""

from __future__ import annotations

import re
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication

from workbench.document import FileTrouble, Project, Session, new_project, write_project
from workbench.document.keeping import Opened, open_project
from workbench.draft import Style
from workbench.ui.asking import Asking
from workbench.ui.desk import Desk
from workbench.ui.keeping import Keeping
from workbench.ui.settings import Settings

SUFFIX = ".bodice"
STYLE_NAMES: dict[Style, str] = {"under_bust": "Under-bust bodice", "over_bust": "Over-bust bodice"}


def settle() -> None:
    """Let the field that has the focus hand in what was typed, and leave the focus where it was."""
    focused = QApplication.focusWidget()
    if focused is not None:
        focused.clearFocus()
        if focused.isVisible():
            focused.setFocus()


class Files(QObject):
    """Moves projects between disk and desk, and never lets an unsaved one go unasked."""

    recent_changed = Signal()
    """The list of recent files is another."""
    opened = Signal()
    """There is another project on the desk."""

    def __init__(
        self,
        desk: Desk,
        settings: Settings,
        asking: Asking,
        parent: QObject | None = None,
        keeping: Keeping | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk = desk
        self._keeping = keeping
        self._settings = settings
        self._asking = asking

    @property
    def name(self) -> str:
        """What the open project is called: its client, else its file, else its style."""
        project = self._desk.project
        if project.client.name:
            return project.client.name
        return self._desk.path.stem if self._desk.path else STYLE_NAMES[project.design.style]

    def new(self, style: Style) -> bool:
        """Put an empty project on the desk; False when she stays with the one she has."""
        if not self.may_leave():
            return False
        self.put(new_project(style, self._settings.unit), None)
        return True

    def open(self) -> bool:
        """Ask for a file and open it; False when nothing was opened."""
        if not self.may_leave():
            return False
        path = self._asking.which_file(self._settings.folder())
        return path is not None and self._read(path, path)

    def open_path(self, path: Path) -> bool:
        """Open a file; False, and said why, when that cannot be done."""
        return self.may_leave() and self._read(path, path)

    def open_demo(self, path: Path) -> bool:
        """Open a demo as a new project: saving asks where to, and the demo stays as it is."""
        return self.may_leave() and self._read(path, None)

    def _read(self, path: Path, saved_at: Path | None) -> bool:
        try:
            opened = open_project(path)
        except FileTrouble as trouble:
            self._settings.forget(path)
            self.recent_changed.emit()
            self._asking.tell("The project was not opened", str(trouble))
            return False
        return self.put_read(opened, saved_at)

    def put_read(self, opened: Opened, path: Path | None) -> bool:
        """Put a project that was read on the desk; False when she leaves it to who has it open elsewhere."""
        answer = self._keeping.admit(path) if self._keeping is not None and path is not None else "take"
        if answer == "leave":
            return False
        self.put(opened.project, path if answer == "take" else None, opened)
        return True

    def put(self, project: Project, path: Path | None, opened: Opened | None = None) -> None:
        """Put a project on the desk that is whole on disk at ``path``, or nowhere yet.

        ``opened`` is what was read there; without it, saving asks before it writes over the file.
        """
        self._desk.open_session(Session(project, path))
        if self._keeping is not None:
            self._keeping.begin(opened)
        self.opened.emit()
        if path is not None:
            self._remember(path)

    def save(self) -> bool:
        """Save where it came from, or ask; False when it is still unsaved."""
        settle()
        path = self._desk.path
        return self.save_as() if path is None else self._write(path)

    def save_as(self) -> bool:
        """Ask where to and save; False when it is still unsaved."""
        settle()
        path = self._asking.where_to_save(self._suggested())
        return path is not None and self._write(path)

    def _suggested(self) -> Path:
        path = self._desk.path
        return path if path else self._settings.folder() / f"{plain_name(self.name)}{SUFFIX}"

    def folder_of_prints(self) -> Path:
        """Where a PDF is likely to go: beside the project."""
        return self._desk.path.parent if self._desk.path else self._settings.folder()

    def _write(self, path: Path) -> bool:
        answer = self._keeping.may_write(path) if self._keeping is not None else "mine"
        if answer == "save_as":
            return self.save_as()
        if answer == "theirs":
            self._read(path, path)
        return answer == "mine" and self._written(path)

    def _written(self, path: Path) -> bool:
        try:
            write_project(self._desk.project, path)
        except FileTrouble as trouble:
            if self._keeping is not None:
                self._keeping.not_written()
            self._asking.tell("The project was not saved", str(trouble))
            return False
        self._desk.mark_saved(path)
        if self._keeping is not None:
            self._keeping.written(path)
        self._remember(path)
        return True

    def _remember(self, path: Path) -> None:
        self._settings.remember(path)
        self.recent_changed.emit()

    def may_leave(self) -> bool:
        """Whether the open project may be let go: it is saved, or she said so."""
        settle()
        if not self._desk.unsaved:
            return True
        answer = self._asking.keep_changes(self.name)
        return answer == "discard" or (answer == "save" and self.save())


def plain_name(name: str) -> str:
    """A file name made of a title, on any file system; ``bodice`` when nothing is left of it."""
    kept = re.sub(r"[^\w ()-]+", " ", name).strip().rstrip(".")
    return re.sub(r"\s+", " ", kept)[:80].strip() or "bodice"

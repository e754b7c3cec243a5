"""Watches the desk so that no work is lost: unsaved work, the lock, the file on disk, earlier versions.

The desk is only looked at. Whatever can fail here fails beside her work and never stops it.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from PySide6.QtCore import QObject, QTimer

from workbench.document import FileTrouble, to_bytes
from workbench.document.keeping import (
    AUTOSAVE_SECONDS,
    SIGN_SECONDS,
    Autosave,
    Lock,
    Opened,
    Steps,
    Version,
    bytes_on_disk,
    digest_of,
    follow,
    keep_version,
    take,
    versions_of,
)
from workbench.ui.asking import Asking
from workbench.ui.desk import Desk
from workbench.ui.keeping_questions import Changed, Held, KeepingQuestions

_NOT_SAFE = "stays as it is: the other state of it could not be kept first. Save under another name."


class Keeping(QObject):
    """Keeps what is on one desk, in one data folder."""

    def __init__(
        self,
        desk: Desk,
        folder: Path,
        asking: Asking,
        questions: KeepingQuestions,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self.folder, self.questions = folder, questions
        self._desk, self._asking = desk, asking
        self._session = desk.session
        self._steps = Steps(desk.project)
        self._autosave = Autosave(folder)
        self._kept: object = None
        """The project that the kept work holds; None while none is kept."""
        self._digest = ""
        self._lock: Lock | None = None
        self._waiting: Lock | None = None
        """Taken for a file that is about to be opened or written."""
        self._failing = False
        self.soon = _timer(self, AUTOSAVE_SECONDS, self.keep_now)
        self.soon.setSingleShot(True)
        self.sign = _timer(self, SIGN_SECONDS, self.on_sign)
        self.sign.start()
        desk.drafted.connect(self.on_drafted)

    # --- unsaved work ----------------------------------------------------------------------

    def on_drafted(self) -> None:
        """See whether there is anything to keep; it is kept within seconds, however long she goes on."""
        desk = self._desk
        if desk.session is not self._session:
            self.begin(None)
        if desk.gesturing:
            return
        if not desk.unsaved:
            self._let_go()
            return
        self._steps.see(desk.project, desk.undo_name or "")
        if desk.project is not self._kept and not self.soon.isActive():
            self.soon.start()

    def keep_now(self) -> bool:
        """Put unsaved work on disk; False, and said once, when that cannot be done."""
        desk = self._desk
        # a gesture may yet be cancelled, and is not waited for
        project = desk.session.before_gesture or desk.project
        try:
            self._autosave.keep(project, desk.path, self._digest, self._steps.names)
        except FileTrouble as trouble:
            sentence = f"{trouble} Your work is only in this window until you save it."
            self._say_failing("Unsaved work cannot be kept", sentence)
            self.soon.start()
            return False
        self._kept, self._failing = project, False
        return True

    def _say_failing(self, title: str, sentence: str) -> None:
        """Say it once, until something could be kept again."""
        if not self._failing:
            self._failing = True
            self._asking.tell(title, sentence)

    def _let_go(self) -> None:
        """Nothing is unsaved: forget what was kept."""
        self.soon.stop()
        self._steps = Steps(self._desk.project)
        if self._kept is not None:
            with suppress(FileTrouble):
                self._autosave.drop()
                self._kept = None

    # --- what is open ----------------------------------------------------------------------

    def admit(self, path: Path, to_save: bool = False) -> Held:
        """Whether the file may be opened or written (``take``), as another program may hold it; asks then."""
        self._drop_waiting()
        if self._lock is not None and self._is_mine(path):
            return "take"
        lock = take(path)
        if not isinstance(lock, Lock):
            answer = self.questions.held(path, lock, to_save)
            if answer != "take":
                return answer
            lock = take(path, force=True)
        if isinstance(lock, Lock):
            self._waiting = lock
        return "take"

    def begin(self, opened: Opened | None) -> None:
        """Another project is on the desk; what was kept of the one before has had her word by now."""
        self._session = self._desk.session
        self._let_go()
        self._autosave, self._kept = Autosave(self.folder), None
        path = self._desk.path
        self._move_lock(path)
        self._digest = opened.digest if opened and path is not None else ""
        if opened and path is not None:
            follow(self.folder, path, opened.data)

    def end(self) -> None:
        """The window closes: nothing unsaved is wanted, and the project is free for others."""
        self._let_go()
        self.sign.stop()
        self._drop_waiting()
        self._move_lock(None)

    def on_sign(self) -> None:
        """Say that this program is still there, and hear whether another has taken the project over."""
        if self._kept is not None:
            self.keep_now()
        other = self._lock.sign() if self._lock is not None else None
        if other is not None and self._lock is not None:
            name = self._lock.project.name
            self._lock = None
            self._asking.tell(
                "The project was opened elsewhere",
                f"“{name}” is now open on “{other.machine}” too; "
                "if it is saved there, you are asked before your saving writes over it.",
            )

    def _move_lock(self, path: Path | None) -> None:
        """Hold the lock of the file that is open now, and no other."""
        if self._lock is not None and (path is None or self._lock.project != path):
            self._lock.release()
            self._lock = None
        if path is None or self._lock is not None:
            return
        if self._waiting is not None and self._waiting.project == path:
            self._lock, self._waiting = self._waiting, None
            return
        lock = take(path)
        self._lock = lock if isinstance(lock, Lock) else None

    def _drop_waiting(self) -> None:
        if self._waiting is not None:
            self._waiting.release()
            self._waiting = None

    def _is_mine(self, path: Path) -> bool:
        return self._lock is not None and self._lock.project == path

    # --- saving ----------------------------------------------------------------------------

    def may_write(self, path: Path) -> Changed:
        """``mine`` when the file may be written now; asks where it has changed or is held elsewhere.

        What is in the file, and with ``theirs`` what is on the desk, is kept as a version first.
        """
        own = path == self._desk.path
        if not own and self.admit(path, to_save=True) != "take":
            return "stay"
        try:
            there = bytes_on_disk(path)
        except FileTrouble as trouble:
            if not own:
                return "mine"  # whoever writes says what is in the way
            self._asking.tell("The file cannot be compared", f"{trouble} Save under another name.")
            return "save_as"
        changed = own and there is not None and self._is_new(there)
        answer = self.questions.changed(path) if changed else "mine"
        if answer in ("save_as", "stay"):
            return answer
        states = [there or b"", to_bytes(self._desk.project) if answer == "theirs" else b""]
        safe = all(self._keep_version(path, state) for state in states if state)
        if changed and not safe:
            # of two states that differ, neither is let go before it is among the versions
            self._asking.tell("Nothing was written", f"“{path.name}” {_NOT_SAFE}")
            return "stay"
        return answer

    def _is_new(self, data: bytes) -> bool:
        return digest_of(data) != self._digest and data != to_bytes(self._desk.project)

    def written(self, path: Path) -> None:
        """The project on the desk has been written to ``path``."""
        data = to_bytes(self._desk.project)
        self._digest = digest_of(data)
        self._move_lock(path)
        self._keep_version(path, data)

    def not_written(self) -> None:
        """Nothing came of a file that might be written: it is free for others again."""
        self._drop_waiting()

    def _keep_version(self, path: Path, data: bytes) -> bool:
        try:
            keep_version(self.folder, path, data)
        except FileTrouble as trouble:
            self._say_failing("An earlier version cannot be kept", str(trouble))
            return False
        return True

    def versions(self) -> tuple[Version, ...]:
        """The versions kept of the open project, the latest first; none while it was never saved."""
        return versions_of(self.folder, self._desk.path) if self._desk.path is not None else ()


def _timer(parent: Keeping, seconds: float, told: Callable[[], object]) -> QTimer:
    timer = QTimer(parent)
    timer.setInterval(round(1000 * seconds))
    timer.timeout.connect(told)
    return timer

"""Work that takes longer than a blink, done beside the window on a frozen value."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from threading import Lock

from PySide6.QtCore import QCoreApplication, QObject, QThread

from workbench.document import write_whole


class Job(QThread):
    """Runs one function; when it has ``finished``, either ``result`` or ``error`` is there."""

    def __init__(self, work: Callable[[], object], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._work = work
        self.result: object = None
        self.error: Exception | None = None

    def run(self) -> None:
        """Do the work; what it raises is kept for whoever waits."""
        try:
            self.result = self._work()
        except Exception as error:
            self.error = error

    def hold(self) -> None:
        """Wait for the end: a thread may not outlive the program."""
        self.wait()


class FileJob(Job):
    """Makes a file and writes it whole, unless it is left off before it is made: then nothing is written."""

    def __init__(self, path: Path, make: Callable[[], bytes], parent: QObject | None = None) -> None:
        super().__init__(self._make_and_write, parent)
        self._path, self._make = path, make
        self._lock = Lock()
        self._left_off = self._writing = False

    def leave_off(self) -> bool:
        """Write nothing; False where it is too late for that, as the file is being written already.

        What is being made cannot be stopped in the middle: the job goes on beside the window until
        that is done, lets it go, and deletes itself. Whoever began it need keep it no longer.
        """
        with self._lock:
            if self._writing:
                return False
            self._left_off = True
        application = QCoreApplication.instance()
        self.setParent(application)
        if application is not None:
            application.aboutToQuit.connect(self.hold)
        self.finished.connect(self.deleteLater)
        if self.isFinished():
            self.deleteLater()
        return True

    def _make_and_write(self) -> None:
        data = self._make()
        with self._lock:
            self._writing = not self._left_off
        if self._writing:
            write_whole(self._path, data)

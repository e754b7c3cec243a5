"""The folder looked into and its files read, beside the window."""

from __future__ import annotations

from pathlib import Path
from time import monotonic

from PySide6.QtCore import QObject, QThread, Signal

from workbench.book import Entry, Shelf, keep, look_at, read_waiting
from workbench.document import FileTrouble

_TELL_SECONDS = 0.25
"""Between two times that what was read is handed over: the list is put in order each time."""
_KEEP_SECONDS = 10.0
"""Between two times that the index is written, so that an end in the middle costs little."""


class Reading(QThread):
    """Looks into a folder once and reads what has changed; :meth:`requestInterruption` cancels.

    What was read until then is kept.
    """

    looked = Signal(object)
    """The :class:`Shelf` as the index has it, before any file is read."""
    read = Signal(object)
    """A list of entries read since it last said so."""
    failed = Signal(str)
    """One sentence: the folder cannot be looked into."""

    def __init__(self, folder: Path, index: Path, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._folder, self._index = folder, index
        self.error: Exception | None = None
        """What went wrong that nobody foresaw, once it has ``finished``."""

    def run(self) -> None:
        """Look, read, keep."""
        try:
            self._run()
        except FileTrouble as trouble:
            self.failed.emit(str(trouble))
        except Exception as error:
            # an exception in a thread would be lost: whoever waits for its end takes it up
            self.error = error

    def _run(self) -> None:
        shelf = look_at(self._folder, self._index)
        self.looked.emit(shelf)
        told: list[Entry] = []
        fresh: list[Entry] = []
        last_told = last_kept = monotonic()
        for entry in read_waiting(shelf):
            told.append(entry)
            fresh.append(entry)
            now = monotonic()
            if now - last_told > _TELL_SECONDS:
                self.read.emit(told)
                told, last_told = [], now
            if now - last_kept > _KEEP_SECONDS:
                shelf, fresh, last_kept = self._kept(shelf, fresh), [], now
            if self.isInterruptionRequested():
                break
        if told:
            self.read.emit(told)
        if fresh or shelf.outdated:
            self._kept(shelf, fresh)

    def _kept(self, shelf: Shelf, fresh: list[Entry]) -> Shelf:
        shelf = shelf.with_read(fresh)
        try:
            keep(shelf, self._index)
        except FileTrouble:
            # without an index everything is read again next time, which is all that it costs
            return shelf
        return shelf

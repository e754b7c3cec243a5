"""Packing and removing one client, asked about first and told about afterwards."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from workbench.book import Belongings, Entry, belongings_of, hand_out, remove
from workbench.document import FileTrouble, plain_stem
from workbench.ui.book.asking import BookAsking
from workbench.ui.desk import Desk
from workbench.ui.job import Job
from workbench.ui.settings import Settings


class ClientDeeds(QObject):
    """What can be done with all of a client."""

    said = Signal(str, str)
    """A mark and a sentence about what was done."""
    removed = Signal(object)
    """Places in the book whose files are no more."""

    def __init__(
        self,
        desk: Desk,
        settings: Settings,
        data: Path | None,
        asking: BookAsking,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk, self._settings, self._data = desk, settings, data
        self._asking = asking
        self._job: Job | None = None
        self._out = Path()

    def pack(self, folder: Path, entries: Sequence[Entry], entry: Entry) -> None:
        """Pack all of a client into one file of her choice, beside the window."""
        self.wait()
        hers = belongings_of(folder, entries, entry, self._data)
        chosen = self._asking.which_of_hers(hers, "pack")
        if chosen is None:
            return
        stem = plain_stem(hers.name, "client")
        out = self._asking.where_to_pack(self._settings.folder() / f"{stem}.zip")
        if out is None:
            return
        self._out = out
        self._job = Job(lambda: hand_out(chosen, out), self)
        self._job.finished.connect(self.show_packed)
        self.said.emit("note", f"Packing {hers.name} …")
        self._job.start()

    def wait(self) -> None:
        """Until what is being packed is packed."""
        if self._job is not None:
            self._job.wait()
            self.show_packed()

    def show_packed(self) -> None:
        """Say where the file is, or why there is none."""
        job, self._job = self._job, None
        if job is None:
            return
        if job.error is None:
            self.said.emit("within", f"{_files(job.result)} packed in {self._out}.")
        elif isinstance(job.error, FileTrouble):
            self.said.emit("stop", f"Nothing was packed: {job.error}")
        else:
            raise job.error
        job.deleteLater()

    def remove(self, folder: Path, entries: Sequence[Entry], entry: Entry) -> None:
        """Remove a client after a question that names what goes."""
        hers = belongings_of(folder, entries, entry, self._data)
        open_here = next((kept.place for kept in hers.projects if self._is_on_desk(kept.file)), "")
        if open_here:
            self._asking.tell(
                "Nothing was removed", f"“{open_here}” is open in this window: close the project first."
            )
            return
        chosen = self._asking.which_of_hers(hers, "remove")
        if chosen is not None:
            self._remove(chosen)

    def _remove(self, chosen: Belongings) -> None:
        done = remove(chosen, self._data)
        gone = {os.path.realpath(path) for path in done.gone}
        for path in self._settings.recent():
            if os.path.realpath(path) in gone:
                self._settings.forget(path)
        self.removed.emit(done.places)
        if done.stays:
            self.said.emit("stop", f"Not everything was removed: {' '.join(done.stays)}")
        else:
            versions = chosen.versions
            which = f", with {versions} earlier version{'' if versions == 1 else 's'}" if versions else ""
            self.said.emit("within", f"{_files(len(done.gone))} removed{which}.")

    def _is_on_desk(self, file: Path) -> bool:
        path = self._desk.path
        return path is not None and os.path.realpath(path) == os.path.realpath(file)


def _files(count: object) -> str:
    return "One file is" if count == 1 else f"{count} files are"

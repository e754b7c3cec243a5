"""The book opened: what the index knows of the files in the folder, and what is still to be read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from workbench.book.entry import Entry, Found
from workbench.book.index import read_index, write_index
from workbench.book.reading import entry_of
from workbench.book.walk import files_in


@dataclass(frozen=True)
class Shelf:
    """The folder at one look."""

    folder: Path
    entries: tuple[Entry, ...]
    """Of files that have been read as they are now."""
    waiting: tuple[Found, ...]
    """Files that are new or have changed, the latest first."""
    remarks: tuple[str, ...] = ()
    """What was left out, one sentence each."""
    outdated: bool = False
    """Whether the index knows of files that are gone."""

    def with_read(self, read: Iterable[Entry]) -> Shelf:
        """The shelf with these entries read."""
        new = tuple(read)
        done = {entry.place for entry in new}
        kept = tuple(entry for entry in self.entries if entry.place not in done)
        waiting = tuple(found for found in self.waiting if found.place not in done)
        return replace(self, entries=(*kept, *new), waiting=waiting)

    def without(self, places: Sequence[str]) -> Shelf:
        """The shelf after some files have been removed."""
        gone = set(places)
        return replace(
            self,
            entries=tuple(entry for entry in self.entries if entry.place not in gone),
            waiting=tuple(found for found in self.waiting if found.place not in gone),
        )


def look_at(folder: Path, index: Path) -> Shelf:
    """The shelf as folder and index have it, with no project file read.

    FileTrouble, in one sentence, where the folder cannot be looked into.
    """
    files, remarks = files_in(folder)
    known = read_index(index)
    entries, waiting = [], []
    for found in files:
        entry = known.get(found.place)
        # what could not be opened may have been put right without a change to the file itself
        if entry is not None and entry.found == found and not entry.reason:
            entries.append(entry)
        else:
            waiting.append(found)
    waiting.sort(key=lambda found: found.mtime_ns, reverse=True)
    outdated = len(entries) < len(known)
    return Shelf(folder, tuple(entries), tuple(waiting), remarks, outdated)


def read_waiting(shelf: Shelf) -> Iterator[Entry]:
    """The entries of the files that wait, one after the other; to stop asking is to cancel."""
    return (entry_of(shelf.folder, found) for found in shelf.waiting)


def keep(shelf: Shelf, index: Path) -> None:
    """Put what has been read into the index; FileTrouble where that fails."""
    write_index(index, shelf.entries)

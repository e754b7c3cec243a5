"""Tests of the client book. Every client in them is invented."""

from __future__ import annotations

from pathlib import Path

from tests.document import example
from workbench.book import Entry, Shelf, keep, look_at, read_waiting
from workbench.document import Project, set_client, to_bytes


def written(folder: Path, place: str, project: Project | None = None, **client: str) -> Path:
    """A project file of a client at a place in a folder, long since written."""
    path = folder / place
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(to_bytes(set_client(project or example(), **client)))
    return path


def read(folder: Path, index: Path) -> Shelf:
    """The shelf with everything read and kept."""
    shelf = look_at(folder, index)
    shelf = shelf.with_read(read_waiting(shelf))
    keep(shelf, index)
    return shelf


def by_place(shelf: Shelf) -> dict[str, Entry]:
    return {entry.place: entry for entry in shelf.entries}

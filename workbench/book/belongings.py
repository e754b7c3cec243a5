"""All that is kept of one client: her project files, and what the program has made of them.

The same name is taken for the same client, whatever its case; who has none is the client of
one file. Two clients of one name cannot be told apart here, which is why every file is named
before anything is done with it, and each can be left out.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from workbench.book.entry import Entry
from workbench.book.order import folded
from workbench.document import SUFFIX, FileTrouble, Project
from workbench.document.keeping import Unsaved, Version, left_over, open_project, versions_of

_PRINTS = ("pdf", "svg", "dxf", "csv", "txt", "json", "zip")
_ADDED = r"( (lay plans|quote|inside sheet)|-rescued(-\d+)?)?"
"""What the program itself adds to the name of a project."""


@dataclass(frozen=True)
class Kept:
    """One project file with what is kept of it."""

    file: Path
    place: str
    """From the folder of the book."""
    versions: tuple[Version, ...] = ()
    unsaved: tuple[Unsaved, ...] = ()


@dataclass(frozen=True)
class Belongings:
    """What there is of one client."""

    name: str
    projects: tuple[Kept, ...]
    prints: tuple[Path, ...] = ()
    """Files beside a project that are called as the program calls what it prints from it, and
    copies that the program rescued when it went wrong."""
    never_saved: tuple[Unsaved, ...] = ()
    """Unsaved work of projects that have no file yet."""

    @property
    def versions(self) -> int:
        """How many earlier versions there are of all projects."""
        return sum(len(kept.versions) for kept in self.projects)

    @property
    def unsaved(self) -> int:
        """How many times unsaved work is kept."""
        return sum(len(kept.unsaved) for kept in self.projects) + len(self.never_saved)

    def only(self, files: Sequence[Path]) -> Belongings:
        """The same with nothing but these files and what is kept of them."""
        wanted = set(files)
        projects = tuple(kept for kept in self.projects if kept.file in wanted)
        return replace(self, projects=projects, prints=tuple(one for one in self.prints if one in wanted))


def of_one_client(entries: Sequence[Entry], entry: Entry) -> list[Entry]:
    """The entries of the same client as this one, itself the first."""
    others = [one for one in entries if one.place != entry.place and entry.name and _same(one, entry)]
    return [entry, *sorted(others, key=lambda one: one.place)]


def _same(one: Entry, other: Entry) -> bool:
    return folded(one.name) == folded(other.name)


def belongings_of(folder: Path, entries: Sequence[Entry], entry: Entry, data: Path | None) -> Belongings:
    """What there is of the client of an entry; ``data`` is where versions and unsaved work are kept."""
    hers = of_one_client(entries, entry)
    unsaved = left_over(data) if data is not None else ()
    projects = tuple(_kept(folder, one, data, unsaved) for one in hers)
    # a print may be called as a project of somebody else is
    taken = {(folder / one.place).with_suffix("") for one in entries if one not in hers}
    prints = dict.fromkeys(path for one in hers for path in _prints(folder, one))
    files = {kept.file for kept in projects}
    beside = (path for path in prints if path.with_suffix("") not in taken and path not in files)
    return Belongings(
        entry.title,
        projects,
        (*beside, *_rescued(data, entry.name)),
        tuple(one for one in unsaved if one.path is None and _is_hers(one.project, entry.name)),
    )


def _is_hers(project: Project, name: str) -> bool:
    return bool(name) and folded(" ".join(project.client.name.split())) == folded(name)


def _rescued(data: Path | None, name: str) -> Iterator[Path]:
    """Copies of her projects that were rescued before they had a file of their own."""
    if data is None or not name:
        return
    for path in sorted(data.glob(f"rescued*{SUFFIX}")):
        with suppress(FileTrouble):
            if _is_hers(open_project(path).project, name):
                yield path


def _kept(folder: Path, entry: Entry, data: Path | None, unsaved: Sequence[Unsaved]) -> Kept:
    file = folder / entry.place
    real = os.path.realpath(file)
    return Kept(
        file,
        entry.place,
        versions_of(data, file) if data is not None else (),
        tuple(one for one in unsaved if one.path is not None and os.path.realpath(one.path) == real),
    )


def _prints(folder: Path, entry: Entry) -> Iterator[Path]:
    """What lies beside a project under its own name or its client's, with what the program adds to it."""
    stems = "|".join(re.escape(stem) for stem in {entry.stem, entry.name} if stem)
    named = re.compile(rf"({stems}){_ADDED}\.({'|'.join(_PRINTS)}|{SUFFIX.lstrip('.')})", re.IGNORECASE)
    with suppress(OSError):
        beside = sorted((folder / entry.place).parent.iterdir())
        yield from (path for path in beside if named.fullmatch(path.name) and path.is_file())

"""The project files in a folder and the folders in it.

Links are not followed, whether to a file or to a folder: a loop has no end, and what lies
elsewhere is not in this book. Hidden files and folders, such as the store of a program that
synchronises, are passed over.
"""

from __future__ import annotations

import os
from dataclasses import dataclass, field
from pathlib import Path

from workbench.book.entry import Found
from workbench.document import SUFFIX, FileTrouble

DEEPEST = 8
"""Folders within folders."""
MOST_FILES = 50_000
"""Project files; a book of ten a day for thirteen years."""
_NAMED = 3
"""Folders named in a remark; more are counted."""


@dataclass
class _Walk:
    """What a walk has come across."""

    files: list[Found] = field(default_factory=list)
    links: list[str] = field(default_factory=list)
    shut: list[str] = field(default_factory=list)
    deep: list[str] = field(default_factory=list)
    seen: set[tuple[int, int]] = field(default_factory=set)
    full: bool = False


def files_in(folder: Path) -> tuple[tuple[Found, ...], tuple[str, ...]]:
    """The project files in a folder, and a sentence for each kind of thing that was left out.

    FileTrouble, in one sentence, where the folder itself cannot be looked into.
    """
    walk = _Walk()
    try:
        # a folder that is a link itself was chosen by her, and is followed
        _look_into(os.path.realpath(folder), "", 0, walk)
    except OSError as error:
        raise FileTrouble(folder, _why(folder, error)) from error
    return tuple(walk.files), tuple(_remarks(walk))


def _look_into(path: str, place: str, depth: int, walk: _Walk) -> None:
    """Add what is in one folder; OSError where it cannot be looked into."""
    with os.scandir(path) as entries:
        # all of it first: no more than one folder is open at a time, however deep they lie
        inside = sorted(entries, key=lambda entry: entry.name)
    for entry in inside:
        if walk.full:
            return
        if entry.name.startswith("."):
            continue
        there = f"{place}{entry.name}"
        if entry.is_symlink():
            if entry.name.endswith(SUFFIX) or entry.is_dir():
                walk.links.append(there)
        elif entry.is_dir(follow_symlinks=False):
            _go_down(entry, there, depth + 1, walk)
        elif entry.name.endswith(SUFFIX):
            _add(entry, there, walk)


def _go_down(entry: os.DirEntry[str], place: str, depth: int, walk: _Walk) -> None:
    try:
        status = entry.stat(follow_symlinks=False)
        known = (status.st_dev, status.st_ino)
        if known in walk.seen and status.st_ino:
            # a folder that is in itself without any link, as some mounts make it
            walk.links.append(place)
        elif depth > DEEPEST:
            walk.deep.append(place)
        else:
            walk.seen.add(known)
            _look_into(entry.path, f"{place}/", depth, walk)
    except OSError:
        walk.shut.append(place)


def _add(entry: os.DirEntry[str], place: str, walk: _Walk) -> None:
    try:
        status = entry.stat(follow_symlinks=False)
    except OSError:
        # gone since the folder was read, or not to be seen: reading it says which
        walk.files.append(Found(place, -1, -1))
        return
    walk.files.append(Found(place, status.st_size, status.st_mtime_ns))
    walk.full = len(walk.files) >= MOST_FILES


def _remarks(walk: _Walk) -> list[str]:
    said = []
    if walk.links:
        said.append(
            f"Links are not followed, so that what lies elsewhere is not listed: {_named(walk.links)}."
        )
    if walk.shut:
        said.append(f"What is in {_named(walk.shut)} cannot be read: the folder is not open to you.")
    if walk.deep:
        said.append(f"Folders more than {DEEPEST} deep are not looked into: {_named(walk.deep)}.")
    if walk.full:
        said.append(f"Only the first {MOST_FILES:,} project files are listed.")
    return said


def _named(places: list[str]) -> str:
    shown = ", ".join(f"“{place}”" for place in places[:_NAMED])
    more = len(places) - _NAMED
    return f"{shown} and {more} more" if more > 0 else shown


def _why(folder: Path, error: OSError) -> str:
    if isinstance(error, FileNotFoundError):
        return "there is no such folder."
    if isinstance(error, NotADirectoryError):
        return "is a file, not a folder."
    if isinstance(error, PermissionError):
        return "the folder is not open to you, so that its projects cannot be listed."
    reason = error.strerror or str(error)
    return f"cannot be read: {reason[:1].lower()}{reason[1:]}."

"""Removing one client: her files, their earlier versions, unsaved work, and her lines in the index."""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from workbench.book.belongings import Belongings, Kept
from workbench.document import FileTrouble
from workbench.document.keeping import Lock, drop, forget, take


@dataclass(frozen=True)
class Removed:
    """What came of it."""

    gone: tuple[Path, ...]
    """Project files and prints that are no more."""
    places: tuple[str, ...]
    """Of the project files among them, from the folder of the book."""
    stays: tuple[str, ...]
    """A sentence for each thing that could not be removed."""


def remove(belongings: Belongings, data: Path | None) -> Removed:
    """What was removed for good, and what stays with the reason.

    Versions and unsaved work go before their file does, so that nothing is left behind that no
    file leads to any more. A file that another program has open stays whole.
    """
    stays: list[str] = []

    def is_gone(act: Callable[[], object]) -> bool:
        try:
            act()
        except FileTrouble as trouble:
            stays.append(str(trouble))
            return False
        return True

    projects = [kept for kept in belongings.projects if is_gone(partial(_remove_project, kept, data))]
    prints = [path for path in belongings.prints if is_gone(partial(_unlink, path))]
    for unsaved in belongings.never_saved:
        is_gone(partial(drop, unsaved.file))
    gone = (*(kept.file for kept in projects), *prints)
    return Removed(gone, tuple(kept.place for kept in projects), tuple(stays))


def _remove_project(kept: Kept, data: Path | None) -> None:
    if not os.access(kept.file.parent, os.W_OK):
        # told before anything of hers is gone: a file without its versions is neither kept nor removed
        raise FileTrouble(kept.file, "cannot be removed: its folder is write-protected.")
    lock = take(kept.file)
    if not isinstance(lock, Lock):
        raise FileTrouble(
            kept.file, f"is open on “{lock.machine}”, so it was not removed: close it there first."
        )
    try:
        if data is not None:
            forget(data, kept.file)
        _unlink(kept.file)
        _sweep(kept.file)
    finally:
        lock.release()


def _unlink(path: Path) -> None:
    try:
        path.unlink(missing_ok=True)
    except OSError as error:
        raise FileTrouble(path, f"cannot be removed: {(error.strerror or str(error)).lower()}.") from error


def _sweep(file: Path) -> None:
    """Take away what a save that was interrupted left beside the file."""
    ours = re.compile(rf"\.{re.escape(file.name[:40])}\.[0-9a-f]{{8}}\.part")
    with suppress(OSError):
        for left in file.parent.iterdir():
            if ours.fullmatch(left.name):
                left.unlink()

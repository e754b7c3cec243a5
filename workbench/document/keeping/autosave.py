"""Unsaved work, kept in the user's data folder until it is saved, taken up or thrown away by her.

One file for each open project holds the work and whose it is, so that there is no moment at which
only one of the two is there. Work of a program that has ended is left over. Figures are own choice,
how often and how much is kept.
"""

from __future__ import annotations

import json
import os
import secrets
import time
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

from workbench.document.file import MOST_BYTES, project_from, to_bytes
from workbench.document.keeping.differences import differences
from workbench.document.keeping.holder import (
    Clock,
    Holder,
    holder_from,
    is_running,
    is_this_program,
    this_program,
)
from workbench.document.keeping.opening import Opened, open_project, project_in
from workbench.document.project import Project, new_project
from workbench.document.storage import FileTrouble, read_whole, write_whole
from workbench.document.tree import TreeError
from workbench.frozen import dataclass

AUTOSAVE_SECONDS = 5.0
"""From the first edit that is not kept yet to its being kept: half of what is promised, for slow disks."""
_SUFFIX = ".unsaved"
_MOST_NAMES = 500
_FOR_THE_REST = 200_000
"""Bytes for whose it is and the names of the steps."""


@dataclass(frozen=True)
class Unsaved:
    """Work that was left over."""

    file: Path
    holder: Holder
    path: Path | None
    """Where the project was opened from; None for one that was never saved."""
    digest: str
    """Of the file it was opened from or last saved to; empty for one that was never saved."""
    steps: tuple[str, ...]
    project: Project

    @property
    def when(self) -> float:
        """Seconds of the clock when it was kept."""
        return self.holder.seen

    def base(self) -> Opened | None:
        """What is on disk at its place now; None where there is nothing that can be read."""
        try:
            return open_project(self.path) if self.path is not None else None
        except FileTrouble:
            return None

    def compared(self) -> tuple[str, ...]:
        """What differs from the file as it is now, or from an empty project, one line a field."""
        base = self.base()
        start = base.project if base else new_project(self.project.design.style, self.project.unit)
        return differences(start, self.project)


class Autosave:
    """Keeps the unsaved work of one open project in one file."""

    def __init__(self, folder: Path, clock: Clock = time.time) -> None:
        token = secrets.token_hex(8)
        self.file = folder / "unsaved" / f"{token}{_SUFFIX}"
        self._holder = this_program(token, clock)
        self._clock = clock

    def keep(self, project: Project, path: Path | None, digest: str, steps: Sequence[str]) -> None:
        """Put the work on disk; FileTrouble where that fails, and then what was kept before stays.

        What would not open again is not kept, rather than kept in place of what would.
        """
        data = to_bytes(project)
        try:
            project_from(data)
        except TreeError as error:
            raise FileTrouble(self.file, f"not kept, it would not open again: {error}") from error
        tree = {
            "holder": self._holder.seen_at(self._clock()).plain(),
            "path": _path_text(path),
            "digest": digest,
            "steps": list(steps[-_MOST_NAMES:]),
            "project": data.decode("utf-8"),
        }
        _prepare(self.file.parent)
        write_whole(self.file, json.dumps(tree).encode("ascii"))

    def drop(self) -> None:
        """Let it go: the work is saved, or she has thrown it away."""
        drop(self.file)


def drop(file: Path) -> None:
    """Remove kept work; FileTrouble where it stays."""
    try:
        file.unlink(missing_ok=True)
    except OSError as error:
        raise FileTrouble(file, f"cannot be removed: {(error.strerror or str(error)).lower()}.") from error


def left_over(folder: Path, clock: Clock = time.time) -> tuple[Unsaved, ...]:
    """The work of programs that have ended, the latest first; what another still works at is not among it.

    A file that cannot be read is passed over and stays where it is.
    """
    found = []
    with suppress(OSError):
        for file in (folder / "unsaved").iterdir():
            unsaved = _read(file) if file.suffix == _SUFFIX else None
            if unsaved is not None and not _is_at_work(unsaved.holder, clock):
                found.append(unsaved)
    return tuple(sorted(found, key=lambda one: (one.when, one.file.name), reverse=True))


def _is_at_work(holder: Holder, clock: Clock) -> bool:
    # offered once too often is a nuisance, never offered is work lost: in doubt it has ended
    return is_this_program(holder) or is_running(holder, clock, in_doubt=False)


def _read(file: Path) -> Unsaved | None:
    try:
        tree = json.loads(read_whole(file, 2 * MOST_BYTES + _FOR_THE_REST))
        return _unsaved(file, tree)
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return None


def _unsaved(file: Path, tree: Any) -> Unsaved | None:
    holder = holder_from(tree["holder"])
    path, digest, steps = tree["path"], tree["digest"], tree["steps"]
    if holder is None or not isinstance(path, str) or not isinstance(digest, str):
        return None
    project = project_in(tree["project"].encode("utf-8"), file)
    where = Path(path) if path else None
    return Unsaved(file, holder, where, digest, tuple(str(step) for step in steps), project)


def _path_text(path: Path | None) -> str:
    return os.path.abspath(path) if path is not None else ""


def _prepare(folder: Path) -> None:
    """Make the folder, for nobody else to read."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        folder.chmod(0o700)
    except OSError as error:
        raise FileTrouble(folder, f"cannot be written: {(error.strerror or str(error)).lower()}.") from error

"""When the program itself goes wrong: the work is rescued first, then it is said, once.

The log holds where it happened and nothing of the client: no values, no names, no message
of the exception, which may quote either.
"""

from __future__ import annotations

import contextlib
import sys
import time
import traceback
from collections.abc import Callable
from pathlib import Path
from types import TracebackType

from workbench.document import Project, write_project
from workbench.ui.desk import Desk
from workbench.ui.files import SUFFIX

_LOG_LIMIT = 200_000
"""Bytes after which the log starts again."""

Tell = Callable[[str, str], None]


class Trouble:
    """Takes the place of the interpreter's exception hook while the window is open."""

    def __init__(self, desk: Desk, folder: Path, tell: Tell) -> None:
        self._desk = desk
        self._folder = folder
        self._tell = tell
        self._told: set[tuple[str, int]] = set()
        self._before = sys.excepthook

    def install(self) -> None:
        """From now on, exceptions that nobody caught come here."""
        sys.excepthook = self.on_exception

    def uninstall(self) -> None:
        """Give the hook back."""
        sys.excepthook = self._before

    def on_exception(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        """Rescue, note and tell; a fault that comes again from the same line is only noted."""
        self._before(kind, error, trace)
        if not issubclass(kind, Exception):
            return
        place = _place(trace)
        with contextlib.suppress(OSError):
            _note(self._folder / "trouble.log", kind, trace)
        if place not in self._told:
            self._told.add(place)
            self._tell("Something went wrong in the program", self._sentence())

    def _sentence(self) -> str:
        kept = rescue(self._desk.project, self._desk.path, self._folder)
        where = f"a copy of the project as it stands is in {kept}" if kept else "no copy could be written"
        return (
            f"The last step may not be complete; {where}. "
            "Undo the last step, or save under another name and start the program again. "
            f"What went wrong, without anything about the client, is noted in {self._folder / 'trouble.log'}."
        )


def rescue(project: Project, path: Path | None, folder: Path) -> Path | None:
    """Where a copy of the project was written: beside its own file, else in ``folder``, else None."""
    own = [path.with_name(f"{path.stem}-rescued{SUFFIX}")] if path else []
    for wanted in (*own, folder / f"rescued{SUFFIX}"):
        with contextlib.suppress(OSError, ValueError):
            wanted.parent.mkdir(parents=True, exist_ok=True)
            free = _free(wanted)
            write_project(project, free)
            return free
    return None


def _free(wanted: Path) -> Path:
    """A name that no file has yet: an earlier rescue is never written over."""
    free, number = wanted, 2
    while free.exists():
        free, number = wanted.with_name(f"{wanted.stem}-{number}{wanted.suffix}"), number + 1
    return free


def _place(trace: TracebackType | None) -> tuple[str, int]:
    frames = traceback.extract_tb(trace)
    return (frames[-1].filename, frames[-1].lineno or 0) if frames else ("", 0)


def _note(log: Path, kind: type[BaseException], trace: TracebackType | None) -> None:
    """Kind and place only: file names of the program, lines, functions."""
    log.parent.mkdir(parents=True, exist_ok=True)
    fresh = not log.exists() or log.stat().st_size > _LOG_LIMIT
    with log.open("w" if fresh else "a", encoding="utf-8") as out:
        out.write(f"{time.strftime('%Y-%m-%d %H:%M:%S')} {kind.__name__}\n")
        for frame in traceback.extract_tb(trace):
            out.write(f"    {Path(frame.filename).name}:{frame.lineno} {frame.name}\n")

"""A small file beside a project that says which program has it open.

It advises and never forbids: a folder that cannot be written, or a copy that a
synchronising program makes of the lock itself, must not keep anybody from her work. What
really guards a file is that its bytes are compared before it is written over.
"""

from __future__ import annotations

import hashlib
import json
import os
import secrets
import time
from contextlib import suppress
from pathlib import Path

from workbench.document.keeping.holder import (
    Clock,
    Holder,
    holder_from,
    is_running,
    is_this_program,
    this_program,
)
from workbench.document.storage import FileTrouble, read_whole, write_whole

_MOST_BYTES = 4000
"""Own choice: no lock is larger."""
_UNREADABLE = "a program that cannot be told"


class Lock:
    """Held on one project until :meth:`release`."""

    def __init__(self, project: Path, file: Path, holder: Holder, on_disk: bool) -> None:
        self.project = project
        self.on_disk = on_disk
        """False where the folder takes no lock; then nobody else can see this one."""
        self._file = file
        self._holder = holder

    def sign(self, clock: Clock = time.time) -> Holder | None:
        """Give a sign of life; the holder that has taken the lock over meanwhile, if one has.

        A lock that has gone, as when a folder was moved and came back, is put there again.
        """
        if not self.on_disk:
            return None
        there = _read(self._file)
        if there is not None and there.token != self._holder.token:
            return there
        with suppress(FileTrouble):
            write_whole(self._file, _bytes(self._holder.seen_at(clock())))
        return None

    def release(self) -> None:
        """Let the project go; a lock that is somebody else's by now stays."""
        there = _read(self._file) if self.on_disk else None
        if there is not None and there.token == self._holder.token:
            with suppress(OSError):
                self._file.unlink()
        self.on_disk = False


def take(project: Path, force: bool = False, clock: Clock = time.time) -> Lock | Holder:
    """A lock on the project, or the running program that holds it.

    With ``force`` it is taken from that one too, which hears of it at its next sign of
    life. A program that has ended holds nothing. Links to one file share one lock.
    """
    file = lock_file(project)
    mine = this_program(secrets.token_hex(8), clock)
    for _ in range(20):
        made = _make(file, mine)
        if made is not False:
            return Lock(project, file, mine, on_disk=bool(made))
        there = _read(file)
        if there is None:
            continue
        if not force and not is_this_program(there) and is_running(there, clock):
            return there
        _clear(file, there)
    # others keep taking it between our looks: whoever has it now is as good an answer as any
    return _read(file) or Lock(project, file, mine, on_disk=False)


def lock_file(project: Path) -> Path:
    """Where the lock of a project lies: beside the file itself, also when ``project`` is a link to it."""
    target = Path(os.path.realpath(project))
    name = target.name
    if len(name.encode("utf-8", "surrogateescape")) > 200:
        # the longest names that a file system takes leave no room for an ending
        name = f"{name[:40]}-{hashlib.sha256(name.encode('utf-8', 'surrogateescape')).hexdigest()[:16]}"
    return target.with_name(f".{name}.open")


def _make(file: Path, holder: Holder) -> bool | None:
    """Whether the lock was made, which only one of several can do; None where none can be made at all."""
    part = file.with_name(f"{file.name}-{holder.token}")
    try:
        part.write_bytes(_bytes(holder))
        try:
            # a link appears with its content, so that nobody can find a lock still empty
            os.link(part, file)
        except FileExistsError:
            return False
        except OSError:
            return _make_plainly(file, holder)
        finally:
            part.unlink()
    except OSError:
        return None
    return True


def _make_plainly(file: Path, holder: Holder) -> bool:
    """The same where the file system knows no links, as on many sticks."""
    try:
        with file.open("xb") as out:
            out.write(_bytes(holder))
    except FileExistsError:
        return False
    return True


def _clear(file: Path, dead: Holder) -> None:
    """Take a lock away if it is still the one that was found dead; one made meanwhile is put back."""
    aside = file.with_name(f"{file.name}-{secrets.token_hex(8)}")
    with suppress(OSError):
        file.rename(aside)
        there = _read(aside)
        if there is not None and there.token != dead.token:
            with suppress(OSError):
                os.link(aside, file)
        aside.unlink()


def _read(file: Path) -> Holder | None:
    """Who is written in a lock; None where there is none. An unreadable one is as old as its file."""
    try:
        tree = json.loads(read_whole(file, _MOST_BYTES))
    except FileTrouble:
        if not file.exists():
            return None
        tree = None
    except (ValueError, RecursionError):
        tree = None
    return holder_from(tree) or _unreadable(file)


def _unreadable(file: Path) -> Holder | None:
    try:
        written = file.stat().st_mtime
    except OSError:
        return None
    return Holder(_UNREADABLE, "", "", "", 0, "", written, written)


def _bytes(holder: Holder) -> bytes:
    return (json.dumps(holder.plain(), ensure_ascii=False) + "\n").encode("utf-8", "replace")

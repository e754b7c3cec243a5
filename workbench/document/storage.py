"""Whole files only: a bounded read, and a write that leaves either the old file or the new one."""

from __future__ import annotations

import os
import re
import secrets
import stat
import time
from contextlib import suppress
from pathlib import Path

STALE_SECONDS = 3600.0
"""A half-written file this old belongs to a program that was ended in the middle of a save (own choice)."""
_READ, _WRITTEN = "cannot be read", "cannot be written"


class FileTrouble(ValueError):  # noqa: N818  said to the user, who has trouble with a file
    """A file that cannot be read or written: one sentence that names it, the place and the reason."""

    def __init__(self, path: Path, reason: str) -> None:
        super().__init__(f"{path}: {reason}")
        self.path = path
        self.reason = reason


def read_whole(path: Path, most: int) -> bytes:
    """The bytes of an ordinary file of at most ``most`` bytes; FileTrouble for anything else.

    A longer file is refused after its size, or after one byte too many, not read to its end.
    """
    try:
        # a pipe without a writer would otherwise keep the program waiting for ever
        descriptor = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
        try:
            return _read_open(descriptor, path, most)
        finally:
            os.close(descriptor)
    except (OSError, ValueError) as error:
        raise _trouble(path, error, _READ) from error


def _read_open(descriptor: int, path: Path, most: int) -> bytes:
    status = os.fstat(descriptor)
    if not stat.S_ISREG(status.st_mode):
        raise FileTrouble(path, _kind(status.st_mode))
    data = b""
    if status.st_size <= most:
        with open(descriptor, "rb", closefd=False) as file:
            data = file.read(most + 1)
    if max(status.st_size, len(data)) > most:
        raise FileTrouble(path, f"the file is larger than {most // 1_000_000} MB and was not read.")
    return data


def write_whole(path: Path, data: bytes) -> None:
    """Put ``data`` at ``path``; until all of it is on the disk, what was there before stays.

    A link is followed and kept, and the mode of a file that is there already is kept too.
    FileTrouble says why it could not be done; then nothing has changed.
    """
    try:
        target = _target(path)
        mode = _mode(target, path)
        part = target.with_name(f"{_part_stem(target)}{secrets.token_hex(4)}.part")
        try:
            _write_part(part, data, mode)
            os.replace(part, target)
        except BaseException:
            with suppress(OSError):
                part.unlink()
            raise
    except (OSError, ValueError) as error:
        raise _trouble(path, error, _WRITTEN) from error
    _settle(target)


def _target(path: Path) -> Path:
    """Where the bytes belong: the end of a chain of links, which may not exist yet."""
    if not path.name:
        raise FileTrouble(path, "names a folder, not a file.")
    target = Path(os.path.realpath(path)) if path.is_symlink() else path
    if target.is_symlink():
        raise FileTrouble(path, "is a link that leads back to itself.")
    return target


def _mode(target: Path, path: Path) -> int | None:
    """Permissions of the file that is there, None where there is none yet."""
    try:
        mode = target.stat().st_mode
    except FileNotFoundError:
        return None
    if not stat.S_ISREG(mode):
        raise FileTrouble(path, _kind(mode))
    if not os.access(target, os.W_OK):
        raise FileTrouble(path, "cannot be written: it is write-protected.")
    return stat.S_IMODE(mode)


def _write_part(part: Path, data: bytes, mode: int | None) -> None:
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    with open(os.open(part, flags, 0o666), "wb") as file:
        if mode is not None:
            # before a word of it is written: what was private is never readable for a moment
            part.chmod(mode)
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _part_stem(target: Path) -> str:
    """How the names of half-written files begin; short enough for any file system, whatever the letters."""
    return f".{target.name[:40]}."


def _settle(target: Path) -> None:
    """Make the new name last through a power cut, and clear away what an interrupted save left behind."""
    with suppress(OSError):
        folder = os.open(target.parent, os.O_RDONLY)
        try:
            os.fsync(folder)
        finally:
            os.close(folder)
    ours = re.compile(re.escape(_part_stem(target)) + r"[0-9a-f]{8}\.part")
    with suppress(OSError):
        for left in target.parent.iterdir():
            if ours.fullmatch(left.name) and time.time() - left.stat().st_mtime > STALE_SECONDS:
                left.unlink()


def _kind(mode: int) -> str:
    return "is a folder, not a file." if stat.S_ISDIR(mode) else "is not an ordinary file."


def _trouble(path: Path, error: OSError | ValueError, what: str) -> FileTrouble:
    if isinstance(error, FileTrouble):
        return error
    if isinstance(error, FileNotFoundError):
        if not path.parent.is_dir():
            return FileTrouble(path, f"{what}: its folder does not exist.")
        if what == _READ:
            return FileTrouble(path, "there is no such file.")
    reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return FileTrouble(path, f"{what}: {reason[:1].lower()}{reason[1:]}.")

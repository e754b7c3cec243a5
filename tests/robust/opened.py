"""Whether anybody opens a file: asked of the system, since Qt opens files without Python."""

from __future__ import annotations

import ctypes
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

_IN_OPEN, _IN_NONBLOCK = 0x20, 0o4000  # inotify(7), Linux; from memory
_HEAD = 16
"""Bytes of a record before its name."""


@contextmanager
def watched(folder: Path) -> Iterator[Callable[[], bool]]:
    """Asks whether a file in the folder has been opened since; skipped where the system does not tell."""
    libc = ctypes.CDLL(None, use_errno=True)
    if not hasattr(libc, "inotify_init1"):
        pytest.skip("this system does not tell which files are opened")
    descriptor = libc.inotify_init1(_IN_NONBLOCK)
    if descriptor < 0 or libc.inotify_add_watch(descriptor, os.fsencode(folder), _IN_OPEN) < 0:
        pytest.skip("this system tells nothing about opened files any more")

    def opened() -> bool:
        try:
            return len(os.read(descriptor, 4096)) >= _HEAD
        except BlockingIOError:
            return False

    try:
        yield opened
    finally:
        os.close(descriptor)

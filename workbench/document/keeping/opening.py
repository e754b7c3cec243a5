"""A project file opened with what is needed to notice later that somebody else has written it."""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import NamedTuple

from workbench.document.file import MOST_BYTES, project_from
from workbench.document.project import Project
from workbench.document.storage import FileTrouble, read_whole
from workbench.document.tree import TreeError


class Opened(NamedTuple):
    """A project and the digest of the very bytes it was read from."""

    project: Project
    digest: str
    data: bytes


def open_project(path: Path) -> Opened:
    """The project in a file of this or an older version; FileTrouble names the file and the reason."""
    data = read_whole(path, MOST_BYTES)
    return Opened(project_in(data, path), digest_of(data), data)


def project_in(data: bytes, path: Path) -> Project:
    """The project in bytes that were read at ``path``; FileTrouble for anything else."""
    try:
        return project_from(data)
    except TreeError as error:
        raise FileTrouble(path, str(error)) from error


def digest_of(data: bytes) -> str:
    """What tells these bytes from any others, whatever the clock and the size of the file say."""
    return hashlib.sha256(data).hexdigest()


def bytes_on_disk(path: Path) -> bytes | None:
    """What is in a file now, None where there is none; FileTrouble where it cannot be read."""
    try:
        return read_whole(path, MOST_BYTES)
    except FileTrouble:
        if not path.exists():
            return None
        raise

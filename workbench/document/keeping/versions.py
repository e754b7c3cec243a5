"""The last versions of each project, kept in the user's data folder as plain project files.

They are not kept beside the project: her folder holds what she put there and nothing
else, a synchronised folder is not sent ten times as much, what happens to that folder or
stick does not happen to them too, and a disk that is full there does not matter here. The
price is that they do not travel with the file, and that removing a client must call
:func:`workbench.document.keeping.forget`.

Each project has a folder, named after its place. When a file has been moved or renamed,
the versions of the place that is no more and that end in the very same bytes are taken
along. The order of versions is in their numbers, since clocks jump.
"""

from __future__ import annotations

import hashlib
import json
import os
import re
import shutil
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from workbench.document.file import MOST_BYTES, SUFFIX
from workbench.document.keeping.holder import Clock
from workbench.document.keeping.opening import digest_of, project_in
from workbench.document.project import Project
from workbench.document.storage import FileTrouble, read_whole, write_whole
from workbench.frozen import dataclass

KEPT_VERSIONS = 10
"""Own choice: versions of a project that are kept."""
_NAME = re.compile(rf"(\d{{6,}})-(\d{{1,12}})-([0-9a-f]{{16}}){re.escape(SUFFIX)}")
_PLACE = "place.json"


@dataclass(frozen=True)
class Version:
    """One kept version; ``number`` grows with every one that is kept."""

    number: int
    when: float
    """Seconds of the clock when it was kept."""
    mark: str
    """The head of the digest of its bytes."""
    file: Path

    def read(self) -> Project:
        """The project as it was then; FileTrouble where the file is damaged or gone."""
        return project_in(read_whole(self.file, MOST_BYTES), self.file)


def versions_of(folder: Path, project: Path) -> tuple[Version, ...]:
    """The versions kept for a project file, the latest first."""
    return _versions_in(_home(folder, project))


def keep_version(folder: Path, project: Path, data: bytes, clock: Clock = time.time) -> Version:
    """Keep the bytes of a project file as its latest version, and let the oldest beyond ten go.

    Bytes that are the latest version already are not kept twice. FileTrouble says why they
    could not be kept; the versions there are stay.
    """
    home = _home(folder, project)
    _prepare(home, project)
    there = _versions_in(home)
    mark = digest_of(data)[:16]
    if there and there[0].mark == mark:
        return there[0]
    number = there[0].number + 1 if there else 1
    when = max(0, int(clock()))
    version = Version(number, float(when), mark, home / f"{number:06d}-{when}-{mark}{SUFFIX}")
    write_whole(version.file, data)
    for old in _versions_in(home)[KEPT_VERSIONS:]:
        with suppress(OSError):
            old.file.unlink()
    return version


def follow(folder: Path, project: Path, data: bytes) -> bool:
    """Whether versions of another place were taken along to this one.

    That is so when the file has no versions here, and those of a file that is no longer
    there end in the same bytes. Where the other folder is out of sight, renamed or on a
    stick that is not plugged in, they stay there as well.
    """
    home = _home(folder, project)
    if _versions_in(home):
        return False
    mark = digest_of(data)[:16]
    for other in _homes(folder):
        versions = _versions_in(other)
        place = _place_of(other)
        if versions and versions[0].mark == mark and place is not None and not os.path.lexists(place):
            return _take_along(other, home, project, moved=place.parent.is_dir())
    return False


def _take_along(other: Path, home: Path, project: Path, moved: bool) -> bool:
    try:
        shutil.rmtree(home, ignore_errors=True)
        if moved:
            other.rename(home)
        else:
            shutil.copytree(other, home)
        _prepare(home, project)
    except (OSError, FileTrouble):
        return False
    return True


def forget_versions(folder: Path, project: Path) -> None:
    """Remove every version kept for a project file; FileTrouble where one stays."""
    home = _home(folder, project)
    try:
        if home.is_dir():
            shutil.rmtree(home)
    except OSError as error:
        raise FileTrouble(home, f"cannot be removed: {(error.strerror or str(error)).lower()}.") from error


def _home(folder: Path, project: Path) -> Path:
    place = os.path.normcase(os.path.realpath(project)).encode("utf-8", "surrogateescape")
    return folder / "versions" / hashlib.sha256(place).hexdigest()[:24]


def _homes(folder: Path) -> Iterator[Path]:
    with suppress(OSError):
        yield from (folder / "versions").iterdir()


def _prepare(home: Path, project: Path) -> None:
    """Make the folder, for nobody else to read, and note whose it is."""
    try:
        home.parent.mkdir(parents=True, exist_ok=True)
        home.parent.chmod(0o700)
        home.mkdir(exist_ok=True)
    except OSError as error:
        raise FileTrouble(home, f"cannot be written: {(error.strerror or str(error)).lower()}.") from error
    place = os.path.realpath(project)
    if _place_of(home) != Path(place):
        write_whole(home / _PLACE, json.dumps({"place": place}).encode("ascii"))


def _place_of(home: Path) -> Path | None:
    """The project file that a folder belongs to; None where that cannot be read."""
    try:
        place = json.loads(read_whole(home / _PLACE, 100_000))["place"]
    except (ValueError, LookupError, TypeError, RecursionError):
        return None
    return Path(place) if isinstance(place, str) else None


def _versions_in(home: Path) -> tuple[Version, ...]:
    with suppress(OSError):
        named = [(_NAME.fullmatch(file.name), file) for file in home.iterdir()]
        found = [Version(int(name[1]), float(name[2]), name[3], file) for name, file in named if name]
        return tuple(sorted(found, key=lambda version: (version.number, version.file.name), reverse=True))
    return ()

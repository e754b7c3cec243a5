"""Killed at any moment of a save: the project, its versions and the unsaved work are whole, old or new."""

from __future__ import annotations

import os
import random
import signal
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tests.document import example
from tests.document.keeping import posix, program, said, small_disk, tell
from workbench.document import FileTrouble, Project, read_project, set_client, to_bytes, write_project
from workbench.document.keeping import Autosave, keep_version, left_over, versions_of

_SAVES, _KILLS = 300, 40
_MEMORY = Path("/dev/shm")

_PARENT = """
import os, sys
from pathlib import Path
from tests.document import example
from workbench.document import set_client, to_bytes, write_project
from workbench.document.keeping import Autosave, keep_version

path, data = Path(sys.argv[1]), Path(sys.argv[2])
projects = [set_client(example(), name=name, notes=name * 3000) for name in ("a", "b")]
print("ready", flush=True)

def save(count):
    # what was read in once is there for every child: reading it in anew would take all the time
    autosave = Autosave(data)
    while True:
        for project in projects:
            autosave.keep(project, path, "", ["Notes"])
            write_project(project, path)
            keep_version(data, path, to_bytes(project))
            os.write(count, b".")

for _ in sys.stdin:
    told, count = os.pipe()
    child = os.fork()
    if not child:
        os.close(told)
        save(count)
    os.close(count)
    print(child, flush=True)
    os.waitpid(child, 0)
    print(len(os.read(told, 100_000)), flush=True)
    os.close(told)
"""


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Path]:
    """Where saves are quick: a kill is no power cut, so nothing is shown by waiting for a real disk."""
    if not os.access(_MEMORY, os.W_OK):
        yield tmp_path
        return
    with TemporaryDirectory(dir=_MEMORY) as folder:
        yield Path(folder)


@posix
def test_killed_at_random_moments_of_300_saves(place: Path) -> None:
    path, data = place / "clients" / "a.bodice", place / "data"
    path.parent.mkdir()
    projects = [set_client(example(), name=name, notes=name * 3000) for name in ("a", "b")]
    wholes = [to_bytes(project) for project in projects]
    write_project(projects[0], path)
    chance, saves, kills = random.Random(5), 0, 0
    with program(_PARENT, str(path), str(data)) as parent:
        assert said(parent) == "ready"
        deadline = time.monotonic() + 60
        while (saves < _SAVES or kills < _KILLS) and time.monotonic() < deadline:
            tell(parent, "save")
            child = int(said(parent))
            # no wait for anything: the moment is to be any moment
            time.sleep(chance.uniform(0.0, 0.08))
            os.kill(child, signal.SIGKILL)
            saves, kills = saves + int(said(parent)), kills + 1
            assert path.read_bytes() in wholes
            assert all(version.file.read_bytes() in wholes for version in versions_of(data, path))
            _all_work_is_whole(data, projects)
    assert saves >= _SAVES, f"only {saves} saves"
    assert kills >= _KILLS
    assert read_project(path) in projects
    assert all(version.read() in projects for version in versions_of(data, path))


def _all_work_is_whole(data: Path, projects: list[Project]) -> None:
    files = list((data / "unsaved").glob("*.unsaved"))
    works = left_over(data)
    assert len(works) == len(files)
    assert all(work.project in projects for work in works)
    for file in (data / "unsaved").iterdir() if files else ():
        # half-written files of the killed are swept an hour later; here they would only pile up
        file.unlink()


@posix
def test_a_full_disk_costs_nothing_that_was_there(tmp_path: Path) -> None:
    with small_disk(tmp_path, 256) as disk:
        path, data = disk / "a.bodice", disk / "data"
        write_project(example(), path)
        before = path.read_bytes()
        keep_version(data, path, before)
        autosave = Autosave(data)
        autosave.keep(example(), path, "", [])
        kept = autosave.file.read_bytes()
        with suppress(OSError):
            (disk / "filler").write_bytes(bytes(1 << 20))
        longer = set_client(example(), notes="n" * 9000)
        with pytest.raises(FileTrouble, match="no space left"):
            write_project(longer, path)
        with pytest.raises(FileTrouble, match="no space left"):
            keep_version(data, path, to_bytes(longer))
        with pytest.raises(FileTrouble, match="no space left"):
            autosave.keep(longer, path, "", [])
        assert path.read_bytes() == before
        assert [version.file.read_bytes() for version in versions_of(data, path)] == [before]
        assert autosave.file.read_bytes() == kept

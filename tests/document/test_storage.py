"""Whatever happens in the middle of a save, the file is the old one or the new one, whole."""

from __future__ import annotations

import os
import signal
import stat
import subprocess
import sys
import time
from contextlib import suppress
from pathlib import Path

import pytest

from tests.document import example
from workbench.document import FileTrouble, read_project, set_client, to_bytes, write_project, write_whole
from workbench.document.storage import STALE_SECONDS, read_whole

posix = pytest.mark.skipif(os.name != "posix", reason="links, modes and signals of POSIX systems")


def test_new_file_and_replaced_file(tmp_path: Path) -> None:
    path = tmp_path / "a.bodice"
    write_whole(path, b"one")
    assert path.read_bytes() == b"one"
    write_whole(path, b"two")
    assert path.read_bytes() == b"two"
    assert list(tmp_path.iterdir()) == [path]


@posix
def test_mode_of_the_file_is_kept_and_a_new_one_follows_the_umask(tmp_path: Path) -> None:
    path = tmp_path / "a.bodice"
    old = os.umask(0o027)
    try:
        write_whole(path, b"one")
    finally:
        os.umask(old)
    assert stat.S_IMODE(path.stat().st_mode) == 0o640
    path.chmod(0o604)
    write_whole(path, b"two")
    assert stat.S_IMODE(path.stat().st_mode) == 0o604


@posix
def test_link_is_followed_and_stays_a_link(tmp_path: Path) -> None:
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    (shelf / "real.bodice").write_bytes(b"one")
    first, second = tmp_path / "first.bodice", tmp_path / "second.bodice"
    first.symlink_to("shelf/real.bodice")
    second.symlink_to(first)
    write_whole(second, b"two")
    assert second.is_symlink()
    assert first.is_symlink()
    assert (shelf / "real.bodice").read_bytes() == b"two"


@posix
def test_link_to_a_file_that_is_not_there_yet(tmp_path: Path) -> None:
    link = tmp_path / "link.bodice"
    link.symlink_to(tmp_path / "new.bodice")
    write_whole(link, b"one")
    assert (tmp_path / "new.bodice").read_bytes() == b"one"


@posix
def test_link_that_leads_back_to_itself(tmp_path: Path) -> None:
    one, two = tmp_path / "one.bodice", tmp_path / "two.bodice"
    one.symlink_to(two)
    two.symlink_to(one)
    with pytest.raises(FileTrouble, match="leads back to itself"):
        write_whole(one, b"x")
    with pytest.raises(FileTrouble, match="cannot be read: too many levels"):
        read_project(one)
    assert one.is_symlink()
    assert two.is_symlink()


def test_folder_in_place_of_a_file(tmp_path: Path) -> None:
    for act in (read_project, lambda path: write_project(example(), path)):
        with pytest.raises(FileTrouble, match="folder"):
            act(tmp_path)


@posix
def test_pipe_in_place_of_a_file_does_not_hang(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.bodice"
    os.mkfifo(pipe)
    for act in (read_project, lambda path: write_project(example(), path)):
        with pytest.raises(FileTrouble, match="not an ordinary file"):
            act(pipe)


def test_missing_file_and_missing_folder(tmp_path: Path) -> None:
    with pytest.raises(FileTrouble, match="there is no such file"):
        read_project(tmp_path / "none.bodice")
    with pytest.raises(FileTrouble, match="its folder does not exist"):
        write_project(example(), tmp_path / "none" / "a.bodice")
    with pytest.raises(FileTrouble, match="cannot be read"):
        read_project(Path("a\0b"))


def test_parent_that_is_a_file(tmp_path: Path) -> None:
    path = tmp_path / "file" / "a.bodice"
    path.parent.write_bytes(b"")
    with pytest.raises(FileTrouble, match="cannot be written"):
        write_project(example(), path)


def test_name_that_is_too_long(tmp_path: Path) -> None:
    with pytest.raises(FileTrouble, match="cannot be written"):
        write_project(example(), tmp_path / ("x" * 300))
    assert list(tmp_path.iterdir()) == []


@posix
def test_long_name_that_just_fits(tmp_path: Path) -> None:
    for name in ("x" * 248 + ".bodice", "袖" * 82 + ".bodice"):
        path = tmp_path / name
        write_project(example(), path)
        assert read_project(path) == example()


@pytest.mark.skipif(not Path("/proc/self").is_dir(), reason="a folder that nobody can write, root included")
def test_folder_that_cannot_be_written() -> None:
    with pytest.raises(FileTrouble, match="cannot be written"):
        write_project(example(), Path("/proc/a.bodice"))


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="a device that is always full")
def test_device_in_place_of_a_file() -> None:
    with pytest.raises(FileTrouble, match="not an ordinary file"):
        write_project(example(), Path("/dev/full"))


def test_failure_in_the_middle_leaves_the_old_file_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.bodice"
    write_project(example(), path)
    before = path.read_bytes()

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    for call in ("fsync", "replace"):
        with monkeypatch.context() as patched:
            patched.setattr(os, call, full if call == "fsync" else lambda _a, _b: full(0))
            with pytest.raises(FileTrouble, match="cannot be written: no space left on device"):
                write_project(set_client(example(), name="Somebody else"), path)
        assert path.read_bytes() == before
        assert list(tmp_path.iterdir()) == [path]


@posix
def test_full_disk(tmp_path: Path) -> None:
    """A small memory disk, where mounting one is allowed."""
    disk = tmp_path / "disk"
    disk.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk)]
    try:
        mounted = subprocess.run(mount, capture_output=True, check=False).returncode == 0
    except FileNotFoundError:
        mounted = False
    if not mounted:
        pytest.skip("no memory disk can be mounted here")
    try:
        path = disk / "a.bodice"
        write_project(example(), path)
        before = path.read_bytes()
        with suppress(OSError):
            (disk / "filler").write_bytes(bytes(1 << 20))
        with pytest.raises(FileTrouble, match="no space left"):
            write_project(set_client(example(), notes="n" * 9000), path)
        assert path.read_bytes() == before
        assert {left.name for left in disk.iterdir()} == {"a.bodice", "filler"}
    finally:
        subprocess.run(["umount", str(disk)], check=True)


def test_what_an_interrupted_save_left_behind_goes_at_the_next_save(tmp_path: Path) -> None:
    path = tmp_path / "a.bodice"
    old, fresh = tmp_path / ".a.bodice.0011aabb.part", tmp_path / ".a.bodice.2233ccdd.part"
    strangers = {tmp_path / ".b.bodice.0011aabb.part", tmp_path / ".a.bodice.sleeve.part"}
    for left in (old, fresh, *strangers):
        left.write_bytes(b"half")
    hour_ago = time.time() - STALE_SECONDS - 60
    for left in (old, *strangers):
        os.utime(left, (hour_ago, hour_ago))
    write_whole(path, b"one")
    assert set(tmp_path.iterdir()) == {path, fresh, *strangers}


def test_a_file_that_grows_while_it_is_read_stays_bounded(tmp_path: Path) -> None:
    path = tmp_path / "a.bodice"
    path.write_bytes(b"x" * 101)
    with pytest.raises(FileTrouble, match="larger than"):
        read_whole(path, 100)
    assert read_whole(path, 101) == b"x" * 101


_SAVER = """
import sys
from contextlib import suppress
from pathlib import Path
from tests.document import example
from workbench.document import set_client, write_project

path = Path(sys.argv[1])
projects = [set_client(example(), name=name, notes=name * 3000) for name in ("a", "b")]
print("ready", flush=True)
while True:
    for project in projects:
        write_project(project, path)
"""


@posix
def test_killed_in_the_middle_of_saves_the_file_is_always_whole(tmp_path: Path) -> None:
    path = tmp_path / "a.bodice"
    projects = [set_client(example(), name=name, notes=name * 3000) for name in ("a", "b")]
    wholes = [to_bytes(project) for project in projects]
    write_project(projects[0], path)
    for moment in range(4):
        with subprocess.Popen([sys.executable, "-c", _SAVER, str(path)], stdout=subprocess.PIPE) as saver:
            assert saver.stdout is not None
            saver.stdout.readline()
            first = path.stat().st_ino
            _until_saved_again(path, first, rounds=moment + 1)
            saver.send_signal(signal.SIGKILL)
        assert path.read_bytes() in wholes
        assert read_project(path) in projects


def _until_saved_again(path: Path, inode: int, rounds: int) -> None:
    """Watch the file be replaced some times; each round ends at another moment of a save."""
    deadline = time.monotonic() + 20
    while rounds and time.monotonic() < deadline:
        if (now := path.stat().st_ino) != inode:
            inode, rounds = now, rounds - 1
    assert not rounds, "the saver did not save"

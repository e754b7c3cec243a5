"""One project, two programs: the second is told who has it, and the dead hold nothing."""

from __future__ import annotations

import json
import os
import platform
import time
from dataclasses import replace
from pathlib import Path

import pytest

from tests.document.keeping import linux, posix, program, said
from workbench.document.keeping import Holder, Lock, take
from workbench.document.keeping.holder import SILENT_SECONDS, _box, is_running, this_program
from workbench.document.keeping.lock import lock_file
from workbench.document.keeping.started import by_ps, started

_HOLDER = """
import sys
from pathlib import Path
from workbench.document.keeping import Lock, take

print("held" if isinstance(take(Path(sys.argv[1])), Lock) else "refused", flush=True)
sys.stdin.readline()
"""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "anna.bodice"
    path.write_bytes(b"x")
    return path


def held(path: Path) -> Lock:
    lock = take(path)
    assert isinstance(lock, Lock)
    return lock


@linux
def test_two_programs_on_one_project(path: Path) -> None:
    with program(_HOLDER, str(path)) as other:
        before = time.time()
        assert said(other) == "held"
        holder = take(path)
        assert isinstance(holder, Holder)
        assert holder.machine == platform.node()
        assert holder.pid == other.pid
        assert before - 5 < holder.since <= time.time()
        other.kill()
        other.wait()
        held(path).release()
    assert not lock_file(path).exists()


@linux
def test_of_several_that_find_a_dead_lock_one_takes_it_over(path: Path) -> None:
    for _ in range(3):
        with program(_HOLDER, str(path)) as dead:
            said(dead)
        with program(_HOLDER, str(path)) as one, program(_HOLDER, str(path)) as other:
            assert sorted((said(one), said(other))) == ["held", "refused"]
    assert [left.name for left in path.parent.iterdir() if left != lock_file(path)] == [path.name]


def test_let_go_it_leaves_nothing_behind(path: Path) -> None:
    held(path).release()
    assert list(path.parent.iterdir()) == [path]


def test_the_same_program_may_open_it_again(path: Path) -> None:
    first = held(path)
    second = held(path)
    first.release()
    assert second.sign() is None
    assert lock_file(path).exists()


@posix
def test_two_links_to_one_file_share_a_lock(path: Path) -> None:
    link = path.with_name("link.bodice")
    link.symlink_to(path)
    assert lock_file(link) == lock_file(path)


@posix
def test_long_names_leave_room_for_the_lock(tmp_path: Path) -> None:
    files = [tmp_path / f"{'x' * 240}{number}.bodice" for number in range(2)]
    locks = [held(file) for file in files]
    assert all(lock.on_disk for lock in locks)
    assert lock_file(files[0]) != lock_file(files[1])


def test_a_folder_that_takes_no_lock_keeps_nobody_from_work() -> None:
    lock = held(Path("/proc/anna.bodice"))
    assert not lock.on_disk
    assert lock.sign() is None
    lock.release()


def test_where_no_links_are_known_it_is_made_all_the_same(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(_one: object, _other: object) -> None:
        raise PermissionError

    monkeypatch.setattr(os, "link", refused)
    lock = held(path)
    assert lock.on_disk
    assert lock.sign() is None
    lock.release()
    assert list(path.parent.iterdir()) == [path]


# --- another machine, in a folder that is synchronised ------------------------------------------

NOW = 1_800_000_000.0


def elsewhere(path: Path, seen: float) -> Holder:
    """The lock of another machine, with its last sign of life."""
    holder = Holder("atelier", "b", "other start", "", 4711, "99", seen - 60, seen, "feed")
    lock_file(path).write_text(json.dumps(holder.plain()), encoding="utf-8")
    return holder


@pytest.mark.parametrize("age", [0.0, SILENT_SECONDS - 1])
def test_another_machine_that_gives_signs_holds_it(path: Path, age: float) -> None:
    holder = elsewhere(path, NOW - age)
    assert take(path, clock=lambda: NOW) == holder


def test_another_machine_long_silent_is_taken_over(path: Path) -> None:
    elsewhere(path, NOW - SILENT_SECONDS)
    assert isinstance(take(path, clock=lambda: NOW), Lock)


def test_a_sign_from_the_future_is_a_wrong_clock_and_no_proof_of_an_end(path: Path) -> None:
    holder = elsewhere(path, NOW + 86_400 * 365)
    assert take(path, clock=lambda: NOW) == holder
    assert isinstance(take(path, force=True, clock=lambda: NOW), Lock)


def test_whose_lock_was_taken_over_hears_who_has_it_and_lets_it_be(path: Path) -> None:
    mine = held(path)
    holder = elsewhere(path, NOW)
    assert mine.sign() == holder
    mine.release()
    assert lock_file(path).exists()


def test_a_sign_of_life_is_the_clock_s_and_the_beginning_stays(path: Path) -> None:
    lock = held(path)
    since = json.loads(lock_file(path).read_bytes())["since"]
    lock.sign(clock=lambda: NOW)
    written = json.loads(lock_file(path).read_bytes())
    assert (written["since"], written["seen"]) == (since, NOW)


def test_a_lock_that_was_swept_away_comes_back_with_the_next_sign(path: Path) -> None:
    lock = held(path)
    lock_file(path).unlink()
    assert lock.sign() is None
    assert lock_file(path).exists()


@pytest.mark.parametrize("content", [b"", b"{", b"[]", b"\xff", b'{"machine": "x"}', b"x" * 9000])
def test_an_unreadable_lock_is_as_old_as_its_file(path: Path, content: bytes) -> None:
    file = lock_file(path)
    file.write_bytes(content)
    os.utime(file, (NOW, NOW))
    assert isinstance(take(path, clock=lambda: NOW + 1), Holder)
    assert isinstance(take(path, clock=lambda: NOW + SILENT_SECONDS + 1), Lock)


# --- clocks that jump ---------------------------------------------------------------------------


@linux
@pytest.mark.parametrize("jump", [-86_400.0, 86_400.0])
def test_on_its_own_machine_no_clock_makes_a_program_dead_or_alive(path: Path, jump: float) -> None:
    with program(_HOLDER, str(path)) as other:
        said(other)
        assert isinstance(take(path, clock=lambda: time.time() + jump), Holder)
        other.kill()
        other.wait()
        assert isinstance(take(path, clock=lambda: time.time() + jump), Lock)


@linux
def test_a_number_given_out_again_is_another_program() -> None:
    mine = this_program()
    assert is_running(mine)
    assert not is_running(replace(mine, started="1", seen=NOW), clock=lambda: NOW)


@posix
def test_the_other_way_to_tell_a_start_tells_the_same_programs_apart() -> None:
    if not by_ps(os.getpid()):
        pytest.skip("no ps here")
    with program(_HOLDER, "/proc/x.bodice") as other:
        said(other)
        assert by_ps(other.pid) == by_ps(other.pid) != ""
        other.kill()
        other.wait()
        assert by_ps(other.pid) == started(other.pid) == ""


def test_a_machine_that_was_started_again_has_let_go_of_everything_at_once() -> None:
    mine = replace(this_program(), box=_box() or "b", boot="before", seen=NOW)
    assert is_running(mine, clock=lambda: NOW) == (not _box())


def test_a_machine_of_the_same_name_is_another_one() -> None:
    twin = replace(this_program(), box="another", boot="another", pid=1, seen=NOW)
    assert is_running(twin, clock=lambda: NOW + 5)


def test_programs_that_cannot_see_each_other_go_by_signs_of_life() -> None:
    guest = replace(this_program(), room="another", pid=1, seen=NOW)
    assert is_running(guest, clock=lambda: NOW + 5)
    assert not is_running(guest, clock=lambda: NOW + SILENT_SECONDS)

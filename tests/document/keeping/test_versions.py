"""The last ten versions of each project can be had again, whatever clocks and folders do."""

from __future__ import annotations

import stat
from pathlib import Path

import pytest

from tests.document import example
from tests.document.keeping import posix
from workbench.document import FileTrouble, set_client, to_bytes
from workbench.document.keeping import KEPT_VERSIONS, follow, forget, keep_version, versions_of


def named(number: int) -> bytes:
    return to_bytes(set_client(example(), name=f"Anna {number}"))


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return tmp_path / "data"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "clients" / "anna.bodice"
    path.parent.mkdir()
    path.write_bytes(named(0))
    return path


def names(data: Path, path: Path) -> list[str]:
    return [version.read().client.name for version in versions_of(data, path)]


def test_the_latest_is_first_and_each_is_what_it_was(data: Path, path: Path) -> None:
    for number in range(3):
        keep_version(data, path, named(number))
    assert names(data, path) == ["Anna 2", "Anna 1", "Anna 0"]


def test_the_last_ten_are_kept(data: Path, path: Path) -> None:
    for number in range(KEPT_VERSIONS + 5):
        keep_version(data, path, named(number))
    assert KEPT_VERSIONS == 10
    assert names(data, path) == [f"Anna {number}" for number in range(14, 4, -1)]


def test_saving_the_same_again_is_no_version(data: Path, path: Path) -> None:
    for _ in range(3):
        keep_version(data, path, named(1))
    assert names(data, path) == ["Anna 1"]


def test_going_back_to_an_earlier_state_is_one(data: Path, path: Path) -> None:
    for number in (1, 2, 1):
        keep_version(data, path, named(number))
    assert names(data, path) == ["Anna 1", "Anna 2", "Anna 1"]


def test_a_clock_that_jumps_back_changes_no_order(data: Path, path: Path) -> None:
    for number, clock in enumerate((2e9, 1e9, 3e9, -5.0)):
        keep_version(data, path, named(number), clock=lambda clock=clock: clock)  # type: ignore[misc]
    assert names(data, path) == ["Anna 3", "Anna 2", "Anna 1", "Anna 0"]
    assert [version.when for version in versions_of(data, path)] == [0.0, 3e9, 1e9, 2e9]


def test_two_projects_have_versions_of_their_own(data: Path, path: Path) -> None:
    other = path.with_name("berta.bodice")
    keep_version(data, path, named(1))
    keep_version(data, other, named(2))
    assert names(data, path) == ["Anna 1"]
    forget(data, path)
    assert names(data, path) == []
    assert names(data, other) == ["Anna 2"]


def test_forgetting_what_was_never_kept_is_no_trouble(data: Path, path: Path) -> None:
    forget(data, path)


def test_the_folder_of_the_projects_stays_as_it_is(data: Path, path: Path) -> None:
    keep_version(data, path, named(1))
    assert list(path.parent.iterdir()) == [path]


@posix
def test_nobody_else_can_look_into_them(data: Path, path: Path) -> None:
    keep_version(data, path, named(1))
    assert stat.S_IMODE((data / "versions").stat().st_mode) == 0o700


def test_a_damaged_version_is_refused_and_the_others_are_there(data: Path, path: Path) -> None:
    keep_version(data, path, named(1))
    keep_version(data, path, named(2))
    versions_of(data, path)[0].file.write_bytes(b"{")
    with pytest.raises(FileTrouble):
        versions_of(data, path)[0].read()
    assert versions_of(data, path)[1].read().client.name == "Anna 1"


def test_strange_files_among_them_are_let_be(data: Path, path: Path) -> None:
    home = keep_version(data, path, named(1)).file.parent
    for name in ("notes.txt", "000009-1-zz.bodice", ".000001-1-0011223344556677.bodice.0011aabb.part"):
        (home / name).write_bytes(b"x")
    for number in range(2, 14):
        keep_version(data, path, named(number))
    assert len(versions_of(data, path)) == KEPT_VERSIONS
    assert (home / "notes.txt").exists()


def test_no_room_for_a_version_is_said(path: Path) -> None:
    with pytest.raises(FileTrouble):
        keep_version(Path("/proc/nowhere"), path, named(1))


# --- a file that is moved ---------------------------------------------------------------------


def test_a_file_that_was_renamed_keeps_its_versions(data: Path, path: Path) -> None:
    keep_version(data, path, named(1))
    keep_version(data, path, named(0))
    new = path.rename(path.with_name("anna-wedding.bodice"))
    assert follow(data, new, named(0))
    assert names(data, new) == ["Anna 0", "Anna 1"]
    assert names(data, path) == []
    keep_version(data, new, named(2))
    again = new.rename(path)
    assert follow(data, again, named(2))
    assert names(data, path) == ["Anna 2", "Anna 0", "Anna 1"]


def test_where_the_whole_folder_is_out_of_sight_both_have_them(data: Path, path: Path) -> None:
    keep_version(data, path, named(0))
    new = path.parent.rename(path.parent.with_name("stick")) / path.name
    assert follow(data, new, named(0))
    assert names(data, new) == names(data, path) == ["Anna 0"]


def test_a_copy_takes_nothing_from_a_file_that_is_still_there(data: Path, path: Path) -> None:
    keep_version(data, path, named(0))
    copy = path.with_name("copy.bodice")
    copy.write_bytes(named(0))
    assert not follow(data, copy, named(0))


def test_another_file_takes_nothing_from_one_that_has_gone(data: Path, path: Path) -> None:
    keep_version(data, path, named(0))
    path.unlink()
    assert not follow(data, path.with_name("berta.bodice"), named(7))


def test_own_versions_are_never_given_up_for_others(data: Path, path: Path) -> None:
    other = path.with_name("berta.bodice")
    keep_version(data, path, named(0))
    keep_version(data, other, named(0))
    path.unlink()
    assert not follow(data, other, named(0))

"""Unsaved work outlives the program that was ended, is offered in words, and is never thrown away unasked."""

from __future__ import annotations

import json
import os
import stat
from dataclasses import replace
from pathlib import Path

import pytest

from tests.document import example
from tests.document.keeping import linux, posix, program, said
from workbench.document import (
    FileTrouble,
    new_project,
    set_client,
    set_measurement,
    set_reduction,
    write_project,
)
from workbench.document.keeping import (
    Autosave,
    digest_of,
    drop,
    forget,
    keep_version,
    left_over,
    open_project,
    versions_of,
)

_WORKER = """
import sys
from pathlib import Path
from tests.document import example
from workbench.document import set_client
from workbench.document.keeping import Autosave

path = Path(sys.argv[2]) if sys.argv[2] else None
Autosave(Path(sys.argv[1])).keep(set_client(example(), name="Anna"), path, "0", ["Client", "Client"])
print("kept", flush=True)
sys.stdin.readline()
"""


@linux
def test_work_of_a_killed_program_is_left_over_and_that_of_a_running_one_is_not(tmp_path: Path) -> None:
    with program(_WORKER, str(tmp_path), str(tmp_path / "anna.bodice")) as worker:
        assert said(worker) == "kept"
        assert left_over(tmp_path) == ()
        worker.kill()
        worker.wait()
        [unsaved] = left_over(tmp_path)
    assert unsaved.project == set_client(example(), name="Anna")
    assert unsaved.path == tmp_path / "anna.bodice"
    assert unsaved.steps == ("Client", "Client")


@linux
def test_work_at_a_project_never_saved_is_left_over_too(tmp_path: Path) -> None:
    with program(_WORKER, str(tmp_path), "") as worker:
        said(worker)
        worker.kill()
        worker.wait()
    [unsaved] = left_over(tmp_path)
    assert unsaved.path is None
    assert "Bust: 36 in, was not taken" in unsaved.compared()


def orphaned(file: Path) -> None:
    """Make kept work look as if the machine had been started again since."""
    tree = json.loads(file.read_bytes())
    tree["holder"] |= {"boot": "another start"}
    file.write_text(json.dumps(tree), encoding="ascii")


def kept(folder: Path, path: Path | None = None) -> Autosave:
    """Work of a program that has ended."""
    autosave = Autosave(folder)
    autosave.keep(set_client(example(), name="Anna"), path, "", [])
    orphaned(autosave.file)
    return autosave


def test_after_a_power_cut_it_is_left_over_at_once(tmp_path: Path) -> None:
    kept(tmp_path)
    assert len(left_over(tmp_path)) == 1


def test_a_clock_that_was_ahead_hides_no_work(tmp_path: Path) -> None:
    file = kept(tmp_path).file
    tree = json.loads(file.read_bytes())
    tree["holder"] |= {"box": "", "seen": 1e12}
    file.write_text(json.dumps(tree), encoding="ascii")
    assert len(left_over(tmp_path)) == 1


def test_it_says_what_differs_from_the_file_as_it_is_now(tmp_path: Path) -> None:
    path = tmp_path / "anna.bodice"
    base = example()
    write_project(base, path)
    work = set_reduction(set_measurement(base, "waist_girth", "28 1/2"), "waist", 63.5)
    autosave = Autosave(tmp_path)
    autosave.keep(set_client(work, name="Anna"), path, digest_of(path.read_bytes()), ["a"] * 3)
    orphaned(autosave.file)
    [unsaved] = left_over(tmp_path)
    assert unsaved.compared() == (
        "Waist: 28 1/2 in, was 27 3/4 in",
        "Reduction, waist: 2½ in, was 2 in",
        "Client, name: “Anna”, was nothing",
    )
    opened = unsaved.base()
    assert opened is not None
    assert opened.digest == unsaved.digest


def test_a_file_that_has_gone_is_no_base(tmp_path: Path) -> None:
    kept(tmp_path, tmp_path / "gone.bodice")
    [unsaved] = left_over(tmp_path)
    assert unsaved.base() is None
    assert unsaved.compared()


def test_dropped_it_is_gone_and_dropping_it_twice_is_no_trouble(tmp_path: Path) -> None:
    autosave = kept(tmp_path)
    drop(autosave.file)
    autosave.drop()
    assert left_over(tmp_path) == ()


def test_each_open_project_has_a_file_of_its_own(tmp_path: Path) -> None:
    kept(tmp_path)
    kept(tmp_path)
    assert len(left_over(tmp_path)) == 2


def test_the_later_state_takes_the_place_of_the_earlier(tmp_path: Path) -> None:
    autosave = Autosave(tmp_path)
    for name in ("Anna", "Berta"):
        autosave.keep(set_client(example(), name=name), None, "", [])
    orphaned(autosave.file)
    [unsaved] = left_over(tmp_path)
    assert unsaved.project.client.name == "Berta"


def test_what_would_not_open_again_does_not_take_the_place_of_what_would(tmp_path: Path) -> None:
    autosave = Autosave(tmp_path)
    autosave.keep(example(), None, "", [])
    before = autosave.file.read_bytes()
    with pytest.raises(FileTrouble, match="would not open again"):
        autosave.keep(replace(example(), client=replace(new_project().client, name="x" * 500)), None, "", [])
    assert autosave.file.read_bytes() == before


def test_no_folder_to_keep_it_in_is_said() -> None:
    with pytest.raises(FileTrouble):
        Autosave(Path("/proc/nowhere")).keep(example(), None, "", [])


@posix
def test_nobody_else_can_look_into_it(tmp_path: Path) -> None:
    kept(tmp_path)
    assert stat.S_IMODE((tmp_path / "unsaved").stat().st_mode) == 0o700


def test_a_client_who_is_forgotten_leaves_nothing_behind(tmp_path: Path) -> None:
    anna, berta = tmp_path / "anna.bodice", tmp_path / "berta.bodice"
    for path in (anna, berta):
        kept(tmp_path, path)
        keep_version(tmp_path, path, b"x")
    forget(tmp_path, anna)
    assert versions_of(tmp_path, anna) == ()
    assert [work.path for work in left_over(tmp_path)] == [berta]
    assert len(versions_of(tmp_path, berta)) == 1


@pytest.mark.parametrize("content", [b"", b"{", b"[]", b'{"holder": 1}', b"\xff\xfe", b"null"])
def test_a_damaged_one_is_passed_over_and_stays(content: bytes, tmp_path: Path) -> None:
    kept(tmp_path)
    damaged = tmp_path / "unsaved" / "damaged.unsaved"
    damaged.write_bytes(content)
    assert len(left_over(tmp_path)) == 1
    assert damaged.exists()


@pytest.mark.parametrize("entry", ["holder", "path", "digest", "steps", "project"])
def test_one_without_an_entry_is_passed_over(entry: str, tmp_path: Path) -> None:
    file = kept(tmp_path).file
    tree = json.loads(file.read_bytes())
    file.write_text(json.dumps({**tree, entry: None}), encoding="ascii")
    assert left_over(tmp_path) == ()


@posix
def test_a_name_that_is_no_text_comes_back_as_it_was(tmp_path: Path) -> None:
    path = Path(os.fsdecode(os.fsencode(tmp_path) + b"/caf\xe9.bodice"))
    kept(tmp_path, path)
    assert left_over(tmp_path)[0].path == path


def test_a_folder_that_is_not_there_holds_nothing(tmp_path: Path) -> None:
    assert left_over(tmp_path / "none") == ()


def test_opening_tells_the_digest_of_the_bytes_that_were_read(tmp_path: Path) -> None:
    path = tmp_path / "a.bodice"
    write_project(example(), path)
    assert open_project(path).digest == digest_of(path.read_bytes())

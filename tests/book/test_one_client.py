"""All of one client, handed out or removed: everything of hers and nothing of anybody else."""

from __future__ import annotations

import json
import os
from pathlib import Path
from zipfile import ZipFile

import pytest

from tests.book import by_place, read, written
from tests.document import example
from workbench.book import Belongings, Shelf, belongings_of, hand_out, of_one_client, remove
from workbench.book.handing_out import CONTENTS
from workbench.document import FileTrouble, set_client, to_bytes
from workbench.document.keeping import Autosave, Lock, keep_version, take, versions_of
from workbench.document.keeping import autosave as autosaves
from workbench.document.keeping.lock import lock_file


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return tmp_path / "data"


@pytest.fixture
def shelf(tmp_path: Path, data: Path) -> Shelf:
    """Anna has two projects, prints and three versions; Berta and Anna Maria have one project each."""
    folder = tmp_path / "clients"
    for place, name in {
        "anna.bodice": "Anna",
        "stage/anna two.bodice": "ANNA ",
        "berta.bodice": "Berta",
        "Anna Maria.bodice": "Anna Maria",
        "none.bodice": "",
        "none two.bodice": "",
    }.items():
        path = written(folder, place, name=name)
        for number in range(3 if name == "Anna" else 1):
            keep_version(data, path, to_bytes(set_client(example(), name=f"{name} {number}")))
    for name in (
        "anna.pdf",
        "Anna quote.pdf",
        "Anna Maria quote.pdf",
        "Anna Maria.pdf",
        "anna.doc",
        "berta.pdf",
    ):
        (folder / name).write_bytes(name.encode())
    return read(folder, tmp_path / "index")


@pytest.fixture
def hers(shelf: Shelf, data: Path) -> Belongings:
    return belongings_of(shelf.folder, shelf.entries, by_place(shelf)["anna.bodice"], data)


def test_one_client_is_all_files_of_her_name(shelf: Shelf) -> None:
    entries = by_place(shelf)
    places = [entry.place for entry in of_one_client(shelf.entries, entries["stage/anna two.bodice"])]
    assert places == ["stage/anna two.bodice", "anna.bodice"]


def test_who_has_no_name_is_the_client_of_one_file(shelf: Shelf) -> None:
    assert len(of_one_client(shelf.entries, by_place(shelf)["none.bodice"])) == 1


def test_prints_are_those_the_program_would_call_so(hers: Belongings) -> None:
    assert [path.name for path in hers.prints] == ["Anna quote.pdf", "anna.pdf"]
    assert (len(hers.projects), hers.versions) == (2, 4)


def test_unsaved_work_and_rescued_copies_are_hers_too(
    shelf: Shelf, data: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    project = set_client(example(), name="Anna")
    Autosave(data).keep(project, shelf.folder / "anna.bodice", "", ["Notes"])
    Autosave(data).keep(project, None, "", ["Notes"])
    Autosave(data).keep(set_client(example(), name="Berta"), None, "", ["Notes"])
    written(data, "rescued.bodice", name="Anna")
    written(data, "rescued-2.bodice", name="Berta")
    monkeypatch.setattr(autosaves, "_is_at_work", lambda holder, clock: False)
    hers = belongings_of(shelf.folder, shelf.entries, by_place(shelf)["anna.bodice"], data)
    assert (hers.unsaved, len(hers.never_saved)) == (2, 1)
    assert data / "rescued.bodice" in hers.prints
    assert data / "rescued-2.bodice" not in hers.prints
    assert remove(hers, data).stays == ()
    assert len(list((data / "unsaved").iterdir())) == 1


# --- handed out --------------------------------------------------------------------------------


def test_everything_is_in_the_packed_file_and_nothing_else(hers: Belongings, tmp_path: Path) -> None:
    count = hand_out(hers, tmp_path / "anna.zip")
    with ZipFile(tmp_path / "anna.zip") as packed:
        assert packed.testzip() is None
        names = set(packed.namelist())
        assert packed.read("anna.bodice") == hers.projects[0].file.read_bytes()
        listed = packed.read(CONTENTS).decode("utf-8").splitlines()[1:]
        old = json.loads(
            packed.read(sorted(name for name in names if name.startswith("earlier versions/anna/"))[0])
        )
    assert count == len(names) - 1 == 2 + 4 + 2
    assert set(listed) == names - {CONTENTS}
    assert {"anna.bodice", "stage/anna two.bodice", "prints/anna.pdf", "prints/Anna quote.pdf"} < names
    assert old["client"]["name"] == "Anna 0"


def test_the_packed_file_is_hers_to_read_alone_and_whole_or_not_there(
    hers: Belongings, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "out" / "anna.zip"
    with pytest.raises(FileTrouble, match=r"anna\.zip: cannot be written"):
        hand_out(hers, out)
    out.parent.mkdir()
    hers.projects[1].file.unlink()
    with pytest.raises(FileTrouble, match=r"anna two\.bodice: cannot be read"):
        hand_out(hers, out)
    assert list(out.parent.iterdir()) == []
    hand_out(hers.only([hers.projects[0].file]), out)
    if os.name == "posix":
        assert out.stat().st_mode & 0o077 == 0


def test_two_prints_of_one_name_are_both_there(shelf: Shelf, data: Path, tmp_path: Path) -> None:
    (shelf.folder / "stage" / "anna.pdf").write_bytes(b"another")
    hers = belongings_of(shelf.folder, shelf.entries, by_place(shelf)["anna.bodice"], data)
    hand_out(hers, tmp_path / "anna.zip")
    with ZipFile(tmp_path / "anna.zip") as packed:
        assert {packed.read(name) for name in ("prints/anna.pdf", "prints/anna 2.pdf")} == {
            b"anna.pdf",
            b"another",
        }


# --- removed -----------------------------------------------------------------------------------


def test_everything_of_hers_goes_and_nothing_else(shelf: Shelf, hers: Belongings, data: Path) -> None:
    (shelf.folder / ".anna.bodice.0123abcd.part").write_bytes(b"half a save")
    done = remove(hers, data)
    assert done.stays == ()
    left = sorted(path.name for path in shelf.folder.rglob("*") if path.is_file())
    assert left == [
        "Anna Maria quote.pdf",
        "Anna Maria.bodice",
        "Anna Maria.pdf",
        "anna.doc",
        "berta.bodice",
        "berta.pdf",
        "none two.bodice",
        "none.bodice",
    ]
    assert versions_of(data, shelf.folder / "anna.bodice") == ()
    assert len(versions_of(data, shelf.folder / "berta.bodice")) == 1
    assert {entry.place for entry in shelf.without(done.places).entries} == {
        "Anna Maria.bodice",
        "berta.bodice",
        "none.bodice",
        "none two.bodice",
    }


def test_what_she_leaves_out_stays_with_its_versions(shelf: Shelf, hers: Belongings, data: Path) -> None:
    kept, other = hers.projects
    done = remove(hers.only([other.file]), data)
    assert (done.gone, done.places) == ((other.file,), (other.place,))
    assert kept.file.exists()
    assert len(versions_of(data, kept.file)) == 3


def test_a_project_open_elsewhere_stays_whole_and_is_named(
    shelf: Shelf, hers: Belongings, data: Path
) -> None:
    file = hers.projects[0].file
    lock = take(file)
    assert isinstance(lock, Lock)
    written_by = json.loads(lock_file(file).read_bytes())
    # as from another machine that gave a sign of life this moment
    lock_file(file).write_text(
        json.dumps({**written_by, "machine": "atelier", "box": "other", "room": "other"})
    )
    done = remove(hers, data)
    assert [("atelier" in sentence, "anna.bodice" in sentence) for sentence in done.stays] == [(True, True)]
    assert file.exists()
    assert len(versions_of(data, file)) == 3
    assert file not in done.gone


def test_a_file_that_cannot_be_removed_is_named(
    hers: Belongings, data: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(path: Path, missing_ok: bool = False) -> None:
        if path.name == "anna.pdf":
            raise PermissionError(13, "Permission denied", str(path))
        os.unlink(path)

    monkeypatch.setattr(Path, "unlink", refuse)
    done = remove(hers, data)
    assert [sentence.rpartition("/")[2] for sentence in done.stays] == [
        "anna.pdf: cannot be removed: permission denied."
    ]
    assert len(done.gone) == 3


def test_a_folder_that_is_write_protected_loses_no_versions(
    hers: Belongings, data: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "access", lambda path, mode: False)
    done = remove(hers.only([hers.projects[0].file]), data)
    assert done.gone == ()
    assert "its folder is write-protected" in done.stays[0]
    assert len(versions_of(data, hers.projects[0].file)) == 3


def test_a_file_whose_name_is_no_text_is_packed_under_a_plain_one(tmp_path: Path, data: Path) -> None:
    folder = tmp_path / "odd"
    odd = written(folder, os.fsdecode(b"caf\xe9.bodice") if os.name == "posix" else "café.bodice", name="Odd")
    shelf = read(folder, tmp_path / "odd index")
    hers = belongings_of(folder, shelf.entries, shelf.entries[0], data)
    assert hand_out(hers, tmp_path / "odd.zip") == 1
    with ZipFile(tmp_path / "odd.zip") as packed:
        name, contents = packed.namelist()
        assert packed.read(name) == odd.read_bytes()
        assert name in packed.read(contents).decode("utf-8")

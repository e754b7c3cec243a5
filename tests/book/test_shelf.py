"""The book is what the files are: whatever happens to the index, nothing is listed that is not so."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from tests.book import by_place, read, written
from tests.document import example
from workbench.book import look_at, read_waiting, rings_of
from workbench.book.entry import Found
from workbench.book.index import index_file, throw_away
from workbench.book.reading import entry_of
from workbench.book.small_picture import packed
from workbench.document import FileTrouble, Project, new_project, picture_of, set_reduction, to_bytes
from workbench.fitting import Fitting
from workbench.sheets import placements

LONG_AGO = 1_500_000_000


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Two clients, one in a folder of her own, both written long ago."""
    folder = tmp_path / "clients"
    written(folder, "anna.bodice", name="Anna A. (invented)", date="2031-05-20")
    written(folder, "brides/berta.bodice", name="Berta B. (invented)", next_fitting="2031-06-01")
    for path in folder.rglob("*.bodice"):
        os.utime(path, (LONG_AGO, LONG_AGO))
    return folder


@pytest.fixture
def index(tmp_path: Path, folder: Path) -> Path:
    return index_file(tmp_path / "cache", folder)


def test_every_file_is_listed_with_what_it_says(folder: Path, index: Path) -> None:
    entries = by_place(read(folder, index))
    anna, berta = entries["anna.bodice"], entries["brides/berta.bodice"]
    assert (anna.name, anna.date, anna.stem, anna.folder) == ("Anna A. (invented)", "2031-05-20", "anna", "")
    assert (berta.next_fitting, berta.folder) == ("2031-06-01", "brides")
    design = example().design
    panels = f"{design.front.panel_count} + {design.back.panel_count} panels"
    assert anna.style.endswith(panels)


def test_only_a_changed_file_is_read_again(folder: Path, index: Path) -> None:
    read(folder, index)
    assert look_at(folder, index).waiting == ()
    changed = written(folder, "anna.bodice", name="Anna Other (invented)")
    shelf = look_at(folder, index)
    assert [found.place for found in shelf.waiting] == ["anna.bodice"]
    assert {entry.name for entry in shelf.with_read(read_waiting(shelf)).entries} == {
        "Anna Other (invented)",
        "Berta B. (invented)",
    }
    assert changed.exists()


def test_a_file_written_just_now_is_looked_at_once_more(folder: Path, index: Path) -> None:
    # written twice within the grain of the clock, with as many letters, it would look the same
    path = written(folder, "anna.bodice", name="Anna Ax (invented)")
    status = path.stat()
    read(folder, index)
    written(folder, "anna.bodice", name="Anna Bx (invented)")
    os.utime(path, ns=(status.st_atime_ns, status.st_mtime_ns))
    assert by_place(read(folder, index))["anna.bodice"].name == "Anna Bx (invented)"


def test_a_file_that_is_gone_or_moved_is_not_listed_where_it_was(folder: Path, index: Path) -> None:
    read(folder, index)
    (folder / "anna.bodice").rename(folder / "brides" / "anna.bodice")
    shelf = look_at(folder, index)
    assert shelf.outdated
    assert set(by_place(read(folder, index))) == {"brides/anna.bodice", "brides/berta.bodice"}
    assert not look_at(folder, index).outdated


@pytest.mark.parametrize(
    "harm",
    [
        lambda text: b"",
        lambda text: b"\xff\xfe\x00",
        lambda text: b'["client book", 0]' + text[18:],
        lambda text: text[: len(text) // 2],
        lambda text: text.replace(b'"Anna', b"Anna"),
        lambda text: text.replace(b'"2031-05-20"', b"20310520"),
        lambda text: text + b"\n[1, 2]\n{}\nnull\n" + b"[" * 100_000,
    ],
)
def test_a_damaged_index_costs_reading_and_nothing_else(folder: Path, index: Path, harm: object) -> None:
    whole = by_place(read(folder, index))
    assert callable(harm)
    index.write_bytes(harm(index.read_bytes()))
    assert by_place(read(folder, index)) == whole


def test_the_index_is_nobody_elses_and_can_be_thrown_away(folder: Path, index: Path, tmp_path: Path) -> None:
    whole = by_place(read(folder, index))
    if os.name == "posix":
        assert index.parent.stat().st_mode & 0o077 == 0
    throw_away(tmp_path / "cache", folder)
    assert not index.exists()
    assert by_place(read(folder, index)) == whole


def test_the_index_holds_no_more_than_the_list_shows(folder: Path, index: Path) -> None:
    written(folder, "c.bodice", name="C", notes="Asthma", wish="To sing", measured_by="Meg", worn="Lace")
    read(folder, index)
    text = index.read_text(encoding="utf-8")
    assert not any(word in text for word in ("Asthma", "To sing", "Meg", "Lace", "27 3/4"))


def test_files_that_are_none_are_listed_with_the_reason(folder: Path, index: Path) -> None:
    (folder / "letter.bodice").write_text("Dear Anna", encoding="utf-8")
    (folder / "recipe.bodice").write_text('{"format": "recipe", "version": 1}', encoding="utf-8")
    whole = (folder / "anna.bodice").read_bytes()
    (folder / "half.bodice").write_bytes(whole[: whole.index(b"\n", 3000)])
    (folder / "newer.bodice").write_bytes(whole.replace(b'"version": 2', b'"version": 9'))
    entries = by_place(read(folder, index))
    assert "damaged" in entries["letter.bodice"].reason
    assert entries["recipe.bodice"].reason == "this is no bodice project file."
    assert "ends in the middle" in entries["half.bodice"].reason
    assert "version 9" in entries["newer.bodice"].reason
    assert entries["anna.bodice"].reason == ""


def test_what_could_not_be_opened_is_tried_again(folder: Path, index: Path) -> None:
    bad = folder / "half.bodice"
    bad.write_bytes(b"{")
    os.utime(bad, (LONG_AGO, LONG_AGO))
    read(folder, index)
    assert [found.place for found in look_at(folder, index).waiting] == ["half.bodice"]


def test_the_latest_file_is_read_first_and_what_was_read_before_a_cancel_is_kept(
    folder: Path, index: Path
) -> None:
    os.utime(folder / "anna.bodice", (LONG_AGO + 5, LONG_AGO + 5))
    shelf = look_at(folder, index)
    first = next(read_waiting(shelf))
    part = shelf.with_read([first])
    assert first.place == "anna.bodice"
    assert ([entry.place for entry in part.entries], len(part.waiting)) == (["anna.bodice"], 1)


# --- the folder --------------------------------------------------------------------------------


def test_links_are_not_followed_and_said(folder: Path, index: Path, tmp_path: Path) -> None:
    (folder / "brides" / "loop").symlink_to(folder)
    outside = written(tmp_path / "elsewhere", "secret.bodice", name="S")
    (folder / "out").symlink_to(outside.parent)
    (folder / "secret.bodice").symlink_to(outside)
    (folder / "dangling.txt").symlink_to("nowhere")
    shelf = look_at(folder, index)
    assert {found.place for found in shelf.waiting} == {"anna.bodice", "brides/berta.bodice"}
    (remark,) = shelf.remarks
    assert remark.startswith("Links are not followed")
    assert all(name in remark for name in ("brides/loop", "out", "secret.bodice"))


def test_a_folder_chosen_by_a_link_is_looked_into(folder: Path, index: Path, tmp_path: Path) -> None:
    (tmp_path / "book").symlink_to(folder)
    assert len(look_at(tmp_path / "book", index).waiting) == 2
    assert index_file(tmp_path / "cache", tmp_path / "book") == index


def test_hidden_files_and_other_kinds_are_passed_over(folder: Path, index: Path) -> None:
    written(folder, ".versions/old.bodice", name="Old")
    (folder / ".anna.bodice.open").write_text("{}", encoding="utf-8")
    (folder / "anna.pdf").write_bytes(b"%PDF")
    assert len(look_at(folder, index).waiting) == 2
    assert look_at(folder, index).remarks == ()


def test_folders_that_are_too_deep_are_named(folder: Path, index: Path) -> None:
    written(folder, "/".join("abcdefgh") + "/deep.bodice", name="D")
    assert len(look_at(folder, index).waiting) == 3
    written(folder, "/".join("abcdefghi") + "/deeper.bodice", name="D")
    shelf = look_at(folder, index)
    assert len(shelf.waiting) == 3
    assert shelf.remarks == ("Folders more than 8 deep are not looked into: “a/b/c/d/e/f/g/h/i”.",)


def shut_out(monkeypatch: pytest.MonkeyPatch, shut: Path) -> None:
    """Whoever runs the tests may read everything; the system is made to refuse one folder."""
    scan = os.scandir

    def refuse(path: str) -> object:
        if Path(path) == shut:
            raise PermissionError(13, "Permission denied", str(path))
        return scan(path)

    monkeypatch.setattr(os, "scandir", refuse)


def test_a_folder_that_is_shut_is_one_sentence(
    folder: Path, index: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shut_out(monkeypatch, folder / "brides")
    shelf = look_at(folder, index)
    assert [found.place for found in shelf.waiting] == ["anna.bodice"]
    assert shelf.remarks == ("What is in “brides” cannot be read: the folder is not open to you.",)
    shut_out(monkeypatch, folder)
    with pytest.raises(FileTrouble, match=r"clients: the folder is not open to you"):
        look_at(folder, index)


def test_a_book_that_is_no_folder_is_one_sentence(folder: Path, index: Path) -> None:
    with pytest.raises(FileTrouble, match="there is no such folder"):
        look_at(folder / "nowhere", index)
    with pytest.raises(FileTrouble, match="is a file, not a folder"):
        look_at(folder / "anna.bodice", index)


def test_an_empty_folder_is_an_empty_book(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    shelf = read(tmp_path / "empty", tmp_path / "index")
    assert (shelf.entries, shelf.waiting, shelf.remarks) == ((), (), ())


# --- one entry -----------------------------------------------------------------------------------


def entry_words(tmp_path: Path, project: Project) -> list[tuple[str, str]]:
    path = tmp_path / "one.bodice"
    path.write_bytes(to_bytes(project))
    return [(mark, words) for mark, words in entry_of(tmp_path, Found("one.bodice", 0, 0)).matters]


def test_what_is_open_is_said_in_a_few_words(tmp_path: Path) -> None:
    assert entry_words(tmp_path, new_project()) == [("note", "not measured yet")]
    assert entry_words(tmp_path, example()) == []
    over = set_reduction(example(), "waist", 200.0)
    assert ("over", "above the limit you set") in entry_words(tmp_path, over)
    stopped = set_reduction(example(), "waist", 2000.0)
    assert ("stop", "cannot be drafted") in entry_words(tmp_path, stopped)
    fitted = replace(example(), fittings=(Fitting(applied=False), Fitting()), done=("cut",))
    assert entry_words(tmp_path, fitted) == [
        ("attend", "1 fitting not carried into the draft"),
        ("note", "1 step of the work ticked off"),
    ]


def test_the_small_picture_is_the_draft(tmp_path: Path) -> None:
    written(tmp_path, "one.bodice", name="One")
    rings = rings_of(entry_of(tmp_path, Found("one.bodice", 0, 0)).picture)
    good = picture_of(example()).good
    assert good is not None
    assert good.draft is not None
    whole = [place.put(good.draft.panels[place.panel].outline) for place in placements(good, "apart")]
    assert len(rings) == len(whole)
    every = np.vstack(whole)
    low, side = every.min(axis=0), np.ptp(every, axis=0).max()
    for ring, outline in zip(rings, whole, strict=True):
        small = np.array(ring) / 255 * side + low
        # as large as the panel itself, by the shoelace sum, within what two pixels in a list can show
        assert area(small) == pytest.approx(area(outline), rel=0.05)
        assert len(ring) < 40


def area(ring: np.ndarray) -> float:
    x, y = ring.T
    return abs(float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)))) / 2


def test_a_picture_of_nothing_and_one_that_is_none() -> None:
    assert packed([]) == ""
    assert rings_of("") == ()
    with pytest.raises(ValueError, match="hexadecimal"):
        rings_of("zz")


def test_a_square_is_a_square() -> None:
    assert set(rings_of(packed([np.array([(0, 0), (100, 0), (100, 100), (0, 100), (0, 0)], float)]))[0]) == {
        (0.0, 0.0),
        (255.0, 0.0),
        (255.0, 255.0),
        (0.0, 255.0),
    }

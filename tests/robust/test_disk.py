"""A full disk: what was there stays, what was to come is whole or not there, and one sentence says so.

Projects, versions and unsaved work on a full disk are held beside them, in ``test_killed``.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from tests.document.keeping import posix, small_disk
from tests.robust.samples import DEMOS, full_project
from tests.robust.tally import Row, row
from workbench import cli
from workbench.book import belongings_of, hand_out, index_file, keep, look_at, read_waiting
from workbench.cloth import Quoting, write_price_list
from workbench.document import FileTrouble, read_project, to_bytes, write_project, write_whole
from workbench.styles import save_shape

pytestmark = posix
_KILOBYTES = 512
_LEFT = 12_000
"""Bytes still free: enough for a file to be begun, too few for it to be ended."""
_OLD = b"what was there before"


@pytest.fixture(scope="module")
def tally() -> Row:
    return row("written to a full disk")


@pytest.fixture
def disk(tmp_path: Path) -> Iterator[Path]:
    with small_disk(tmp_path, _KILOBYTES) as mounted:
        yield mounted


def fill(disk: Path, left: int = _LEFT) -> None:
    """Leave room for so many bytes, in whole pages."""
    page = os.sysconf("SC_PAGE_SIZE")
    kept = disk / "kept"
    kept.write_bytes(bytes(left // page * page))
    with suppress(OSError), (disk / "filler").open("ab", buffering=0) as file:
        while file.write(bytes(page)) == page:
            pass
    kept.unlink()


@pytest.mark.parametrize("name", ["out.pdf", "out.svg", "out.dxf"])
@pytest.mark.parametrize("before", [None, _OLD], ids=["new", "in place of another"])
def test_prints_and_exports(
    name: str, before: bytes | None, disk: Path, tally: Row, capsys: pytest.CaptureFixture[str]
) -> None:
    out = disk / name
    if before is not None:
        out.write_bytes(before)
    fill(disk)
    for command in ("print", "export") if name == "out.pdf" else ("export",):
        assert cli.main([command, str(DEMOS[0]), "-o", str(out)]) == 2
        said = capsys.readouterr()
        assert said.out == ""
        assert said.err == f"corset-workbench: {out}: cannot be written: no space left on device.\n"
        assert (out.read_bytes() if out.exists() else None) == before
        assert {path.name for path in disk.iterdir()} - {name} == {"filler"}
        tally.note(command)


def test_a_style_cut_for_many(disk: Path, tally: Row, capsys: pytest.CaptureFixture[str]) -> None:
    """Rows that still fit are whole; those that do not are named, and nothing half-written stays."""
    table = disk.parent / "clients.csv"
    rows = [f"Client {number} (invented),in,36,27 3/4" for number in range(60)]
    table.write_text("\n".join(["name,unit,bust_girth,waist_girth", *rows]), encoding="utf-8")
    fill(disk, 150_000)
    assert cli.main(["recut", str(DEMOS[0]), str(table), "-o", str(disk / "new")]) == 1
    said = capsys.readouterr()
    whole = sorted((disk / "new").iterdir())
    assert 2 < len(whole) < 60
    for path in whole:
        assert path.suffix == ".bodice"
        read_project(path)
    assert said.out.count("no space left on device") == 60 - len(whole)
    tally.note("recut")


def test_a_price_list_and_a_shape(disk: Path, tally: Row) -> None:
    prices, shapes = disk / "prices.json", disk / "shapes"
    write_price_list(prices, Quoting(), write_whole)
    save_shape(full_project(), "One", "", shapes)
    before = prices.read_bytes(), [path.read_bytes() for path in shapes.iterdir()]
    fill(disk, 0)
    with pytest.raises(FileTrouble, match="no space left"):
        write_price_list(prices, Quoting(), write_whole)
    with pytest.raises(FileTrouble, match="no space left"):
        save_shape(full_project(), "Two", "", shapes)
    with pytest.raises(FileTrouble, match="no space left"):
        save_shape(full_project(), "One", "again", shapes, replacing=True)
    assert (prices.read_bytes(), [path.read_bytes() for path in shapes.iterdir()]) == before
    for what in ("price list", "shape", "shape"):
        tally.note(what)


def test_the_index_of_the_book_and_what_is_handed_out(disk: Path, tally: Row) -> None:
    book, cache = disk / "book", disk / "cache"
    book.mkdir()
    for number in range(3):
        write_project(full_project(), book / f"{number}.bodice")
    index = index_file(cache, book)
    shelf = look_at(book, index)
    shelf = shelf.with_read(list(read_waiting(shelf)))
    keep(shelf, index)
    before = index.read_bytes()
    fill(disk, 0)
    with pytest.raises(FileTrouble, match="no space left"):
        keep(shelf, index)
    with pytest.raises(FileTrouble, match="no space left"):
        hand_out(belongings_of(book, shelf.entries, shelf.entries[0], None), disk / "hers.zip")
    assert index.read_bytes() == before
    assert {path.name for path in disk.iterdir()} == {"book", "cache", "filler"}
    assert all(path.read_bytes() == to_bytes(full_project()) for path in book.iterdir())
    for what in ("index", "packed file"):
        tally.note(what)

"""The other files that are read: damaged, each is read in part, passed over or refused in one sentence."""

from __future__ import annotations

import json
from collections.abc import Callable
from decimal import Decimal
from functools import cache
from pathlib import Path
from random import Random
from time import process_time

import pytest

from tests.document import example
from tests.document.wish_values import jpeg
from tests.robust import SEED, how_many
from tests.robust.mutants import bytes_changed, entries_changed, written
from tests.robust.samples import full_project
from tests.robust.tally import row
from workbench.book import index_file, keep, look_at, read_waiting
from workbench.cloth import MoneyError, PriceRow, Quoting, price_list_bytes, price_list_from
from workbench.document import (
    ClientRow,
    FileTrouble,
    PictureTrouble,
    opened_clients,
    to_bytes,
    wish_of,
    write_project,
)
from workbench.document.keeping import Autosave, Lock, keep_version, left_over, take, versions_of

Try = Callable[[Path, Random], str]
"""One damaged file in a folder, read; what came of it."""
_MOST_SECONDS = 2.0


def _damaged(data: bytes, dice: Random) -> bytes:
    """Its bytes changed, or its entries where it is JSON."""
    if dice.random() < 0.5:
        return bytes_changed(data, dice)
    try:
        return written(entries_changed(json.loads(data), dice), dice)
    except ValueError:
        return bytes_changed(data, dice)


# --- a price list ------------------------------------------------------------------------


def _price_list(_: Path, dice: Random) -> str:
    rows = (
        PriceRow("busk", "Busk ½", Decimal("12.50"), "each"),
        PriceRow("tape", "Tape", Decimal(3), "yard"),
    )
    data = price_list_bytes(Quoting(rate=Decimal(30), prices=rows))
    try:
        again = price_list_from(_damaged(data, dice), "prices")
    except MoneyError as refused:
        _one_sentence(str(refused))
        return "refused"
    assert price_list_from(price_list_bytes(again), "prices") == again
    return "read"


# --- a table of clients --------------------------------------------------------------------

_TABLE = (
    b"name,unit,bust_girth,waist_girth,top_hip_girth\n"
    b"Anna (invented),in,36,27 3/4,38\n"
    b'"Berta, the second (invented)",cm,"92,5",71,98\n'
    b"Clara (invented),in,41 1/2,33 1/4,\n"
)


def _clients(folder: Path, dice: Random) -> str:
    path = folder / "clients.csv"
    path.write_bytes(bytes_changed(_TABLE, dice))
    try:
        with opened_clients(path) as rows:
            good = [isinstance(each, ClientRow) for each in rows]
    except FileTrouble as refused:
        _one_sentence(str(refused))
        return "refused"
    return "all rows" if all(good) else "some rows"


# --- a picture -------------------------------------------------------------------------------


@cache
def _picture() -> bytes:
    import base64

    return base64.b64decode(jpeg(80, 60))


def _wish(_: Path, dice: Random) -> str:
    try:
        picture = wish_of(bytes_changed(_picture(), dice), "picture")
    except PictureTrouble as refused:
        _one_sentence(str(refused))
        return "refused"
    assert 1 <= picture.width <= 1200
    assert 1 <= picture.height <= 1200
    return "read"


# --- what the program keeps for itself -------------------------------------------------------


def _unsaved(folder: Path, dice: Random) -> str:
    autosave = Autosave(folder / "data")
    autosave.keep(full_project(), folder / "a.bodice", "digest", ["Hem", "Waist"])
    # as of a program of another machine that has long ended
    tree = json.loads(autosave.file.read_bytes())
    tree["holder"] |= {"machine": "elsewhere", "box": "b", "seen": 1.0, "pid": 1}
    autosave.file.write_bytes(_damaged(json.dumps(tree).encode(), dice))
    found = left_over(folder / "data")
    for one in found:
        to_bytes(one.project)
        one.compared()
    autosave.file.unlink()
    return "offered" if found else "passed over"


def _index(folder: Path, dice: Random) -> str:
    book = folder / "book"
    book.mkdir(exist_ok=True)
    if not (book / "a.bodice").exists():
        write_project(example(), book / "a.bodice")
        write_project(full_project(), book / "b.bodice")
    index = index_file(folder / "cache", book)
    shelf = look_at(book, index)
    keep(shelf.with_read(list(read_waiting(shelf))), index)
    index.write_bytes(bytes_changed(index.read_bytes(), dice))
    shelf = look_at(book, index)
    shelf = shelf.with_read(list(read_waiting(shelf)))
    assert {entry.place for entry in shelf.entries} == {"a.bodice", "b.bodice"}
    return "the book is whole"


def _lock(folder: Path, dice: Random) -> str:
    project = folder / "locked.bodice"
    lock = take(project)
    assert isinstance(lock, Lock)
    (file,) = (path for path in folder.iterdir() if path.name.startswith(".locked"))
    file.write_bytes(_damaged(file.read_bytes(), dice))
    other = take(project)
    if isinstance(other, Lock):
        other.release()
        return "taken over"
    assert len(other.machine) < 20_100
    file.unlink()
    return "held by another"


def _place_of_versions(folder: Path, dice: Random) -> str:
    data, project = folder / "kept", folder / "versions.bodice"
    keep_version(data, project, to_bytes(example()))
    (home,) = (data / "versions").iterdir()
    for file in home.iterdir():
        file.write_bytes(_damaged(file.read_bytes(), dice))
    read = 0
    for version in versions_of(data, project):
        try:
            version.read()
            read += 1
        except FileTrouble as refused:
            _one_sentence(str(refused))
    keep_version(data, project, to_bytes(full_project()))
    assert versions_of(data, project)[0].read() == full_project()
    for file in home.iterdir():
        file.unlink()
    return "read" if read else "refused"


def _one_sentence(said: str) -> None:
    assert said.endswith("."), said
    assert "\n" not in said, said


_TRIES: dict[str, Try] = {
    "price lists": _price_list,
    "tables of clients": _clients,
    "pictures": _wish,
    "unsaved work": _unsaved,
    "the index of the book": _index,
    "locks": _lock,
    "versions": _place_of_versions,
}


@pytest.mark.parametrize("what", list(_TRIES))
def test_damaged(what: str, tmp_path: Path) -> None:
    tally = row(f"damaged: {what}")
    for number in range(how_many("others")):
        start = process_time()
        try:
            came_of_it = _TRIES[what](tmp_path, Random(f"{SEED} {what} {number}"))
            assert process_time() - start < _MOST_SECONDS, "too slow"
        except Exception as error:  # whatever it is, it is what this looks for
            tally.fall(f"no. {number}: {type(error).__name__}: {error}")
        else:
            tally.note(came_of_it)
    tally.check()

"""A damaged project file opens as a project that can be written again, or is refused in one sentence."""

from __future__ import annotations

import json
import resource
import tracemalloc
from pathlib import Path
from random import Random
from time import process_time
from typing import Any

import pytest

from tests.robust import SEED, how_many
from tests.robust.mutants import bytes_changed, entries_changed, written
from tests.robust.samples import DEMOS, full_project
from tests.robust.tally import Row, row
from tests.robust.work_through import worked_through
from workbench.document import FileTrouble, Project, read_project, to_bytes, write_project
from workbench.document.file import MOST_BYTES

_MOST_SECONDS = 1.0
"""Process time for one file of the usual size; a sound one takes some milliseconds."""
_MOST_GROWTH_MB = 150
_DRAFTED_EVERY = 2
"""Of the files that open, each second one is worked out to the last list: that takes ten times as long."""


def _wholes() -> list[bytes]:
    return [*(path.read_bytes() for path in DEMOS), to_bytes(full_project()), to_bytes(full_project())]


def _memory_mb() -> float:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def _mutant(wholes: list[bytes], dice: Random) -> tuple[str, bytes]:
    data = dice.choice(wholes)
    if dice.random() < 0.4:
        return "bytes", bytes_changed(data, dice)
    return "entries", written(entries_changed(json.loads(data), dice), dice)


def _opened(path: Path, data: bytes) -> Project | str:
    """The project in these bytes, or what is said about them."""
    path.write_bytes(data)
    try:
        return read_project(path)
    except FileTrouble as trouble:
        said = str(trouble)
        assert said.startswith(f"{path}: "), said
        assert said.endswith("."), said
        assert "\n" not in said, said
        assert len(said) < len(str(path)) + 400, said
        return said


def _comes_back(project: Project, path: Path) -> None:
    write_project(project, path)
    once = path.read_bytes()
    again = read_project(path)
    assert again == project
    write_project(again, path)
    assert path.read_bytes() == once == to_bytes(project)


def test_damaged_files(tmp_path: Path) -> None:
    tally, drafted = row("damaged project files"), row("those that open, worked out whole")
    path, wholes = tmp_path / "a.bodice", _wholes()
    before, slowest, opens = _memory_mb(), 0.0, 0
    for number in range(how_many("files")):
        dice = Random(f"{SEED} file {number}")
        kind, data = _mutant(wholes, dice)
        start = process_time()
        try:
            opened = _opened(path, data)
            if isinstance(opened, Project):
                _comes_back(opened, path)
        except Exception as error:  # whatever it is, it is what this looks for
            tally.fall(f"no. {number}, {kind}: {type(error).__name__}: {error}")
            continue
        slowest = max(slowest, process_time() - start)
        tally.note(f"{kind} {'opened' if isinstance(opened, Project) else 'refused'}")
        if isinstance(opened, Project):
            opens += 1
            if opens % _DRAFTED_EVERY == 0:
                worked_through(opened, drafted, f"no. {number}")
    grown = _memory_mb() - before
    tally.figures |= {"slowest": f"{1000 * slowest:.0f} ms", "grown": f"{grown:.0f} MB"}
    tally.check()
    drafted.check()
    assert slowest < _MOST_SECONDS
    assert grown < _MOST_GROWTH_MB


_WORST = {
    "brackets": b"[" * MOST_BYTES,
    "braces": b'{"a":' * (MOST_BYTES // 5),
    "empty groups": b"[" + b"{}," * (MOST_BYTES // 3 - 2) + b"{}]",
    "empty lists": b"[" + b"[]," * (MOST_BYTES // 3 - 2) + b"[]]",
    "noughts": b"[" + b"0," * (MOST_BYTES // 2 - 2) + b"0]",
    "fractions": b"[" + b"0.1," * (MOST_BYTES // 4 - 1) + b"0]",
    "one long figure": b"[" + b"1" * (MOST_BYTES - 2) + b"]",
    "one long fraction": b"[0." + b"1" * (MOST_BYTES - 4) + b"]",
    "one long text": b'["' + b"x" * (MOST_BYTES - 4) + b'"]',
    "one open text": b'["' + b"\\u0041" * (MOST_BYTES // 6 - 1),
    "many names": b"{" + b",".join(b'"%06d":0' % n for n in range(MOST_BYTES // 11)) + b"}",
    "blanks": b" " * MOST_BYTES,
    "noughts that are no text": bytes(MOST_BYTES),
}


@pytest.mark.parametrize("name", list(_WORST))
def test_the_largest_file_of_the_worst_kind(name: str, tmp_path: Path) -> None:
    """Bounded work and memory whatever six megabytes hold; each is no project."""
    tally = _worst_row()
    data = _WORST[name]
    assert len(data) <= MOST_BYTES
    tracemalloc.start()
    try:
        start = process_time()
        said = _opened(tmp_path / "a.bodice", data)
        took = process_time() - start
        most = tracemalloc.get_traced_memory()[1] / 1e6
    finally:
        tracemalloc.stop()
    tally.note("refused" if isinstance(said, str) else "opened")
    for figure, value in (("slowest s", took), ("most MB", most)):
        tally.figures[figure] = f"{max(value, float(tally.figures.get(figure, '0'))):.1f}"
    assert isinstance(said, str)
    # traced memory makes it three times as slow
    assert took < 15
    assert most < 700


_rows: dict[str, Any] = {}


def _worst_row() -> Row:
    if "worst" not in _rows:
        _rows["worst"] = row("six megabytes of the worst")
    found: Row = _rows["worst"]
    return found

"""Every demo, and the project with something in every entry, through every command."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.robust.samples import DEMOS, full_project
from tests.robust.tally import Row, row
from workbench import cli
from workbench.document import write_project

_CLIENTS = (
    "name,unit,bust_girth,underbust_girth,waist_girth,top_hip_girth\n"
    "Anna (invented),in,36,31,27 3/4,37\n../../Berta (invented),cm,98,84,78,104\n,in,0,wide,,\n"
)
_ENDS: dict[str, bytes] = {".pdf": b"%PDF-", ".svg": b"<?xml", ".dxf": b"0"}
_WAYS: tuple[tuple[str, ...], ...] = (
    ("report",),
    ("report", "--json"),
    *(("print", "-o", "OUT.pdf", "--paper", paper) for paper in ("A4", "Letter", "A3", "A0", "roll:36in")),
    ("print", "-o", "OUT.pdf", "--no-allowance", "--margin", "15mm", "--overlap", "0.5in"),
    ("print", "-o", "OUT.pdf", "--what", "order"),
    ("print", "-o", "OUT.pdf", "--what", "card"),
    *(("export", "-o", "OUT.svg", "--what", what) for what in ("panels", "pieces")),
    ("export", "-o", "OUT.svg", "--layer", "all", "--scale", "half"),
    ("export", "-o", "OUT.dxf", "--dxf", "R12"),
    ("export", "-o", "OUT.dxf", "--dxf", "R2000", "--layer", "all"),
    ("export", "-o", "OUT.pdf"),
    ("export", "-o", "OUT.pdf", "--projector", "--dark", "--grid", "50mm"),
    ("export", "-o", "OUT.pdf", "--what", "guide", "--layer", "all"),
    ("lay", "--seconds", "0"),
    ("lay", "--seconds", "0", "--json", "-o", "OUT.pdf"),
    ("lay", "--seconds", "1", "--cloth", "Fashion cloth"),
    ("recut", "CLIENTS.csv", "-o", "DIR", "--print", "A0"),
)


@pytest.fixture(scope="module")
def tally() -> Row:
    return row("projects through every command")


@pytest.fixture(scope="module")
def full(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("full") / "full.bodice"
    write_project(full_project(), path)
    return path


@pytest.mark.parametrize("way", _WAYS, ids=" ".join)
@pytest.mark.parametrize("name", [*(path.stem for path in DEMOS), "full"])
def test_through_every_command(
    name: str, way: tuple[str, ...], full: Path, tally: Row, tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    path = full if name == "full" else next(demo for demo in DEMOS if demo.stem == name)
    before = path.read_bytes()
    (tmp_path / "CLIENTS.csv").write_text(_CLIENTS, encoding="utf-8")
    words = [str(tmp_path / word) if word.startswith(("OUT", "CLIENTS", "DIR")) else word for word in way]
    called = f"{name}: {' '.join(way)}"
    tally.fell.append(called)
    status = cli.main([words[0], str(path), *words[1:]])
    said = capsys.readouterr()
    assert status == (1 if way[0] == "recut" else 0), said.err
    assert said.err == ""
    assert path.read_bytes() == before
    _check_output(way, tmp_path, said.out)
    tally.fell.remove(called)
    tally.note(way[0])


def _check_output(way: tuple[str, ...], folder: Path, said: str) -> None:
    if way[0] == "recut":
        made = sorted(path.name for path in (folder / "DIR").iterdir())
        assert len(made) == 4, made
        assert {path.name for path in folder.iterdir()} == {"CLIENTS.csv", "DIR"}
        assert "2 done, 1 failed" in said
        return
    if "--json" in way:
        json.loads(said)
    for word in way:
        if word.startswith("OUT"):
            assert (folder / word).read_bytes().lstrip().startswith(_ENDS[Path(word).suffix])

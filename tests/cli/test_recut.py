"""A style cut again for a table of clients, from the command line."""

from __future__ import annotations

import csv
import io
import sys
import time
import tracemalloc
from pathlib import Path

import pytest

from tests.cli.test_commands import refusal, sizes_mm
from tests.document import example
from tests.draft.test_real_bodies import FOUR_SETS
from workbench import cli
from workbench.body import CAUTION_SHORT
from workbench.document import picture_of, read_project, set_pin, write_project

ROOT = Path(__file__).parents[2]
SOLOIST = ROOT / "demo_projects" / "concert_soloist.bodice"
HEAD = "name,unit,waist_girth,bust_girth\n"
NEVER = "never.bodice"


@pytest.fixture
def out(tmp_path: Path) -> Path:
    return tmp_path / "new" / "projects"


def table(folder: Path, content: str) -> Path:
    path = folder / "clients.csv"
    path.write_text(content, encoding="utf-8")
    return path


def recut(capsys: pytest.CaptureFixture[str], *arguments: object) -> tuple[int, list[str]]:
    """The exit status and the lines printed; nothing goes to the error stream of no terminal."""
    status = cli.main(["recut", *map(str, arguments)])
    said = capsys.readouterr()
    assert said.err == ""
    return status, said.out.splitlines()


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_one_project_and_one_line_for_each_row(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    clients = table(tmp_path, HEAD + 'Ada,in,27 1/2,36\nEva,cm,"72,5",95\n')
    status, lines = recut(capsys, SOLOIST, clients, "-o", out)
    assert status == 0
    assert [line.partition(". ")[0] for line in lines[:-1]] == [
        "line 2, Ada: Ada.bodice",
        "line 3, Eva: Eva.bodice",
    ]
    assert lines[-1] == f"2 done, 0 failed. {CAUTION_SHORT}"
    assert names(out) == ["Ada.bodice", "Eva.bodice"]
    eva, style = read_project(out / "Eva.bodice"), read_project(SOLOIST)
    assert (eva.client.name, eva.unit, eva.measurements["waist_girth"].typed) == ("Eva", "cm", "72,5")
    assert (eva.making, eva.design.reductions) == (style.making, style.design.reductions)
    assert not picture_of(eva).stopped


def test_a_line_says_what_had_to_give_and_what_is_above_a_limit(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    style = tmp_path / "style.bodice"
    write_project(set_pin(example("over_bust"), "front", 1, "waist", 20.0), style)
    clients = table(tmp_path, "name,unit,waist_girth,bust_girth,bust_span,hip_girth\nAda,in,18 1/2,30,8,17\n")
    status, (line, _) = recut(capsys, style, clients, "-o", out)
    assert status == 0
    for words in (
        "Waist: 2 in round the body (½ in a quarter, 10.8 %) is above the limit you set: your 10 % allows",
        "Waist: the front’s seam 1 takes in",
        "The front seam 1 moves to the bust point: 4 in from the centre front there",
        "Please check: waist (18½ in) is less than is usual",
        "Please check: waist (18½ in) is more than hip (17 in).",
        "measurements are estimates.",
    ):
        assert words in line


def test_bad_rows_are_named_and_the_others_done(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    rows = (
        "Ada,in,27 1/2,36",
        "Bea,in,wide,36",
        "Cleo,in,27,5,36",
        "Dora,in,,36",
        ",ft,27,36",
        "Eva,cm,70,95",
    )
    status, lines = recut(capsys, SOLOIST, table(tmp_path, HEAD + "\n".join(rows)), "-o", out)
    assert status == 1
    assert lines[1].startswith("line 3, Bea: column “waist_girth”: “wide” is not a length")
    assert lines[2].startswith("line 4: It has 5 cells where the first line has 4.")
    assert (
        lines[3] == "line 5, Dora: column “waist_girth”: Waist is missing: nothing else can stand in for it."
    )
    assert lines[4] == "line 6: column “name”: It is empty. column “unit”: It must be in or cm, not “ft”."
    assert lines[6].startswith("2 done, 4 failed. ")
    assert names(out) == ["Ada.bodice", "Eva.bodice"]


def test_levels_out_of_order_name_their_column(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    clients = table(
        tmp_path, "name,unit,waist_girth,bust_girth,shoulder_to_bust,shoulder_to_waist\nAda,cm,70,95,45,40\n"
    )
    status, lines = recut(capsys, SOLOIST, clients, "-o", out)
    assert status == 1
    assert lines[0].startswith(
        "line 2, Ada: column “shoulder_to_bust”: Shoulder to bust point (45.0 cm) must be"
    )
    assert names(out) == []


def test_what_cannot_be_drafted_is_kept_and_counts_as_failed(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, lines = recut(capsys, SOLOIST, table(tmp_path, HEAD + "Ada,cm,12,95\n"), "-o", out)
    assert status == 1
    assert lines[0].startswith("line 2, Ada: Ada.bodice: cannot be drafted: Waist: a finished girth of")
    assert picture_of(read_project(out / "Ada.bodice")).stopped


def test_names_are_numbered_and_nothing_is_written_over(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    clients = table(tmp_path, HEAD + "Ada,in,27,36\nAda,in,28,37\nAda 2,in,29,38\n")
    wanted = ["Ada 2 2.bodice", "Ada 2.bodice", "Ada.bodice"]
    assert recut(capsys, SOLOIST, clients, "-o", out)[0] == 0
    assert names(out) == wanted
    before = {name: (out / name).read_bytes() for name in wanted}
    assert read_project(out / "Ada 2.bodice").client.name == "Ada"
    assert recut(capsys, SOLOIST, clients, "-o", out)[0] == 0
    assert len(names(out)) == 6
    assert {name: (out / name).read_bytes() for name in wanted} == before


def test_no_name_leads_out_of_the_folder(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    bad = ("../up", "..", "/etc/passwd", "a/../../b", "~", "c:\\d", ".hidden", "-o")
    clients = table(tmp_path, HEAD + "".join(f"{name},in,27,36\n" for name in bad))
    status, _ = recut(capsys, SOLOIST, clients, "-o", out)
    assert status == 0
    assert names(tmp_path) == ["clients.csv", "new"]
    assert names(tmp_path / "new") == ["projects"]
    kept = [read_project(path) for path in out.iterdir()]
    assert sorted(project.client.name for project in kept) == sorted(bad)


def test_the_260_women_of_bdims_are_all_done_or_reported(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Heinz, Peterson, Johnson, Kerk 2003, J. Stat. Educ. 11(2), 260 women; read."""
    with (ROOT / "tests" / "data" / "bdims_women.csv").open() as file:
        women = list(csv.DictReader(file))
    rows = (f"Woman,cm,{w['waist_cm']},{w['hip_cm']},{w['upper_chest_cm']}\n" for w in women)
    clients = table(tmp_path, "name,unit,waist_girth,hip_girth,upper_chest_girth\n" + "".join(rows))
    status, lines = recut(capsys, SOLOIST, clients, "-o", out)
    assert len(lines) == 261
    failed = sum("cannot be drafted" in line for line in lines)
    assert status == (1 if failed else 0)
    assert failed <= 5
    assert lines[-1].startswith(f"{260 - failed} done, {failed} failed. ")
    assert len(names(out)) == 260


def test_the_four_consistent_sets(tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Test data of clad-body 0.6.1 (read)."""
    rows = "".join(f"Set {number},cm,{','.join(map(str, row))}\n" for number, row in enumerate(FOUR_SETS))
    head = "name,unit,bust_girth,underbust_girth,waist_girth,hip_girth,nape_to_waist\n"
    status, lines = recut(capsys, SOLOIST, table(tmp_path, head + rows), "-o", out)
    assert (status, len(lines)) == (0, 5)
    # the fourth has a waist wider than her underbust, and the method still drafts her
    assert not picture_of(read_project(out / "Set 3.bodice")).stopped


def test_prints_lie_beside_the_projects(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out.mkdir(parents=True)
    (out / "Ada.pdf").write_bytes(b"hers")
    clients = table(tmp_path, HEAD + "Ada,in,27,36\n")
    status, lines = recut(capsys, SOLOIST, clients, "-o", out, "--print", "Letter")
    assert status == 0
    assert lines[0].startswith("line 2, Ada: Ada 2.bodice and Ada 2.pdf. ")
    assert (out / "Ada.pdf").read_bytes() == b"hers"
    assert (216, 279) in sizes_mm(out / "Ada 2.pdf")


def refused(capsys: pytest.CaptureFixture[str], *arguments: object) -> str:
    return refusal(capsys, "recut", *arguments)


def test_what_cannot_begin_makes_no_folder(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    clients = table(tmp_path, HEAD + "Ada,in,27,36\n")
    no_style = tmp_path / NEVER
    assert refused(capsys, no_style, clients, "-o", out) == f"{no_style}: there is no such file."
    assert refused(capsys, clients, clients, "-o", out).startswith(f"{clients}: ")
    assert (
        refused(capsys, SOLOIST, no_style, "-o", out)
        == f"{no_style}: cannot be read: no such file or directory."
    )
    assert refused(capsys, SOLOIST, clients, "-o", out, "--print", "A9").startswith(
        "--print: “A9” is none of"
    )
    assert "roll" in refused(capsys, SOLOIST, clients, "-o", out, "--print", "roll:1cm")
    table(tmp_path, "name,unit,waist\nAda,in,27\n")
    assert "line 1, column 3: “waist” is no name" in refused(capsys, SOLOIST, clients, "-o", out)
    assert "--help" in refused(capsys, SOLOIST, clients)
    assert not out.exists()


def test_no_clients_at_all(tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]) -> None:
    clients = table(tmp_path, HEAD + "\n,,,\n")
    said = refused(capsys, SOLOIST, clients, "-o", out)
    assert said == f"{clients}: there are no clients below its first line"


def test_a_folder_that_cannot_be_used(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    clients = table(tmp_path, HEAD + "Ada,in,27,36\n")
    assert refused(capsys, SOLOIST, clients, "-o", clients) == f"{clients}: is a file, not a folder."
    below = clients / "below"
    assert refused(capsys, SOLOIST, clients, "-o", below).startswith(f"{below}: cannot be written: ")


class _Watched(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_progress_is_told_while_somebody_watches(
    tmp_path: Path, out: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    errors = _Watched()
    monkeypatch.setattr(sys, "stderr", errors)
    clients = table(tmp_path, HEAD + "Ada,in,27,36\nBea,in,x,36\n")
    assert cli.main(["recut", str(SOLOIST), str(clients), "-o", str(out)]) == 1
    assert errors.getvalue().startswith("\r\x1b[Kline 2: 1 done, 0 failed")
    assert errors.getvalue().endswith("\r\x1b[K")


def test_a_table_of_any_length_takes_no_more_memory(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    peaks = []
    for count in (5, 60):
        clients = table(tmp_path, HEAD + "".join(f"Woman {row},in,27,36\n" for row in range(count)))
        tracemalloc.start()
        assert recut(capsys, SOLOIST, clients, "-o", out / str(count))[0] == 0
        peaks.append(tracemalloc.get_traced_memory()[1])
        tracemalloc.stop()
    # sixty rows say some 40 kB more on the captured output, and hold nothing else
    assert peaks[1] < peaks[0] + 300_000, peaks


def test_a_thousand_rows_take_no_more_than_twenty_seconds_of_work(
    tmp_path: Path, out: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """On a style with a pin, which is drafted twice for each body; told from a hundred, waiting left out."""
    clients = table(tmp_path, HEAD + "".join(f"Woman,cm,{60 + 0.2 * row},92\n" for row in range(100)))
    started = time.process_time()
    assert recut(capsys, SOLOIST, clients, "-o", out)[0] == 0
    assert time.process_time() - started < 0.1 * 20.0

"""The commands, in this process: what they print, and how they refuse."""

from __future__ import annotations

import json
from pathlib import Path
from types import SimpleNamespace

import pypdfium2  # type: ignore[import-untyped]  # it comes without types
import pytest

import workbench
from tests.document import example
from workbench import cli
from workbench.document import json_schema, set_measurement, set_reduction, write_project

DEMOS = Path(__file__).parents[2] / "demo_projects"
BRIDE = DEMOS / "bride_first_wear.bodice"


def refusal(capsys: pytest.CaptureFixture[str], *arguments: object) -> str:
    """The one line of a refusal; nothing is printed besides."""
    assert cli.main([str(argument) for argument in arguments]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.endswith("\n")
    assert said.err.count("\n") == 1
    assert said.err.startswith("corset-workbench: ")
    return said.err.removeprefix("corset-workbench: ").rstrip("\n")


def sizes_mm(path: Path) -> set[tuple[int, int]]:
    """Sizes of the pages, the shorter side first."""
    pdf = pypdfium2.PdfDocument(path)
    try:
        return {tuple(sorted(round(side * 25.4 / 72) for side in page.get_size())) for page in pdf}
    finally:
        pdf.close()


def test_report_in_words(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["report", str(BRIDE)]) == 0
    said = capsys.readouterr()
    assert said.out.startswith("Bride, first wear (invented)\n")
    assert said.err == ""


@pytest.mark.parametrize("path", sorted(DEMOS.glob("*.bodice")), ids=lambda path: path.stem)
def test_report_as_data_has_every_part(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["report", str(path), "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["project"] == path.stem
    level = {"name", "walk_mm", "body_girth_mm", "finished_girth_mm", "fabric_girth_mm", "reduction_mm"}
    assert level | {"reduction_percent", "limit", "status"} <= data["levels"][0].keys()
    assert {"needed_mm", "placed_mm"} <= data["intake"]["back"]["waist"].keys()
    assert {"name", "quarter", "stitch_outline_mm", "area_mm2", "width_mm"} <= data["panels"][0].keys()
    seam = {"left", "right", "left_length_mm", "right_length_mm", "neckline_angle_sum", "hem_angle_sum"}
    assert seam <= data["seams"][0].keys()
    assert data["tape_girth_mm"].keys() == {each["name"] for each in data["levels"]}
    assert "largest_reduction_mm" in data["comfort"]
    piece = {"name", "layer", "count", "mirrored", "on_fold", "cut_outline_mm", "stitch_outline_mm"}
    assert piece | {"notches_mm", "grain"} <= data["pieces"][0].keys()
    bone = {"place", "where", "stitch_length_mm", "cut_length_mm", "stock", "count", "lost_mm"}
    assert bone <= data["bones"][0].keys()
    assert {"name", "count", "length_mm", "how"} <= data["notions"][0].keys()
    assert data["walk_check"].keys() == {"rows", "angles", "holds"}
    assert {"severity", "text", "value", "limit"} <= data["comfort"]["findings"][0].keys()
    assert data["findings"]


def test_schema_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == json_schema()


@pytest.mark.parametrize(
    ("paper", "size"),
    [("A4", (210, 297)), ("letter", (216, 279)), ("A3", (297, 420)), ("A0", (841, 1189))],
)
def test_print_on_each_paper(paper: str, size: tuple[int, int], tmp_path: Path) -> None:
    """Sizes from ISO 216 and ANSI Y14.1."""
    out = tmp_path / "bride.pdf"
    assert cli.main(["print", str(BRIDE), "-o", str(out), "--paper", paper]) == 0
    assert size in sizes_mm(out)


@pytest.mark.parametrize("what", ["order", "card", "beads"])
def test_what_is_no_panel_is_printed_from_the_command_line_too(tmp_path: Path, what: str) -> None:
    out = tmp_path / "out.pdf"
    assert cli.main(["print", str(BRIDE), "-o", str(out), "--what", what]) == 0
    assert sizes_mm(out) <= {(210, 297), (216, 279)}


def test_print_on_a_roll_of_any_width(tmp_path: Path) -> None:
    out = tmp_path / "bride.pdf"
    for width, mm in (("36in", 914), ("91cm", 910), ("700", 700)):
        assert cli.main(["print", str(BRIDE), "-o", str(out), "--paper", f"roll:{width}"]) == 0
        assert any(mm in size for size in sizes_mm(out))


def test_print_choices_change_the_print_and_the_same_ones_do_not(tmp_path: Path) -> None:
    prints = {}
    choices = (
        (),
        ("--margin", "15"),
        ("--margin", "15mm"),
        ("--overlap", "0.5in"),
        ("--no-allowance",),
    )
    for choice in choices:
        out = tmp_path / "out.pdf"
        assert cli.main(["print", str(BRIDE), "-o", str(out), *choice]) == 0
        prints[choice] = out.read_bytes()
    assert prints["--margin", "15"] == prints["--margin", "15mm"]
    assert len(set(prints.values())) == 4


def test_print_replaces_an_older_print(tmp_path: Path) -> None:
    out = tmp_path / "out.pdf"
    out.write_bytes(b"older")
    assert cli.main(["print", str(BRIDE), "-o", str(out)]) == 0
    assert out.read_bytes().startswith(b"%PDF-")
    assert list(tmp_path.iterdir()) == [out]


def test_print_never_over_a_project(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    project, other, link = tmp_path / "a.bodice", tmp_path / "b.bodice", tmp_path / "a.pdf"
    for path in (project, other):
        write_project(example(), path)
    link.symlink_to(project)
    before = project.read_bytes()
    for out in (project, other, link):
        assert "not written over a project" in refusal(capsys, "print", project, "-o", out)
    assert project.read_bytes() == other.read_bytes() == before


def test_failed_print_leaves_the_older_one(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "out.pdf"
    out.write_bytes(b"older")
    said = refusal(capsys, "print", BRIDE, "-o", out, "--margin", "200mm")
    assert said.startswith(f"{BRIDE}: ")
    assert out.read_bytes() == b"older"
    assert list(tmp_path.iterdir()) == [out]


@pytest.mark.parametrize(
    ("choice", "said"),
    [
        (("--paper", "A9"), "--paper: “A9” is none of"),
        (("--paper", "roll:wide"), "--paper roll: “wide” is not a length"),
        (("--paper", "roll:1cm"), "roll"),
        (("--paper", "roll:0"), "--paper roll: a roll is wider than nothing"),
        (("--margin", "-3mm"), "expected one argument"),
        (("--margin=-3mm",), "--margin: A length cannot be negative"),
        (("--overlap", "nan"), "--overlap: “nan” is not a length"),
        (("--overlap", "3 in cm"), "--overlap: There are two units"),
        (("--overlap", "400mm"), "overlap"),
    ],
)
def test_print_choice_that_makes_no_sense(
    choice: tuple[str, ...], said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "out.pdf"
    assert said in refusal(capsys, "print", BRIDE, "-o", out, *choice)
    assert not out.exists()


def test_print_into_a_folder_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "none" / "out.pdf"
    assert (
        refusal(capsys, "print", BRIDE, "-o", out) == f"{out}: cannot be written: its folder does not exist."
    )


@pytest.mark.skipif(not Path("/proc/self").is_dir(), reason="a folder that nobody can write, root included")
def test_print_into_a_folder_that_cannot_be_written(capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, "print", BRIDE, "-o", "/proc/out.pdf")
    assert said.startswith("/proc/out.pdf: cannot be written: ")


@pytest.mark.parametrize("command", ["report", "open", "print"])
@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "the file is empty."),
        (b"\x89PNG\r\n", "line 1 is no text"),
        (b'{"format": "bodice", "version": 9}', "the file has version 9"),
        (b'{"format": "bodice",\n "version"', "the file ends in the middle, in line 2"),
        (b'{"format": "bodice", "version": 1, "unit": "in", "unit": "in"}', "unit stands there twice"),
        (b'{"format": "bodice", "version": 1, "line\\nend": 1}', "line end is not known here"),
        (b'{"format": "bodice", "version": 1}', "client is missing"),
    ],
)
def test_bad_file_is_one_line_with_file_place_and_reason(
    command: str, content: bytes, said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "client.bodice"
    path.write_bytes(content)
    out = tmp_path / "o.pdf"
    arguments = {"report": ("report", path), "open": (path,), "print": ("print", path, "-o", out)}
    line = refusal(capsys, *arguments[command])
    assert not out.exists()
    assert line.startswith(f"{path}: ")
    assert said in line


@pytest.mark.parametrize("extra", [["report"], ["report", "--json"], ["print", "-o", "never.pdf"]])
def test_project_that_cannot_be_drafted_says_which_figure(
    extra: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "client.bodice"
    no_waist = set_measurement(example(), "waist_girth", "")
    no_cloth = set_reduction(example(), "waist", 690)
    for project, field in ((no_waist, "measurements › waist_girth"), (no_cloth, "reductions › waist")):
        write_project(project, path)
        assert refusal(capsys, extra[0], path, *extra[1:]).startswith(f"{path}: {field}: Waist")
    assert not Path("never.pdf").exists()


@pytest.mark.parametrize(
    "arguments",
    [("report",), ("print", "a.bodice"), ("--sideways",), ("report", "a", "b"), ("schema", "a"), ("a", "b")],
)
def test_arguments_that_make_no_sense(arguments: tuple[str, ...], capsys: pytest.CaptureFixture[str]) -> None:
    assert "--help" in refusal(capsys, *arguments)


def printed_by(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    """What is printed by arguments that end the program at once."""
    with pytest.raises(SystemExit) as ended:
        cli.main(arguments)
    assert ended.value.code == 0
    return capsys.readouterr().out


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert printed_by(capsys, "--version") == f"corset-workbench {workbench.__version__}\n"


def test_help_names_every_command_and_choice(capsys: pytest.CaptureFixture[str]) -> None:
    for word in ("report FILE", "print FILE", "schema", "--version"):
        assert word in printed_by(capsys, "--help")
    for word in ("--paper", "--margin", "--overlap", "--no-allowance", "roll:36in"):
        assert word in printed_by(capsys, "print", "--help")
    assert "--json" in printed_by(capsys, "report", "--help")


def test_window_is_opened_on_the_file_and_gives_the_status(monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[Path | None] = []

    def run(path: Path | None) -> int:
        opened.append(path)
        return 0

    monkeypatch.setitem(__import__("sys").modules, "workbench.ui", SimpleNamespace(run=run))
    assert cli.main([]) == 0
    assert cli.main([str(BRIDE)]) == 0
    assert opened == [None, BRIDE]


def test_interrupted_command_ends_quietly(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupted(_: object) -> str:
        raise KeyboardInterrupt

    monkeypatch.setattr("workbench.document.report_text", interrupted)
    assert cli.main(["report", str(BRIDE)]) == 2
    said = capsys.readouterr()
    assert (said.out, said.err) == ("", "")

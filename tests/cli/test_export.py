"""Files for other programs from the command line: what is written, and how it refuses."""

from __future__ import annotations

from io import StringIO
from pathlib import Path

import ezdxf
import pypdfium2  # type: ignore[import-untyped]  # it comes without types
import pytest

from tests.cli.test_commands import refusal
from tests.document import example
from workbench import cli
from workbench.document import set_measurement, write_project

DEMOS = Path(__file__).parents[2] / "demo_projects"
BRIDE = DEMOS / "bride_first_wear.bodice"


def export(out: Path, *options: str, file: Path = BRIDE) -> bytes:
    assert cli.main(["export", str(file), "-o", str(out), *options]) == 0
    return out.read_bytes()


def words(data: bytes) -> str:
    document = pypdfium2.PdfDocument(data)
    try:
        return " ".join(page.get_textpage().get_text_bounded() for page in document)
    finally:
        document.close()


def test_the_ending_decides_what_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert export(tmp_path / "out.svg").startswith(b"<?xml")
    assert export(tmp_path / "out.DXF").lstrip().startswith(b"0")
    assert export(tmp_path / "out.pdf").startswith(b"%PDF")
    said = capsys.readouterr()
    assert said.out == said.err == ""


def test_the_same_project_gives_the_same_bytes(tmp_path: Path) -> None:
    for name in ("a.svg", "a.dxf", "a.pdf"):
        assert export(tmp_path / name) == export(tmp_path / f"b{name}")


def test_panels_pieces_and_layers(tmp_path: Path) -> None:
    panels = export(tmp_path / "panels.svg", "--what", "panels")
    assert b'class="cut"' not in panels
    both = export(tmp_path / "both.svg", "--layer", "lining", "--layer", "fashion")
    assert b'id="fashion-front-1"' in both
    assert b'id="lining-front-1"' in both
    everything = export(tmp_path / "all.svg", "--layer", "all")
    assert b'id="modesty-modesty-panel"' in everything


@pytest.mark.parametrize(("version", "release"), [("R12", "R12"), ("R2000", "R2000")])
def test_the_version_of_a_dxf_is_asked_for(tmp_path: Path, version: str, release: str) -> None:
    data = export(tmp_path / "out.dxf", "--dxf", version)
    document = ezdxf.read(StringIO(data.decode("cp1252")))  # type: ignore[attr-defined]
    assert document.acad_release == release


@pytest.mark.parametrize(
    ("scale", "said"),
    [("half", "Half scale"), ("1/4", "Quarter scale"), ("0.5", "Half scale"), ("full", "True to size")],
)
def test_scales_are_named_or_figures(tmp_path: Path, scale: str, said: str) -> None:
    assert said in words(export(tmp_path / "out.pdf", "--scale", scale))


def test_a_projector_sheet_says_its_grid(tmp_path: Path) -> None:
    data = export(
        tmp_path / "out.pdf", "--projector", "--line", "3mm", "--grid", "10cm", "--dark", "--contrast", "60"
    )
    assert "Every square is 10 cm" in words(data)


def test_the_marking_guide_is_one_piece_a_page(tmp_path: Path) -> None:
    said = words(export(tmp_path / "out.pdf", "--what", "guide", "--layer", "fashion"))
    assert "Marking guide" in said
    assert "to ⅛ in" in said
    assert "to ¹⁄₁₆ in" in words(
        export(tmp_path / "fine.pdf", "--what", "guide", "--layer", "fashion", "--round", "sixteenth")
    )


@pytest.mark.parametrize("name", ["out.png", "out", "out.bodice", "out.svg.gz"])
def test_an_unknown_ending_is_refused_before_anything_is_written(
    tmp_path: Path, name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    said = refusal(capsys, "export", BRIDE, "-o", tmp_path / name)
    assert said.startswith(f"{tmp_path / name}: ")
    assert "name a .svg, .dxf or .pdf file" in said
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_is_not_there_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, "export", BRIDE, "-o", tmp_path / "nowhere" / "out.svg")
    assert said.endswith("cannot be written: its folder does not exist.")


def test_a_stopped_draft_is_refused_and_what_was_there_stays(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    stopped = tmp_path / "stopped.bodice"
    write_project(set_measurement(example(), "waist_girth", ""), stopped)
    for name in ("out.svg", "out.dxf", "out.pdf"):
        out = tmp_path / name
        out.write_bytes(b"before")
        said = refusal(capsys, "export", stopped, "-o", out)
        assert said.startswith(f"{stopped}: measurements › waist_girth: ")
        assert out.read_bytes() == b"before"
    assert not list(tmp_path.glob("*.part"))


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--layer", "velvet"), "--layer: “velvet” is none of fashion"),
        (("--scale", "tiny"), "--scale: “tiny” is none of"),
        (("--scale", "1/0"), "--scale: “1/0” is none of"),
        (("--scale", "7"), "The scale must lie between"),
        (("--scale", "nan"), "--scale: “nan” is none of"),
        (("--line", "2mm"), "--line: only for a projector"),
        (("--projector", "--contrast", "bright"), "--contrast: “bright” is no figure"),
        (("--projector", "--grid", "1mm"), "squares of the grid must lie between"),
        (("--projector", "--line", "wide"), "--line: "),
        (("--round", "mm"), "--round: only for a marking guide"),
        (("--what", "guide", "--scale", "half"), "--scale: does nothing for a marking guide"),
        (("--layer", "top_facing"), "None of the layers"),
    ],
)
def test_options_that_make_no_sense_are_refused(
    tmp_path: Path, options: tuple[str, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "out.pdf"
    assert said in refusal(capsys, "export", BRIDE, "-o", out, *options)
    assert not out.exists()


def test_a_guide_and_a_projector_sheet_are_pdfs_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for options in (("--what", "guide"), ("--projector",)):
        said = refusal(capsys, "export", BRIDE, "-o", tmp_path / "out.svg", *options)
        assert "name a .pdf file" in said

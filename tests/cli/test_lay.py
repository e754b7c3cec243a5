"""Laying from the command line: what each cloth takes, where each piece lies, and how it refuses."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pypdfium2  # type: ignore[import-untyped]  # it comes without types
import pytest
import shapely

from tests.cli.test_commands import BRIDE, DEMOS, refusal, sizes_mm
from tests.document import example
from workbench import cli
from workbench.cli import laying
from workbench.cloth import Plan, kept
from workbench.document import (
    Lay,
    Project,
    keep_plan,
    picture_of,
    set_allowance_of,
    set_cloth,
    set_cloth_layers,
    set_measurement,
    set_paper,
    write_project,
)
from workbench.draft import Finding

Data = dict[str, Any]
FASHION = "Fashion cloth"


def laid(capsys: pytest.CaptureFixture[str], *arguments: object) -> Data:
    """What is printed as JSON; nothing on the error stream, where nobody watches it."""
    assert cli.main(["lay", *map(str, arguments), "--json"]) == 0
    said = capsys.readouterr()
    assert said.err == ""
    read: Data = json.loads(said.out)
    return read


def with_plan(project: Project) -> Project:
    plan = picture_of(project).plan_for(FASHION)
    assert plan is not None
    return keep_plan(project, kept(plan))


@pytest.mark.parametrize("path", sorted(DEMOS.glob("*.bodice")), ids=lambda path: path.stem)
def test_every_demo_is_laid_at_once_without_overlap(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Against shapely: inside the cloth, clear of each other, all of them there."""
    data = laid(capsys, path, "--seconds", 0)
    assert data["project"] == path.stem
    for cloth in data["cloths"]:
        assert cloth["findings"] == []
        assert cloth["left_over"] == 0
        assert len(cloth["placements"]) == cloth["pieces"]
        polygons = [shapely.Polygon(each["outline_mm"]) for each in cloth["placements"]]
        strip = shapely.box(0, 0, cloth["width_mm"], cloth["length_mm"]).buffer(0.1)
        assert all(strip.contains(polygon) for polygon in polygons)
        near = shapely.STRtree(polygons).query(polygons, "dwithin", 2.9)
        assert (near[0] == near[1]).all()
        assert cloth["buy_length_mm"] >= cloth["length_mm"] or cloth["at_hand"].startswith("Fits in what")


def test_placements_have_what_another_program_needs(capsys: pytest.CaptureFixture[str]) -> None:
    cloth = laid(capsys, BRIDE, "--cloth", "lining CLOTH", "--seconds", 0)["cloths"][0]
    assert cloth["name"] == "Lining cloth"
    assert {"length_mm", "buy_length_mm", "utilisation", "how", "cost", "plan"} <= cloth.keys()
    assert {"piece", "copy", "x", "y", "rotation", "mirrored"} <= cloth["placements"][0].keys()
    keys = [(each["piece"], each["copy"]) for each in cloth["placements"]]
    assert len(set(keys)) == len(keys)


def test_a_search_is_never_longer_than_what_is_laid_at_once(capsys: pytest.CaptureFixture[str]) -> None:
    (at_once,) = laid(capsys, BRIDE, "--cloth", FASHION, "--seconds", 0)["cloths"]
    (sought,) = laid(capsys, BRIDE, "--cloth", FASHION, "--seconds", 1)["cloths"]
    assert sought["length_mm"] <= at_once["length_mm"]
    assert sought["plan"] in ("found", "none")
    assert len(sought["placements"]) == len(at_once["placements"])


def test_a_kept_plan_that_holds_is_taken_as_it_is(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "kept.bodice"
    write_project(with_plan(example()), path)
    before = path.read_bytes()
    monkeypatch.setattr(laying, "_SEEK_SECONDS", 0.0)
    (cloth,) = laid(capsys, path, "--cloth", FASHION)["cloths"]
    plan = with_plan(example()).plans[0]
    assert (cloth["plan"], cloth["length_mm"]) == ("current", plan.length_mm)
    places = {(each["piece"], each["copy"]): (each["x"], each["y"]) for each in cloth["placements"]}
    assert places == {(own.piece, own.copy): (own.x, own.y) for own in plan.placed}
    assert path.read_bytes() == before


def test_a_plan_out_of_date_is_not_taken(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "stale.bodice"
    write_project(set_allowance_of(with_plan(example()), "side", 40), path)
    (cloth,) = laid(capsys, path, "--cloth", FASHION, "--seconds", 0)["cloths"]
    assert cloth["plan"] == "stale"
    assert [finding["code"] for finding in cloth["findings"]] == ["plan_stale"]


def test_in_words(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["lay", str(BRIDE), "--seconds", "0"]) == 0
    said = capsys.readouterr()
    assert said.err == ""
    for words in ("Fashion cloth, 54 in wide", "To buy: ½ yd, $21.00", "across from", "Eyelet facing"):
        assert words in said.out


class _Watched(io.StringIO):
    def isatty(self) -> bool:
        return True


def found_at_once(lay: Lay, _: float, told: Callable[[Plan, float], None]) -> tuple[Lay, tuple[Finding, ...]]:
    """Stands in for a search that finds what there was already, after two seconds, and then fails."""
    assert lay.plan is not None
    told(lay.plan, 2.0)
    return lay, (Finding("attend", "search_failed", "The search failed."),)


@pytest.mark.parametrize(("stream", "told"), [(_Watched, True), (io.StringIO, False)])
def test_progress_is_told_while_somebody_watches(
    stream: type[io.StringIO], told: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(laying, "better_lay", found_at_once)
    errors = stream()
    monkeypatch.setattr(sys, "stderr", errors)
    assert cli.main(["lay", str(BRIDE), "--cloth", FASHION]) == 0
    length = "16⅝ in" if told else ""
    assert errors.getvalue() == (f"\r\x1b[K{FASHION}: {length} after 2 s\r\x1b[K" if told else "")


def test_a_search_that_failed_is_told_with_the_plan(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(laying, "better_lay", found_at_once)
    assert laid(capsys, BRIDE, "--cloth", FASHION)["findings"][0]["text"] == "The search failed."
    assert cli.main(["lay", str(BRIDE), "--cloth", FASHION]) == 0
    assert "The search failed." in capsys.readouterr().out


def test_a_cloth_that_cannot_be_laid_is_one_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "narrow.bodice"
    write_project(set_cloth(example(), "Lining cloth", width_mm=150.0), path)
    line = refusal(capsys, "lay", path, "--seconds", 0)
    assert line.startswith(f"{path}: Lining cloth: ")
    assert "across" in line
    assert laid(capsys, path, "--cloth", FASHION, "--seconds", 0)["cloths"]


@pytest.mark.parametrize("seconds", ["-1", "soon", "nan", "inf", "1e9"])
def test_no_such_time(seconds: str, capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, "lay", BRIDE, f"--seconds={seconds}")
    assert said == f"--seconds: “{seconds}” is no number of seconds from 0 to 3600"


def test_no_such_cloth(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, "lay", BRIDE, "--cloth", "Brocade")
    assert said.startswith(f"{BRIDE}: there is no cloth called “Brocade”; the project has “Fashion cloth”, ")


def test_what_cannot_be_drafted_cannot_be_laid(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "client.bodice"
    write_project(set_measurement(example(), "waist_girth", ""), path)
    assert refusal(capsys, "lay", path).startswith(f"{path}: measurements › waist_girth: Waist")
    path.write_bytes(b"{")
    assert refusal(capsys, "lay", path).startswith(f"{path}: the file ends in the middle")


def test_plans_are_printed_as_well(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "plan.pdf"
    names = [cloth["name"] for cloth in laid(capsys, BRIDE, "--seconds", 0, "-o", out)["cloths"]]
    pdf = pypdfium2.PdfDocument(out)
    try:
        pages = [page.get_textpage().get_text_range() for page in pdf]
    finally:
        pdf.close()
    for name in names:
        assert any(name in page for page in pages)
    alone = tmp_path / "alone.pdf"
    laid(capsys, BRIDE, "--seconds", 0, "--cloth", FASHION, "-o", alone)
    assert alone.stat().st_size < out.stat().st_size
    assert sorted(path.name for path in tmp_path.iterdir()) == ["alone.pdf", "plan.pdf"]


def test_plans_for_a_roll_are_printed_on_a_sheet(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path, out = tmp_path / "roll.bodice", tmp_path / "plan.pdf"
    write_project(set_paper(example(), name="roll"), path)
    laid(capsys, path, "--seconds", 0, "-o", out)
    assert sizes_mm(out) == {(210, 297)}


def test_plans_never_over_a_project_nor_of_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "empty.bodice"
    write_project(set_cloth_layers(example(), FASHION, ()), path)
    before = path.read_bytes()
    assert "not written over a project" in refusal(capsys, "lay", path, "-o", path)
    said = refusal(capsys, "lay", path, "--cloth", FASHION, "-o", tmp_path / "plan.pdf")
    assert said == f"{path}: There is no lay plan to print yet."
    out = tmp_path / "none" / "plan.pdf"
    assert refusal(capsys, "lay", path, "--seconds", 0, "-o", out).startswith(f"{out}: cannot be written")
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path]


def test_help_names_every_choice(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        cli.main(["lay", "--help"])
    said = capsys.readouterr().out
    for word in ("--cloth", "--seconds", "--json", "-o PLAN.pdf"):
        assert word in said

"""Choices that make no sense, and what is said about them."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace

import pytest

from tests.exchange.conftest import exported
from tests.sheets.conftest import HEADING, CutJob
from workbench.exchange import ExportChoice, ExportError, Format, Projector, export, format_of


@pytest.mark.parametrize(("suffix", "kind"), [(".svg", "svg"), (".DXF", "dxf"), (".Pdf", "pdf")])
def test_the_ending_says_which_format(suffix: str, kind: Format) -> None:
    assert format_of(suffix) == kind


@pytest.mark.parametrize("suffix", [".png", ".dxf2", "", ".", ".svgz"])
def test_any_other_ending_is_refused_with_what_to_name(suffix: str) -> None:
    with pytest.raises(ExportError, match=r"name a \.svg, \.dxf or \.pdf file"):
        format_of(suffix)


@pytest.mark.parametrize("scale", [0.0, -1.0, 0.05, 2.0, float("nan"), float("inf")])
def test_a_scale_out_of_its_bounds_is_refused(cut: CutJob, scale: float) -> None:
    with pytest.raises(ExportError, match="scale must lie between"):
        exported(cut, "svg", scale=scale)


@pytest.mark.parametrize(
    ("projector", "named"),
    [
        (Projector(line_mm=0.0), "width of the lines"),
        (Projector(line_mm=float("nan")), "width of the lines"),
        (Projector(grid_mm=1.0), "squares of the grid"),
        (Projector(contrast=0.0), "contrast"),
        (Projector(contrast=1.5), "contrast"),
    ],
)
def test_a_projector_that_shows_nothing_is_refused(cut: CutJob, projector: Projector, named: str) -> None:
    with pytest.raises(ExportError, match=named):
        exported(cut, "pdf", projector=projector)


def test_a_projector_sheet_is_a_pdf_alone(cut: CutJob) -> None:
    with pytest.raises(ExportError, match=r"name a \.pdf file"):
        exported(cut, "svg", projector=Projector())


def test_no_layers_unknown_layers_and_layers_not_made_are_refused(cut: CutJob) -> None:
    for layers, said in (((), "must be some of"), (("velvet",), "must be some of")):
        with pytest.raises(ExportError, match=said):
            exported(cut, "svg", layers=layers)
    bare = replace(cut.cutting, layers=())
    with pytest.raises(ExportError, match="None of the layers"):
        export(cut.job.outcome, bare, HEADING, "svg", ExportChoice())


def test_a_stopped_draft_is_refused(cut: CutJob) -> None:
    stopped = replace(cut.job.outcome, draft=None)
    for kind in ("svg", "dxf", "pdf"):
        with pytest.raises(ExportError, match="stopped by one of its findings"):
            export(stopped, None, HEADING, kind, ExportChoice(what="panels"))


def test_nothing_that_writes_files_is_read_before_one_is_written() -> None:
    script = (
        "import sys, workbench.exchange; "
        "print([name for name in ('ezdxf', 'reportlab', 'PIL') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"

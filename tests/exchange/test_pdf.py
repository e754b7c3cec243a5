"""One-page PDFs: for a copy shop, at half and quarter scale, and for a projector."""

from __future__ import annotations

from io import BytesIO

import numpy as np
import pikepdf
import pypdfium2  # type: ignore[import-untyped]  # it comes without types
import pytest

from tests.exchange.alike import Array, off
from tests.exchange.conftest import exported
from tests.sheets.conftest import HEADING, CutJob
from tests.sheets.readback import lines_by_pdfium, lines_by_pikepdf, page_sizes, text_of
from workbench.body import CAUTION_SHORT
from workbench.draft import Finding
from workbench.exchange import ExportChoice, Projector, export
from workbench.pieces import LAYERS

MICROMETRE = 1e-3
ISO = {"A4": (210, 297), "A3": (297, 420), "A2": (420, 594), "A1": (594, 841), "A0": (841, 1189)}
"""ISO 216, mm."""


@pytest.mark.parametrize("scale", [1.0, 0.5, 0.25])
def test_the_only_page_has_every_piece_within_a_micrometre_by_two_readers(cut: CutJob, scale: float) -> None:
    pdf = exported(cut, "pdf", scale=scale)
    (by_pdfium,), (by_pikepdf,) = lines_by_pdfium(pdf), lines_by_pikepdf(pdf)
    for piece in cut.cutting.layers[0].pieces:
        for line in (piece.cut * scale, piece.stitch * scale):
            assert off(line, [drawn.points for drawn in by_pikepdf]) <= MICROMETRE
            assert off(line, by_pdfium) <= MICROMETRE


@pytest.mark.parametrize("scale", [1.0, 0.5, 0.25])
def test_it_is_the_smallest_usual_sheet_and_says_its_scale(cut: CutJob, scale: float) -> None:
    pdf = exported(cut, "pdf", scale=scale)
    (wide, high) = page_sizes(pdf)[0]
    assert tuple(sorted((round(wide), round(high)))) in ISO.values()
    said = {1.0: "True to size", 0.5: "Half scale", 0.25: "Quarter scale"}[scale]
    (text,) = text_of(pdf)
    assert said in text
    assert "invented for demonstration" in text
    assert CAUTION_SHORT.split(".")[0] in text
    assert ("not for cutting cloth" in text) == (scale < 1)


def test_the_square_measures_50_mm_whatever_the_scale(cut: CutJob) -> None:
    for scale in (1.0, 0.25):
        (lines,) = lines_by_pikepdf(exported(cut, "pdf", scale=scale))
        sides = [np.ptp(line.points, axis=0) for line in lines if len(line.points) == 4]
        assert any(np.allclose(side, 50.0, atol=MICROMETRE) for side in sides)


def test_many_layers_go_on_a_length_of_roll_and_nothing_leaves_the_page(cut: CutJob) -> None:
    pdf = exported(cut, "pdf", layers=LAYERS)
    (wide, high) = page_sizes(pdf)[0]
    assert wide <= 1524.01
    (lines,) = lines_by_pikepdf(pdf)
    points = np.concatenate([line.points for line in lines])
    assert points.min() >= 0
    assert points[:, 0].max() <= wide
    assert points[:, 1].max() <= high


@pytest.mark.parametrize("projector", [Projector(), Projector(3.0, "dark", 0.5, 100.0)])
def test_a_projector_sheet_has_a_true_grid_and_lines_as_wide_as_asked(
    cut: CutJob, projector: Projector
) -> None:
    pdf = exported(cut, "pdf", projector=projector)
    (lines,) = lines_by_pikepdf(pdf)
    across = sorted({round(line.points[0, 0], 4) for line in lines if _upright(line.points, pdf)})
    assert len(across) >= 3
    assert np.diff(across) == pytest.approx(projector.grid_mm, abs=MICROMETRE)
    widths = _widths(pdf)
    assert projector.line_mm in widths
    for piece in cut.cutting.layers[0].pieces:
        assert off(piece.cut, [line.points for line in lines]) <= MICROMETRE


def _upright(points: Array, pdf: bytes) -> bool:
    """Whether a line runs from the foot of the page to its top."""
    wide, high = np.ptp(points, axis=0)
    return len(points) == 2 and bool(wide == 0 and high > page_sizes(pdf)[0][1] - 0.1)


def _widths(pdf: bytes) -> set[float]:
    """Widths of line on the page, mm."""
    with pikepdf.open(BytesIO(pdf)) as document:
        orders = pikepdf.parse_content_stream(document.pages[0])
        return {round(float(o.operands[0]) * 25.4 / 72, 3) for o in orders if str(o.operator) == "w"}


@pytest.mark.parametrize("ground", ["light", "dark"])
def test_contrast_is_what_was_asked_for(cut: CutJob, ground: str) -> None:
    grey = []
    for contrast in (1.0, 0.5):
        projector = Projector(ground=ground, contrast=contrast, grid_mm=1000.0, line_mm=20.0)  # type: ignore[arg-type]
        document = pypdfium2.PdfDocument(exported(cut, "pdf", projector=projector))
        shades = np.asarray(document[0].render(scale=0.5, grayscale=True).to_pil())
        document.close()
        assert shades[0, 0] == (255 if ground == "light" else 0)
        grey.append(int(np.ptp(shades)))
    assert grey[0] == pytest.approx(255, abs=2)
    assert grey[1] == pytest.approx(128, abs=3)


def test_the_same_pieces_give_the_same_bytes(cut: CutJob) -> None:
    for choice in ({}, {"scale": 0.5}, {"projector": Projector()}):
        assert exported(cut, "pdf", **choice) == exported(cut, "pdf", **choice)


def test_what_is_above_a_limit_is_said_on_paper(cut: CutJob) -> None:
    over = Finding("over", "waist", "The waist is {more} above the limit you set.", {"more": 25.4})
    pdf = export(cut.job.outcome, cut.cutting, HEADING, "pdf", ExportChoice(), (over,))
    assert "Above the limit you set: The waist is 1 in above" in text_of(pdf)[0]

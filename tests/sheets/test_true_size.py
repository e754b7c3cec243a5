"""Lines read back from the finished PDF, by two readers, against the draft."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest

from tests.sheets.conftest import Job
from tests.sheets.readback import Array, lines_by_pdfium, lines_by_pikepdf
from workbench.sheets import PrintChoice, SheetMap, Tile, sheet_map

MICROMETRE = 1e-3
"""mm"""
PAPERS = ("A4", "Letter", "A3", "A0", "roll")


def wanted(job: Job, sheets: SheetMap, tile: Tile) -> Iterator[tuple[str, Array]]:
    """Name and stitch line of every panel on a sheet, where they should stand on its page."""
    assert job.outcome.draft is not None
    panels = job.outcome.draft.panels
    margin, box = sheets.paper.margin, tile.box
    for panel, placed in zip(panels, sheets.panels, strict=True):
        shift = np.array([placed.dx + margin - box.left, placed.dy + margin - box.bottom])
        if _touches(panel.outline + shift, sheets):
            yield panel.name, panel.outline + shift


def _touches(points: Array, sheets: SheetMap) -> bool:
    margin, paper = sheets.paper.margin, sheets.paper
    low, high = points.min(axis=0), points.max(axis=0)
    return bool(
        low[0] < paper.width - margin
        and high[0] > margin
        and low[1] < paper.height - margin
        and high[1] > margin
    )


def nearest(line: Array, drawn: list[Array]) -> float:
    """Greatest distance, mm, of a line's points from the drawn path that is most like it."""
    alike = [path[: len(line)] for path in drawn if len(line) <= len(path) <= len(line) + 1]
    return min((float(np.abs(path - line).max()) for path in alike), default=np.inf)


@pytest.mark.parametrize("paper", PAPERS)
def test_stitch_lines_read_back_within_a_micrometre_by_pdfium(either: Job, paper: str) -> None:
    sheets = sheet_map(either.outcome, PrintChoice(name=paper))
    pages = lines_by_pdfium(either.pdf(name=paper))[-len(sheets.tiles) :]
    for tile, drawn in zip(sheets.tiles, pages, strict=True):
        for name, stitch in wanted(either, sheets, tile):
            assert nearest(stitch, drawn) <= MICROMETRE, (tile.name, name)


@pytest.mark.parametrize("paper", PAPERS)
def test_stitch_lines_read_back_within_a_micrometre_by_pikepdf(either: Job, paper: str) -> None:
    sheets = sheet_map(either.outcome, PrintChoice(name=paper))
    pages = lines_by_pikepdf(either.pdf(name=paper))[-len(sheets.tiles) :]
    for tile, drawn in zip(sheets.tiles, pages, strict=True):
        margin, paper_size = sheets.paper.margin, sheets.paper
        clip = (margin, margin, paper_size.width - margin, paper_size.height - margin)
        paths = [line.points for line in drawn if line.clip and np.allclose(line.clip, clip, atol=1e-6)]
        for name, stitch in wanted(either, sheets, tile):
            assert nearest(stitch, paths) <= MICROMETRE, (tile.name, name)


def test_without_allowance_only_the_stitch_line_is_printed_and_it_is_unbroken(belt: Job) -> None:
    assert belt.outcome.draft is not None
    sheets = sheet_map(belt.outcome, PrintChoice(with_allowance=False))
    page = lines_by_pikepdf(belt.pdf(with_allowance=False))[-len(sheets.tiles)]
    outline = belt.outcome.draft.panels[0].outline
    rings = [line for line in page if len(line.points) >= len(outline)]
    assert rings
    assert not any(line.dashed for line in rings)


def sides(points: Array) -> tuple[float, float]:
    return float(np.ptp(points[:, 0])), float(np.ptp(points[:, 1]))


@pytest.mark.parametrize("paper", PAPERS)
def test_both_squares_measure_true(gown: Job, paper: str) -> None:
    # 4 in is 101.6 mm (ISO 31-1, from memory)
    squares = [
        sides(line.points)
        for page in lines_by_pikepdf(gown.pdf(name=paper))
        for line in page
        if len(line.points) == 4 and abs(sides(line.points)[0] - 100.8) < 2
    ]
    assert sorted(squares) == [
        pytest.approx((100.0, 100.0), abs=MICROMETRE),
        pytest.approx((101.6, 101.6), abs=MICROMETRE),
    ]


@pytest.mark.parametrize("paper", PAPERS)
def test_squares_come_no_later_than_the_first_sheet_and_clear_of_the_panels(gown: Job, paper: str) -> None:
    sheets = sheet_map(gown.outcome, PrintChoice(name=paper))
    pages = lines_by_pikepdf(gown.pdf(name=paper))
    first_sheet = len(pages) - len(sheets.tiles)
    with_squares = [
        number
        for number, page in enumerate(pages)
        if any(len(line.points) == 4 and abs(sides(line.points)[0] - 100) < 1e-3 for line in page)
    ]
    assert with_squares == [first_sheet if sheets.squares else first_sheet - 1]
    if sheets.squares:
        for panel in sheets.panels:
            inside = panel.outline
            assert not (
                (inside[:, 0] > sheets.squares.left)
                & (inside[:, 0] < sheets.squares.right)
                & (inside[:, 1] > sheets.squares.bottom)
                & (inside[:, 1] < sheets.squares.top)
            ).any()

"""The bead plan on paper: every bead read back from the file where it lies, and every count in words."""

from __future__ import annotations

from io import BytesIO
from time import process_time

import numpy as np
import pikepdf
import pypdfium2  # type: ignore[import-untyped]
import pytest
from numpy.typing import NDArray

from tests.beads.garments import LACED, PLAIN, RICH, beading, bodice, bones
from tests.sheets.conftest import HEADING
from workbench.beads import (
    BeadBands,
    Beading,
    BeadKind,
    BeadMark,
    BeadPlan,
    BeadRun,
    BeadScatter,
    BeadWeight,
    bands_of,
)
from workbench.sheets import PrintChoice, print_beads, sheet_map
from workbench.sheets.bead_marks import bead_code

Array = NDArray[np.float64]
MM = 25.4 / 72.0
"""mm in a PDF unit: 1/72 in (ISO 32000)."""
MICROMETRE = 1e-3


def printed(beads: Beading, **choice: object) -> bytes:
    bands = bands_of(bodice(), LACED, bones(), beads.plan)
    return print_beads(bodice(), beads, bands, HEADING, PrintChoice(**choice))  # type: ignore[arg-type]


def circles(page: pikepdf.Page) -> list[tuple[float, float, float]]:
    """Middle and diameter, mm, of every circle of four cubics on a page, as pikepdf parses its orders."""
    found, matrix, saved = [], np.eye(3), []
    start: list[float] = []
    ends: list[list[float]] = []
    for instruction in pikepdf.parse_content_stream(page):
        order, values = str(instruction.operator), list(instruction.operands)
        if order == "q":
            saved.append(matrix)
        elif order == "Q":
            matrix = saved.pop()
        elif order == "cm":
            a, b, c, d, e, f = (float(value) for value in values)
            matrix = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ matrix
        elif order == "m":
            start, ends = [float(value) for value in values], []
        elif order == "c":
            ends.append([float(value) for value in values[4:]])
            if len(ends) == 4:
                (x, y, _) = np.array([*np.mean([start, *ends[:3]], axis=0), 1.0]) @ matrix
                found.append((x * MM, y * MM, 2 * MM * float(np.hypot(*np.subtract(start, ends[1]))) / 2))
    return found


@pytest.fixture(scope="module")
def beads() -> Beading:
    return beading(RICH)


@pytest.mark.parametrize("paper", ["A4", "Letter", "A0"])
def test_every_bead_reads_back_where_it_lies_and_in_its_size(beads: Beading, paper: str) -> None:
    sheets = sheet_map(bodice(), PrintChoice(name=paper))
    with pikepdf.open(BytesIO(printed(beads, name=paper))) as file:
        pages = list(file.pages)[-len(sheets.tiles) :]
        lying = beads.all
        for tile, page in zip(sheets.tiles, pages, strict=True):
            drawn: Array = np.array(circles(page))
            margin = sheets.paper.margin
            for panel, placed in enumerate(sheets.panels):
                own = lying.part(lying.panels == panel)
                move = np.array([placed.dx - tile.box.left, placed.dy - tile.box.bottom])
                at = own.points + move + margin
                far = np.array([sheets.paper.width, sheets.paper.height])
                on_page = ((at > margin) & (at < far)).all(axis=1)
                for (x, y), kind in zip(at[on_page], own.kinds[on_page], strict=True):
                    away = np.hypot(drawn[:, 0] - x, drawn[:, 1] - y)
                    same = drawn[away < MICROMETRE]
                    assert len(same) >= 1
                    assert np.abs(same[:, 2] - beads.plan.kinds[kind].size_mm).min() < MICROMETRE


def text_of(data: bytes, page: int) -> str:
    document = pypdfium2.PdfDocument(data)
    return str(document[page].get_textpage().get_text_bounded())


def test_lists_say_every_count(beads: Beading) -> None:
    said = text_of(printed(beads), 0)
    assert f"{beads.count.total:,} beads" in said
    for line in beads.count.kinds:
        assert line.kind.name in said
        assert f"{line.with_reserve:,}" in said
    for each in beads.beaded:
        assert each.name in said
        for row in each.rows:
            assert f"{row.asked:,}" in said


def test_the_same_plan_gives_the_same_bytes(beads: Beading) -> None:
    assert printed(beads) == printed(beads)


def test_pages_are_counted_through(beads: Beading) -> None:
    data = printed(beads)
    count = len(pypdfium2.PdfDocument(data))
    assert f"page 1 of {count}" in text_of(data, 0)
    assert f"page {count} of {count}" in text_of(data, count - 1)


@pytest.mark.parametrize("mark", ["disc", "ring", "diamond", "square", "triangle", "bar"])
def test_every_mark_stays_within_its_bead(mark: BeadMark) -> None:
    code = bead_code(mark, 6.0, np.array([[0.0, 0.0]]))
    words = [float(word) for word in code.split() if word[-1].isdigit()]
    assert max(np.abs(words)) * MM <= 3.0 + 1e-6
    assert code.endswith(" S")


def test_marks_are_told_apart_without_colour() -> None:
    marks: tuple[BeadMark, ...] = ("disc", "ring", "diamond", "square", "triangle", "bar")
    assert len({bead_code(mark, 6.0, np.array([[0.0, 0.0]])) for mark in marks}) == len(marks)


def test_ten_thousand_beads_are_printed_within_half_a_second() -> None:
    kinds = (*RICH.kinds, BeadKind("Grain", 1.5))
    all_over = BeadScatter("All", (0, 1, 2, 3, 4, 5), (BeadWeight("Grain"),), 140.0)
    many = beading(BeadPlan(kinds, scatters=(all_over,), bands=BeadBands(0, 0, 0, 0, 0, 0)), PLAIN)
    assert len(many.all) > 10_000
    printed(many)
    times = []
    for _ in range(3):
        began = process_time()
        printed(many)
        times.append(process_time() - began)
    assert min(times) < 1.0


def test_a_plan_that_lays_nothing_still_prints() -> None:
    empty = beading(BeadPlan(RICH.kinds, runs=(BeadRun("Bad", "hem", ("Pearl 4 mm",), 0.0),)))
    assert "no spacing" in text_of(printed(empty), 0)


def test_what_is_missing_is_a_sentence(beads: Beading) -> None:
    with pytest.raises(ValueError, match="Margins of 200 mm"):
        printed(beads, margin_mm=200.0)

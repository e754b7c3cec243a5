"""Bodies and designs of every kind printed, and their lines read back from the finished file."""

from __future__ import annotations

from typing import Literal

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.document import makings
from tests.draft.strategies import bodies, designs
from tests.robust import how_many
from tests.robust.tally import Row, row
from tests.sheets.conftest import HEADING
from tests.sheets.readback import Array, lines_by_pdfium
from tests.sheets.test_true_size import MICROMETRE, nearest
from workbench.body import Body, Limits
from workbench.draft import Design, comfort_of, work_out
from workbench.pieces import LAYERS, Cutting, Making, cutting_of
from workbench.sheets import PrintChoice, PrintError, SheetMap, print_pdf, sheet_map
from workbench.sheets.chosen import chosen_pieces

PaperName = Literal["A4", "Letter", "A3", "A0", "roll"]
_papers: st.SearchStrategy[PaperName] = st.sampled_from(["A4", "Letter", "A3", "A0", "A0", "roll"])
_TALLY: list[Row] = []
_TRIED = 4
"""Bodies and designs for each print wanted: of those that fit together so badly most are refused."""


def _tally() -> Row:
    """Made with the first example, so that the table has no line for what was not run."""
    if not _TALLY:
        _TALLY.append(row("bodies and designs printed and read back"))
    return _TALLY[0]


@st.composite
def _jobs(draw: st.DrawFn) -> tuple[Body, Design, Making]:
    design = draw(designs())
    usual = st.just(Making())
    return draw(bodies()), design, draw(usual | makings(design.panel_count))


# the geometry library passes an overflow on the way to a sound line, where an edge leans by 1e-320 mm
@pytest.mark.filterwarnings("ignore:overflow encountered in simplify:RuntimeWarning")
@settings(
    max_examples=_TRIED * how_many("prints"),
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(_jobs(), _papers, st.booleans(), st.booleans())
def test_prints_read_back(
    job: tuple[Body, Design, Making], paper: PaperName, all_layers: bool, allowance: bool
) -> None:
    tally = _tally()
    body, design, making = job
    outcome = work_out(body, design)
    if outcome.draft is None:
        tally.note("not drafted")
        return
    cutting = cutting_of(outcome, making)
    choice = PrintChoice(paper, with_allowance=allowance, layers=LAYERS if all_layers else ("fashion",))
    try:
        sheets = sheet_map(outcome, choice, cutting)
        pdf = print_pdf(outcome, comfort_of(outcome, Limits()), HEADING, choice, cutting)
    except PrintError as refused:
        _one_sentence(str(refused))
        tally.note("not printed, and said why")
        return
    pages = lines_by_pdfium(pdf)
    _holds(cutting, choice, sheets, pages[-len(sheets.tiles) :])
    tally.note("true")
    tally.figures["pages"] = str(int(tally.figures.get("pages", "0")) + len(pages))


def _one_sentence(said: str) -> None:
    assert said.endswith("."), said


def _holds(cutting: Cutting, choice: PrintChoice, sheets: SheetMap, pages: list[list[Array]]) -> None:
    """Every piece is on some sheet, and wherever it is, its lines are where they should stand."""
    seen = set()
    margin = sheets.paper.margin
    pieces = list(zip(chosen_pieces(cutting, choice), sheets.panels, strict=True))
    for tile, drawn in zip(sheets.tiles, pages, strict=True):
        box = tile.box
        printed = shapely.box(box.left, box.bottom, box.right, box.top)
        for (_, piece), placed in pieces:
            if not shapely.Polygon(placed.outline).intersects(printed):
                continue
            seen.add(piece.key)
            move = np.array([placed.dx + margin - box.left, placed.dy + margin - box.bottom])
            assert nearest(piece.stitch + move, drawn) <= MICROMETRE, (tile.name, piece.key, "stitch line")
            if choice.with_allowance:
                assert nearest(piece.cut + move, drawn) <= MICROMETRE, (tile.name, piece.key, "cut line")
    assert seen == {piece.key for (_, piece), _ in pieces}
    assert seen


def test_prints_were_made() -> None:
    """Most of those wanted: were all of them refused, nothing would have been shown."""
    tally = _tally()
    if not tally.tried:
        pytest.skip("nothing was printed in this run")
    assert tally.seen["true"] > 0.6 * how_many("prints")

"""Cut lines, stitch lines and notches of the pieces, read back from the finished PDF by two readers."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest
import shapely

from tests.sheets.conftest import CutJob
from tests.sheets.readback import Array, lines_by_pdfium, lines_by_pikepdf
from tests.sheets.test_true_size import MICROMETRE, nearest
from workbench.pieces import LAYERS, LayerName, Piece
from workbench.sheets import PrintChoice, PrintError, SheetMap, Tile, print_pdf, sheet_map
from workbench.sheets.chosen import chosen_pieces

FASHION: tuple[LayerName, ...] = ("fashion",)
CASES = [("A4", FASHION), ("Letter", FASHION), ("A4", LAYERS), ("A0", LAYERS), ("roll", LAYERS)]


def shown(cut: CutJob, sheets: SheetMap, tile: Tile, choice: PrintChoice) -> Iterator[tuple[Piece, Array]]:
    """The pieces on a sheet, each with how far it is moved from its own coordinates to the page."""
    margin, box = sheets.paper.margin, tile.box
    printed = shapely.box(box.left, box.bottom, box.right, box.top)
    for (_, piece), placed in zip(chosen_pieces(cut.cutting, choice), sheets.panels, strict=True):
        if shapely.Polygon(placed.outline).intersects(printed):
            yield piece, np.array([placed.dx + margin - box.left, placed.dy + margin - box.bottom])


def sheets_of(cut: CutJob, choice: PrintChoice) -> SheetMap:
    return sheet_map(cut.job.outcome, choice, cut.cutting)


@pytest.mark.parametrize(("paper", "layers"), CASES)
def test_cut_and_stitch_lines_read_back_within_a_micrometre(
    either_cut: CutJob, paper: str, layers: tuple[LayerName, ...]
) -> None:
    choice = PrintChoice(paper, layers=layers)
    sheets = sheets_of(either_cut, choice)
    pdf = either_cut.pdf(name=paper, layers=layers)
    count = len(sheets.tiles)
    by_pikepdf = [[line.points for line in page] for page in lines_by_pikepdf(pdf)[-count:]]
    for pages in (lines_by_pdfium(pdf)[-count:], by_pikepdf):
        seen = set()
        for tile, drawn in zip(sheets.tiles, pages, strict=True):
            for piece, move in shown(either_cut, sheets, tile, choice):
                seen.add(piece.key)
                assert nearest(piece.cut + move, drawn) <= MICROMETRE, (tile.name, piece.key)
                assert nearest(piece.stitch + move, drawn) <= MICROMETRE, (tile.name, piece.key)
        assert seen == {piece.key for piece in either_cut.cutting.pieces if piece.layer in layers}


@pytest.mark.parametrize(("paper", "layers"), CASES)
def test_every_piece_lies_wholly_on_printed_sheets_and_apart(
    either_cut: CutJob, paper: str, layers: tuple[LayerName, ...]
) -> None:
    sheets = sheets_of(either_cut, PrintChoice(paper, layers=layers))
    printed = shapely.union_all(
        [shapely.box(t.box.left, t.box.bottom, t.box.right, t.box.top) for t in sheets.tiles]
    ).buffer(1e-3)
    pieces = [shapely.Polygon(placed.outline) for placed in sheets.panels]
    assert all(printed.covers(piece) for piece in pieces)
    for number, piece in enumerate(pieces):
        assert all(piece.distance(other) >= 1.0 for other in pieces[number + 1 :])


def test_every_notch_is_drawn_where_it_was_worked_out(either_cut: CutJob) -> None:
    choice = PrintChoice("A0")
    sheets = sheets_of(either_cut, choice)
    drawn = [line.points for line in lines_by_pikepdf(either_cut.pdf(name="A0"))[-1]]
    slits = np.array([line for line in drawn if len(line) == 2])
    for piece, move in shown(either_cut, sheets, sheets.tiles[0], choice):
        stitch = shapely.LinearRing(piece.stitch)
        for notch in piece.notches:
            towards, at = np.array(notch.towards), np.array(notch.at)
            along = np.array([-towards[1], towards[0]])
            own = [s for s in slits if _is_slit(s - move, at, towards, along)]
            assert len(own) == notch.count, (piece.key, notch)
            feet = np.array([slit[0] - move for slit in own])
            assert feet.mean(axis=0) == pytest.approx(at, abs=MICROMETRE)
            allowance = next(edge.allowance for edge in piece.edges if edge.name == notch.edge)
            if allowance > 0:
                assert all(stitch.distance(shapely.LineString(slit - move)) > 1.0 for slit in own)


def _is_slit(line: Array, at: Array, towards: Array, along: Array) -> bool:
    """Whether a line begins within 3 mm of a notch, beside it along the edge, and runs inwards."""
    foot, run = line[0] - at, line[1] - line[0]
    length = float(np.hypot(*run))
    near = abs(float(foot @ towards)) < MICROMETRE and abs(float(foot @ along)) < 3.0
    return near and 1.0 < length < 7.0 and abs(float(run @ along)) < MICROMETRE


def test_without_allowance_the_stitch_line_alone_is_printed(busked: CutJob) -> None:
    choice = PrintChoice("A0", with_allowance=False)
    sheets = sheets_of(busked, choice)
    page = lines_by_pikepdf(busked.pdf(name="A0", with_allowance=False))[-1]
    for piece, move in shown(busked, sheets, sheets.tiles[0], choice):
        rings = [line for line in page if len(line.points) == len(piece.stitch)]
        alike = [line for line in rings if np.abs(line.points - piece.stitch - move).max() <= MICROMETRE]
        assert alike, piece.key
        assert not any(line.dashed for line in alike)
        assert nearest(piece.cut + move, [line.points for line in page]) > 1.0


@pytest.mark.parametrize("layers", [FASHION, LAYERS])
def test_the_same_pieces_give_the_same_bytes(either_cut: CutJob, layers: tuple[LayerName, ...]) -> None:
    job = either_cut.job
    again = print_pdf(job.outcome, job.comfort, job.heading, PrintChoice(layers=layers), either_cut.cutting)
    assert again == either_cut.pdf(layers=layers)


def test_layers_that_are_not_made_cannot_be_printed(busked: CutJob) -> None:
    with pytest.raises(PrintError, match="None of the layers chosen for the print is made"):
        sheets_of(busked, PrintChoice(layers=("hem_facing",)))


def test_a_layer_that_is_not_made_is_passed_over_where_another_is(busked: CutJob) -> None:
    both = sheets_of(busked, PrintChoice(layers=("hem_facing", "fashion")))
    assert len(both.panels) == len(sheets_of(busked, PrintChoice()).panels)

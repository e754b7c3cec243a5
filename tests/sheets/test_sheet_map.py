"""The sheets cover every panel, join unmistakably, and none is printed for nothing."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.sheets.conftest import Job, job
from tests.sheets.readback import Line, lines_by_pikepdf, text_of
from workbench.sheets import Box, Join, PaperSize, PrintChoice, SheetMap, sheet_map

PAPERS = ("A4", "Letter", "A3", "A0", "roll")
GOWN, BELT = job("over_bust", 4, 4, 50.8), job("under_bust", 2, 2, 25.4)


def rectangle(box: Box) -> shapely.Polygon:
    return shapely.box(box.left, box.bottom, box.right, box.top)


def uncovered(sheets: SheetMap) -> float:
    """mm² of the panels that lie on no printed sheet."""
    printed = shapely.union_all([rectangle(tile.box) for tile in sheets.tiles])
    panels = shapely.union_all([shapely.Polygon(panel.outline) for panel in sheets.panels])
    return float(panels.difference(printed.buffer(1e-3)).area)


@pytest.mark.parametrize("paper", PAPERS)
def test_every_panel_lies_wholly_on_printed_sheets(either: Job, paper: str) -> None:
    assert uncovered(sheet_map(either.outcome, PrintChoice(name=paper))) == 0.0


@settings(max_examples=40, deadline=None)
@given(
    margin=st.floats(0, 60),
    overlap=st.floats(0, 40),
    paper=st.sampled_from(["A4", "Letter", "A3", "A0"]),
    allowance=st.booleans(),
    wide=st.booleans(),
)
def test_any_margin_and_overlap_cover_the_panels_apart_from_each_other(
    margin: float, overlap: float, paper: str, allowance: bool, wide: bool
) -> None:
    choice = PrintChoice(paper, margin, overlap, with_allowance=allowance)
    sheets = sheet_map((GOWN if wide else BELT).outcome, choice)
    assert uncovered(sheets) == 0.0
    panels = [shapely.Polygon(panel.outline) for panel in sheets.panels]
    for number, panel in enumerate(panels):
        assert all(panel.distance(other) >= 1.0 for other in panels[number + 1 :])


def test_panels_of_a_shelf_stand_on_one_waist_line_and_are_never_turned(gown: Job) -> None:
    sheets = sheet_map(gown.outcome, PrintChoice())
    shelves: dict[float, list[int]] = {}
    for panel in sheets.panels:
        shelves.setdefault(round(panel.dy, 9), []).append(panel.panel)
    assert [number for shelf in sorted(shelves, reverse=True) for number in shelves[shelf]] == list(range(8))
    assert len(shelves) < 8


@pytest.mark.parametrize("paper", ["A4", "Letter", "A3"])
def test_no_printed_sheet_could_be_left_out(either: Job, paper: str) -> None:
    sheets = sheet_map(either.outcome, PrintChoice(name=paper))
    panels = shapely.union_all([shapely.Polygon(panel.outline) for panel in sheets.panels])
    for tile in sheets.tiles:
        others = shapely.union_all([rectangle(other.box) for other in sheets.tiles if other is not tile])
        assert panels.difference(others).area > 0


def test_blank_sheets_of_the_grid_are_not_printed() -> None:
    sheets = _with_blanks()
    assert {tile.number for tile in sheets.blanks} == {0}
    assert len(sheets.tiles) + len(sheets.blanks) == sheets.rows * sheets.columns
    panels = shapely.union_all([shapely.Polygon(panel.outline) for panel in sheets.panels])
    printed = shapely.union_all([rectangle(tile.box) for tile in sheets.tiles])
    assert all(panels.intersection(rectangle(t.box)).difference(printed).area < 1e-6 for t in sheets.blanks)


def _with_blanks() -> SheetMap:
    """Some margin at which the grid is not full."""
    for margin in range(0, 80, 2):
        sheets = sheet_map(GOWN.outcome, PrintChoice(margin_mm=float(margin)))
        if sheets.blanks:
            return sheets
    raise AssertionError("no margin leaves a blank sheet")


def test_pages_are_the_front_the_squares_and_the_printed_sheets_only() -> None:
    sheets = _with_blanks()
    texts = text_of(GOWN.pdf(margin_mm=sheets.paper.margin))
    for tile, text in zip(sheets.tiles, texts[-len(sheets.tiles) :], strict=True):
        assert f"{tile.name} of {len(sheets.tiles)} sheets" in text
    assert not any(f"{blank.name} of " in text for blank in sheets.blanks for text in texts)


def test_overlapping_strips_are_equally_wide_everywhere(gown: Job) -> None:
    sheets = sheet_map(gown.outcome, PrintChoice(margin_mm=30.0, overlap_mm=14.0))
    at = {(tile.row, tile.column): tile.box for tile in (*sheets.tiles, *sheets.blanks)}
    across = [at[r, c].right - at[r, c + 1].left for r, c in at if (r, c + 1) in at]
    down = [at[r + 1, c].top - at[r, c].bottom for r, c in at if (r + 1, c) in at]
    assert down
    assert [*across, *down] == pytest.approx([14.0] * len([*across, *down]), abs=1e-9)


def _small_sheets() -> tuple[SheetMap, list[list[Line]]]:
    """A print with joins both ways."""
    sheets = sheet_map(GOWN.outcome, PrintChoice(margin_mm=60.0))
    assert {join.upright for join in sheets.joins} == {True, False}
    return sheets, lines_by_pikepdf(GOWN.pdf(margin_mm=60.0))[-len(sheets.tiles) :]


def test_every_join_has_a_number_of_its_own_and_says_it_on_both_sheets() -> None:
    sheets, _ = _small_sheets()
    assert [join.number for join in sheets.joins] == list(range(1, len(sheets.joins) + 1))
    texts = dict(
        zip(
            (tile.name for tile in sheets.tiles),
            text_of(GOWN.pdf(margin_mm=60.0))[-len(sheets.tiles) :],
            strict=True,
        )
    )
    for join in sheets.joins:
        assert f"lay {join.second} here" in texts[join.first]
        assert f"cut here, lay on {join.first}" in texts[join.second]


def test_sheets_that_share_a_panel_side_by_side_are_joined() -> None:
    sheets, _ = _small_sheets()
    joined = {(join.first, join.second) for join in sheets.joins}
    panels = shapely.union_all([shapely.Polygon(panel.outline) for panel in sheets.panels])
    at = {(tile.row, tile.column): tile for tile in sheets.tiles}
    for (row, column), tile in at.items():
        for step in ((row, column + 1), (row + 1, column)):
            if step in at:
                line = _join_line(tile.box, at[step].box)
                assert ((tile.name, at[step].name) in joined) == bool(panels.intersects(line))


def _join_line(first: Box, second: Box) -> shapely.LineString:
    """The edge of the second sheet that lies on the first, up to the next join."""
    if second.left > first.left:
        height = first.height - 10.0
        return shapely.LineString([(second.left, first.top), (second.left, first.top - height)])
    width = first.width - 10.0
    return shapely.LineString([(first.left, second.top), (first.left + width, second.top)])


def test_both_sheets_draw_a_join_at_the_same_place_of_the_whole() -> None:
    sheets, pages = _small_sheets()
    for join in sheets.joins:
        for name in (join.first, join.second):
            tile = sheets.tile(name)
            shift = np.array([tile.box.left, tile.box.bottom]) - sheets.paper.margin
            wanted = np.array([join.start, join.end])
            drawn = [line.points + shift for line in pages[tile.number - 1] if len(line.points) == 2]
            assert min(np.abs(line - wanted).max() for line in drawn) < 1e-3


def test_corners_are_marked_where_a_sheet_is_cut() -> None:
    sheets, pages = _small_sheets()
    margin = sheets.paper.margin
    for tile, page in zip(sheets.tiles, pages, strict=True):
        right = any(j.upright and j.first == tile.name for j in sheets.joins)
        below = any(not j.upright and j.first == tile.name for j in sheets.joins)
        x = margin + tile.box.width - (10.0 if right else 0.0)
        y = margin + (10.0 if below else 0.0)
        starts = np.array([line.points[0] for line in page if len(line.points) == 2])
        for corner in (
            (margin, y),
            (margin, margin + tile.box.height),
            (x, y),
            (x, margin + tile.box.height),
        ):
            assert (np.abs(starts - corner).max(axis=1) < 1e-3).sum() >= 2, (tile.name, corner)


def test_marks_lie_on_the_join_a_quarter_from_its_ends() -> None:
    join = Join(3, "A1", "A2", True, (180.0, 0.0), (180.0, -200.0))
    assert join.marks() == ((180.0, -50.0), (180.0, -150.0))


def test_the_orientation_that_needs_fewest_sheets_is_taken(gown: Job) -> None:
    from workbench.sheets.arrange import _extent as extent
    from workbench.sheets.arrange import _tried, _ways, arrange

    assert gown.outcome.draft is not None
    lines = tuple(panel.outline for panel in gown.outcome.draft.panels)
    polygons = shapely.polygons([shapely.linearrings(line) for line in lines])
    paper = PaperSize("A4", 210.0, 297.0, 10.0, 10.0)
    extents = [extent(line) for line in lines]
    tried = [_tried(way, extents, polygons) for way in _ways(extents, paper)]
    assert arrange(lines, paper).sheets == min(found.sheets for found in tried if found)

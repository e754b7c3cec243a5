"""Everything that is worked out or written without a window, on the demos, beside the least it could take."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from tests.bench import floors
from tests.bench.books import GOAL_COUNT, GOAL_MS, book_of, built, warm
from tests.bench.clock import Timing, timed
from workbench.beads import beading_of
from workbench.body import complete
from workbench.cloth import bottom_left
from workbench.document import (
    ClientRow,
    exported,
    picture_of,
    printed,
    read_project,
    recut,
    to_bytes,
)
from workbench.draft import work_out
from workbench.exchange import ExportChoice
from workbench.pieces import LAYERS, cutting_of

DEMOS = Path(__file__).parents[2] / "demo_projects"
TWELVE_PANELS = DEMOS / "bride_first_wear.bodice"
LARGEST = DEMOS / "eight_panel_gown.bodice"
CLIENTS = 500
ROWS = 40


def draft_alone() -> Timing:
    """Body and design to panels, nothing shown."""
    project = read_project(TWELVE_PANELS)
    body = complete(project.taken())
    outcome = work_out(body, project.design)
    assert outcome.draft is not None
    middle, high = timed([lambda: work_out(body, project.design)] * 400)
    floor = floors.floor_of(floors.curves_once(outcome.draft, outcome.levels), 400)
    return Timing("draft, 12 panels", middle, high, goal=1.0, floor=floor)


def pieces_alone() -> Timing:
    """A draft to the pieces of all layers, bones, list and walk check, nothing shown."""
    project = read_project(TWELVE_PANELS)
    outcome = work_out(complete(project.taken()), project.design)
    assert outcome.draft is not None
    middle, high = timed([lambda: cutting_of(outcome, project.making)] * 200)
    floor = floors.floor_of(floors.buffered(outcome.draft), 200)
    return Timing("pieces of all layers, 12 panels", middle, high, goal=4.0, floor=floor)


def plain_lay() -> Timing:
    """The plan that is there at once, of the cloth with the most pieces."""
    picture = picture_of(read_project(LARGEST))
    cloth = max(picture.project.cloths, key=lambda cloth: len(picture.copies_of(cloth.name)))
    copies = picture.copies_of(cloth.name)
    plan = bottom_left(copies, cloth)
    middle, high = timed([lambda: bottom_left(copies, cloth)] * 20)
    what = f"plain lay plan, {len(copies)} pieces"
    return Timing(what, middle, high, goal=100.0, floor=floors.floor_of(floors.looked_over(plan, copies)))


def all_beads() -> Timing:
    """Every bead of the half."""
    project = read_project(TWELVE_PANELS)
    picture = picture_of(project)
    outcome, cutting = picture.outcome, picture.cutting
    assert outcome is not None
    assert outcome.draft is not None
    assert cutting is not None
    bones, plan = cutting.bones, project.beads
    beading = beading_of(outcome, project.making, bones, plan)
    middle, high = timed([lambda: beading_of(outcome, project.making, bones, plan)] * 20)
    what = f"{sum(len(each.beads) for each in beading.beaded)} beads of the half"
    return Timing(
        what, middle, high, goal=150.0, floor=floors.floor_of(floors.grid_measured(outcome.draft), 20)
    )


def a4_print() -> Timing:
    """The panels of the largest demo on A4 sheets with the first page, the library already loaded."""
    return _print_of("A4 print of the largest demo, panels", 400, with_allowance=False)


def whole_print() -> Timing:
    """The same with the pieces of every layer and all sheets for the cutting table."""
    return _print_of("A4 print of the largest demo, all", 700, layers=LAYERS)


def _print_of(what: str, goal: float, **paper: Any) -> Timing:
    project = read_project(LARGEST)
    picture, on = picture_of(project), replace(project.paper, name="A4", **paper)
    pdf = printed(picture, on)
    middle, high = timed([lambda: printed(picture, on)] * 7)
    return Timing(what, middle, high, goal=goal, floor=floors.floor_of(floors.pages_again(pdf), 7))


def dxf_export() -> Timing:
    """The pieces of every layer as a DXF."""
    return _export_of("dxf", 400.0, floors.dxf_again)


def svg_export() -> Timing:
    """The same as an SVG."""
    return _export_of("svg", 150.0, floors.svg_again)


def _export_of(kind: Any, goal: float, again: Callable[[bytes], Callable[[], object]]) -> Timing:
    picture = picture_of(read_project(LARGEST))
    choice = ExportChoice(layers=LAYERS)
    data = exported(picture, kind, choice)
    middle, high = timed([lambda: exported(picture, kind, choice)] * 9)
    what = f"{kind.upper()} export, all layers"
    return Timing(what, middle, high, goal=goal, floor=floors.floor_of(again(data), 9))


def recut_rows() -> Timing:
    """A row of a table to a project on the disk."""
    style = read_project(TWELVE_PANELS)
    rows = [ClientRow(n + 2, f"Client {n} (invented)", style.unit, style.measurements) for n in range(ROWS)]
    with TemporaryDirectory() as folder:
        done = recut(style, rows, Path(folder))
        next(done)
        middle, high = timed([lambda: next(done)] * (ROWS - 1))
        floor = floors.floor_of(floors.json_again(to_bytes(style), Path(folder)))
    return Timing("recut, a row to a project", middle, high, goal=20.0, floor=floor)


def book_list() -> Timing:
    """The list of the client book from its index."""
    with book_of(CLIENTS) as (folder, index):
        built(folder, index)
        row = warm(folder, index)
        floor = floors.floor_of(floors.stats_and_lines(folder, index), 9)
    return replace(row, goal=GOAL_MS * CLIENTS / GOAL_COUNT, floor=floor)


ALL = (
    draft_alone,
    pieces_alone,
    all_beads,
    plain_lay,
    a4_print,
    whole_print,
    dxf_export,
    svg_export,
    recut_rows,
    book_list,
)

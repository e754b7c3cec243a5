"""What the board shows: geometry held against other libraries, words against the draft."""

from __future__ import annotations

import itertools
from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.document import (
    Project,
    Session,
    new_project,
    set_front_share,
    set_layer_panel,
    set_measurement,
    set_panels,
    set_pin,
    set_reduction,
    set_style,
    set_unit,
)
from workbench.draft import Place
from workbench.ui.board import Board
from workbench.ui.board.bars import Axis, bars_of, extent_of
from workbench.ui.board.handles import HandleKey
from workbench.ui.board.measures import measures_of
from workbench.ui.board.near import distance
from workbench.ui.board.paint_bars import drag_lines
from workbench.ui.board.paint_marks import handle_named
from workbench.ui.board.paint_words import missing_words
from workbench.ui.board.polygons import polygon
from workbench.ui.board.rows import gap_words
from workbench.ui.board.ruler import marks, step_for
from workbench.ui.board.scene import Scene, speaker
from workbench.ui.board.view import View, fitted
from workbench.ui.desk import Desk
from workbench.ui.look import show_look


def shown(qtbot: QtBot, desk: Desk) -> Board:
    return on_screen(qtbot, Board(desk), 980, 620)


@pytest.fixture
def over_bust(qtbot: QtBot, desk: Desk) -> Board:
    desk.open_session(Session(set_style(desk.project, "over_bust")))
    return shown(qtbot, desk)


def scene_on(board: Board) -> Scene:
    assert board.canvas.scene is not None
    return board.canvas.scene


# --- points and views -------------------------------------------------------------------


def test_a_polygon_has_the_points_it_was_given() -> None:
    points = np.random.default_rng(5).uniform(-1000, 1000, (400, 2))
    made = polygon(points)
    assert [(p.x(), p.y()) for p in made] == [tuple(p) for p in points.tolist()]


def test_a_point_that_is_not_finite_is_not_drawn() -> None:
    with pytest.raises(ValueError, match="finite"):
        polygon(np.array([[0.0, np.nan], [1.0, 1.0]]))


@given(
    st.floats(0.2, 20), st.floats(-3000, 3000), st.floats(-3000, 3000), st.floats(0.5, 2), st.floats(0, 2000)
)
def test_zooming_keeps_the_point_under_the_hand(
    scale: float, left: float, waist: float, factor: float, at: float
) -> None:
    view, hand = View(scale, left, waist), QPointF(at, 0.5 * at)
    assert view.zoomed(factor, hand).mm(hand) == pytest.approx(view.mm(hand), abs=1e-6, rel=1e-9)


@given(st.floats(-500, 500), st.floats(1, 3000), st.floats(-500, 500), st.floats(1, 1500))
def test_what_is_fitted_lies_in_the_room(left: float, wide: float, bottom: float, high: float) -> None:
    room = QRectF(200, 30, 500, 560)
    view = fitted((left, bottom, left + wide, bottom + high), room)
    corners = QRectF(view.at(left, bottom + high), view.at(left + wide, bottom))
    assert room.adjusted(-1e-6, -1e-6, 1e-6, 1e-6).contains(corners)


@given(
    st.lists(st.tuples(st.floats(-99, 99), st.floats(-99, 99)), min_size=2, max_size=9, unique=True),
    st.floats(-200, 200),
    st.floats(-200, 200),
)
def test_the_distance_to_a_line_is_that_of_shapely(
    points: list[tuple[float, float]], x: float, y: float
) -> None:
    expected = shapely.distance(shapely.LineString(points), shapely.Point(x, y))
    assert distance(np.array(points), x, y) == pytest.approx(expected, abs=1e-6)


def test_a_ruler_counts_in_marks_of_the_tape() -> None:
    assert (step_for("in", 1.0, 5.0), step_for("cm", 1.0, 5.0)) == (0.25 * 25.4, 5.0)


def test_the_marks_of_a_ruler_hold_its_zero() -> None:
    assert list(marks(25.4, -26, 52)) == [-25.4, 0.0, 25.4, 50.8]


# --- panels, figures, handles -----------------------------------------------------------


def test_panels_laid_apart_do_not_touch(over_bust: Board) -> None:
    boxes = [shape.box for shape in scene_on(over_bust).shapes]
    assert all(before[2] < after[0] for before, after in itertools.pairwise(boxes))


def test_cut_lines_laid_apart_do_not_touch(over_bust: Board) -> None:
    over_bust.set_allowance_shown(True)
    cuts = [shape.cut.boundingRect() for shape in scene_on(over_bust).shapes if shape.cut]
    assert len(cuts) == 6
    assert all(before.right() < after.left() for before, after in itertools.pairwise(cuts))


def test_a_panel_left_out_of_the_fashion_cloth_has_no_cut_line(over_bust: Board, desk: Desk) -> None:
    before = {shape.panel.index: shape.cut_ring for shape in scene_on(over_bust).shapes}
    desk.apply("Panel", set_layer_panel(desk.project, "fashion", 1, in_it=False))
    desk.now()
    after = {shape.panel.index: shape.cut_ring for shape in scene_on(over_bust).shapes}
    assert after.pop(1) is None
    assert all(np.array_equal(ring, before[panel]) for panel, ring in after.items())


def test_both_halves_are_mirror_images(over_bust: Board) -> None:
    over_bust.set_layout("both")
    shapes = scene_on(over_bust).shapes
    mirrored = [(-right, bottom, -left, top) for left, bottom, right, top in (s.box for s in shapes)]
    assert np.allclose(sorted(mirrored), sorted(shape.box for shape in shapes), atol=1e-9)


def test_the_figures_of_a_line_add_up_to_its_intake(over_bust: Board, desk: Desk) -> None:
    outcome = desk.picture.good
    assert outcome is not None
    figures = [f for f in scene_on(over_bust).figures if f.key.level == "waist" and f.quarter == "front"]
    assert sum(f.amount for f in figures) == pytest.approx(outcome.line("front", "waist").needed)


def test_a_figure_stands_at_the_edge_of_its_panel(over_bust: Board) -> None:
    scene = scene_on(over_bust)
    figure = next(
        f for f in scene.figures if f.key.seam == 2 and f.key.level == "waist" and f.key.side == "left"
    )
    edge = shapely.LineString(scene.shapes[1].edge("right"))
    assert shapely.distance(edge, shapely.Point(figure.x, figure.y)) < 0.01


def test_every_handle_lies_on_its_line(over_bust: Board) -> None:
    over_bust.set_layout("both")
    scene = scene_on(over_bust)
    edges = {shape.placement: shape for shape in scene.shapes}
    misses = [
        shapely.distance(
            shapely.LineString(edges[handle.placement].edge(handle.key.line)),
            shapely.Point(handle.x, handle.y),
        )
        for handle in scene.handles
    ]
    assert max(misses) < 0.01


def test_the_distance_from_the_waist_is_what_a_tape_along_the_seam_reads(
    over_bust: Board, desk: Desk
) -> None:
    scene = scene_on(over_bust)
    handle = handle_named(scene, HandleKey("neckline", 2))  # the usual neckline has a point on the side seam
    assert handle is not None
    assert handle.point.u == 3.0
    side = scene.shapes[2].panel.right
    along = np.hypot(*np.diff(side[side[:, 1] >= 0], axis=0).T).sum()
    # a tape along the drawn seam from the waist up, short by less than one of its 3 mm pieces
    assert handle.point.t == pytest.approx(along, abs=3.0)


def test_the_words_beside_a_handle_name_waist_seam_and_edge(over_bust: Board) -> None:
    scene = scene_on(over_bust)
    handle = handle_named(scene, HandleKey("neckline", 1))
    assert handle is not None
    said = measures_of(scene, handle)
    assert said is not None
    assert [line.split(" ", 1)[1] for line in said.lines] == [
        "above the waist",
        "from the front seam 1",
        "along the neckline",
    ]


def test_a_drag_shows_its_ghost_and_a_release_takes_it_away(over_bust: Board, desk: Desk) -> None:
    before = scene_on(over_bust)
    handle = before.handles[1]
    start = handle.pixel(over_bust.sight.view).toPoint()
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QTest.mousePress(over_bust.canvas, left, none, start)
    QTest.mouseMove(over_bust.canvas, start - QPointF(0, 24).toPoint())
    desk.now()
    during = over_bust.canvas.ghost
    QTest.mouseRelease(over_bust.canvas, left, none, start - QPointF(0, 24).toPoint())
    desk.now()
    assert (during, over_bust.canvas.ghost) == (before, None)


# --- ledger and bars --------------------------------------------------------------------


def test_alike_quarters_are_told_in_one_row(over_bust: Board) -> None:
    assert [len(row.quarters) for row in scene_on(over_bust).rows] == [1, 1, 1, 1, 1]


def test_quarters_that_differ_have_a_row_each(over_bust: Board, desk: Desk) -> None:
    desk.apply("Front share", set_front_share(desk.project, 0.54))
    desk.now()
    waist = next(row for row in scene_on(over_bust).rows if row.level == "waist")
    assert [row.label for row in waist.quarters] == ["front", "back"]


def test_a_line_that_is_over_says_by_how_much_until_it_closes(over_bust: Board, desk: Desk) -> None:
    needed = desk.picture.outcome.line("front", "waist").needed  # type: ignore[union-attr]
    pinned = desk.project
    for seam in (1, 2, 3):
        pinned = set_pin(pinned, "front", seam, "waist", (needed + 12.7) / 3)
    desk.apply("Pin intake", pinned)
    desk.now()
    waist = next(row for row in scene_on(over_bust).rows if row.level == "waist")
    assert [row.open_words for row in waist.quarters] == ["over ½", ""]


def test_a_gap_too_small_for_the_figures_is_still_said() -> None:
    assert gap_words(-0.2, speaker("in", 8)) == "short a little"


def test_the_axis_of_the_strip_goes_there_and_back() -> None:
    axis = Axis(500.0, 1000.0, 14.0, 180.0)
    assert axis.girth(axis.x(731.0)) == pytest.approx(731.0)


def test_every_bar_lies_on_the_axis(over_bust: Board, desk: Desk) -> None:
    bars = bars_of(desk.picture)
    low, high = extent_of(bars)
    assert all(low < bar.shut < bar.finished <= high for bar in bars)


# --- nothing yet, and no further --------------------------------------------------------


@pytest.mark.parametrize(
    ("taken", "said"),
    [
        ({}, "Type the bust and the waist to begin."),
        ({"bust_girth": "38"}, "Type the waist to begin."),
        ({"underbust_girth": "32"}, "Type the waist to begin."),
        ({"waist_girth": "28"}, "Type the bust to begin."),
    ],
)
def test_an_empty_canvas_says_what_to_type(dressed: None, taken: dict[str, str], said: str) -> None:
    project = new_project()
    for key, text in taken.items():
        project = set_measurement(project, key, text)
    assert missing_words(Desk(Session(project)).picture) == said


def test_an_empty_board_can_be_looked_at_and_clicked(qtbot: QtBot, dressed: None) -> None:
    desk = Desk(Session(new_project()))
    board = shown(qtbot, desk)
    QTest.mouseClick(board.canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
    QTest.keyClick(board.canvas, Qt.Key.Key_I)
    QTest.keyClick(board.strip, Qt.Key.Key_Left)
    board.fit()
    board.grab()
    assert desk.project == new_project()


def crossed(project: Project) -> Project:
    """The same with its neckline below its hem."""
    lowered = tuple(
        replace(point, t=-400.0)
        for point in Desk(Session(project)).picture.good.draft.neckline.points  # type: ignore[union-attr]
    )
    return replace(project, design=replace(project.design, neckline=lowered))


def test_a_draft_that_stops_leaves_the_last_good_panels(over_bust: Board, desk: Desk) -> None:
    before = scene_on(over_bust).shapes
    desk.apply("Move neckline point", crossed(desk.project))
    desk.now()
    over_bust.grab()
    assert desk.picture.stopped
    assert [s.box for s in scene_on(over_bust).shapes] == [s.box for s in before]


def test_the_stopping_sentence_selects_its_place(over_bust: Board, desk: Desk) -> None:
    desk.apply("Move neckline point", crossed(desk.project))
    desk.now()
    over_bust.grab()
    QTest.mouseClick(
        over_bust.canvas,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
        QPointF(400, 52).toPoint(),
    )
    assert desk.selection is not None
    assert desk.selection.line == "neckline"


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("layout", ["apart", "block", "both"])
def test_the_board_is_drawn_in_every_look_and_layout(
    over_bust: Board, desk: Desk, layout: str, scheme: str
) -> None:
    show_look(scheme)  # type: ignore[arg-type]
    desk.apply("Unit", set_unit(desk.project, "cm", 8))
    desk.select(Place(seam=2, level="waist"))
    over_bust.set_layout(layout)  # type: ignore[arg-type]
    over_bust.set_grid(True)
    over_bust.set_allowance_shown(True)
    desk.now()
    image = over_bust.grab().toImage()
    colours = {image.pixelColor(x, 300).name() for x in range(210, 960, 3)}
    assert len(colours) > 4


# --- menu -------------------------------------------------------------------------------


def menu_at(board: Board, pixel: QPointF) -> QMenu:
    return board.canvas.menu.menu_for(pixel)


def choose(menu: QMenu, text: str) -> None:
    next(action for action in menu.actions() if action.text() == text).trigger()


def test_the_menu_of_a_point_makes_it_a_corner(over_bust: Board, desk: Desk) -> None:
    handle = handle_named(scene_on(over_bust), HandleKey("neckline", 1))
    assert handle is not None
    choose(menu_at(over_bust, handle.pixel(over_bust.sight.view)), "Make it a corner")
    assert desk.project.design.neckline is not None
    assert not desk.project.design.neckline[1].smooth


def test_the_menu_of_an_end_point_does_not_offer_to_remove_it(over_bust: Board) -> None:
    handle = handle_named(scene_on(over_bust), HandleKey("neckline", 0))
    assert handle is not None
    menu = menu_at(over_bust, handle.pixel(over_bust.sight.view))
    assert not next(a for a in menu.actions() if a.text() == "Remove this point").isEnabled()


def test_the_menu_of_a_line_of_her_own_takes_the_style_s_again(over_bust: Board, desk: Desk) -> None:
    handle = handle_named(scene_on(over_bust), HandleKey("neckline", 1))
    assert handle is not None
    choose(menu_at(over_bust, handle.pixel(over_bust.sight.view)), "Make it a corner")
    desk.now()
    choose(menu_at(over_bust, handle.pixel(over_bust.sight.view)), "Neckline of the style again")
    assert desk.project.design.neckline is None


# --- told, and told apart ---------------------------------------------------------------


def test_the_chosen_point_is_told_in_words(over_bust: Board, desk: Desk) -> None:
    desk.select(Place(line="neckline", point=1))
    told = over_bust.canvas.accessibleDescription()
    assert told.startswith("Neckline point 2, smooth: ")
    assert told.endswith(" along the neckline")


def test_the_chosen_figure_is_told_in_words(over_bust: Board) -> None:
    QTest.keyClick(over_bust.canvas, Qt.Key.Key_I)
    told = over_bust.canvas.accessibleDescription()
    assert told.startswith("Intake of the front seam 1 at the waist, left side: ")


def test_both_ways_of_saying_a_reduction_agree_to_the_thirty_second(over_bust: Board, desk: Desk) -> None:
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", 2.375 * 25.4))
    desk.now()
    bar = next(bar for bar in over_bust.strip.bars if bar.level == "waist")
    # 2 3/8 in round the body is 19/32 in a quarter
    assert drag_lines(bar, "in", 8) == ("drawn in 2⅜ round the body", "¹⁹⁄₃₂ a quarter")


def test_panels_that_are_not_those_of_the_project_cannot_be_edited(over_bust: Board, desk: Desk) -> None:
    """Stopped with another number of panels, the last good ones are only to be looked at."""
    handle = scene_on(over_bust).handles[1]
    spot = handle.pixel(over_bust.sight.view).toPoint()
    desk.apply("Panels", crossed(set_panels(desk.project, "front", 2)))
    desk.now()
    before = desk.project
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QTest.mousePress(over_bust.canvas, left, none, spot)
    QTest.mouseMove(over_bust.canvas, spot + QPointF(0, 30).toPoint())
    QTest.mouseRelease(over_bust.canvas, left, none, spot + QPointF(0, 30).toPoint())
    assert (desk.picture.stopped, desk.project) == (True, before)

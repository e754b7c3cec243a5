"""The cutting table by hand: each test is one act with the mouse or a key, and one look at the project."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest

from tests.ui.conftest import bodice, turn_wheel
from workbench.document import (
    Session,
    new_project,
    set_allowance_of,
    set_front,
    set_layer_made,
    set_layer_panel,
    set_marks,
    set_own_allowance,
    set_pin,
)
from workbench.draft import Place
from workbench.pieces import LayerName, OwnAllowance
from workbench.ui.board.lettering import width_of
from workbench.ui.desk import Desk
from workbench.ui.look import fonts
from workbench.ui.pieces import PiecesPlace
from workbench.ui.pieces.allowance_figures import AllowanceFigure
from workbench.ui.pieces.edges import Edge
from workbench.ui.pieces.names import ways
from workbench.ui.pieces.paint_empty import empty_words
from workbench.ui.pieces.paint_table import GUTTER, readable
from workbench.ui.pieces.spread import LaidPiece, Spread

INCH = 25.4
"""International yard and pound agreement of 1959, from memory."""
NONE = Qt.KeyboardModifier.NoModifier


def spread(place: PiecesPlace) -> Spread:
    assert place.table.spread is not None
    return place.table.spread


def laid(place: PiecesPlace, number: int) -> LaidPiece:
    return spread(place).pieces[number]


def figure(place: PiecesPlace, panel: int, name: str) -> AllowanceFigure:
    return next(
        f for f in place.table.figures if f.edge is not None and (f.edge.panel, f.name) == (panel, name)
    )


def spot(place: PiecesPlace, panel: int, name: str) -> QPoint:
    return figure(place, panel, name).box(place.table.sight.view).center().toPoint()


def click(place: PiecesPlace, at: QPoint) -> None:
    QTest.mouseClick(place.table, Qt.MouseButton.LeftButton, NONE, at)


def type_at(place: PiecesPlace, panel: int, name: str, text: str) -> None:
    click(place, spot(place, panel, name))
    QTest.keyClicks(place.table.editor, text)
    QTest.keyClick(place.table.editor, Qt.Key.Key_Return)
    place.bench._desk.now()


def pixel(place: PiecesPlace, number: int, part: float, height: float) -> QPoint:
    """A pixel so far across a piece, at so many mm above the waist."""
    left, _, right, _ = laid(place, number).box
    return place.table.sight.view.at(left + part * (right - left), height).toPoint()


# --- allowances ------------------------------------------------------------------------------


def test_an_allowance_typed_where_it_stands_is_kept_for_that_edge_alone(
    place: PiecesPlace, desk: Desk
) -> None:
    type_at(place, 1, "left", "3/4")
    assert desk.project.making.own_allowances == (OwnAllowance("fashion", 1, "left", 19.05),)
    assert desk.undo_name == "Allowance of one edge"


def test_it_is_cut_so_at_once(place: PiecesPlace) -> None:
    type_at(place, 1, "left", "3/4")
    edge = laid(place, 1).edge("left")
    assert edge is not None
    assert edge.allowance == pytest.approx(0.75 * INCH)
    assert figure(place, 1, "left").own


def test_an_emptied_field_takes_its_kinds_again(place: PiecesPlace, desk: Desk) -> None:
    type_at(place, 1, "left", "3/4")
    click(place, spot(place, 1, "left"))
    QTest.keyClick(place.table.editor, Qt.Key.Key_Delete)
    QTest.keyClick(place.table.editor, Qt.Key.Key_Return)
    assert desk.project.making.own_allowances == ()


def test_what_cannot_be_read_is_said_and_stays(place: PiecesPlace, desk: Desk) -> None:
    type_at(place, 1, "left", "wide")
    editor = place.table.editor
    assert editor.isVisible()
    assert editor.text() == "wide"
    assert "wide" in editor.problem
    assert desk.project.making.own_allowances == ()


def test_a_slip_of_the_key_is_refused_with_the_bounds(place: PiecesPlace, desk: Desk) -> None:
    type_at(place, 1, "left", "58")
    assert "4 in" in place.table.editor.problem
    assert desk.project.making.own_allowances == ()


def test_escape_leaves_it_as_it_was(place: PiecesPlace, desk: Desk) -> None:
    click(place, spot(place, 1, "left"))
    QTest.keyClicks(place.table.editor, "2")
    QTest.keyClick(place.table.editor, Qt.Key.Key_Escape)
    assert desk.project.making.own_allowances == ()
    assert not place.table.editor.isVisible()


def test_tab_goes_on_round_the_piece(place: PiecesPlace, desk: Desk) -> None:
    click(place, spot(place, 1, "left"))
    QTest.keyClicks(place.table.editor, "1")
    QTest.keyClick(place.table.editor, Qt.Key.Key_Tab)
    assert place.table.editor.figure is not None
    assert place.table.editor.figure.edge == Edge(1, "neckline")
    assert desk.project.making.own_allowances == (OwnAllowance("fashion", 1, "left", INCH),)


def test_it_belongs_to_the_layer_on_show(place: PiecesPlace, desk: Desk) -> None:
    place.bench.show_layer("strength")
    type_at(place, 1, "hem", "1/2")
    assert [own.layer for own in desk.project.making.own_allowances] == ["strength"]


def test_delete_takes_the_kinds_for_the_picked_edge(place: PiecesPlace, desk: Desk) -> None:
    desk.apply("Own", set_own_allowance(desk.project, "fashion", 2, "hem", 20.0))
    desk.now()
    desk.select(Place(panel=2, line="hem"))
    QTest.keyClick(place.table, Qt.Key.Key_Delete)
    assert desk.project.making.own_allowances == ()


def test_a_fold_has_no_allowance_to_type(place: PiecesPlace, desk: Desk) -> None:
    names = [f.name for f in place.table.figures if f.edge is not None and f.edge.panel == 0]
    assert names.count("left") == 0
    desk.apply("Front", set_front(desk.project, "busk"))
    desk.now()
    names = [f.name for f in place.table.figures if f.edge is not None and f.edge.panel == 0]
    assert names.count("left") == 1


# --- picking -----------------------------------------------------------------------------------


def test_a_click_on_a_piece_picks_its_panel_everywhere(place: PiecesPlace, desk: Desk) -> None:
    click(place, pixel(place, 2, 0.5, -12))
    assert desk.selection == Place(panel=2)


def test_a_click_on_its_allowance_picks_the_edge(place: PiecesPlace, desk: Desk) -> None:
    x, y = figure(place, 1, "left").at
    click(place, place.table.sight.view.at(x - 5, y).toPoint())
    assert desk.selection == Place(panel=1, seam=1)


def test_a_click_beside_the_pieces_picks_nothing(place: PiecesPlace, desk: Desk) -> None:
    desk.select(Place(panel=2))
    click(place, QPoint(place.table.width() - 3, place.table.height() - 3))
    assert desk.selection is None


def test_a_click_on_the_name_of_a_level_picks_it(place: PiecesPlace, desk: Desk) -> None:
    waist = place.table.sight.view.y(0.0)
    click(place, QPoint(30, round(waist) - 8))
    assert desk.selection == Place(level="waist")


def test_a_panel_picked_elsewhere_is_lit_here(place: PiecesPlace, desk: Desk) -> None:
    desk.select(Place(panel=3))
    assert place.table.picked_piece == 3


def test_arrow_keys_go_from_piece_to_piece_and_round_the_edges(place: PiecesPlace, desk: Desk) -> None:
    QTest.keyClick(place.table, Qt.Key.Key_Right)
    QTest.keyClick(place.table, Qt.Key.Key_Right)
    assert desk.selection == Place(panel=1)
    QTest.keyClick(place.table, Qt.Key.Key_Up)
    assert desk.selection == Place(panel=1, seam=1)
    QTest.keyClick(place.table, Qt.Key.Key_Up)
    assert desk.selection == Place(panel=1, line="neckline")


def test_enter_types_the_allowance_of_the_picked_edge(place: PiecesPlace, desk: Desk) -> None:
    desk.select(Place(panel=1, line="neckline"))
    QTest.keyClick(place.table, Qt.Key.Key_Return)
    QTest.keyClicks(place.table.editor, "3/8")
    QTest.keyClick(place.table.editor, Qt.Key.Key_Return)
    assert desk.project.making.own_allowances == (OwnAllowance("fashion", 1, "neckline", 9.525),)


def test_page_down_turns_to_the_next_layer(place: PiecesPlace) -> None:
    QTest.keyClick(place.table, Qt.Key.Key_PageDown)
    assert spread(place).layer.name == "strength"


def test_a_piece_of_no_panel_is_picked_here_alone(place: PiecesPlace, desk: Desk) -> None:
    place.bench.show_layer("modesty")
    desk.select(Place(panel=1))
    click(place, pixel(place, 0, 0.5, 0))
    assert desk.selection is None
    assert place.table.picked_piece == 0


def test_what_is_picked_is_said(place: PiecesPlace, desk: Desk) -> None:
    desk.select(Place(panel=1, seam=1))
    assert place.table.accessibleDescription() == (
        "Front 2, left edge (front seam 1), fashion cloth: allowance ½ in"
    )
    desk.select(Place(panel=1))
    assert place.table.accessibleDescription() == "Front 2, fashion cloth: cut 2 (left and right)"


# --- the paper ----------------------------------------------------------------------------------


def test_the_wheel_zooms_at_the_pointer(place: PiecesPlace) -> None:
    table = place.table
    at = QPointF(400, 200)
    before, under = table.sight.view.scale, table.sight.view.mm(at)
    turn_wheel(table, at, 120)
    assert table.sight.view.scale > before
    assert table.sight.view.mm(at) == pytest.approx(under)


def test_a_drag_moves_the_paper_and_picks_nothing(place: PiecesPlace, desk: Desk) -> None:
    table, start = place.table, pixel(place, 2, 0.5, -12)
    before = table.sight.view
    QTest.mousePress(table, Qt.MouseButton.LeftButton, NONE, start)
    QTest.mouseMove(table, start + QPoint(40, 10))
    QTest.mouseRelease(table, Qt.MouseButton.LeftButton, NONE, start + QPoint(40, 10))
    assert table.sight.view == before.panned(40, 10)
    assert desk.selection is None


def test_nought_fits_it_again(place: PiecesPlace) -> None:
    fitted = place.table.sight.view
    QTest.keyClick(place.table, Qt.Key.Key_Plus)
    assert place.table.sight.view != fitted
    QTest.keyClick(place.table, Qt.Key.Key_0)
    assert place.table.sight.view == fitted


# --- what lies on it ----------------------------------------------------------------------------


def test_pieces_lie_on_one_waist_line_and_clear_of_each_other(place: PiecesPlace) -> None:
    pieces = spread(place).pieces
    for one, other in pairwise(pieces):
        assert one.box[2] < other.box[0]
    for piece in pieces:
        waist = next(mark for mark in piece.piece.marks if mark.kind == "waist")
        assert abs(float(waist.points[:, 1].mean())) < 10


def test_names_never_run_into_each_other(place: PiecesPlace) -> None:
    view = place.table.sight.view
    widest = [
        max(width_of(words, fonts().strong) for words in (*ways(piece)[2][0], *ways(piece)[2][1]))
        for piece in spread(place).pieces
    ]
    middles = [view.x(0.5 * (piece.box[0] + piece.box[2])) for piece in spread(place).pieces]
    for number in range(len(widest) - 1):
        assert middles[number + 1] - middles[number] > 0.5 * (widest[number] + widest[number + 1])


def test_names_of_levels_that_lie_close_leave_the_waist_its_own(place: PiecesPlace) -> None:
    view = place.table.sight.view.zoomed(0.05, QPointF(GUTTER, 0))
    named = readable(spread(place), view)
    assert "waist" in [name for name, _, _ in named]
    heights = sorted(y for _, _, y in named)
    assert all(b - a >= 15 for a, b in pairwise(heights))


def test_the_other_half_is_turned_over_about_the_centre_front(place: PiecesPlace) -> None:
    place.table.set_halves(True)
    first = laid(place, 0)
    assert spread(place).bounds[0] == pytest.approx(-spread(place).bounds[2])
    assert first.turned.boundingRect().right() == pytest.approx(0.0, abs=1e-6)


def test_a_layer_without_two_sides_has_no_other_half(place: PiecesPlace) -> None:
    place.table.set_halves(True)
    place.bench.show_layer("modesty")
    assert not spread(place).halves


@pytest.mark.parametrize("closing", ["slit", "triangle"])
def test_notches_of_the_back_are_drawn_in_pairs(place: PiecesPlace, desk: Desk, closing: str) -> None:
    desk.apply("Notches", set_marks(desk.project, style=closing))
    desk.now()
    strokes = {"slit": 1, "triangle": 2}[closing]
    notches = [notch for piece in spread(place).pieces for notch in piece.piece.notches]
    assert len(spread(place).notches) == strokes * sum(notch.count for notch in notches)


def test_bones_are_drawn_where_the_list_says(place: PiecesPlace) -> None:
    place.bench.show_layer("strength")
    cutting = place.bench.cutting
    assert cutting is not None
    lines = list(spread(place).bone_lines(cutting.bones[:3]))
    assert len(lines) == 3
    assert lines[0].size() == len(cutting.bones[0].line)


# --- an empty table ------------------------------------------------------------------------------


def words(place: PiecesPlace) -> tuple[str, str]:
    assert place.table._laid is not None
    return empty_words(place.table._laid)


def test_with_nothing_measured_it_says_what_to_type(place: PiecesPlace, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    assert words(place) == ("No pieces yet", "Type the bust and the waist to begin.")
    assert place.table.spread is None


def test_a_draft_that_is_stopped_has_no_pieces(place: PiecesPlace, desk: Desk) -> None:
    desk.apply("Pin", set_pin(desk.project, "front", 1, "waist", 400.0))
    desk.now()
    assert desk.picture.stopped
    assert words(place)[0] == "No pieces yet"
    assert words(place)[1]


def test_a_layer_that_is_not_made_says_how_to_make_it(place: PiecesPlace, desk: Desk) -> None:
    desk.apply("Layer", set_layer_made(desk.project, "lining", False))
    desk.now()
    place.bench.show_layer("lining")
    assert words(place)[0] == "Lining: not made"
    assert "Layers" in words(place)[1]


def test_a_layer_with_every_piece_left_out_says_so(place: PiecesPlace, desk: Desk) -> None:
    project = desk.project
    for panel in range(project.design.panel_count):
        project = set_layer_panel(project, "lining", panel, False)
    desk.apply("Pieces", project)
    desk.now()
    place.bench.show_layer("lining")
    assert words(place)[0] == "Lining: no pieces"
    assert "left out" in words(place)[1]


@pytest.mark.parametrize("layer", ["fashion", "interfacing", "top_facing", "modesty", "strip", "waist_tape"])
@pytest.mark.parametrize("style", ["under_bust", "over_bust"])
def test_every_layer_can_be_painted(place: PiecesPlace, desk: Desk, layer: LayerName, style: str) -> None:
    project = set_layer_made(bodice(style), "top_facing", True)
    desk.open_session(Session(set_allowance_of(project, "neckline", 10.0)))
    place.bench.show_layer(layer)
    assert spread(place).pieces
    assert not place.table.grab().isNull()

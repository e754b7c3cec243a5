"""The form of the making: every field stores what it says, and showing never edits."""

from __future__ import annotations

from typing import TypeVar

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from workbench.document import MAKING_TABLE, set_layer_made, set_own_allowance
from workbench.draft import Place
from workbench.pieces import LAYERS, OwnAllowance, label_of, purpose_of
from workbench.ui.desk import Desk
from workbench.ui.form.row import Row
from workbench.ui.pieces import PiecesPlace
from workbench.ui.pieces.layers import LayerRow, PanelsRow, TurnRow
from workbench.ui.pieces.making_form import MakingForm
from workbench.ui.pieces.rows import CheckRow, ChoiceRow, LeftRow, MakingRow
from workbench.ui.pieces.section import MakingSection

INCH = 25.4
"""International yard and pound agreement of 1959, from memory."""
AnyRow = TypeVar("AnyRow", bound=Row)


@pytest.fixture
def place(place: PiecesPlace) -> PiecesPlace:
    place.activateWindow()
    return place


@pytest.fixture
def form(place: PiecesPlace) -> MakingForm:
    return place.form


def section(form: MakingForm, title: str) -> MakingSection:
    found = next(section for section in form.sections if section.title == title)
    if not found.opened:
        QTest.mouseClick(found.header, Qt.MouseButton.LeftButton)
    return found


def row(form: MakingForm, title: str, name: str, kind: type[AnyRow]) -> AnyRow:
    return next(row for row in section(form, title).rows if row.name == name and isinstance(row, kind))


def type_in(row: MakingRow | LeftRow | TurnRow, text: str) -> None:
    row.field.setFocus()
    row.field.selectAll()
    QTest.keyClicks(row.field, text)
    QTest.keyClick(row.field, Qt.Key.Key_Return)


# --- layers -----------------------------------------------------------------------------------


def test_every_layer_has_a_box_and_a_sentence(form: MakingForm, desk: Desk) -> None:
    rows = [row for row in section(form, "Layers").rows if isinstance(row, LayerRow)]
    assert [row.layer for row in rows] == list(LAYERS)
    assert [row.box.text() for row in rows] == [label_of(name, desk.project.making) for name in LAYERS]
    assert [row.said for row in rows] == [purpose_of(name, desk.project.making) for name in LAYERS]


def test_a_tick_makes_a_layer_and_puts_it_on_show(place: PiecesPlace, desk: Desk) -> None:
    ticked = row(place.form, "Layers", "layers.top_facing", LayerRow)
    QTest.mouseClick(ticked.box, Qt.MouseButton.LeftButton, pos=ticked.box.rect().center() / 4)
    assert desk.project.making.layer("top_facing").made
    assert place.bench.layer == "top_facing"
    assert desk.undo_name == "Layer: Top facing"


def test_a_hair_is_for_the_layer_on_show(place: PiecesPlace, desk: Desk) -> None:
    place.bench.show_layer("lining")
    type_in(row(place.form, "Layers", "layer.turn_mm", TurnRow), "-1/32")
    assert desk.project.making.layer("lining").turn_mm == pytest.approx(-INCH / 32)
    assert desk.project.making.layer("fashion").turn_mm == 0


def test_another_layer_shows_its_own_hair(place: PiecesPlace, desk: Desk) -> None:
    turn = row(place.form, "Layers", "layer.turn_mm", TurnRow)
    type_in(turn, "1/16")
    place.bench.show_layer("lining")
    assert turn.field.text() == "0"
    assert desk.project.making.layer("lining").turn_mm == 0


def test_a_piece_can_be_left_out(place: PiecesPlace, desk: Desk) -> None:
    back = row(place.form, "Layers", "layer.left_out.back", PanelsRow)
    QTest.mouseClick(back._group.button(0), Qt.MouseButton.LeftButton)
    first_back = desk.project.design.front.panel_count
    assert desk.project.making.layer("fashion").left_out == (first_back,)


def test_net_is_for_the_layer_on_show(place: PiecesPlace, desk: Desk) -> None:
    place.bench.show_layer("lining")
    net = row(place.form, "Layers", "layer.net", CheckRow)
    net.box.click()
    assert desk.project.making.layer("lining").net
    assert not desk.project.making.layer("fashion").net


def test_what_is_cut_by_figures_of_its_own_offers_no_pieces(place: PiecesPlace) -> None:
    place.bench.show_layer("waist_tape")
    assert row(place.form, "Layers", "layer.left_out.back", PanelsRow).isHidden()


# --- allowances ----------------------------------------------------------------------------------


def test_a_kind_of_edge_has_its_allowance(form: MakingForm, desk: Desk) -> None:
    type_in(row(form, "Allowances", "allowances.side", MakingRow), "1 1/2")
    assert desk.project.making.allowances.side == pytest.approx(1.5 * INCH)


def test_one_out_of_bounds_is_refused_in_her_unit(form: MakingForm, desk: Desk) -> None:
    side = row(form, "Allowances", "allowances.side", MakingRow)
    type_in(side, "15")
    assert side.said == "Allowance of the side seam: it must be between 0 and 4 in."
    assert desk.project.making.allowances.side == INCH


def test_a_front_on_the_fold_asks_for_no_allowance(form: MakingForm) -> None:
    centre_front = row(form, "Allowances", "allowances.centre_front", MakingRow)
    assert not centre_front.wanted


def test_without_an_edge_there_is_nothing_to_type(form: MakingForm) -> None:
    own = row(form, "Allowances", "own_allowance", LeftRow)
    assert not own.field.isEnabled()
    assert own.said.startswith("Pick an edge")


def test_the_picked_edge_can_differ_from_its_kind(form: MakingForm, desk: Desk) -> None:
    own = row(form, "Allowances", "own_allowance", LeftRow)
    desk.select(Place(panel=1, seam=2))
    assert own.label.text().startswith("Front 2, right edge")
    type_in(own, "7/8")
    assert desk.project.making.own_allowances == (OwnAllowance("fashion", 1, "right", 22.225),)
    assert desk.selection == Place(panel=1, seam=2)


def test_until_it_differs_its_kinds_stands_as_an_estimate(form: MakingForm, desk: Desk) -> None:
    own = row(form, "Allowances", "own_allowance", LeftRow)
    desk.select(Place(panel=1, seam=2))
    assert own.field.text() == ""
    assert own.field.placeholderText() == "½"


def test_those_that_differ_are_all_named(form: MakingForm, desk: Desk) -> None:
    desk.apply("Own", set_own_allowance(desk.project, "strength", 2, "hem", 0.75 * INCH))
    desk.now()
    allowances = section(form, "Allowances")
    assert allowances.header.summary.endswith("1 of their own")
    assert any(row.said == "Front 3, hem, strength layer: ¾ in" for row in allowances.rows)


# --- notches, front, opening, bones, facings -------------------------------------------------------


def test_notches_can_be_triangles(form: MakingForm, desk: Desk) -> None:
    shape = row(form, "Notches", "marks.style", ChoiceRow)
    QTest.mouseClick(shape.choice.button("triangle"), Qt.MouseButton.LeftButton)
    assert desk.project.making.marks.style == "triangle"


def test_curve_notches_can_be_left_out(form: MakingForm, desk: Desk) -> None:
    row(form, "Notches", "marks.at_curves", CheckRow).box.click()
    assert not desk.project.making.marks.at_curves


def test_a_busk_cuts_the_front_apart_and_asks_for_its_length(place: PiecesPlace, desk: Desk) -> None:
    front = row(place.form, "Front", "making.front", ChoiceRow)
    busk = row(place.form, "Front", "making.busk_mm", LeftRow)
    assert not busk.wanted
    QTest.mouseClick(front.choice.button("busk"), Qt.MouseButton.LeftButton)
    desk.now()
    place.bench.work_out()
    assert desk.project.making.front == "busk"
    assert busk.wanted
    # the longest stock length that fits stands there as an estimate
    assert busk.field.text() == ""
    assert busk.field.placeholderText() != ""
    type_in(busk, "9")
    assert desk.project.making.busk_mm == pytest.approx(9 * INCH)


def test_a_side_zip_has_no_pitch(form: MakingForm, desk: Desk) -> None:
    closing = row(form, "Back opening", "opening.closing", ChoiceRow)
    QTest.mouseClick(closing.choice.button("side_zip"), Qt.MouseButton.LeftButton)
    desk.now()
    assert desk.project.making.opening.closing == "side_zip"
    assert not row(form, "Back opening", "opening.pitch_mm", MakingRow).wanted


def test_the_opening_says_how_many_there_are(place: PiecesPlace, desk: Desk) -> None:
    type_in(row(place.form, "Back opening", "opening.pitch_mm", MakingRow), "1 1/4")
    desk.now()
    place.bench.work_out()
    cutting = place.bench.cutting
    assert cutting is not None
    assert cutting.opening is not None
    summary = section(place.form, "Back opening").header.summary
    assert summary == f"loops, {len(cutting.opening.walks)} a side"


def test_bones_up_the_middle_are_asked_for_by_a_tick(form: MakingForm, desk: Desk) -> None:
    row(form, "Bones", "boning.places.mid_panel", CheckRow).box.click()
    assert "mid_panel" in desk.project.making.boning.places


def test_bones_can_be_of_plastic(form: MakingForm, desk: Desk) -> None:
    stuff = row(form, "Bones", "boning.stuff", ChoiceRow)
    QTest.mouseClick(stuff.choice.button("plastic"), Qt.MouseButton.LeftButton)
    assert desk.project.making.boning.stuff == "plastic"


def test_a_step_of_the_arrow_key_is_one_step_to_undo(form: MakingForm, desk: Desk) -> None:
    depth = row(form, "Facings and binding", "making.facing_depth_mm", MakingRow)
    depth.field.setFocus()
    QTest.keyClick(depth.field, Qt.Key.Key_Up)
    QTest.keyClick(depth.field, Qt.Key.Key_Up)
    assert desk.project.making.facing_depth_mm == pytest.approx(2.25 * INCH)
    desk.undo()
    assert desk.project.making.facing_depth_mm == pytest.approx(2.125 * INCH)


def test_every_figure_of_the_table_has_a_field(form: MakingForm) -> None:
    form.all.click()
    named = {row.name for section in form.sections for row in section.rows}
    single = {"layer": "layer.turn_mm", "own_allowance": "own_allowance"}
    for figure in MAKING_TABLE:
        assert single.get(figure.group, f"{figure.group or 'making'}.{figure.key}") in named


def test_showing_edits_nothing(form: MakingForm, desk: Desk) -> None:
    form.all.click()
    before = desk.project
    for section in form.sections:
        section.show_picture(desk.picture)
    assert desk.project is before
    assert desk.undo_name is None


def test_every_box_and_field_has_a_name(form: MakingForm) -> None:
    form.all.click()
    for section in form.sections:
        for row in section.rows:
            target = row.target()
            if target is not None:
                assert target.accessibleName() or getattr(target, "text", str)()


def test_the_search_finds_a_field_in_whichever_section(form: MakingForm) -> None:
    QTest.keyClicks(form.search, "cord")
    seen = [row for section in form.sections for row in section.rows if row.isVisible()]
    assert [row.name for row in seen] == ["opening.tying_mm"]


def test_a_finding_about_a_field_opens_its_section(form: MakingForm, desk: Desk) -> None:
    desk.select(Place(field="boning.clearance_mm"))
    found = row(form, "Bones", "boning.clearance_mm", MakingRow)
    assert found.isVisible()
    assert found._lit


def test_what_is_closed_says_what_it_holds(place: PiecesPlace, desk: Desk) -> None:
    desk.apply("Layer", set_layer_made(desk.project, "lining", False))
    desk.now()
    place.bench.work_out()
    held = {section.title: section.header.summary for section in place.form.sections}
    made = sum(choice.made for choice in desk.project.making.layers)
    assert held["Layers"] == f"{made} of 9 made"
    assert held["Front"] == "on the fold"
    assert held["Bones"].endswith("bones")

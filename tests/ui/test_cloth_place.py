"""The cloth place: what is on show, when it is worked out, and what it answers."""

from __future__ import annotations

from decimal import Decimal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.cloth_scene import shown, spread
from tests.ui.conftest import bodice
from workbench.document import (
    Session,
    new_project,
    set_allowance_of,
    set_cloth,
    set_cloth_layers,
    set_layer_made,
    set_price,
)
from workbench.draft import Place
from workbench.ui.cloth import ClothPlace
from workbench.ui.cloth.paint_empty import empty_words
from workbench.ui.cloth.tape import flags_of
from workbench.ui.desk import Desk

YARD = 914.4
"""International yard and pound agreement of 1959, from memory."""


@pytest.fixture
def place(qtbot: QtBot, desk: Desk) -> ClothPlace:
    return shown(qtbot, desk)


def apply(desk: Desk, **changes: object) -> None:
    desk.apply("Cloth", set_cloth(desk.project, "Fashion cloth", **changes))  # type: ignore[arg-type]
    desk.now()


def flags(place: ClothPlace) -> list[str]:
    return [flag.words for flag in flags_of(spread(place))]


# --- what is on show ----------------------------------------------------------------------------


def test_every_piece_of_the_cloth_lies_on_it(place: ClothPlace, desk: Desk) -> None:
    assert {p.key for p in spread(place).pieces} == {c.key for c in desk.picture.copies_of("Fashion cloth")}


def test_the_length_to_buy_hangs_on_the_tape(place: ClothPlace) -> None:
    buy = spread(place).lay.buy
    assert buy is not None
    assert f"buy {buy.words}" in flags(place)
    assert 8 * buy.length_mm / YARD == pytest.approx(round(8 * buy.length_mm / YARD))
    assert spread(place).bought >= spread(place).plan.length_mm


def test_the_cloth_is_bought_longer_where_it_shrinks(place: ClothPlace, desk: Desk) -> None:
    apply(desk, shrinkage_percent=10.0)
    place.bench.work_out()
    found = spread(place)
    assert found.lay.buy is not None
    assert found.bought == pytest.approx(0.9 * found.lay.buy.length_mm)
    assert found.bought >= found.plan.length_mm


def test_what_she_has_is_said_to_be_enough(place: ClothPlace, desk: Desk) -> None:
    apply(desk, at_hand_mm=2 * YARD)
    place.bench.work_out()
    assert "you have 72 in" in flags(place)
    assert "fits in what you have" in place.answer.sentence.told.head


def test_or_by_how_much_it_is_too_short(place: ClothPlace, desk: Desk) -> None:
    apply(desk, at_hand_mm=254.0)
    place.bench.work_out()
    told = place.answer.sentence.told
    assert told.head.startswith("Buy ")
    assert "too short" in told.body
    assert told.mark == "attend"


def test_a_card_puts_its_cloth_on_show(place: ClothPlace) -> None:
    QTest.mouseClick(place.cards.cards[1], Qt.MouseButton.LeftButton)
    assert spread(place).cloth.name == "Strong cloth"
    assert place.form.sections[1].opened
    assert not place.form.sections[0].opened


def test_so_does_its_section_in_the_form(place: ClothPlace) -> None:
    QTest.mouseClick(place.form.sections[2].header, Qt.MouseButton.LeftButton)
    assert spread(place).cloth.name == "Lining cloth"
    assert place.cards.cards[2].isChecked()


def test_cards_say_how_much_to_buy(place: ClothPlace, desk: Desk) -> None:
    for card, lay in zip(place.cards.cards, desk.picture.lays, strict=True):
        assert lay.buy is not None
        assert card.face.words == f"buy {lay.buy.words}"


def test_a_piece_picked_here_is_picked_in_the_draft(place: ClothPlace, desk: Desk) -> None:
    QTest.keyClick(place.canvas, Qt.Key.Key_PageDown)
    piece = place.canvas.picked_piece
    assert piece is not None
    assert desk.selection == (Place(panel=piece.copy.panel) if piece.copy.panel is not None else None)


def test_what_is_picked_is_said(place: ClothPlace) -> None:
    QTest.keyClick(place.canvas, Qt.Key.Key_PageDown)
    assert "from the cut end" in place.canvas.accessibleDescription()


# --- stale --------------------------------------------------------------------------------------


def test_a_kept_plan_is_stale_as_soon_as_the_pieces_change(place: ClothPlace, desk: Desk) -> None:
    place.lay_anew()
    assert not spread(place).stale
    desk.apply("Seams", set_allowance_of(desk.project, "seam", 25.4))
    desk.now()
    assert spread(place).stale
    place.bench.work_out()
    assert spread(place).stale
    assert place.answer.sentence.told.head == "Stale plan"
    assert any(flag.startswith("was ") for flag in flags(place))
    assert "stale" in place.foot.row.accessibleName()


def test_undo_brings_the_plan_back_to_life(place: ClothPlace, desk: Desk) -> None:
    place.lay_anew()
    desk.apply("Seams", set_allowance_of(desk.project, "seam", 25.4))
    desk.now()
    desk.undo()
    desk.now()
    place.bench.work_out()
    assert not spread(place).stale


def test_a_price_leaves_the_plan_as_it_is(place: ClothPlace, desk: Desk) -> None:
    place.lay_anew()
    before = spread(place).plan
    apply(desk, price=Decimal(12))
    assert not spread(place).stale
    assert spread(place).plan.placed == before.placed


def test_laid_anew_it_is_current_again(place: ClothPlace, desk: Desk) -> None:
    place.lay_anew()
    desk.apply("Seams", set_allowance_of(desk.project, "seam", 25.4))
    desk.now()
    place.bench.work_out()
    QTest.mouseClick(place.answer.anew, Qt.MouseButton.LeftButton)
    assert not spread(place).stale
    assert desk.project.kept_plan("Fashion cloth") is not None


# --- nothing to show ----------------------------------------------------------------------------


def words(place: ClothPlace) -> tuple[str, str]:
    assert place.bench.shown is not None
    return empty_words(place.bench.shown)


def test_with_nothing_measured_it_says_what_to_type(place: ClothPlace, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    place.bench.work_out()
    assert place.canvas.spread is None
    assert words(place) == ("Nothing to lay yet", "Type the bust and the waist to begin.")
    assert not place.answer.seek.isEnabled()


def test_a_cloth_without_layers_says_so(place: ClothPlace, desk: Desk) -> None:
    desk.apply("Layers", set_cloth_layers(desk.project, "Fashion cloth", ()))
    desk.now()
    place.bench.work_out()
    assert words(place)[0] == "Fashion cloth: no pieces"
    assert "No cloth" in place.foot.row.accessibleName() or "no cloth" in place.foot.row.accessibleName()


def test_a_piece_wider_than_the_cloth_says_why_nothing_is_laid(place: ClothPlace, desk: Desk) -> None:
    apply(desk, width_mm=100.0)
    place.bench.work_out()
    title, sentence = words(place)
    assert title == "Fashion cloth: cannot be laid"
    assert "across" in sentence
    assert place.cards.cards[0].face.mark == "stop"


def test_a_project_without_cloths_asks_for_one(place: ClothPlace, desk: Desk) -> None:
    for _ in range(4):
        section = place.form.sections[0]
        section.show_opened(True)
        section.rows[-1].target().click()  # type: ignore[union-attr]
        desk.now()
    assert desk.project.cloths == ()
    assert words(place)[0] == "No cloth"


@pytest.mark.parametrize("style", ["under_bust", "over_bust"])
@pytest.mark.parametrize("changes", [{}, {"laid": "folded"}, {"run": "one_way", "repeat_mm": 200.0}])
def test_every_way_of_lying_can_be_painted(
    place: ClothPlace, desk: Desk, style: str, changes: dict[str, object]
) -> None:
    project = set_layer_made(bodice(style), "top_facing", True)
    desk.open_session(Session(set_cloth(project, "Fashion cloth", **changes)))  # type: ignore[arg-type]
    place.bench.work_out()
    assert spread(place).pieces
    assert not place.canvas.grab().isNull()


def test_a_remnant_is_painted_with_what_finds_no_room(place: ClothPlace, desk: Desk) -> None:
    corners = ((0.0, 0.0), (600.0, 0.0), (500.0, 500.0), (100.0, 400.0))
    apply(desk, remnant=corners)
    place.bench.work_out()
    assert spread(place).remnant is not None
    assert place.cards.cards[0].face.words == "no room for all"
    assert place.answer.sentence.told.head == "It does not fit"
    assert not place.canvas.grab().isNull()


# --- nothing is worked out that nobody sees --------------------------------------------------------


def test_out_of_sight_nothing_is_worked_out(place: ClothPlace, desk: Desk) -> None:
    place.hide()
    before = place.bench.worked
    desk.apply("Seams", set_allowance_of(desk.project, "seam", 25.4))
    desk.now()
    place.bench.work_out()
    assert place.bench.worked is before


def test_in_sight_again_it_has_caught_up(place: ClothPlace, desk: Desk) -> None:
    place.hide()
    desk.apply("Seams", set_allowance_of(desk.project, "seam", 25.4))
    desk.now()
    place.show()
    assert place.bench.worked is not None
    assert place.bench.worked.picture is desk.picture


def test_a_price_of_a_notion_lays_nothing_anew(place: ClothPlace, desk: Desk) -> None:
    before = spread(place).plan
    desk.apply("Price", set_price(desk.project, "cord", desk.project.cloths[0].price + 2))
    desk.now()
    assert spread(place).plan is before


# --- findings -----------------------------------------------------------------------------------


def test_in_order_the_foot_says_what_to_buy(place: ClothPlace) -> None:
    assert "To buy: Fashion cloth" in place.foot.row.accessibleName()


def test_a_finding_about_another_cloth_puts_it_on_show(place: ClothPlace, desk: Desk) -> None:
    desk.apply("Width", set_cloth(desk.project, "Lining cloth", width_mm=100.0))
    desk.now()
    place.bench.work_out()
    place.foot.on_row_clicked()
    assert place.bench.number == 2
    assert place.form.sections[2].opened

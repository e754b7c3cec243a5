"""The lists, the cards and the foot of the pieces place: bones, what to buy, seams walked."""

from __future__ import annotations

from dataclasses import replace
from math import ceil

import pytest
from PySide6.QtCore import QModelIndex, QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from workbench.document import (
    Session,
    new_project,
    set_bone_place,
    set_boning,
    set_layer_made,
    set_own_allowance,
    set_reduction,
    set_unit,
)
from workbench.draft import Place
from workbench.pieces import LAYERS, Cutting
from workbench.ui.desk import Desk
from workbench.ui.pieces import PiecesPlace
from workbench.ui.pieces.bench import Worked
from workbench.ui.pieces.findings import findings_on_table
from workbench.ui.pieces.line_list import LineDelegate
from workbench.ui.pieces.lines import Line, bone_lines, by_length, notion_lines, text_of, walk_lines

INCH, YARD = 25.4, 914.4
"""International yard and pound agreement of 1959, from memory."""


def cutting(place: PiecesPlace) -> Cutting:
    assert place.bench.cutting is not None
    return place.bench.cutting


def edit(place: PiecesPlace, desk: Desk, project: object) -> None:
    desk.apply("Edit", project)  # type: ignore[arg-type]  # a project; object keeps the calls short
    desk.now()
    place.bench.work_out()


def row_with(place: PiecesPlace, words: str) -> QModelIndex:
    model = place.lists.model
    return next(model.index(n) for n, line in enumerate(model.lines) if words in line.text)


# --- bones --------------------------------------------------------------------------------------


def test_bones_are_counted_by_length_and_every_bone_is_named(place: PiecesPlace, desk: Desk) -> None:
    bones, lines = cutting(place).bones, bone_lines(cutting(place), desk.project)
    named = [line for line in lines if not line.heading]
    assert sorted(line.text.lower() for line in named) == sorted(bone.where.lower() for bone in bones)
    groups = [line for line in lines if line.heading and "All " not in line.text]
    assert len(groups) == len({(bone.stuff, bone.cut_length) for bone in bones})
    assert sum(int(line.amount.split()[0]) for line in groups) == sum(bone.count for bone in bones)


def test_with_no_bones_it_says_where_to_ask_for_them(place: PiecesPlace, desk: Desk) -> None:
    project = desk.project
    for where in project.making.boning.places:
        project = set_bone_place(project, where, False)
    edit(place, desk, project)
    assert [line.text for line in place.lists.model.lines] == ["No bones"]
    assert "at the left" in place.lists.model.lines[0].note


def test_with_bones_that_cannot_be_it_points_to_the_reasons(place: PiecesPlace, desk: Desk) -> None:
    edit(place, desk, set_boning(desk.project, clearance_mm=200.0))
    assert "foot" in place.lists.model.lines[0].note
    assert place.foot.row.accessibleName().startswith("Look at this")


def test_the_hand_over_a_bone_lights_it(place: PiecesPlace) -> None:
    view = place.lists.view
    index = row_with(place, "Side seam")
    view.scrollTo(index)
    QTest.mouseMove(view.viewport(), view.visualRect(index).center() + QPoint(1, 1))
    QTest.mouseMove(view.viewport(), view.visualRect(index).center())
    assert [bone.where for bone in place.bench.bones] == ["side seam"]


def test_a_click_on_a_bone_picks_its_panel(place: PiecesPlace, desk: Desk) -> None:
    view = place.lists.view
    index = row_with(place, "Side seam")
    view.scrollTo(index)
    QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=view.visualRect(index).center())
    bone = next(bone for bone in cutting(place).bones if bone.where == "side seam")
    assert desk.selection == Place(panel=bone.panel)


def test_keys_go_through_the_list_and_light_it_too(place: PiecesPlace) -> None:
    place.activateWindow()
    place.lists.view.setFocus()
    place.lists.view.setCurrentIndex(place.lists.model.index(0))
    QTest.keyClick(place.lists.view, Qt.Key.Key_End)
    assert place.bench.bones == place.lists.model.lines[-1].bones
    assert place.bench.bones


# --- what to buy -----------------------------------------------------------------------------------


def test_everything_to_buy_says_how_it_was_worked_out(place: PiecesPlace, desk: Desk) -> None:
    QTest.mouseClick(place.lists.head.button("buy"), Qt.MouseButton.LeftButton)
    lines = place.lists.model.lines
    assert [line.text for line in lines] == [notion.name for notion in cutting(place).notions]
    assert all(line.note and "{" not in line.note for line in lines)


def test_yard_goods_are_rounded_up_to_the_eighth(desk: Desk) -> None:
    # charts go by 1/8 yd: common practice, no source
    for mm in (YARD, 1000.0, 4000.0, 5 * YARD + 1):
        eighths = ceil(mm / YARD * 8 - 1e-9)
        whole, rest = divmod(eighths, 8)
        said = by_length(mm, desk.project)
        assert said.endswith(" yd")
        assert said.startswith(str(whole))
        assert (said == f"{whole} yd") == (rest == 0)


def test_short_lengths_stay_as_they_are(desk: Desk) -> None:
    assert by_length(10 * INCH, desk.project) == "10 in"
    metric = set_unit(desk.project, "cm", 8)
    assert by_length(254.0, metric) == "25.4 cm"
    assert by_length(2310.0, metric) == "2.4 m"


# --- seams walked ------------------------------------------------------------------------------------


def test_every_pair_is_listed_with_both_lengths(place: PiecesPlace, desk: Desk) -> None:
    lines = walk_lines(cutting(place), desk.project)
    pairs = [line for line in lines if " · " in line.amount and not line.heading]
    assert len(pairs) == len(cutting(place).walks)
    assert lines[0].mark == "within"
    assert str(len(cutting(place).walks)) in lines[0].text


def broken(place: PiecesPlace) -> Cutting:
    """The cutting with one side of one pair 3 mm longer than it is."""
    whole = cutting(place)
    first = whole.walks[0]._replace(left=whole.walks[0].left + 3, holds=False)
    return replace(whole, walks=(first, *whole.walks[1:]))


def test_a_pair_that_does_not_meet_comes_first_with_its_difference(place: PiecesPlace, desk: Desk) -> None:
    lines = walk_lines(broken(place), desk.project)
    assert (lines[0].mark, lines[0].text) == ("attend", "One does not meet")
    assert lines[1].heading
    assert lines[2].mark == "attend"
    assert "+3.00 mm" in lines[2].note


def test_its_layer_is_marked_and_the_foot_says_so(place: PiecesPlace, desk: Desk) -> None:
    worked = Worked(desk.picture, broken(place))
    place.cards.show_worked(worked)
    assert place.cards.cards[worked.cutting.walks[0].layer].face.amiss  # type: ignore[union-attr]
    said = [finding.code for finding in findings_on_table(desk.picture, worked.cutting)]
    assert "seams_do_not_meet" in said


def test_a_click_on_a_pair_lights_its_seam(place: PiecesPlace, desk: Desk) -> None:
    place.lists.on_list("walks")
    view, index = place.lists.view, row_with(place, "Front seam 1, whole seam")
    view.scrollTo(index)
    QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=view.visualRect(index).center())
    assert desk.selection == Place(seam=1)


# --- the list as a widget ------------------------------------------------------------------------------


def test_the_list_is_copied_as_text(place: PiecesPlace, desk: Desk) -> None:
    place.lists.on_list("buy")
    QTest.mouseClick(place.lists.copy, Qt.MouseButton.LeftButton)
    copied = QGuiApplication.clipboard().text()
    assert copied == text_of("To buy", notion_lines(cutting(place), desk.project))
    assert copied.startswith("To buy\n")
    assert all(notion.name in copied for notion in cutting(place).notions)


def test_a_line_is_as_tall_as_its_words_need(place: PiecesPlace) -> None:
    delegate = place.lists.view.itemDelegate()
    assert isinstance(delegate, LineDelegate)
    short, long = Line("Loops", "24 ×"), Line("Loops", "24 ×", "how it was worked out " * 12)
    place.lists.model.show_lines((short, long))
    heights = [place.lists.view.sizeHintForRow(row) for row in (0, 1)]
    assert heights[1] > 2 * heights[0]


def test_a_screen_reader_hears_the_whole_line(place: PiecesPlace) -> None:
    model = place.lists.model
    heard = model.data(model.index(0), Qt.ItemDataRole.AccessibleTextRole)
    assert isinstance(heard, str)
    assert model.lines[0].text in heard
    assert model.lines[0].amount in heard


def test_without_pieces_there_are_no_lists(place: PiecesPlace, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    place.bench.work_out()
    assert place.lists.view.isHidden()
    assert place.lists.nothing.isVisible()
    assert not place.lists.copy.isEnabled()


# --- cards and foot ----------------------------------------------------------------------------------------


def test_a_card_says_how_many_pieces_and_how_many_to_cut(place: PiecesPlace) -> None:
    for layer in cutting(place).layers:
        cut = sum(piece.count for piece in layer.pieces)
        assert place.cards.cards[layer.name].face.count.endswith(f"cut {cut}")
        assert place.cards.cards[layer.name].accessibleName().startswith(layer.label)


def test_a_layer_that_is_not_made_says_so(place: PiecesPlace, desk: Desk) -> None:
    edit(place, desk, set_layer_made(desk.project, "lining", False))
    assert place.cards.cards["lining"].face.count == "not made"


def test_a_click_on_a_card_puts_its_layer_on_the_table(place: PiecesPlace) -> None:
    QTest.mouseClick(place.cards.cards["interfacing"], Qt.MouseButton.LeftButton)
    assert place.table.spread is not None
    assert place.table.spread.layer.name == "interfacing"
    assert place.cards.cards["interfacing"].isChecked()


@pytest.mark.parametrize("width", [640, 966, 1600])
def test_cards_keep_inside_and_clear_of_each_other(place: PiecesPlace, width: int) -> None:
    place.cards.resize(width, 100)
    boxes = [place.cards.cards[name].geometry() for name in LAYERS]
    assert all(place.cards.rect().contains(box) for box in boxes)
    assert not any(a.intersects(b) for n, a in enumerate(boxes) for b in boxes[n + 1 :])


def test_the_foot_answers_whether_every_piece_is_there(place: PiecesPlace, desk: Desk) -> None:
    edit(place, desk, set_reduction(desk.project, "waist", INCH))
    count = sum(piece.count for piece in cutting(place).pieces)
    said = f"{count} pieces to cut in {len(cutting(place).layers)} layers"
    assert said in place.foot.row.accessibleName()


def test_what_the_cutting_finds_stands_in_the_foot_and_lights_its_edge(
    place: PiecesPlace, desk: Desk
) -> None:
    edit(place, desk, set_own_allowance(desk.project, "fashion", 1, "left", 101.0))
    assert "Front 2" in place.foot.row.accessibleName()
    QTest.mouseClick(place.foot.row, Qt.MouseButton.LeftButton)
    assert desk.selection == Place(panel=1, seam=1)


def test_a_limit_that_is_passed_is_still_said_first(place: PiecesPlace, desk: Desk) -> None:
    edit(place, desk, set_reduction(desk.project, "waist", 6 * INCH))
    assert place.foot.row.accessibleName().startswith("Over the limit")


def test_lists_wait_until_the_hand_rests(place: PiecesPlace, desk: Desk, qtbot: QtBot) -> None:
    before = place.bench.cutting
    desk.apply("Edit", set_layer_made(desk.project, "lining", False))
    desk.now()
    assert place.bench.cutting is before
    with qtbot.waitSignal(place.bench.worked_out, timeout=2000):
        pass
    assert "lining" not in [layer.name for layer in cutting(place).layers]

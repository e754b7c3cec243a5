"""Laying by hand: pieces dragged, nudged, turned and pinned, each one step to undo."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from tests.ui.cloth_scene import LEFT, NONE, drag, middle, named, shown, spread
from workbench.cloth import Placed
from workbench.document import BY_HAND, set_cloth
from workbench.ui.cloth import ClothPlace
from workbench.ui.cloth.paint_cloth import handle_at
from workbench.ui.desk import Desk

EIGHTH = 25.4 / 8
"""International yard and pound agreement of 1959, from memory."""
CLOTH = "Fashion cloth"


@pytest.fixture
def place(qtbot: QtBot, desk: Desk) -> ClothPlace:
    return shown(qtbot, desk)


def kept(desk: Desk, piece: str, copy: int) -> Placed:
    plan = desk.project.kept_plan(CLOTH)
    assert plan is not None
    return next(p for p in plan.placed if (p.piece, p.copy) == (piece, copy))


def pick(place: ClothPlace, name: str, number: int = 1) -> None:
    QTest.mouseClick(place.canvas, LEFT, NONE, middle(place, named(place, name, number)))


def last(place: ClothPlace) -> tuple[str, int]:
    """A piece at the far end, with room to be moved."""
    piece = max(spread(place).pieces, key=lambda p: p.box[2])
    return piece.copy.name, piece.copy.number


def test_a_click_picks_the_piece_and_moves_nothing(place: ClothPlace, desk: Desk) -> None:
    pick(place, "Front 2")
    assert place.canvas.picked == named(place, "Front 2").key
    assert desk.selection is not None
    assert desk.selection.panel == 1
    assert desk.project.plans == ()


def test_a_dragged_piece_is_kept_where_it_was_let_go(place: ClothPlace, desk: Desk) -> None:
    piece = named(place, *last(place))
    before = piece.placed
    drag(place, middle(place, piece), QPoint(60, 0))
    after = kept(desk, *piece.key)
    assert after.y - before.y == pytest.approx(60 / place.canvas.sight.view.scale)
    assert desk.undo_name == "Move a piece on the cloth"


def test_one_drag_is_one_step_to_undo(place: ClothPlace, desk: Desk) -> None:
    drag(place, middle(place, named(place, *last(place))), QPoint(60, 10))
    desk.undo()
    assert desk.project.plans == ()
    assert desk.undo_name is None


def test_the_plan_says_that_it_was_laid_by_hand(place: ClothPlace, desk: Desk) -> None:
    drag(place, middle(place, named(place, *last(place))), QPoint(60, 0))
    plan = desk.project.kept_plan(CLOTH)
    assert plan is not None
    assert plan.how.endswith(BY_HAND)


def test_the_length_to_buy_follows_while_it_is_dragged(place: ClothPlace) -> None:
    piece, length = named(place, *last(place)), spread(place).plan.length_mm
    start = middle(place, piece)
    QTest.mousePress(place.canvas, LEFT, NONE, start)
    QTest.mouseMove(place.canvas, start + QPoint(30, 0))
    QTest.mouseMove(place.canvas, start + QPoint(80, 0))
    assert spread(place).plan.length_mm == pytest.approx(length + 80 / place.canvas.sight.view.scale)
    QTest.keyClick(place.canvas, Qt.Key.Key_Escape)


def test_escape_puts_it_back(place: ClothPlace, desk: Desk) -> None:
    start = middle(place, named(place, *last(place)))
    QTest.mousePress(place.canvas, LEFT, NONE, start)
    QTest.mouseMove(place.canvas, start + QPoint(80, 0))
    QTest.keyClick(place.canvas, Qt.Key.Key_Escape)
    QTest.mouseRelease(place.canvas, LEFT, NONE, start + QPoint(80, 0))
    assert desk.project.plans == ()
    assert not place.canvas.dragging


def test_a_piece_stays_between_the_selvedges(place: ClothPlace, desk: Desk) -> None:
    piece = named(place, *last(place))
    drag(place, middle(place, piece), QPoint(0, 2000))
    low = spread(place).piece(piece.key)
    assert low is not None
    cloth = desk.project.cloths[0]
    assert -low.box[1] == pytest.approx(cloth.width_mm - cloth.selvedge_mm)


def test_pieces_that_overlap_say_so_at_once(place: ClothPlace) -> None:
    piece, other = named(place, "Front 2"), named(place, "Front 2", 2)
    away = middle(place, other) - middle(place, piece)
    start = middle(place, piece)
    QTest.mousePress(place.canvas, LEFT, NONE, start)
    QTest.mouseMove(place.canvas, start + away / 2)
    QTest.mouseMove(place.canvas, start + away)
    assert spread(place).faulty[piece.key] == "overlaps"
    assert spread(place).faulty[other.key] == "overlaps"
    QTest.mouseRelease(place.canvas, LEFT, NONE, start + away)
    place.bench.work_out()
    assert "overlap" in place.foot.row.accessibleName()


def test_r_turns_a_piece_end_for_end_where_it_lies(place: ClothPlace, desk: Desk) -> None:
    pick(place, *last(place))
    before = place.canvas.picked_piece
    assert before is not None
    QTest.keyClick(place.canvas, Qt.Key.Key_R)
    after = kept(desk, *before.key)
    assert (after.degrees - before.placed.degrees) % 360 == pytest.approx(180.0)
    now = place.canvas.picked_piece
    assert now is not None
    assert now.middle == pytest.approx(before.middle)


def test_a_click_on_the_handle_does_the_same(place: ClothPlace, desk: Desk) -> None:
    pick(place, *last(place))
    piece = place.canvas.picked_piece
    assert piece is not None
    QTest.mouseClick(place.canvas, LEFT, NONE, handle_at(piece, place.canvas.sight.view).toPoint())
    assert (kept(desk, *piece.key).degrees - piece.placed.degrees) % 360 == pytest.approx(180.0)
    assert desk.undo_name == "Turn a piece on the cloth"


def test_a_nap_keeps_pieces_from_being_turned(place: ClothPlace, desk: Desk, qtbot: QtBot) -> None:
    desk.apply("Nap", set_cloth(desk.project, CLOTH, run="one_way"))
    desk.now()
    place.bench.work_out()
    pick(place, *last(place))
    with qtbot.waitSignal(desk.refused) as refused:
        QTest.keyClick(place.canvas, Qt.Key.Key_R)
    assert "only one way" in refused.args[1]
    assert desk.project.plans == ()


def test_a_piece_leans_no_further_than_the_tilt(place: ClothPlace, desk: Desk) -> None:
    desk.apply("Tilt", set_cloth(desk.project, CLOTH, tilt_degrees=3.0))
    desk.now()
    place.bench.work_out()
    pick(place, *last(place))
    piece = place.canvas.picked_piece
    assert piece is not None
    drag(place, handle_at(piece, place.canvas.sight.view).toPoint(), QPoint(-6, 40))
    lean = (kept(desk, *piece.key).degrees - piece.placed.degrees) % 180
    assert min(lean, 180 - lean) == pytest.approx(3.0)


def test_p_pins_a_piece_and_frees_it(place: ClothPlace, desk: Desk) -> None:
    pick(place, "Front 2")
    key = named(place, "Front 2").key
    QTest.keyClick(place.canvas, Qt.Key.Key_P)
    assert kept(desk, *key).pinned
    QTest.keyClick(place.canvas, Qt.Key.Key_P)
    assert not kept(desk, *key).pinned


def test_the_rest_is_laid_round_a_pinned_piece(place: ClothPlace, desk: Desk) -> None:
    piece = named(place, *last(place))
    drag(place, middle(place, piece), QPoint(90, 20))
    pick(place, piece.copy.name, piece.copy.number)
    QTest.keyClick(place.canvas, Qt.Key.Key_P)
    pinned = kept(desk, *piece.key)
    assert place.answer.anew.text() == "Lay the rest round them"
    QTest.mouseClick(place.answer.anew, LEFT)
    assert kept(desk, *piece.key) == pinned
    assert spread(place).plan.sound
    assert "pinned" in spread(place).plan.how


def test_arrows_move_the_picked_piece_by_an_eighth(place: ClothPlace, desk: Desk) -> None:
    pick(place, *last(place))
    piece = place.canvas.picked_piece
    assert piece is not None
    QTest.keyClick(place.canvas, Qt.Key.Key_Right)
    assert kept(desk, *piece.key).y - piece.placed.y == pytest.approx(EIGHTH)


def test_a_run_of_one_key_is_one_step(place: ClothPlace, desk: Desk) -> None:
    pick(place, *last(place))
    piece = place.canvas.picked_piece
    assert piece is not None
    for _ in range(3):
        QTest.keyPress(place.canvas, Qt.Key.Key_Right)
    QTest.keyRelease(place.canvas, Qt.Key.Key_Right)
    assert kept(desk, *piece.key).y - piece.placed.y == pytest.approx(3 * EIGHTH)
    desk.undo()
    assert desk.project.plans == ()


def test_a_half_keeps_to_the_fold(place: ClothPlace, desk: Desk) -> None:
    desk.apply("Folded", set_cloth(desk.project, CLOTH, laid="folded"))
    desk.now()
    place.bench.work_out()
    piece = named(place, "Front 1")
    assert piece.copy.on_fold
    drag(place, middle(place, piece), QPoint(40, 60))
    after = spread(place).piece(piece.key)
    assert after is not None
    assert after.box[3] == pytest.approx(piece.box[3], abs=1e-6)
    assert "fold" not in " ".join(finding.code for finding in spread(place).plan.findings)


def test_a_print_is_moved_by_whole_repeats(place: ClothPlace, desk: Desk) -> None:
    desk.apply("Repeat", set_cloth(desk.project, CLOTH, repeat_mm=101.6))
    desk.now()
    place.bench.work_out()
    piece = named(place, *last(place))
    drag(place, middle(place, piece), QPoint(30, 0))
    repeats = kept(desk, *piece.key).y / 101.6
    assert repeats == pytest.approx(round(repeats), abs=1e-9)


def test_a_stale_plan_is_not_moved_by_hand(place: ClothPlace, desk: Desk) -> None:
    place.lay_anew()
    desk.apply("Width", set_cloth(desk.project, CLOTH, width_mm=1000.0))
    desk.now()
    place.bench.work_out()
    before = desk.project
    drag(place, middle(place, spread(place).pieces[0]), QPoint(60, 0))
    assert desk.project is before


def test_the_wheel_zooms_at_the_pointer(place: ClothPlace) -> None:
    canvas, at = place.canvas, QPointF(300, 200)
    under = canvas.sight.view.mm(at)
    wheel = QWheelEvent(
        at,
        QPointF(canvas.mapToGlobal(at.toPoint())),
        QPoint(),
        QPoint(0, 120),
        Qt.MouseButton.NoButton,
        NONE,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(canvas, wheel)
    assert canvas.sight.view.mm(at) == pytest.approx(under)


def test_a_drag_beside_the_pieces_moves_the_picture(place: ClothPlace) -> None:
    before = place.canvas.sight.view
    drag(place, QPoint(place.canvas.width() - 20, 40), QPoint(-50, 10))
    assert place.canvas.sight.view == before.panned(-50, 10)


def test_nought_fits_it_again(place: ClothPlace) -> None:
    fitted = place.canvas.sight.view
    QTest.keyClick(place.canvas, Qt.Key.Key_Plus)
    QTest.keyClick(place.canvas, Qt.Key.Key_0)
    assert place.canvas.sight.view == fitted


def test_the_menu_offers_what_the_keys_do(place: ClothPlace, desk: Desk) -> None:
    pick(place, "Front 2")
    place.canvas.menu.show_piece(place.canvas.picked_piece, place.canvas.by_hand)
    place.canvas.menu.pin.trigger()
    assert kept(desk, *named(place, "Front 2").key).pinned

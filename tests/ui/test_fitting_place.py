"""The fittings place: what is written down becomes the project, and what it did is shown."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QScrollArea
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, turn_wheel
from workbench.document import (
    FROM_OPENING,
    Session,
    WishPicture,
    add_fitting,
    new_project,
    set_fitting,
    set_gap,
    set_panels,
)
from workbench.draft import Place
from workbench.fitting import Change, Fitting, Gaps, u_now
from workbench.ui.desk import Desk
from workbench.ui.fitting import FittingPlace
from workbench.ui.fitting.change_row import ChangeRow
from workbench.ui.fitting.photo import PhotoRow
from workbench.ui.fitting.point import u_then
from workbench.ui.fitting.words import findings_of
from workbench.ui.pieces.lines import Line

INCH = 25.4
FIRST = Fitting(
    "2031-05-20",
    "calico",
    (3, 3),
    Gaps(3 * INCH, 2 * INCH, 2 * INCH),
    (
        Change("seam", INCH / 4, "waist", 3),
        Change("length", INCH / 2, "waist"),
        Change("neckline", 3 * INCH / 8, u=3.0),
    ),
)


@pytest.fixture
def desk() -> Desk:
    return Desk(Session(replace(bodice(), fittings=(FIRST,))))


@pytest.fixture
def place(qtbot: QtBot, desk: Desk) -> FittingPlace:
    shown = FittingPlace(desk)
    qtbot.addWidget(shown)
    shown.resize(1280, 640)
    with qtbot.waitExposed(shown):
        shown.show()
    return shown


def rows(place: FittingPlace) -> list[ChangeRow]:
    return [row for row in place.form.pinned.rows if isinstance(row, ChangeRow) and row.wanted]


def lines(place: FittingPlace) -> tuple[Line, ...]:
    place.bench.work_out()
    return place.list.model.lines


def amount(place: FittingPlace, text: str) -> str:
    return next(line.amount for line in lines(place) if line.text == text)


def type_into(field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def click(button: QAbstractButton) -> None:
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)


def told(place: FittingPlace) -> list[str]:
    """What the foot has to say."""
    latest = place.bench.latest
    return [finding.text("in") for finding in findings_of(latest.picture, latest)] if latest else []


def fitting(desk: Desk, number: int = 0) -> Fitting:
    return desk.project.fittings[number]


# --- the list ------------------------------------------------------------------------------------


def test_before_the_first_fitting_there_is_a_button_and_the_draft(qtbot: QtBot) -> None:
    desk = Desk(Session(bodice()))
    place = FittingPlace(desk)
    qtbot.addWidget(place)
    place.resize(1280, 640)
    place.show()
    assert place.form.list.nothing.isVisible()
    assert not any(section.isVisible() for section in place.form.sections)
    assert place.overlay.laid is not None
    assert any("No fitting yet" in said for said in told(place))
    click(place.form.list.add)
    assert [one.date for one in desk.project.fittings] == [date.today().isoformat()]
    assert not place.form.list.nothing.isVisible()
    assert place.form.pinned.isVisible()


def test_the_last_fitting_is_on_show_and_another_one_is_a_click_away(place: FittingPlace, desk: Desk) -> None:
    desk.apply("More", set_fitting(add_fitting(desk.project, "2031-06-03"), 1, cloth="sheeting"))
    desk.now()
    place.bench.work_out()
    assert place.bench.number == 1
    assert [card.name for card in place.form.list.cards] == ["20 May 2031", "3 June 2031"]
    assert rows(place) == []
    click(place.form.list.cards[0])
    assert place.bench.fitting is fitting(desk)
    assert len(rows(place)) == 3


def test_a_fitting_that_is_added_comes_into_sight(place: FittingPlace, desk: Desk) -> None:
    desk.apply("More", replace(desk.project, fittings=(FIRST,) * 4))
    desk.now()
    place.bench.work_out()
    click(place.form.list.add)
    card = place.form.list.cards[4]
    assert card.isChecked()
    area = place.form.list.findChild(QScrollArea)
    assert area is not None
    top = card.mapTo(area.viewport(), QPoint()).y()
    assert 0 <= top <= area.viewport().height() - card.height()


def test_a_project_without_measurements_says_what_is_missing(qtbot: QtBot) -> None:
    place = FittingPlace(Desk(Session(replace(new_project(), fittings=(FIRST,)))))
    qtbot.addWidget(place)
    place.show()
    assert place.overlay.laid is None
    assert not place.overlay.grab().isNull()
    assert lines(place)[0].text == "Nothing differs"


def test_another_project_begins_with_its_own_last_fitting(place: FittingPlace, desk: Desk) -> None:
    place.bench.show_fitting(0)
    two = add_fitting(add_fitting(bodice(), "2031-01-01"), "2031-02-02")
    desk.open_session(Session(two))
    place.bench.work_out()
    assert place.bench.number == 1


# --- the form ------------------------------------------------------------------------------------


def test_what_is_typed_is_stored_and_undone_in_one_step(place: FittingPlace, desk: Desk) -> None:
    type_into(rows(place)[0].field, "3/8")
    assert fitting(desk).changes[0].amount_mm == pytest.approx(3 * INCH / 8)
    desk.undo()
    assert fitting(desk) == FIRST


def test_letting_out_turns_the_line_round(place: FittingPlace, desk: Desk) -> None:
    row = rows(place)[0]
    click(row.ways["seam"].button("less"))
    assert fitting(desk).changes[0].amount_mm == pytest.approx(-INCH / 4)
    desk.now()
    assert "½ in more round the body" in row.said
    type_into(row.field, "1/2")
    assert fitting(desk).changes[0].amount_mm == pytest.approx(-INCH / 2)


def test_a_line_is_switched_off_and_removed(place: FittingPlace, desk: Desk) -> None:
    row = rows(place)[1]
    row.box.click()
    assert not fitting(desk).changes[1].on
    desk.now()
    assert "Underbust" not in [line.text for line in lines(place)]
    click(row.remove)
    desk.now()
    assert [change.kind for change in fitting(desk).changes] == ["seam", "neckline"]
    assert len(rows(place)) == 2


def test_lines_of_every_kind_are_added_and_placed(place: FittingPlace, desk: Desk) -> None:
    for kind, button in place.form.pinned.rows[0].buttons.items():  # type: ignore[attr-defined]  # the buttons
        click(button)
        assert fitting(desk).changes[-1].kind == kind
    desk.now()
    seam, length, neckline, _ = rows(place)[3:]
    seam.seam.on_activated(0)
    seam.level.on_activated(0)
    desk.now()
    assert (fitting(desk).changes[3].seam, fitting(desk).changes[3].level) == (1, "bust")
    length.level.on_activated(2)
    assert fitting(desk).changes[4].level == "top_hip"
    neckline.spot.on_activated(3)
    assert fitting(desk).changes[5].u == 1.5
    desk.now()
    type_into(neckline.across, "40")
    assert fitting(desk).changes[5].u == pytest.approx(1.4)
    type_into(neckline.note_field, "for the brooch")
    assert fitting(desk).changes[5].note == "for the brooch"


def test_what_cannot_be_read_stays_in_the_field_with_the_reason(place: FittingPlace, desk: Desk) -> None:
    row = rows(place)[0]
    type_into(row.field, "9")
    assert fitting(desk) == FIRST
    assert "at most 8 in" in row.said
    type_into(row.field, "wide")
    assert "wide" in row.said


def test_the_wheel_over_a_list_scrolls_the_form(place: FittingPlace, desk: Desk) -> None:
    pick = rows(place)[0].seam
    turn_wheel(pick, QPointF(5, 5), -120)
    assert fitting(desk) == FIRST


def test_particulars_of_the_fitting(place: FittingPlace, desk: Desk) -> None:
    first = place.form.sections[0]
    place.form.open(first)
    day, cloth, applied = first.rows[:3]
    type_into(day.field, "2031-05-21")  # type: ignore[attr-defined]  # a row of one field
    type_into(cloth.field, "sheeting")  # type: ignore[attr-defined]  # likewise
    applied.box.click()  # type: ignore[attr-defined]  # a row with a box
    assert (fitting(desk).date, fitting(desk).cloth, fitting(desk).applied) == (
        "2031-05-21",
        "sheeting",
        False,
    )
    desk.now()
    place.bench.work_out()
    assert desk.picture.outcome is not None
    assert desk.picture.outcome.designed == ()
    assert any("not carried into the draft" in said for said in told(place))
    assert place.form.list.cards[0].told == "sheeting, 3 lines, not carried in"
    click(first.rows[-1].button)  # type: ignore[attr-defined]  # the button that removes it
    assert desk.project.fittings == ()


def test_a_picture_of_the_project_is_picked(place: FittingPlace, desk: Desk) -> None:
    kept = WishPicture("the back", "AAAA", 4, 4)
    desk.apply("Picture", replace(desk.project, pictures=(kept,)))
    place.form.open(place.form.sections[0])
    desk.now()
    row = place.form.sections[0].rows[4]
    row.pick.on_activated(1)  # type: ignore[attr-defined]  # the row of the picture
    assert fitting(desk).picture == "the back"
    desk.apply("Gone", replace(desk.project, pictures=()))
    desk.now()
    assert row.pick.currentText() == "the back (no longer kept)"  # type: ignore[attr-defined]  # likewise


def test_a_picture_is_added_for_the_fitting_in_one_step(
    place: FittingPlace, desk: Desk, qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / "side.png"
    Image.new("RGB", (60, 40), "red").save(path)
    place.form.open(place.form.sections[0])
    row = place.form.sections[0].rows[4]
    assert isinstance(row, PhotoRow)
    row.asking = lambda _parent: [path]
    click(row.add)
    qtbot.waitUntil(lambda: not row.taking.busy)
    desk.now()
    place.bench.work_out()
    assert fitting(desk).picture == desk.project.pictures[-1].name
    assert row.photo.isVisible()
    desk.undo()
    assert (fitting(desk).picture, desk.project.pictures) == ("", ())


def test_a_file_that_is_no_picture_is_named(
    place: FittingPlace, desk: Desk, qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / "notes.txt"
    path.write_text("waist 28")
    place.form.open(place.form.sections[0])
    row = place.form.sections[0].rows[4]
    assert isinstance(row, PhotoRow)
    row.asking = lambda _parent: [path]
    click(row.add)
    qtbot.waitUntil(lambda: not row.taking.busy)
    assert "notes.txt" in row.said
    assert desk.project.pictures == ()


# --- the opening ---------------------------------------------------------------------------------


def test_the_opening_is_read_and_the_proposal_taken(place: FittingPlace, desk: Desk) -> None:
    opening = place.form.opening
    place.form.open(opening)
    place.bench.work_out()
    assert "A V, wide at the top" in opening.reading.said
    assert "let out" in opening.reading.said
    click(opening.reading.take)
    proposed = [change for change in fitting(desk).changes if change.note == FROM_OPENING]
    assert proposed
    assert all(change.amount_mm < 0 for change in proposed)
    desk.now()
    place.bench.work_out()
    assert not opening.reading.take.isVisible()
    assert f"lines 4 to {3 + len(proposed)} are from it" in opening.reading.said


def test_another_opening_is_offered_in_place_of_what_was_taken(place: FittingPlace, desk: Desk) -> None:
    opening = place.form.opening
    place.form.open(opening)
    place.bench.work_out()
    click(opening.reading.take)
    taken = [change for change in fitting(desk).changes if change.note == FROM_OPENING]
    desk.apply("Gap", set_gap(desk.project, 0, "top", 2.5 * INCH))
    desk.now()
    place.bench.work_out()
    assert f"in place of {len(taken)} lines" in opening.reading.said
    click(opening.reading.take)
    again = [change for change in fitting(desk).changes if change.note == FROM_OPENING]
    assert again
    assert again != taken
    assert fitting(desk).changes[:3] == FIRST.changes


def test_two_gaps_are_no_reading(place: FittingPlace, desk: Desk) -> None:
    place.form.open(place.form.opening)
    desk.apply("Gap", set_gap(desk.project, 0, "waist", None))
    desk.now()
    place.bench.work_out()
    assert place.form.opening.reading.said.startswith("Measure all three gaps")
    assert not place.form.opening.reading.take.isVisible()
    assert "waist not measured" in place.form.opening.drawing.drawing.accessibleDescription()


def test_gaps_are_typed_and_stepped(place: FittingPlace, desk: Desk) -> None:
    place.form.open(place.form.opening)
    top, waist, _ = place.form.opening.rows[1:4]
    type_into(top.field, "2 1/2")  # type: ignore[attr-defined]  # a row of one field
    assert fitting(desk).gaps.top == pytest.approx(2.5 * INCH)
    QTest.keyClick(top.field, Qt.Key.Key_Up)  # type: ignore[attr-defined]  # likewise
    QTest.keyRelease(top.field, Qt.Key.Key_Up)  # type: ignore[attr-defined]  # likewise
    assert fitting(desk).gaps.top == pytest.approx(2.625 * INCH)
    type_into(waist.field, " ")  # type: ignore[attr-defined]  # likewise
    assert fitting(desk).gaps.waist is None


# --- before and after ----------------------------------------------------------------------------


def test_the_differences_are_listed_in_her_unit(place: FittingPlace, desk: Desk) -> None:
    assert amount(place, "Waist") == "−½ in"
    assert amount(place, "Front 3, waist") == "−⅛ in"
    assert amount(place, "Back 1, waist") == "−⅛ in"
    assert amount(place, "Underbust") == "+½ in"
    assert amount(place, "Side seam") == "+⅞ in"  # half an inch longer, and three eighths higher there
    click(place.list.copy)
    assert "Waist\t−½ in" in QGuiApplication.clipboard().text()


def click_edge(place: FittingPlace, panel: int, line: str, part: float) -> None:
    """Click on neckline or hem, so far across a panel."""
    laid = place.overlay.laid
    assert laid is not None
    pair = laid.pairs[panel]
    edge = pair.after.neckline if line == "neckline" else pair.after.hem
    across = edge[0, 0] + part * (edge[-1, 0] - edge[0, 0])
    x, y = edge[abs(edge[:, 0] - across).argmin()].tolist()
    at = place.overlay.sight.view.at(x + pair.dx, y).toPoint()
    QTest.mouseClick(place.overlay, Qt.MouseButton.LeftButton, pos=at)


def test_a_click_on_the_neckline_puts_the_picked_line_there(place: FittingPlace, desk: Desk) -> None:
    rows(place)[2].field.setFocus()
    place.bench.work_out()
    click_edge(place, 1, "neckline", 0.5)
    assert fitting(desk).changes[2].u == pytest.approx(1.5)
    desk.now()
    place.bench.work_out()
    click_edge(place, 4, "neckline", 0.98)
    assert fitting(desk).changes[2].u == pytest.approx(5.0)
    click_edge(place, 1, "hem", 0.5)
    assert fitting(desk).changes[2].u == pytest.approx(5.0)


def test_a_click_on_the_neckline_picks_the_line_that_is_pinned_there(place: FittingPlace, desk: Desk) -> None:
    click_edge(place, 1, "neckline", 0.5)
    assert desk.selection == Place(field="fittings.0.changes.2", line="neckline")
    assert fitting(desk) == FIRST


def test_places_of_today_are_those_of_the_fitting_where_the_panels_are_others(desk: Desk) -> None:
    design = set_panels(desk.project, "front", 4).design
    for u in (0.0, 1.3, 4.0, 5.25, 7.0):
        assert u_now(u_then(u, FIRST, design), FIRST, design) == pytest.approx(u)


def test_all_that_is_carried_in_is_compared_with_the_design(place: FittingPlace, desk: Desk) -> None:
    more = replace(FIRST, gaps=Gaps(), changes=(Change("seam", INCH / 8, "waist", 1),))
    desk.apply("More", replace(desk.project, fittings=(FIRST, more)))
    desk.now()
    assert amount(place, "Waist") == "−¼ in"
    click(place.list.scope.button("all"))
    assert amount(place, "Waist") == "−¾ in"


def test_a_line_that_takes_too_much_is_named_and_the_form_goes_to_it(place: FittingPlace, desk: Desk) -> None:
    bad = replace(FIRST, changes=(FIRST.changes[1], Change("seam", 150.0, "waist", 2)))
    desk.apply("Too much", replace(desk.project, fittings=(bad, replace(FIRST, changes=()))))
    desk.now()
    place.bench.work_out()
    stop = desk.picture.findings[0]
    assert stop.severity == "stop"
    assert place.overlay.laid is None
    assert place.has(stop.place.field or "")
    assert place.bench.number == 1
    desk.select(stop.place)
    assert place.bench.number == 0
    assert "takes in 5⅞ in" in rows(place)[1].said
    assert lines(place)[0].mark == "stop"


def test_a_seam_that_is_gone_is_said_beside_its_line(place: FittingPlace, desk: Desk) -> None:
    gone = replace(FIRST, changes=(Change("seam", INCH / 4, "waist", 1),))
    desk.apply("Panels", set_panels(replace(desk.project, fittings=(gone,)), "front", 4))
    desk.now()
    place.bench.work_out()
    assert "its seam is no longer there" in rows(place)[0].said
    assert desk.picture.outcome is not None
    assert desk.picture.outcome.draft is not None


def test_a_click_picks_the_panel_and_arrows_go_on(place: FittingPlace, desk: Desk) -> None:
    laid = place.overlay.laid
    assert laid is not None
    left, bottom, right, top = laid.pairs[2].box
    middle = place.overlay.sight.view.at(0.5 * (left + right), 0.5 * (bottom + top))
    QTest.mouseClick(place.overlay, Qt.MouseButton.LeftButton, pos=middle.toPoint())
    assert desk.selection == Place(panel=2)
    assert "Front 3: 1 widths differ" in place.overlay.accessibleDescription()
    QTest.keyClick(place.overlay, Qt.Key.Key_Right)
    assert desk.selection == Place(panel=3)


def test_zoom_and_fit(place: FittingPlace) -> None:
    whole = place.overlay.sight.view
    QTest.keyClick(place.overlay, Qt.Key.Key_Plus)
    assert place.overlay.sight.view.scale > whole.scale
    place.fit()
    assert place.overlay.sight.view == whole


def test_out_of_sight_nothing_is_worked_out(place: FittingPlace, desk: Desk) -> None:
    place.hide()
    before = place.bench.latest
    desk.apply("Off", set_fitting(desk.project, 0, applied=False))
    desk.now()
    assert place.bench.latest is before
    place.show()
    assert place.bench.latest is not before


def test_everything_is_painted_and_has_a_name(place: FittingPlace) -> None:
    for section in place.form.sections:
        place.form.open(section)
        assert not place.grab().isNull()
    unnamed = [
        widget
        for widget in place.findChildren(QAbstractButton)
        if widget.isVisible() and not (widget.accessibleName() or widget.text())
    ]
    assert unnamed == []

"""Sections of the form: each control edits its own part of the project, and says what follows."""

from __future__ import annotations

from typing import TypeVar

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QPlainTextEdit, QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice
from tests.ui.test_form_fields import form, row_of, typed
from workbench.body import BY_KEY, CAUTION_SHORT, LIMIT_TABLE, MEASUREMENTS
from workbench.document import Session, move_point, new_project, set_pin, set_rule
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form import Form
from workbench.ui.form.measurements import FoldRow
from workbench.ui.form.note import Note
from workbench.ui.form.reduction import CautionRow, MostRow, RuleRow
from workbench.ui.form.row import Row
from workbench.ui.form.seam_place import places_on_block
from workbench.ui.form.seams import PinRow, ShareRow, UnpinAllRow
from workbench.ui.form.section import Section
from workbench.ui.form.shape import BustPointRow, LineRow, PanelsRow, SeamRow, StyleRow
from workbench.ui.form.take_drawing import taking_of
from workbench.ui.form.who import InventedRow, ProseRow

__all__ = ["form"]

INCH = 25.4  # international yard and pound agreement 1959, from memory


RowKind = TypeVar("RowKind", bound=Row)


def of_kind(section: Section, kind: type[RowKind], number: int = 0) -> RowKind:
    section.show_opened(True)
    return [row for row in section.rows if isinstance(row, kind)][number]


@pytest.fixture
def over_bust(qtbot: QtBot, dressed: None) -> Form:
    made = Form(Desk(Session(bodice("over_bust"))))
    qtbot.addWidget(made)
    made.show()
    return made


# --- who ---------------------------------------------------------------------------------


def test_the_name_reaches_the_project(form: Form, desk: Desk) -> None:
    typed(row_of(form.who, "client.name").field, "Soprano (invented)")
    assert desk.project.client.name == "Soprano (invented)"


def test_a_wish_is_handed_in_when_it_is_left(form: Form, desk: Desk) -> None:
    prose = of_kind(form.who, ProseRow).prose
    prose.setFocus()
    QTest.keyClicks(prose, "sings for two hours")
    form.search.setFocus()
    assert desk.project.client.wish == "sings for two hours"


def test_a_date_that_is_none_is_refused_in_words(form: Form, desk: Desk) -> None:
    row = row_of(form.who, "client.date")
    typed(row.field, "next week")
    assert (desk.project.client.date, "year-month-day" in row.said) == ("", True)


def test_invented_is_a_tick(form: Form, desk: Desk) -> None:
    of_kind(form.who, InventedRow).box.click()
    assert desk.project.client.invented


# --- measurements ------------------------------------------------------------------------


def test_every_measurement_of_the_table_has_a_field(form: Form) -> None:
    names = {row.name for row in form.measurements.rows}
    assert {f"measurements.{key}" for key in BY_KEY} <= names


@pytest.mark.parametrize("key", [measurement.key for measurement in MEASUREMENTS])
def test_every_measurement_has_a_drawing_and_its_two_sentences(form: Form, key: str) -> None:
    form.show_taking(key)
    assert form.take.how.text() == BY_KEY[key].how
    assert taking_of(BY_KEY[key]).tape or key == "armscye_girth"


def test_the_drawing_comes_with_the_focus_and_goes_with_another_field(form: Form) -> None:
    row_of(form.measurements, "measurements.bust_span").field.setFocus()
    shown = form.take.isVisible()
    form.search.setFocus()
    assert (shown, form.take.isVisible()) == (True, False)


def test_optional_measurements_are_folded_until_one_is_taken(form: Form, desk: Desk) -> None:
    row = row_of(form.measurements, "measurements.waist_to_lap")
    folded = row.isHidden()
    desk.apply("Lap", desk.project.with_measurement("waist_to_lap", desk.project.measurements["waist_girth"]))
    desk.now()
    assert (folded, row.isHidden()) == (True, False)


# --- shape -------------------------------------------------------------------------------


def test_style(form: Form, desk: Desk) -> None:
    of_kind(form.shape, StyleRow).choice.button("over_bust").click()
    assert desk.project.design.style == "over_bust"


@pytest.mark.parametrize(("number", "quarter"), [(0, "front"), (1, "back")])
def test_panels(form: Form, desk: Desk, number: int, quarter: str) -> None:
    of_kind(form.shape, PanelsRow, number).choice.button(4).click()
    assert getattr(desk.project.design, quarter).panel_count == 4


def test_as_many_seams_are_asked_for_as_there_are(form: Form, desk: Desk) -> None:
    of_kind(form.shape, PanelsRow).choice.button(2).click()
    desk.now()
    rows = [row for row in form.shape.rows if isinstance(row, SeamRow)]
    assert [row.wanted for row in rows] == [True, False, False, True, True, False]


def test_a_seam_moves_as_a_whole(form: Form, desk: Desk) -> None:
    typed(of_kind(form.shape, SeamRow, 1).fields[0], "70")
    seam = desk.project.design.front.seams[1]
    assert (seam.lower, seam.upper) == pytest.approx((0.70, 0.70))


def test_a_seam_leans_about_its_middle(form: Form, desk: Desk) -> None:
    typed(of_kind(form.shape, SeamRow, 1).fields[1], "-6")
    seam = desk.project.design.front.seams[1]
    assert (seam.lower, seam.upper) == pytest.approx((0.77, 0.71))


def test_a_seam_outside_its_quarter_is_refused_in_words(form: Form, desk: Desk) -> None:
    before, row = desk.project, of_kind(form.shape, SeamRow, 1)
    typed(row.fields[0], "140")
    assert (desk.project, "inside its quarter" in row.said) == (before, True)


def test_the_seam_through_the_bust_point_stays_put_when_it_is_let_go(over_bust: Form) -> None:
    desk = over_bust._desk
    seam, outcome = desk.project.design.front.seams[0], desk.picture.outcome
    assert outcome is not None
    before = places_on_block(seam, "front", outcome)
    of_kind(over_bust.shape, BustPointRow).choice.button(0).click()
    seam = desk.project.design.front.seams[0]
    assert not seam.through_bust_point
    assert places_on_block(seam, "front", outcome) == pytest.approx(before, abs=0.05)


def test_only_one_seam_goes_through_the_bust_point(over_bust: Form) -> None:
    of_kind(over_bust.shape, BustPointRow).choice.button(2).click()
    seams = over_bust._desk.project.design.front.seams
    assert [seam.through_bust_point for seam in seams] == [False, True]


def test_her_own_hem_goes_back_to_the_line_of_the_style(form: Form, desk: Desk) -> None:
    draft = desk.picture.good
    assert draft is not None
    assert draft.draft is not None
    points = draft.draft.hem.points
    desk.apply("Hem", move_point(desk.project, "hem", 0, 0.0, points[0].t - 5, points))
    desk.now()
    row = of_kind(form.shape, LineRow, 1)
    assert "her own" in row.label.text()
    row.button.click()
    assert desk.project.design.hem is None


# --- reduction ---------------------------------------------------------------------------


def test_round_the_body_and_a_quarter_are_one_number(form: Form, desk: Desk) -> None:
    row = row_of(form.reduction, "reductions.waist")
    typed(row.fields[1], "5/8")
    assert desk.project.design.reductions.waist == pytest.approx(2.5 * INCH)
    assert (row.fields[0].text(), row.fields[1].text()) == ("2½", "⅝")


def test_ease_is_less_than_nothing(form: Form, desk: Desk) -> None:
    typed(row_of(form.reduction, "reductions.top_hip").fields[0], "-1/2")
    assert desk.project.design.reductions.top_hip == pytest.approx(-0.5 * INCH)


@pytest.mark.parametrize(
    ("inches", "words"),
    [("1", "within your 10 %"), ("2 5/8", "near the limit"), ("3", "above the limit you set")],
)
def test_the_limit_is_spoken_of_beside_the_reduction(form: Form, inches: str, words: str) -> None:
    # 10 % of 28 in is 2.8 in; near begins at four fifths of that
    row = row_of(form.reduction, "reductions.waist")
    typed(row.fields[0], inches)
    assert words in row.said


def test_a_largest_figure_is_never_rounded_up_past_the_limit(form: Form) -> None:
    # 10 % of 29 in is 2.9 in: the nearest eighth is 2⅞, the nearest sixteenth 2 15⁄16 would be too much
    typed(row_of(form.measurements, "measurements.waist_girth").field, "29")
    form.units.button(("in", 16)).click()
    row = row_of(form.reduction, "reductions.waist")
    typed(row.fields[0], "1")
    assert "at most 2⅞ in" in row.said


def test_the_most_is_taken_with_one_click(form: Form, desk: Desk) -> None:
    of_kind(form.reduction, MostRow).button.click()
    waist = desk.project.design.reductions.waist
    comfort = desk.picture.comfort
    assert comfort is not None
    assert comfort.at("waist").status != "over"
    assert waist / (INCH / 8) == pytest.approx(round(waist / (INCH / 8)))


def test_one_figure_takes_the_field_of_the_underbust_away(form: Form, desk: Desk) -> None:
    of_kind(form.reduction, RuleRow).choice.button("one_figure").click()
    desk.now()
    assert desk.project.design.rule == "one_figure"
    assert not row_of(form.reduction, "reductions.underbust").wanted


def test_one_figure_says_what_it_does_to_the_ribs(form: Form, desk: Desk) -> None:
    form.reduction.show_opened(True)
    desk.apply("Rule", set_rule(desk.project, "one_figure"))
    desk.now()
    # underbust 31½ held to waist 28 less 2: 5½ in less than the body
    assert "Underbust: 5½ in" in row_of(form.reduction, "reductions.waist").said


def test_the_caution_stands_where_a_reduction_is_chosen(form: Form) -> None:
    assert of_kind(form.reduction, CautionRow).said == CAUTION_SHORT


def test_opening_and_front_share(form: Form, desk: Desk) -> None:
    typed(row_of(form.reduction, "opening_mm").field, "3")
    typed(row_of(form.reduction, "front_share").field, "52 %")
    design = desk.project.design
    assert (design.opening_mm, design.front_share) == pytest.approx((3 * INCH, 0.52))


# --- seams and limits --------------------------------------------------------------------


def test_weights_and_left_parts(form: Form, desk: Desk) -> None:
    first, side = of_kind(form.seams, ShareRow, 0), of_kind(form.seams, ShareRow, 3)
    typed(first.fields[0], "60")
    typed(first.fields[1], "40")
    typed(side.fields[0], "10")
    front = desk.project.design.front
    seam = front.seams[0]
    assert (seam.weight, seam.left_part, front.side_weight) == pytest.approx((0.6, 0.4, 0.1))


def test_pins_are_listed_and_let_go(form: Form, desk: Desk) -> None:
    form.seams.show_opened(True)
    desk.apply("Pin", set_pin(desk.project, "front", 1, "waist", 12.7))
    desk.now()
    row = of_kind(form.seams, PinRow)
    assert row.label.text() == "Waist, front seam 1: ½ in"
    row.button.click()
    assert desk.project.design.front.seams[0].shares == ()


def test_all_pins_go_in_one_step(form: Form, desk: Desk) -> None:
    form.seams.show_opened(True)
    project = set_pin(set_pin(desk.project, "front", 1, "waist", 12.7), "back", 3, "waist", 6.35)
    desk.apply("Pins", project)
    desk.now()
    of_kind(form.seams, UnpinAllRow).button.click()
    desk.undo()
    assert desk.project == project


@pytest.mark.parametrize("limit", LIMIT_TABLE, ids=lambda limit: limit.key)
def test_every_limit_says_where_its_usual_value_comes_from(form: Form, limit: object) -> None:
    row = row_of(form.limits, f"limits.{limit.key}")  # type: ignore[attr-defined]
    assert limit.source in row.said  # type: ignore[attr-defined]


def test_a_limit_is_hers_to_set(form: Form, desk: Desk) -> None:
    typed(row_of(form.limits, "limits.waist_percent").field, "8")
    typed(row_of(form.limits, "limits.breathing_share").field, "75 %")
    limits = desk.project.limits
    assert (limits.waist_percent, limits.breathing_share) == (8.0, 0.75)


def test_a_limit_out_of_range_is_refused_once_by_name(qtbot: QtBot, form: Form, desk: Desk) -> None:
    with qtbot.waitSignal(desk.refused) as refused:
        typed(row_of(form.limits, "limits.waist_percent").field, "80")
    assert refused.args is not None
    assert refused.args[1].count("Waist reduction") == 1


# --- the whole form ----------------------------------------------------------------------


def test_one_section_is_open_at_a_time(form: Form) -> None:
    form.shape.header.click()
    assert [section.title for section in form.sections if section.opened] == ["Shape"]


def test_or_all_of_them(form: Form) -> None:
    form.all.click()
    form.shape.header.click()
    assert [section.title for section in form.sections if not section.opened] == ["Shape"]


def test_the_search_finds_fields_in_closed_sections(form: Form) -> None:
    form.search.setText("opening")
    found = [row.name for section in form.sections for row in section.rows if row.isVisible() and row.name]
    assert found == ["opening_mm"]


def test_the_search_says_when_nothing_is_called_so(form: Form) -> None:
    form.search.setText("zip")
    assert (form.nothing.isVisible(), "zip" in form.nothing.text()) == (True, True)


def test_an_emptied_search_brings_everything_back(form: Form) -> None:
    form.search.setText("opening")
    QTest.keyClick(form.search, Qt.Key.Key_Escape)
    assert [section.title for section in form.sections if section.isVisible()] == [
        section.title for section in form.sections
    ]
    assert [section.title for section in form.sections if section.seen] == ["Measurements"]


@pytest.mark.parametrize(
    ("place", "name"),
    [
        (Place(field="measurements.waist_girth"), "measurements.waist_girth"),
        (Place(field="underbust_inhale"), "measurements.underbust_inhale"),
        (Place(field="reductions.waist", level="waist"), "reductions.waist"),
        (Place(field="opening_mm"), "opening_mm"),
        (Place(field="rule"), "rule"),
        (Place(field="front.seams", seam=2), "front.seams"),
        (Place(field="back.panels"), "back.panels"),
    ],
)
def test_a_finding_lights_up_the_field_it_names(form: Form, desk: Desk, place: Place, name: str) -> None:
    desk.select(place)
    lit = [row.name for section in form.sections for row in section.rows if row._lit and row.isVisible()]
    assert lit == [name]


def test_the_field_in_hand_lights_up_its_level(form: Form, desk: Desk) -> None:
    row_of(form.measurements, "measurements.waist_girth").field.setFocus()
    assert desk.selection is not None
    assert desk.selection.level == "waist"


def test_everything_has_a_name_for_those_who_do_not_see_it(form: Form) -> None:
    form.all.click()
    controls: list[QWidget] = [
        *form.findChildren(QLineEdit),
        *form.findChildren(QPlainTextEdit),
        *(button for button in form.findChildren(QAbstractButton) if not button.text()),
    ]
    # the clear button of the search box is Qt's own
    own = [control for control in controls if control.parent() is not form.search]
    assert [control for control in own if not control.accessibleName()] == []


def test_nothing_asks_for_more_width_than_the_pane_has(form: Form, desk: Desk) -> None:
    form.all.click()
    desk.apply("One figure", set_rule(desk.project, "one_figure"))
    desk.now()
    assert max(section.minimumSizeHint().width() for section in form.sections) <= 284


def test_the_tab_key_goes_through_a_section_made_late(form: Form) -> None:
    form.reduction.header.click()
    form.reduction.header.setFocus()
    passed = []
    for _ in range(4):
        QTest.keyClick(form.focusWidget(), Qt.Key.Key_Tab)
        passed.append(form.focusWidget().accessibleName())
    assert passed == [
        "Waist and underbust: Own figure each",
        "Bust reduction, round the body",
        "Bust reduction, a quarter",
        "Underbust reduction, round the body",
    ]


def test_a_finding_is_brought_out_from_behind_a_search(form: Form, desk: Desk) -> None:
    form.search.setText("notes")
    desk.select(Place(field="opening_mm"))
    assert row_of(form.reduction, "opening_mm").isVisible()


def test_a_new_project_begins_with_the_first_measurement(form: Form, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    assert form.focusWidget() is row_of(form.measurements, "measurements.bust_girth").field


def test_an_open_project_is_left_alone(form: Form, desk: Desk) -> None:
    form.search.setFocus()
    desk.open_session(Session(bodice()))
    assert form.focusWidget() is form.search


def test_another_project_folds_the_optional_measurements_again(form: Form, desk: Desk) -> None:
    lap = desk.project.with_measurement("waist_to_lap", desk.project.measurements["waist_girth"])
    desk.open_session(Session(lap))
    shown = row_of(form.measurements, "measurements.waist_to_lap").isHidden()
    desk.open_session(Session(bodice()))
    assert (shown, row_of(form.measurements, "measurements.waist_to_lap").isHidden()) == (False, True)


def test_unfolded_measurements_stay_so_through_an_edit(form: Form, desk: Desk) -> None:
    fold = of_kind(form.measurements, FoldRow)
    fold.button.click()
    typed(row_of(form.measurements, "measurements.bust_girth").field, "39")
    desk.now()
    assert not row_of(form.measurements, "measurements.waist_to_lap").isHidden()


def test_the_ribs_under_one_figure_light_up_the_row_that_holds_them(form: Form, desk: Desk) -> None:
    desk.apply("Rule", set_rule(desk.project, "one_figure"))
    desk.now()
    desk.select(Place(field="reductions.underbust", level="underbust"))
    assert row_of(form.reduction, "reductions.waist")._lit


def test_the_seam_through_the_bust_point_shows_where_it_stands(over_bust: Form) -> None:
    outcome = over_bust._desk.picture.outcome
    assert outcome is not None
    field = of_kind(over_bust.shape, SeamRow).fields[0]
    # an upright seam half a bust span from the centre front
    part = 0.5 * outcome.body.value("bust_span") / outcome.blocks["front"]
    assert float(field.text()) == pytest.approx(100 * part, abs=0.006)
    assert not field.isEnabled()


def test_no_word_under_a_field_is_cut_off(qtbot: QtBot, form: Form, desk: Desk) -> None:
    form.all.click()
    typed(row_of(form.reduction, "reductions.waist").field, "9")
    desk.now()
    notes = [note for note in form.findChildren(Note) if note.isVisible()]
    assert len(notes) > 10
    qtbot.waitUntil(lambda: all(note.height() >= note.heightForWidth(note.width()) for note in notes))


def test_a_step_makes_no_new_widgets(form: Form, desk: Desk) -> None:
    form.all.click()
    field = row_of(form.reduction, "reductions.waist").field
    field.setFocus()
    before = len(form.findChildren(QWidget))
    for _ in range(20):
        QTest.keyClick(field, Qt.Key.Key_Up)
        desk.now()
    assert len(form.findChildren(QWidget)) == before

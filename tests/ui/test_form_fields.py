"""Fields of the form: what is typed reaches the project as typed, and nothing else does."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, in_hand, turn_wheel
from workbench.document import Session, set_measurement, set_opening, set_reduction, set_unit
from workbench.ui.desk import Desk
from workbench.ui.form import Form
from workbench.ui.form.field import Field, FigureRow
from workbench.ui.form.section import Section

INCH = 25.4  # international yard and pound agreement 1959, from memory


@pytest.fixture
def form(qtbot: QtBot, desk: Desk) -> Form:
    return in_hand(qtbot, Form(desk), 312, 900)


def row_of(section: Section, name: str) -> FigureRow:
    section.show_opened(True)
    found = next(row for row in section.rows if row.name == name)
    assert isinstance(found, FigureRow)
    return found


def measurement(form: Form, key: str) -> Field:
    return row_of(form.measurements, f"measurements.{key}").field


def typed(field: Field, text: str, key: Qt.Key | None = Qt.Key.Key_Return) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    if key is not None:
        QTest.keyClick(field, key)


def turned(field: Field, notches: int) -> None:
    turn_wheel(field, QPointF(field.rect().center()), 120 * notches)


def test_what_was_taken_over_is_not_for_the_field_to_undo(form: Form, desk: Desk) -> None:
    # or the undo key would change the text and leave the draft as it is
    field = measurement(form, "waist_girth")
    typed(field, "29")
    assert not field.isUndoAvailable()
    typed(field, "30", None)
    assert field.isUndoAvailable()


def test_the_same_length_written_in_another_way_is_taken_over(form: Form, desk: Desk) -> None:
    field = measurement(form, "waist_girth")
    typed(field, " 28 in ")
    assert (field.text(), field.pending) == ("28", False)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("29 1/2", 29.5 * INCH),
        ("29½", 29.5 * INCH),
        ('37 3/8"', 37.375 * INCH),
        ("74.1 cm", 741.0),
        ("741 mm", 741.0),
    ],
)
def test_a_measurement_is_read_as_she_speaks_it(form: Form, desk: Desk, text: str, mm: float) -> None:
    typed(measurement(form, "waist_girth"), text)
    assert desk.project.measurements["waist_girth"].mm == pytest.approx(mm, abs=1e-9)


def test_what_was_typed_comes_back_as_typed(form: Form) -> None:
    field = measurement(form, "waist_girth")
    typed(field, "29 1/2")
    assert field.text() == "29 1/2"


def test_leaving_a_field_hands_in_what_was_typed(form: Form, desk: Desk) -> None:
    typed(measurement(form, "waist_girth"), "30", key=None)
    measurement(form, "bust_girth").setFocus()
    assert desk.project.measurements["waist_girth"].typed == "30"


def test_typing_alone_changes_nothing(form: Form, desk: Desk) -> None:
    before = desk.project
    typed(measurement(form, "waist_girth"), "92.5", key=None)
    assert desk.project is before


def test_escape_brings_back_what_was_there(form: Form, desk: Desk) -> None:
    before, field = desk.project, measurement(form, "waist_girth")
    typed(field, "99", key=Qt.Key.Key_Escape)
    assert (field.text(), desk.project) == ("28", before)


@pytest.mark.parametrize("text", ["nan", "9 1/0", "abc", "1,2,3", "-3", "0", "1e9", "3 in cm"])
def test_what_cannot_be_read_stays_in_the_field_with_one_sentence(form: Form, desk: Desk, text: str) -> None:
    before, row = desk.project, row_of(form.measurements, "measurements.waist_girth")
    typed(row.field, text)
    assert (desk.project, row.field.text()) == (before, text)
    assert row.said.endswith(".")


def test_what_cannot_be_read_survives_another_edit(form: Form, desk: Desk) -> None:
    field = measurement(form, "waist_girth")
    typed(field, "28 1/", key=Qt.Key.Key_Return)
    typed(measurement(form, "bust_girth"), "39")
    desk.now()
    assert field.text() == "28 1/"


def test_what_cannot_be_read_gives_way_to_another_project(form: Form, desk: Desk) -> None:
    field = measurement(form, "waist_girth")
    typed(field, "28 1/")
    desk.open_session(Session(bodice()))
    assert field.text() == "28"


def test_a_refusal_is_told_with_the_name_of_the_field(qtbot: QtBot, form: Form, desk: Desk) -> None:
    with qtbot.waitSignal(desk.refused) as refused:
        typed(measurement(form, "waist_girth"), "much")
    assert refused.args is not None
    assert refused.args[0] == "measurements.waist_girth"
    assert refused.args[1].startswith("Waist: ")


def test_an_emptied_measurement_is_not_taken(form: Form, desk: Desk) -> None:
    field = measurement(form, "underbust_girth")
    field.setFocus()
    field.clear()
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert "underbust_girth" not in desk.project.measurements


def test_an_estimate_is_never_taken_for_a_measurement(form: Form, desk: Desk) -> None:
    field = measurement(form, "top_hip_girth")
    assert (field.text(), field.font().italic()) == ("", True)
    assert field.placeholderText().endswith("estimated")
    field.setFocus()
    QTest.keyClick(field, Qt.Key.Key_Up)
    measurement(form, "bust_girth").setFocus()
    assert "top_hip_girth" not in desk.project.measurements


def test_a_measurement_that_was_taken_is_upright(form: Form) -> None:
    assert not measurement(form, "waist_girth").font().italic()


def test_two_numbers_to_check_stand_beside_the_field(form: Form, desk: Desk) -> None:
    row = row_of(form.measurements, "measurements.underbust_girth")
    typed(row.field, "39")
    assert row.said.startswith("Please check")
    assert "39 in" in row.said
    assert "38 in" in row.said


@pytest.mark.parametrize(("unit", "fraction", "inches"), [("in", 8, 1 / 8), ("in", 16, 1 / 16)])
def test_an_arrow_key_steps_by_the_fraction_shown(
    form: Form, desk: Desk, unit: str, fraction: int, inches: float
) -> None:
    form.units.button((unit, fraction)).click()
    field = measurement(form, "waist_girth")
    field.setFocus()
    QTest.keyClick(field, Qt.Key.Key_Up)
    assert desk.project.measurements["waist_girth"].mm == pytest.approx((28 + inches) * INCH, abs=1e-9)


def test_a_step_from_between_two_marks_goes_to_the_next(form: Form, desk: Desk) -> None:
    field = measurement(form, "waist_girth")
    typed(field, "28.3")
    QTest.keyClick(field, Qt.Key.Key_Down)
    assert desk.project.measurements["waist_girth"].mm == pytest.approx(28.25 * INCH, abs=1e-9)


def test_a_key_held_down_is_one_step_to_undo(form: Form, desk: Desk) -> None:
    before, field = desk.project, measurement(form, "waist_girth")
    field.setFocus()
    for _ in range(5):
        QTest.keyPress(field, Qt.Key.Key_Up)
    QTest.keyRelease(field, Qt.Key.Key_Up)
    desk.undo()
    assert desk.project == before


def test_a_field_that_cannot_be_read_does_not_step(form: Form, desk: Desk) -> None:
    before, field = desk.project, measurement(form, "waist_girth")
    typed(field, "about 28", key=Qt.Key.Key_Up)
    assert desk.project == before


def test_the_wheel_steps_a_field_that_has_the_focus(form: Form, desk: Desk) -> None:
    field = measurement(form, "waist_girth")
    field.setFocus()
    turned(field, -2)
    assert desk.project.measurements["waist_girth"].mm == pytest.approx(27.75 * INCH, abs=1e-9)


def test_the_wheel_over_a_field_without_the_focus_changes_nothing(form: Form, desk: Desk) -> None:
    before = desk.project
    measurement(form, "bust_girth").setFocus()
    turned(measurement(form, "waist_girth"), -2)
    assert desk.project is before


def test_showing_never_edits(form: Form, desk: Desk) -> None:
    project = set_opening(set_reduction(desk.project, "waist", 61.2345), 33.3333)
    desk.open_session(Session(project))
    form.all.click()
    for section in form.sections:
        for row in section.rows:
            for field in getattr(row, "fields", ()):
                field.setFocus()
    desk.now()
    assert desk.project is project


def test_another_unit_changes_no_stored_length(form: Form, desk: Desk) -> None:
    before = desk.project
    for value in (("cm", 8), ("in", 16), ("in", 8)):
        form.units.button(value).click()
        desk.now()
    after = desk.project
    assert (after.measurements, after.design) == (before.measurements, before.design)
    assert after.limits == before.limits


def test_another_unit_is_shown_at_once(form: Form, desk: Desk) -> None:
    form.units.button(("cm", 8)).click()
    desk.now()
    assert measurement(form, "waist_girth").text() == "71.1"


def test_undo_shows_what_was_there_before(form: Form, desk: Desk) -> None:
    field = measurement(form, "waist_girth")
    typed(field, "30")
    desk.undo()
    desk.now()
    assert field.text() == "28"


def test_a_needed_measurement_says_so(qtbot: QtBot, dressed: None) -> None:
    form = Form(Desk())
    qtbot.addWidget(form)
    assert measurement(form, "waist_girth").placeholderText() == "needed"


def test_an_empty_form_accuses_nobody(qtbot: QtBot, dressed: None) -> None:
    form = Form(Desk())
    qtbot.addWidget(form)
    assert [row.said for row in form.measurements.rows if row.said] == []


def test_a_contradiction_is_said_beside_its_field(form: Form, desk: Desk) -> None:
    project = set_measurement(desk.project, "shoulder_to_waist", "14")
    project = set_measurement(project, "shoulder_to_underbust", "15")
    desk.apply("Contradiction", project)
    desk.now()
    said = [row.said for row in form.measurements.rows if row.said]
    assert any("14 in" in words and "15 in" in words for words in said)


def test_an_estimate_is_never_cut_short(form: Form, desk: Desk) -> None:
    project = set_measurement(set_measurement(desk.project, "bust_girth", "148 cm"), "waist_girth", "131 cm")
    desk.apply("Larger", set_unit(project, "cm", 8))
    desk.now()
    fields = [row.field for row in form.measurements.rows if isinstance(row, FigureRow)]
    estimated = [field for field in fields if field.placeholderText()]
    assert len(estimated) > 5
    widths = [field.fontMetrics().horizontalAdvance(field.placeholderText()) for field in estimated]
    assert max(widths) <= min(field.text_room() for field in estimated)

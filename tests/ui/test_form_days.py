"""Measurements by date: begun anew in the form, compared in a dialog, and every step of it on the desk."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import bodice, on_screen
from workbench.document import Session, measure_anew, new_project, set_client, set_measurement, set_unit
from workbench.ui.desk import Desk
from workbench.ui.form import Form
from workbench.ui.form.days_dialog import DaysDialog
from workbench.ui.form.earlier import DaysRow

SPRING, AUTUMN = "2031-04-02", "2031-10-09"


def measured_twice() -> Session:
    """In spring over a shirt, in autumn over nothing and an inch more at the waist."""
    project = set_client(bodice(), date=SPRING, measured_by="Meg", worn="a shirt")
    project = set_measurement(measure_anew(project, AUTUMN), "waist_girth", "29")
    return Session(set_client(project, worn="<b>nothing</b>"))


@pytest.fixture
def twice(dressed: None) -> Desk:
    return Desk(measured_twice())


@pytest.fixture
def dialog(twice: Desk, qtbot: QtBot) -> DaysDialog:
    return on_screen(qtbot, DaysDialog(twice), 720, 640)


def days_row(form: Form) -> DaysRow:
    form.open(form.who)
    row = form.who.row_of("earlier", None)
    assert isinstance(row, DaysRow)
    return row


def test_measuring_anew_is_one_step_and_can_be_undone(desk: Desk, qtbot: QtBot) -> None:
    form = on_screen(qtbot, Form(desk), 320, 700)
    row = days_row(form)
    before = desk.project
    row.anew.click()
    assert [taken.measurements for taken in desk.project.earlier] == [before.measurements]
    assert desk.undo_name == "Measure anew"
    desk.undo()
    assert desk.project == before


def test_nothing_measured_is_nothing_to_do(dressed: None, qtbot: QtBot) -> None:
    form = on_screen(qtbot, Form(Desk(Session(new_project()))), 320, 700)
    row = days_row(form)
    assert (row.anew.isEnabled(), row.days.isEnabled()) == (False, False)
    assert row.label.text() == "Not measured yet."


def test_other_days_are_counted_and_found_by_a_search(twice: Desk, qtbot: QtBot) -> None:
    form = on_screen(qtbot, Form(twice), 320, 700)
    row = days_row(form)
    assert row.label.text() == "One other day is kept."
    form.search.setText("compare days")
    assert row.isVisible()


@pytest.mark.parametrize(
    ("field", "text", "attribute"), [("next_fitting", "2031-11-02", "next_fitting"), ("worn", "lace", "worn")]
)
def test_next_fitting_and_garment_are_fields(
    desk: Desk, qtbot: QtBot, field: str, text: str, attribute: str
) -> None:
    form = on_screen(qtbot, Form(desk), 320, 700)
    form.open(form.who)
    row = form.who.row_of(f"client.{field}", None)
    target = row.target() if row is not None else None
    assert target is not None
    QTest.keyClicks(target, text)
    QTest.keyClick(target, Qt.Key.Key_Return)
    assert getattr(desk.project.client, attribute) == text


def line(dialog: DaysDialog, name: str) -> list[object]:
    row = next(number for number, one in enumerate(dialog.model.lines) if one.name == name)
    return [dialog.model.data(dialog.model.index(row, column)) for column in range(4)]


def test_two_days_stand_side_by_side_with_the_difference(dialog: DaysDialog) -> None:
    assert line(dialog, "Waist") == ["Waist", "28", "29", "+1 in"]
    assert line(dialog, "Bust") == ["Bust", "38", "38", "same"]
    assert "waist +1 in" in dialog.said.accessibleName()


def test_the_difference_follows_her_unit(dialog: DaysDialog, twice: Desk) -> None:
    twice.apply("Unit", set_unit(twice.project, "cm", 8))
    twice.now()
    assert line(dialog, "Waist") == ["Waist", "71.1", "73.7", "+2.5 cm"]


def test_what_is_notable_is_said_to_who_cannot_see_it(dialog: DaysDialog) -> None:
    row = next(number for number, one in enumerate(dialog.model.lines) if one.notable)
    index = dialog.model.index(row, 3)
    assert dialog.model.data(index, Qt.ItemDataRole.AccessibleTextRole) == "+1 in, notable"


def test_the_garments_are_named_as_they_were_written(dialog: DaysDialog) -> None:
    said = dialog.said.accessibleName()
    assert "“a shirt” then, “<b>nothing</b>” later" in said


def test_an_earlier_day_is_drafted_from_again_and_undone(dialog: DaysDialog, twice: Desk) -> None:
    before = twice.project
    dialog.back.click()
    twice.now()
    assert twice.project.client.date == SPRING
    assert twice.project.measurements["waist_girth"].typed == "28"
    assert line(dialog, "Waist")[3] == "−1 in"
    twice.undo()
    assert twice.project == before


def test_the_last_day_removed_closes_the_dialog(dialog: DaysDialog, twice: Desk) -> None:
    dialog.remove.click()
    assert twice.project.earlier == ()
    assert not dialog.isVisible()


def test_what_is_known_of_a_day_can_be_written(dialog: DaysDialog, twice: Desk) -> None:
    entry = dialog.then.entries["measured_by"]
    entry.selectAll()
    QTest.keyClicks(entry, "Joan")
    QTest.keyClick(entry, Qt.Key.Key_Return)
    assert twice.project.earlier[0].measured_by == "Joan"
    worn = dialog.now.entries["worn"]
    worn.selectAll()
    QTest.keyClicks(worn, "lace")
    QTest.keyClick(worn, Qt.Key.Key_Return)
    assert twice.project.client.worn == "lace"


def test_a_date_that_is_none_is_said_and_not_kept(dialog: DaysDialog, twice: Desk) -> None:
    before = twice.project
    entry = dialog.then.entries["date"]
    entry.selectAll()
    QTest.keyClicks(entry, "April")
    QTest.keyClick(entry, Qt.Key.Key_Return)
    assert twice.project == before
    assert "year-month-day" in dialog.said.accessibleName()


def test_a_day_against_itself_is_the_same_and_cannot_be_had_back(dialog: DaysDialog) -> None:
    dialog.then.choice.setCurrentIndex(0)
    dialog.then.choice.activated.emit(0)
    assert {one.difference for one in dialog.model.lines if not one.heading} == {"same"}
    assert (dialog.back.isEnabled(), dialog.remove.isEnabled()) == (False, False)


def test_the_table_is_copied_with_its_days(dialog: DaysDialog) -> None:
    dialog.copy.click()
    rows = QGuiApplication.clipboard().text().splitlines()
    assert rows[0].split("\t") == ["", f"{SPRING}, in", f"{AUTUMN}, in", "difference"]
    assert "Waist\t28\t29\t+1 in" in rows

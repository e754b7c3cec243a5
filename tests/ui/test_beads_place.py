"""The beads place: one act, one look at the plan."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from time import process_time

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QImage, QMouseEvent, QPainter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from tests.beads.garments import RICH
from tests.ui.conftest import bodice, on_screen
from workbench.beads import BeadPlan
from workbench.document import Session, add_run, add_scatter, set_run, set_scatter
from workbench.draft import Place
from workbench.ui.beads import BeadsPlace
from workbench.ui.beads.lists import bead_lines
from workbench.ui.beads.paint_map import KindShown, paint_beads
from workbench.ui.beads.plan_sections import Kinds
from workbench.ui.beads.sections import RunSection, ScatterSection
from workbench.ui.beads.spread import Owner
from workbench.ui.board.view import View
from workbench.ui.desk import Desk
from workbench.ui.quote.inside import field_of_price


@pytest.fixture
def desk(dressed: None) -> Desk:
    return Desk(Session(replace(bodice(), beads=RICH)))


@pytest.fixture
def place(qtbot: QtBot, desk: Desk) -> BeadsPlace:
    place = on_screen(qtbot, BeadsPlace(desk), 1280, 640)
    settle(place)
    return place


def settle(place: BeadsPlace) -> None:
    """As when the hand rests."""
    place._desk.now()
    place.bench.work_out()


def pick(place: BeadsPlace, what: str, number: int, point: int | None = None) -> None:
    place._desk.select(Place(field=f"beads.{what}.{number}.name", point=point))


def pixel_of(place: BeadsPlace, handle: int) -> QPointF:
    return place.map.sight.view.at(*place.map.handles[handle])


def mouse(widget: QWidget, kind: QEvent.Type, at: QPointF, held: bool = True) -> None:
    left, none = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
    button = none if kind == QEvent.Type.MouseMove else left
    key = Qt.KeyboardModifier.NoModifier
    event = QMouseEvent(kind, at, widget.mapToGlobal(at), button, left if held else none, key)
    QApplication.sendEvent(widget, event)


def drag(place: BeadsPlace, start: QPointF, by: QPointF, *, let_go: bool = True) -> None:
    mouse(place.map, QEvent.Type.MouseButtonPress, start)
    for part in (0.3, 0.6, 1.0):
        mouse(place.map, QEvent.Type.MouseMove, QPointF(start.x() + part * by.x(), start.y() + part * by.y()))
    if let_go:
        mouse(place.map, QEvent.Type.MouseButtonRelease, start + by, held=False)


# --- what is shown ------------------------------------------------------------------------


def test_every_run_and_scatter_has_a_section_that_says_how_many(place: BeadsPlace) -> None:
    titles = [section.title for section in place.form.sections]
    assert titles[:6] == ["Edge", "Hem", "Beside", "Swirl", "Front", "Back"]
    assert titles[6:] == ["Kinds of bead", "Kept free of beads", "Reserve and hours"]
    beading = place.bench.worked
    assert beading is not None
    assert beading.beading is not None
    said = place.form.sections[1].header.summary
    assert said == f"{beading.beading.beaded[1].total:,} beads"


def test_a_run_that_is_picked_opens_its_section(place: BeadsPlace) -> None:
    pick(place, "scatters", 0)
    (opened,) = [section for section in place.form.sections if section.opened]
    assert isinstance(opened, ScatterSection)


def test_a_section_that_is_opened_lights_up_its_run(place: BeadsPlace) -> None:
    place.form.sections[2].header.click()
    assert place.map.owner == Owner("runs", 2)


def test_picked_beads_stand_out_from_the_others(place: BeadsPlace) -> None:
    pick(place, "runs", 1)
    picked = sum(int(kind.picked.sum()) for kind in place.map._kinds)
    worked = place.bench.worked
    assert worked is not None
    assert worked.beading is not None
    assert picked == len(worked.beading.beaded[1].beads)


def test_a_bead_that_is_clicked_picks_its_run(place: BeadsPlace) -> None:
    worked, spread = place.bench.worked, place.map.spread
    assert worked is not None
    assert worked.beading is not None
    assert spread is not None
    beads = worked.beading.beaded[1].beads
    x = beads.points[0, 0] + spread.moves[beads.panels[0]]
    at = place.map.sight.view.at(float(x), float(beads.points[0, 1]))
    QTest.mouseClick(place.map, Qt.MouseButton.LeftButton, pos=at.toPoint())
    assert place.map.owner == Owner("runs", 1)


def test_the_list_says_strands_rows_and_hours(place: BeadsPlace) -> None:
    said = "\n".join(line.spoken for line in place.list.model.lines)
    assert "Pearl 4 mm" in said
    assert "strands of 101" in said
    assert "Sewing them on" in said
    assert "places" in said


def test_the_list_is_copied(place: BeadsPlace) -> None:
    place.list.copy.click()
    assert QApplication.clipboard().text().startswith("Beads\n")


def test_the_foot_says_how_many(place: BeadsPlace) -> None:
    said = [finding.text("in") for finding in place._findings(place._desk.picture)]
    assert any("on the garment" in text for text in said)


def test_what_cannot_be_laid_is_said_at_its_field_and_in_the_foot(place: BeadsPlace) -> None:
    pick(place, "runs", 0)
    place._desk.apply("Spacing", set_run(place._desk.project, 0, spacing_mm=0.0))
    settle(place)
    row = place.form.row_at(Place(field="beads.runs.0.spacing_mm"))
    assert row is not None
    assert "no spacing" in row.said
    assert place._findings(place._desk.picture)[0].code == "bead_spacing"


def test_without_a_plan_the_foot_says_what_to_do(qtbot: QtBot, dressed: None) -> None:
    place = on_screen(qtbot, BeadsPlace(Desk(Session(bodice()))), 1280, 640)
    assert place._findings(place._desk.picture)[0].code == "beads_none"
    assert not place.list.view.isVisible()


def test_out_of_sight_nothing_is_worked_out(place: BeadsPlace) -> None:
    place.hide()
    before = place.bench.worked
    place._desk.apply("Rows", set_run(place._desk.project, 1, rows=2, row_mm=7.0))
    settle(place)
    assert place.bench.worked is before


def test_beads_follow_the_draft(place: BeadsPlace) -> None:
    before = place.bench.worked
    design = place._desk.project.design
    changed = replace(design, reductions=replace(design.reductions, waist=60.0))
    place._desk.apply("Waist", replace(place._desk.project, design=changed))
    settle(place)
    after = place.bench.worked
    assert before is not None
    assert after is not None
    assert before.beading is not None
    assert after.beading is not None
    assert before.beading.beaded[1].rows != after.beading.beaded[1].rows


def test_undone_a_run_that_was_added_is_put_away(place: BeadsPlace) -> None:
    place._desk.apply("Add", add_run(place._desk.project, "hem"))
    settle(place)
    place._desk.undo()
    settle(place)
    shown = [section.title for section in place.form.entries if section.isVisible()]
    assert shown == ["Edge", "Hem", "Beside", "Swirl", "Front", "Back"]


def test_findings_of_the_plan_are_of_this_place(place: BeadsPlace) -> None:
    assert place.has("beads.runs.0.spacing_mm")
    assert place.has("beads.per_minute")
    assert not place.has("making.busk_mm")


# --- what she does ------------------------------------------------------------------------


@pytest.mark.parametrize(("entry", "along"), [(0, "neckline"), (1, "hem"), (2, "seam"), (3, "drawn")])
def test_the_menu_adds_a_run_and_opens_it(place: BeadsPlace, entry: int, along: str) -> None:
    place.form.menu.actions()[entry].trigger()
    assert place._desk.project.beads.runs[-1].along == along
    settle(place)
    (opened,) = [section for section in place.form.sections if section.opened]
    assert isinstance(opened, RunSection)
    assert opened.owner == Owner("runs", 4)


def test_the_menu_adds_a_scatter(place: BeadsPlace) -> None:
    place.form.menu.actions()[4].trigger()
    assert len(place._desk.project.beads.scatters) == 3


def test_a_point_is_dragged_in_one_step(place: BeadsPlace) -> None:
    pick(place, "runs", 3)
    before = place._desk.project.beads.runs[3].points
    drag(place, pixel_of(place, 0), QPointF(6, 30))
    after = place._desk.project.beads.runs[3].points
    assert after[0] != before[0]
    assert after[1:] == before[1:]
    place._desk.undo()
    assert place._desk.project.beads.runs[3].points == before


def test_escape_takes_the_drag_back(place: BeadsPlace) -> None:
    pick(place, "runs", 3)
    before = place._desk.project
    drag(place, pixel_of(place, 0), QPointF(6, 30), let_go=False)
    QTest.keyClick(place.map, Qt.Key.Key_Escape)
    assert place._desk.project == before
    assert not place._desk.gesturing


def test_a_double_click_adds_a_point_to_the_picked_line(place: BeadsPlace) -> None:
    pick(place, "runs", 3)
    spread = place.map.spread
    assert spread is not None
    box = spread.panels[2].outline.boundingRect()
    at = place.map.sight.view.at(box.center().x(), box.center().y())
    QTest.mouseDClick(place.map, Qt.MouseButton.LeftButton, pos=at.toPoint())
    assert len(place._desk.project.beads.runs[3].points) == 3


def test_a_double_click_on_a_point_makes_it_a_corner(place: BeadsPlace) -> None:
    pick(place, "runs", 3)
    QTest.mouseDClick(place.map, Qt.MouseButton.LeftButton, pos=pixel_of(place, 0).toPoint())
    assert not place._desk.project.beads.runs[3].points[0].smooth


def test_keys_go_from_point_to_point_move_one_and_take_it_out(place: BeadsPlace) -> None:
    pick(place, "runs", 3)
    QTest.keyClick(place.map, Qt.Key.Key_N)
    assert place.map.point == 0
    before = place._desk.project.beads.runs[3].points[0]
    QTest.keyClick(place.map, Qt.Key.Key_Up)
    assert place._desk.project.beads.runs[3].points[0].t == pytest.approx(before.t + 3.175)
    QTest.keyClick(place.map, Qt.Key.Key_Delete)
    assert len(place._desk.project.beads.runs[3].points) == 1


def test_the_line_of_a_scatter_is_dragged_too(place: BeadsPlace) -> None:
    pick(place, "scatters", 0)
    before = place._desk.project.beads.scatters[0].thin_to
    drag(place, pixel_of(place, 0), QPointF(0, -40))
    assert place._desk.project.beads.scatters[0].thin_to[0].t > before[0].t + 5


def test_arrows_go_from_panel_to_panel(place: BeadsPlace) -> None:
    QTest.keyClick(place.map, Qt.Key.Key_Right)
    QTest.keyClick(place.map, Qt.Key.Key_Right)
    assert place._desk.selection == Place(panel=1)


def row_at(place: BeadsPlace, field: str) -> QWidget:
    place._desk.select(Place(field=field))
    row = place.form.row_at(Place(field=field))
    assert row is not None
    return row


def entered(place: BeadsPlace, field: str, text: str) -> None:
    entry = row_at(place, field).field  # type: ignore[attr-defined]  # every figure has one
    entry.setText(text)
    entry.entered.emit(text)


@pytest.mark.parametrize(
    ("field", "text", "read"),
    [
        ("beads.runs.0.spacing_mm", "1/2", lambda plan: plan.runs[0].spacing_mm == 12.7),
        ("beads.runs.0.rows", "3", lambda plan: plan.runs[0].rows == 3),
        ("beads.runs.0.start", "25", lambda plan: plan.runs[0].start == 0.25),
        ("beads.runs.2.seam", "4", lambda plan: plan.runs[2].seam == 4),
        ("beads.runs.0.name", "Top", lambda plan: plan.runs[0].name == "Top"),
        ("beads.scatters.0.per_square_inch", "12", lambda plan: plan.scatters[0].per_square_inch == 12),
        ("beads.scatters.0.seed", "7", lambda plan: plan.scatters[0].seed == 7),
        ("beads.scatters.0.mix.1", "5", lambda plan: plan.scatters[0].mix[1].weight == 5),
        ("beads.bands.arm_mm", "2", lambda plan: plan.bands.arm_mm == 50.8),
        ("beads.reserve_percent", "20", lambda plan: plan.reserve_percent == 20),
        ("beads.per_minute", "4.5", lambda plan: plan.per_minute == 4.5),
        ("beads.kinds.size_mm", "4.5", lambda plan: plan.kinds[0].size_mm == 4.5),
        ("beads.kinds.per_inch", "6", lambda plan: plan.kinds[0].per_inch == 6),
        ("beads.kinds.per_inch", "", lambda plan: plan.kinds[0].per_inch is None),
        ("beads.kinds.per_strand", "98", lambda plan: plan.kinds[0].per_strand == 98),
        ("beads.kinds.price", "3.50", lambda plan: plan.kinds[0].price == Decimal("3.50")),
    ],
)
def test_figures_are_typed_in_the_form(
    place: BeadsPlace, field: str, text: str, read: Callable[[BeadPlan], bool]
) -> None:
    entered(place, field, text)
    assert read(place._desk.project.beads)


def test_a_figure_that_is_none_stays_in_its_field_and_says_why(place: BeadsPlace) -> None:
    before = place._desk.project
    entered(place, "beads.runs.0.rows", "2.5")
    row = place.form.row_at(Place(field="beads.runs.0.rows"))
    assert row is not None
    assert "whole ones" in row.said
    assert place._desk.project == before


def test_in_centimetres_a_density_is_said_by_the_square_centimetre(place: BeadsPlace) -> None:
    place._desk.apply("Unit", replace(place._desk.project, unit="cm"))
    settle(place)
    entered(place, "beads.scatters.0.per_square_inch", "2")
    assert place._desk.project.beads.scatters[0].per_square_inch == pytest.approx(12.9032)


def test_kinds_are_pressed_into_the_pattern_and_taken_out(place: BeadsPlace) -> None:
    row = row_at(place, "beads.runs.1.pattern")
    row.kinds.buttons[1].click()  # type: ignore[attr-defined]  # of a pattern
    assert place._desk.project.beads.runs[1].pattern == ("Pearl 4 mm", "Pearl 6 mm")
    row.front.click()  # type: ignore[attr-defined]
    assert list(place._desk.project.beads.runs[1].pattern) == ["Pearl 6 mm"]


def test_panels_are_pressed_into_a_scatter(place: BeadsPlace) -> None:
    row = row_at(place, "beads.scatters.0.panels")
    row.buttons[4].click()  # type: ignore[attr-defined]  # of panels
    assert place._desk.project.beads.scatters[0].panels == (0, 1, 2, 4)


def test_a_kind_is_picked_marked_and_removed(place: BeadsPlace) -> None:
    place.form.kinds.header.click()
    place.form.kinds.pick(2)
    row = row_at(place, "beads.kinds.mark")
    row.buttons["bar"].click()  # type: ignore[attr-defined]  # of marks
    assert place._desk.project.beads.kinds[2].mark == "bar"
    place.form.kinds.on_remove()
    assert len(place._desk.project.beads.kinds) == 4


def test_a_kind_in_use_is_not_removed_and_that_is_said(place: BeadsPlace) -> None:
    place.form.kinds.header.click()
    place.form.kinds.on_remove()
    assert len(place._desk.project.beads.kinds) == 5
    assert "take it out there first" in place.form.kinds._remove.said


def test_a_run_is_removed_and_had_back(place: BeadsPlace) -> None:
    place.form.sections[0].header.click()
    place.form.sections[0].findChildren(QPushButton, "quiet")[-1].click()
    assert [run.name for run in place._desk.project.beads.runs] == ["Hem", "Beside", "Swirl"]
    place._desk.undo()
    assert len(place._desk.project.beads.runs) == 4


def test_everything_that_takes_the_focus_has_a_name(place: BeadsPlace) -> None:
    for number in range(len(place.form.sections)):
        place.form.sections[number].header.click()
        settle(place)
        for widget in place.findChildren(QWidget):
            if widget.isVisible() and widget.focusPolicy() & Qt.FocusPolicy.TabFocus:
                named = widget.accessibleName() or getattr(widget, "text", str)()
                assert named, widget


# --- how quickly --------------------------------------------------------------------------


def test_ten_thousand_beads_are_painted_for_sixty_frames_a_second(dressed: None) -> None:
    points = np.random.default_rng(1).random((10_000, 2)) * np.array([700.0, 300.0])
    kind = KindShown("disc", 2.1, points, np.ones(10_000, np.bool_))
    image = QImage(1280, 720, QImage.Format.Format_ARGB32_Premultiplied)
    times = []
    for step in range(8):
        view = View(1.7, 20.0 + step, 600.0)
        painter = QPainter(image)
        began = process_time()
        paint_beads(painter, kind, view, QRectF(0, 0, 1280, 720), 1.0)
        times.append(process_time() - began)
        painter.end()
    assert min(times) < 1 / 60


def test_panning_places_no_bead_anew(place: BeadsPlace) -> None:
    before = place.bench.worked
    place.map.sight.show_view(place.map.sight.view.panned(30, 10))
    place.map.repaint()
    assert place.bench.worked is before


def test_a_plan_is_shown_while_it_is_edited_in_the_middle_of_a_gesture(place: BeadsPlace) -> None:
    place._desk.begin("Density")
    place._desk.preview(set_scatter(place._desk.project, 1, per_square_inch=8.0))
    settle(place)
    place._desk.commit()
    worked = place.bench.worked
    assert worked is not None
    assert worked.picture.project.beads.scatters[1].per_square_inch == 8.0


def test_an_empty_scatter_over_the_first_panel_is_enough_to_begin_with(qtbot: QtBot, dressed: None) -> None:
    desk = Desk(Session(add_scatter(bodice())))
    place = on_screen(qtbot, BeadsPlace(desk), 1280, 640)
    settle(place)
    worked = place.bench.worked
    assert worked is not None
    assert worked.beading is not None
    assert worked.beading.count.total > 0
    assert bead_lines(worked.beading, desk.project)[0].text == "To buy"


def test_a_click_on_paper_lets_go_of_a_run(place: BeadsPlace) -> None:
    pick(place, "runs", 1)
    QTest.mouseClick(place.map, Qt.MouseButton.LeftButton, pos=QPoint(3, 3))
    assert place._desk.selection is None


def test_a_price_that_is_missing_leads_to_the_kind_of_bead(place: BeadsPlace, desk: Desk) -> None:
    kinds = place.form.row_at(Place(field="beads.kinds.1.price"))
    assert kinds is not None
    assert kinds.name == "beads.kinds.price"
    names = [row for row in place.form.sections if isinstance(row, Kinds)]
    assert names[0].number == 1


@pytest.mark.parametrize(
    ("key", "field"),
    [(f"beads/{RICH.kinds[1].name}", "beads.kinds.1.price"), ("cord", "quoting.prices.cord")],
)
def test_the_field_of_a_price(desk: Desk, key: str, field: str) -> None:
    assert field_of_price(key, desk.project) == field

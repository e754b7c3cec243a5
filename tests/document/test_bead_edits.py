"""Edits of the bead plan, and what the plan comes to in quote, order of work and report."""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal

import pytest

from tests.document import example
from tests.document.bead_values import BEADED
from workbench.document import (
    Project,
    add_kind,
    add_line_point,
    add_run,
    add_scatter,
    add_usual_kinds,
    line_of,
    move_line_point,
    picture_of,
    printed_beads,
    remove_kind,
    remove_line_point,
    remove_run,
    remove_scatter,
    report,
    report_text,
    set_bands,
    set_beading,
    set_hours,
    set_kind,
    set_measurement,
    set_panels,
    set_price,
    set_quoting,
    set_run,
    set_scatter,
    toggle_line_corner,
)
from workbench.document.beading import BEADING_STEP, bead_notions
from workbench.document.carry_beads import carried_beads
from workbench.draft import ShapePoint


def beaded() -> Project:
    return replace(example(), beads=BEADED)


def test_the_first_run_brings_the_usual_kinds() -> None:
    project = add_run(example(), "neckline")
    assert len(project.beads.kinds) == 5
    (run,) = project.beads.runs
    assert (run.name, run.pattern, run.spacing_mm) == ("Neckline", ("Pearl 4 mm",), 8.0)
    assert add_run(project, "neckline").beads.runs[1].name == "Neckline 2"


def test_a_run_has_its_figures_set_one_by_one() -> None:
    project = set_run(beaded(), 0, rows=3, pattern=("Pearl 8 mm",), start=0.1)
    assert (project.beads.runs[0].rows, project.beads.runs[0].start) == (3, 0.1)
    assert project.beads.runs[1:] == BEADED.runs[1:]


@pytest.mark.parametrize(
    ("changes", "named"),
    [({"rows": 0}, "rows"), ({"spacing_mm": -1.0}, "spacing"), ({"pattern": ("Moon",)}, "Moon"),
     ({"start": 0.9, "end": 0.2}, "start"), ({"colour": "red"}, "colour"), ({"name": "Hem "}, "name"),
     ({"name": "down the SEAM"}, "name")],
)  # fmt: skip
def test_what_is_no_run_is_refused_by_name(changes: dict[str, object], named: str) -> None:
    with pytest.raises(ValueError, match=named):
        set_run(beaded(), 0, **changes)  # type: ignore[arg-type]  # entries by name


def test_a_kind_carries_its_new_name_to_all_that_name_it() -> None:
    project = set_kind(beaded(), 0, name="Ivory 4")
    assert project.beads.runs[0].pattern == ("Pearl 6 mm", "Ivory 4")
    assert project.beads.scatters[0].mix[0].kind == "Ivory 4"


def test_a_kind_in_use_stays_and_one_that_is_not_goes() -> None:
    with pytest.raises(ValueError, match="is in the run “Edge”"):
        remove_kind(beaded(), 0)
    assert "Pearl 8 mm" not in {kind.name for kind in remove_kind(beaded(), 2).beads.kinds}
    only = remove_run(remove_run(beaded(), 2), 0)
    with pytest.raises(ValueError, match="is in the scatter “Front”"):
        remove_kind(only, 0)


def test_kinds_come_with_names_of_their_own() -> None:
    project = add_kind(add_kind(add_usual_kinds(add_usual_kinds(example()))))
    names = [kind.name for kind in project.beads.kinds]
    assert names[-2:] == ["New bead", "New bead 2"]
    assert len(names) == len(set(names)) == 7


def test_a_scatter_that_is_to_thin_out_ends_at_the_waist_first() -> None:
    project = set_scatter(add_scatter(example(), (0, 1)), 0, thin_from="hem")
    assert line_of(project, "scatters", 0) == (ShapePoint(0.0, 0.0), ShapePoint(6.0, 0.0))
    assert remove_scatter(project, 0).beads.scatters == ()


def test_points_of_a_line_are_moved_added_turned_and_taken_out() -> None:
    project = move_line_point(beaded(), "runs", 2, 1, 1.8, 30.0)
    assert line_of(project, "runs", 2)[1] == ShapePoint(1.8, 30.0)
    project = add_line_point(project, "runs", 2, 1.0, 0.0)
    assert [point.u for point in line_of(project, "runs", 2)] == [0.3, 1.0, 1.8]
    project = add_line_point(project, "runs", 2, 2.4, 40.0)
    assert line_of(project, "runs", 2)[-1] == ShapePoint(2.4, 40.0)
    project = toggle_line_corner(project, "runs", 2, 1)
    assert not line_of(project, "runs", 2)[1].smooth
    assert len(line_of(remove_line_point(project, "runs", 2, 0), "runs", 2)) == 3
    with pytest.raises(ValueError, match="point of the line no"):
        remove_line_point(project, "runs", 2, 8)


def test_bands_reserve_and_rate() -> None:
    project = set_beading(set_bands(beaded(), arm_mm=50.0), per_minute=5.0, reserve_percent=20.0)
    assert (project.beads.bands.arm_mm, project.beads.per_minute) == (50.0, 5.0)
    with pytest.raises(ValueError, match="arm_mm"):
        set_bands(beaded(), arm_mm=-1.0)
    with pytest.raises(ValueError, match="an edit of its own"):
        set_beading(beaded(), runs=1.0)


# --- what follows -------------------------------------------------------------------------


def priced() -> Project:
    project = beaded()
    for number in range(5):
        project = set_kind(project, number, price=Decimal("3.50"))
    return set_quoting(project, rate=Decimal(20))


def test_strands_and_hours_are_in_the_quote() -> None:
    picture = picture_of(priced())
    assert picture.beading is not None
    assert picture.quote is not None
    lines = {line.key: line for line in picture.quote.inside}
    for kind in picture.beading.count.kinds:
        line = lines[f"beads/{kind.kind.name}"]
        assert line.amount == kind.strands * Decimal("3.50")
    hours = next(line for line in picture.quote.inside if line.name == BEADING_STEP)
    assert hours.amount == picture.beading.count.hours * 20


def test_a_kind_without_a_price_is_said_in_the_quote() -> None:
    quote = picture_of(beaded()).quote
    assert quote is not None
    assert "Pearl 4 mm" in quote.unpriced


def test_a_price_for_beads_of_any_kind_serves_those_without_one() -> None:
    project = set_price(beaded(), "beads", Decimal("2.00"))
    quote = picture_of(project).quote
    assert quote is not None
    assert "Pearl 4 mm" not in quote.unpriced


def test_her_own_hours_for_beads_come_first() -> None:
    project = set_hours(priced(), BEADING_STEP, Decimal(7))
    quote = picture_of(project).quote
    assert quote is not None
    (line,) = [line for line in quote.inside if line.name == BEADING_STEP]
    assert line.amount == 140


def test_without_beads_nothing_is_worked_out() -> None:
    picture = picture_of(example())
    assert picture.beading is None
    assert picture.quote is not None
    assert all(not line.key.startswith("beads/") for line in picture.quote.inside)


def test_beads_are_lent_on_while_nothing_of_them_changes() -> None:
    before = picture_of(beaded())
    beading = before.beading
    assert picture_of(set_quoting(beaded(), rate=Decimal(30)), before).beading is beading
    assert picture_of(set_bands(beaded(), arm_mm=0.0), before).beading is not beading


def test_sewing_them_on_is_a_step_of_the_work() -> None:
    steps = {step.key for step in picture_of(beaded()).sewing}
    assert "sewing.beads" in steps
    stages = {step.stage for step in picture_of(beaded()).sewing if step.key == "sewing.beads"}
    assert stages == {BEADING_STEP}


def test_the_report_has_every_bead_and_every_count() -> None:
    data = json.loads(json.dumps(report(picture_of(beaded()), "test")))["beads"]
    assert data["total"] == sum(kind["total"] for kind in data["kinds"])
    whole = sum(1 if bead["once"] else 2 for laid in data["laid"] for bead in laid["beads"])
    assert whole == data["total"] > 0
    assert json.loads(json.dumps(report(picture_of(example()), "test")))["beads"] is None


def test_findings_of_the_plan_are_among_all_findings() -> None:
    project = set_run(beaded(), 0, spacing_mm=0.0)
    assert "bead_spacing" in {finding.code for finding in picture_of(project).all_findings}


def test_the_shopping_list_says_how_many_and_why() -> None:
    beading = picture_of(beaded()).beading
    assert beading is not None
    (first, *_) = bead_notions(beading)
    assert first.count == beading.count.kinds[0].with_reserve
    assert "10 % in reserve" in first.worked_out("in", 8)


def test_drawn_lines_keep_their_part_of_the_way_on_another_body() -> None:
    one, other = (
        picture_of(beaded()).outcome,
        picture_of(set_measurement(example(), "waist_girth", "26")).outcome,
    )
    assert one is not None
    assert other is not None
    assert carried_beads(BEADED, one.levels, one.levels) == BEADED
    longer = tuple(replace(level, walk=2 * level.walk) for level in one.levels)
    points = carried_beads(BEADED, one.levels, longer).runs[2].points
    assert [point.t for point in points] == pytest.approx([2 * point.t for point in BEADED.runs[2].points])
    assert carried_beads(BEADED, one.levels, other.levels).kinds == BEADED.kinds


def test_the_plan_is_printed_and_what_is_not_beaded_is_not() -> None:
    project = beaded()
    assert printed_beads(picture_of(project), project.paper).startswith(b"%PDF")
    with pytest.raises(ValueError, match="Nothing is beaded yet"):
        printed_beads(picture_of(example()), project.paper)


def test_the_report_to_read_lists_what_to_buy_and_every_row() -> None:
    picture = picture_of(priced())
    said = report_text(picture)
    assert picture.beading is not None
    assert "Beads to buy" in said
    for line in picture.beading.count.kinds:
        assert f"{line.with_reserve:,}" in said
    assert "row 1" in said
    assert "Beads to buy" not in report_text(picture_of(example()))


def test_another_number_of_panels_leaves_beads_where_they_are_on_the_body() -> None:
    project = set_run(beaded(), 1, seam=3)
    wider = set_panels(project, "front", 4)
    assert [point.u for point in line_of(wider, "runs", 2)] == pytest.approx([0.4, 1.6 * 4 / 3])
    assert wider.beads.runs[1].seam == 4
    assert wider.beads.scatters[0].panels == (0, 1, 2)
    assert line_of(wider, "scatters", 0)[-1].u == 7.0
    back = set_panels(wider, "back", 2)
    assert back.beads.runs[1].seam == 4
    assert line_of(back, "scatters", 0)[-1].u == 6.0
    assert not {finding.code for finding in picture_of(back).all_findings} & {"bead_no_seam", "bead_no_panel"}


@pytest.mark.parametrize("count", [2, 4])
def test_a_seam_stays_in_its_quarter(count: int) -> None:
    project = set_panels(set_run(beaded(), 1, seam=5), "back", count)
    assert 3 < project.beads.runs[1].seam < project.design.panel_count

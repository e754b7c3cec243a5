"""Runs: as many beads as the line has spacings, in their pattern, the same on both halves."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import shapely

from tests.beads.garments import KINDS, LACED, PLAIN, RICH, beading, bodice, with_runs
from workbench.beads import Along, BeadBands, BeadPlan, BeadRun, drawn_parts
from workbench.draft import ShapePoint

OPEN = BeadBands(0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
ABOVE = (ShapePoint(1.0, 500.0), ShapePoint(2.0, 520.0))
BEFORE = (ShapePoint(-3.0, 0.0), ShapePoint(-2.0, 5.0))
HEM = BeadRun("Hem", "hem", ("Pearl 4 mm",), 6.0, inset_mm=10.0)


def free(run: BeadRun) -> BeadPlan:
    return replace(with_runs(run), bands=OPEN)


def panels() -> tuple:  # type: ignore[type-arg]  # of panels
    draft = bodice().draft
    assert draft is not None
    return draft.panels


@pytest.mark.parametrize("along", ["neckline", "hem"])
@pytest.mark.parametrize("spacing", [4.0, 6.5, 11.0])
def test_a_row_has_as_many_places_as_its_length_has_spacings(along: Along, spacing: float) -> None:
    run = replace(HEM, along=along, spacing_mm=spacing)
    (row,) = beading(free(run), PLAIN).beaded[0].rows
    # measured with shapely: the parallel of every panel's edge between its sides
    outside = 0.0
    for panel in panels():
        edge = shapely.linestrings(panel.neckline if along == "neckline" else panel.hem)
        cloth = shapely.polygons(panel.outline)
        ring = shapely.boundary(shapely.buffer(edge, 10.0, quad_segs=64, cap_style="flat"))
        within = shapely.intersection(ring, shapely.buffer(cloth, -9.0))
        outside += shapely.length(within)
    assert row.length > outside
    assert row.asked == int(row.length / spacing + 1e-6) + 1


def test_the_length_of_a_row_on_a_seam_is_that_of_its_parallel() -> None:
    run = BeadRun("Beside", "seam", ("Pearl 4 mm",), 5.0, seam=2, towards="front", inset_mm=12.0)
    (row,) = beading(free(run), PLAIN).beaded[0].rows
    side = shapely.linestrings(panels()[1].right)
    cloth = shapely.polygons(panels()[1].outline)
    # the border of all that lies within 12 mm of the seam, where it is inside the panel
    border = shapely.boundary(shapely.buffer(side, 12.0, quad_segs=64))
    parallel = shapely.length(shapely.intersection(border, cloth))
    assert row.length == pytest.approx(parallel, abs=0.5)
    assert row.placed == row.asked or row.asked - row.placed <= 2


def test_beads_of_a_row_stand_one_spacing_apart_along_it() -> None:
    run = BeadRun("Beside", "seam", ("Pearl 4 mm",), 5.0, seam=2, towards="front", inset_mm=12.0)
    beads = beading(free(run), PLAIN).beaded[0].beads
    steps = np.hypot(*np.diff(beads.points, axis=0).T)
    assert steps.max() <= 5.0 + 1e-6
    assert steps.min() >= 4.98


def test_the_pattern_comes_round_again() -> None:
    run = BeadRun("Beside", "seam", ("Pearl 6 mm", "Pearl 4 mm", "Pearl 4 mm"), 6.0, seam=2, towards="back",
                  inset_mm=14.0, start=0.2, end=0.8)  # fmt: skip
    names = [KINDS[kind].name for kind in beading(free(run), PLAIN).beaded[0].beads.kinds]
    assert names[:6] == ["Pearl 6 mm", "Pearl 4 mm", "Pearl 4 mm"] * 2


def test_start_and_end_are_shares_of_the_line() -> None:
    (whole,) = beading(free(HEM), PLAIN).beaded[0].rows
    (half,) = beading(free(replace(HEM, start=0.25, end=0.75)), PLAIN).beaded[0].rows
    assert half.length == pytest.approx(0.5 * whole.length)


def test_rows_lie_their_distance_apart() -> None:
    one, two = (
        beading(free(replace(HEM, inset_mm=inset)), PLAIN).beaded[0].rows[0].length for inset in (10.0, 16.0)
    )
    rows = beading(free(replace(HEM, rows=2, row_mm=6.0)), PLAIN).beaded[0].rows
    assert [row.length for row in rows] == pytest.approx([one, two])


def test_a_bead_on_the_fold_is_one_on_the_garment_and_every_other_one_two() -> None:
    each = beading(free(HEM), PLAIN).beaded[0]
    assert each.beads.once.sum() == 1
    assert each.total == 2 * len(each.beads) - 1
    apart = beading(free(HEM), replace(PLAIN, front="busk")).beaded[0]
    assert not apart.beads.once.any()
    assert apart.total == 2 * len(apart.beads)


def test_what_is_left_free_is_counted_and_said() -> None:
    beads = beading(with_runs(HEM), LACED)
    (row,) = beads.beaded[0].rows
    assert row.placed == len(beads.beaded[0].beads) < row.asked
    (finding,) = beads.findings
    assert finding.code == "bead_left_out"
    assert f"{row.asked - row.placed} of {row.asked} places" in finding.text("in")


def test_a_drawn_line_goes_through_its_points_and_meets_itself_at_the_seam() -> None:
    draft = bodice().draft
    assert draft is not None
    points = (ShapePoint(0.3, -20.0), ShapePoint(1.4, 30.0), ShapePoint(2.5, -10.0))
    parts, past = drawn_parts(points, draft.surface)
    assert [panel for panel, _ in parts] == [0, 1, 2]
    assert not past
    for point, (panel, line) in zip(points, parts, strict=True):
        x, y, own = draft.surface.point(point.u, point.t)
        assert own == panel
        assert shapely.distance(shapely.linestrings(line), shapely.points(x, y)) < 0.02
    walks = [draft.surface.locate(panel, *line[end])[1] for panel, line, end in
             ((0, parts[0][1], -1), (1, parts[1][1], 0))]  # fmt: skip
    assert walks[0] == pytest.approx(walks[1], abs=1e-6)
    assert draft.surface.locate(0, *parts[0][1][-1])[0] == pytest.approx(1.0)


def test_two_points_make_a_straight_line_where_the_half_lies_unrolled() -> None:
    draft = bodice().draft
    assert draft is not None
    (part,), _ = drawn_parts((ShapePoint(0.2, 0.0), ShapePoint(0.8, 0.0)), draft.surface)
    for x, y in part[1][::7]:
        assert draft.surface.locate(0, x, y)[1] == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize(
    ("changes", "code", "entry"),
    [
        ({"spacing_mm": 0.0}, "bead_spacing", "spacing_mm"),
        ({"spacing_mm": 3.9}, "bead_overlap", "spacing_mm"),
        ({"rows": 2, "row_mm": 3.0}, "bead_overlap", "row_mm"),
        ({"pattern": ("Pearl 4 mm", "Pearl 8 mm"), "spacing_mm": 5.9}, "bead_overlap", "spacing_mm"),
        ({"along": "seam", "seam": 6}, "bead_no_seam", "seam"),
        ({"along": "drawn"}, "bead_no_line", "points"),
        ({"along": "drawn", "points": ABOVE}, "bead_outside", "points"),
        ({"along": "drawn", "points": BEFORE}, "bead_outside", "points"),
        ({"inset_mm": 900.0}, "bead_no_row", "inset_mm"),
        ({"inset_mm": 0.0}, "bead_none", "inset_mm"),
        ({"spacing_mm": 0.06, "pattern": ("Dust",), "rows": 20, "row_mm": 1.0}, "bead_overlap", "spacing_mm"),
    ],
)  # fmt: skip
def test_a_run_that_cannot_be_laid_says_why_and_lays_nothing(
    changes: dict[str, object], code: str, entry: str
) -> None:
    run = replace(HEM, **changes)  # type: ignore[arg-type]  # entries by name
    kinds = (*KINDS, replace(KINDS[0], name="Dust", size_mm=1.0))
    beads = beading(replace(with_runs(run), kinds=kinds))
    assert beads.count.total == 0
    (finding,) = beads.findings
    assert (finding.severity, finding.code) == ("attend", code)
    assert finding.place.field == f"beads.runs.0.{entry}"
    assert "Hem" in finding.text("in")


def test_too_many_beads_of_a_run_are_none() -> None:
    runs = [
        BeadRun(f"Run {n}", "seam", ("Dust",), 1.0, seam=1 + n % 5, rows=40, row_mm=1.0, inset_mm=2.0)
        for n in range(10)
    ]
    kinds = (*KINDS, replace(KINDS[0], name="Dust", size_mm=1.0))
    beads = beading(BeadPlan(kinds=kinds, runs=tuple(runs), bands=OPEN), PLAIN)
    refused = [finding for finding in beads.findings if finding.code == "bead_too_many"]
    assert len(beads.all) <= 20_000
    for finding in refused:
        number = int((finding.place.field or "").split(".")[2])
        assert beads.beaded[number].total == 0


def test_a_line_that_leaves_the_panels_has_beads_where_it_is_on_them() -> None:
    run = replace(HEM, along="drawn", points=(ShapePoint(0.5, 0.0), ShapePoint(0.5, 400.0)))
    beads = beading(with_runs(run), PLAIN)
    assert beads.beaded[0].total > 0
    assert beads.findings[0].code == "bead_outside"
    assert "leaves the panels" in beads.findings[0].text("cm")


def test_the_plan_follows_the_draft() -> None:
    one, other = beading(RICH), beading(RICH, outcome=bodice(60.0))
    assert one.beaded[1].rows != other.beaded[1].rows

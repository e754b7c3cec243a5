"""The report: as data for other programs, and as lines to read."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest
import shapely

from tests.document import example
from workbench.body import CAUTIONS
from workbench.document import (
    NoDraftError,
    Project,
    picture_of,
    report,
    report_text,
    set_client,
    set_measurement,
    set_opening,
    set_pin,
    set_reduction,
    set_rule,
    set_unit,
)

Data = dict[str, Any]


def data_of(project: Project) -> Data:
    read: Data = json.loads(json.dumps(report(picture_of(project), "client"), allow_nan=False))
    return read


def in_round_the_body() -> Project:
    """Bust 38, waist and underbust 34, one figure, 2 in a quarter (common practice, no source)."""
    project = set_rule(Project(), "one_figure")
    for key, typed in (("bust_girth", "38"), ("waist_girth", "34"), ("underbust_girth", "34")):
        project = set_measurement(project, key, typed)
    project = set_measurement(project, "top_hip_girth", "38")
    return set_reduction(project, "waist", 8 * 25.4)


def test_the_sum_on_paper_and_what_it_hides() -> None:
    """Intake 3 in a quarter; 8 in round the body, 23.5 %, finished 26 in (common practice, no source)."""
    data = data_of(in_round_the_body())
    waist = next(level for level in data["levels"] if level["name"] == "waist")
    assert waist["body_girth_mm"] == pytest.approx(34 * 25.4)
    assert waist["finished_girth_mm"] == pytest.approx(26 * 25.4)
    assert waist["reduction_mm"] == pytest.approx(8 * 25.4)
    assert waist["reduction_per_quarter_mm"] == pytest.approx(2 * 25.4)
    assert waist["reduction_percent"] == pytest.approx(23.529, abs=0.001)
    assert (waist["status"], waist["limit"]) == ("over", pytest.approx(3.4 * 25.4))
    for quarter in ("front", "back"):
        assert data["intake"][quarter]["waist"]["needed_mm"] == pytest.approx(3 * 25.4)
        assert data["intake"][quarter]["waist"]["placed_mm"] == pytest.approx(3 * 25.4)


def test_finished_less_opening_is_cloth() -> None:
    for level in data_of(set_opening(example(), 33))["levels"]:
        assert level["fabric_girth_mm"] == pytest.approx(level["finished_girth_mm"] - 33)


def test_takings_add_up_to_what_is_placed_and_pins_are_told() -> None:
    data = data_of(set_pin(example(), "front", 1, "waist", 9.0))
    for quarter in data["intake"].values():
        for line in quarter.values():
            total = sum(each["left_mm"] + each["right_mm"] for each in line["takings"])
            assert total == pytest.approx(line["placed_mm"], abs=1e-9)
    assert [each["pinned"] for each in data["intake"]["front"]["waist"]["takings"]] == [True, False, False]


def test_panels_are_polygons_of_the_area_that_is_told() -> None:
    """Areas and validity against shapely."""
    for panel in data_of(example("over_bust"))["panels"]:
        polygon = shapely.Polygon(panel["stitch_outline_mm"])
        assert polygon.is_valid
        assert polygon.exterior.is_ccw
        assert panel["area_mm2"] == pytest.approx(polygon.area, rel=1e-12)


def test_widths_of_all_panels_come_to_the_tape_girth() -> None:
    data = data_of(set_opening(example(), 40))
    for level in data["levels"]:
        widths = sum(panel["width_mm"][level["name"]] for panel in data["panels"])
        assert data["tape_girth_mm"][level["name"]] == pytest.approx(2 * widths + 40, abs=1e-9)
        assert data["tape_girth_mm"][level["name"]] == pytest.approx(level["finished_girth_mm"], abs=0.1)


def test_seams_name_the_panels_they_join() -> None:
    data = data_of(example())
    names = [panel["name"] for panel in data["panels"]]
    for seam, left, right in zip(data["seams"], names, names[1:], strict=False):
        assert (seam["left"], seam["right"]) == (left, right)
        assert seam["left_length_mm"] == pytest.approx(seam["right_length_mm"], abs=0.01)
        for line in ("neckline", "hem"):
            if seam[f"{line}_smooth"]:
                assert seam[f"{line}_angle_sum"] == pytest.approx(180, abs=0.5)


def test_findings_carry_their_figures() -> None:
    data = data_of(in_round_the_body())
    over = next(each for each in data["comfort"]["findings"] if each["severity"] == "over")
    assert over["value"] > over["limit"]
    assert "above the limit you set" in over["text"]
    assert data["findings"][0] in data["comfort"]["findings"]
    assert data["comfort"]["largest_reduction_mm"] < 8 * 25.4


def test_estimates_are_told_apart_from_what_was_taken() -> None:
    measured = data_of(example())["measurements"]
    assert measured["waist_girth"] == {"mm": 704.85, "estimated": False, "typed": "27 3/4", "unit": "in"}
    assert measured["bust_span"]["estimated"]
    assert measured["bust_span"]["typed"] is None
    lines = report_text(picture_of(example())).splitlines()
    assert not next(line for line in lines if line.startswith("  Waist ")).endswith("estimate")
    assert next(line for line in lines if line.startswith("  Bust point to bust point")).endswith("estimate")


def test_same_project_gives_the_same_report() -> None:
    assert report(picture_of(example()), "a") == report(picture_of(example()), "a")
    assert report_text(picture_of(example())) == report_text(picture_of(example()))


def test_text_says_both_ways_of_a_reduction_and_the_limit_first() -> None:
    text = report_text(picture_of(set_client(in_round_the_body(), name="Example", invented=True)))
    head = text.splitlines()
    assert head[0] == "Example"
    assert head.index("ABOVE THE LIMIT YOU SET") < head.index("Measurements")
    assert "8 in round the body (2 in a quarter, 23.5 %)" in text
    assert not re.search(r"[0-9¼½¾⅛⅜⅝⅞]\n +(in|cm|%)", text)
    assert "invented for demonstration" in text
    assert "safe" not in text.lower()


def test_text_ends_with_every_caution() -> None:
    text = " ".join(report_text(picture_of(example())).split())
    end = text[text.index("Cautions") :]
    for caution in CAUTIONS:
        assert " ".join(caution.split()) in end


def test_text_in_centimetres_shows_no_inches() -> None:
    text = report_text(picture_of(set_unit(example(), "cm", 8)))
    assert not re.search(r"[0-9¼½¾⅛⅜⅝⅞] in\b", text.partition("Measurements")[2])
    assert "widths in centimetres" in text
    assert "70.5 cm" in text


def test_columns_stand_under_their_headings() -> None:
    lines = report_text(picture_of(example())).splitlines()
    start = lines.index("Panels, widths in inches") + 1
    heading, *rows = lines[start : start + 7]
    for word in ("waist", "top hip", "area"):
        end = heading.index(word) + len(word)
        assert all(len(row) == end or row[end] == " " for row in rows if len(row) >= end)


def test_what_cannot_be_drafted_is_not_reported() -> None:
    for project in (Project(), set_reduction(example(), "waist", 690)):
        for make in (lambda p: report(p, "x"), report_text):
            with pytest.raises(NoDraftError, match=r"\.$"):
                make(picture_of(project))


def test_please_check_is_part_of_the_report() -> None:
    project = set_measurement(example(), "top_hip_girth", "27")
    checks = data_of(project)["checks"]
    assert checks
    assert checks[0].startswith("Please check")
    assert "Please check" in report_text(picture_of(project))

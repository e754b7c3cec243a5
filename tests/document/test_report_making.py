"""What is cut and bought, in the report: as data, and as lines to read."""

from __future__ import annotations

import json
import math
from collections import Counter
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
import shapely
from hypothesis import given, settings

from tests.document import example, makings
from workbench.document import (
    Project,
    picture_of,
    report,
    report_text,
    set_allowance_of,
    set_boning,
    set_front,
    set_lacing,
    set_layer_made,
    set_unit,
)
from workbench.document.report_making import cutting_data
from workbench.document.text_lines import Said
from workbench.document.text_making import making_lines
from workbench.pieces import (
    AngleRow,
    Bone,
    Cutting,
    Layer,
    Making,
    Notch,
    Notion,
    Piece,
    PieceEdge,
    WalkRow,
)

Data = dict[str, Any]

SQUARE = np.array([(0.0, 0.0), (80.0, 0.0), (80.0, 200.0), (0.0, 200.0)])
NOTCH = Notch((92.7, 100.0), (-1.0, 0.0), 1, "right", 0.0, 1, "level", "waist")


def a_piece(name: str, **changes: Any) -> Piece:
    """A square of cloth with half an inch at its right side (invented)."""
    edge = PieceEdge("right", "seam", SQUARE[1:3], 12.7, 1)
    cut = np.array([(0.0, 0.0), (92.7, 0.0), (92.7, 200.0), (0.0, 200.0)])
    whole = Piece(
        key=f"fashion/{name}",
        name=name,
        layer="fashion",
        count=2,
        mirrored=True,
        on_fold=False,
        panel=0,
        stitch=SQUARE,
        cut=cut,
        edges=(edge,),
        notches=(NOTCH,),
        grain=((40.0, 20.0), (40.0, 180.0)),
        marks=(),
    )
    return replace(whole, **changes)


def a_bone(where: str, cut: float, count: int = 2) -> Bone:
    line = np.array([(0.0, 0.0), (0.0, cut + 20.0)])
    return Bone(
        place="seams",
        where=where,
        stuff="spiral_steel",
        count=count,
        line=line,
        panel=0,
        stitch_length=cut + 20,
        wanted_length=cut + 1,
        cut_length=cut,
        shorter=cut - 12.7,
        lost=1.0,
        tightest_radius=math.inf,
    )


def made(**changes: Any) -> Cutting:
    """A cutting put together by hand, in which everything holds."""
    on_fold = a_piece("Front 1", count=1, mirrored=False, on_fold=True)
    shell = (on_fold, a_piece("Front 2"), a_piece("Back 1"))
    whole = Cutting(
        layers=(Layer("fashion", "Fashion cloth", "Seen.", shell), Layer("lining", "Lining", "", ())),
        bones=(a_bone("front seam 1", 254.0), a_bone("side seam", 203.2), a_bone("centre front", 254.0, 1)),
        opening=None,
        busk_mm=None,
        notions=(
            Notion("bone/spiral_steel/254", "Spiral steel", 3, 762.0, "Said above.", {}),
            Notion("tips", "Bone tips", 10, None, "Two for each of 5.", {}),
            Notion("cord", "Lacing cord", 1, 5000.0, "{gap} each time.", {"gap": 254.0}),
        ),
        walks=(WalkRow("fashion", 1, "front seam 1", "whole seam", 200.0, 200.004, True),),
        angles=(AngleRow(1, "front seam 1", "hem", 180.0, True, True),),
        findings=(),
    )
    return replace(whole, **changes)


BROKEN = made(
    walks=(
        WalkRow("fashion", 1, "front seam 1", "whole seam", 200.0, 200.0, True),
        WalkRow("fashion", 2, "side seam", "waist to underbust", 76.2, 69.85, False),
    )
)
STEPPED = made(angles=(AngleRow(2, "side seam", "neckline", 171.3, True, False),))


def lines_of(cutting: Cutting, project: Project | None = None) -> str:
    return "\n".join(making_lines(cutting, Said(project or example())))


def data_of(project: Project) -> Data:
    read: Data = json.loads(json.dumps(report(picture_of(project), "client"), allow_nan=False))
    return read


def test_pieces_as_data() -> None:
    front, other, _ = json.loads(json.dumps(cutting_data(made(), example())))["pieces"]
    assert (front["name"], front["count"], front["mirrored"], front["on_fold"]) == ("Front 1", 1, False, True)
    assert (other["count"], other["mirrored"], other["layer"]) == (2, True, "fashion")
    assert shapely.Polygon(other["cut_outline_mm"]).area == pytest.approx(92.7 * 200)
    assert shapely.Polygon(other["stitch_outline_mm"]).area == pytest.approx(80 * 200)
    assert other["notches_mm"] == [[92.7, 100.0]]
    assert (other["notches"][0]["edge"], other["notches"][0]["count"]) == ("right", 1)
    assert other["grain"] == [[40, 20], [40, 180]]


def test_bones_and_notions_as_data() -> None:
    data = json.loads(json.dumps(cutting_data(made(), example()), allow_nan=False))
    bone = data["bones"][0]
    assert (bone["where"], bone["stock"], bone["count"]) == ("front seam 1", "spiral steel", 2)
    assert (bone["stitch_length_mm"], bone["cut_length_mm"], bone["lost_mm"]) == (274.0, 254.0, 1.0)
    assert bone["tightest_radius_mm"] is None
    assert data["notions"][2]["how"] == "10 in each time."
    assert cutting_data(made(), set_unit(example(), "cm", 8))["notions"][2]["how"] == "25.4 cm each time."


@pytest.mark.parametrize(("cutting", "holds"), [(made(), True), (BROKEN, False), (STEPPED, False)])
def test_walk_check_holds_only_where_all_of_it_holds(cutting: Cutting, holds: bool) -> None:
    check = cutting_data(cutting, example())["walk_check"]
    assert check["holds"] is holds
    assert all(row["holds"] for row in (*check["rows"], *check["angles"])) is holds


def test_broken_seam_is_said_with_both_lengths() -> None:
    """3 in against 2 3/4 in is a quarter of an inch."""
    said = lines_of(BROKEN)
    assert "2 seams, 2 lengths compared, at most 0.250 in apart: look at those below." in said
    assert "side seam, waist to underbust: 3 in against 2¾ in, 0.250 in apart." in said
    assert "every pair meets" in lines_of(made())
    assert "Neckline, side seam: 171.3°" in lines_of(STEPPED)


def test_pieces_and_bones_in_words() -> None:
    said = lines_of(made())
    assert "- Fashion cloth: Front 1 cut 1 on the fold; Front 2, Back 1 cut 2 (left and right)." in said
    assert "Lining" not in said
    assert "- Spiral steel: 3 of 10 in, 2 of 8 in; 5 bones, 46 in end to end." in said


def test_notions_in_words() -> None:
    """5 m are 5.47 yards: the next eighth is 5 1/2. Bones of one length are said in their own list."""
    said = lines_of(made())
    assert "- Bone tips, 10. Two for each of 5." in said
    assert "- Lacing cord, 5½ yd. 10 in each time." in said
    assert "- Lacing cord, 5.0 m. 25.4 cm each time." in lines_of(made(), set_unit(example(), "cm", 8))
    assert "Said above" not in said


def test_report_has_a_piece_of_every_panel_in_the_shell() -> None:
    data = data_of(set_front(example(), "fold"))
    shell = [piece for piece in data["pieces"] if piece["layer"] == "fashion"]
    assert [piece["name"] for piece in shell] == [panel["name"] for panel in data["panels"]]
    assert [piece["on_fold"] for piece in shell] == [True] + 5 * [False]
    for piece, panel in zip(shell, data["panels"], strict=True):
        assert shapely.Polygon(piece["stitch_outline_mm"]).area == pytest.approx(panel["area_mm2"], rel=1e-3)
        assert shapely.Polygon(piece["cut_outline_mm"]).is_valid
    assert data["walk_check"]["rows"]
    assert data["walk_check"]["angles"]
    assert data["walk_check"]["holds"]


def test_report_follows_the_making() -> None:
    usual = data_of(example())
    wide = data_of(set_allowance_of(example(), "seam", 20))
    assert wide["making"]["allowances"]["seam"] == 20
    area = [shapely.Polygon(data["pieces"][1]["cut_outline_mm"]).area for data in (usual, wide)]
    assert area[0] < area[1]
    without = data_of(set_layer_made(example(), "lining", False))
    assert "lining" in {piece["layer"] for piece in usual["pieces"]}
    assert "lining" not in {piece["layer"] for piece in without["pieces"]}
    split = data_of(set_front(example(), "busk"))
    assert not any(piece["on_fold"] for piece in split["pieces"] if piece["layer"] == "fashion")
    assert split["busk_mm"] is not None
    assert usual["busk_mm"] is None
    assert data_of(set_lacing(example(), closing="side_zip"))["lacing_walks_mm"] is None


def test_steel_is_cut_to_the_half_inch_and_never_longer_than_its_line() -> None:
    """Sold by the half inch, a quarter to half an inch short at each end (common practice, no source)."""
    for bone in data_of(example())["bones"]:
        assert bone["cut_length_mm"] / 12.7 == pytest.approx(round(bone["cut_length_mm"] / 12.7))
        left = bone["stitch_length_mm"] - bone["cut_length_mm"]
        assert left == pytest.approx(2 * 9.525 + bone["lost_mm"])
        assert 0 <= bone["lost_mm"] < 12.7


def test_findings_of_the_cutting_stand_among_the_others() -> None:
    project = set_boning(example(), clearance_mm=250)
    usual, short = (Counter(each["code"] for each in data_of(p)["findings"]) for p in (example(), project))
    assert (short - usual)["bone_too_short"] > 0
    assert "Take less clearance" in " ".join(report_text(picture_of(project)).split())


def test_text_has_the_new_sections_in_order_and_within_its_width() -> None:
    for project in (example("over_bust"), set_unit(example(), "cm", 8)):
        lines = report_text(picture_of(project)).splitlines()
        places = [
            next(number for number, line in enumerate(lines) if line.startswith(title))
            for title in ("Seams", "Pieces", "Bones", "Notions", "Walk check", "What to look at")
        ]
        assert places == sorted(places)
        assert max(map(len, lines[places[1] : places[-1]])) <= 100


@given(makings(example().design.panel_count))
@settings(max_examples=25, deadline=None)
def test_whatever_making_a_file_may_hold_is_reported(making: Making) -> None:
    """It may be of no use; then that is a finding, and never the end of the report."""
    data = data_of(replace(example(), making=making))
    made = {choice.layer for choice in making.layers if choice.made}
    assert {piece["layer"] for piece in data["pieces"]} <= made
    for finding in data["findings"]:
        assert finding["text"].endswith(".")
        assert "{" not in finding["text"]
    assert all("{" not in notion["how"] for notion in data["notions"])
    assert report_text(picture_of(replace(example(), making=making)))

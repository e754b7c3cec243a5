"""Bones: where they lie, how long they are cut, and what would hurt or not hold.

The figures are common practice, no source: 1/4 to 1/2 in shorter than the seam at each
end, steel by the half inch, plastic to any length, a channel 1/16 to 1/8 in wider.
"""

from __future__ import annotations

from dataclasses import replace
from math import inf

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.draft.strategies import bodies, designs
from tests.pieces.figures import drafted, outcome, outcome_of
from workbench.body import Body
from workbench.draft import Design, Finding, Outcome, Style, usual_design, work_out
from workbench.pieces.bone_lines import channel_width
from workbench.pieces.bones import bones_of, stock_length
from workbench.pieces.making import BonePlace, BoneStuff, Boning, Closing, FrontMade, Making, Opening
from workbench.pieces.polyline import length_of, part_of, tightest_radius
from workbench.pieces.result import Bone

INCH = 25.4
EVERYWHERE: tuple[BonePlace, ...] = ("seams", "mid_panel", "beside_opening", "centre_front")


def making(places: tuple[BonePlace, ...] = EVERYWHERE, **boning: object) -> Making:
    return Making(boning=Boning(places=places, **boning))  # type: ignore[arg-type]


def at(place: BonePlace, made: Making, drawn: Outcome | None = None) -> list[Bone]:
    bones, _ = bones_of(drawn or outcome(), made)
    return [bone for bone in bones if bone.place == place]


def codes(findings: tuple[Finding, ...]) -> set[str]:
    return {finding.code for finding in findings}


@pytest.mark.parametrize(
    ("wanted", "stuff", "sold"),
    [
        (10 * INCH, "flat_steel", 10 * INCH),
        (10 * INCH - 0.01, "spiral_steel", 9.5 * INCH),
        (9.74 * INCH, "flat_steel", 9.5 * INCH),
        (1.9 * INCH, "flat_steel", 0.0),
        (247.9, "plastic", 247.0),
        (0.4, "plastic", 0.0),
        (-30.0, "spiral_steel", 0.0),
    ],
)
def test_a_bone_is_cut_down_to_what_is_sold(wanted: float, stuff: BoneStuff, sold: float) -> None:
    assert stock_length(wanted, stuff, Boning()) == pytest.approx(sold, abs=1e-6)


def test_another_step_of_the_shop_is_kept_to() -> None:
    assert stock_length(248.0, "flat_steel", Boning(steel_step_mm=20.0)) == 240.0


@pytest.mark.parametrize("style", ["under_bust", "over_bust"])
def test_every_bone_ends_a_quarter_to_half_an_inch_and_a_step_from_the_edge(style: Style) -> None:
    for bone in bones_of(outcome(style), making())[0]:
        free = 0.5 * (bone.stitch_length - bone.cut_length)
        assert INCH / 4 <= free < INCH / 2 + INCH / 4, bone.where
        assert bone.cut_length / (INCH / 2) == pytest.approx(round(bone.cut_length / (INCH / 2)))
        assert bone.shorter == pytest.approx(bone.cut_length - INCH / 2)
        assert bone.lost == pytest.approx(bone.stitch_length - 0.75 * INCH - bone.cut_length)


def test_a_channel_is_a_sixteenth_to_an_eighth_wider_than_its_bone() -> None:
    assert INCH / 16 <= channel_width(Boning()) - Boning().width_mm <= INCH / 8


def test_each_seam_has_one_on_either_side_of_the_body() -> None:
    bones = at("seams", making())
    seams = drafted(outcome()).seams
    assert [bone.where for bone in bones] == [seam.name for seam in seams]
    assert [bone.stitch_length for bone in bones] == pytest.approx([seam.left_length for seam in seams])
    assert {bone.count for bone in bones} == {2}
    assert "side seam" in {bone.where for bone in bones}


def test_a_seam_bone_lies_in_the_middle_of_its_seam() -> None:
    draft = drafted(outcome())
    for bone in at("seams", making()):
        seam = shapely.LineString(draft.panels[bone.panel].right)
        low, high = (seam.project(shapely.Point(bone.line[end])) for end in (0, -1))
        assert high - low == pytest.approx(bone.cut_length, abs=1e-6)
        assert low == pytest.approx(seam.length - high, abs=1e-6)
        assert seam.buffer(1e-6).covers(shapely.LineString(bone.line))


def test_a_mid_panel_bone_runs_halfway_between_the_seams_from_hem_to_neckline() -> None:
    draft = drafted(outcome())
    bones = at("mid_panel", making(stuff="plastic", clearance_mm=0.0))
    assert [bone.where for bone in bones] == [f"middle of {panel.name}" for panel in draft.panels]
    for bone in bones:
        for x, y in bone.line[1:-1:12]:
            assert draft.surface.locate(bone.panel, x, y)[0] - bone.panel == pytest.approx(0.5, abs=1e-6)
        panel, (low, high) = draft.panels[bone.panel], bone.line[[0, -1]]
        assert shapely.LineString(panel.hem).distance(shapely.Point(low)) <= 0.51
        assert shapely.LineString(panel.neckline).distance(shapely.Point(high)) <= 0.51


@pytest.mark.parametrize(("closing", "rim"), [("loops", 0.0), ("eyelets", 0.1875 * INCH)])
def test_two_flat_steels_hold_what_the_cord_pulls_at(closing: Closing, rim: float) -> None:
    """The rim of an eyelet is 3/8 in across: common practice, no source."""
    opening = Opening(closing=closing, set_in_mm=16.0)
    made = replace(making(), opening=opening)
    edge, half = drafted(outcome()).panels[-1].right[0, 0], 0.5 * channel_width(made.boning)
    before, beyond = (edge - bone.line[:, 0] for bone in at("beside_opening", made))
    assert np.ptp(before) == pytest.approx(0, abs=1e-9)
    assert half <= before[0] <= 16.0 - rim - half
    assert beyond == pytest.approx(16.0 + rim + half)
    assert {bone.stuff for bone in at("beside_opening", made)} == {"flat_steel"}
    assert {bone.count for bone in at("beside_opening", made)} == {2}


def test_one_bone_lies_on_the_fold_and_two_beside_a_busk() -> None:
    (fold,) = at("centre_front", making())
    assert fold.count == 1
    assert fold.line[:, 0] == pytest.approx(0)
    (beside,) = at("centre_front", replace(making(), front="busk"))
    assert beside.count == 2
    assert beside.line[:, 0] == pytest.approx(0.5 * INCH + 0.5 * channel_width(Boning()))
    assert beside.stuff == "flat_steel"


def test_a_zip_takes_the_place_of_one_side_bone_and_has_one_before_and_one_behind() -> None:
    made = replace(making(), opening=Opening(closing="side_zip"))
    bones, _ = bones_of(outcome(), made)
    assert [bone.count for bone in bones if bone.where == "side seam"] == [1]
    before, behind = (bone for bone in bones if bone.place == "beside_opening")
    draft = drafted(outcome())
    inset = 0.25 * INCH + 0.5 * channel_width(Boning())
    for bone, side in ((before, draft.panels[2].right), (behind, draft.panels[3].left)):
        away = shapely.distance(shapely.LineString(side), shapely.points(bone.line[2:-2]))
        assert away == pytest.approx(inset, abs=0.05)
        assert bone.count == 1


def test_only_the_places_asked_for_have_bones() -> None:
    for place in EVERYWHERE:
        bones, _ = bones_of(outcome(), making((place,)))
        assert {bone.place for bone in bones} == {place}
    assert bones_of(outcome(), making(())) == ((), ())


def test_the_radius_of_an_arc_is_found_and_a_straight_line_has_none() -> None:
    turn = np.linspace(-0.5, 0.5, 80)
    arc = 180.0 * np.stack((np.cos(turn), np.sin(turn)), axis=-1)
    assert tightest_radius(arc) == pytest.approx(180.0, rel=1e-3)
    straight = np.array([[30.0, 0.0], [0.0, 60.0], [-30.0, 120.0]])
    assert tightest_radius(straight) == inf


def test_a_stretch_of_a_line_is_as_long_as_asked() -> None:
    line = np.array([[0.0, 0.0], [3.0, 4.0], [3.0, 14.0]])
    assert part_of(line, 2.5, 9.0) == pytest.approx(np.array([[1.5, 2.0], [3.0, 4.0], [3.0, 8.0]]))
    assert length_of(part_of(line, 2.5, 9.0)) == pytest.approx(6.5)
    assert len(part_of(line, 0.0, 15.0)) == len(line)


def test_a_seam_counts_as_curved_as_its_tighter_side() -> None:
    draft = drafted(outcome())
    for seam, bone in zip(draft.seams, at("seams", making()), strict=True):
        sides = draft.panels[seam.index - 1].right, draft.panels[seam.index].left
        assert bone.tightest_radius == pytest.approx(min(tightest_radius(side) for side in sides))


def test_the_usual_bodice_has_nothing_to_look_at() -> None:
    assert bones_of(outcome(), Making())[1] == ()


def test_flat_steel_in_a_curve_tighter_than_her_limit_is_named() -> None:
    bones, findings = bones_of(outcome(), making(("seams",), stuff="flat_steel", flat_radius_mm=300.0))
    curved = [bone.where for bone in bones if bone.tightest_radius < 300.0]
    assert curved
    assert [finding.words["bone"] for finding in findings] == curved
    assert codes(findings) == {"flat_steel_in_curve"}
    assert "you set" in findings[0].text("in")
    assert bones_of(outcome(), making(("seams",), stuff="spiral_steel", flat_radius_mm=300.0))[1] == ()


def test_a_bone_nearer_than_a_quarter_inch_to_the_edge_would_stab() -> None:
    bones, findings = bones_of(outcome(), making(("seams",), clearance_mm=2.0))
    near = [bone.where for bone in bones if bone.stitch_length - bone.cut_length < INCH / 2]
    assert near
    assert [finding.words["bone"] for finding in findings] == near
    assert "stabs" in findings[0].text("cm")


def test_what_is_nearer_than_a_quarter_inch_is_not_said_to_be_a_quarter_inch() -> None:
    # 5 mm at each end is 0.197 in, to the nearest eighth 1/4
    _, findings = bones_of(outcome(), making(("seams",), stuff="plastic", clearance_mm=5.0))
    assert findings
    assert all("it ends ⅛ in from the finished edge" in finding.text("in") for finding in findings)


def test_clearance_longer_than_the_seam_leaves_the_bones_out_and_names_each() -> None:
    bones, findings = bones_of(outcome(), making(("seams",), clearance_mm=200.0))
    assert bones == ()
    assert [finding.words["bone"] for finding in findings] == [s.name for s in drafted(outcome()).seams]
    assert codes(findings) == {"bone_too_short"}
    assert [finding.place.seam for finding in findings] == [1, 2, 3, 4, 5]


def test_a_channel_needs_room_between_edge_and_eyelets() -> None:
    made = replace(Making(), opening=Opening(closing="eyelets", set_in_mm=9.525))
    (finding,) = bones_of(outcome(), made)[1]
    assert finding.code == "eyelets_near_edge"
    enough = replace(made, opening=replace(made.opening, set_in_mm=finding.lengths["least"]))
    assert bones_of(outcome(), enough)[1] == ()


def test_a_panel_narrower_than_the_inset_gets_no_bone_and_is_named() -> None:
    made = replace(making(("beside_opening",)), opening=Opening(set_in_mm=60.0))
    bones, findings = bones_of(outcome(), made)
    assert [bone.where for bone in bones] == ["centre back between edge and loops"]
    assert [(f.code, f.place.panel) for f in findings] == [("no_room_for_bone", 5)]


def test_a_panel_narrower_than_a_channel_gets_no_bone_up_its_middle() -> None:
    """The narrowest panel of this body is 34.6 mm wide, the next 39.5."""
    bones, findings = bones_of(outcome(), making(("mid_panel",), width_mm=35.0))
    assert len(bones) == 5
    assert [(f.code, f.words["bone"]) for f in findings] == [("no_room_for_bone", "middle of Front 3")]


def test_a_mid_panel_bone_that_runs_into_one_beside_the_eyelets_is_said() -> None:
    places: tuple[BonePlace, ...] = ("mid_panel", "beside_opening")
    near = replace(making(places), opening=Opening(set_in_mm=20.0))
    (finding,) = bones_of(outcome(), near)[1]
    assert finding.code == "bones_overlap"
    assert "middle of Back 3" in finding.text("in")
    assert bones_of(outcome(), replace(near, opening=Opening(set_in_mm=9.525)))[1] == ()


def test_without_a_draft_there_are_no_bones() -> None:
    refused = outcome_of(replace(usual_design(), opening_mm=5000.0))
    assert refused.draft is None
    assert bones_of(refused, Making()) == ((), ())


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    body=bodies(),
    design=designs(),
    stuff=st.sampled_from(["flat_steel", "spiral_steel", "plastic"]),
    clearance=st.floats(0, 60),
    closing=st.sampled_from(["loops", "eyelets", "side_zip"]),
    front=st.sampled_from(["fold", "busk"]),
)
def test_bones_lie_in_their_panels_and_never_outgrow_them(
    body: Body, design: Design, stuff: BoneStuff, clearance: float, closing: Closing, front: FrontMade
) -> None:
    drawn = work_out(body, design)
    made = replace(
        making(stuff=stuff, clearance_mm=clearance),
        opening=Opening(closing=closing),
        front=front,
    )
    bones, findings = bones_of(drawn, made)
    assert all(len(finding.text(unit)) > 30 for finding in findings for unit in ("in", "cm"))
    if drawn.draft is None:
        assert bones == ()
        return
    for bone in bones:
        panel = shapely.Polygon(drawn.draft.panels[bone.panel].outline).buffer(0.02)
        assert panel.covers(shapely.LineString(bone.line)), bone.where
        assert length_of(bone.line) == pytest.approx(bone.cut_length, abs=1e-6)
        assert bone.cut_length <= bone.stitch_length - 2 * clearance + 1e-6
        assert bone.lost < (1.0 if bone.stuff == "plastic" else INCH / 2) + 1e-6
        assert bone.shorter < bone.cut_length
        assert bone.line[0, 1] < bone.line[-1, 1]
    left_out = {f.words["bone"] for f in findings if f.code in ("bone_too_short", "no_room_for_bone")}
    panels = design.panel_count
    assert len(bones) + len(left_out) == (panels - 1) + panels + 2 + 1

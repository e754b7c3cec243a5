"""The shopping list, each line worked again here. Rules are common practice, no source, unless said."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from math import isfinite

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.draft.strategies import bodies, designs
from tests.pieces.figures import drafted, outcome, outcome_of
from workbench.body import Body, read_length, say_with_unit
from workbench.draft import Design, Outcome, usual_design, work_out
from workbench.pieces.bones import bones_of
from workbench.pieces.busk import busk_of
from workbench.pieces.making import Allowances, Boning, Closing, LayerName, Making, Opening, OwnAllowance
from workbench.pieces.measured import measured_of
from workbench.pieces.notions import notions_of
from workbench.pieces.opening import opening_of
from workbench.pieces.result import Layer, Notion, Piece, PieceEdge
from workbench.pieces.sewing import sewn_lengths
from workbench.pieces.work import layer_of

INCH = 25.4
FLATS = Making(boning=Boning(stuff="flat_steel", flat_radius_mm=0.0))


def listed(made: Making, drawn: Outcome | None = None, layers: tuple[Layer, ...] = ()) -> dict[str, Notion]:
    drawn = drawn or outcome()
    bones, opening, busk = bones_of(drawn, made)[0], opening_of(drawn, made)[0], busk_of(drawn, made)[0]
    notions = notions_of(drawn, made, bones, opening, busk, layers)
    assert len({notion.key for notion in notions}) == len(notions)
    return {notion.key: notion for notion in notions}


def said(notion: Notion) -> str:
    return notion.how.format(**{name: say_with_unit(mm, "in") for name, mm in notion.lengths.items()})


def strip(
    layer: LayerName, width: float, height: float, count: int, edges: tuple[PieceEdge, ...] = ()
) -> Layer:
    ring = np.array([[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]])
    grain = ((0.0, 0.0), (0.0, height))
    piece = Piece(f"{layer}/1", "", layer, count, False, False, None, ring, ring, edges, (), grain, ())
    return Layer(layer, "", "", (piece,))


def round_the_garment(line: str) -> float:
    """Twice the lengths of a line's pieces in the half, by shapely."""
    return 2 * sum(
        float(shapely.LineString(getattr(panel, line)).length) for panel in drafted(outcome()).panels
    )


def test_bones_are_grouped_by_what_they_are_and_how_long() -> None:
    bones, _ = bones_of(outcome(), Making())
    wanted: Counter[tuple[str, float]] = Counter()
    for bone in bones:
        wanted[bone.stuff, bone.cut_length] += bone.count
    lines = {key: notion for key, notion in listed(Making()).items() if key.startswith("bone/")}
    assert {(key.split("/")[1], line.lengths["each"]): line.count for key, line in lines.items()} == wanted
    for line in lines.values():
        assert line.length_mm == pytest.approx((line.count or 0) * line.lengths["each"])


def test_all_bones_together_are_the_sum_of_their_lines() -> None:
    notions = listed(Making())
    lines = [notion for key, notion in notions.items() if key.startswith("bone/")]
    assert notions["bones"].count == sum(line.count or 0 for line in lines) == 1 + 5 * 2 + 2 * 2
    assert notions["bones"].length_mm == pytest.approx(sum(line.length_mm or 0 for line in lines))
    assert "4 flat steel and 11 spiral steel" in said(notions["bones"])


def test_a_bone_line_says_where_they_go_and_how_they_were_cut() -> None:
    lines = [notion for key, notion in listed(Making()).items() if key.startswith("bone/")]
    together = " ".join(said(line) for line in lines)
    for bone in bones_of(outcome(), Making())[0]:
        assert f"{bone.count} × {bone.where}" in together
    assert "⅜ in at each end" in together
    assert "½ in it is sold by" in together


def test_plastic_is_cut_to_length() -> None:
    lines = [n for key, n in listed(Making(boning=Boning(stuff="plastic"))).items() if "plastic" in key]
    assert lines
    assert all("cut to length" in said(line) for line in lines)


def test_a_spiral_has_a_tip_at_either_end_and_a_flat_steel_none() -> None:
    assert listed(Making())["tips"].count == 2 * (1 + 5 * 2)
    assert "tips" not in listed(FLATS)


def test_a_bone_cut_to_any_length_is_never_said_longer_than_it_may_be() -> None:
    lines = [n for key, n in listed(Making(boning=Boning(stuff="plastic"))).items() if "bone/plastic" in key]
    assert any(round(n.lengths["each"] / INCH * 8) * INCH / 8 > n.lengths["each"] for n in lines)
    for notion in lines:
        said = re.findall(r"of ([^ ]+) in", notion.worked_out("in", 8))[0]
        assert read_length(said, "in").mm <= notion.lengths["each"] + 1e-6


def test_channels_run_from_hem_to_neckline_along_every_bone() -> None:
    draft = drafted(outcome())
    made = Making(boning=Boning(places=("seams",)))
    wanted = sum(2 * shapely.LineString(draft.panels[k].right).length for k in range(5))
    assert listed(made)["channels"].length_mm == pytest.approx(wanted)


def test_no_bones_leave_nothing_about_bones_on_the_list() -> None:
    keys = set(listed(Making(boning=Boning(places=()))))
    assert keys == {"loops", "cord", "binding", "thread"}


@pytest.mark.parametrize(("pitch", "at_waist"), [(1.0, 0.5), (0.5, 1.0), (0.75, 0.75)])
def test_the_pitch_at_the_waist_is_said_of_the_waist(pitch: float, at_waist: float) -> None:
    made = Making(opening=Opening(pitch_mm=pitch * INCH, waist_pitch_mm=at_waist * INCH))
    lengths = listed(made)["loops"].lengths
    # stretched or shrunk by the same part: their ratio is what was asked for
    ratio = lengths.get("waist_pitch", lengths["pitch"]) / lengths["pitch"]
    assert ratio == pytest.approx(at_waist / pitch, rel=0.02)
    assert ("at the waist" in said(listed(made)["loops"])) is (pitch != at_waist)


@pytest.mark.parametrize("closing", ["loops", "eyelets"])
def test_loops_or_eyelets_are_counted_on_both_sides(closing: Closing) -> None:
    made = Making(opening=Opening(closing=closing))
    opening, _ = opening_of(outcome(), made)
    assert opening is not None
    notions = listed(made)
    assert notions[closing].count == 2 * len(opening.walks)
    assert notions["cord"].length_mm == opening.cord_mm
    assert said(notions["cord"]).startswith(f"{opening.crossings} crossings")


def test_a_zip_is_listed_instead_of_a_lacing() -> None:
    notions = listed(Making(opening=Opening(closing="side_zip")))
    seam = drafted(outcome()).seams[2].left_length
    assert notions["zip"].length_mm == pytest.approx(seam // INCH * INCH)
    assert not {"cord", "loops", "eyelets"} & set(notions)


def test_a_busk_is_listed_with_its_length() -> None:
    made = Making(front="busk")
    assert listed(made)["busk"].length_mm == busk_of(outcome(), made)[0]
    assert "the one you have" in said(listed(replace(made, busk_mm=203.2))["busk"]).lower()
    assert "busk" not in listed(Making())


@pytest.mark.parametrize(("front", "runs"), [("fold", 2), ("busk", 4)])
def test_binding_goes_round_both_edges_with_a_join_for_every_length(front: str, runs: int) -> None:
    made = replace(Making(), front=front, binding_join_mm=30.0)  # type: ignore[arg-type]
    binding = listed(made)["binding"]
    assert binding.count == runs
    edges = round_the_garment("neckline") + round_the_garment("hem")
    assert binding.length_mm == pytest.approx(edges + runs * 30.0)


def test_an_edge_with_an_allowance_is_not_bound() -> None:
    binding = listed(Making(allowances=Allowances(hem=12.7)))["binding"]
    assert binding.length_mm == pytest.approx(round_the_garment("neckline") + INCH)
    assert "hem" not in said(binding)
    assert "binding" not in listed(Making(allowances=Allowances(hem=12.7, neckline=12.7)))


def test_one_panel_with_an_allowance_of_its_own_is_left_out_of_the_binding() -> None:
    own = OwnAllowance("fashion", 0, "neckline", 10.0)
    less = 2 * shapely.LineString(drafted(outcome()).panels[0].neckline).length
    usual, changed = listed(Making())["binding"], listed(Making(own_allowances=(own,)))["binding"]
    assert usual.length_mm is not None
    assert changed.length_mm == pytest.approx(usual.length_mm - less)


def test_tape_and_modesty_panel_are_as_long_as_their_pieces() -> None:
    notions = listed(
        Making(), layers=(strip("waist_tape", 340.0, 19.05, 2), strip("modesty", 304.8, 330.2, 2))
    )
    assert notions["waist_tape"].count == 2
    assert notions["waist_tape"].length_mm == pytest.approx(680.0)
    assert said(notions["waist_tape"]).startswith("2 lengths, 26¾ in together and ¾ in wide")
    assert notions["modesty"].count == 1
    assert said(notions["modesty"]).startswith("12 in wide and 13 in long when sewn, 2 pieces")
    assert not {"waist_tape", "modesty"} & set(listed(Making()))


def test_thread_is_two_and_a_half_times_what_is_stitched() -> None:
    """Seams once a layer, neckline and hem once, two rows along every bone: worked here by hand."""
    side = np.array([[0.0, 0.0], [0.0, 200.0]])
    sewn = (
        PieceEdge("left", "seam", side, 12.7, 1),
        PieceEdge("right", "side", side, 25.4, 2),
        PieceEdge("neckline", "neckline", side, 0.0, None),
    )
    net = (PieceEdge("left", "seam", side, 0.0, 1),)
    layers = (
        strip("fashion", 100, 200, 2, sewn),
        strip("lining", 100, 200, 2, sewn),
        strip("interfacing", 100, 200, 2, net),
    )
    made = Making(boning=Boning(places=("centre_front",)))
    seams = 2 * (2 * 200.0)  # two layers; two edges of two pieces are two sewn seams each
    edges = round_the_garment("neckline") + round_the_garment("hem")
    rows = 2 * shapely.LineString(drafted(outcome()).panels[0].left).length
    thread = listed(made, layers=layers)["thread"]
    assert thread.length_mm == pytest.approx(2.5 * (seams + edges + rows))
    assert "in 2 layers" in said(thread)


def test_the_seams_of_a_cut_layer_are_those_of_the_draft_on_both_halves() -> None:
    fashion, net = (layer_of(outcome(), Making(), name) for name in ("fashion", "interfacing"))
    wanted = 2 * sum(seam.left_length for seam in drafted(outcome()).seams)
    assert sewn_lengths(fashion, measured_of([fashion])) == pytest.approx(wanted, abs=0.05)
    assert sewn_lengths(net, measured_of([net])) == 0.0


def test_without_a_draft_there_is_nothing_to_buy() -> None:
    refused = outcome_of(replace(usual_design(), opening_mm=5000.0))
    assert listed(Making(), refused) == {}


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    body=bodies(),
    design=designs(),
    stuff=st.sampled_from(["flat_steel", "spiral_steel", "plastic"]),
    closing=st.sampled_from(["loops", "eyelets", "side_zip"]),
    front=st.sampled_from(["fold", "busk"]),
)
def test_every_line_can_be_read_and_bought(
    body: Body, design: Design, stuff: str, closing: Closing, front: str
) -> None:
    made = replace(Making(opening=Opening(closing=closing)), front=front, boning=Boning(stuff=stuff))  # type: ignore[arg-type]
    for notion in listed(made, work_out(body, design)).values():
        assert notion.count is None or notion.count > 0
        assert notion.length_mm is None or (isfinite(notion.length_mm) and notion.length_mm > 0)
        assert not {"{", "}"} & set(said(notion))
        assert said(notion)[0].isupper() or said(notion)[0].isdigit() or said(notion)[0] in "¼½¾⅛⅜⅝⅞"
        assert said(notion).endswith(".")

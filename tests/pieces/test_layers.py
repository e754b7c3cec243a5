"""The layers: every piece of each, the right way round, in the right number.

Widths of strips, the modesty panel and the waist tape are common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, assume, given, settings

from tests.draft.strategies import bodies, designs
from tests.pieces.figures import drafted, outcome, outcome_of
from workbench.body import Body
from workbench.draft import Design, Outcome, usual_design, work_out
from workbench.pieces.layers import label_of, purpose_of
from workbench.pieces.making import (
    LAYERS,
    Allowances,
    Closing,
    EdgeName,
    LayerChoice,
    LayerName,
    Making,
    Opening,
    OwnAllowance,
)
from workbench.pieces.polyline import Array
from workbench.pieces.result import Cutting, Layer, Piece
from workbench.pieces.shell import cut_lines
from workbench.pieces.work import cutting_of, layer_of

INCH = 25.4
ALL = Making(layers=tuple(LayerChoice(name, True, net=name == "interfacing") for name in LAYERS))


def changed(making: Making, layer: LayerName, **choice: object) -> Making:
    layers = tuple(replace(c, **choice) if c.layer == layer else c for c in making.layers)  # type: ignore[arg-type]
    return replace(making, layers=layers)


def pieces(name: LayerName, making: Making = ALL, made: Outcome | None = None) -> tuple[Piece, ...]:
    return layer_of(made or outcome(), making, name).pieces


def edge(piece: Piece, name: EdgeName) -> Array:
    return next(e.stitch for e in piece.edges if e.name == name)


def length(line: Array) -> float:
    return float(shapely.LineString(line).length)


def codes(found: Cutting) -> set[str]:
    return {finding.code for finding in found.findings}


def test_every_layer_says_what_it_is_for() -> None:
    found = cutting_of(outcome(), ALL)
    assert [layer.name for layer in found.layers] == list(LAYERS)
    assert len({layer.label for layer in found.layers}) == len(LAYERS)
    assert all(layer.purpose.endswith(".") and len(layer.purpose) > 12 for layer in found.layers)


def test_keys_are_steady_and_of_one_piece_each() -> None:
    keys = [piece.key for piece in cutting_of(outcome(), ALL).pieces]
    assert len(keys) == len(set(keys))
    assert {"fashion/Front 1", "lining/Back 3", "strip/Loop strip", "waist_tape/Waist tape"} <= set(keys)
    assert keys == [piece.key for piece in cutting_of(outcome(opening=80.0), ALL).pieces]


def test_front_one_is_on_the_fold_the_others_left_and_right() -> None:
    for name in ("fashion", "strength", "interfacing", "lining"):
        first, *others = pieces(name)
        assert (first.cut_words, first.on_fold, first.mirrored) == ("cut 1 on the fold", True, False)
        assert {piece.cut_words for piece in others} == {"cut 2 (left and right)"}
        kinds = {e.name: (e.kind, e.allowance) for e in first.edges}
        assert kinds["left"] == ("fold", 0.0)
        # the cut line never passes the fold
        assert first.cut[:, 0].min() == pytest.approx(0.0, abs=1e-9)


def test_a_busk_splits_the_front() -> None:
    first = pieces("fashion", replace(ALL, front="busk"))[0]
    assert first.cut_words == "cut 2 (left and right)"
    left = next(e for e in first.edges if e.name == "left")
    assert (left.kind, left.allowance, left.seam) == ("centre_front", 0.5 * INCH, 0)
    assert first.cut[:, 0].min() == pytest.approx(-0.5 * INCH)


def test_every_edge_has_the_allowance_of_its_kind() -> None:
    making = replace(ALL, allowances=Allowances(10.0, 20.0, 30.0, 12.0, 5.0, 7.0))
    wanted = {"seam": 10.0, "side": 20.0, "centre_back": 30.0, "neckline": 5.0, "hem": 7.0, "fold": 0.0}
    for piece in pieces("fashion", making):
        assert {e.name: e.allowance for e in piece.edges} == {e.name: wanted[e.kind] for e in piece.edges}
    found = pieces("fashion", making)
    assert [e.kind for e in found[2].edges] == ["hem", "side", "neckline", "seam"]
    assert [e.kind for e in found[5].edges] == ["hem", "centre_back", "neckline", "seam"]


def test_one_edge_of_one_piece_can_differ() -> None:
    own = OwnAllowance("lining", 3, "left", 40.0)
    making = replace(ALL, own_allowances=(own,))
    lining, shell = pieces("lining", making)[3], pieces("fashion", making)[3]
    widths = {e.name: e.allowance for e in lining.edges}
    assert widths["left"] == 40.0
    assert {e.name: e.allowance for e in shell.edges} == {**widths, "left": INCH}
    other = pieces("lining", making)[2]
    assert {e.name: e.allowance for e in other.edges}["right"] == INCH


def test_an_interfacing_ends_at_the_stitch_line_or_not() -> None:
    for piece in pieces("interfacing"):
        rings = shapely.LinearRing(piece.cut), shapely.LinearRing(piece.stitch)
        assert rings[0].hausdorff_distance(rings[1]) < 1e-9
    full = pieces("interfacing", changed(ALL, "interfacing", net=False))
    for piece, shell in zip(full, pieces("fashion"), strict=True):
        assert np.array_equal(piece.cut, shell.cut)


def test_a_layer_can_be_switched_off_and_panels_left_out() -> None:
    off = changed(ALL, "lining", made=False)
    assert "lining" not in {layer.name for layer in cutting_of(outcome(), off).layers}
    assert pieces("lining", off) == ()
    assert layer_of(outcome(), off, "lining").purpose
    fewer = changed(ALL, "interfacing", left_out=(0, 4))
    assert [piece.panel for piece in pieces("interfacing", fewer)] == [1, 2, 3, 5]
    assert not [row for row in cutting_of(outcome(), fewer).walks if not row.holds]
    assert {row.seam for row in cutting_of(outcome(), fewer).walks if row.layer == "interfacing"} >= {2, 3}


@pytest.mark.parametrize("turn", [0.4, -0.4])
def test_a_hair_for_the_turn_of_cloth_widens_and_never_lengthens(turn: float) -> None:
    plain, turned = pieces("lining"), pieces("lining", changed(ALL, "lining", turn_mm=turn))
    for piece, wider in zip(plain, turned, strict=True):
        joined = sum(e.kind in ("seam", "side") for e in piece.edges)
        for mark, moved in zip(piece.marks, wider.marks, strict=True):
            if mark.kind in ("waist", "level"):
                width, now = (line.points[-1, 0] - line.points[0, 0] for line in (mark, moved))
                assert now - width == pytest.approx(joined * turn)
        for name in ("left", "right"):
            assert length(edge(piece, name)) == pytest.approx(length(edge(wider, name)), abs=1e-9)
    rows = cutting_of(outcome(), changed(changed(ALL, "lining", turn_mm=turn), "top_facing", turn_mm=turn))
    assert not [row for row in rows.walks if not row.holds]
    assert all(row.holds for row in rows.angles)


def test_centre_front_and_centre_back_keep_their_place_whatever_the_turn() -> None:
    plain, turned = pieces("lining"), pieces("lining", changed(ALL, "lining", turn_mm=0.7))
    assert np.array_equal(edge(plain[0], "left"), edge(turned[0], "left"))
    assert np.array_equal(edge(plain[-1], "right"), edge(turned[-1], "right"))


@pytest.mark.parametrize(
    ("closing", "width", "label"),
    [("loops", 1.25 * INCH, "Loop strip"), ("eyelets", 2 * INCH, "Eyelet facing")],
)
def test_a_strip_lies_along_either_centre_back(closing: Closing, width: float, label: str) -> None:
    making = replace(ALL, opening=Opening(closing=closing))
    (strip,) = pieces("strip", making)
    last = pieces("fashion", making)[-1]
    assert (strip.name, strip.cut_words) == (label, "cut 2 (left and right)")
    assert label_of("strip", making) == label
    assert label.split()[0].lower()[:4] in purpose_of("strip", making).lower()
    assert np.array_equal(edge(strip, "right"), edge(last, "right"))
    assert np.ptp(strip.stitch[:, 0]) == pytest.approx(width, abs=0.01)
    assert shapely.Polygon(last.stitch).buffer(1e-6).covers(shapely.Polygon(strip.stitch))
    assert {n.level for n in strip.notches} == {n.level for n in last.notches if n.edge == "right"}


def test_a_strip_is_no_wider_than_its_panel() -> None:
    design = usual_design("under_bust")
    last = replace(design.back.seams[-1], lower=0.24, upper=0.24)
    narrow = replace(design, back=replace(design.back, seams=(*design.back.seams[:-1], last)))
    made = outcome_of(narrow)
    (strip,) = pieces("strip", replace(ALL, opening=Opening(closing="eyelets")), made)
    panel = drafted(made).panels[-1]
    assert panel.widths["waist"] < 2 * INCH
    assert shapely.Polygon(panel.outline).buffer(1e-6).covers(shapely.Polygon(strip.stitch))
    assert np.ptp(strip.stitch[:, 0]) < 2 * INCH


@pytest.mark.parametrize("gap", [0.0, 50.8, 101.6])
def test_the_modesty_panel_is_two_inches_wider_than_the_gap(gap: float) -> None:
    made = outcome(opening=gap)
    (panel,) = pieces("modesty", made=made)
    back = length(drafted(made).panels[-1].right)
    across, up = np.ptp(panel.stitch, axis=0)
    assert (across, up) == pytest.approx((gap + 2 * INCH, back + INCH), abs=0.01)
    assert np.ptp(panel.cut, axis=0) == pytest.approx((across + INCH, up + INCH))
    assert panel.cut_words == "cut 2"


def test_the_tape_runs_from_bone_to_bone() -> None:
    """Round the waist less the gap, short of either edge by where its inner bone lies, ends turned 1/2 in."""
    waist = sum(panel.widths["waist"] for panel in drafted(outcome()).panels)
    opening, channel = ALL.opening, ALL.boning.width_mm + ALL.boning.channel_ease_mm
    bone = opening.set_in_mm + 0.5 * channel
    (whole,) = pieces("waist_tape")
    assert np.ptp(whole.cut, axis=0) == pytest.approx((2 * (waist - bone) + INCH, 0.75 * INCH))
    assert whole.count == 1
    (half,) = pieces("waist_tape", replace(ALL, front="busk"))
    assert np.ptp(half.cut[:, 0]) == pytest.approx(waist - bone - 0.5 * INCH + INCH)
    assert half.count == 2


def test_a_side_zip_needs_neither_strip_nor_modesty_panel() -> None:
    making = replace(ALL, opening=Opening(closing="side_zip"))
    names = {layer.name for layer in cutting_of(outcome(opening=0.0), making).layers}
    assert not names & {"strip", "modesty"}


def test_bones_and_tape_are_drawn_on_the_strength_layer() -> None:
    found = cutting_of(outcome(), ALL)

    def kinds(layer: Layer) -> set[str]:
        return {mark.kind for piece in layer.pieces for mark in piece.marks}

    drawn = {layer.name: kinds(layer) for layer in found.layers}
    assert drawn["strength"] == {"waist", "level", "fold", "tape", "bone"}
    assert drawn["fashion"] == drawn["lining"] == {"waist", "level", "fold"}
    bones = [m for layer in found.layers for piece in layer.pieces for m in piece.marks if m.kind == "bone"]
    assert len(bones) == len(found.bones)
    without = cutting_of(outcome(), changed(ALL, "strength", made=False))
    assert "bone" in {m.kind for piece in without.layers[0].pieces for m in piece.marks}


def test_one_layer_alone_is_the_same_as_among_all() -> None:
    found = {layer.name: layer for layer in cutting_of(outcome(), ALL).layers}
    for name in LAYERS:
        for alone, among in zip(pieces(name), found[name].pieces, strict=True):
            assert np.array_equal(alone.cut, among.cut)
            assert len(alone.notches) == len(among.notches)
            for one, other in zip(alone.notches, among.notches, strict=True):
                assert one.at == pytest.approx(other.at, abs=1e-9)
                assert one.towards == pytest.approx(other.towards, abs=1e-9)
                assert replace(one, at=other.at, towards=other.towards) == other
    for line, piece in zip(cut_lines(outcome(), ALL).values(), found["fashion"].pieces, strict=True):
        assert np.array_equal(line, piece.cut)


def test_without_a_draft_there_is_nothing_to_cut() -> None:
    stopped = outcome_of(usual_design(), waist=300.0)
    if stopped.draft is not None:
        stopped = replace(stopped, draft=None)
    assert cutting_of(stopped, ALL) == Cutting((), (), None, None, (), (), (), ())
    assert layer_of(stopped, ALL, "fashion").pieces == ()
    assert cut_lines(stopped, ALL) == {}


@pytest.mark.parametrize("amiss", [-1.0, float("nan"), float("inf")])
def test_an_allowance_that_is_no_width_is_said_and_left_off(amiss: float) -> None:
    found = cutting_of(outcome(), replace(ALL, allowances=Allowances(seam=amiss)))
    finding = next(f for f in found.findings if f.code == "allowance_amiss")
    assert finding.place.field == "allowances.seam"
    assert "joining seams" in finding.text("in")
    shell = found.layers[0].pieces[1]
    assert {e.name: e.allowance for e in shell.edges}["right"] == 0.0
    own = replace(ALL, own_allowances=(OwnAllowance("fashion", 1, "hem", amiss),))
    finding = next(f for f in cutting_of(outcome(), own).findings if f.code == "allowance_amiss")
    assert (finding.place.panel, finding.place.line) == (1, "hem")
    assert "hem of Front 2" in finding.text("in")


def test_unequal_allowances_on_the_two_sides_of_a_seam_are_noted() -> None:
    own = OwnAllowance("lining", 3, "right", 20.0)
    found = cutting_of(outcome(), replace(ALL, own_allowances=(own,)))
    (finding,) = [f for f in found.findings if f.code == "allowances_uneven"]
    assert finding.severity == "note"
    assert (finding.place.panel, finding.place.seam) == (3, 4)
    assert (finding.value_mm, finding.limit_mm) == (20.0, 0.5 * INCH)
    assert "the lining has an allowance of" in finding.text("in")
    both = replace(ALL, own_allowances=(own, OwnAllowance("lining", 4, "left", 20.0)))
    alone = changed(replace(ALL, own_allowances=(own,)), "lining", left_out=(4,))
    at_edge = replace(ALL, own_allowances=(OwnAllowance("fashion", 2, "neckline", 20.0),))
    for making in (both, alone, at_edge, ALL):
        assert "allowances_uneven" not in codes(cutting_of(outcome(), making))


def test_bones_and_tape_move_with_the_turn_of_cloth() -> None:
    """A bone on a seam lies on the seam of its piece, however far that is set out; one on the fold stays."""
    making = changed(ALL, "strength", turn_mm=3.0)
    strength = next(layer for layer in cutting_of(outcome(), making).layers if layer.name == "strength")
    for piece in strength.pieces:
        right, left = (
            shapely.LineString(edge.stitch)
            for name in ("right", "left")
            for edge in piece.edges
            if edge.name == name
        )
        for mark in piece.marks:
            line = shapely.LineString(mark.points)
            if mark.kind == "bone" and "seam" in mark.label:
                assert right.buffer(1e-3).covers(line)
            if mark.kind == "bone" and mark.label == "centre front":
                assert left.buffer(1e-3).covers(line)
            if mark.kind == "tape":
                assert right.distance(shapely.Point(mark.points[-1])) < 1e-2
                assert left.distance(shapely.Point(mark.points[0])) < 1e-2


def test_an_allowance_wider_than_its_panel_is_said_at_piece_and_edge() -> None:
    own = replace(ALL, own_allowances=(OwnAllowance("fashion", 1, "right", 95.0),))
    found = cutting_of(outcome(), own)
    (finding,) = [f for f in found.findings if f.code == "allowance_wider_than_panel"]
    assert (finding.place.panel, finding.place.seam) == (1, 2)
    assert "right side (front seam 2) of Front 2" in finding.text("in")
    assert finding.value_mm == 95.0
    assert len(found.layers) == len(LAYERS)
    assert not codes(cutting_of(outcome(), ALL)) & {"allowance_wider_than_panel", "allowance_amiss"}


def check_piece(piece: Piece) -> None:
    stitched, cut = shapely.Polygon(piece.stitch), shapely.Polygon(piece.cut)
    assert cut.is_valid
    assert shapely.LinearRing(piece.cut).is_ccw
    assert cut.area >= stitched.area - 1e-6
    assert stitched.difference(cut).area < 1e-2
    assert stitched.buffer(1e-6).covers(shapely.LineString(piece.grain))
    assert piece.grain[1][1] > piece.grain[0][1] or piece.layer == "waist_tape"


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(bodies(), designs())
def test_every_piece_of_every_layer_is_sound_and_all_layers_meet(body: Body, design: Design) -> None:
    made = work_out(body, design)
    assume(made.draft is not None)
    found = cutting_of(made, replace(ALL, allowances=Allowances(neckline=9.525, hem=9.525)))
    for piece in found.pieces:
        check_piece(piece)
    panels = {layer.name: layer.pieces for layer in found.layers}
    for shell, other in zip(panels["fashion"], panels["lining"], strict=True):
        assert np.array_equal(shell.stitch, other.stitch)
    for before, after in pairwise(panels["fashion"]):
        assert length(edge(before, "right")) == pytest.approx(length(edge(after, "left")), abs=0.05)

"""The last look at the seams: it must hold on what is drawn, and must be able to fail."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings

from tests.draft.strategies import bodies, designs
from tests.pieces.figures import drafted, outcome
from workbench.body import Body
from workbench.draft import Design, work_out
from workbench.pieces.check import check_angles, check_walks, tolerance_of
from workbench.pieces.making import LAYERS, EdgeName, LayerChoice, LayerName, Making
from workbench.pieces.polyline import Array
from workbench.pieces.result import Layer, Piece, WalkRow
from workbench.pieces.work import cutting_of, layer_of

ALL = Making(layers=tuple(LayerChoice(name, True, net=name == "interfacing") for name in LAYERS))


def layers(*names: LayerName) -> list[Layer]:
    return [layer_of(outcome(), ALL, name) for name in names]


def with_piece(layer: Layer, number: int, piece: Piece) -> Layer:
    return replace(layer, pieces=(*layer.pieces[:number], piece, *layer.pieces[number + 1 :]))


def with_edge(piece: Piece, name: EdgeName, stitch: Array) -> Piece:
    edges = tuple(replace(e, stitch=stitch) if e.name == name else e for e in piece.edges)
    return replace(piece, edges=edges)


def edge(piece: Piece, name: EdgeName) -> Array:
    return next(e.stitch for e in piece.edges if e.name == name)


def broken(layer: Layer, number: int, by: float) -> Layer:
    """The layer with the upper half of one right side lengthened by a bulge."""
    stitch = edge(layer.pieces[number], "right").copy()
    stitch[80:, 1] += by
    return with_piece(layer, number, with_edge(layer.pieces[number], "right", stitch))


def failing(rows: tuple[WalkRow, ...]) -> set[tuple[str, int, str]]:
    return {(row.layer, row.seam, row.part) for row in rows if not row.holds}


def test_every_row_holds_on_a_usual_draft() -> None:
    rows = check_walks(layers(*LAYERS), outcome().design)
    assert failing(rows) == set()
    assert {row.layer for row in rows} >= {
        "fashion",
        "strength",
        "interfacing",
        "lining",
        "strip",
        "top_facing",
    }
    parts = {row.part for row in rows if (row.layer, row.seam) == ("fashion", 1)}
    assert {"whole seam", "waist to underbust"} <= parts
    assert {row.name for row in rows} >= {"front seam 1", "side seam", "back seam 2", "centre back"}


def test_the_parts_of_a_seam_make_up_the_whole() -> None:
    rows = [row for row in check_walks(layers("fashion"), outcome().design) if row.seam == 2]
    whole, parts = rows[0], rows[1:]
    assert sum(row.left for row in parts) == pytest.approx(whole.left)
    assert sum(row.right for row in parts) == pytest.approx(whole.right)


@pytest.mark.parametrize("by", [0.02, 0.5, 3.0])
def test_one_broken_edge_is_flagged_whole_and_in_its_part(by: float) -> None:
    rows = check_walks([broken(layers("fashion")[0], 1, by)], outcome().design)
    found = failing(rows)
    assert ("fashion", 2, "whole seam") in found
    assert {seam for _, seam, _ in found} == {2}
    assert 2 <= len(found) <= 3
    worst = next(row for row in rows if row.part == "whole seam" and row.seam == 2)
    assert worst.difference == pytest.approx(by, abs=0.005 + 0.02 * abs(by))


def test_a_layer_that_differs_from_the_shell_is_flagged() -> None:
    shell, lining = layers("fashion", "lining")
    stitch = edge(lining.pieces[5], "right") * [1.0, 1.01]
    changed = with_piece(lining, 5, with_edge(lining.pieces[5], "right", stitch))
    found = failing(check_walks([shell, changed], outcome().design))
    assert found == {("lining", 6, "against the fashion cloth")}


def test_a_facing_that_does_not_fit_its_neckline_is_flagged() -> None:
    shell, facing = layers("fashion", "top_facing")
    stitch = edge(facing.pieces[0], "neckline") * [1.002, 1.0]
    changed = with_piece(facing, 0, with_edge(facing.pieces[0], "neckline", stitch))
    found = failing(check_walks([shell, changed], outcome().design))
    assert found == {("top_facing", 0, "against the fashion cloth")}


def test_a_notch_without_a_partner_is_flagged() -> None:
    shell, lining = layers("fashion", "lining")
    bare = replace(lining.pieces[2], notches=lining.pieces[2].notches[:-1])
    found = failing(check_walks([shell, with_piece(lining, 2, bare)], outcome().design))
    assert found == {("lining", 3, "notches do not pair")}


def test_a_notch_at_the_wrong_place_is_flagged() -> None:
    shell = layers("fashion")[0]
    piece = shell.pieces[1]
    place = next(i for i, n in enumerate(piece.notches) if n.edge == "right" and n.level == "waist")
    x, y = piece.notches[place].at
    notches = list(piece.notches)
    notches[place] = replace(notches[place], at=(x, y + 1.0))
    moved = with_piece(shell, 1, replace(piece, notches=tuple(notches)))
    found = failing(check_walks([moved], outcome().design))
    assert {seam for _, seam, _ in found} == {2}
    assert len(found) == 2
    assert ("fashion", 2, "whole seam") not in found


def test_angles_are_those_of_the_finished_pieces() -> None:
    draft = drafted(outcome())
    rows = check_angles(layers("fashion")[0], draft)
    assert all(row.holds for row in rows)
    drawn = {
        (seam.index, line): angle
        for seam in draft.seams
        for line, angle in (("hem", seam.hem_angle_sum), ("neckline", seam.neckline_angle_sum))
    }
    assert {(row.seam, row.line): row.degrees for row in rows} == pytest.approx(drawn, abs=1e-6)


def test_a_kink_in_the_neckline_is_flagged() -> None:
    shell = layers("fashion")[0]
    stitch = edge(shell.pieces[1], "neckline")
    start, turn = stitch[0], np.radians(1.0)
    turned = start + (stitch - start) @ np.array(
        [[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]]
    )
    kinked = with_piece(shell, 1, with_edge(shell.pieces[1], "neckline", turned))
    rows = check_angles(kinked, drafted(outcome()))
    assert [(row.seam, row.line) for row in rows if not row.holds] == [
        (1, "neckline"),
        (2, "neckline"),
    ]


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(bodies(), designs())
def test_all_layers_of_every_seam_match(body: Body, design: Design) -> None:
    made = work_out(body, design)
    assume(made.draft is not None)
    found = cutting_of(made, ALL)
    assert tolerance_of(drafted(made)) in (0.01, 0.05)
    assert failing(found.walks) == set()
    assert all(row.holds for row in found.angles)

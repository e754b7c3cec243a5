"""Every single piece is there, the right way round."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from shapely.geometry import Polygon

from tests.cloth.cutting_table import ONE, THREE, copies, cutting, seven_panels
from workbench.cloth import MOST_COPIES, Cloth, LayError, copies_of
from workbench.pieces import LAYERS, Cutting, Piece


def only(whole: Cutting, **change: object) -> Cutting:
    """The cutting with its first piece changed."""
    first = whole.layers[0]
    pieces = (replace(first.pieces[0], **change), *first.pieces[1:])  # type: ignore[arg-type]
    return replace(whole, layers=(replace(first, pieces=pieces), *whole.layers[1:]))


def piece_of(cut: Cutting, key: str) -> Piece:
    return next(piece for piece in cut.pieces if piece.key == key)


def test_single_cloth_gets_as_many_copies_as_pieces() -> None:
    cloth = Cloth("All", LAYERS)
    assert len(copies(cloth)) == sum(piece.count for piece in cutting().pieces)


def test_only_the_layers_of_the_cloth_are_laid() -> None:
    assert {copy.layer for copy in copies(Cloth("Satin", ("fashion", "lining")))} == {"fashion", "lining"}
    assert copies(Cloth("Nothing", ())) == ()


def test_three_layers_of_seven_panels_are_42() -> None:
    assert len(copies_of(seven_panels(), Cloth("All", THREE))) == 42


def test_half_of_a_mirrored_pair_is_turned_over() -> None:
    sides = [copy.mirrored for copy in copies(Cloth("Satin", ONE)) if copy.name == "Back 2"]
    assert sides == [False, True]


def test_a_piece_on_the_fold_is_opened_out_on_single_cloth() -> None:
    half = Polygon(piece_of(cutting(), "fashion/Front 1").cut)
    (whole,) = (copy for copy in copies(Cloth("Satin", ONE)) if copy.opened)
    shape = Polygon(whole.outline)
    assert shape.is_valid
    assert shape.exterior.is_ccw
    assert shape.area == pytest.approx(2 * half.area, rel=1e-9)
    assert np.ptp(whole.outline[:, 0]) == pytest.approx(2 * (half.bounds[2] - half.bounds[0]))


def test_folded_cloth_gives_a_pair_at_once_and_keeps_the_half() -> None:
    laid_out = copies(Cloth("Satin", ONE, laid="folded"))
    assert len(laid_out) == 6
    assert [copy.on_fold for copy in laid_out] == [True, False, False, False, False, False]
    assert [copy.gives for copy in laid_out[1:]] == [2] * 5


def test_two_that_are_the_same_turned_over_are_cut_at_once_on_folded_cloth() -> None:
    (panel,) = copies(Cloth("Satin", ("modesty",), laid="folded"))
    assert panel.gives == 2


def test_what_is_needed_once_is_cut_from_one_layer() -> None:
    (tape,) = copies(Cloth("Twill", ("waist_tape",), laid="folded"))
    assert tape.gives == 1


def test_two_that_differ_turned_over_are_laid_twice_on_folded_cloth() -> None:
    key = "strip/Loop strip"
    strip = next(layer for layer in cutting().layers if layer.name == "strip")
    plain = replace(piece_of(cutting(), key), mirrored=False)
    own = replace(cutting(), layers=(replace(strip, pieces=(plain,)),))
    assert [copy.gives for copy in copies_of(own, Cloth("A", ("strip",), laid="folded"))] == [1, 1]


def test_ten_thousand_copies_are_refused_in_one_sentence() -> None:
    with pytest.raises(
        LayError, match=rf"^Satin would have 10,010 pieces; a plan holds {MOST_COPIES} at most\."
    ):
        copies_of(only(cutting(), count=10_000), Cloth("Satin", ONE))


def test_a_cut_line_that_crosses_itself_is_refused_by_name() -> None:
    crossed = np.array([[0.0, 0.0], [100.0, 100.0], [100.0, 0.0], [0.0, 100.0]])
    with pytest.raises(LayError, match="cut line of Front 1 crosses itself"):
        copies_of(only(cutting("busk"), cut=crossed), Cloth("Satin", ONE))


def test_a_fold_edge_that_is_not_straight_down_is_refused() -> None:
    half = piece_of(cutting(), "fashion/Front 1")
    with pytest.raises(LayError, match="Front 1 is cut on the fold, but"):
        copies_of(only(cutting(), cut=half.cut + np.array([5.0, 0.0])), Cloth("Satin", ONE))

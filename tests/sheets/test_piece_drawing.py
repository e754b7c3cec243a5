"""One piece as strokes and labels: its lines are its own, its words stand inside it and apart."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import shapely

from tests.sheets.conftest import HEADING, CutJob
from tests.sheets.test_panel_drawing import box
from workbench.draft import seam_name
from workbench.pieces import LAYERS, Marks, Piece
from workbench.sheets import Box, Drawing, PrintChoice
from workbench.sheets.chosen import marked_pieces
from workbench.sheets.clear_grain import clear_grain
from workbench.sheets.notch_marks import notch_strokes
from workbench.sheets.piece import piece_drawing, sewn_to
from workbench.sheets.piece_words import PieceWords

CAPTIONS = ("A client of some renown", "2031-03-01")


def drawings(cut: CutJob, *layers: str, **words: object) -> list[tuple[Piece, Drawing]]:
    choice = PrintChoice(layers=layers or LAYERS)  # type: ignore[arg-type]
    found = []
    for layer, piece in marked_pieces(cut.cutting, choice, HEADING):
        edges = sewn_to(piece, layer, cut.job.outcome.design)
        said = PieceWords(layer.label, CAPTIONS, edges, **words)  # type: ignore[arg-type]
        found.append((piece, piece_drawing(piece, said)))
    return found


def all_words(drawing: Drawing) -> str:
    return " ".join(label.text for label in drawing.labels)


def test_words_stand_inside_their_piece_and_clear_of_each_other(either_cut: CutJob) -> None:
    for piece, drawing in drawings(either_cut):
        outline = shapely.Polygon(piece.stitch)
        boxes = [(label, box(label)) for label in drawing.labels]
        for number, (label, room) in enumerate(boxes):
            assert outline.contains(room), (piece.key, label.text)
            for other, its_room in boxes[number + 1 :]:
                assert not room.intersects(its_room), (piece.key, label.text, other.text)


@pytest.mark.parametrize("height", [-60.0, 30.0, 120.0])
def test_what_a_piece_is_called_keeps_clear_of_a_join_and_its_rings(folded: CutJob, height: float) -> None:
    line = np.array([[-1000.0, height], [1000.0, height]])
    ring = Box(14.0, height - 6.0, 40.0, height + 6.0)
    for piece, drawing in drawings(folded, "fashion", joins=(line,), rings=(ring,)):
        taken = shapely.box(ring.left, ring.bottom, ring.right, ring.top)
        for label in drawing.labels:
            if label.role == "title":
                assert not box(label).intersects(shapely.LineString(line)), (piece.key, label.text)
            assert not box(label).intersects(taken), (piece.key, label.text)


def test_each_piece_says_what_it_is_how_often_it_is_cut_and_whose(either_cut: CutJob) -> None:
    labels = {layer.name: layer.label for layer in either_cut.cutting.layers}
    for piece, drawing in drawings(either_cut):
        words = all_words(drawing)
        for text in (piece.name, piece.cut_words, labels[piece.layer], *CAPTIONS):
            assert text in words, (piece.key, text)
        assert ("turned over: right" in words) == piece.mirrored
        assert ("place on the fold" in words) == piece.on_fold


def test_the_fold_is_marked_along_the_whole_of_its_edge(folded: CutJob) -> None:
    piece, drawing = drawings(folded, "fashion")[0]
    assert piece.on_fold
    edge = next(edge for edge in piece.edges if edge.kind == "fold")
    folds = [stroke.points for stroke in drawing.strokes if stroke.role == "fold"]
    assert len(folds) == 1
    assert np.array_equal(folds[0], edge.stitch)


def test_every_level_bone_and_the_tape_are_drawn_and_named(either_cut: CutJob) -> None:
    for piece, drawing in drawings(either_cut, "strength"):
        words = all_words(drawing)
        for mark in piece.marks:
            if mark.kind != "fold":
                drawn = [stroke for stroke in drawing.strokes if stroke.points is mark.points]
                assert [stroke.role for stroke in drawn] == [mark.kind]
                assert mark.label in words


def test_bones_are_numbered_as_in_the_list_with_their_cut_length(either_cut: CutJob) -> None:
    said = " ".join(all_words(drawing) for _, drawing in drawings(either_cut, "strength"))
    for number, bone in enumerate(either_cut.cutting.bones, 1):
        assert f"bone {number}, " in said, bone.where


def test_where_the_layer_of_the_bones_is_not_printed_the_fashion_cloth_shows_them(folded: CutJob) -> None:
    def kinds(*layers: str) -> list[str]:
        shown = drawings(folded, *layers)
        return sorted(stroke.role for _, drawing in shown for stroke in drawing.strokes)

    fashion, strength, both = (
        kinds(*layers) for layers in (("fashion",), ("strength",), ("fashion", "strength"))
    )
    assert fashion.count("bone") == strength.count("bone") == both.count("bone") > 0
    assert fashion.count("tape") == both.count("tape") > 0
    assert kinds("lining", "fashion").count("bone") == fashion.count("bone")


def test_each_side_says_which_piece_it_is_sewn_to(folded: CutJob) -> None:
    design = folded.job.outcome.design
    shown = drawings(folded, "fashion")
    names = [piece.name for piece, _ in shown]
    for number, (_, drawing) in enumerate(shown):
        words = all_words(drawing)
        if number + 1 < len(names):
            assert f"{seam_name(number + 1, design)}, to {names[number + 1]}" in words
        if number:
            assert f"{seam_name(number, design)}, to {names[number - 1]}" in words


@pytest.mark.parametrize("style", ["slit", "triangle"])
def test_notches_are_single_in_front_and_double_in_back_and_stop_short_of_the_stitching(
    busked: CutJob, style: str
) -> None:
    marks = Marks(style=style)  # type: ignore[arg-type]
    counts = set()
    for piece in (piece for piece in busked.cutting.pieces if piece.layer == "fashion"):
        strokes = list(notch_strokes(piece, marks))
        assert len(strokes) == sum(notch.count for notch in piece.notches)
        assert {len(stroke.points) for stroke in strokes} <= {2 if style == "slit" else 3}
        counts |= {notch.count for notch in piece.notches}
        for notch in piece.notches:
            allowance = next(edge.allowance for edge in piece.edges if edge.name == notch.edge)
            tips = [stroke.points[1] for stroke in notch_strokes(replace(piece, notches=(notch,)), marks)]
            depth = [float((tip - np.array(notch.at)) @ np.array(notch.towards)) for tip in tips]
            assert all(d <= marks.length_mm + 1e-9 for d in depth)
            assert allowance == 0 or all(d < allowance - 1.0 for d in depth)
    assert counts == {1, 2}


def test_the_grain_keeps_its_way_and_stands_beside_the_bones(folded: CutJob) -> None:
    for piece in folded.cutting.pieces:
        (x0, y0), (x1, y1) = clear_grain(piece)
        before = np.diff(np.array(piece.grain), axis=0)[0]
        assert np.array([x1 - x0, y1 - y0]) == pytest.approx(before, abs=1e-9)
        line = shapely.LineString([(x0, y0), (x1, y1)])
        assert shapely.Polygon(piece.stitch).contains(line)
        for mark in piece.marks:
            if mark.kind == "bone":
                assert line.distance(shapely.LineString(mark.points)) > 2.0, piece.key


def test_a_short_grain_line_is_never_hidden_by_words(either_cut: CutJob) -> None:
    for piece, drawing in drawings(either_cut):
        grain = [stroke.points for stroke in drawing.strokes if stroke.role == "grain"]
        assert max(float(np.hypot(*(line[-1] - line[0]))) for line in grain) >= 6.0, piece.key

"""What the steps of a guide say, and in which order."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest

from tests.marking.bodies import outcomes
from tests.marking.reader import length
from workbench.draft import Outcome
from workbench.marking import ROUNDINGS, Across, Guide, PieceGuide, guide_of
from workbench.pieces import LAYERS, Cutting, Layer, LayerChoice, Making, cutting_of

MAKING = Making(layers=tuple(LayerChoice(layer, True, turn_mm=0.8) for layer in LAYERS))


@cache
def outcome() -> Outcome:
    return next(outcomes(1, 5))


@cache
def cutting() -> Cutting:
    return cutting_of(outcome(), MAKING)


def guide(layer: Layer) -> Guide:
    return guide_of(outcome(), MAKING, layer, ROUNDINGS["eighth"])


@pytest.mark.parametrize("name", LAYERS)
def test_every_piece_of_every_layer_can_be_marked(name: str) -> None:
    layer = next(layer for layer in cutting().layers if layer.name == name)
    made = guide(layer)
    assert [piece.name for piece in made.pieces] == [piece.name for piece in layer.pieces]
    for piece in made.pieces:
        assert {curve.edge for curve in piece.curves} == {"left", "right", "neckline", "hem"}
        assert piece.error <= 1.2 * made.rounding.step + 0.8


def test_marks_are_numbered_as_they_are_made_and_each_once() -> None:
    for layer in cutting().layers:
        for piece in guide(layer).pieces:
            made = [number for step in piece.steps for number in step.marks]
            assert made == sorted(set(made)) == [mark.number for mark in piece.marks]


def test_every_line_is_drawn_in_some_step_after_its_marks() -> None:
    for piece in guide(cutting().layers[0]).pieces:
        seen: set[int] = set()
        drawn = []
        for step in piece.steps:
            seen |= set(step.marks)
            for place in step.curves:
                assert set(piece.curves[place].marks) <= seen
                drawn.append(place)
        assert sorted(drawn) == list(range(len(piece.curves)))


def test_keys_of_steps_tell_layer_piece_and_number() -> None:
    first = guide(cutting().layers[0]).pieces[0]
    assert re.fullmatch(r"marking\.fashion\.front-1\.3\.[0-9a-f]{6}", first.steps[2].key)
    keys = [step.key for layer in cutting().layers for p in guide(layer).pieces for step in p.steps]
    assert len(keys) == len(set(keys))


def test_the_centre_lines_are_the_upright_itself() -> None:
    pieces = guide(cutting().layers[0]).pieces
    for piece, side in ((pieces[0], "left"), (pieces[-1], "right")):
        step = next(step for step in piece.steps if step.title.startswith(f"The {side} side"))
        assert any(line.startswith("It is the upright itself") for line in step.lines)


def test_both_sides_of_a_seam_are_checked_against_the_same_lengths() -> None:
    pieces = guide(cutting().layers[0]).pieces
    for before, after in pairwise(pieces):
        assert _check(before, "right") == _check(after, "left")


def _check(piece: PieceGuide, side: str) -> str:
    step = next(step for step in piece.steps if step.title.startswith(f"The {side} side"))
    return next(line for line in step.lines if line.startswith("Check along the line"))


def test_enough_cloth_is_asked_for_round_the_corner() -> None:
    for layer in cutting().layers:
        for piece in guide(layer).pieces:
            said = re.findall(
                r"([^ ]+(?: [^ ]+)? in) (to the left|to the right|above|below)", piece.steps[0].lines[1]
            )
            room = {where: length(words.removeprefix("1: ")) for words, where in said}
            low, high = piece.cut.min(axis=0), piece.cut.max(axis=0)
            assert room["to the left"] >= -low[0]
            assert room["below"] >= -low[1]
            assert room["to the right"] >= high[0]
            assert room["above"] >= high[1]


def test_a_turn_of_cloth_is_marked_and_its_sum_closes_too() -> None:
    made = guide(cutting().layers[0])
    waist = next(row for row in made.girths if row.level == "waist")
    draft = outcome().draft
    assert draft is not None
    seams = 2 * (len(draft.panels) - 1)
    assert sum(waist.exact_widths) == pytest.approx(0.5 * _fabric() + 0.8 * seams, abs=0.06)
    assert abs(waist.error) <= made.rounding.step + 1e-9


def _fabric() -> float:
    return outcome().level("waist").fabric


def test_a_panel_left_out_of_a_layer_changes_no_width_of_the_others() -> None:
    whole = guide(cutting().layers[0])
    choices = tuple(
        replace(choice, left_out=(1,)) if choice.layer == "fashion" else choice for choice in MAKING.layers
    )
    making = replace(MAKING, layers=choices)
    layer = cutting_of(outcome(), making).layers[0]
    made = guide_of(outcome(), making, layer, ROUNDINGS["eighth"])
    kept = [piece for piece in whole.pieces if piece.name != whole.pieces[1].name]
    assert [_widths(piece) for piece in made.pieces] == [_widths(piece) for piece in kept]
    assert not any(row.whole for row in made.girths)


def _widths(piece: PieceGuide) -> list[float]:
    return [mark.width for mark in piece.marks if isinstance(mark, Across)]


def test_without_a_draft_there_is_nothing_to_mark() -> None:
    stopped = replace(outcome(), draft=None)
    made = guide_of(stopped, MAKING, cutting().layers[0], ROUNDINGS["eighth"])
    assert made.pieces == ()
    assert made.error == made.girth_error == made.seam_error == 0.0


def test_a_key_is_another_one_where_the_step_says_something_else() -> None:
    layer = cutting().layers[0]
    one, other = (guide_of(outcome(), MAKING, layer, ROUNDINGS[name]) for name in ("eighth", "sixteenth"))
    for step, finer in zip(one.pieces[1].steps, other.pieces[1].steps, strict=True):
        assert (step.key == finer.key) == ((step.title, step.lines) == (finer.title, finer.lines))
    assert [step.key for step in guide(layer).pieces[1].steps] == [step.key for step in one.pieces[1].steps]

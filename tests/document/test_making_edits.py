"""Edits of the making: each says what was asked, leaves the rest alone, and refuses nonsense."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.document import example, makings, projects
from workbench.document import (
    EDGE_NAMES,
    MAKING_ROWS,
    Project,
    new_project,
    set_allowance_of,
    set_bone_place,
    set_boning,
    set_busk,
    set_front,
    set_lacing,
    set_layer_made,
    set_layer_panel,
    set_making,
    set_marks,
    set_net,
    set_own_allowance,
    set_panels,
    set_turn,
    set_unit,
    to_bytes,
)
from workbench.document.file import project_from
from workbench.pieces import EDGE_KINDS, LAYERS, USUAL_SET_IN, Making, OwnAllowance

Edit = Callable[[Project, float], Project]

FIGURES: dict[str, Edit] = {
    "allowance": lambda p, v: set_allowance_of(p, "side", v),
    "own allowance": lambda p, v: set_own_allowance(p, "lining", 1, "left", v),
    "turn": lambda p, v: set_turn(p, "fashion", v),
    "notch": lambda p, v: set_marks(p, length_mm=v),
    "busk": set_busk,
    "pitch": lambda p, v: set_lacing(p, pitch_mm=v),
    "clearance": lambda p, v: set_boning(p, clearance_mm=v),
    "facing": lambda p, v: set_making(p, facing_depth_mm=v),
    "corner": lambda p, v: set_making(p, corner_limit=v),
}


@pytest.mark.parametrize("kind", EDGE_KINDS)
def test_allowance_of_one_kind_leaves_the_others(kind: str) -> None:
    changed = set_allowance_of(example(), kind, 19).making.allowances  # type: ignore[arg-type]  # one of them
    assert changed == replace(example().making.allowances, **{kind: 19.0})


def test_own_allowances_stand_once_each_and_in_one_order() -> None:
    one = set_own_allowance(example(), "lining", 2, "hem", 9)
    both = set_own_allowance(set_own_allowance(one, "fashion", 3, "right", 20), "lining", 2, "hem", 12.5)
    assert both.making.own_allowances == (
        OwnAllowance("fashion", 3, "right", 20.0),
        OwnAllowance("lining", 2, "hem", 12.5),
    )
    other = set_own_allowance(
        set_own_allowance(example(), "lining", 2, "hem", 12.5), "fashion", 3, "right", 20
    )
    assert other == both
    assert (
        set_own_allowance(set_own_allowance(both, "fashion", 3, "right", None), "lining", 2, "hem", 9) == one
    )


def test_layers() -> None:
    project = set_layer_made(example(), "lining", False)
    assert not project.making.layer("lining").made
    project = set_turn(set_net(project, "interfacing", False), "fashion", 0.8)
    assert not project.making.layer("interfacing").net
    assert project.making.layer("fashion").turn_mm == 0.8
    assert [choice.layer for choice in project.making.layers] == list(LAYERS)


def test_pieces_of_a_layer_are_taken_out_and_put_back() -> None:
    out = set_layer_panel(set_layer_panel(example(), "strength", 4, False), "strength", 0, False)
    assert out.making.layer("strength").left_out == (0, 4)
    assert set_layer_panel(set_layer_panel(out, "strength", 4, True), "strength", 0, True) == example()


def test_marks_front_busk_lacing() -> None:
    project = set_marks(example(), style="triangle", length_mm=5, at_curves=False)
    assert (project.making.marks.style, project.making.marks.length_mm) == ("triangle", 5.0)
    assert not project.making.marks.at_curves
    project = set_busk(set_front(project, "busk"), 304.8)
    assert (project.making.front, project.making.busk_mm) == ("busk", 304.8)
    assert set_busk(project, None).making.busk_mm is None
    project = set_lacing(project, closing="eyelets", pitch_mm=25.4)
    assert (project.making.opening.closing, project.making.opening.pitch_mm) == ("eyelets", 25.4)


def test_bones() -> None:
    project = set_boning(example(), stuff="plastic", width_mm=7)
    assert (project.making.boning.stuff, project.making.boning.width_mm) == ("plastic", 7.0)
    project = set_bone_place(set_bone_place(example(), "seams", False), "mid_panel", True)
    assert project.making.boning.places == ("mid_panel", "beside_opening", "centre_front")
    assert set_bone_place(set_bone_place(project, "mid_panel", False), "seams", True) == example()


def test_single_figures() -> None:
    making = set_making(example(), facing_depth_mm=60, tape_width_mm=25, binding_join_mm=0).making
    assert (making.facing_depth_mm, making.tape_width_mm, making.binding_join_mm) == (60.0, 25.0, 0.0)
    assert set_making(example(), corner_limit=2).making.corner_limit == 2.0


@pytest.mark.parametrize("name", FIGURES)
@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 1e9, -10.0])
def test_figures_out_of_their_bounds_are_refused_by_name(name: str, value: float) -> None:
    with pytest.raises(ValueError, match=r"^[A-Z].*: it must be between .*\.$"):
        FIGURES[name](example(), value)


def test_bounds_are_said_in_her_unit() -> None:
    with pytest.raises(ValueError, match=r"^Allowance of the side seam: it must be between 0 and 4 in\.$"):
        set_allowance_of(example(), "side", 300)
    with pytest.raises(ValueError, match=r"between 0 and 10\.16 cm\.$"):
        set_allowance_of(set_unit(example(), "cm", 8), "side", 300)


NONSENSE: list[tuple[Callable[[Project], Project], str]] = [
    (lambda p: set_allowance_of(p, "sleeve", 3), "no kind of edge called “sleeve”"),  # type: ignore[arg-type]
    (lambda p: set_own_allowance(p, "lining", 6, "hem", 3), "no panel number 7; the half has 6"),
    (lambda p: set_own_allowance(p, "lining", 1, "top", 3), "no edge called “top”"),  # type: ignore[arg-type]
    (lambda p: set_own_allowance(p, "wool", 1, "hem", 3), "no layer called “wool”"),  # type: ignore[arg-type]
    (lambda p: set_layer_panel(p, "lining", -1, False), "no panel number 0"),
    (lambda p: set_layer_made(p, "wool", True), "no layer called “wool”"),  # type: ignore[arg-type]
    (lambda p: set_net(p, "wool", True), "no layer called “wool”"),  # type: ignore[arg-type]
    (lambda p: set_front(p, "cape"), "front must be fold or busk"),  # type: ignore[arg-type]
    (lambda p: set_bone_place(p, "hat", True), "no place for bones called “hat”"),  # type: ignore[arg-type]
    (lambda p: set_marks(p, colour="red"), "marks has nothing called “colour”"),
    (lambda p: set_marks(p, style="star"), "style must be slit or triangle"),
    (lambda p: set_marks(p, length_mm=None), "length_mm must be a number"),
    (lambda p: set_lacing(p, closing="zip"), "closing must be loops, eyelets or side_zip"),
    (lambda p: set_boning(p, places="seams"), "places of the bones are set one by one"),
    (lambda p: set_making(p, marks=3), "no figure called “marks”"),
]


@pytest.mark.parametrize(("edit", "said"), NONSENSE)
def test_names_that_nobody_knows_are_refused_in_one_sentence(
    edit: Callable[[Project], Project], said: str
) -> None:
    with pytest.raises(ValueError, match=said) as caught:
        edit(example())
    assert str(caught.value)[0].isupper()
    assert str(caught.value).endswith(".")


def test_every_figure_is_usual_within_its_bounds() -> None:
    """Each row names a figure of the records; the one to start from lies between its ends."""
    making = Making(own_allowances=(OwnAllowance("lining", 0, "hem", 6.0),))
    held = {
        "": making,
        "layer": making.layers[0],
        "own_allowance": making.own_allowances[0],
        **{group: getattr(making, group) for group in ("allowances", "marks", "opening", "boning")},
    }
    for (group, key), row in MAKING_ROWS.items():
        value = getattr(held[group], key)
        assert value is None or row.low <= value <= row.high
    for record in held.values():
        figures = {name for name, value in vars(record).items() if type(value) is float}
        assert figures <= {key for _, key in MAKING_ROWS}


def test_what_was_decided_for_a_panel_follows_it_when_others_come_and_go() -> None:
    project = set_own_allowance(example(), "fashion", 1, "left", 20)
    project = set_own_allowance(project, "fashion", 5, "right", 30)
    project = set_layer_panel(set_layer_panel(project, "lining", 0, False), "lining", 3, False)
    more = set_panels(project, "front", 4)
    assert more.making.own_allowances == (OwnAllowance("fashion", 6, "right", 30.0),)
    assert more.making.layer("lining").left_out == (4,)
    fewer = set_panels(project, "back", 2)
    assert fewer.making.own_allowances == (OwnAllowance("fashion", 1, "left", 20.0),)
    assert fewer.making.layer("lining").left_out == (0,)


@given(projects, st.data())
@settings(max_examples=60, deadline=None)
def test_whatever_an_edit_lets_through_a_file_can_keep(project: Project, data: st.DataObject) -> None:
    panel = data.draw(st.integers(0, project.design.panel_count - 1))
    edge = data.draw(st.sampled_from(EDGE_NAMES))
    layer = data.draw(st.sampled_from(LAYERS))
    for edited in (
        set_own_allowance(project, layer, panel, edge, 7),
        set_layer_panel(project, layer, panel, data.draw(st.booleans())),
        set_bone_place(project, "mid_panel", data.draw(st.booleans())),
        set_panels(project, "front", data.draw(st.integers(2, 4))),
        set_panels(project, "back", data.draw(st.integers(2, 4))),
        replace(project, making=data.draw(makings(project.design.panel_count))),
    ):
        assert project_from(to_bytes(edited)) == edited


def test_choosing_eyelets_moves_an_untouched_set_in_clear_of_their_rims() -> None:
    laced = set_lacing(new_project(), closing="eyelets")
    assert laced.making.opening.set_in_mm == USUAL_SET_IN["eyelets"]
    assert set_lacing(laced, closing="loops").making.opening.set_in_mm == USUAL_SET_IN["loops"]


def test_a_set_in_of_her_own_stays_with_another_closing() -> None:
    own = set_lacing(new_project(), set_in_mm=11.0)
    assert set_lacing(own, closing="eyelets").making.opening.set_in_mm == 11.0

"""Edits of cloths and lay plans: each says what was asked, leaves the rest alone, and refuses nonsense."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.document import example
from workbench.cloth import Cloth, KeptPlan, Placed
from workbench.document import (
    CLOTH_ROWS,
    Project,
    add_cloth,
    drop_plan,
    keep_plan,
    new_project,
    pin_piece,
    place_by_hand,
    remove_cloth,
    set_cloth,
    set_cloth_layers,
    to_bytes,
)
from workbench.document.file import project_from
from workbench.pieces import LAYERS

FASHION = "Fashion cloth"
FIRST = example().cloths[0]
PLAN = KeptPlan(
    FASHION,
    "0" * 32,
    812.8,
    (Placed("fashion/Front 1", 1, 25.4, 300.0), Placed("fashion/Front 2", 2, 300.0, 280.0, 180.0, True)),
    "Laid for the test.",
)


def laid() -> Project:
    return keep_plan(example(), PLAN)


def test_a_new_project_has_a_cloth_for_each_stuff_and_no_layer_twice() -> None:
    for unit, width, step in (("in", 45 * 25.4, "eighth_yard"), ("cm", 1400.0, "ten_cm")):
        project = new_project(unit=unit)  # type: ignore[arg-type]  # one of them
        layers = [layer for cloth in project.cloths for layer in cloth.layers]
        assert sorted(layers) == sorted(set(LAYERS) - {"waist_tape"})
        assert (project.cloths[0].width_mm, project.cloths[0].step) == (width, step)
        assert all(cloth.price == 0 for cloth in project.cloths)
    assert project.cloths[0].layers[0] == "fashion"


def test_a_cloth_takes_its_layers_from_the_others() -> None:
    project = add_cloth(example(), " Facing cloth ", ("hem_facing", "top_facing"))
    assert project.cloth("Facing cloth").layers == ("top_facing", "hem_facing")
    assert project.cloth(FASHION).layers == ("fashion", "modesty", "strip")
    back = set_cloth_layers(project, FASHION, (*project.cloth(FASHION).layers, "top_facing", "hem_facing"))
    assert remove_cloth(back, "Facing cloth") == example()


def test_a_removed_cloth_takes_its_plan_along() -> None:
    project = remove_cloth(laid(), FASHION)
    assert project.plans == ()
    assert [cloth.name for cloth in project.cloths] == ["Strong cloth", "Lining cloth", "Interfacing"]


def test_figures_of_a_cloth() -> None:
    project = set_cloth(
        example(),
        FASHION,
        width_mm=1371.6,
        run="one_way",
        laid="folded",
        repeat_mm=203,
        price=Decimal("38.50"),
    )
    assert project.cloth(FASHION) == replace(
        FIRST, width_mm=1371.6, run="one_way", laid="folded", repeat_mm=203.0, price=Decimal("38.5")
    )
    assert type(project.cloth(FASHION).repeat_mm) is float
    assert project.cloths[1:] == example().cloths[1:]


def test_a_remnant_is_set_and_taken_away() -> None:
    corners = ((0, 0), (900, 0), (700.0, 1200), (0, 1000))
    project = set_cloth(example(), FASHION, remnant=corners)
    assert project.cloth(FASHION).remnant == corners
    assert set_cloth(project, FASHION, remnant=None) == example()


def test_a_plan_goes_with_the_new_name_of_its_cloth() -> None:
    project = set_cloth(laid(), FASHION, name="Silk")
    assert project.plans == (replace(PLAN, cloth="Silk"),)
    assert set_cloth(project, "Silk", name=FASHION) == laid()
    assert set_cloth(laid(), FASHION, name="fashion CLOTH").cloths[0].name == "fashion CLOTH"


@pytest.mark.parametrize("key", CLOTH_ROWS)
@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 1e9, -1.0])
def test_figures_out_of_their_bounds_are_refused_by_name(key: str, value: float) -> None:
    with pytest.raises(ValueError, match=rf"^{CLOTH_ROWS[key].label}: it must be between .*\.$"):
        set_cloth(example(), FASHION, **{key: value})


@given(st.sampled_from(sorted(CLOTH_ROWS)), st.booleans())
@settings(deadline=None)
def test_the_ends_of_the_bounds_can_be_set_and_kept(key: str, upper: bool) -> None:
    row = CLOTH_ROWS[key]
    wide = set_cloth(example(), FASHION, width_mm=5000.0, selvedge_mm=0.0)
    project = set_cloth(wide, FASHION, **{key: row.high if upper else row.low})
    assert project_from(to_bytes(project)) == project


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"price": Decimal(-1)}, "Cloth › price must be an amount from 0 to 1,000,000."),
        ({"price": Decimal("1e10")}, "Cloth › price must be an amount from 0 to 1,000,000."),
        ({"price": Decimal("NaN")}, "Cloth › price must be an amount in quotation marks"),
        ({"width_mm": 25.4}, "The selvedges of Fashion cloth leave none of its width to use."),
        ({"price": Decimal("0.1234567")}, "Cloth › price has more decimals than any price."),
        ({"colour": "red"}, "The cloth has nothing called “colour”."),
        ({"run": "sideways"}, "Cloth › run must be either_way or one_way."),
        ({"width_mm": "wide"}, "Cloth › width_mm must be a number."),
        ({"layers": ()}, "The layers of a cloth have an edit of their own."),
        ({"name": "LINING cloth"}, "There is a cloth called “Lining cloth” already."),
        ({"name": "  "}, "The name of a cloth must be a name"),
        ({"name": "x" * 81}, "The name of a cloth is longer than 80 characters."),
        ({"name": "half \ud800"}, "The name of a cloth holds half a character"),
        ({"remnant": ((0, 0), (1, 1))}, "Cloth › remnant has 2 corners; 3 to 200 are possible."),
        ({"remnant": ((0, 0), (1, 1), (math.nan, 0))}, "Cloth › remnant › no. 3 is no usable corner."),
        ({"remnant": ((0, 0), (1, 1), (1,))}, "Cloth › remnant › no. 3 must be a list of 2"),
        (
            {"remnant": ((0, 0), (500, 500), (500, 0), (0, 500))},
            "The outline of the remnant of Fashion cloth crosses itself.",
        ),
    ],
)
def test_nonsense_is_refused_in_one_sentence(changes: dict[str, object], said: str) -> None:
    with pytest.raises(ValueError, match=r"\.$") as caught:
        set_cloth(example(), FASHION, **changes)  # type: ignore[arg-type]  # nonsense on purpose
    assert str(caught.value).startswith(said)


def test_names_nobody_knows_are_refused() -> None:
    nobody = "There is no cloth called “Brocade”."
    edits: list[Callable[[], Project]] = [
        lambda: set_cloth(example(), "Brocade", gap_mm=1.0),
        lambda: set_cloth_layers(example(), "Brocade", ()),
        lambda: remove_cloth(example(), "Brocade"),
        lambda: drop_plan(example(), "Brocade"),
        lambda: keep_plan(example(), replace(PLAN, cloth="Brocade")),
        lambda: pin_piece(example(), "Brocade", "fashion/Front 1", 1, True),
    ]
    for edit in edits:
        with pytest.raises(ValueError, match=nobody):
            edit()
    with pytest.raises(ValueError, match="There is no layer called “fur”"):
        set_cloth_layers(example(), FASHION, ["fur"])  # type: ignore[list-item]  # nonsense on purpose
    with pytest.raises(ValueError, match="There is a cloth called “Fashion cloth” already"):
        add_cloth(example(), "fashion cloth")


def test_so_many_cloths_and_no_more() -> None:
    project = example()
    for number in range(26):
        project = add_cloth(project, f"Cloth {number}")
    assert project_from(to_bytes(project)) == project
    with pytest.raises(ValueError, match="A project has at most 30 cloths"):
        add_cloth(project, "One more")


def test_a_kept_plan_replaces_the_one_before_and_is_dropped() -> None:
    lining = KeptPlan("Lining cloth", "1" * 32, 700.0, (), "")
    both = keep_plan(keep_plan(example(), lining), PLAN)
    assert both.plans == (PLAN, lining)
    assert both == keep_plan(laid(), lining)
    shorter = replace(PLAN, length_mm=800.0)
    assert keep_plan(both, shorter).plans == (shorter, lining)
    assert drop_plan(drop_plan(both, FASHION), "Lining cloth") == example()
    assert project_from(to_bytes(both)) == both


def test_a_piece_is_laid_elsewhere_by_hand() -> None:
    project = place_by_hand(laid(), FASHION, "fashion/Front 2", 2, x=310, y=290.5, degrees=0)
    kept = project.kept_plan(FASHION)
    assert kept is not None
    assert kept.placed == (PLAN.placed[0], Placed("fashion/Front 2", 2, 310.0, 290.5, 0.0, True))
    assert kept.how == "Laid for the test. Some of it was laid by hand."
    again = place_by_hand(project, FASHION, "fashion/Front 2", 2, 700.0, x=300)
    assert again.plans[0].how == kept.how
    assert again.plans[0].length_mm == 700.0
    assert place_by_hand(laid(), FASHION, "fashion/Front 1", 1, x=25.4) == laid()


def test_a_piece_is_pinned_and_let_go() -> None:
    pinned = pin_piece(laid(), FASHION, "fashion/Front 1", 1, True)
    assert [placed.pinned for placed in pinned.plans[0].placed] == [True, False]
    assert pinned.plans[0].how == PLAN.how
    assert pin_piece(pinned, FASHION, "fashion/Front 1", 1, False) == laid()


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"x": math.nan}, "no usable number"),
        ({"y": 1e9}, "no usable number"),
        ({"degrees": "half"}, "must be a number"),
        ({"upside_down": True}, "has nothing called"),
        ({"length_mm": -1.0}, "no usable length"),
    ],
)
def test_nonsense_laid_by_hand_is_refused(changes: dict[str, object], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        place_by_hand(laid(), FASHION, "fashion/Front 1", 1, **changes)  # type: ignore[arg-type]  # on purpose


def test_what_is_not_in_a_plan_cannot_be_moved() -> None:
    with pytest.raises(ValueError, match="There is no piece “fashion/Front 1”, copy 2, in the lay plan"):
        place_by_hand(laid(), FASHION, "fashion/Front 1", 2, x=0)
    with pytest.raises(ValueError, match="No lay plan is kept for “Fashion cloth” yet"):
        place_by_hand(example(), FASHION, "fashion/Front 1", 1, x=0)


def test_a_plan_that_cannot_be_is_not_kept() -> None:
    twice = replace(PLAN, placed=(PLAN.placed[0], PLAN.placed[0]))
    with pytest.raises(ValueError, match=r"placed names the piece fashion/Front 1 \(copy 1\) twice"):
        keep_plan(example(), twice)
    crowded = replace(PLAN, placed=tuple(Placed("a", n, 0.0, 0.0) for n in range(1, 10_001)))
    with pytest.raises(ValueError, match="has more than 400 pieces"):
        keep_plan(example(), crowded)


CROSSING = ((0.0, 0.0), (500.0, 500.0), (500.0, 0.0), (0.0, 500.0))


@pytest.mark.parametrize(
    ("project", "said"),
    [
        (
            replace(example(), cloths=(Cloth("A", ("lining",)), Cloth("a", ()))),
            "cloths names the cloth a twice",
        ),
        (
            replace(example(), cloths=(Cloth("A", ("lining",)), Cloth("B", ("lining",)))),
            "cloths names the layer lining twice",
        ),
        (
            replace(example(), cloths=(replace(FIRST, remnant=CROSSING),)),
            "cloths › no. 1 › remnant cannot be so: the outline of the remnant of Fashion cloth",
        ),
        (
            replace(example(), cloths=(replace(FIRST, width_mm=50.0, laid="folded", selvedge_mm=25.0),)),
            "cloths › no. 1 › selvedge_mm cannot be so: the selvedges of Fashion cloth leave none",
        ),
        (replace(laid(), cloths=()), "plans › no. 1 › cloth names the cloth “Fashion cloth”, which is none"),
        (replace(example(), plans=(PLAN, PLAN)), "plans names the cloth Fashion cloth twice"),
    ],
)
def test_a_file_that_contradicts_itself_is_refused(project: Project, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        project_from(to_bytes(project))

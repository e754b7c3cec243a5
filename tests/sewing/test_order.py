"""The sewing order says this garment's own numbers, in an order in which it can be sewn."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import pytest

from tests.pieces.figures import outcome, outcome_of
from workbench.draft import Reductions, usual_design
from workbench.pieces import Cutting, Making, Opening, cutting_of
from workbench.sewing import KEY, Step, chapters, minutes_by_stage, sewing_order

CLOSINGS = ("loops", "eyelets", "side_zip")


def made(making: Making | None = None) -> tuple[Cutting, Making]:
    making = making or Making()
    return cutting_of(outcome(), making), making


def steps(making: Making | None = None) -> tuple[Step, ...]:
    return sewing_order(*made(making))


def keys(order: Iterable[Step]) -> list[str]:
    return [step.key.removeprefix(KEY) for step in order]


def text_of(step: Step) -> str:
    return " ".join(say.text("in") for say in step.says)


def test_without_a_cutting_there_is_nothing_to_sew() -> None:
    assert sewing_order(Cutting((), (), None, None, (), (), (), ()), Making()) == ()


@pytest.mark.parametrize("closing", CLOSINGS)
@pytest.mark.parametrize("front", ["fold", "busk"])
def test_no_two_steps_are_ticked_off_by_the_same_key(closing: str, front: str) -> None:
    making = replace(Making(), front=front, opening=Opening(closing=closing))  # type: ignore[arg-type]
    order = steps(making)
    assert len({step.key for step in order}) == len(order)
    assert all(step.key.startswith(KEY) for step in order)


def test_what_is_ticked_off_stays_so_when_the_figures_change() -> None:
    tighter = replace(usual_design("over_bust"), reductions=Reductions(waist=80.0))
    cutting = cutting_of(outcome_of(tighter), Making())
    assert keys(sewing_order(cutting, Making())) == keys(steps())


def test_every_seam_of_the_shell_is_sewn_once_and_the_side_last() -> None:
    seams = [step for step in steps() if step.key.startswith(KEY + "seam.")]
    assert keys(seams) == ["seam.1", "seam.2", "seam.5", "seam.4", "seam.3"]
    assert seams[-1].title.endswith("side seam")


def test_the_busk_is_set_while_the_front_is_flat() -> None:
    order = keys(steps(replace(Making(), front="busk")))
    assert order.index("busk") < order.index("seam.1")
    assert "busk" not in keys(steps())


def test_bones_go_in_after_their_channels_and_before_the_edges_shut_them() -> None:
    order = keys(steps())
    bones = [order.index(key) for key in order if key.startswith("bone.")]
    assert order.index("channels") < min(bones)
    assert max(bones) < order.index("edges")


def test_each_bone_is_named_with_the_length_it_is_cut_to() -> None:
    cutting, making = made()
    said = {step.key.removeprefix(KEY + "bone."): text_of(step) for step in sewing_order(cutting, making)}
    for bone in cutting.bones:
        assert f"Cut {bone.count} of {bone.stock}" in said[bone.where]
    # worked by hand: a seam bone in stock of 8 1/2 in
    eights = [bone for bone in cutting.bones if bone.cut_length == pytest.approx(215.9)]
    assert all("8½ in long" in said[bone.where] for bone in eights)


def test_the_lengths_of_the_seams_are_those_that_are_walked() -> None:
    cutting, making = made()
    rows = {
        row.seam: row.left for row in cutting.walks if row.layer == "fashion" and row.part == "whole seam"
    }
    for step in sewing_order(cutting, making):
        if step.key.startswith(KEY + "seam."):
            assert step.says[0].lengths["length"] == rows[int(step.key.rpartition(".")[2])]


def test_a_zip_is_set_where_there_is_one_and_nothing_is_laced() -> None:
    order = keys(steps(Making(opening=Opening(closing="side_zip"))))
    assert "zip" in order
    assert not {"opening", "cord"} & set(order)


def test_a_layer_that_is_not_made_is_not_cut() -> None:
    layers = tuple(
        replace(choice, made=choice.made and choice.layer not in ("lining", "interfacing"))
        for choice in Making().layers
    )
    order = keys(steps(replace(Making(), layers=layers)))
    assert not {"cut.lining", "lining", "cut.interfacing", "interfacing"} & set(order)


def test_beads_go_on_before_the_lining_covers_their_threads() -> None:
    cutting, making = made()
    order = keys(sewing_order(cutting, making, beads=840, bead_minutes=120.0))
    assert order.index("beads") < order.index("lining")
    assert "beads" not in keys(sewing_order(cutting, making))


def test_the_minutes_of_the_stages_are_the_minutes_of_the_steps() -> None:
    order = steps()
    assert sum(minutes_by_stage(order).values()) == pytest.approx(sum(step.minutes for step in order))
    # worked by hand: eleven pieces basted at 4 minutes, two fittings of an hour, 11 loops a side at 2
    stages = minutes_by_stage(order)
    assert stages["Basting layers together"] == 44
    assert stages["Fittings"] == 120


def test_chapters_keep_the_order_and_lose_nothing() -> None:
    order = steps()
    assert [step for _, run in chapters(order) for step in run] == list(order)


@pytest.mark.parametrize("unit", ["in", "cm"])
def test_every_sentence_reads_in_either_unit(unit: str) -> None:
    for step in steps(replace(Making(), front="busk", opening=Opening(closing="eyelets"))):
        for say in (*step.says, *step.watch):
            text = say.text(unit)  # type: ignore[arg-type]
            assert text.endswith(".")
            assert "{" not in text


def test_a_reduction_is_never_called_harmless() -> None:
    said = " ".join(say.text("in") for step in steps() for say in (*step.says, *step.watch)).lower()
    assert "safe" not in said
    assert "short of breath" in said

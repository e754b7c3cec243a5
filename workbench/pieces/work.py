"""From a draft and a way of making to everything that lies on the cutting table."""

from __future__ import annotations

from workbench.draft import Draft, Outcome
from workbench.pieces.bench import Bench
from workbench.pieces.bones import bones_of
from workbench.pieces.busk import busk_of
from workbench.pieces.check import check_angles, check_walks, tolerance_of
from workbench.pieces.kinds import PANEL_LAYERS, allowance_findings, choice_of
from workbench.pieces.layers import empty_layer, layers_on
from workbench.pieces.making import LAYERS, LayerName, Making
from workbench.pieces.measured import measured_of
from workbench.pieces.notions import notions_of
from workbench.pieces.opening import opening_of
from workbench.pieces.result import AngleRow, Bone, Cutting, Layer
from workbench.pieces.uneven import uneven_findings

_NOTHING = Cutting((), (), None, None, (), (), (), ())


def cutting_of(outcome: Outcome, making: Making) -> Cutting:
    """All of it: layers, bones, opening, notions, the walk check and what is to be looked at; lengths in mm.

    Layers without a piece are left out; without a draft there is nothing.
    """
    draft = outcome.draft
    if draft is None:
        return _NOTHING
    bones, of_bones = bones_of(outcome, making)
    opening, of_opening = opening_of(outcome, making)
    busk, of_busk = busk_of(outcome, making)
    bench = Bench(outcome, draft, making, bones)
    layers = tuple(layer for layer in layers_on(bench, LAYERS) if layer.pieces)
    measured = measured_of(layers)
    of_allowances = *allowance_findings(bench.edging, draft), *uneven_findings(bench.edging, draft)
    return Cutting(
        layers,
        bones,
        opening,
        busk,
        notions_of(outcome, making, bones, opening, busk, layers, measured),
        check_walks(layers, outcome.design, tolerance_of(draft), _as_wide_as_shell(making), measured),
        _angles(layers, draft),
        (*of_allowances, *bench.findings, *of_bones, *of_opening, *of_busk),
    )


def layer_of(outcome: Outcome, making: Making, name: LayerName, bones: tuple[Bone, ...] = ()) -> Layer:
    """One layer alone, the same as among all: quick enough to follow a drag.

    ``bones`` are drawn on the layer that carries them. What was found is left to :func:`cutting_of`.
    """
    if outcome.draft is None:
        return empty_layer(name, making)
    return layers_on(Bench(outcome, outcome.draft, making, bones), (name,))[0]


def _angles(layers: tuple[Layer, ...], draft: Draft) -> tuple[AngleRow, ...]:
    """From the first layer that has the panels."""
    for layer in layers:
        if layer.name in PANEL_LAYERS:
            return check_angles(layer, draft)
    return ()


def _as_wide_as_shell(making: Making) -> list[LayerName]:
    """The layers with the same turn of cloth as the fashion cloth."""
    turn = choice_of(making, "fashion").turn_mm
    return [choice.layer for choice in making.layers if choice.turn_mm == turn]

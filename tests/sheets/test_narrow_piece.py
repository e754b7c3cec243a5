"""A piece narrower than its turn of cloth: its line crosses itself. That is told, and the rest printed."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import shapely

from tests.sheets.conftest import HEADING
from workbench.body import Limits, complete
from workbench.draft import (
    Design,
    Outcome,
    Quarter,
    Reductions,
    Seam,
    Share,
    comfort_of,
    usual_design,
    work_out,
)
from workbench.pieces import Allowances, Making, cutting_of
from workbench.sheets import PrintChoice, print_pdf
from workbench.sheets.shape import shape_of

_BODY_MM = {
    "bust_girth": 700.0,
    "waist_girth": 660.0,
    "underbust_girth": 660.0,
    "top_hip_girth": 660.0,
    "upper_chest_girth": 700.0,
    "shoulder_to_bust": 280.0,
    "shoulder_to_underbust": 310.0,
    "shoulder_to_waist": 360.0,
    "bust_span": 140.0,
    "waist_to_top_hip": 60.0,
    "underarm_to_waist": 95.0,
}
"""Invented."""


@pytest.fixture(scope="module")
def narrow() -> Outcome:
    """A draft with a panel of a quarter of an inch at the waist."""
    held = (Share("waist", 0.0),)
    seams = (
        Seam(0.6228571428571429, 0.6228571428571429, 0.156072849839254),
        Seam(0.45142857142857146, 0.42017857142857146, 1.0, shares=held),
        Seam(0.28, 0.28, 1.0),
    )
    design: Design = replace(
        usual_design("under_bust", 3, 4),
        rule="one_figure",
        front=Quarter((Seam(0.38, 0.38, 1.0), Seam(0.62, 0.62, 0.99999)), 1.0),
        back=Quarter(seams, 1.0, held),
        reductions=Reductions(waist=91.0),
        opening_mm=0.0,
    )
    outcome = work_out(complete(_BODY_MM), design)
    assert outcome.draft is not None
    return outcome


@pytest.mark.parametrize("with_allowance", [True, False])
@pytest.mark.parametrize("paper", ["A4", "A0", "roll"])
def test_it_is_told_and_printed(narrow: Outcome, paper: str, with_allowance: bool) -> None:
    usual = Making()
    layers = tuple(replace(layer, turn_mm=-6.35) for layer in usual.layers)
    making = replace(usual, layers=layers, allowances=Allowances(0, 0, 0, 0, 0, 0))
    cutting = cutting_of(narrow, making)
    assert any("crosses itself" in finding.text("in") for finding in cutting.findings)
    choice = PrintChoice(paper, with_allowance=with_allowance)
    assert print_pdf(narrow, comfort_of(narrow, Limits()), HEADING, choice, cutting).startswith(b"%PDF-")


def test_of_an_outline_that_crosses_itself_the_largest_part_is_the_shape() -> None:
    bow = np.array([(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 4.0)])
    shape = shape_of(bow)
    assert shape.is_valid
    assert shape.area == pytest.approx(
        max(part.area for part in shapely.make_valid(shapely.Polygon(bow)).geoms)
    )
    square = bow[[0, 2, 1]]
    assert shape_of(square).area == pytest.approx(50.0)

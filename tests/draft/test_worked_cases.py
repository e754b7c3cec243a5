"""The two worked cases: figures of an independent implementation (scipy curves, trapezoid arc integral)."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
import pytest

from tests.draft.conftest import worked_case
from workbench.draft import Outcome, work_out

Case = Mapping[str, Any]


def drafted(case: Case) -> Outcome:
    outcome = work_out(*worked_case(case))
    assert outcome.draft is not None, [f.text("cm") for f in outcome.findings]
    return outcome


def test_widths_agree_within_a_hundredth_of_a_millimetre(worked: Case) -> None:
    draft = drafted(worked).draft
    assert draft is not None
    for panel, expected in zip(draft.panels, worked["panels_centre_front_to_centre_back"], strict=True):
        assert panel.name.lower() == expected["panel"]
        for level, width in expected["width_mm"].items():
            assert panel.widths[level] == pytest.approx(width, abs=0.01), (panel.name, level)


def test_edge_points_agree_within_a_tenth_of_a_millimetre(worked: Case) -> None:
    outcome = drafted(worked)
    assert outcome.draft is not None
    for number, expected in enumerate(worked["panels_centre_front_to_centre_back"]):
        for edge, side in ((2 * number, "left_edge"), (2 * number + 1, "right_edge")):
            for level, x in expected[side]["x_at_level"].items():
                walk = np.array(outcome.level(level).walk)
                found_x, found_y = outcome.draft.surface.edges.xy(np.array(edge), walk)
                assert found_x == pytest.approx(x, abs=0.1)
                assert found_y == pytest.approx(expected[side]["y_at_level"][level], abs=0.1)


def test_girths_and_intake_agree(worked: Case) -> None:
    outcome = drafted(worked)
    assert outcome.blocks["front"] == pytest.approx(worked["block_quarter_mm"], abs=0.001)
    for level in outcome.levels:
        assert level.finished == pytest.approx(worked["finished_girth_mm"][level.name], abs=0.001)
        assert level.fabric == pytest.approx(worked["fabric_girth_mm"][level.name], abs=0.001)
        needed = worked["intake_per_quarter_mm"][level.name]
        assert outcome.line("front", level.name).needed == pytest.approx(needed, abs=0.001)
        assert outcome.line("back", level.name).needed == pytest.approx(needed, abs=0.001)


def test_tape_girth_agrees(worked: Case) -> None:
    draft = drafted(worked).draft
    assert draft is not None
    for level, girth in worked["tape_girth_mm"].items():
        assert draft.tape_girth[level] == pytest.approx(girth, abs=0.01)


def test_steepest_flare_agrees(worked: Case) -> None:
    outcome = drafted(worked)
    assert outcome.draft is not None
    steepest = outcome.draft.surface.edges.steepest
    for number, expected in enumerate(worked["panels_centre_front_to_centre_back"]):
        for edge, side in ((2 * number, "left_edge"), (2 * number + 1, "right_edge")):
            assert steepest[edge].max() == pytest.approx(expected[side]["steepest_dx_dt"], abs=0.01)

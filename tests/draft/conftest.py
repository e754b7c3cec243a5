"""Bodies and designs to draft from."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from workbench.body import LEVEL_GIRTH, Body, complete
from workbench.draft import Design, Quarter, Reductions, Seam

DATA = Path(__file__).parents[1] / "data"


def body_from(girths: Mapping[str, float], walks: Mapping[str, float]) -> Body:
    """A body whose levels have exactly these girths and walks, mm."""
    to_waist = 400.0
    taken = {LEVEL_GIRTH[level]: girth for level, girth in girths.items()}
    taken["shoulder_to_waist"] = to_waist
    taken["shoulder_to_underbust"] = to_waist - walks["underbust"]
    taken["shoulder_to_bust"] = to_waist - walks["bust"]
    taken["waist_to_top_hip"] = -walks["top_hip"]
    if "upper_chest" in walks:
        taken["underarm_to_waist"] = walks["upper_chest"]
    return complete(taken)


def worked_case(case: Mapping[str, Any]) -> tuple[Body, Design]:
    """Body and design of one worked case."""
    given = case["inputs"]
    front = tuple(
        Seam(s["position"], s["position"], s["weight"], s["left_part"]) for s in given["front_inner_seams"]
    )
    back = tuple(
        Seam(s["position"], s["position"], s["weight"], 1 - s["part_towards_centre_back"])
        for s in reversed(given["back_inner_seams_counted_from_centre_back"])
    )
    reduction = given["reduction_round_mm"]
    design = Design(
        style="over_bust" if "upper_chest" in given["walk_mm"] else "under_bust",
        rule=given["rule"].replace(" ", "_"),
        front=Quarter(front, given["front_side_weight"]),
        back=Quarter(back, given["back_side_weight"]),
        reductions=Reductions(waist=reduction, underbust=reduction),
        opening_mm=given["opening_mm"],
    )
    return body_from(given["body_girth_mm"], given["walk_mm"]), design


WORKED_CASES = json.loads((DATA / "draft_check_values.json").read_text())["cases"]


@pytest.fixture(params=WORKED_CASES, ids=lambda case: case["name"])
def worked(request: pytest.FixtureRequest) -> Mapping[str, Any]:
    """Each of the two cases worked by an independent implementation of the method."""
    return request.param  # type: ignore[no-any-return]

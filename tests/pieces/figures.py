"""A body with round figures, invented, and outcomes drafted on it."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from tests.draft.conftest import body_from
from workbench.draft import Design, Draft, Outcome, Style, usual_design, work_out

GIRTHS = {"top_hip": 960.0, "waist": 740.0, "underbust": 800.0, "bust": 980.0, "upper_chest": 920.0}
WALKS = {"top_hip": -100.0, "waist": 0.0, "underbust": 85.0, "bust": 160.0, "upper_chest": 215.0}


def outcome_of(design: Design, **girths: float) -> Outcome:
    return work_out(body_from({**GIRTHS, **girths}, WALKS), design)


@cache
def outcome(style: Style = "over_bust", opening: float = 50.8) -> Outcome:
    """Six panels a half, worn 2 in open unless said."""
    return outcome_of(replace(usual_design(style), opening_mm=opening))


def drafted(made: Outcome) -> Draft:
    assert made.draft is not None, [finding.text("cm") for finding in made.findings]
    return made.draft

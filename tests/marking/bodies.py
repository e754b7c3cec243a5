"""Invented bodies and designs to mark: from the 1st to the 99th percentile and beyond."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from workbench.body import Body, complete
from workbench.draft import Design, Outcome, Reductions, usual_design, work_out


def outcomes(count: int, seed: int) -> Iterator[Outcome]:
    """So many bodies, each with a design that can be drafted on it.

    Ranges widen those of the 600 women of the Spanish apparel survey sample (CRAN package
    Anthropometry; read).
    """
    chance = np.random.default_rng(seed)
    made = 0
    while made < count:
        outcome = work_out(_body(chance), _design(chance))
        if outcome.draft is not None:
            made += 1
            yield outcome


def _body(chance: np.random.Generator) -> Body:
    bust = chance.uniform(760, 1300)
    underbust = bust - chance.uniform(50, 180)
    waist = max(underbust - chance.uniform(-30, 150), 560.0)
    to_waist = chance.uniform(370, 470)
    to_underbust = to_waist - chance.uniform(60, 110)
    to_bust = to_underbust - chance.uniform(40, 85)
    return complete(
        {
            "bust_girth": bust,
            "underbust_girth": underbust,
            "waist_girth": waist,
            "top_hip_girth": waist + chance.uniform(20, 230),
            "upper_chest_girth": bust - chance.uniform(-10, 120),
            "shoulder_to_waist": to_waist,
            "shoulder_to_underbust": to_underbust,
            "shoulder_to_bust": to_bust,
            "waist_to_top_hip": chance.uniform(65, 125),
            "underarm_to_waist": to_waist - to_bust + chance.uniform(20, 65),
            "bust_span": chance.uniform(150, 250),
        }
    )


def _design(chance: np.random.Generator) -> Design:
    style = ("under_bust", "over_bust")[int(chance.integers(2))]
    design = usual_design(style, int(chance.integers(2, 5)), int(chance.integers(2, 5)))  # type: ignore[arg-type]
    reductions = Reductions(waist=chance.uniform(0, 110), underbust=chance.uniform(0, 60))
    return replace(design, reductions=reductions, opening_mm=chance.uniform(0, 100))

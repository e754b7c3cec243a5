"""Projects to begin from: the demos, and one with something in every entry (invented)."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from functools import cache
from pathlib import Path

from tests.document import example
from tests.document.bead_values import BEADED
from tests.document.fitting_values import FITTED
from tests.document.wish_values import picture
from workbench.cloth import PriceRow, kept
from workbench.document import (
    Project,
    add_wish,
    keep_plan,
    lay_behind,
    measure_anew,
    picture_of,
    set_client,
    set_done,
    set_measurement,
    set_own_allowance,
    set_pin,
    set_price_row,
)

DEMOS = sorted((Path(__file__).parents[2] / "demo_projects").glob("*.bodice"))


@cache
def full_project() -> Project:
    """An over-bust bodice with fittings, beads, pictures, a plan and earlier measurements."""
    project = set_client(example("over_bust"), name="Soprano (invented)", notes="½ an inch\nat the hem")
    project = replace(project, beads=BEADED, fittings=FITTED)
    project = measure_anew(project, "2031-03-01")
    project = set_measurement(project, "waist_girth", "27 1/2")
    project = add_wish(add_wish(project, picture("front", 8, 6)), picture("back", 3, 5, "the closing"))
    project = set_price_row(project, PriceRow("bone", "Bone of her own (invented)", Decimal("1.50"), "each"))
    project = set_done(lay_behind(project, "front"), "cut/fashion", True)
    project = set_own_allowance(set_pin(project, "front", 1, "waist", 9.0), "lining", 1, "hem", 12.0)
    plan = picture_of(project).plan_for(project.cloths[0].name)
    assert plan is not None
    return keep_plan(project, kept(plan))

"""Whatever a project may hold as a bead plan is laid or refused by name, and never wrongly."""

from __future__ import annotations

import numpy as np
import shapely
from hypothesis import given, settings
from scipy.spatial import cKDTree

from tests.beads.garments import beading, bodice
from tests.document.bead_values import bead_plans
from workbench.beads import MOST_HALF, Beading, BeadPlan
from workbench.beads.ground import TOUCH

SPECK = 1e-5


@given(bead_plans())
@settings(max_examples=40, deadline=None)
def test_any_plan_is_laid_rightly_or_refused(plan: BeadPlan) -> None:
    beads = beading(plan)
    assert len(beads.all) <= MOST_HALF
    assert beads.count.total == sum(each.total for each in beads.beaded)
    for each in beads.beaded:
        named = [f for f in beads.findings if each.name in f.text("in") and f.severity == "attend"]
        assert each.total or named, each.name
    looked_over(beads)


def looked_over(beads: Beading) -> None:
    """Within the stitch lines, and no two on each other."""
    draft = bodice().draft
    assert draft is not None
    lying = beads.all
    across = np.array([kind.size_mm for kind in beads.plan.kinds] or [0.0])[lying.kinds]
    for panel in draft.panels:
        own = lying.panels == panel.index
        points, sizes = lying.points[own], across[own]
        free = ~lying.once[own]
        discs = shapely.buffer(shapely.points(points[free]), 0.5 * sizes[free] - SPECK)
        assert shapely.contains(shapely.polygons(panel.outline), discs).all()
        if len(points) > 1:
            pairs = cKDTree(points).query_pairs(float(sizes.max()), output_type="ndarray")
            apart = np.hypot(*(points[pairs[:, 0]] - points[pairs[:, 1]]).T)
            need = 0.5 * TOUCH * (sizes[pairs[:, 0]] + sizes[pairs[:, 1]])
            assert (apart >= need - SPECK).all()

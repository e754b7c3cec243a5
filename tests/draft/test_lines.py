"""Neckline and hem where they cross the seams, against scipy's PchipInterpolator over the run."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator

from tests.draft.strategies import bodies
from workbench.body import Body
from workbench.draft import Design, ShapePoint, usual_design, work_out

heights = st.lists(st.integers(0, 60), min_size=4, max_size=4)


def with_neckline(heights: list[int]) -> Design:
    """Four points, none at an inner seam; corners at the ends alone, where the curve is the published one."""
    places = (0.0, 1.4, 4.6, 6.0)
    points = [ShapePoint(u, 120.0 + t, u not in (0.0, 6.0)) for u, t in zip(places, heights, strict=True)]
    return replace(usual_design("over_bust"), neckline=tuple(points))


@settings(max_examples=40, deadline=None)
@given(bodies(), heights)
def test_a_line_crosses_every_seam_where_run_and_walk_agree(body: Body, heights: list[int]) -> None:
    draft = work_out(body, with_neckline(heights)).draft
    if draft is None:
        return
    points, surface = draft.neckline.points, draft.surface
    own = surface.runs(surface.shares(np.array([p.u for p in points])), np.array([p.t for p in points]))
    curve = PchipInterpolator(own, [point.t for point in points])
    walks = np.array(draft.neckline.seam_walks)
    runs = surface.runs(surface.shares(np.arange(7.0)), walks)
    assert walks == pytest.approx(curve(runs), abs=0.005)

"""Edge curves against scipy: PchipInterpolator for the cubic, quad for the arc length."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.interpolate import PchipInterpolator

from workbench.draft.edges import edges_through, heights_at_levels
from workbench.draft.monotone import Spacing, slopes_of_few

WALKS = np.array([-101.6, 0.0, 76.2, 152.4, 203.2])
LEVELS = Spacing(WALKS)
lengths = st.lists(st.integers(-4000, 4000).map(lambda n: n / 100), min_size=5, max_size=5)


@given(lengths)
def test_slopes_are_those_of_pchip(values: list[float]) -> None:
    x = np.array([values])
    expected = PchipInterpolator(WALKS, x[0]).derivative()(WALKS)
    assert LEVELS.slopes(LEVELS.chords(x))[0] == pytest.approx(expected, abs=1e-9)
    assert slopes_of_few(WALKS.tolist(), values) == pytest.approx(expected, abs=1e-9)


@given(lengths)
def test_an_edge_is_the_pchip_curve_and_straight_beyond(values: list[float]) -> None:
    edges = edges_through(LEVELS, np.array([values, values]))
    pchip = PchipInterpolator(WALKS, values)
    inside = np.linspace(WALKS[0], WALKS[-1], 60)
    assert edges.at(np.array(0), inside)[0] == pytest.approx(pchip(inside), abs=1e-9)
    beyond = WALKS[-1] + np.array([10.0, 80.0])
    straight = values[-1] + pchip.derivative()(WALKS[-1]) * (beyond - WALKS[-1])
    assert edges.at(np.array(1), beyond)[0] == pytest.approx(straight, abs=1e-6)


@given(st.lists(st.integers(-1800, 1800).map(lambda n: n / 100), min_size=5, max_size=5))
def test_the_walk_is_the_arc_length(values: list[float]) -> None:
    slope = PchipInterpolator(WALKS, values).derivative()
    if np.abs(slope(np.linspace(WALKS[0], WALKS[-1], 500))).max() > 0.6:
        return
    edges = edges_through(LEVELS, np.array([values]))
    for walk in (-101.6, -40.0, 33.0, 120.0, 203.2):
        inner = [w for w in WALKS[1:-1] if min(0, walk) < w < max(0, walk)]
        expected, _ = quad(lambda t: np.sqrt(1 - slope(t) ** 2), 0, walk, points=inner or None, limit=200)
        assert edges.at(np.array(0), np.array(walk))[1] == pytest.approx(expected, abs=1e-3)


def test_heights_at_the_levels_are_those_of_the_edge() -> None:
    x = np.array([[0.0, -12.0, -9.0, 3.0, 1.0], [60.0, 80.0, 77.0, 62.0, 66.0]])
    edges = edges_through(LEVELS, x)
    assert heights_at_levels(LEVELS, x) == pytest.approx(edges.at(np.array([[0], [1]]), WALKS)[1], abs=1e-9)


def test_height_is_nothing_at_the_waist() -> None:
    edges = edges_through(LEVELS, np.array([[0.0, 14.0, 9.0, 3.0, 1.0]]))
    assert edges.at(np.array(0), np.array(0.0))[1] == pytest.approx(0.0, abs=1e-9)

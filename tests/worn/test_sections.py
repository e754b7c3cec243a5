"""Sections of a torso: their girth is the tape's, and an ellipse falls short of it by what was measured."""

from __future__ import annotations

from dataclasses import fields

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.special import ellipe

from workbench.worn import LEAST_DEPTH, MOST_DEPTH, MOST_SHORT, Torso
from workbench.worn.sections import BETWEEN, RING, ROW_OF, ROWS, STATIONS, exponents_of, sections_of
from workbench.worn.torso import HIP_DEPTH, exponent_of, perimeter_of

depths = st.floats(LEAST_DEPTH, MOST_DEPTH)
shorts = st.floats(0.0, MOST_SHORT)


def girth_by_scipy(a: float, b: float, n: float) -> float:
    """The length of |x/a|^n + |z/b|^n = 1, by integrating over the polar angle."""

    def speed(angle: float) -> float:
        cos, sin = np.cos(angle), np.sin(angle)
        powers = (cos / a) ** n + (sin / b) ** n
        change = n * (-((cos / a) ** (n - 1)) * sin / a + (sin / b) ** (n - 1) * cos / b)
        radius = powers ** (-1 / n)
        return float(np.hypot(radius, -radius * change / (n * powers)))

    corner = float(np.arctan2(b, a))
    found = quad(speed, 0, np.pi / 2, points=[corner], limit=400, epsabs=1e-10)[0]
    return float(4 * found)


def ellipse_girth(a: float, b: float) -> float:
    """By the complete elliptic integral of the second kind (scipy)."""
    long, short = max(a, b), min(a, b)
    return float(4 * long * ellipe(1 - (short / long) ** 2))


@given(depths, st.floats(2.0, 9.0))
def test_a_section_is_as_long_as_scipy_says(depth: float, exponent: float) -> None:
    assert perimeter_of(depth, exponent) == pytest.approx(girth_by_scipy(1.0, depth, exponent), rel=1e-6)


@given(depths, shorts)
def test_the_exponent_leaves_an_ellipse_as_short_as_asked(depth: float, short: float) -> None:
    exponent = exponent_of(depth, short)
    tape = girth_by_scipy(1.0, depth, exponent)
    assert ellipse_girth(1.0, depth) / tape == pytest.approx(1 - short / 100, abs=1e-6)


def test_an_ellipse_reads_six_per_cent_short_at_the_waist_and_ten_at_the_hip() -> None:
    """ANSUR II, derived: waist depth for breadth .705 (median, read)."""
    sections = sections_of(Torso())
    for station, short in (("waist", 0.06), ("hip", 0.10)):
        row = ROW_OF[station]
        a, b = float(sections.half_breadth[row]), float(sections.half_depth[row])
        assert ellipse_girth(a, b) == pytest.approx(1 - short, abs=1e-6)
    waist = ROW_OF["waist"]
    assert sections.half_depth[waist] / sections.half_breadth[waist] == pytest.approx(0.705)


def test_every_station_has_the_girth_one_by_scipy() -> None:
    sections = sections_of(Torso())
    for number, station in enumerate(STATIONS):
        row = ROW_OF[station]
        exponent = exponents_of(Torso())[number]
        a, b = float(sections.half_breadth[row]), float(sections.half_depth[row])
        assert girth_by_scipy(a, b, exponent) == pytest.approx(1.0, abs=1e-6)


def test_the_depths_are_those_that_were_set() -> None:
    torso = Torso(top_hip=0.6, waist=0.8, underbust=0.9, bust=1.0, upper_chest=0.65)
    sections = sections_of(torso)
    for field in fields(torso)[:5]:
        row = ROW_OF[field.name]
        found = sections.half_depth[row] / sections.half_breadth[row]
        assert found == pytest.approx(getattr(torso, field.name))
    hip = ROW_OF["hip"]
    assert sections.half_depth[hip] / sections.half_breadth[hip] == pytest.approx(HIP_DEPTH)


def test_a_ring_lies_on_its_section_in_even_steps() -> None:
    sections = sections_of(Torso())
    exponents = BETWEEN.smooth(list(range(len(STATIONS))), exponents_of(Torso()))
    a, b = sections.half_breadth[:, None], sections.half_depth[:, None]
    n = exponents[:, None]
    on = np.abs(sections.x / a) ** n + np.abs(sections.z / b) ** n
    assert np.allclose(on, 1.0, atol=2e-3)
    steps = np.hypot(np.diff(sections.x), np.diff(sections.z))
    assert sections.x.shape == (ROWS, RING + 1)
    assert np.all(steps <= 1 / RING + 1e-9)
    assert np.all(steps.sum(axis=1) > 0.999)


def test_a_ring_begins_in_front_goes_round_by_her_left_and_is_the_same_on_both_sides() -> None:
    sections = sections_of(Torso())
    quarter, half = RING // 4, RING // 2
    assert np.allclose(sections.z[:, 0], sections.half_depth)
    assert np.allclose(sections.x[:, quarter], sections.half_breadth)
    assert np.allclose(sections.z[:, half], -sections.half_depth)
    assert np.allclose(sections.x[:, ::-1], -sections.x, atol=1e-12)
    assert np.allclose(sections.z[:, ::-1], sections.z, atol=1e-12)

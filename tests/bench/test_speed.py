"""Nothing takes more than twice its goal; the goal itself stands in the table."""

from __future__ import annotations

import sys
from collections.abc import Callable

import pytest

from tests.bench import growth, scenes, searching, starting, works
from tests.bench.clock import Timing, table
from tests.bench.growth import Growth, growth_table

ALL = (*works.ALL, *scenes.ALL, *starting.ALL, *searching.ALL)
SLACK = 2.0
"""Twice the goal, so that a busy machine does not fail a sound change."""


@pytest.mark.bench
@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="memory is read from /proc")
@pytest.mark.parametrize(
    "scene", [*works.ALL, *scenes.ALL, *starting.ALL, *searching.ALL], ids=lambda scene: scene.__name__
)
def test_speed(scene: Callable[[], Timing], capsys: pytest.CaptureFixture[str]) -> None:
    timing = scene()
    with capsys.disabled():
        print("\n" + table([timing]))
    assert timing.goal is not None
    assert (timing.middle if timing.unit == "MB" else timing.high) <= SLACK * timing.goal


GROWTH = (
    (growth.with_panels, 1.3),
    (growth.edges_alone, 1.3),
    (growth.with_points, 1.3),
    (growth.with_pieces, 2.4),
)
"""The power of its size that each kind of work may grow by: in proportion, with some room, and the lay plan,
where every piece is tried beside every other, by the square. The client book has a test of its own."""


@pytest.mark.bench
@pytest.mark.parametrize(("made", "most"), GROWTH, ids=lambda value: getattr(value, "__name__", str(value)))
def test_cost_grows_no_faster_than_it_must(
    made: Callable[[], Growth | tuple[Growth, ...]], most: float, capsys: pytest.CaptureFixture[str]
) -> None:
    grown = made()
    rows = [grown] if isinstance(grown, Growth) else list(grown)
    with capsys.disabled():
        print("\n" + growth_table(rows))
    assert all(row.power <= most for row in rows)

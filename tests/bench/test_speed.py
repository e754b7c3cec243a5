"""Nothing takes more than twice its goal; the goal itself stands in the table."""

from __future__ import annotations

import sys
from collections.abc import Callable

import pytest

from tests.bench import scenes, searching
from tests.bench.clock import Timing, table

SLACK = 2.0
"""Twice the goal, so that a busy machine does not fail a sound change."""


@pytest.mark.bench
@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="memory is read from /proc")
@pytest.mark.parametrize("scene", [*scenes.ALL, *searching.ALL], ids=lambda scene: scene.__name__)
def test_speed(scene: Callable[[], Timing], capsys: pytest.CaptureFixture[str]) -> None:
    timing = scene()
    with capsys.disabled():
        print("\n" + table([timing]))
    assert timing.goal is not None
    assert (timing.middle if timing.unit == "MB" else timing.high) <= SLACK * timing.goal

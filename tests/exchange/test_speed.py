"""How long a file takes to be made, in process time, so that a busy machine does not matter."""

from __future__ import annotations

import time

import pytest

from tests.exchange.conftest import exported
from tests.sheets.conftest import EVERY_LAYER, cut_job, job
from workbench.exchange import Projector
from workbench.pieces import LAYERS, Making

GOAL_S = 0.5
"""Each file of eight over-bust panels in every layer, once the library that writes it has been read."""


@pytest.mark.bench
@pytest.mark.parametrize(
    ("kind", "choice"),
    [
        ("svg", {}),
        ("dxf", {"dxf": "R2000"}),
        ("dxf", {"dxf": "R12"}),
        ("pdf", {}),
        ("pdf", {"scale": 0.5}),
        ("pdf", {"projector": Projector()}),
    ],
)
def test_a_file_takes_no_more_than_twice_its_goal(
    kind: str, choice: dict[str, object], capsys: pytest.CaptureFixture[str]
) -> None:
    cut = cut_job(job("over_bust", 4, 4, 50.8), Making(layers=EVERY_LAYER))
    exported(cut, kind, **choice)  # type: ignore[arg-type]
    start = time.process_time()
    data = exported(cut, kind, layers=LAYERS, **choice)  # type: ignore[arg-type]
    took = time.process_time() - start
    with capsys.disabled():
        print(f"\n{kind} {choice} {1000 * took:.0f} ms, {len(data) // 1000} kB (goal {1000 * GOAL_S:.0f})")
    assert took <= 2 * GOAL_S

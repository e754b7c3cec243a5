"""The client book opens in the time it has, and ten times the clients cost about ten times as much."""

from __future__ import annotations

import pytest

from tests.bench.books import GOAL_COUNT, GOAL_MS, book_of, built, warm
from tests.bench.clock import table

FEW, MANY = 60, 600
PER_FILE_MS = 12.0
"""Read, checked, drafted and drawn small; done once for each file that is new or has changed."""


@pytest.mark.bench
def test_the_list_opens_in_time_and_grows_with_the_clients_alone(capsys: pytest.CaptureFixture[str]) -> None:
    lists = []
    for count in (FEW, MANY):
        with book_of(count) as (folder, index):
            _, reading = built(folder, index)
            lists.append(warm(folder, index))
    with capsys.disabled():
        print("\n" + table([*lists, reading]))
    few, many = (row.middle for row in lists)
    assert many * GOAL_COUNT / MANY <= GOAL_MS
    assert many <= 3 * few * MANY / FEW
    assert reading.middle <= PER_FILE_MS

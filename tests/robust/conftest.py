"""All tests of this folder are marked, and their table is printed after them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.robust.tally import ROWS, Row, table

_ALSO = ("test_killed", "calls_that_return_nothing")
"""Tests from elsewhere that belong in the table."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if Path(__file__).parent in item.path.parents:
            item.add_marker(pytest.mark.robust)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    rows = [*ROWS, *_elsewhere(terminalreporter)]
    if rows:
        terminalreporter.section("what was tried and what fell")
        terminalreporter.write_line(table(rows))


def _elsewhere(terminalreporter: pytest.TerminalReporter) -> Iterator[Row]:
    """A line for each test that keeps no count of its own."""
    for outcome in ("passed", "skipped", "failed", "error"):
        for report in terminalreporter.stats.get(outcome, ()):
            if any(also in report.nodeid for also in _ALSO):
                one = Row(report.nodeid.partition("::")[2].removeprefix("test_").replace("_", " "))
                if outcome in ("failed", "error"):
                    one.fall(outcome)
                else:
                    one.note("held" if outcome == "passed" else "skipped")
                yield one

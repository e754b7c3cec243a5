"""All tests of this folder are marked, and their table is printed after them."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.robust.tally import ROWS, Row, table

_ALSO = ("test_killed", "calls_that_return_nothing")
"""Tests from elsewhere that belong in the table."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if Path(__file__).parent in item.path.parents:
            item.add_marker(pytest.mark.robust)


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """A test that keeps no count of its own is a line by itself."""
    name = report.nodeid.partition("::")[2]
    if any(also in report.nodeid for also in _ALSO) and (report.when == "call" or report.outcome != "passed"):
        one = Row(name.removeprefix("test_").replace("_", " "))
        (one.fall if report.failed else one.note)("skipped" if report.skipped else "held")
        ROWS.append(one)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    if ROWS:
        terminalreporter.section("what was tried and what fell")
        terminalreporter.write_line(table(ROWS))

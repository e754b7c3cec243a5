"""The tables go between the marks of the README, and nothing else of it changes."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from tests.bench.clock import Timing
from tests.bench.readme import BEGIN, END, with_tables
from tests.bench.scenes import ALL as SCENES
from tests.bench.works import ALL as WORKS

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")

ROWS = [Timing("quick work", 1.0, 1.5, goal=2.0, floor=0.5), Timing("slow work", 3.0, 3.5, goal=2.0)]


def test_what_is_outside_the_marks_stays() -> None:
    changed = with_tables(README, ROWS, "the growth", date(2026, 2, 3))
    before, _, rest = changed.partition(BEGIN)
    inside, _, after = rest.partition(END)
    assert README.startswith(before)
    assert README.endswith(after)
    assert "    quick work, ms" in inside
    assert "Not met there: slow work takes 3.00 ms where 2 is wanted." in " ".join(inside.split())
    assert "    the growth\n" in inside
    assert "3 February 2026" in inside


def test_a_readme_without_marks_is_told() -> None:
    with pytest.raises(ValueError, match=r"README\.md has no"):
        with_tables("# A program", ROWS, "")


def test_the_readme_shows_the_last_table() -> None:
    inside = README.partition(BEGIN)[2].partition(END)[0]
    assert "times floor" in inside
    rows = [line for line in inside.splitlines() if line.endswith(tuple("0123456789"))]
    assert len(rows) >= len(SCENES) + len(WORKS)

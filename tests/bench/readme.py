"""The last tables in the README, with the day and the kind of machine they were made on."""

from __future__ import annotations

import os
import platform
from collections.abc import Sequence
from datetime import date
from textwrap import fill, indent

from tests.bench.clock import Timing, table

BEGIN, END = "<!-- bench: begin -->", "<!-- bench: end -->"
_EXPLAINED = """\
Process time. The floor is the least that could be: the same scene painted with nothing computed, a bare
window, or the library that does the last step with everything ready. CI fails at twice a goal.
The second figure of memory is the whole process."""
_GROWTH = """\
How cost grows, least of several times. A quarter has two to four panels, so the half has four to eight and
the garment up to sixteen; the curves alone were also drawn for more. Pieces are those of the largest demo
over and over, clients the demos under invented names."""


def machine_kind() -> str:
    """What the figures were measured on, without saying whose it is."""
    cores = os.cpu_count() or 1
    return (
        f"{cores} core{'s' if cores > 1 else ''} ({platform.machine()}) of a machine that others use too, "
        f"{platform.system()}, Python {platform.python_version()}"
    )


def with_tables(readme: str, rows: Sequence[Timing], growth: str, day: date | None = None) -> str:
    """The README with both tables between its marks; ValueError where a mark is missing."""
    before, begin, rest = readme.partition(BEGIN)
    _, end, after = rest.partition(END)
    if not begin or not end:
        raise ValueError(f"README.md has no {BEGIN} and {END}.")
    day = day or date.today()
    when = fill(f"{day.day} {day:%B %Y}, {machine_kind()}. {_EXPLAINED} {not_met(rows)}", 118)
    parts = (_block(table(rows)), when, fill(_GROWTH, 118), _block(growth))
    return f"{before}{begin}\n" + "\n\n".join(parts) + f"\n{end}{after}"


def not_met(rows: Sequence[Timing]) -> str:
    """Which goals are missed, at the median."""
    missed = [
        f"{row.what} takes {row.middle:.2f} {row.unit} where {row.goal:g} is wanted"
        for row in rows
        if row.goal is not None and row.middle > row.goal
    ]
    return f"Not met there: {'; '.join(missed)}." if missed else "Every goal is met there."


def _block(text: str) -> str:
    return indent("\n".join(line.rstrip() for line in text.splitlines()), "    ")

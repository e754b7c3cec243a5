"""Sections, tables and sentences as lines of text, lengths in the user's own unit."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from textwrap import wrap

from workbench.body import say_at_most, say_closely, say_length, say_with_unit
from workbench.document.project import Project

WIDTH = 96
"""Own choice: characters of a line."""
_UNIT_AFTER = re.compile(r"(?<=[\d¼-¾⅐-⅞₀-₉]) (?=(?:in|cm|%)(?:\W|$))")
"""The blank between a figure and its unit, which must not be torn apart at the end of a line."""
_KEEP = "\u00a0"


@dataclass(frozen=True)
class Said:
    """Lengths as this project shows them."""

    project: Project

    def __call__(self, mm: float) -> str:
        """The length without its unit."""
        return say_length(mm, self.project.unit, self.project.fraction)

    def unit(self, mm: float) -> str:
        """The length with its unit."""
        return say_with_unit(mm, self.project.unit, self.project.fraction)

    def closely(self, mm: float) -> str:
        """The length without its unit, to a thirty-second where it is one."""
        project = self.project
        return say_closely(mm, project.unit, project.fraction).removesuffix(f" {project.unit}")

    def at_most(self, mm: float) -> str:
        """A limit without its unit, never more than it is."""
        project = self.project
        return say_at_most(mm, project.unit, project.fraction).removesuffix(f" {project.unit}")


def section(title: str, lines: Iterable[str]) -> Iterator[str]:
    """An empty line, a title, and what belongs under it."""
    yield ""
    yield title
    yield from (f"  {line}" for line in lines)


def bullets(sentences: Iterable[str]) -> Iterator[str]:
    """Each sentence behind a dash, in lines of at most 96 characters where words allow."""
    for sentence in sentences:
        joined = _UNIT_AFTER.sub(_KEEP, sentence)
        lines = wrap(joined, WIDTH - 4, initial_indent="- ", subsequent_indent="  ")
        yield from (line.replace(_KEEP, " ") for line in lines)


def table(rows: Sequence[Sequence[str]], words: Sequence[int] = (0,)) -> Iterator[str]:
    """Rows in columns: those that hold words are set to the left, figures to the right."""
    widths = [max(len(row[i]) for row in rows if i < len(row)) for i in range(max(map(len, rows)))]
    for row in rows:
        cells = (
            cell.ljust(width) if i in words else cell.rjust(width)
            for i, (cell, width) in enumerate(zip(row, widths, strict=False))
        )
        yield "  ".join(cells)

"""What stands in the table of the ledger: its columns, and the figures of each level."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple

from workbench.body import LevelName
from workbench.draft import Design, LedgerLine, Outcome, QuarterName, Taking, seam_name

Kind = Literal["name", "seam", "placed", "needed", "gap", "body", "reduction", "finished"]

_SUMS: tuple[Kind, ...] = ("placed", "needed", "gap")
_BODY: tuple[Kind, ...] = ("body", "reduction", "finished")
_LABELS: dict[Kind, str] = {
    "placed": "Placed",
    "needed": "Needed",
    "gap": "Closes?",
    "body": "Body",
    "reduction": "Reduction",
    "finished": "Finished",
}
CLOSED_MM = 0.001
"""What a sum may be out by and still close."""
_QUARTERS: tuple[QuarterName, QuarterName] = ("front", "back")


@dataclass(frozen=True)
class Column:
    """One column; ``quarter`` is None round the body."""

    kind: Kind
    label: str
    group: str = ""
    quarter: QuarterName | None = None
    seam: int = 0
    name: str = ""
    """Of the seam, in full."""


def columns_of(design: Design) -> tuple[Column, ...]:
    """The columns for a design: from the centre front to the centre back, then round the body."""
    side, count = design.front.panel_count, design.panel_count
    return (
        Column("name", "Level"),
        *_quarter_columns("front", range(1, side + 1), design),
        *_quarter_columns("back", range(side, count), design),
        *(Column(kind, _LABELS[kind], "Round the body") for kind in (*_SUMS, *_BODY)),
    )


def _quarter_columns(quarter: QuarterName, seams: range, design: Design) -> tuple[Column, ...]:
    group = f"{quarter.capitalize()}, a quarter"
    return (
        *(_seam_column(quarter, seam, group, design) for seam in seams),
        *(Column(kind, _LABELS[kind], group, quarter) for kind in _SUMS),
    )


def _seam_column(quarter: QuarterName, seam: int, group: str, design: Design) -> Column:
    name = seam_name(seam, design)
    if seam == design.front.panel_count:
        return Column("seam", "Side", group, quarter, seam, f"{name}, {quarter}")
    return Column("seam", name.removeprefix(f"{quarter} ").capitalize(), group, quarter, seam, name)


class Cell(NamedTuple):
    """What a cell holds; ``mm`` is None for a name."""

    mm: float | None
    text: str
    pinned: bool = False

    @property
    def open(self) -> bool:
        """Whether it would be a gap."""
        return self.mm is not None and abs(self.mm) > CLOSED_MM


def figures_at(
    outcome: Outcome, level: LevelName, columns: tuple[Column, ...]
) -> Iterator[tuple[float, bool]]:
    """The figures in mm of one level, column by column after the first, and whether each is pinned."""
    lines: dict[QuarterName, LedgerLine] = {q: outcome.line(q, level) for q in _QUARTERS}
    takings = {(q, taking.seam): taking for q, line in lines.items() for taking in line.takings}
    sums = {q: _sums(line) for q, line in lines.items()}
    # Each quarter is there twice, left and right.
    whole = {kind: 2 * sum(sums[q][kind] for q in _QUARTERS) for kind in _SUMS}
    for column in columns[1:]:
        if column.quarter is not None and column.kind == "seam":
            taking: Taking = takings[column.quarter, column.seam]
            yield taking.total, taking.pinned
        elif column.kind in _BODY:
            yield float(getattr(outcome.level(level), column.kind)), False
        else:
            yield (sums[column.quarter] if column.quarter else whole)[column.kind], False


def _sums(line: LedgerLine) -> Mapping[Kind, float]:
    placed = line.placed
    return {"placed": placed, "needed": line.needed, "gap": placed - line.needed}

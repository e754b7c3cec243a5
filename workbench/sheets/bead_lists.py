"""The lists in front of the bead map: what to buy, and every run and scatter counted."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.beads import Beaded, Beading, KindCount, per_strand_of
from workbench.sheets.bead_marks import draw_bead
from workbench.sheets.block import BODY, SMALL, Block, heading, paragraph, space, stack
from workbench.sheets.fonts import clean, fitted
from workbench.sheets.heading import Heading
from workbench.sheets.pen import SOFT, Pen
from workbench.sheets.sections import INVENTED
from workbench.sheets.sheet_head import said, sheet_head
from workbench.sheets.table import Cell, Column, table

TITLE = "Bead plan"
_SIDE = "One half, seen from outside; the other half mirrors it. Counts are of the whole garment."
_LARGEST_SHOWN = 9.0
"""mm: a bead of a larger kind is shown so small beside its name."""
_KIND_ROW = 5.2


def list_blocks(beading: Beading, words: Heading, width: float) -> Iterator[Block]:
    """Blocks to be set from the top: head, kinds, what to buy, runs and scatters, what to look at."""
    count = beading.count
    hours = f", about {count.hours} h to sew on" if count.hours else ""
    yield sheet_head(TITLE, f"{count.total:,} beads{hours}", words, width, _SIDE)
    if words.invented:
        yield paragraph(INVENTED, width, SMALL, bold=True)
    yield stack([space(2.0), heading("Kinds", width, "each in its true size"), *_kinds(beading, width)])
    yield stack([space(2.0), heading("To buy", width, _reserve(beading)), _to_buy(beading, width)])
    yield stack([space(2.0), heading("Runs and scatters", width, "counted one by one")])
    for each in beading.beaded:
        yield _entry(each, words, width)
    if beading.findings:
        yield stack([space(2.0), heading("About this plan", width)])
        for finding in beading.findings:
            yield paragraph(clean(finding.text(words.unit, words.fraction)), width)


def _reserve(beading: Beading) -> str:
    return f"with {beading.plan.reserve_percent:g} % in reserve"


def _kinds(beading: Beading, width: float) -> Iterator[Block]:
    for line in beading.count.kinds:
        yield _kind(line, width)


def _kind(line: KindCount, width: float) -> Block:
    kind = line.kind
    shown = min(kind.size_mm, _LARGEST_SHOWN)
    small = "" if shown == kind.size_mm else " (shown smaller)"
    height = max(_KIND_ROW, shown + 1.0)

    def paint(pen: Pen, left: float, top: float) -> None:
        middle = top - 0.5 * height
        draw_bead(pen, kind.mark, shown, left + 0.5 * _LARGEST_SHOWN, middle)
        name = fitted(clean(kind.name), BODY, width - 60.0, bold=True)
        pen.text(left + _LARGEST_SHOWN + 3.0, middle - 0.35 * BODY, name, BODY, bold=True)
        size = f"{kind.size_mm:g} mm across{small}"
        pen.text(left + width, middle - 0.35 * BODY, size, SMALL, colour=SOFT, align="right")

    return Block(height, paint)


def _to_buy(beading: Beading, width: float) -> Block:
    columns = (
        Column(0.36 * width, "Kind", "words"),
        Column(0.16 * width, "Sewn on"),
        Column(0.16 * width, "With the reserve"),
        Column(0.16 * width, "On a strand"),
        Column(0.16 * width, "Strands"),
    )
    rows = [
        [
            Cell(clean(line.kind.name), bold=True),
            Cell(f"{line.total:,}"),
            Cell(f"{line.with_reserve:,}"),
            Cell(f"{per_strand_of(line.kind):,}"),
            Cell(f"{line.strands:,}", bold=True),
        ]
        for line in beading.count.kinds
    ]
    return table(columns, rows)


def _entry(each: Beaded, words: Heading, width: float) -> Block:
    """A run with its rows, or a scatter, with its beads by kind."""
    head = Cell(fitted(clean(each.name), BODY, 0.5 * width, bold=True), bold=True, wide=True)
    counts = ", ".join(f"{count:,} {clean(kind)}" for kind, count in each.counts.items())
    blocks = [
        space(1.2),
        table(_row_columns(width, bool(each.rows)), [[head, *_total(each)], *_rows(each, words)]),
    ]
    if counts:
        blocks.append(paragraph(counts, width, SMALL, colour=SOFT))
    return stack(blocks)


def _row_columns(width: float, rows: bool) -> tuple[Column, ...]:
    names = ("Length", "Places, half", "Laid, half") if rows else ("", "", "")
    return (
        Column(0.40 * width, "", "words"),
        *(Column(0.15 * width, name) for name in names),
        Column(0.15 * width, "On the garment"),
    )


def _total(each: Beaded) -> list[Cell]:
    return [Cell(), Cell(), Cell(), Cell(f"{each.total:,}", bold=True)]


def _rows(each: Beaded, words: Heading) -> Iterator[list[Cell]]:
    for number, row in enumerate(each.rows, 1):
        yield [
            Cell(f"row {number}"),
            Cell(said(row.length, words)),
            Cell(f"{row.asked:,}"),
            Cell(f"{row.placed:,}"),
            Cell(),
        ]

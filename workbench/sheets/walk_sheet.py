"""The walk check: every pair of edges that are sewn together, measured on the finished pieces."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from workbench.body import say_length
from workbench.pieces import Cutting, LayerName, WalkRow
from workbench.sheets.block import BODY, LARGE, Block, beside, heading, paragraph, space, stack
from workbench.sheets.heading import Heading
from workbench.sheets.marks import draw_mark
from workbench.sheets.pen import ATTEND, SOFT, LineStyle, Pen
from workbench.sheets.shell_check import angle_table, shell_table
from workbench.sheets.table import Cell, Column, table
from workbench.sheets.walk_judged import began, differing, judged, layer_label

AGAINST = "against the"
"""How a row begins that compares a layer with the shell."""
WHOLE = "whole seam"
_UNIT_WORDS = {"in": "inches", "cm": "centimetres"}
_GUTTER = 8.0
_MOST_NAMED = 8
_SHORTEST = 6
"""Rows below which a table is not set in two columns."""


def verdict(cutting: Cutting, width: float) -> Block:
    """In a frame, whether everything holds; what does not is named."""
    walks = [row for row in cutting.walks if not row.holds]
    failed = [f"{row.name}, {row.part} ({layer_label(row.layer, cutting)})" for row in walks]
    failed += [f"{row.line} at the {row.name}, {row.degrees:.1f}°" for row in cutting.angles if not row.holds]
    count = len(cutting.walks) + len(cutting.angles)
    if not failed:
        text = f"Everything holds: {count} comparisons on the finished pieces."
        text = text if count else "No two edges are sewn together, so there is nothing to compare."
        inside = paragraph(text, width - 12.0, LARGE, bold=True)
        return _framed(inside, width, over=False)
    named = failed[:_MOST_NAMED]
    title = f"{len(failed)} of {count} comparisons do not hold. Do not cut yet."
    lines = [paragraph(title, width - 12.0, LARGE, bold=True, colour=ATTEND), space(0.8)]
    lines += [paragraph(began(text), width - 12.0, BODY) for text in named]
    if len(failed) > len(named):
        lines.append(paragraph(f"{len(failed) - len(named)} more are marked below.", width - 12.0, BODY))
    return _framed(stack(lines), width, over=True)


def _framed(inside: Block, width: float, over: bool) -> Block:
    height = inside.height + 4.4

    def paint(pen: Pen, left: float, top: float) -> None:
        style = LineStyle(0.3, ATTEND) if over else LineStyle(0.2, SOFT)
        pen.rectangle(left, top - height, width, height, style)
        draw_mark(pen, left + 4.0, top - 2.2 - 0.5 * LARGE, "over" if over else "within")
        inside.paint(pen, left + 8.0, top - 2.2)

    return Block(height, paint)


def walk_blocks(cutting: Cutting, words: Heading, width: float) -> Iterator[Block]:
    """The seams of layers that are cut alike, each layer against the shell, and the edges."""
    for names, rows in alike(cutting.walks):
        yield _walk_table(_listed([layer_label(name, cutting) for name in names]), rows, words, width)
    compared = [row for row in cutting.walks if row.part.startswith(AGAINST)]
    if compared:
        yield shell_table(compared, cutting, width)
    if cutting.angles:
        yield angle_table(cutting.angles, width)


Figures = tuple[int, str, float, float, bool]


def alike(walks: Sequence[WalkRow]) -> list[tuple[list[LayerName], list[WalkRow]]]:
    """The rows of each layer, layers whose rows are the same in every figure together."""
    found: dict[tuple[Figures, ...], tuple[list[LayerName], list[WalkRow]]] = {}
    for name in dict.fromkeys(row.layer for row in walks):
        rows = [row for row in walks if row.layer == name and not row.part.startswith(AGAINST)]
        key = tuple(_figures(row) for row in rows)
        if rows:
            found.setdefault(key, ([], rows))[0].append(name)
    return list(found.values())


def _figures(row: WalkRow) -> Figures:
    """What a row says, to a ten-thousandth of a millimetre."""
    return row.seam, row.part, round(row.left, 4), round(row.right, 4), row.holds


def _listed(names: Sequence[str]) -> str:
    text = f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]
    return began(text)


def _walk_table(title: str, rows: Sequence[WalkRow], words: Heading, width: float) -> Block:
    """Seam by seam, whole and from notch to notch, in two columns."""
    note = f"both sides of each seam, in {_UNIT_WORDS[words.unit]}; difference in mm"
    column = 0.5 * (width - _GUTTER)
    parts = _halves(rows)
    tables = [table(_walk_columns(column), list(_walk_cells(part, words))) for part in parts]
    both = beside([(number * (column + _GUTTER), one) for number, one in enumerate(tables)])
    return stack([heading(title, width, note), both, space(2.5)])


def _halves(rows: Sequence[WalkRow]) -> list[Sequence[WalkRow]]:
    """The rows in two parts of much the same length; a seam is never parted from its stretches."""
    if len(rows) < _SHORTEST:
        return [rows]
    starts = [number for number, row in enumerate(rows) if row.part == WHOLE and number] or [len(rows)]
    middle = min(starts, key=lambda number: abs(number - 0.5 * len(rows)))
    return [rows[:middle], rows[middle:]] if middle < len(rows) else [rows]


def _walk_columns(width: float) -> list[Column]:
    figure = 0.11 * width
    first = width - 3 * figure - 0.24 * width
    columns = [Column(first, "Seam", "words"), Column(figure, "Left"), Column(figure, "Right")]
    return [*columns, Column(figure, "Differ"), Column(2.5), Column(0.24 * width - 2.5, "", "words")]


def _walk_cells(rows: Sequence[WalkRow], words: Heading) -> Iterator[list[Cell]]:
    for row in rows:
        whole = row.part == WHOLE
        name = row.name if whole else f"   {row.part}"
        lengths = [say_length(mm, words.unit, words.fraction) for mm in (row.left, row.right)]
        cells = [Cell(began(name) if whole else name, bold=whole)]
        cells += [Cell(text, bold=whole) for text in lengths]
        yield [*cells, Cell(differing(row.difference)), Cell(), judged(row.holds)]

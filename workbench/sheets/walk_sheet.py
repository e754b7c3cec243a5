"""The walk check: every pair of edges that are sewn together, measured on the finished pieces."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from workbench.body import say_length
from workbench.pieces import AngleRow, Cutting, LayerName, WalkRow
from workbench.sheets.block import BODY, LARGE, Block, beside, heading, paragraph, space, stack
from workbench.sheets.heading import Heading
from workbench.sheets.marks import draw_mark
from workbench.sheets.pen import ATTEND, SOFT, LineStyle, Pen
from workbench.sheets.table import Cell, Column, table

AGAINST = "against the"
"""How a row begins that compares a layer with the shell."""
WHOLE = "whole seam"
HOLDS, FAILS = "holds", "does not hold"
_UNIT_WORDS = {"in": "inches", "cm": "centimetres"}
_GUTTER = 8.0
_MOST_NAMED = 8
_SHORTEST = 6
"""Rows below which a table is not set in two columns."""


def verdict(cutting: Cutting, width: float) -> Block:
    """In a frame, whether everything holds; what does not is named."""
    walks = [row for row in cutting.walks if not row.holds]
    failed = [f"{row.name}, {row.part} ({_layer(row.layer, cutting)})" for row in walks]
    failed += [f"{row.line} at the {row.name}, {row.degrees:.1f}°" for row in cutting.angles if not row.holds]
    count = len(cutting.walks) + len(cutting.angles)
    if not failed:
        text = f"Everything holds: {count} comparisons on the finished pieces."
        inside = paragraph(text, width - 12.0, LARGE, bold=True)
        return _framed(inside, width, over=False)
    named = failed[:_MOST_NAMED]
    title = f"{len(failed)} of {count} comparisons do not hold. Do not cut yet."
    lines = [paragraph(title, width - 12.0, LARGE, bold=True, colour=ATTEND), space(0.8)]
    lines += [paragraph(f"{text[0].upper()}{text[1:]}", width - 12.0, BODY) for text in named]
    if len(failed) > len(named):
        lines.append(paragraph(f"{len(failed) - len(named)} more are marked below.", width - 12.0, BODY))
    return _framed(stack(lines), width, over=True)


def _layer(name: LayerName, cutting: Cutting) -> str:
    return next((layer.label.lower() for layer in cutting.layers if layer.name == name), name)


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
        yield _walk_table(_listed([_layer(name, cutting) for name in names]), rows, words, width)
    compared = [row for row in cutting.walks if row.part.startswith(AGAINST)]
    if compared:
        yield _shell_table(compared, cutting, width)
    if cutting.angles:
        yield _angle_table(cutting.angles, width)


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
    return f"{text[0].upper()}{text[1:]}"


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
        cells = [Cell(f"{name[0].upper()}{name[1:]}" if whole else name, bold=whole)]
        cells += [Cell(text, bold=whole) for text in lengths]
        yield [*cells, Cell(differing(row.difference)), Cell(), _judged(row.holds)]


def differing(mm: float) -> str:
    """A difference to a hundredth of a millimetre, with its sign."""
    text = f"{mm:+.2f}".replace("-", "−")
    return "0.00" if text[1:] == "0.00" else text


def _judged(holds: bool) -> Cell:
    if holds:
        return Cell(HOLDS, colour=SOFT, mark="within")
    return Cell(FAILS, bold=True, colour=ATTEND, mark="over", wide=True)


def _shell_table(rows: Sequence[WalkRow], cutting: Cutting, width: float) -> Block:
    """For every seam how much each layer's side differs from that of the shell, mm."""
    layers = list(dict.fromkeys(row.layer for row in rows))
    at = {(row.name, row.layer): row for row in rows}
    name = 0.2 * width
    each = min((width - name) / len(layers), 34.0)
    columns = [Column(name, "Seam", "words")]
    for layer in layers:
        columns += [Column(each, f"{_layer(layer, cutting)}".capitalize(), "words")]
    cells = []
    for named in dict.fromkeys(row.name for row in rows):
        line = [Cell(f"{named[0].upper()}{named[1:]}", bold=True)]
        line += [_against(at.get((named, layer))) for layer in layers]
        cells.append(line)
    title = heading("Each layer against the fashion cloth", width, "longer or shorter at the seam, in mm")
    return stack([title, table(columns, cells), space(2.5)])


def _against(row: WalkRow | None) -> Cell:
    if row is None:
        return Cell("—", colour=SOFT)
    text = differing(row.difference)
    if row.holds:
        return Cell(f"{text}  {HOLDS}", mark="within")
    return Cell(f"{text}  {FAILS}", bold=True, colour=ATTEND, mark="over")


def _angle_table(angles: Sequence[AngleRow], width: float) -> Block:
    """What neckline and hem do where each seam is closed."""
    name, figure, asked, judged = 0.2 * width, 0.09 * width, 0.13 * width, 0.17 * width
    columns = [Column(name, "Seam", "words")]
    for line in ("Neckline", "Hem"):
        columns += [Column(figure, line), Column(2.5), Column(asked, "Asked for", "words")]
        columns.append(Column(judged, "", "words"))
    cells = []
    for seam in dict.fromkeys(row.seam for row in angles):
        rows = {row.line: row for row in angles if row.seam == seam}
        named = next(iter(rows.values())).name
        cells.append([Cell(f"{named[0].upper()}{named[1:]}", bold=True)])
        cells[-1] += [*_angle(rows.get("neckline")), *_angle(rows.get("hem"))]
    title = heading("Neckline and hem where the seams close", width, "180° runs on without a corner")
    return stack([title, table(columns, cells), space(2.5)])


def _angle(row: AngleRow | None) -> list[Cell]:
    if row is None:
        return [Cell(), Cell(), Cell(), Cell()]
    asked = Cell("smooth" if row.wanted else "a corner", colour=SOFT)
    return [Cell(f"{row.degrees:.1f}°"), Cell(), asked, _judged(row.holds)]

"""Each layer held against the shell, and neckline and hem where the seams close."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.pieces import AngleRow, Cutting, LayerName, WalkRow
from workbench.sheets.block import Block, beside, heading, space, stack
from workbench.sheets.pen import ATTEND, SOFT
from workbench.sheets.table import Cell, Column, table
from workbench.sheets.walk_judged import HOLDS, began, differing, judged, layer_label

_GUTTER = 8.0


def shell_table(rows: Sequence[WalkRow], cutting: Cutting, width: float) -> Block:
    """How much each layer's edges differ from those of the shell, mm; layers with the same edges together."""
    column = 0.5 * (width - _GUTTER)
    stacks: tuple[list[Block], list[Block]] = ([], [])
    for layers in _with_same_edges(rows):
        shorter = min(stacks, key=lambda blocks: sum(block.height for block in blocks))
        shorter += [_compared(layers, rows, cutting, column), space(2.0)]
    both = [(number * (column + _GUTTER), stack(blocks)) for number, blocks in enumerate(stacks) if blocks]
    title = heading("Each layer against the fashion cloth", width, "longer or shorter than its edge, in mm")
    return stack([title, beside(both)])


def _with_same_edges(rows: Sequence[WalkRow]) -> list[list[LayerName]]:
    found: dict[tuple[str, ...], list[LayerName]] = {}
    for layer in dict.fromkeys(row.layer for row in rows):
        found.setdefault(tuple(row.name for row in rows if row.layer == layer), []).append(layer)
    return list(found.values())


def _compared(layers: list[LayerName], rows: Sequence[WalkRow], cutting: Cutting, width: float) -> Block:
    each = min(0.72 * width / len(layers), 0.5 * width)
    columns = [Column(width - each * len(layers), "Edge", "words")]
    columns += [Column(each, began(layer_label(layer, cutting)), "words") for layer in layers]
    cells = []
    for name in dict.fromkeys(row.name for row in rows if row.layer in layers):
        own = [row for row in rows if row.name == name and row.layer in layers]
        cells.append([Cell(began(name), bold=True), *(_against(row) for row in own)])
    return table(columns, cells)


def _against(row: WalkRow) -> Cell:
    text = differing(row.difference)
    if row.holds:
        return Cell(f"{text}  {HOLDS}", mark="within")
    return Cell(f"{text}  differs", bold=True, colour=ATTEND, mark="over")


def angle_table(angles: Sequence[AngleRow], width: float) -> Block:
    """What neckline and hem do where each seam is closed."""
    name, figure, asked = 0.2 * width, 0.09 * width, 0.13 * width
    wide = 0.18 * width - 2.5
    columns = [Column(name, "Seam", "words")]
    for line in ("Neckline", "Hem"):
        columns += [Column(figure, line), Column(2.5), Column(asked, "Asked for", "words")]
        columns.append(Column(wide, "", "words"))
    cells = []
    for seam in dict.fromkeys(row.seam for row in angles):
        rows = {row.line: row for row in angles if row.seam == seam}
        named = next(iter(rows.values())).name
        cells.append([Cell(began(named), bold=True)])
        cells[-1] += [*_angle(rows.get("neckline")), *_angle(rows.get("hem"))]
    title = heading("Neckline and hem where the seams close", width, "180° runs on without a corner")
    return stack([title, table(columns, cells), space(2.5)])


def _angle(row: AngleRow | None) -> list[Cell]:
    if row is None:
        return [Cell(), Cell(), Cell(), Cell()]
    asked = Cell("smooth" if row.wanted else "a corner", colour=SOFT)
    return [Cell(f"{row.degrees:.1f}°"), Cell(), asked, judged(row.holds)]

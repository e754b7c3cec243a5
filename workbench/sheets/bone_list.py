"""The bones in a list, those that are bought alike together."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from workbench.body import say_with_unit
from workbench.pieces import Bone
from workbench.sheets.block import BODY, Block, heading, paragraph, stack
from workbench.sheets.heading import Heading
from workbench.sheets.pen import SOFT
from workbench.sheets.table import Cell, Column, table

_UNIT_WORDS = {"in": "inches", "cm": "centimetres"}
_FIGURES = ("Finished line", "− clearances", "Cut to", "Next shorter", "Left bare")


def bone_list(bones: Sequence[Bone], words: Heading, width: float) -> Block:
    """Every bone with its number in the drawing, by stuff and cut length, the longest first."""
    note = f"lengths in {_UNIT_WORDS[words.unit]}; numbers as in the drawing"
    title = heading("Bones", width, note)
    if not bones:
        return stack([title, paragraph("No bones are asked for.", width, BODY, colour=SOFT)])
    number, times = 8.0, 12.0
    where = 0.34 * width
    figure = (width - number - where - times) / len(_FIGURES)
    columns = [
        Column(number, "No.", "words"),
        Column(where, "Where", "words"),
        Column(times, "Pieces", "end"),
    ]
    columns += [Column(figure, name) for name in _FIGURES]
    rows: list[list[Cell]] = []
    for (stock, cut), group in groupby(sorted(enumerate(bones, 1), key=_order), key=_kind):
        alike = list(group)
        count = sum(bone.count for _, bone in alike)
        text = f"{count} × {stock}, {alike[0][1].say_cut(cut, words.unit, words.fraction)}"
        rows.append([Cell(text, bold=True, wide=True)])
        rows += [_row(place, bone, words) for place, bone in alike]
    return stack([title, table(columns, rows)])


def _order(numbered: tuple[int, Bone]) -> tuple[str, float, int]:
    return numbered[1].stuff, -round(numbered[1].cut_length, 3), numbered[0]


def _kind(numbered: tuple[int, Bone]) -> tuple[str, float]:
    return numbered[1].stock, round(numbered[1].cut_length, 3)


def _row(number: int, bone: Bone, words: Heading) -> list[Cell]:
    figures = (bone.stitch_length, bone.wanted_length, bone.cut_length, bone.shorter, bone.lost)
    row = [Cell(str(number), bold=True), Cell(bone.where), Cell(str(bone.count))]
    for place, mm in enumerate(figures):
        said = bone.say_cut if place in (2, 3) else say_with_unit
        length = said(mm, words.unit, words.fraction).removesuffix(f" {words.unit}")
        text = length if mm > 0 or place == 4 else "—"
        row.append(Cell(text, bold=place == 2))
    return row

"""Where the eyelets or loops stand, from the top down as they lie on the body."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.body import say_length
from workbench.pieces import BackOpening, Cutting
from workbench.sheets.block import BODY, SMALL, Block, beside, heading, paragraph, space, stack
from workbench.sheets.heading import Heading
from workbench.sheets.pen import SOFT
from workbench.sheets.sheet_head import filled, said
from workbench.sheets.table import Cell, Column, table

_MOST_ROWS = 16
_GUTTER = 7.0
_HOLDERS = ("eyelets", "loops")


def opening_list(cutting: Cutting, words: Heading, width: float) -> Block:
    """The spacing table of one side of the back, and what else closes the garment."""
    closing = next((notion for notion in cutting.notions if notion.key in _HOLDERS), None)
    if cutting.opening is None:
        return stack([heading("Opening", width), *_others(cutting, words, width)])
    holder = closing.key if closing else "places"
    count = len(cutting.opening.walks)
    name = f"Back opening: {count} {holder} on each side"
    title = heading(name, width, "the same on both sides, from the top down")
    tables = _tables(cutting.opening, words)
    column = (width - 2 * _GUTTER) / 3 if len(tables) > 1 else 0.4 * width
    used = len(tables) * (column + _GUTTER) if len(tables) < 3 else 0.0
    shown = [(number * (column + _GUTTER), rows(column)) for number, rows in enumerate(tables)]
    at_right = stack(_others(cutting, words, width - used), 1.2)
    if used:
        return stack([title, beside([*shown, (used, at_right)])])
    return stack([title, beside(shown), space(2.0), at_right])


class _Rows:
    """A part of the spacing table, ready for any width."""

    def __init__(self, rows: list[list[Cell]]) -> None:
        self._rows = rows

    def __call__(self, width: float) -> Block:
        """The table, as wide as said."""
        columns = [Column(9.0, "No.", "words"), Column(0.3 * width, "From the waist")]
        columns += [Column(0.2 * width, "", "words"), Column(0.5 * width - 9.0, "To the next below")]
        return table(columns, self._rows)


def _tables(opening: BackOpening, words: Heading) -> list[_Rows]:
    rows = list(_rows(opening, words))
    parts = max(-(-len(rows) // _MOST_ROWS), 1)
    each = -(-len(rows) // min(parts, 3))
    return [_Rows(rows[first : first + each]) for first in range(0, len(rows), each)]


def _rows(opening: BackOpening, words: Heading) -> Iterator[list[Cell]]:
    """One for each place, numbered from the top."""
    walks, steps = opening.walks[::-1], (*opening.pitches[::-1], None)
    for number, (walk, step) in enumerate(zip(walks, steps, strict=True), 1):
        where = "above" if walk > 0 else "below"
        shown = say_length(abs(walk), words.unit, words.fraction)
        below = "" if step is None else say_length(step, words.unit, words.fraction)
        yield [Cell(str(number)), Cell(shown, bold=True), Cell(f" {where}", colour=SOFT), Cell(below)]


def _others(cutting: Cutting, words: Heading, width: float) -> list[Block]:
    """Cord, zip and busk in words."""
    blocks: list[Block] = []
    if cutting.opening is not None:
        opening = cutting.opening
        blocks.append(paragraph(f"Cord: {said(opening.cord_mm, words)}", width, BODY, bold=True))
        how = filled(opening.how, dict(opening.lengths), words)
        blocks.append(paragraph(how, width, SMALL + 0.1, colour=SOFT))
    for notion in cutting.notions:
        if notion.key in ("zip", "busk") and notion.length_mm is not None:
            text = f"{notion.name}: {said(notion.length_mm, words)}"
            blocks.append(paragraph(text, width, BODY, bold=True))
            how = notion.worked_out(words.unit, words.fraction)
            blocks.append(paragraph(how, width, SMALL + 0.1, colour=SOFT))
    return blocks or [paragraph("Nothing closes at the back.", width, BODY, colour=SOFT)]

"""Sections of the first page that are sums: the reduction, the ledger of the intake, comfort by level."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.body import LEVEL_LABEL, round_down, say_at_most, say_closely, say_length, say_with_unit
from workbench.draft import Comfort, LedgerLine, Level, Outcome, QuarterName, Taking
from workbench.sheets.block import SMALL, Block, heading, paragraph, stack
from workbench.sheets.heading import Heading
from workbench.sheets.marks import STATUS_WORD, mark_colour
from workbench.sheets.pen import ATTEND, SOFT
from workbench.sheets.table import Cell, Column, Group, table

_UNIT_WORDS = {"in": "inches", "cm": "centimetres"}
_QUARTERS: tuple[QuarterName, ...] = ("front", "back")


def _say(mm: float, words: Heading) -> str:
    return say_length(mm, words.unit, words.fraction)


def _closely(mm: float, words: Heading) -> str:
    """Exact to a thirty-second: four quarters rounded to the eighth would not make the whole."""
    return say_closely(mm, words.unit, words.fraction).removesuffix(f" {words.unit}")


def top_down(outcome: Outcome) -> tuple[Level, ...]:
    """The levels as they lie on the body, uppermost first."""
    return outcome.levels[::-1]


def reduction(outcome: Outcome, words: Heading, width: float) -> Block:
    """Body − reduction = finished, − opening = fabric, of every level, round the body and a quarter."""
    name = 0.125 * width
    figure = (width - name) / 11
    columns = [Column(name, "Level", "words")]
    less, rest = ("Body", "− reduction"), ("= finished", "− opening", "= fabric")
    columns += [Column(figure, title) for title in (*less, "in %", *rest, *less, *rest)]
    rows = [_reduction_row(level, outcome.design.opening_mm, words) for level in top_down(outcome)]
    groups = (Group("Round the body", 1, 6), Group("A quarter", 7, 11))
    note = f"in {_UNIT_WORDS[words.unit]}; fabric is also what she is held to laced shut"
    blocks = [heading("The reduction, level by level", width, note), table(columns, rows, groups)]
    remarks = (*_one_figure(outcome, words), *_fitted(outcome, words))
    blocks += [paragraph(text, width, SMALL, colour=SOFT) for text in remarks]
    return stack(blocks)


def _reduction_row(level: Level, opening: float, words: Heading) -> list[Cell]:
    sums = (level.body, level.reduction, level.finished, opening, level.fabric)
    row = [Cell(LEVEL_LABEL[level.name])]
    for number, part in enumerate(sums):
        row.append(Cell(_say(part, words), bold=number == 1))
    row.insert(3, Cell(f"{level.percent:.1f}".replace("-", "−"), colour=SOFT))
    for number, part in enumerate(sums):
        row.append(Cell(_closely(0.25 * part, words), bold=number == 1))
    return row


def _one_figure(outcome: Outcome, words: Heading) -> Iterator[str]:
    """Where one figure serves waist and underbust: what the reduction was reckoned from."""
    if outcome.design.rule != "one_figure":
        return
    said = say_with_unit(outcome.design.reductions.waist, words.unit, words.fraction)
    waist = outcome.level("waist")
    reckoned = say_with_unit(waist.reckoned + waist.fitted, words.unit, words.fraction)
    yield (
        f"One figure for waist and underbust: both are reckoned from the smaller girth, {reckoned}, "
        f"less {said}. "
        "The table shows what each level is held by against its own girth."
    )


def _fitted(outcome: Outcome, words: Heading) -> Iterator[str]:
    """That, and by how much, fittings changed what was designed."""
    if outcome.designed:
        from workbench.fitting import fitted_words  # most bodices are not fitted yet

        yield fitted_words(outcome, words.unit, words.fraction)


def ledger(outcome: Outcome, words: Heading, width: float) -> Block:
    """Block − target = needed, and where it is placed, of every level, for one front and one back quarter."""
    takers = max(outcome.design.front.panel_count, outcome.design.back.panel_count)
    name, figure, last = 0.125 * width, 0.0725 * width, 0.105 * width
    taker = (width - name - 4 * figure - last) / takers
    columns = [Column(name, "Level", "words")]
    columns += [Column(figure, title) for title in ("Block", "− target", "= needed")]
    columns += [Column(taker, f"Seam {number + 1}", "end") for number in range(takers - 1)]
    columns += [Column(taker, "Side seam", "end"), Column(figure, "Placed"), Column(last, "Closes?", "end")]
    rows: list[list[Cell]] = []
    for quarter in _QUARTERS:
        rows.append([Cell(f"{quarter.capitalize()} quarter", bold=True)])
        rows += [_ledger_row(outcome, quarter, level, takers, words) for level in top_down(outcome)]
    note = "left + right part at each seam; • pinned; rounded after adding up"
    return stack([heading("Ledger of the intake", width, note), table(columns, rows)])


def _ledger_row(
    outcome: Outcome, quarter: QuarterName, level: Level, takers: int, words: Heading
) -> list[Cell]:
    line = outcome.line(quarter, level.name)
    block = outcome.blocks[quarter]
    row = [Cell(LEVEL_LABEL[level.name])]
    row += [Cell(_closely(block, words)), Cell(_closely(block - line.needed, words))]
    row.append(Cell(_closely(line.needed, words), bold=True))
    row += _taking_cells(line, outcome, takers, words)
    row.append(Cell(_closely(line.placed, words), bold=True))
    row.append(_closing(line, words))
    return row


def _taking_cells(line: LedgerLine, outcome: Outcome, takers: int, words: Heading) -> list[Cell]:
    """The quarter's inner seams from the left, then the side seam in the last column."""
    side = outcome.design.front.panel_count
    inner = [taking for taking in line.takings if taking.seam != side]
    at_side = [taking for taking in line.takings if taking.seam == side]
    cells = [Cell(_said_taking(taking, words)) for taking in inner]
    cells += [Cell() for _ in range(takers - 1 - len(inner))]
    return [*cells, *(Cell(_said_taking(taking, words, one_sided=True)) for taking in at_side)]


def _said_taking(taking: Taking, words: Heading, one_sided: bool = False) -> str:
    pin = "• " if taking.pinned else ""
    left, right, total = (_say(part, words) for part in (taking.left, taking.right, taking.total))
    if one_sided or left == right == "0":
        return pin + total
    return f"{pin}{left} + {right}"


def _closing(line: LedgerLine, words: Heading) -> Cell:
    if line.closes:
        return Cell("closes", colour=SOFT)
    amount = say_with_unit(abs(line.gap), words.unit, words.fraction)
    return Cell(f"{'short' if line.gap < 0 else 'over'} {amount}", bold=True, colour=ATTEND)


def comfort_table(outcome: Outcome, comfort: Comfort, words: Heading, width: float) -> Block:
    """Each level against its limit, as worn and laced shut, said by sign and word."""
    figure, word = 0.085 * width, 0.085 * width
    columns = [Column(0.125 * width, "Level", "words")]
    for _ in ("as worn", "laced shut"):
        columns += [Column(figure, "Drawn in"), Column(3.0), Column(word, "Judged", "words")]
    columns += [Column(figure, "At most"), Column(4.0)]
    columns.append(Column(width - sum(column.width for column in columns), "Because of", "words"))
    groups = (Group("As worn", 1, 3), Group("Laced shut", 4, 6), Group("The limit", 7, 9))
    limited = [level for level in top_down(outcome) if comfort.at(level.name).most is not None]
    rows = [_comfort_row(level, comfort, words) for level in limited]
    free = [LEVEL_LABEL[level.name].lower() for level in top_down(outcome) if level not in limited]
    largest = round_down(comfort.largest_reduction, words.unit, words.fraction)
    most = say_closely(largest, words.unit, words.fraction)
    quarter = say_at_most(0.25 * largest, words.unit, words.fraction)
    note = f"most at the waist that keeps every limit: {most} round the body, {quarter} a quarter"
    blocks = [heading("Comfort, against the limits you set", width, note), table(columns, rows, groups)]
    if free:
        said = f"No limit is set at the {' and the '.join(free)}."
        blocks.append(paragraph(said, width, SMALL, colour=SOFT))
    return stack(blocks)


def _comfort_row(level: Level, comfort: Comfort, words: Heading) -> list[Cell]:
    judged = comfort.at(level.name)
    row = [Cell(LEVEL_LABEL[level.name])]
    judgements = ((level.reduction, judged.status), (level.body - level.fabric, judged.shut_status))
    for reduction_here, status in judgements:
        row += [Cell(_say(reduction_here, words)), Cell()]
        row.append(Cell(STATUS_WORD[status], status == "over", mark_colour(status), status))
    most = say_at_most(judged.most or 0.0, words.unit, words.fraction).removesuffix(f" {words.unit}")
    return [*row, Cell(most), Cell(), Cell(judged.reason)]

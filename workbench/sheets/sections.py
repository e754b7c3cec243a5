"""Sections of the first page that are words: who, what is over, measurements, findings, cautions."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.body import CAUTIONS
from workbench.draft import Finding
from workbench.sheets.block import (
    BODY,
    LARGE,
    LEADING,
    SMALL,
    TITLE,
    Block,
    Line,
    beside,
    heading,
    paragraph,
    space,
    stack,
    text_block,
)
from workbench.sheets.fonts import clean, fitted, text_width
from workbench.sheets.heading import Heading
from workbench.sheets.marks import MARK_WORD, SEVERITY_MARK, draw_mark, mark_colour
from workbench.sheets.pen import ATTEND, INK, SOFT, LineStyle, Pen

INVENTED = "Figures invented for demonstration."
OVER_TITLE = "Above the limit you set"
_GUTTER = 6.0
_ROW = 3.85
_MOST_OVER = 6


def who(words: Heading, width: float) -> Block:
    """Client, style, date, who measured, what she must be able to do."""
    name = clean(words.client) or "No client named"
    size = TITLE if text_width(name, TITLE, bold=True) <= width else 0.7 * TITLE
    parts = [clean(words.style), clean(words.date)]
    if clean(words.measured_by):
        parts.append(f"measured by {clean(words.measured_by)}")
    lines = [paragraph(name, width, size, bold=True, most=3), space(0.8)]
    lines.append(paragraph(" · ".join(part for part in parts if part), width, LARGE, most=2))
    if clean(words.wish):
        lines.append(paragraph(f"Wish: {clean(words.wish)}", width, BODY, colour=SOFT, most=4))
    if words.invented:
        lines.append(paragraph(INVENTED, width, BODY, bold=True))
    return stack(lines)


def over_limit(findings: Sequence[Finding], words: Heading, width: float) -> Block:
    """What is above a limit, in a frame of its own; empty of height where nothing is."""
    if not findings:
        return space(0.0)
    inner = width - 8.0
    said = [finding.text(words.unit, words.fraction) for finding in findings[:_MOST_OVER]]
    lines = [paragraph(OVER_TITLE, inner, LARGE, bold=True, colour=ATTEND), space(0.5)]
    for text in said:
        lines += [paragraph(clean(text), inner, 1.1 * BODY, bold=len(said) == 1), space(0.7)]
    if len(findings) > _MOST_OVER:
        lines.append(paragraph(f"{len(findings) - _MOST_OVER} more are among the findings.", inner, BODY))
    inside = stack(lines)

    def paint(pen: Pen, left: float, top: float) -> None:
        height = inside.height + 3.6
        pen.rectangle(left, top - height, width, height, LineStyle(0.3, ATTEND))
        pen.rectangle(left, top - height, 1.6, height, fill=ATTEND)
        inside.paint(pen, left + 5.0, top - 2.2)

    return Block(inside.height + 3.6, paint)


def listed_over(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings that :func:`over_limit` says in full."""
    return tuple(findings[:_MOST_OVER])


def measurements(words: Heading, width: float) -> Block:
    """Two columns of measurements, estimates marked, and a third with the limits."""
    limits_width = 0.30 * width
    column = (width - limits_width - 2 * _GUTTER) / 2
    count = -(-len(words.measurements) // 2)
    blocks = []
    for number in range(2):
        entries = words.measurements[number * count : (number + 1) * count]
        blocks.append((number * (column + _GUTTER), _measured(entries, column)))
    area = width - limits_width - _GUTTER
    estimated = any(estimate for _, _, estimate in words.measurements)
    note = "est. = estimated from the others, not taken" if estimated else ""
    left = stack([heading("Measurements", area, note), beside(blocks)])
    right = stack([heading("Limits you set", limits_width), _limits(words.limits, limits_width)])
    return beside([(0.0, left), (area + _GUTTER, right)])


def _measured(entries: Sequence[tuple[str, str, bool]], width: float) -> Block:
    mark = text_width("est.", SMALL) + 0.8

    def paint(pen: Pen, left: float, top: float) -> None:
        for number, (label, figure, estimated) in enumerate(entries):
            y = top - 0.75 * _ROW - number * _ROW
            figure = clean(figure)
            room = width - mark - text_width(figure, BODY) - 1.2
            pen.text(left, y, fitted(clean(label), BODY, room), BODY, colour=SOFT if estimated else INK)
            pen.text(left + width - mark, y, figure, BODY, align="right", colour=SOFT if estimated else INK)
            if estimated:
                pen.text(left + width, y, "est.", SMALL, colour=SOFT, align="right")

    return Block(_ROW * len(entries), paint)


def _limits(entries: Sequence[tuple[str, str]], width: float) -> Block:
    def paint(pen: Pen, left: float, top: float) -> None:
        for number, (label, figure) in enumerate(entries):
            y = top - 0.75 * _ROW - number * _ROW
            figure = clean(figure)
            pen.text(left, y, fitted(clean(label), BODY, width - text_width(figure, BODY) - 2.0), BODY)
            pen.text(left + width, y, figure, BODY, align="right")

    return Block(_ROW * len(entries), paint)


def finding_block(finding: Finding, words: Heading, width: float) -> Block:
    """One finding: its sign, the word for it, and the sentence."""
    mark = SEVERITY_MARK[finding.severity]
    indent = 12.5
    text = paragraph(clean(finding.text(words.unit, words.fraction)), width, BODY, indent=indent)

    def paint(pen: Pen, left: float, top: float) -> None:
        draw_mark(pen, left + 1.2, top - 1.15, mark)
        pen.text(left + 3.6, top - 0.78 * BODY, MARK_WORD[mark], BODY, bold=True, colour=mark_colour(mark))
        text.paint(pen, left, top)

    return Block(text.height + 0.9, paint)


def cautions(width: float, sentences: Sequence[str] = CAUTIONS) -> Block:
    """The usual cautions, in three columns; printed whatever the figures are."""
    count = 3
    column = (width - (count - 1) * _GUTTER) / count
    blocks = [paragraph(text, column, SMALL + 0.1) for text in sentences]
    columns = []
    for number in range(count):
        share = sum(block.height for block in blocks) / (count - number)
        taken: list[Block] = []
        while blocks and (not taken or sum(b.height for b in taken) + 0.6 * blocks[0].height <= share):
            taken.append(blocks.pop(0))
        columns.append((number * (column + _GUTTER), stack(taken, 0.4)))
    return stack([heading("Cautions", width), beside(columns)])


def footer(width: float, page: str, elsewhere: str, words: Heading) -> Block:
    """How to print, whose it is, and which page this is."""
    size = SMALL + 0.2
    left = f"Print at 100 %, no fit to page.{elsewhere}"
    used = text_width(left, size, bold=True) + text_width(page, size)
    name = fitted(clean(words.client), size, width - used - 12.0)
    at_right = width - text_width(page, size)
    middle = 0.5 * (text_width(left, size, bold=True) + at_right - text_width(name, size))
    return text_block(
        [
            Line(3.6, left, size, bold=True),
            Line(3.6, name, size, colour=SOFT, indent=middle),
            Line(3.6, page, size, colour=SOFT, indent=at_right),
        ],
        3.6 * LEADING,
    )

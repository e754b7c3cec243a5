"""Building blocks of the first page: each knows its height before it is drawn, so pages can be filled."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from workbench.sheets.fonts import fitted, text_width, wrapped
from workbench.sheets.pen import HAIR, HAIRLINE, INK, SOFT, Colour, LineStyle, Pen

TITLE, LARGE, HEAD, BODY, SMALL = 6.6, 3.4, 3.0, 2.65, 2.3
"""Heights of type, mm."""
LEADING = 1.38
HEADING = 6.2
"""Height of a section's heading, mm."""
THIN = LineStyle(HAIRLINE, HAIR)
RULE = LineStyle(0.2, INK)


@dataclass(frozen=True)
class Block:
    """Something that takes the width it was made for and a height in mm."""

    height: float
    paint: Callable[[Pen, float, float], None]
    """Called with the pen and the block's left and top, mm on the page."""


@dataclass(frozen=True)
class Line:
    """A line of text within a block; ``drop`` is from the block's top to the baseline."""

    drop: float
    text: str
    size: float = BODY
    bold: bool = False
    colour: Colour = INK
    indent: float = 0.0


def text_block(lines: Sequence[Line], height: float) -> Block:
    """A block that holds lines of text and nothing else."""

    def paint(pen: Pen, left: float, top: float) -> None:
        for line in lines:
            pen.text(
                left + line.indent, top - line.drop, line.text, line.size, bold=line.bold, colour=line.colour
            )

    return Block(height, paint)


def paragraph(
    text: str,
    width: float,
    size: float = BODY,
    *,
    bold: bool = False,
    colour: Colour = INK,
    indent: float = 0.0,
    most: int | None = None,
) -> Block:
    """Text wrapped to the width."""
    parts = wrapped(text, size, width - indent, bold, most)
    lines = [
        Line(0.78 * size + number * size * LEADING, part, size, bold, colour, indent)
        for number, part in enumerate(parts)
    ]
    return text_block(lines, len(parts) * size * LEADING)


def stack(blocks: Sequence[Block], gap: float = 0.0) -> Block:
    """Blocks one below the other, as one that is never broken."""
    height = sum(block.height for block in blocks) + gap * max(len(blocks) - 1, 0)

    def paint(pen: Pen, left: float, top: float) -> None:
        for block in blocks:
            block.paint(pen, left, top)
            top -= block.height + gap

    return Block(height, paint)


def beside(blocks: Sequence[tuple[float, Block]]) -> Block:
    """Blocks next to each other, each at its own distance from the left."""

    def paint(pen: Pen, left: float, top: float) -> None:
        for shift, block in blocks:
            block.paint(pen, left + shift, top)

    return Block(max(block.height for _, block in blocks), paint)


def heading(text: str, width: float, note: str = "") -> Block:
    """A section's name on a rule, with a quiet remark at the right."""
    size = text_width(text, HEAD, bold=True)
    remark = fitted(note, SMALL, max(width - size - 4.0, 0.0)) if note else ""

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.line(left, top - 0.6, left + width, top - 0.6, RULE)
        pen.text(left, top - 4.3, text, HEAD, bold=True)
        if remark:
            pen.text(left + width, top - 4.3, remark, SMALL, colour=SOFT, align="right")

    return Block(HEADING, paint)


def space(height: float) -> Block:
    """Nothing, of a height."""
    return text_block((), height)

"""What stands at the head of a page that the client is given."""

from __future__ import annotations

from workbench.sheets.block import LARGE, SMALL, TITLE, Block, paragraph, space, stack
from workbench.sheets.fonts import clean, text_width
from workbench.sheets.heading import Heading
from workbench.sheets.pen import INK, LineStyle
from workbench.sheets.sections import INVENTED

_RULE = LineStyle(0.5, INK)


def client_head(title: str, words: Heading, width: float) -> Block:
    """A rule, the client's name large, and below it what the page is, for what and from when."""
    name = clean(words.client) or "No client named"
    size = TITLE if text_width(name, TITLE, bold=True) <= width else 0.7 * TITLE
    about = " · ".join(part for part in (title, clean(words.style), clean(words.date)) if part)
    blocks = [
        Block(3.0, lambda pen, left, top: pen.line(left, top - 0.5, left + width, top - 0.5, _RULE)),
        paragraph(name, width, size, bold=True, most=2),
        space(0.8),
        paragraph(about, width, LARGE, most=2),
    ]
    if words.invented:
        blocks.append(paragraph(INVENTED, width, SMALL, bold=True))
    return stack(blocks)

"""What stands at the head of a sheet for the cutting table."""

from __future__ import annotations

from workbench.body import say_with_unit
from workbench.sheets.block import BODY, SMALL, Block, paragraph, stack
from workbench.sheets.fonts import clean, fitted, text_width
from workbench.sheets.heading import Heading
from workbench.sheets.pen import INK, SOFT, LineStyle, Pen

_TITLE = 5.2
_RULE = LineStyle(0.5, INK)
_HEIGHT = 8.4


def sheet_head(title: str, note: str, words: Heading, width: float, lead: str = "") -> Block:
    """Title on a rule with client and date at the right, and a sentence below it."""
    whose = " · ".join(part for part in (clean(words.client), clean(words.date)) if part)
    used = text_width(title, _TITLE, bold=True) + text_width(note, BODY)
    client = fitted(whose, SMALL, max(width - used - 9.0, 0.0))

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.line(left, top - 0.5, left + width, top - 0.5, _RULE)
        pen.text(left, top - 6.4, title, _TITLE, bold=True)
        pen.text(left + text_width(title, _TITLE, bold=True) + 3.0, top - 6.4, note, BODY, colour=SOFT)
        pen.text(left + width, top - 6.4, client, SMALL, colour=SOFT, align="right")

    blocks = [Block(_HEIGHT, paint)]
    if lead:
        blocks.append(paragraph(lead, width, 1.1 * BODY))
    return stack(blocks)


def said(mm: float, words: Heading) -> str:
    """A length in the user's unit."""
    return say_with_unit(mm, words.unit, words.fraction)


def filled(sentence: str, lengths: dict[str, float], words: Heading) -> str:
    """A sentence with its lengths in the user's unit."""
    return sentence.format(**{name: said(mm, words) for name, mm in lengths.items()})

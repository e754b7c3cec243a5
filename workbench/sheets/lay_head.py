"""The head of a lay sheet: what is bought, how long the plan is, how the cloth lies, what is wrong."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from workbench.body import say_exact
from workbench.draft import Finding
from workbench.sheets.block import BODY, SMALL, Block, paragraph, space, stack
from workbench.sheets.figure_row import figure_row
from workbench.sheets.fonts import clean, fitted
from workbench.sheets.lay_cloth import LaidCloth
from workbench.sheets.marks import draw_mark
from workbench.sheets.pen import ATTEND, INK, SOFT, LineStyle, Pen
from workbench.sheets.sections import INVENTED
from workbench.sheets.sheet_head import sheet_head

_TITLE = 5.2
_NOT_SOUND = "This plan cannot be cut as it is."


def lay_head(laid: LaidCloth, width: float, scale: float) -> Block:
    """Everything above the drawing."""
    name = clean(laid.cloth.name)
    title = fitted(name, _TITLE, 0.66 * width, bold=True)
    blocks = [
        sheet_head(title, "lay plan", laid.words, width, "" if title == name else name),
        space(1.6),
        _figures(laid, width),
        paragraph(f"{laid.plan.how} Drawn 1 to {scale:g}.", width, BODY),
        paragraph(" · ".join(_how_it_lies(laid)), width, SMALL, colour=SOFT),
    ]
    if laid.words.invented:
        blocks.append(paragraph(INVENTED, width, SMALL, bold=True))
    if not laid.plan.sound:
        blocks += [space(1.5), _wrong(laid, width)]
    return stack([*blocks, space(2.5)])


def _figures(laid: LaidCloth, width: float) -> Block:
    """What is bought first, where anything is."""
    figures = [(laid.said(laid.plan.length_mm), "length of the plan")]
    if laid.cloth.remnant is None:
        figures.insert(0, (laid.buy.words, _buying(laid)))
    figures += [(f"{100 * laid.plan.utilisation:.0f} %", "of the cloth used"), _counted(laid)]
    return figure_row(figures, width)


def _buying(laid: LaidCloth) -> str:
    return "to buy: what you have is enough" if laid.buy.fits else "to buy"


def _counted(laid: LaidCloth) -> tuple[str, str]:
    count = len(laid.lying)
    return str(count), "piece to lay" if count == 1 else "pieces to lay"


def _how_it_lies(laid: LaidCloth) -> Iterator[str]:
    """What has to be so before the first piece is laid."""
    cloth = laid.cloth
    if laid.buy.note:
        yield laid.buy.note.rstrip(".")
    if cloth.remnant is not None:
        yield "on the remnant, measured from where its selvedge is"
    else:
        selvedge = f", {laid.said(cloth.selvedge_mm)} at each selvedge not used" if cloth.selvedge_mm else ""
        yield f"{say_exact(cloth.width_mm, laid.unit)} {laid.unit} wide{selvedge}"
    yield (
        "folded along its length, right sides together" if cloth.laid == "folded" else "single, right side up"
    )
    if cloth.repeat_mm:
        yield f"repeat {laid.said(cloth.repeat_mm)}, hairlines across"
    if cloth.shrinkage_percent:
        yield f"shrink it first: {cloth.shrinkage_percent:g} % is counted in what is bought"
    yield f"{laid.said(cloth.gap_mm)} between pieces" if cloth.gap_mm else "pieces touch"


def _wrong(laid: LaidCloth, width: float) -> Block:
    """What is wrong with the plan, in a frame, above it."""
    inner = width - 9.0
    said = [paragraph(clean(text), inner, BODY) for text in map(_text(laid), laid.plan.findings)]
    inside = stack([paragraph(_NOT_SOUND, inner, BODY + 0.3, bold=True, colour=ATTEND), *said], 0.4)

    def paint(pen: Pen, left: float, top: float) -> None:
        height = inside.height + 3.2
        pen.rectangle(left, top - height, width, height, LineStyle(0.3, INK))
        draw_mark(pen, left + 3.2, top - 3.6, "over")
        inside.paint(pen, left + 6.5, top - 1.9)

    return Block(inside.height + 3.2, paint)


def _text(laid: LaidCloth) -> Callable[[Finding], str]:
    return lambda finding: finding.text(laid.unit, laid.words.fraction)

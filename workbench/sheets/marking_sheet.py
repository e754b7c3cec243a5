"""The marking guide on paper: one piece a page in large type, and a first page with sums and errors."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from workbench.body import LEVEL_LABEL, say_closely
from workbench.draft import Finding
from workbench.marking import GirthRow, Guide, Rounding
from workbench.sheets.block import (
    LARGE,
    LEADING,
    SMALL,
    Block,
    Line,
    heading,
    paragraph,
    stack,
    text_block,
)
from workbench.sheets.fonts import clean, fitted, text_width
from workbench.sheets.heading import Heading
from workbench.sheets.marking_page import EXACT, NAME, SIZES, piece_pages
from workbench.sheets.page_file import pdf_of
from workbench.sheets.paper import PAPERS, PrintError
from workbench.sheets.pen import SOFT
from workbench.sheets.sections import INVENTED, cautions, over_limit
from workbench.sheets.setter import FOOT, FOOTER, SIDE, TOP, Page

TITLE = "Marking guide"
MARKING_PAPERS = ("A4", "Letter")
_AIR = 4.0


def print_marking(
    guides: Sequence[Guide], words: Heading, paper: str = "A4", over: Sequence[Finding] = ()
) -> bytes:
    """A PDF of one page for each piece, after one with the sums: the same input gives the same bytes.

    ``over`` is what is above a limit that was set; the first page says so. PrintError, in one
    sentence, where there is no piece to mark, or for another paper.
    """
    if paper not in MARKING_PAPERS:
        raise PrintError(f"A marking guide is printed on {' or '.join(MARKING_PAPERS)}, not on “{paper}”.")
    guides = [guide for guide in guides if guide.pieces]
    if not guides:
        raise PrintError("There is no piece to mark yet.")
    size = PAPERS[paper]
    pages = _first_pages(guides, words, size, over)
    for guide in guides:
        for piece in guide.pieces:
            pages += piece_pages(piece, guide.rounding, words, size)
    for number, page in enumerate(pages, 1):
        foot = _foot(page.width - 2 * SIDE, f"page {number} of {len(pages)}", words)
        page.put(SIDE, FOOT + foot.height, foot)
    return pdf_of(pages, TITLE)


def _foot(width: float, page: str, words: Heading) -> Block:
    """Whose it is, and which page this is."""
    size = SMALL + 0.2
    name = fitted(clean(words.client), size, width - text_width(page, size) - 8.0)
    indent = width - text_width(page, size)
    lines = [Line(3.6, name, size, colour=SOFT), Line(3.6, page, size, colour=SOFT, indent=indent)]
    return text_block(lines, 3.6 * LEADING)


# --- the first page --------------------------------------------------------------------------


def _first_pages(
    guides: Sequence[Guide], words: Heading, size: tuple[float, float], over: Sequence[Finding]
) -> list[Page]:
    """How to go about it, and the sums of each layer; the cautions at the foot of the first page."""
    width, top, floor = size[0] - 2 * SIDE, size[1] - TOP, FOOT + FOOTER
    warning = cautions(width)
    pages = [Page(*size)]
    pages[0].put(SIDE, floor + warning.height, warning)
    at, lowest = top, floor + warning.height + _AIR
    amiss = [over_limit(over, words, width)] if over else []
    for block in (*_how(guides[0].rounding, words, width), *amiss, *_all_sums(guides, width)):
        if at - block.height < lowest:
            pages.append(Page(*size))
            at, lowest = top, floor
        pages[-1].put(SIDE, at, block)
        at -= block.height + 0.8 * _AIR
    return pages


def _how(rounding: Rounding, words: Heading, width: float) -> Iterator[Block]:
    """Whose it is, and how the guide is read."""
    about = " · ".join(part for part in (clean(words.client), clean(words.date)) if part)
    yield paragraph(TITLE, width, NAME, bold=True)
    if about:
        yield paragraph(about, width, LARGE, most=2)
    if words.invented:
        yield paragraph(INVENTED, width, LARGE, bold=True)
    for line in (
        f"Every distance is rounded {rounding.label}. Mark in the order of the numbers; tick what is done.",
        "The upright is the straight grain. “Up” and “down” are measured on it from the waist line, “left” "
        "and “right” square to it. A width is measured with a straight tape from the mark that is named.",
        "Draw the lines with a curve or a bent ruler, as smoothly as the marks allow. The drawings are not "
        "to scale.",
    ):
        yield paragraph(line, width, SIZES[2])


def _all_sums(guides: Sequence[Guide], width: float) -> Iterator[Block]:
    """The sums of each layer; layers that are marked alike are told of once."""
    told: dict[tuple[str, ...], list[str]] = {}
    for guide in guides:
        told.setdefault(tuple(_sums(guide)), []).append(guide.layer_label)
    for lines, labels in told.items():
        parts = [paragraph(line, width, SIZES[3], bold=line == lines[-1]) for line in lines]
        label = ", ".join([labels[0], *(label.lower() for label in labels[1:])])
        yield stack([heading(label, width), *parts], 0.8)


def _sums(guide: Guide) -> Iterator[str]:
    """What the panels of one layer add up to, and how far off the marks are."""
    say, said = guide.rounding.say, guide.rounding.say_error
    for row in guide.girths:
        if row.whole:
            parts = " + ".join(say(mm).removesuffix(f" {guide.rounding.unit}") for mm in row.widths)
            girth = say_closely(row.finished + row.error, guide.rounding.unit, 16)
            yield (
                f"{LEVEL_LABEL[row.level]}: {parts} = {say(row.half)}, the half. Finished, with the opening, "
                f"{girth} round the body{_off(row, guide)}."
            )
    told = ["As marked, every outline is the exact one."]
    if guide.error >= EXACT:
        told = [f"As marked, no outline lies more than {said(guide.error)} off the exact one."]
    if guide.girths and guide.girth_error < EXACT:
        told.append("Every finished girth comes out as it is drafted.")
    elif guide.girths:
        told.append(f"No finished girth is more than {said(guide.girth_error)} out.")
    if guide.seams:
        told.append(f"The two sides of a seam differ by at most {said(guide.seam_error)}.")
    yield " ".join(told)


def _off(row: GirthRow, guide: Guide) -> str:
    if abs(row.error) < EXACT:
        return ""
    return f": {guide.rounding.say_error(row.error)} {'more' if row.error > 0 else 'less'} than drafted"

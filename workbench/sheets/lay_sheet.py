"""The lay sheets: each cloth with its plan to scale, and the measures to lay it without a large printer."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from workbench.cloth import Cloth, LayError, Plan
from workbench.pieces import Cutting
from workbench.sheets.block import heading
from workbench.sheets.fonts import clean
from workbench.sheets.heading import Heading
from workbench.sheets.lay_cloth import LaidCloth, laid_cloth
from workbench.sheets.lay_drawing import SCALES, drawing_size, lay_drawing
from workbench.sheets.lay_head import lay_head
from workbench.sheets.lay_table import (
    GUTTER,
    Row,
    below_height,
    beside_width,
    columns_that_fit,
    measured_to,
    rows_of,
    rows_that_fit,
    tables_below,
    tables_beside,
)
from workbench.sheets.page_file import pdf_of
from workbench.sheets.paper import PAPERS, PrintError
from workbench.sheets.sections import footer
from workbench.sheets.setter import FOOT, FOOTER, SIDE, TOP, Page

TITLE = "Lay plans"
LAY_PAPERS = ("A4", "Letter", "A3")
_MOST_STRIPS = 4
_AIR = 4.0
_ELSEWHERE, _BROKEN = 0.6, 0.8
"""What a table on another page, and every break of the cloth, is worth against a larger drawing."""

Where = Literal["below", "beside", "next"]


def print_lay(plans: Sequence[tuple[Cloth, Plan, Cutting]], heading: Heading, paper: str = "A4") -> bytes:
    """A PDF with a scaled sheet for every cloth: the same input gives the same bytes.

    PrintError, in one sentence, where there is no plan, where one was made from other pieces
    or another cloth than are given with it, or where the paper is none of :data:`LAY_PAPERS`.
    """
    if paper not in LAY_PAPERS:
        raise PrintError(
            f"Lay plans are printed on {', '.join(LAY_PAPERS[:-1])} or {LAY_PAPERS[-1]}, not on “{paper}”."
        )
    if not plans:
        raise PrintError("There is no lay plan to print yet.")
    pages = [
        page for cloth, plan, cutting in plans for page in _pages(_laid(cloth, plan, cutting, heading), paper)
    ]
    for number, page in enumerate(pages, 1):
        foot = footer(page.width - 2 * SIDE, f"page {number} of {len(pages)}", "", heading)
        page.put(SIDE, FOOT + foot.height, foot)
    return pdf_of(pages, TITLE)


def _laid(cloth: Cloth, plan: Plan, cutting: Cutting, words: Heading) -> LaidCloth:
    try:
        found = laid_cloth(cloth, plan, cutting, words)
    except LayError as error:
        raise PrintError(error.finding.text(words.unit, words.fraction)) from error
    if not found.lying:
        raise PrintError(f"Nothing lies on {clean(cloth.name)}: there is no plan to print.")
    return found


@dataclass(frozen=True)
class Setting:
    """One way to set a sheet."""

    lying_down: bool
    where: Where
    strips: int
    scale: float

    @property
    def worth(self) -> float:
        """The larger the drawing the better; less for each break of the cloth and for a second page."""
        return (_ELSEWHERE if self.where == "next" else 1.0) * _BROKEN ** (self.strips - 1) / self.scale


def _pages(laid: LaidCloth, paper: str) -> list[Page]:
    """The sheet, and the rest of its table where that does not go on it."""
    rows, setting = rows_of(laid), _best(laid, paper)
    size = _size(paper, setting.lying_down)
    page = Page(*size)
    width, top = size[0] - 2 * SIDE, size[1] - TOP
    head = lay_head(laid, width, setting.scale)
    page.put(SIDE, top, head)
    top -= head.height
    drawn = lay_drawing(laid, setting.scale, setting.strips)
    page.put(SIDE, top, drawn)
    if setting.where == "below":
        page.put(SIDE, top - drawn.height - _AIR, tables_below(laid, rows, width))
    elif setting.where == "beside":
        start = drawing_size(laid, setting.scale, setting.strips)[0] + GUTTER
        page.put(SIDE + start, top, tables_beside(laid, rows, top - FOOT - FOOTER))
    else:
        return [page, *_table_pages(laid, rows, size)]
    return [page]


def _table_pages(laid: LaidCloth, rows: Sequence[Row], size: tuple[float, float]) -> Iterator[Page]:
    width, top = size[0] - 2 * SIDE, size[1] - TOP
    head = heading(f"{clean(laid.cloth.name)}: measures", width, clean(laid.words.client))
    used = head.height + measured_to(laid, width).height
    most = rows_that_fit(top - used - FOOT - FOOTER) * columns_that_fit(laid, width)
    for first in range(0, len(rows), most):
        page = Page(*size)
        page.put(SIDE, top, head)
        page.put(SIDE, top - head.height, tables_below(laid, rows[first : first + most], width))
        yield page


def _size(paper: str, lying_down: bool) -> tuple[float, float]:
    width, height = PAPERS[paper]
    return (height, width) if lying_down else (width, height)


def _best(laid: LaidCloth, paper: str) -> Setting:
    """The setting with the largest drawing, all things weighed; the plainer of two that are equal."""
    found = [
        setting
        for strips in range(1, _MOST_STRIPS + 1)
        for lying_down in (True, False)
        for setting in _settings(laid, _size(paper, lying_down), lying_down, strips)
    ]
    return max(found, key=lambda setting: setting.worth)


def _settings(laid: LaidCloth, size: tuple[float, float], lying_down: bool, strips: int) -> Iterator[Setting]:
    width = size[0] - 2 * SIDE
    room = size[1] - TOP - FOOT - FOOTER - lay_head(laid, width, SCALES[-1]).height
    rooms: tuple[tuple[Where, float, float], ...] = (
        ("below", width, room - below_height(laid, width) - _AIR),
        ("beside", width - beside_width(laid, room), room),
        ("next", width, room),
    )
    for where, wide, tall in rooms:
        scale = _scale(laid, strips, wide, tall)
        if scale is not None:
            yield Setting(lying_down, where, strips, scale)


def _scale(laid: LaidCloth, strips: int, width: float, height: float) -> float | None:
    """The largest round scale at which the drawing fits; None where none does."""
    for scale in SCALES:
        wide, tall = drawing_size(laid, scale, strips)
        if wide <= width and tall <= height:
            return scale
    return None

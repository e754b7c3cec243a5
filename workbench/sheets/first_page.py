"""The first page, and its continuation where the findings run long: sections set into pages.

The first page always carries the client, what is over a limit, the measurements and the
cautions. Whatever does not fit any more goes on to the next page; nothing is left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from workbench.draft import Comfort, Finding, Outcome, by_weight
from workbench.sheets.arithmetic import comfort_table, ledger, reduction
from workbench.sheets.block import BODY, HEADING, Block, heading, paragraph, stack
from workbench.sheets.heading import Heading
from workbench.sheets.map_block import map_block, map_block_of_any_size
from workbench.sheets.paper import PAPERS, ROLL, PrintChoice
from workbench.sheets.pen import SOFT, Pen
from workbench.sheets.sections import (
    cautions,
    finding_block,
    footer,
    listed_over,
    measurements,
    over_limit,
    who,
)
from workbench.sheets.sheetmap import SheetMap
from workbench.sheets.squares import SQUARE_INCHES
from workbench.sheets.squares_page import squares_block

_SIDE = 14.0
_TOP, _FOOT = 13.0, 10.0
_FOOTER = 6.0
_GAP = 2.5
_GUTTER = 7.0
_MAP_SHARES = (0.40, 0.32, 0.25)
_MAP_TALLEST, _MAP_LARGE = 84.0, 170.0


@dataclass
class Page:
    """One page of set sections: blocks with their left and top, mm."""

    width: float
    height: float
    blocks: list[tuple[float, float, Block]] = field(default_factory=list)
    has_map: bool = False

    def put(self, left: float, top: float, block: Block) -> None:
        """Set a block."""
        self.blocks.append((left, top, block))

    def paint(self, pen: Pen) -> None:
        """Draw everything that was set."""
        for left, top, block in self.blocks:
            block.paint(pen, left, top)


def front_size(choice: PrintChoice, words: Heading) -> tuple[float, float]:
    """A4 or Letter: the paper of the sheets where it is one of them, else what goes with the unit."""
    if choice.name in ("A4", "Letter"):
        return PAPERS[choice.name]
    return PAPERS["Letter" if choice.name == ROLL and words.unit == "in" else "A4"]


def front_pages(
    outcome: Outcome, comfort: Comfort, words: Heading, choice: PrintChoice, sheets: SheetMap
) -> list[Page]:
    """The first page and what follows it; footers come later, when the number of pages is known."""
    setter = _Setter(front_size(choice, words), squares_due=squares_in_front(choice, sheets))
    width = setter.width
    findings = by_weight((*outcome.findings, *comfort.findings))
    over = [finding for finding in findings if finding.severity == "over"]
    setter.reserve(cautions(width))
    setter.add_wide(who(words, width))
    if over:
        setter.add_wide(over_limit(over, words, width))
    setter.add_wide(measurements(words, width))
    setter.add_wide(reduction(outcome, words, width))
    setter.add_wide(ledger(outcome, words, width))
    setter.add_wide(comfort_table(outcome, comfort, words, width))
    shown = listed_over(over)
    rest = [finding for finding in findings if not any(finding is said for said in shown)]
    _set_findings_and_map(setter, rest, words, sheets)
    if setter.squares_due:
        setter.turn()
        _add_map(setter, sheets)
    return setter.pages


def squares_in_front(choice: PrintChoice, sheets: SheetMap) -> bool:
    """Whether the test squares stand on the second page: the same printer and paper as the sheets."""
    return sheets.squares is None and choice.name in ("A4", "Letter")


class _Setter:
    """Fills pages from the top; the first keeps room at its foot for the cautions.

    With ``squares_due`` the next page that need not be whole gives its left side to the test squares.
    """

    def __init__(self, size: tuple[float, float], squares_due: bool) -> None:
        self._size = size
        self.squares_due = squares_due
        self.left, self.width = _SIDE, size[0] - 2 * _SIDE
        self.pages = [Page(*size)]
        self.top, self.floor = size[1] - _TOP, _FOOT + _FOOTER

    def reserve(self, notice: Block) -> None:
        """Set a block at the foot of the first page."""
        self.pages[0].put(_SIDE, self.floor + notice.height, notice)
        self.floor += notice.height + _GAP

    @property
    def room(self) -> float:
        """Height left on this page."""
        return self.top - self.floor

    def turn(self, whole: bool = False) -> None:
        """Begin a new page; a ``whole`` one keeps its full width."""
        self.pages.append(Page(*self._size))
        self.left, self.width = _SIDE, self._size[0] - 2 * _SIDE
        self.top, self.floor = self._size[1] - _TOP, _FOOT + _FOOTER
        if self.squares_due and not whole:
            self.squares_due = False
            self.pages[-1].put(_SIDE, self.top, squares_block())
            self.left, self.width = _SIDE + SQUARE_INCHES + _GUTTER, self.width - SQUARE_INCHES - _GUTTER

    def add_wide(self, block: Block) -> None:
        """Set a block that was made for the full width."""
        if block.height > self.room:
            self.turn(whole=True)
        self.add(block)

    def add(self, block: Block, gap: float = _GAP) -> None:
        """Set a block below the last one, on a new page where it does not fit."""
        if block.height > self.room:
            self.turn()
        self.pages[-1].put(self.left, self.top, block)
        self.top -= block.height + gap


def _set_findings_and_map(
    setter: _Setter, findings: Sequence[Finding], words: Heading, sheets: SheetMap
) -> None:
    """The map at the right of the findings where both begin on this page; else it heads the next one."""
    mapped = _put_map_beside(setter, findings, words, sheets)
    for number, finding in enumerate(findings):
        block = finding_block(finding, words, setter.width)
        if block.height + (0.0 if number else HEADING) > setter.room:
            setter.turn()
            if not mapped:
                _add_map(setter, sheets)
                mapped = True
            setter.add(heading("Findings, continued" if number else "Findings", setter.width), 0.0)
        elif number == 0:
            setter.add(heading("Findings", setter.width), 0.0)
        setter.add(finding_block(finding, words, setter.width), 0.0)
    if not findings:
        setter.add(stack([heading("Findings", setter.width), _nothing_found(setter.width)]))
    if not mapped:
        setter.turn()
        _add_map(setter, sheets)


def _put_map_beside(setter: _Setter, findings: Sequence[Finding], words: Heading, sheets: SheetMap) -> bool:
    """Whether the map has room on this page; it is made narrower where that lets the findings fit too."""
    full = setter.width
    chosen: tuple[float, Block] | None = None
    for share in _MAP_SHARES:
        map_width = share * (full - _GUTTER)
        drawn = map_block(sheets, map_width, min(_MAP_TALLEST, setter.room))
        if drawn is None:
            continue
        column = full - _GUTTER - map_width
        fits = HEADING + sum(finding_block(f, words, column).height for f in findings) <= setter.room
        if chosen is None or fits:
            chosen = map_width, drawn
        if fits:
            break
    if chosen is None:
        return False
    setter.pages[-1].put(setter.left + full - chosen[0], setter.top, chosen[1])
    setter.pages[-1].has_map = True
    setter.width = full - _GUTTER - chosen[0]
    return True


def _add_map(setter: _Setter, sheets: SheetMap) -> None:
    """The map as large as the column allows, with room left for findings below it where that is no loss."""
    for tallest in (_MAP_LARGE, setter.room):
        drawn = map_block(sheets, setter.width, tallest)
        if drawn is not None:
            break
    setter.add(drawn or map_block_of_any_size(sheets, setter.width, setter.room))
    setter.pages[-1].has_map = True


def _nothing_found(width: float) -> Block:
    return paragraph("Nothing more to report.", width, BODY, colour=SOFT)


def set_footers(pages: Sequence[Page], total: int, words: Heading) -> None:
    """Put the footer on each page, now that the number of pages is known."""
    map_page = next(number for number, page in enumerate(pages, 1) if page.has_map)
    for number, page in enumerate(pages, 1):
        elsewhere = "" if page.has_map else f" Sheet map: page {map_page}."
        block = footer(page.width - 2 * _SIDE, f"page {number} of {total}", elsewhere, words)
        page.put(_SIDE, _FOOT + block.height, block)

"""Pages filled from the top with blocks: the paper in front of the sheets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from workbench.sheets.block import Block
from workbench.sheets.heading import Heading
from workbench.sheets.paper import PAPERS, ROLL, PrintChoice
from workbench.sheets.pen import Pen
from workbench.sheets.sections import footer
from workbench.sheets.squares import SQUARE_INCHES
from workbench.sheets.squares_page import squares_block

SIDE = 14.0
TOP, FOOT = 13.0, 10.0
FOOTER = 6.0
GAP = 2.5
GUTTER = 7.0


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


class Setter:
    """Fills pages from the top; the first keeps room at its foot for the cautions.

    With ``squares_due`` the next page that need not be whole gives its left side to the test squares.
    """

    def __init__(self, size: tuple[float, float], squares_due: bool) -> None:
        self._size = size
        self.squares_due = squares_due
        self.left, self.width = SIDE, size[0] - 2 * SIDE
        self.pages = [Page(*size)]
        self.top, self.floor = size[1] - TOP, FOOT + FOOTER

    def reserve(self, notice: Block) -> None:
        """Set a block at the foot of the first page."""
        self.pages[0].put(SIDE, self.floor + notice.height, notice)
        self.floor += notice.height + GAP

    @property
    def room(self) -> float:
        """Height left on this page."""
        return self.top - self.floor

    @property
    def begun(self) -> bool:
        """Whether anything stands on this page yet."""
        return bool(self.pages[-1].blocks)

    def turn(self, whole: bool = False) -> None:
        """Begin a new page; a ``whole`` one keeps its full width."""
        self.pages.append(Page(*self._size))
        self.left, self.width = SIDE, self._size[0] - 2 * SIDE
        self.top, self.floor = self._size[1] - TOP, FOOT + FOOTER
        if self.squares_due and not whole:
            self.squares_due = False
            self.pages[-1].put(SIDE, self.top, squares_block())
            self.left, self.width = SIDE + SQUARE_INCHES + GUTTER, self.width - SQUARE_INCHES - GUTTER

    def add_wide(self, block: Block) -> None:
        """Set a block that was made for the full width."""
        if block.height > self.room:
            self.turn(whole=True)
        self.add(block)

    def add(self, block: Block, gap: float = GAP) -> None:
        """Set a block below the last one, on a new page where it does not fit."""
        if block.height > self.room:
            self.turn()
        self.pages[-1].put(self.left, self.top, block)
        self.top -= block.height + gap


def set_footers(pages: Sequence[Page], total: int, words: Heading) -> None:
    """Put the footer on each page, now that the number of pages is known."""
    map_page = next(number for number, page in enumerate(pages, 1) if page.has_map)
    for number, page in enumerate(pages, 1):
        elsewhere = "" if page.has_map else f" Sheet map: page {map_page}."
        block = footer(page.width - 2 * SIDE, f"page {number} of {total}", elsewhere, words)
        page.put(SIDE, FOOT + block.height, block)

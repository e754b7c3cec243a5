"""Paper: sizes, what a printer leaves white, and what was chosen for one print.

Sizes are ISO 216 (A0, A3, A4) and ANSI Y14.1 (Letter), upright, in millimetres. A roll
has a width of its own and is as long as the panels need.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from math import isfinite

from workbench.pieces import LayerName, Marks

MM_PER_INCH = 25.4
"""International yard and pound agreement of 1959, from memory."""
LONGEST_SIDE = 5080.0
"""mm; a page of a PDF holds at most 14,400 units of 1/72 in a side (ISO 32000, read; second-hand)."""
MOST_SHEETS = 500
"""More sheets than this are a slip of the keyboard, not a print."""
ROLL = "roll"

PAPERS: dict[str, tuple[float, float]] = {
    "A4": (210.0, 297.0),
    "Letter": (8.5 * MM_PER_INCH, 11 * MM_PER_INCH),
    "A3": (297.0, 420.0),
    "A0": (841.0, 1189.0),
}
"""Width and height, mm, of the cut sizes; a roll is not among them (ISO 216 and ANSI Y14.1, read)."""


class PrintError(ValueError):
    """A choice of paper that cannot be printed; the message is one sentence that says why."""


@dataclass(frozen=True)
class PrintChoice:
    """What the panels are printed on and how, in millimetres."""

    name: str = "A4"
    """One of :data:`PAPERS`, or ``roll``."""
    margin_mm: float = 10.0
    """Left white on every side; office printers need 3 to 6.4 mm (printer description files, read)."""
    overlap_mm: float = 10.0
    """Printed on both of two neighbouring sheets, to stick them together on (own choice)."""
    roll_width_mm: float = 914.4
    """36 in; common practice, no source."""
    with_allowance: bool = True
    layers: tuple[LayerName, ...] = ("fashion",)
    """Layers whose pieces are printed at true size, where there are pieces."""
    cutting_pages: bool = True
    """Whether the sheets for the cutting table stand in front of the pieces, where there are pieces."""
    marks: Marks = field(default_factory=Marks)
    """How notches are drawn."""


@dataclass(frozen=True)
class PaperSize:
    """One page with its margin, and how far apart the sheets lie when they are joined; mm."""

    name: str
    width: float
    height: float
    margin: float
    overlap: float

    @property
    def print_width(self) -> float:
        """Between the left and right margins."""
        return self.width - 2 * self.margin

    @property
    def print_height(self) -> float:
        """Between the lower and upper margins."""
        return self.height - 2 * self.margin

    @property
    def pitch(self) -> tuple[float, float]:
        """From one sheet to the next, across and up."""
        return self.print_width - self.overlap, self.print_height - self.overlap

    def turned(self) -> PaperSize:
        """The same sheet lying on its side."""
        return replace(self, width=self.height, height=self.width)


def paper_of(choice: PrintChoice) -> PaperSize:
    """The chosen sheet, upright; a roll at its full width and the greatest length of a page.

    PrintError where paper, margin or overlap make no sense.
    """
    if choice.name != ROLL and choice.name not in PAPERS:
        raise PrintError(f"There is no paper called “{choice.name}”: choose {', '.join(PAPERS)} or {ROLL}.")
    _check_figure(choice.margin_mm, "margin")
    _check_figure(choice.overlap_mm, "overlap")
    if choice.name == ROLL:
        return _roll(choice)
    width, height = PAPERS[choice.name]
    paper = PaperSize(choice.name, width, height, choice.margin_mm, choice.overlap_mm)
    _check_room(paper)
    return paper


def _check_figure(figure: float, name: str) -> None:
    if not isfinite(figure) or figure < 0:
        raise PrintError(f"The {name} of the paper must be zero or more.")


def _roll(choice: PrintChoice) -> PaperSize:
    if not isfinite(choice.roll_width_mm) or choice.roll_width_mm <= 0:
        raise PrintError("The width of the roll must be more than zero.")
    if choice.roll_width_mm > LONGEST_SIDE:
        raise PrintError(
            f"A roll of {said(choice.roll_width_mm)} is wider than a page can be: "
            f"at most {said(LONGEST_SIDE)}."
        )
    paper = PaperSize(ROLL, choice.roll_width_mm, LONGEST_SIDE, choice.margin_mm, 0.0)
    _check_room(paper)
    return paper


def _check_room(paper: PaperSize) -> None:
    what = "the roll" if paper.name == ROLL else paper.name
    if min(paper.print_width, paper.print_height) <= 0:
        raise PrintError(f"Margins of {said(paper.margin)} leave nothing of {what} to print on.")
    if min(paper.pitch) <= 0:
        raise PrintError(
            f"An overlap of {said(paper.overlap)} is as wide as what can be printed on {what}: "
            f"{said(min(paper.print_width, paper.print_height))}."
        )


def said(mm: float) -> str:
    """A paper length in words that need no unit setting: ``12.7 mm``."""
    return f"{mm:.1f}".removesuffix(".0") + " mm"

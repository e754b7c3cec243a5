"""The two squares that show whether a print came out true to size."""

from __future__ import annotations

from workbench.sheets.pen import INK, SOFT, LineStyle, Pen
from workbench.sheets.spot import Box

SQUARE_MM, SQUARE_INCHES = 100.0, 101.6
"""Sides in mm; 4 in is 101.6 mm (own choice)."""
GAP = 10.0
_WORDS_ROOM = 8.0
SIZES = (
    (SQUARE_MM + GAP + SQUARE_INCHES, SQUARE_INCHES + _WORDS_ROOM),
    (SQUARE_INCHES, SQUARE_MM + GAP + SQUARE_INCHES + _WORDS_ROOM),
)
"""Room for both squares and the words above them: side by side, or one above the other."""
_HOW = ("Measure its width and its height.", "If either is out, set the printer to 100 % and print again.")
SQUARE_LINE = LineStyle(0.2, INK)


def draw_squares(pen: Pen, spot: Box) -> None:
    """Both squares in a spot of one of :data:`SIZES`, with what they measure and how to print."""
    x, y = spot.left, spot.bottom
    beside = spot.width > spot.height
    _square(pen, x, y if beside else y + SQUARE_INCHES + GAP, SQUARE_MM, "100 mm")
    _square(pen, x + SQUARE_MM + GAP if beside else x, y, SQUARE_INCHES, "4 in")
    pen.text(x, spot.top - 4.0, "Print at 100 %, no fit to page.", 3.6, bold=True)


def _square(pen: Pen, x: float, y: float, side: float, words: str) -> None:
    pen.rectangle(x, y, side, side, SQUARE_LINE)
    middle = x + 0.5 * side
    pen.text(middle, y + 0.5 * side, f"{words} square", 5.0, bold=True, align="middle")
    for number, line in enumerate(_HOW):
        pen.text(middle, y + 0.5 * side - 5.5 - 4.0 * number, line, 2.8, colour=SOFT, align="middle")

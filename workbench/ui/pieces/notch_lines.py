"""Notches as short lines from the cut edge inwards: one in front, two side by side in the back."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QLineF

from workbench.pieces import Marks, Notch, Piece

PAIR = 5.0
"""mm from one notch of a pair to the other, as on paper."""
_DEEPEST = 0.6
"""Part of the allowance that a notch may take."""
_DRAWN = 3.2
"""mm of a notch that is only drawn, where there is no allowance to cut it into."""


def notch_lines(piece: Piece, dx: float, marks: Marks) -> Iterator[QLineF]:
    """The notches of a piece that is moved sideways by ``dx``, mm."""
    allowances = {edge.name: edge.allowance for edge in piece.edges}
    for notch in piece.notches:
        allowance = allowances.get(notch.edge, 0.0)
        length = min(marks.length_mm, _DEEPEST * allowance if allowance > 0 else _DRAWN)
        yield from _lines(notch, dx, length, triangle=marks.style == "triangle")


def _lines(notch: Notch, dx: float, length: float, *, triangle: bool) -> Iterator[QLineF]:
    (x, y), (inx, iny) = notch.at, notch.towards
    for number in range(notch.count):
        away = (number - 0.5 * (notch.count - 1)) * PAIR
        foot_x, foot_y = x + dx - iny * away, y + inx * away
        tip_x, tip_y = foot_x + length * inx, foot_y + length * iny
        if not triangle:
            yield QLineF(foot_x, foot_y, tip_x, tip_y)
            continue
        half = min(0.5 * length, 0.4 * PAIR)
        for side in (-half, half):
            yield QLineF(foot_x - iny * side, foot_y + inx * side, tip_x, tip_y)

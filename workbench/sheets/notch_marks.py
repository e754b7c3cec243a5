"""Notches as strokes: one for the front, two side by side for the back."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from workbench.pieces import Marks, Notch, Piece
from workbench.sheets.drawing import Array, Stroke

PAIR = 5.0
"""From the middle of one notch to that of its twin, mm."""
_DEEPEST = 0.6
"""As a part of the allowance: a notch never reaches the stitch line."""
_UNALLOWED = 3.2
"""Length where there is no allowance to cut it into, mm: drawn, not cut."""


def notch_strokes(piece: Piece, marks: Marks, on_cut: bool = True) -> Iterator[Stroke]:
    """The notches of a piece from its cut line inwards, or from its stitch line where only that is drawn."""
    allowances = {edge.name: edge.allowance for edge in piece.edges}
    for notch in piece.notches:
        allowance = allowances.get(notch.edge, 0.0)
        start = 0.0 if on_cut else allowance
        length = min(marks.length_mm, _DEEPEST * allowance) if on_cut and allowance > 0 else _UNALLOWED
        yield from _notch(notch, marks, start, min(length, marks.length_mm))


def _notch(notch: Notch, marks: Marks, start: float, length: float) -> Iterator[Stroke]:
    inwards = np.array(notch.towards)
    along = np.array([-inwards[1], inwards[0]])
    first = np.array(notch.at) + start * inwards
    for number in range(notch.count):
        foot = first + (number - 0.5 * (notch.count - 1)) * PAIR * along
        yield Stroke("notch", _shape(foot, inwards, along, length, marks))


def _shape(foot: Array, inwards: Array, along: Array, length: float, marks: Marks) -> Array:
    tip = foot + length * inwards
    if marks.style == "slit":
        return np.array([foot, tip])
    half = min(0.5 * length, 0.4 * PAIR) * along
    return np.array([foot - half, tip, foot + half])

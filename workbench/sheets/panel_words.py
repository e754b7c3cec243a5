"""Where the words of a panel stand: between two level lines, where it is widest, clear of its edges."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from workbench.draft import Panel
from workbench.sheets.drawing import Array, Label
from workbench.sheets.fonts import clean, fitted, text_width, wrapped
from workbench.sheets.room import Inside

CUT_WORDS = "cut 2, left and right mirrored"
_NAME_SIZE, _SMALL, _TINY = 7.0, 2.9, 2.4
_LEADING = 1.35
_LEAST_ROOM, _LEAST_LENGTH = 14.0, 20.0
"""A narrower panel, or a shorter stretch of its side, carries no words along the side, mm."""
_TALL_ENOUGH = 45.0
"""Height beyond which a rung is no better for the words, mm."""
_JOIN_CLEAR = 6.0
"""The rings and numbers of a join take so much on either side of it, mm."""
_LEVEL_INSET = 2.0
_CLEAR = 4.0
"""Between words and an edge of the panel, mm."""


@dataclass(frozen=True)
class Rung:
    """The part of a panel between two neighbouring lines (hem, level, join, neckline), along its grain."""

    middle: float
    """x of the grain line."""
    low: float
    high: float
    room: float
    """Width that words may take halfway up, mm."""

    @property
    def height(self) -> float:
        """Low to high, mm."""
        return self.high - self.low


def rungs_of(panel: Panel, joins: tuple[float, ...] = ()) -> tuple[Rung, ...]:
    """From hem to neckline; one rung where neither level nor join crosses the grain."""
    middle = _middle(panel)
    low, high = _height_at(panel.hem, middle), _height_at(panel.neckline, middle)
    between = [_height_at(line, middle) for line in panel.level_lines.values()]
    between += [edge for join in joins for edge in (join - _JOIN_CLEAR, join + _JOIN_CLEAR)]
    stops = [low, *sorted(stop for stop in between if low < stop < high), high]
    rungs = []
    for low, high in pairwise(stops):
        if high - low > 1.0:
            rungs.append(Rung(middle, low, high, _room(panel, middle, 0.5 * (low + high))))
    return tuple(rungs) or (Rung(middle, stops[0], stops[-1], _room(panel, middle, stops[0])),)


def _middle(panel: Panel) -> float:
    """x halfway across at the waist, or at mid-height where the panel does not reach the waist."""
    low = max(panel.left[0, 1], panel.right[0, 1])
    high = min(panel.left[-1, 1], panel.right[-1, 1])
    y = 0.0 if low <= 0.0 <= high else 0.5 * (low + high)
    return 0.5 * (_x_at(panel.left, y) + _x_at(panel.right, y))


def _x_at(side: Array, y: float) -> float:
    return float(np.interp(y, side[:, 1], side[:, 0]))


def _height_at(line: Array, x: float) -> float:
    return float(np.interp(x, line[:, 0], line[:, 1]))


def _room(panel: Panel, middle: float, y: float) -> float:
    half = min(middle - _x_at(panel.left, y), _x_at(panel.right, y) - middle)
    return max(2 * (half - _CLEAR), 8.0)


def words_in(
    panel: Panel, rungs: tuple[Rung, ...], captions: tuple[str, ...], inside: Inside
) -> tuple[Label, ...]:
    """The panel's name, how often it is cut, and the captions, in the roomiest rung that holds them.

    Where none does, they are made smaller; they are never left out.
    """
    by_room = sorted(rungs, key=lambda rung: -min(rung.height, _TALL_ENOUGH) * rung.room)
    for smaller in (1.0, 0.8, 0.6, 0.45):
        for rung in by_room:
            labels = _block(rung, _lines(panel.name, captions, smaller * rung.room), smaller)
            if labels[0].y <= rung.high - labels[0].size and inside.holds(labels):
                return labels
    return _block(by_room[0], _lines(panel.name, captions, by_room[0].room), 0.45)


def _block(rung: Rung, lines: list[tuple[bool, str, float]], smaller: float) -> tuple[Label, ...]:
    """The lines centred in a rung, shrunk to its height where they are taller."""
    tall = sum(size * _LEADING for _, _, size in lines)
    shrink = min(smaller, max(rung.height - 6.0, 4.0) / tall)
    y = 0.5 * (rung.low + rung.high) + 0.5 * tall * shrink + 1.0
    labels = []
    for is_title, text, size in lines:
        y -= size * shrink * _LEADING
        labels.append(Label("title" if is_title else "caption", text, rung.middle, y, size * shrink))
    return tuple(labels)


def _lines(name: str, captions: tuple[str, ...], room: float) -> list[tuple[bool, str, float]]:
    size = min(_NAME_SIZE, _NAME_SIZE * room / text_width(name, _NAME_SIZE, bold=True))
    lines = [(True, name, size)]
    lines += [(False, line, _SMALL) for line in wrapped(CUT_WORDS, _SMALL, room)]
    for caption in captions:
        lines += [(False, line, _SMALL) for line in wrapped(clean(caption), _SMALL, room, most=3)]
    return lines


def edge_words(
    panel: Panel,
    rungs: tuple[Rung, ...],
    taken: tuple[Label, ...],
    beyond: tuple[str, str],
    inside: Inside,
) -> Iterator[Label]:
    """What each side is sewn to, along the side, in the tallest rung that the other words leave free."""
    free = [rung for rung in rungs if not any(rung.low < label.y < rung.high for label in taken)]
    rung = max(free, key=lambda rung: rung.height, default=None)
    if rung is None or rung.room < _LEAST_ROOM:
        return
    for side, words, inward in ((panel.left, beyond[0], 1.0), (panel.right, beyond[1], -1.0)):
        low, high = max(rung.low, float(side[0, 1])), min(rung.high, float(side[-1, 1]))
        if high - low >= _LEAST_LENGTH:
            label = _along(side, 0.5 * (low + high), fitted(words, _TINY, high - low - 8.0), inward)
            if inside.holds((label,)):
                yield label


def _along(side: Array, y: float, words: str, inward: float) -> Label:
    """Words that read upwards beside a left side and downwards beside a right one."""
    half = 0.5 * text_width(words, _TINY) + 1.0
    heights = np.linspace(y - half, y + half, 9)
    edge = np.interp(heights, side[:, 1], side[:, 0])
    chord = edge[0] + (edge[-1] - edge[0]) * np.linspace(0.0, 1.0, len(heights))
    bulge = float(np.max(inward * (edge - chord)))
    lean = float(np.degrees(np.arctan2(edge[-1] - edge[0], 2 * half)))
    x = float(np.mean(chord)) + inward * (bulge + 1.4 + 0.75 * _TINY)
    return Label("caption", words, x, y, _TINY, "middle", (90.0 if inward > 0 else -90.0) - lean)


def level_name(panel: Panel, line: Array, name: str, inside: Inside) -> Label:
    """A level's name on its line, at the left where it fits, else at the right or below the line."""
    choices = [
        _on_line(panel, line, name, size, at_left, above)
        for size in (_TINY, 0.75 * _TINY, 0.55 * _TINY)
        for above in (True, False)
        for at_left in (True, False)
    ]
    return next((label for label in choices if inside.holds((label,))), choices[0])


def _on_line(panel: Panel, line: Array, name: str, size: float, at_left: bool, above: bool) -> Label:
    """The name beside one end of a line, clear of the panel's side and of the line's own bend."""
    width = text_width(name, size)
    end = line[0] if at_left else line[-1]
    reach = float(end[1]) + np.array([0.0, 3.5 if above else -4.5])
    if at_left:
        x = float(np.max(np.interp(reach, panel.left[:, 1], panel.left[:, 0]))) + _LEVEL_INSET
    else:
        x = float(np.min(np.interp(reach, panel.right[:, 1], panel.right[:, 0]))) - _LEVEL_INSET - width
    heights = np.interp(np.linspace(x, x + width, 5), line[:, 0], line[:, 1])
    y = float(heights.max()) + 1.0 if above else float(heights.min()) - 1.0 - 0.75 * size
    return Label("caption", name, x, y, size, "left")

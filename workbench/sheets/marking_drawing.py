"""The numbered drawing of a piece that is marked by hand, as far as the hand has come.

Coordinates are mm of cloth, right of and above the corner of the piece.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from workbench.marking import Across, Mark, Offset, PieceGuide
from workbench.sheets.drawing import Array, Drawing, Label, Stroke

_CROSS = 0.45
"""Half of a mark's cross, as a part of the height of its number."""
_AROUND = tuple(np.radians((45, 135, 315, 225, 0, 180, 90, 270)).tolist())
"""Ways to set a number beside its mark, in the order they are tried."""
_BEYOND = 1.2
"""How far upright and base line run on past the piece, as parts of the height of a number."""


@dataclass(frozen=True)
class MarkingPicture:
    """What is on the cloth already, what this step adds, and what comes later."""

    before: Drawing
    now: Drawing
    later: Drawing

    def bounds(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top of all of it; mm."""
        parts = [part.bounds() for part in (self.before, self.now, self.later) if part.strokes]
        lows, highs = np.array(parts)[:, :2].min(axis=0), np.array(parts)[:, 2:].max(axis=0)
        return float(lows[0]), float(lows[1]), float(highs[0]), float(highs[1])


def marking_picture(piece: PieceGuide, size: float, step: int | None = None) -> MarkingPicture:
    """The drawing at a step, counted from 0; finished where none is given.

    ``size`` is the height of the numbers in mm of cloth.
    """
    last = len(piece.steps) if step is None else step
    names = _numbers(piece, size)
    parts: list[tuple[list[Stroke], list[Label]]] = [([], []), ([], []), ([], [])]
    for number, one in enumerate(piece.steps):
        strokes, labels = parts[0 if number < last else 1 if number == last else 2]
        strokes += _frame(piece, size) if number == 0 else ()
        for mark in one.marks:
            strokes += _mark(piece, mark, size)
            labels.append(names[mark])
        strokes += [Stroke("stitch", piece.drawn[place]) for place in one.curves]
        if one.cuts:
            strokes.append(Stroke("cut", piece.cut, closed=True))
    before, now, later = (Drawing(tuple(strokes), tuple(labels)) for strokes, labels in parts)
    return MarkingPicture(before, now, later)


def _frame(piece: PieceGuide, size: float) -> Iterator[Stroke]:
    """Upright and base line."""
    (left, low), (right, high) = piece.cut.min(axis=0).tolist(), piece.cut.max(axis=0).tolist()
    more = _BEYOND * size
    yield Stroke("grain", np.array([[0.0, low - more], [0.0, high + more]]))
    ends = (0.0, right + more) if piece.side > 0 else (left - more, 0.0)
    yield Stroke("waist", np.array([[ends[0], 0.0], [ends[1], 0.0]]))


def _mark(piece: PieceGuide, number: int, size: float) -> Iterator[Stroke]:
    """A cross, and the light line it is found on."""
    x, y = piece.place(number)
    arm = _CROSS * size
    yield Stroke("mark", np.array([[x - arm, y], [x + arm, y]]))
    yield Stroke("mark", np.array([[x, y - arm], [x, y + arm]]))
    way = _way(piece, next(mark for mark in piece.marks if mark.number == number))
    if way is not None and float(np.ptp(way, axis=0).max()) > 0:
        yield Stroke("level", way)


def _way(piece: PieceGuide, mark: Mark) -> Array | None:
    """The line along which the tape is laid."""
    here = piece.place(mark.number)
    if isinstance(mark, Across):
        return np.array([piece.place(mark.start), here])
    if isinstance(mark, Offset):
        start, end = np.array(piece.place(mark.start)), np.array(piece.place(mark.end))
        run = (end - start) / max(float(np.hypot(*(end - start))), 1e-9)
        foot = start + mark.along * run
        return np.array([start, foot, here]) if mark.out else np.array([start, foot])
    return np.array([(0.0, mark.up), here])


def _numbers(piece: PieceGuide, size: float) -> dict[int, Label]:
    """The number of every mark, beside it and clear of the other numbers and marks where there is room."""
    places = piece.places
    crosses = np.array(list(places.values()))
    lines = np.concatenate([*piece.drawn, crosses])
    taken: list[tuple[float, float, float]] = []
    labels = {}
    for number, (x, y) in places.items():
        text = str(number)
        half = 0.3 * size * len(text)
        best = min(
            (_spot(x, y, size, half, turn) for turn in _AROUND),
            key=lambda spot: _crowded(spot, half, size, lines, crosses, taken),
        )
        taken.append((*best, half))
        labels[number] = Label("figure", text, best[0], best[1] - 0.36 * size, size)
    return labels


def _spot(x: float, y: float, size: float, half: float, turn: float) -> tuple[float, float]:
    """The middle of a number beside a mark."""
    return x + (half + 0.7 * size) * float(np.cos(turn)), y + 0.95 * size * float(np.sin(turn))


def _crowded(
    spot: tuple[float, float],
    half: float,
    size: float,
    lines: Array,
    crosses: Array,
    taken: list[tuple[float, float, float]],
) -> float:
    """How much a number would stand on: another number counts most, then a mark, then a line."""
    x, y = spot
    over = sum(
        abs(x - other_x) < half + other_half and abs(y - other_y) < 0.8 * size
        for other_x, other_y, other_half in taken
    )
    within = _within(crosses, x, y, half + 0.3 * size, 0.7 * size)
    return 10.0 * over + 3.0 * within + float(_within(lines, x, y, half, 0.5 * size) > 0)


def _within(points: Array, x: float, y: float, wide: float, high: float) -> int:
    return int(((np.abs(points[:, 0] - x) < wide) & (np.abs(points[:, 1] - y) < high)).sum())

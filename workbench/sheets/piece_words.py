"""What is written on a piece: its name and how it is cut, its lines, and what its edges are sewn to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

import numpy as np

from workbench.pieces import EdgeName, MarkLine, Marks, Piece
from workbench.sheets.along import Course
from workbench.sheets.drawing import Array, Label, Role
from workbench.sheets.fonts import clean, fitted, text_width, wrapped
from workbench.sheets.piece_room import Over, PieceRoom
from workbench.sheets.spot import Box

SIDES_WORDS = "right side up: left; turned over: right"
FOLD_WORDS = "place on the fold"
_NAME, _CUT, _SMALL, _TINY = 7.0, 3.5, 2.9, 2.4
_LEADING = 1.35
_TRIES: tuple[tuple[Over, tuple[float, ...]], ...] = (
    ("nothing", (1.0, 0.8)),
    ("joins", (1.0, 0.8, 0.6)),
    ("nothing", (0.6, 0.45)),
    ("lines", (1.0, 0.8, 0.6, 0.45)),
)
"""What a block of words may lie on, and how small it is made, in the order they are tried."""
_WIDTHS = (
    *((62.0, 0.0), (46.0, 0.0), (34.0, 0.0), (24.0, 0.0), (120.0, 0.0)),
    *((62.0, 90.0), (46.0, 90.0), (36.0, 90.0), (28.0, 90.0), (120.0, 90.0)),
)
"""Room for a block of words, mm, and the way it is turned, in the order they are tried."""
_LONG = 100.0
"""Room in which the small print is set one behind the other."""
_ENDS = (0.0, 1.0, 0.12, 0.88, 0.28, 0.72)
_MIDDLES = (0.5, 0.3, 0.7, 0.15, 0.85, 0.0, 1.0)


@dataclass(frozen=True)
class PieceWords:
    """What is said on a piece beside what the piece itself knows."""

    layer: str
    captions: tuple[str, ...] = ()
    """Client and date."""
    edges: Mapping[EdgeName, str] = field(default_factory=dict)
    """What each edge is sewn to, or which edge it is."""
    joins: tuple[Array, ...] = ()
    """Lines (2, 2) at which sheets join, in the piece's own coordinates."""
    rings: tuple[Box, ...] = ()
    """Where joins carry their numbers and words."""
    marks: Marks = field(default_factory=Marks)
    with_cut: bool = True


def title_block(piece: Piece, words: PieceWords, room: PieceRoom) -> tuple[Label, ...]:
    """Name, layer, how often it is cut, client and date, near the middle of the grain line.

    Where there is no room for them they are made smaller; they are never left out.
    """
    middle = np.mean(np.array(piece.grain), axis=0)
    favoured = (float(middle[0]), float(middle[1]))
    for over, scales in _TRIES:
        for scale in scales:
            for width, angle in _WIDTHS:
                lines = _lines(piece, words, width, scale)
                size = _extent(lines)
                spot = room.spot(*(size if angle == 0 else size[::-1]), favoured, over)
                if spot is not None:
                    return _set(lines, spot, angle)
    box = np.ptp(piece.stitch, axis=0)
    lines = _lines(piece, words, 120.0, 0.35)
    return _set(lines, _middle_of(piece), 90.0 if box[1] > box[0] else 0.0)


def _middle_of(piece: Piece) -> tuple[float, float]:
    low, high = piece.stitch.min(axis=0), piece.stitch.max(axis=0)
    return float(0.5 * (low[0] + high[0])), float(0.5 * (low[1] + high[1]))


Line = tuple[Role, str, float]


def _lines(piece: Piece, words: PieceWords, width: float, scale: float) -> list[Line]:
    name = scale * min(_NAME, _NAME * width / (scale * text_width(piece.name, _NAME, bold=True)))
    lines: list[Line] = [("title", piece.name, name)]
    named = piece.name.startswith(words.layer)
    head = piece.cut_words if named else f"{words.layer}: {piece.cut_words}"
    for line in _at(": ", head, scale * _CUT, width, bold=True):
        lines += [("title", part, scale * _CUT) for part in wrapped(line, scale * _CUT, width, bold=True)]
    small = _at("; ", SIDES_WORDS, scale * _SMALL, width) if piece.mirrored else []
    small += [clean(caption) for caption in words.captions]
    for text in [" · ".join(small)] if width > _LONG else small:
        lines += [("caption", part, scale * _SMALL) for part in wrapped(text, scale * _SMALL, width, most=3)]
    return lines


def _at(mark: str, text: str, size: float, width: float, bold: bool = False) -> list[str]:
    """The text in one line where it fits, else broken at the mark."""
    return [text] if text_width(text, size, bold) <= width else text.split(mark)


def _extent(lines: list[Line]) -> tuple[float, float]:
    width = max(text_width(text, size, role == "title") for role, text, size in lines)
    return width, sum(size for _, _, size in lines) * _LEADING


def _set(lines: list[Line], middle: tuple[float, float], angle: float) -> tuple[Label, ...]:
    """The lines centred on a place, the first one uppermost, turned about it."""
    away = 0.5 * _extent(lines)[1]
    up = np.array([-np.sin(np.radians(angle)), np.cos(np.radians(angle))])
    labels = []
    for role, text, size in lines:
        away -= size * _LEADING
        x, y = np.array(middle) + (away + 0.28 * size) * up
        labels.append(Label(role, text, float(x), float(y), size, "middle", angle))
    return tuple(labels)


def mark_words(mark: MarkLine, room: PieceRoom) -> Label | None:
    """The name of a line beside it; smaller where it must be, and across other lines only at the last."""
    parts = _MIDDLES if mark.kind in ("bone", "fold") else _ENDS
    return _beside(Course(mark.points), clean(mark.label), room, parts, (1.0, -1.0))


def edge_words(piece: Piece, words: PieceWords, room: PieceRoom) -> Iterator[Label]:
    """What the edges are sewn to, each beside its stitch line where there is room for it."""
    for edge in piece.edges:
        text = words.edges.get(edge.name, "")
        if text and len(edge.stitch) > 1:
            label = _beside(Course(edge.stitch), text, room, _MIDDLES, (1.0,), must=False)
            if label is not None:
                room.place((label,))
                yield label


def _beside(
    course: Course,
    text: str,
    room: PieceRoom,
    parts: tuple[float, ...],
    sides: tuple[float, ...],
    must: bool = True,
) -> Label | None:
    """Words beside a line: the largest that are clear of everything, or None where they can be left out."""
    if not text or course.length < 1.0:
        return None
    tries = ((1.0, False), (0.8, False), (0.8, True), (0.6, True)) if must else ((1.0, False), (0.8, False))
    for scale, over_lines in tries:
        size = scale * _TINY
        for middle in course.middles(text, size, parts):
            for side in sides:
                label = course.words(text, size, middle, side)
                if room.holds(label, over_lines):
                    return label
    return _anywhere(course, text) if must else None


def _anywhere(course: Course, text: str) -> Label:
    size = 0.5 * _TINY
    short = fitted(text, size, max(course.length - 1.0, 2.0))
    return course.words(short, size, 0.5 * course.length, 1.0)

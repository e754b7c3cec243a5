"""One piece as strokes and labels in its own coordinates: what is printed at true size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import shapely

from workbench.draft import Design, seam_name
from workbench.pieces import EdgeName, Layer, MarkLine, Piece, PieceEdge
from workbench.sheets.along import Course
from workbench.sheets.clear_grain import LONG_GRAIN, clear_grain
from workbench.sheets.drawing import Array, Drawing, Label, Role, Stroke
from workbench.sheets.notch_marks import notch_strokes
from workbench.sheets.piece_room import PieceRoom
from workbench.sheets.piece_words import FOLD_WORDS, PieceWords, edge_words, mark_words, title_block
from workbench.sheets.room import label_room

_ARROW = 3.0
_GRAIN_CLEAR = 1.2
_SHORTEST_GRAIN = 6.0
_FOLD_IN = 8.0
"""The fold's bracket stands so far inside it, mm."""
_FOLD_SHARES = ((0.22, 0.78), (0.26, 0.74), (0.18, 0.82), (0.3, 0.7), (0.26, 0.82), (0.18, 0.74))
_FOLD_CLEAR = 5.0
_BONE_END = 2.5
"""Half of the stroke across a bone's end, mm."""
_ROLES: dict[str, Role] = {"waist": "waist", "level": "level", "bone": "bone", "tape": "tape", "fold": "fold"}


def piece_drawing(piece: Piece, words: PieceWords) -> Drawing:
    """Cut and stitch line, notches, grain, fold, and every line inside one piece, with their names."""
    piece = replace(piece, grain=clear_grain(piece))
    marks = tuple(mark for mark in piece.marks if mark.kind != "fold")
    folds = tuple(edge for edge in piece.edges if edge.kind == "fold")
    brackets = [line for edge in folds for line in _bracket(edge, marks)]
    strokes = [Stroke("stitch", piece.stitch, closed=True)]
    if words.with_cut:
        strokes.append(Stroke("cut", piece.cut, closed=True))
    strokes += notch_strokes(piece, words.marks, words.with_cut)
    strokes += [Stroke("fold", edge.stitch) for edge in folds]
    strokes += [Stroke("grain", line) for line in brackets]
    strokes += [Stroke(_ROLES[mark.kind], mark.points) for mark in marks]
    strokes += [Stroke("mark", end) for mark in marks if mark.kind == "bone" for end in _ends(mark.points)]
    labels = _labels(piece, words, marks, brackets)
    strokes += _grain(piece, labels)
    return Drawing(tuple(strokes), labels)


def _labels(
    piece: Piece, words: PieceWords, marks: tuple[MarkLine, ...], brackets: list[Array]
) -> tuple[Label, ...]:
    """All words of the piece, the most important first: each keeps clear of those before it."""
    own = [mark.points for mark in marks] + brackets
    if _length(piece) < LONG_GRAIN:
        own.append(np.array(piece.grain))
    room = PieceRoom(
        piece.stitch,
        own,
        words.joins,
        [shapely.box(ring.left, ring.bottom, ring.right, ring.top) for ring in words.rings],
    )
    title = title_block(piece, words, room)
    room.place(title)
    labels = list(title)
    named = [MarkLine("fold", line, FOLD_WORDS) for line in brackets[:1]]
    named += sorted((mark for mark in marks if mark.label), key=lambda mark: mark.kind == "bone")
    for mark in named:
        label = mark_words(mark, room)
        if label is not None:
            room.place((label,))
            labels.append(label)
    return (*labels, *edge_words(piece, words, room))


def _square_to(line: Array) -> Array:
    """Unit vector to the left of a line's direction."""
    along = line[-1] - line[0]
    unit: Array = np.array([-along[1], along[0]]) / max(float(np.hypot(*along)), 1e-9)
    return unit


def _ends(bone: Array) -> Iterator[Array]:
    """A short stroke across either end of a bone, where its channel is closed."""
    for tip, next_to in ((bone[0], bone[1]), (bone[-1], bone[-2])):
        across = _BONE_END * _square_to(np.array([tip, next_to]))
        yield np.array([tip - across, tip + across])


def _bracket(edge: PieceEdge, marks: tuple[MarkLine, ...]) -> Iterator[Array]:
    """A line inside the fold that bends to it at both ends, with an arrow head at each."""
    course = Course(edge.stitch)
    ends = course.at(course.length * np.array(_fold_ends(course, marks)))
    inwards = _FOLD_IN * _square_to(ends)
    yield ends + inwards
    for end in ends:
        yield np.array([end + inwards, end])
        yield _head(end, inwards / _FOLD_IN)


def _fold_ends(course: Course, marks: tuple[MarkLine, ...]) -> tuple[float, float]:
    """Where the bracket begins and ends, as parts of the fold: not on a line that meets it."""
    starts = np.array([mark.points[0] for mark in marks] or [(np.inf, np.inf)])
    for shares in _FOLD_SHARES:
        ends = course.at(course.length * np.array(shares))
        away = np.hypot(*(ends[:, None] - starts).transpose(2, 0, 1))
        if float(away.min()) >= _FOLD_CLEAR:
            break
    return shares


def _head(tip: Array, back: Array) -> Array:
    """An arrow head at a tip, open towards ``back``."""
    across = np.array([-back[1], back[0]])
    foot = tip + _ARROW * back
    return np.array([foot + 0.4 * _ARROW * across, tip, foot - 0.4 * _ARROW * across])


def _grain(piece: Piece, labels: tuple[Label, ...]) -> Iterator[Stroke]:
    """The grain line with an arrow head at either end, interrupted where words stand on it."""
    start, end = (np.array(point) for point in piece.grain)
    rooms = [label_room(label).buffer(_GRAIN_CLEAR, join_style="mitre") for label in labels]
    left = shapely.difference(shapely.LineString((start, end)), shapely.union_all(rooms))
    parts = [shapely.get_coordinates(part) for part in shapely.get_parts(left)]
    long_enough = [part for part in parts if len(part) and _run(part) >= _SHORTEST_GRAIN]
    along = (end - start) / max(_length(piece), 1e-9)
    for part in long_enough or [np.array([start, end])]:
        yield Stroke("grain", part)
        for tip, back in ((start, along), (end, -along)):
            if min(np.abs(part[0] - tip).max(), np.abs(part[-1] - tip).max()) < 1e-9:
                yield Stroke("grain", _head(tip, back))


def _length(piece: Piece) -> float:
    return _run(np.array(piece.grain))


def _run(line: Array) -> float:
    """From the first point to the last, mm."""
    return float(np.hypot(*(line[-1] - line[0])))


def sewn_to(piece: Piece, layer: Layer, design: Design) -> dict[EdgeName, str]:
    """For each edge of a piece with a seam: the seam's name, and the piece across it."""
    said: dict[EdgeName, str] = {}
    for edge in piece.edges:
        if edge.seam is None or edge.kind in ("free", "fold"):
            continue
        name = seam_name(edge.seam, design)
        others = [
            other.name
            for other in layer.pieces
            if other.key != piece.key and any(its.seam == edge.seam for its in other.edges)
        ]
        said[edge.name] = f"{name}, to {others[0]}" if others else name
    return said

"""The steps in words: what the hand does, with every distance in the unit of the guide."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import numpy as np

from workbench.draft import Design, seam_name
from workbench.marking.frame import Frame, edge_base
from workbench.marking.records import Across, Mark, Offset, Squared, Step
from workbench.marking.rounding import Rounding
from workbench.marking.sets import Marked
from workbench.marking.smooth import along
from workbench.marking.stations import length_at
from workbench.pieces import EdgeName, Notch, Piece, PieceEdge

EDGES: tuple[EdgeName, ...] = ("left", "right", "neckline", "hem")
_ROOM = 10.0
"""mm of cloth beyond the cut line that is asked for (own choice)."""


@dataclass(frozen=True)
class Telling:
    """What the words of one piece need."""

    marked: Marked
    design: Design

    @property
    def frame(self) -> Frame:
        """The frame of the piece."""
        return self.marked.frame

    @property
    def rounding(self) -> Rounding:
        """How lengths are said."""
        return self.marked.rounding

    def say(self, mm: float) -> str:
        """A length."""
        return self.rounding.say(self.rounding.near(mm))


def steps_of(telling: Telling, key: str) -> tuple[Step, ...]:
    """The steps of a piece in the order of the hand; their keys begin with ``key``."""
    numbered = enumerate(_steps(telling), 1)
    return tuple(Step(f"{key}.{number}.{_digest(part)}", *part) for number, part in numbered)


Part = tuple[str, tuple[str, ...], tuple[int, ...], tuple[int, ...], bool]
"""Title, lines, marks, curves, whether the cut line is drawn: the fields of a step without its key."""


def _digest(part: Part) -> str:
    """A few letters that differ where title or lines do."""
    title, lines, *_ = part
    return hashlib.sha256("\n".join((title, *lines)).encode()).hexdigest()[:6]


def _steps(telling: Telling) -> Iterator[Part]:
    frame, marked = telling.frame, telling.marked
    base = edge_base(frame.on_waist)
    yield f"The corner and the {base}", _corner(telling), (1,), (), False
    by_number = {mark.number: mark for mark in marked.marks}
    if "waist" in marked.groups:
        yield _marking("The width at the waist", telling, by_number, "waist")
    yield _marking("Heights on the upright", telling, by_number, "upright", _UPRIGHT)
    if "across" in marked.groups:
        yield _marking("The width at each level", telling, by_number, "across", _ACROSS)
    yield _marking("The corners away from the upright", telling, by_number, "corners")
    for edge in (frame.near, frame.far, "neckline", "hem"):
        yield _edge(telling, by_number, edge)
    notches = tuple(_notches(telling))
    if notches:
        yield "Notches", notches, (), (), False
    lines = tuple(_lines(telling))
    if lines:
        yield "Bones and tape", lines, (), (), False
    yield "The allowance", tuple(_allowance(telling)), (), (), True


_UPRIGHT = "Square across the cloth at each height, and mark on that line."
_ACROSS = "Lay the tape straight from the first mark and swing it until it meets the line."


def _corner(telling: Telling) -> tuple[str, ...]:
    # rounded up: there must be cloth enough
    left, below, right, above = (side + 0.5 * telling.rounding.step for side in room_of(telling.frame))
    say, base = telling.say, edge_base(telling.frame.on_waist)
    place = "where the waist line will cross it" if telling.frame.on_waist else "at its lower end"
    side = "right" if telling.frame.side > 0 else "left"
    return (
        f"Draw an upright on the straight grain and mark 1 on it, {place}.",
        f"Keep free round mark 1: {say(left)} to the left, {say(right)} to the right, "
        f"{say(above)} above, {say(below)} below.",
        f"Square the {base} across at mark 1, to the {side}.",
    )


def room_of(frame: Frame) -> tuple[float, float, float, float]:
    """Cloth wanted left of, below, right of and above the corner, allowances included, mm."""
    cut = frame.moved(frame.piece.cut)
    low, high = cut.min(axis=0), cut.max(axis=0)
    left, below, right, above = (max(float(side), 0.0) + _ROOM for side in (-low[0], -low[1], *high))
    return left, below, right, above


def _marking(
    title: str, telling: Telling, by_number: Mapping[int, Mark], group: str, first: str = ""
) -> Part:
    numbers = tuple(telling.marked.groups[group])
    lines = tuple(_mark_words(telling, by_number[number]) for number in numbers)
    return title, (first, *lines) if first else lines, numbers, (), False


def _mark_words(telling: Telling, mark: Mark) -> str:
    """How one mark is found."""
    say, base = telling.rounding.say, edge_base(telling.frame.on_waist)
    if isinstance(mark, Squared):
        where = f"{_up(mark.up, say(mark.up), base)}, {_out(mark.out, say(mark.out))}"
        return f"{mark.number} ({mark.name}): {where}."
    if isinstance(mark, Across):
        on = f"on the {base}" if mark.up == 0 else f"on the line {_up(mark.up, say(mark.up), base)}"
        return f"{mark.number} ({mark.name}): {say(mark.width)} from {mark.start}, {on}."
    return f"{mark.number}: {say(mark.along)} from {mark.start} towards {mark.end}, {_off(telling, mark)}."


def _up(up: float, said: str, base: str) -> str:
    if up == 0:
        return f"on the {base}"
    return f"{said} {'above' if up > 0 else 'below'} the {base}"


def _out(out: float, said: str) -> str:
    if out == 0:
        return "on the upright"
    return f"{said} to the {'right' if out > 0 else 'left'} of the upright"


def _off(telling: Telling, mark: Offset) -> str:
    """To which side of the straight a curve lies: left and right of a side, above and below a line."""
    if mark.out == 0:
        return "on the straight line"
    said = telling.rounding.say(mark.out)
    sides = ("left of", "right of") if mark.name.startswith(("left", "right")) else ("above", "below")
    return f"{said} {sides[mark.out < 0]} it"


def _edge(telling: Telling, by_number: Mapping[int, Mark], edge: EdgeName) -> Part:
    marked = telling.marked
    places = tuple(marked.drawn[edge])
    curves = [marked.curves[place] for place in places]
    own = tuple(marked.groups.get(edge, ()))
    lines = [_mark_words(telling, by_number[number]) for number in own]
    if any(isinstance(by_number[number], Offset) for number in own):
        lines.insert(0, "Draw the straight lines lightly; mark square to them.")
    lines += [_draw_words(curve.marks, by_number) for curve in curves]
    lines.append(_check_words(telling, edge))
    title = {"left": "The left side", "right": "The right side"}.get(edge, f"The {edge}")
    words = edge_words(telling.frame.piece, telling.design)[edge]
    return f"{title}: {words}" if words.lower() != edge else title, tuple(lines), own, places, False


def _draw_words(marks: tuple[int, ...], by_number: Mapping[int, Mark]) -> str:
    found = [by_number[number] for number in marks]
    if all(isinstance(mark, Squared) and mark.out == 0 for mark in found):
        return f"It is the upright itself, from {marks[0]} to {marks[-1]}."
    if len(marks) == 2:
        return f"Draw a straight line from {marks[0]} to {marks[1]}."
    return f"Draw a smooth line through {_listed(marks)}."


def _listed(marks: tuple[int, ...]) -> str:
    return f"{', '.join(map(str, marks[:-1]))} and {marks[-1]}"


def _check_words(telling: Telling, edge: EdgeName) -> str:
    """What the tape reads along the finished line: both sides of a seam must."""
    line = telling.frame.edges[edge]
    whole = float(along(line)[-1])
    if edge in ("left", "right") and telling.frame.on_waist:
        below = length_at(line, np.array([float(np.interp(0.0, line[:, 1], line[:, 0])), 0.0]))
        return (
            f"Check along the line: waist to hem {telling.say(below)}, "
            f"waist to neckline {telling.say(whole - below)}."
        )
    return f"Check along the line: {telling.say(whole)} from end to end."


def edge_words(piece: Piece, design: Design) -> dict[EdgeName, str]:
    """What each edge of a piece is: a seam by its name, the fold, a centre line, neckline, hem."""
    return {edge.name: _edge_words(edge, design) for edge in piece.edges}


def _edge_words(edge: PieceEdge, design: Design) -> str:
    if edge.kind == "fold":
        return "centre front, on the fold"
    if edge.seam is not None and edge.kind != "free":
        return seam_name(edge.seam, design).lower()
    return "free edge" if edge.kind == "free" else edge.name if edge.kind == "seam" else edge.kind


def _allowance(telling: Telling) -> Iterator[str]:
    words = edge_words(telling.frame.piece, telling.design)
    widths = {edge.name: edge.allowance for edge in telling.frame.piece.edges}
    for edge in EDGES:
        side = f"{edge} side" if edge in ("left", "right") else edge
        where = side if words[edge] == edge else f"{side} ({words[edge]})"
        if widths[edge] > 0:
            yield f"Outside the {where}: {telling.say(widths[edge])}."
        else:
            yield f"Outside the {where}: none; cut on the line."
    yield "Fold the end of each seam allowance back before you cut it, so that it follows the line."
    yield _cut(telling)


def _cut(telling: Telling) -> str:
    said = telling.frame.piece.cut_words
    return f"{said[:1].upper()}{said[1:]}."


def _notches(telling: Telling) -> Iterator[str]:
    """Where each side is notched, along the line from the waist, or from its lower end."""
    for edge in ("left", "right"):
        own = [notch for notch in telling.frame.piece.notches if notch.edge == edge]
        if own:
            said = ", ".join(_notch(telling, edge, notch) for notch in own)
            twice = " Two side by side." if own[0].count == 2 else ""
            yield f"{edge.capitalize()} side: {said}.{twice}"


def _notch(telling: Telling, edge: EdgeName, notch: Notch) -> str:
    line = telling.frame.edges[edge]
    place = length_at(line, np.array(notch.at) - np.array(telling.frame.corner))
    if not telling.frame.on_waist:
        return f"{telling.say(place)} from the lower end"
    waist = length_at(line, np.array([float(np.interp(0.0, line[:, 1], line[:, 0])), 0.0]))
    if telling.rounding.near(place - waist) == 0:
        return "at the waist"
    return f"{telling.say(place - waist)} {'above' if place > waist else 'below'} the waist"


def _lines(telling: Telling) -> Iterator[str]:
    """Each bone by its two ends; the tape once."""
    taped = False
    for mark in telling.frame.piece.marks:
        if mark.kind == "bone":
            low, high = sorted(telling.frame.moved(mark.points)[[0, -1]].tolist(), key=lambda end: end[1])
            yield f"Bone, {mark.label}: from {_at(telling, low)} to {_at(telling, high)}."
        elif mark.kind == "tape" and not taped:
            taped = True
            yield "Waist tape: half its width above the waist line, half below."


def _at(telling: Telling, end: list[float]) -> str:
    base = edge_base(telling.frame.on_waist)
    x, y = telling.rounding.near(end[0]), telling.rounding.near(end[1])
    say = telling.rounding.say
    return f"{_up(y, say(y), base)}, {_out(x, say(x))}"

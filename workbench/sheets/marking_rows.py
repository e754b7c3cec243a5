"""The steps of a marking guide in few words: a row for each mark, to be read at arm's length."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from workbench.marking import Across, Mark, Offset, PieceGuide, Rounding, Squared, Step


@dataclass(frozen=True)
class MarkRow:
    """One mark: its number, what it is, and the two distances it is found by."""

    number: str
    name: str
    first: str
    second: str


def mark_rows(step: Step, piece: PieceGuide, rounding: Rounding) -> Iterator[MarkRow]:
    """A row for each mark of a step; none for the corner, which the first step describes."""
    by_number = {mark.number: mark for mark in piece.marks}
    for number in step.marks:
        if number != piece.corner:
            yield _row(by_number[number], piece.base, rounding)


def plain_lines(step: Step) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The lines of a step before those of its marks, and after: how to find them, what to draw, to check.

    All of them come before where a step has no marks.
    """
    marks = [place for place, line in enumerate(step.lines) if _is_mark(line)]
    if not marks:
        return step.lines, ()
    return step.lines[: marks[0]], step.lines[marks[-1] + 1 :]


def _is_mark(line: str) -> bool:
    return line.split(" ", 1)[0].rstrip(":").isdigit()


def _row(mark: Mark, base: str, rounding: Rounding) -> MarkRow:
    say, number = rounding.say, str(mark.number)
    if isinstance(mark, Squared):
        up = f"{say(mark.up)} {'up' if mark.up > 0 else 'down'}" if mark.up else f"on the {base}"
        out = f"{say(mark.out)} {'right' if mark.out > 0 else 'left'}" if mark.out else "on the upright"
        return MarkRow(number, _short(mark.name), up, out)
    if isinstance(mark, Across):
        line = f"at {say(mark.up)} {'up' if mark.up > 0 else 'down'}" if mark.up else f"on the {base}"
        return MarkRow(number, _short(mark.name), f"{say(mark.width)} from {mark.start}", line)
    return MarkRow(
        number, "", f"{say(mark.along)} from {mark.start} to {mark.end}", _off(mark, say(mark.out))
    )


def _short(name: str) -> str:
    """What the mark is, without the side that its step is about."""
    return name.rpartition(",")[0] or name


def _off(mark: Offset, said: str) -> str:
    if not mark.out:
        return "on the line"
    sides = ("left", "right") if mark.name.startswith(("left", "right")) else ("above", "below")
    return f"{said} {sides[mark.out < 0]}"

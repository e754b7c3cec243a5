"""The tape along the cloth and the one across its end: ticks at what is read off a tape."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from workbench.body import Unit
from workbench.sheets.paper import MM_PER_INCH
from workbench.sheets.pen import INK, SOFT, LineStyle, Pen

TAPE = 6.4
"""Depth of a tape on paper, mm."""
_FIGURE = 2.1
_FINEST, _NAMED_APART = 1.15, 8.5
"""Least distance of two ticks, and of two figures, on paper, mm."""
_MM: dict[Unit, float] = {"in": MM_PER_INCH, "cm": 10.0}
"""Derived."""
_TICKS: dict[Unit, tuple[int, ...]] = {"in": (1, 2, 3, 6, 12, 36), "cm": (1, 2, 5, 10, 20, 50)}
_NAMES: dict[Unit, tuple[int, ...]] = {"in": (3, 6, 12, 18, 36, 72), "cm": (5, 10, 20, 50, 100)}
_FINE, _LINE = LineStyle(0.1, SOFT), LineStyle(0.2, INK)
_SHORT, _LONG = 1.3, 2.4
_HAIR = 1e-6


@dataclass(frozen=True)
class Tape:
    """Ticks of a unit at a scale: every ``tick`` units a line, every ``name`` units a figure."""

    unit: Unit
    scale: float
    tick: int
    name: int

    def between(self, start: float, end: float) -> Iterator[tuple[int, float]]:
        """Every tick from one place to another: its figure, and where it lies, mm of cloth."""
        step = self.tick * _MM[self.unit]
        first, last = int(-(-(start - _HAIR) // step)), int((end + _HAIR) // step)
        return ((number * self.tick, number * step) for number in range(first, last + 1))


def tape_of(unit: Unit, scale: float) -> Tape:
    """The finest tape that can still be read at a scale."""
    mm = _MM[unit] / scale
    tick = next((n for n in _TICKS[unit] if n * mm >= _FINEST), _TICKS[unit][-1])
    name = next((n for n in _NAMES[unit] if n * mm >= _NAMED_APART and n % tick == 0), _NAMES[unit][-1])
    return Tape(unit, scale, tick, name)


def draw_along(pen: Pen, tape: Tape, left: float, base: float, start: float, end: float) -> None:
    """A tape lying along the cloth from ``start`` to ``end``, mm of cloth; ``base`` is its lower edge."""
    pen.line(left, base, left + (end - start) / tape.scale, base, _LINE)
    for figure, mm in tape.between(start, end):
        x = left + (mm - start) / tape.scale
        named = figure % tape.name == 0
        pen.line(x, base, x, base + (_LONG if named else _SHORT), _LINE if named else _FINE)
        if named:
            pen.text(x, base + _LONG + 0.7, str(figure), _FIGURE, align="middle")


def draw_across(pen: Pen, tape: Tape, right: float, top: float, end: float) -> None:
    """A tape lying across the cut end from 0 to ``end``, mm of cloth; ``right`` is its inner edge."""
    pen.line(right, top, right, top - end / tape.scale, _LINE)
    for figure, mm in tape.between(0.0, end):
        y = top - mm / tape.scale
        named = figure % tape.name == 0
        pen.line(right, y, right - (_LONG if named else _SHORT), y, _LINE if named else _FINE)
        if named:
            pen.text(right - _LONG - 0.7, y - 0.36 * _FIGURE, str(figure), _FIGURE, align="right")

"""A reader who knows nothing but the sentences of a guide: what a person with a tape and chalk would draw.

Distances are read back from their words, marks are found one after the other, and a smooth line is
drawn through them by scipy's natural cubic spline: the shape of a thin ruler bent round pins.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from scipy.interpolate import CubicSpline

Array = NDArray[np.float64]

_PER = {"in": 25.4, "cm": 10.0}
_LENGTH = r"([\d.\u00bc-\u00be\u2150-\u215f\u2044\u2070\u00b9\u00b2\u00b3\u2074-\u2089 ]+ (?:in|cm))"
_FAR = re.compile(r"^(\d+) \(([^)]*)\): " + _LENGTH + r" from (\d+), on the (.*)\.$")
_SQUARED = re.compile(r"^(\d+) \(([^)]*)\): (.*), ([^,]*)\.$")
_OFFSET = re.compile(r"^(\d+): " + _LENGTH + r" from (\d+) towards (\d+), (.*)\.$")


def length(words: str) -> float:
    """mm of ``3⅜ in``, ``1 ³⁄₁₆ in`` or ``8.5 cm``, by the numeric values of the signs."""
    figure, unit = words.rsplit(" ", 1)
    return _PER[unit] * (float(figure) if unit == "cm" else _inches(figure))


def _inches(figure: str) -> float:
    if "⁄" in figure:
        whole, _, part = figure.strip().rpartition(" ")
        above, below = (int("".join(str(unicodedata.digit(c)) for c in p)) for p in part.split("⁄"))
        return float(whole or 0) + above / below
    digits = "".join(c for c in figure if c.isascii() and c.isdigit())
    rest = [unicodedata.numeric(c) for c in figure if not c.isascii()]
    return float(digits or 0) + sum(rest)


@dataclass
class Sheet:
    """What has been drawn so far, mm right of and above mark 1."""

    left: bool = False
    """Whether the piece lies to the left of its upright."""
    marks: dict[int, tuple[float, float]] = field(default_factory=lambda: {1: (0.0, 0.0)})
    names: dict[str, int] = field(default_factory=dict)
    lines: dict[str, list[Array]] = field(default_factory=dict)
    """By edge."""

    def edge(self, name: str) -> Array:
        """One edge, its lines one after the other."""
        return np.concatenate(self.lines[name])

    def width(self, level: str) -> float:
        """Straight distance between the two marks of a level; the corner stands for its own at the waist."""
        ends = [self.marks[self.names.get(f"{level}, {side} side", 1)] for side in ("left", "right")]
        return float(np.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]))


def read(steps: Iterable[tuple[str, Iterable[str]]]) -> Sheet:
    """Draw a piece from the titles and the lines of its steps."""
    sheet = Sheet()
    for title, lines in steps:
        edge = next((e for e in ("left", "right", "neckline", "hem") if title.startswith(f"The {e}")), "")
        for line in lines:
            _take(sheet, edge, line)
    return sheet


def _take(sheet: Sheet, edge: str, line: str) -> None:
    if line.startswith("Square the") and line.endswith("to the left."):
        sheet.left = True
    elif found := _FAR.match(line):
        number, name, width, start, where = found.groups()
        x, y = sheet.marks[int(start)]
        up = _height(where)
        reach = np.sqrt(length(width) ** 2 - (up - y) ** 2)
        _mark(sheet, number, name, (x - reach if sheet.left else x + reach, up))
    elif found := _OFFSET.match(line):
        number, along, start, end, where = found.groups()
        _mark(sheet, number, "", _beside(sheet, int(start), int(end), length(along), where))
    elif line.startswith(("Draw a smooth", "Draw a straight line", "It is the upright")):
        numbers = [int(word) for word in re.findall(r"\d+", line)]
        sheet.lines.setdefault(edge, []).append(_bent([sheet.marks[number] for number in numbers]))
    elif found := _SQUARED.match(line):
        number, name, height, out = found.groups()
        x = 0.0 if out == "on the upright" else length(re.match(_LENGTH, out)[1])  # type: ignore[index]
        _mark(sheet, number, name, (-x if "to the left" in out else x, _height(height)))


def _mark(sheet: Sheet, number: str, name: str, place: tuple[float, float]) -> None:
    sheet.marks[int(number)] = place
    if name:
        sheet.names[name] = int(number)


def _height(words: str) -> float:
    found = re.search(_LENGTH + " (above|below) the", words)
    if found is None:
        return 0.0
    return length(found[1].strip()) * (1 if found[2] == "above" else -1)


def _beside(sheet: Sheet, start: int, end: int, along: float, where: str) -> tuple[float, float]:
    first, last = np.array(sheet.marks[start]), np.array(sheet.marks[end])
    run = (last - first) / np.hypot(*(last - first))
    out = 0.0
    if not where.startswith("on the"):
        out = length(re.match(_LENGTH, where)[1])  # type: ignore[index]
        out *= 1 if where.split()[-2:] in (["left", "of"], ["above", "it"]) or "left of" in where else -1
    x, y = first + along * run + out * np.array([-run[1], run[0]])
    return float(x), float(y)


def _bent(places: list[tuple[float, float]]) -> Array:
    points = np.array(places)
    if len(points) == 2:
        return points
    at = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))))
    ruler = CubicSpline(at, points, bc_type="natural")
    drawn: Array = ruler(np.linspace(0.0, at[-1], 25 * len(points)))
    return drawn

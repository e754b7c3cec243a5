"""Strokes and labels in millimetres, each with a role: what screen, PDF and other pens draw alike.

y points up. A role says what a line is; each pen decides how that looks.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

Role = Literal[
    "stitch",
    "cut",
    "level",
    "waist",
    "grain",
    "block",
    "intake",
    "notch",
    "bone",
    "tape",
    "fold",
    "frame",
    "mark",
    "caption",
    "title",
    "figure",
]
Align = Literal["left", "middle", "right"]


@dataclass(frozen=True)
class Stroke:
    """A polyline (n, 2); a closed one is a ring whose first point is not repeated."""

    role: Role
    points: Array
    closed: bool = False


@dataclass(frozen=True)
class Label:
    """A line of text on its baseline; ``size`` is the height of a capital letter's em, mm."""

    role: Role
    text: str
    x: float
    y: float
    size: float
    align: Align = "middle"
    angle: float = 0.0
    """Degrees, anticlockwise."""


@dataclass(frozen=True)
class Drawing:
    """Strokes and labels of one thing, in its own coordinates."""

    strokes: tuple[Stroke, ...] = ()
    labels: tuple[Label, ...] = ()

    def bounds(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top of the strokes; ValueError when there are none."""
        points = np.concatenate([stroke.points for stroke in self.strokes])
        left, bottom = points.min(axis=0)
        right, top = points.max(axis=0)
        return float(left), float(bottom), float(right), float(top)

"""The sections of a torso: how deep they are for their breadth, and how full.

A section is a superellipse |x/a|^n + |z/b|^n = 1, a the half breadth and b the half depth.
Its exponent n is not chosen but follows from how far a plain ellipse of the same breadth and
depth falls short of the tape.
"""

from __future__ import annotations

from functools import cache
from typing import Any, ClassVar

import numpy as np
from numpy.typing import NDArray

from workbench.frozen import dataclass

Array = NDArray[np.float64]

LEAST_DEPTH, MOST_DEPTH = 0.4, 1.3
"""Depth for breadth that may be set: wider than 1 to 99 % of ANSUR II at the waist (.595 to .867,
read)."""
LEAST_SHORT, MOST_SHORT = 0.0, 14.0
"""Per cent: an ellipse at 0, nearly a box at 14 (own choice)."""

_NODES = 64
"""Of Gauss’s rule; own choice: exact enough, which the tests show."""
_FLATTEST = 30.0
"""The largest exponent that is looked for: by then a section is a box with rounded corners (own choice)."""


@dataclass(frozen=True)
class Torso:
    """What a tape does not tell of a body: depth for breadth at the levels, and how full its sections are.

    The waist's depth is the median of ANSUR II (.705, read). The others are assumptions: top hip
    and hip from what is remembered of the same survey, the rest from no source. All can be set.
    """

    top_hip: float = 0.67
    """From memory of ANSUR II."""
    waist: float = 0.705
    """The median of ANSUR II, read."""
    underbust: float = 0.75
    """Own choice, no source."""
    bust: float = 0.82
    """Own choice, no source."""
    upper_chest: float = 0.70
    """Own choice, no source."""
    short_at_waist: float = 6.0
    """Per cent an ellipse of the same breadth and depth falls short of the tape (ANSUR II, derived)."""
    short_at_hip: float = 10.0
    """The same at the hip (ANSUR II, derived); the top hip lies between, all above is as the waist."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


HIP_DEPTH = 0.65
"""Depth for breadth at the hip: from memory of ANSUR II, and no figure of the draft hangs on it."""


def quarter_of(depth: float, exponent: float) -> float:
    """Length of a quarter of the section of half breadth 1 and half depth ``depth``, by Gauss's rule."""
    angle, weight = _gauss()
    radius, turn = radii(depth, exponent, angle)
    return float(weight @ (radius * np.hypot(1.0, turn)))


def perimeter_of(depth: float, exponent: float) -> float:
    """Girth of the section of half breadth 1 and half depth ``depth``."""
    return 4.0 * quarter_of(depth, exponent)


def radii(depth: float, exponent: float, angle: Array) -> tuple[Array, Array]:
    """Distance from the middle at each angle of the first quarter, and its logarithm's change with that."""
    cos, sin = np.cos(angle), np.sin(angle)
    wide, deep = cos ** (exponent - 1), (sin / depth) ** (exponent - 1)
    sum_of_powers = wide * cos + deep * sin / depth
    turn = (wide * sin - deep * cos / depth) / sum_of_powers
    return sum_of_powers ** (-1.0 / exponent), turn


@cache
def _gauss() -> tuple[Array, Array]:
    node, weight = np.polynomial.legendre.leggauss(_NODES)
    return 0.25 * np.pi * (node + 1), 0.25 * np.pi * weight


@cache
def exponent_of(depth: float, short: float) -> float:
    """The exponent with which an ellipse of the same breadth and depth is ``short`` per cent of the girth.

    Found by halving: the girth grows with the exponent. Held at the flattest where no section
    is as full as that.
    """
    wanted = perimeter_of(depth, 2.0) / (1.0 - short / 100.0)
    low, high = 2.0, _FLATTEST
    for _ in range(50):
        middle = 0.5 * (low + high)
        if perimeter_of(depth, middle) < wanted:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)

"""The sections of a torso one above the other, each of girth 1: what depends on no measurement.

Between two stations, depth and exponent pass over smoothly and without overshoot. A section is kept
as a ring of points at equal distances along it, from the centre front round by the wearer's left
side, so that a place on it is found by its distance along the tape. Figures are own choice, so that
it looks like a torso.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from workbench.draft import hermite_weights, slopes_of_few
from workbench.worn.torso import HIP_DEPTH, Array, Torso, exponent_of, perimeter_of, radii

STATIONS = (
    "below",
    "hip",
    "top_hip",
    "waist",
    "underbust",
    "bust",
    "upper_chest",
    "arm",
    "shoulder",
    "neck",
    "top",
)
"""Bottom to top. Those above the upper chest only make it look like a torso."""
_BETWEEN = (3, 8, 8, 9, 6, 7, 3, 9, 8, 2)
"""Rows from each station to the next; the last one of all comes on top."""
RING = 96
"""Steps round a section: over the girth of a waist, the ring is short of it by a thousandth."""
_QUARTER = RING // 4

# above the upper chest no measurement of the draft is taken: no source, as it looks right
_BREADTHS_ABOVE = (0.170, 0.186, 0.070, 0.064)
"""Half breadths of arm, shoulder, neck and top as parts of the girth of the upper chest."""
_DEPTHS_ABOVE = (0.118, 0.080, 0.064, 0.062)
_SHORT_ABOVE = (4.0, 1.0, 0.0, 0.0)


@dataclass(frozen=True)
class Between:
    """Rows between stations: the station below each, and what a cubic takes of both."""

    below: NDArray[np.intp]
    share: Array
    weights: tuple[Array, Array, Array, Array]

    def along(self, values: Sequence[float]) -> Array:
        """Values at the stations spread over the rows, evenly."""
        own = np.array(values)
        spread: Array = own[self.below] + self.share * (own[self.below + 1] - own[self.below])
        return spread

    def smooth(self, places: Sequence[float], values: Sequence[float]) -> Array:
        """A monotone cubic over the places of the stations, spread over the rows."""
        at, own = np.array(places), np.array(values)
        slope = np.array(slopes_of_few(list(places), list(values)))
        low, high = self.below, self.below + 1
        step = at[high] - at[low]
        start, end, out, back = self.weights
        found: Array = start * own[low] + end * own[high] + step * (out * slope[low] + back * slope[high])
        return found


def _between() -> Between:
    below, share = [], []
    for station, count in enumerate(_BETWEEN):
        below += [station] * count
        share += [number / count for number in range(count)]
    below.append(len(_BETWEEN) - 1)
    share.append(1.0)
    shares = np.array(share)
    return Between(np.array(below, dtype=np.intp), shares, hermite_weights(shares))


BETWEEN = _between()
ROWS = len(BETWEEN.share)
ROW_OF = {name: sum(_BETWEEN[:number]) for number, name in enumerate(STATIONS)}
"""The row at each station."""


@dataclass(frozen=True, eq=False, repr=False)
class Sections:
    """Unit sections, one for each row: girth 1, x to the wearer's left, z to her front."""

    x: Array
    """(rows, RING + 1); the last place is the first again."""
    z: Array
    half_breadth: Array
    """(rows,)"""
    half_depth: Array
    above: Array
    """(rows from the upper chest,) girths there as parts of that of the upper chest."""


@lru_cache(maxsize=8)
def sections_of(torso: Torso) -> Sections:
    """The sections of a torso, which are worked out once for each setting of it."""
    stations = list(range(len(STATIONS)))
    breadth, depth = _above(torso)
    breadths = BETWEEN.smooth(stations, breadth)
    part = BETWEEN.smooth(stations, depth) / breadths
    exponent = BETWEEN.smooth(stations, exponents_of(torso))
    pairs = list(zip(part.tolist(), exponent.tolist(), strict=True))
    girth = np.array([perimeter_of(*pair) for pair in pairs])
    x, z = _rings(np.array([_quarter(*pair) for pair in pairs]) / girth[:, None, None])
    above = (breadths * girth)[ROW_OF["upper_chest"] :]
    return Sections(x, z, 1.0 / girth, part / girth, above)


def _above(torso: Torso) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Half breadths and half depths at every station, as parts of the girth of the upper chest.

    Up to there only depth for breadth counts, so every station has the breadth of the upper chest.
    """
    depths, exponents = depths_of(torso), exponents_of(torso)
    own = len(depths)
    breadth = 1.0 / perimeter_of(depths[-1], exponents[own - 1])
    return (
        (*([breadth] * own), *_BREADTHS_ABOVE),
        (*(breadth * depth for depth in depths), *_DEPTHS_ABOVE),
    )


def depths_of(torso: Torso) -> tuple[float, ...]:
    """Depth for breadth at every station up to the upper chest."""
    measured = (torso.top_hip, torso.waist, torso.underbust, torso.bust, torso.upper_chest)
    return (HIP_DEPTH, HIP_DEPTH, *measured)


def exponents_of(torso: Torso) -> tuple[float, ...]:
    """The exponent of the section at every station."""
    waist, hip = torso.short_at_waist, torso.short_at_hip
    above = (depth / breadth for depth, breadth in zip(_DEPTHS_ABOVE, _BREADTHS_ABOVE, strict=True))
    short = (hip, hip, 0.5 * (waist + hip), *([waist] * 4), *_SHORT_ABOVE)
    return tuple(map(exponent_of, (*depths_of(torso), *above), short))


def _quarter(depth: float, exponent: float) -> Array:
    """(2, QUARTER + 1): x and z from the front to the side, at equal distances along the section."""
    # a full section turns at its corners: there the angles have to stand closer
    angle = np.linspace(0.0, 0.5 * np.pi, 40 * _QUARTER + 1)
    radius, _ = radii(depth, exponent, angle)
    x, z = radius * np.cos(angle), radius * np.sin(angle)
    walked = np.concatenate(([0.0], np.cumsum(np.hypot(np.diff(x), np.diff(z)))))
    at = np.linspace(walked[-1], 0.0, _QUARTER + 1)
    return np.stack((np.interp(at, walked, x), np.interp(at, walked, z)))


def _rings(quarters: Array) -> tuple[Array, Array]:
    """x and z all round (rows, RING + 1) from the quarter from front to side."""
    x, z = quarters[:, 0], quarters[:, 1]
    side_x, side_z = x[:, -2::-1], -z[:, -2::-1]
    half_x, half_z = np.concatenate((x, side_x), axis=1), np.concatenate((z, side_z), axis=1)
    return (
        np.concatenate((half_x, -half_x[:, -2::-1]), axis=1),
        np.concatenate((half_z, half_z[:, -2::-1]), axis=1),
    )

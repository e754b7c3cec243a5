"""The ways a copy may lie: turned end for end or not, either side up or not."""

from __future__ import annotations

from math import atan2, degrees

from workbench.cloth.plan import Copy
from workbench.cloth.records import Cloth

Way = tuple[float, bool]
"""Degrees, and whether it is turned over."""


def along_grain(copy: Copy, mirrored: bool) -> float:
    """Degrees that bring the head of the copy's grain to point along the cloth, 0 to 360."""
    x, y = copy.grain
    # Taken to a millionth, so that an upright grain line gives exactly no turn.
    return round(90.0 - degrees(atan2(y, -x if mirrored else x)), 6) % 360


def ways_of(copy: Copy, cloth: Cloth) -> tuple[Way, ...]:
    """True to the grain, the way it is drawn first."""
    if copy.on_fold:
        return ((0.0, False), (180.0, True)) if cloth.run == "either_way" else ((0.0, False),)
    sides = (False, True) if copy.either_side else (copy.mirrored,)
    turns = (0.0, 180.0) if cloth.run == "either_way" else (0.0,)
    return tuple(((along_grain(copy, side) + turn) % 360, side) for side in sides for turn in turns)


def turns_allowed(cloth: Cloth) -> tuple[float, ...]:
    """Degrees off the grain line that the solver may try, either way and to half of it."""
    tilt = cloth.tilt_degrees
    near = (0.0, -tilt, -0.5 * tilt, 0.5 * tilt, tilt) if tilt > 0 else (0.0,)
    return near if cloth.run == "one_way" else (*near, *(180.0 + turn for turn in near))

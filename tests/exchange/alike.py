"""Whether lines read back are those that were drafted, wherever on the page they were put."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
_SAME = 2e-3
"""mm."""


def off(drafted: Array, read: Sequence[Array]) -> float:
    """mm by which a ring read back differs from the drafted one at its worst point, moved as one.

    The nearest of the rings with as many points; infinite where there is none. Points pair up in order.
    """
    wanted = _once(drafted)
    alike = (line for line in map(_once, read) if len(line) == len(wanted))
    return min((_moved(wanted, line) for line in alike), default=np.inf)


def _once(ring: Array) -> Array:
    """The ring without points that lie where the one before them does; readers drop or add such."""
    apart = np.abs(ring - np.roll(ring, 1, axis=0)).max(axis=1) > _SAME
    kept: Array = ring[apart]
    return kept


def _moved(one: Array, other: Array) -> float:
    if not len(one):
        return np.inf
    # a reader may begin a ring at its second point where the first was said twice
    turns = (np.roll(other, shift, axis=0) for shift in (0, 1, -1))
    return min(float(np.abs((one - one[0]) - (turned - turned[0])).max()) for turned in turns)

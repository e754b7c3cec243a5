"""The small picture of a project: the panels of its real draft, in a few letters.

A coordinate is two hexadecimal digits, a point four, a panel a word: some hundred letters
a project, so that thousands of pictures are read in no time. The longer side of the
whole runs from 0 to 255, which is finer than any list shows it.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from workbench.document import Picture

_WHOLE = 255
_COARSE = 0.004
"""Of the longer side: what lies within this of a straight line is drawn as one."""

Ring = tuple[tuple[float, float], ...]


def small_picture(picture: Picture) -> str:
    """The panels of the draft laid apart; empty where this project cannot be drafted."""
    # drawing and simplifying are wanted only where a file has changed since the book was last opened
    from workbench.sheets import placements

    good = picture.good
    if good is None or good.draft is None:
        return ""
    panels = good.draft.panels
    return packed([place.put(panels[place.panel].outline) for place in placements(good, "apart")])


def packed(rings: Sequence[NDArray[np.float64]]) -> str:
    """Rings of points in mm, y up, as letters; empty for none."""
    from shapely import get_coordinates, linearrings, simplify

    if not rings:
        return ""
    every = np.vstack(rings)
    low = every.min(axis=0)
    side = max(float(np.ptp(every, axis=0).max()), 1e-9)
    words = []
    for ring in rings:
        few = get_coordinates(simplify(linearrings(ring), _COARSE * side, preserve_topology=False))[:-1]
        words.append(np.rint(_WHOLE * (few - low) / side).astype(np.uint8).tobytes().hex())
    return " ".join(words)


def rings_of(letters: str) -> tuple[Ring, ...]:
    """The rings in a picture, y up, coordinates from 0 to 255; ValueError for letters that are none."""
    return tuple(_ring(bytes.fromhex(word)) for word in letters.split())


def _ring(data: bytes) -> Ring:
    return tuple(zip(map(float, data[::2]), map(float, data[1::2]), strict=True))

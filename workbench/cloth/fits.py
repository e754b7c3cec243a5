"""Whether each copy fits across the cloth at all.

Figures are own choice, what counts as fitting.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import shapely

from workbench.cloth.plan import Copy, LayError, turned
from workbench.cloth.records import Cloth
from workbench.cloth.room import Room
from workbench.cloth.ways import Way, ways_of
from workbench.draft import Finding, Place

HAIR = 0.05
"""mm: less than shears can do; what lies this close lies right."""
_JUST = 1e-3
"""mm: what is wider than the cloth by this is just as wide."""


def must_fit(copies: Iterable[Copy], cloth: Cloth, room: Room) -> None:
    """LayError for the first copy that is wider than the usable cloth however it lies."""
    for copy in copies:
        wide = min(_across(copy, way) for way in ways_of(copy, cloth))
        if wide > room.width + _JUST:
            raise LayError(_too_wide(copy, cloth, wide, room.width))


def _across(copy: Copy, way: Way) -> float:
    return float(np.ptp(turned(copy.outline, *way)[:, 0]))


def _too_wide(copy: Copy, cloth: Cloth, wide: float, usable: float) -> Finding:
    where, remedy = "between the selvedges", "Choose a wider cloth."
    if cloth.laid == "folded":
        where, remedy = "between fold and selvedge", "Lay the cloth single, or choose a wider one."
    if cloth.remnant is not None:
        where = "at the widest"
    return Finding(
        "stop",
        "piece_too_wide",
        f"{{piece}} is {{wide}} across and {{cloth}} has {{usable}} {where}.",
        {"wide": wide, "usable": usable},
        {"piece": copy.name, "cloth": cloth.name},
        Place(panel=copy.panel),
        remedy,
        value_mm=wide,
        limit_mm=usable,
    )


def length_of(rings: np.ndarray[tuple[int, ...], np.dtype[np.object_]], room: Room) -> float:
    """From the cut end of the cloth to the farthest point of the shapes, mm."""
    if not len(rings):
        return 0.0
    start = 0.0 if room.shape is None else float(shapely.bounds(room.shape)[1])
    return float(shapely.bounds(rings)[:, 3].max()) - start

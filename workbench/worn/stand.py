"""The body as it stands: the sections of its torso at the girths and heights that were measured.

The model, with what it assumes:

- every section lies level, and its girth is the one on the tape; from one level to the next girths
pass over as smoothly as the walk allows; - the walk is measured on the skin, so the height is less
wherever the torso swells or shrinks: by as much as its sides and its front and back run outwards,
in the mean; - bust and seat stand out from the middle by a fixed part of the girth (no source); -
what lies above the upper chest is no measurement, and only makes it a torso. Figures are own
choice, so that it looks like a torso, unless said.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from workbench.body import LEVELS, LevelName, girths, walks
from workbench.draft import Outcome
from workbench.worn.sections import BETWEEN, ROW_OF, STATIONS, Sections, sections_of
from workbench.worn.torso import Array, Torso

_HIP_PER_TOP_HIP = 1.5
"""The hip is so much further from the waist in girth than the top hip, where it was not taken: the rule of
the estimate of the top hip the other way round (common practice, no source)."""
_HIP_DOWN = 2.2
"""And so many times as far down (common practice, no source)."""
_BELOW_MM = 70.0
"""The torso ends so far below the hip, or below the lowest hem."""
_LEAST_RISE = 0.3
"""Of the walk, however far the torso swells on it: level lines stay apart."""
_FORWARD = (-0.012, -0.014, -0.008, 0.0, 0.004, 0.014, -0.004, -0.012, -0.02, -0.012, 0.0)
"""How far the middle of the section at each station stands forward, as a part of its girth (no source)."""
_UPWARDS = (0.22, 0.66, 0.86, 1.02)
"""Arm, shoulder, neck and top on the way from the upper chest to the shoulder's walk (no source)."""


@dataclass(frozen=True, eq=False, repr=False)
class Stand:
    """One body, row by row from below the hip to the neck; mm."""

    sections: Sections
    walks: Array
    """(rows,) from the waist, rising."""
    heights: Array
    """(rows,) from the waist."""
    girths: Array
    """(rows,) of the body."""
    forward: Array
    """(rows,) how far the middle of the section stands before the line through the waist."""

    def row_at(self, walk: Array) -> Array:
        """Rows, with their fractions, at walks; held to the lowest and the uppermost."""
        return np.interp(walk, self.walks, _NUMBERS)


_NUMBERS = np.arange(len(BETWEEN.share), dtype=np.float64)


def stand_of(outcome: Outcome, torso: Torso, lowest: float = 0.0) -> Stand:
    """The body of an outcome on its stand, down to below ``lowest``, the lowest walk of the garment.

    Where fittings found a level to lie further up or down than it was measured, it lies there.
    """
    sections = sections_of(torso)
    at, around = _stations(outcome, lowest)
    rows = BETWEEN.along(at)
    girth = BETWEEN.smooth(at, around)
    girth[ROW_OF["upper_chest"] :] = sections.above * around[-1]
    forward = BETWEEN.smooth(list(range(len(STATIONS))), _FORWARD) * girth
    return Stand(sections, rows, _heights(rows, girth, sections), girth, forward)


def _stations(outcome: Outcome, lowest: float) -> tuple[list[float], list[float]]:
    """Walk and girth at every station, bottom to top."""
    body = outcome.body
    own_walks, own_girths = _levels(outcome)
    top_hip, waist = own_girths["top_hip"], own_girths["waist"]
    taken = body.taken("hip_girth")
    hip = waist + _HIP_PER_TOP_HIP * (top_hip - waist) if taken is None else taken
    hip_walk = _HIP_DOWN * own_walks["top_hip"]
    chest, high = own_girths["upper_chest"], own_walks["upper_chest"]
    above = max(body.value("shoulder_to_waist") - high, 60.0)
    return (
        [
            min(hip_walk, lowest) - _BELOW_MM,
            hip_walk,
            *own_walks.values(),
            *(high + part * above for part in _UPWARDS),
        ],
        [hip, hip, *own_girths.values(), *([chest] * len(_UPWARDS))],
    )


def _levels(outcome: Outcome) -> tuple[dict[LevelName, float], dict[LevelName, float]]:
    """Walk and girth of every level; one that the style leaves out keeps to the next one below."""
    own_walks, own_girths = walks(outcome.body), girths(outcome.body)
    moved = 0.0
    for name in LEVELS:
        level = next((level for level in outcome.levels if level.name == name), None)
        if level is not None:
            moved = level.walk - own_walks[name]
            own_girths[name] = level.body
        own_walks[name] += moved
    return own_walks, own_girths


def _heights(walk: Array, girth: Array, sections: Sections) -> Array:
    """(rows,) mm above the waist: the walk less what the torso runs outwards on it."""
    steps = np.diff(walk)
    wider, deeper = np.diff(girth * sections.half_breadth), np.diff(girth * sections.half_depth)
    rises = np.sqrt(np.maximum(steps**2 - 0.5 * (wider**2 + deeper**2), (_LEAST_RISE * steps) ** 2))
    top = ROW_OF["upper_chest"]
    rises[top:] = steps[top:]
    heights: Array = np.concatenate(([0.0], np.cumsum(rises)))
    heights -= heights[ROW_OF["waist"]]
    return heights

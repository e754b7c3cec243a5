"""Estimates for what was not taken, each from what was, by a stated rule.

An estimate gets a draft going; it never overrules a measurement, and never contradicts
the order of the levels. All lengths in millimetres.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import inf

import numpy as np

from workbench.body.levels import LEAST_GAP_MM, LevelName
from workbench.body.trouble import BodyError

Taken = Mapping[str, float]

UNDERBUST_OF_BUST = 0.86
"""Mean of the four sets of clad-body 0.6.1 (0.871, 0.878, 0.857, 0.878) and of ASTM D5585-11e1
sizes 8 and 16 (0.828, 0.849): read, mean derived."""

UPPER_CHEST_OF_BUST = 0.975
"""Between ASTM D5585-11e1 size 8 (0.990) and size 16 (0.964): read, rounded mean derived."""

HALF_BREATH_MM = 20.0
"""Half of the 4 cm between full exhale and full inhale (four studies, derived); that a resting
girth lies midway is an assumption, no source."""

HIP_BASE_MM, HIP_PER_WAIST = 340.0, 0.85
"""Hip from waist alone: a line through the 5th, 50th and 95th percentiles of waist and hip of bdims
and of the Spanish apparel survey (derived; within 4 cm of all six)."""

TOP_HIP_PART = 2 / 3
"""How much of the way from waist to hip the girth has grown at the hip bones (common practice, no source)."""

SPAN_OF_BUST = 0.2
"""Bust point to bust point: a fifth of the bust (common practice, no source)."""

USUAL_TORSO: Mapping[str, float] = {
    "shoulder_to_bust": 265.0,
    "shoulder_to_underbust": 345.0,
    "shoulder_to_waist": 430.0,
    "underarm_to_waist": 205.0,
    "nape_to_waist": 400.0,
    "waist_to_top_hip": 90.0,
}
"""A torso to take proportions from. Nape to waist: rounded mean of the four sets of clad-body 0.6.1
(396), read; waist to top hip: middle of the 80 to 100 of ISO 8559-1, from memory; the others common
practice, no source."""

_WAIST = USUAL_TORSO["shoulder_to_waist"]
_ABOVE_WAIST: tuple[LevelName, ...] = ("underbust", "bust", "upper_chest")
_FROM_SHOULDER: Mapping[LevelName, str] = {"underbust": "shoulder_to_underbust", "bust": "shoulder_to_bust"}
_USUAL_WALK: Mapping[LevelName, float] = {
    "underbust": _WAIST - USUAL_TORSO["shoulder_to_underbust"],
    "bust": _WAIST - USUAL_TORSO["shoulder_to_bust"],
    "upper_chest": USUAL_TORSO["underarm_to_waist"],
}


def estimated_girths(taken: Taken) -> dict[str, float]:
    """Girths at the five levels: taken where they were, otherwise estimated.

    ``taken`` must hold the waist and one of bust, underbust and upper chest.
    """
    bust = taken["bust_girth"] if "bust_girth" in taken else _bust(taken)
    underbust = _underbust(taken)
    waist = taken["waist_girth"]
    estimates = {
        "bust_girth": bust,
        "underbust_girth": UNDERBUST_OF_BUST * bust if underbust is None else underbust,
        "waist_girth": waist,
        "top_hip_girth": _top_hip(waist, taken.get("hip_girth")),
        "upper_chest_girth": UPPER_CHEST_OF_BUST * bust,
    }
    return {key: taken.get(key, mm) for key, mm in estimates.items()}


def _bust(taken: Taken) -> float:
    """From upper chest and underbust, the mean where both were taken, never below the underbust."""
    underbust = _underbust(taken)
    guesses = [] if underbust is None else [underbust / UNDERBUST_OF_BUST]
    if "upper_chest_girth" in taken:
        guesses.append(taken["upper_chest_girth"] / UPPER_CHEST_OF_BUST)
    return max(sum(guesses) / len(guesses), underbust or 0.0)


def _underbust(taken: Taken) -> float | None:
    """At rest: taken, or from the breath where that was; None where neither was."""
    if "underbust_girth" in taken:
        return taken["underbust_girth"]
    out, full = taken.get("underbust_exhale"), taken.get("underbust_inhale")
    if out is not None and full is not None:
        return 0.5 * (out + full)
    if out is not None:
        return out + HALF_BREATH_MM
    return None if full is None else max(full - HALF_BREATH_MM, 0.5 * full)


def _top_hip(waist: float, hip: float | None) -> float:
    if hip is None:
        hip = HIP_BASE_MM + HIP_PER_WAIST * waist
    return waist + TOP_HIP_PART * (hip - waist)


def estimated_lengths(taken: Taken, bust: float) -> dict[str, float]:
    """All lengths of the draft: taken where they were, otherwise in the proportions of a usual torso.

    An estimated level lies between the taken ones next to it. Raises BodyError where the
    lengths taken leave no room for that.
    """
    to_waist = taken["shoulder_to_waist"] if "shoulder_to_waist" in taken else _to_waist(taken)
    walk = _walks_above(taken, to_waist)
    scale = to_waist / _WAIST
    estimates = {
        "shoulder_to_bust": to_waist - walk["bust"],
        "shoulder_to_underbust": to_waist - walk["underbust"],
        "shoulder_to_waist": to_waist,
        "bust_span": SPAN_OF_BUST * bust,
        "waist_to_top_hip": max(scale * USUAL_TORSO["waist_to_top_hip"], LEAST_GAP_MM),
        "underarm_to_waist": walk["upper_chest"],
        "nape_to_waist": scale * USUAL_TORSO["nape_to_waist"],
    }
    return {key: taken.get(key, mm) for key, mm in estimates.items()}


_LEAST_ABOVE, _CLEAR = 1.02, 0.1
"""A guessed waist is below the level above it by so much of that one's height, and keeps so much of the room
between two levels from either (own choice)."""


def _to_waist(taken: Taken) -> float:
    """Shoulder to waist from every other height taken, kept where the levels stay in order."""
    others = ("nape_to_waist", "shoulder_to_underbust", "shoulder_to_bust", "underarm_to_waist")
    guesses = [_WAIST * taken[key] / USUAL_TORSO[key] for key in others if key in taken]
    guess = sum(guesses) / len(guesses) if guesses else _WAIST
    low, high = _room_for_waist(taken)
    if high == inf:
        return max(guess, _LEAST_ABOVE * low)
    clear = _CLEAR * (high - low)
    return min(max(guess, low + clear), high - clear)


def _room_for_waist(taken: Taken) -> tuple[float, float]:
    """Least and most that shoulder to waist can be, given the other heights taken.

    The waist lies below what hangs from the shoulder; the underarm above it, and below the shoulder.
    Three levels and their gaps fit between shoulder and waist in any case.
    """
    side = taken.get("underarm_to_waist")
    low, high = (4 if side is None else 1) * LEAST_GAP_MM + (side or 0.0), inf
    for steps, key in enumerate(_FROM_SHOULDER.values(), start=1):
        if key in taken:
            low = max(low, taken[key] + steps * LEAST_GAP_MM)
            if side is not None:
                high = min(high, taken[key] + side - (3 - steps) * LEAST_GAP_MM)
    if side is not None and not low < high:
        raise BodyError(
            "underarm_to_waist",
            "Underarm to waist ({value}) does not fit the heights of bust and underbust: with it, shoulder "
            "to waist would have to be {low} or more and {high} or less.",
            {"value": side, "low": low, "high": high},
        )
    return low, high


def _walks_above(taken: Taken, to_waist: float) -> dict[LevelName, float]:
    """Walks of the levels above the waist: the taken ones as they are, the others between them."""
    known = {level: to_waist - taken[key] for level, key in _FROM_SHOULDER.items() if key in taken}
    if "underarm_to_waist" in taken:
        known["upper_chest"] = taken["underarm_to_waist"]
    there = [level for level in _ABOVE_WAIST if level in known]
    usual = [0.0, *(_USUAL_WALK[level] for level in there), _WAIST]
    actual = [0.0, *(known[level] for level in there), to_waist]
    walks: dict[LevelName, float] = {}
    below = 0.0
    for level in _ABOVE_WAIST:
        guess = float(np.interp(_USUAL_WALK[level], usual, actual))
        below = known.get(level, min(max(guess, below + LEAST_GAP_MM), _most(level, known)))
        walks[level] = below
    return walks


def _most(level: LevelName, known: Mapping[LevelName, float]) -> float:
    """Highest walk of an estimated level that leaves room below the known ones above it."""
    place = _ABOVE_WAIST.index(level)
    above = enumerate(_ABOVE_WAIST[place:])
    return min((known[name] - steps * LEAST_GAP_MM for steps, name in above if name in known), default=inf)

"""Levels that lie out of order, or too close to be told apart, cannot be drafted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise
from math import inf

from workbench.body.levels import LEAST_GAP_MM
from workbench.body.table import BY_KEY
from workbench.body.trouble import BodyError

_DOWN_THE_FRONT = ("shoulder_to_bust", "shoulder_to_underbust", "shoulder_to_waist")
_ABOVE_WAIST = (("shoulder_to_underbust", "underbust", 2), ("shoulder_to_bust", "bust", 1))
"""Measurement, level, and how many levels up the upper chest lies (own choice: an order)."""
_HAIR = 1e-6
"""Rounding of a difference of two lengths, mm (own choice)."""


def refuse_disorder(taken: Mapping[str, float]) -> None:
    """Raise BodyError where two measurements taken leave no room for the levels at and between them."""
    _refuse_down_the_front(taken)
    _refuse_side(taken)
    _refuse_less("waist_to_top_hip", taken.get("waist_to_top_hip", inf), LEAST_GAP_MM)


def _refuse_less(key: str, value: float, least: float) -> None:
    if value < least - _HAIR:
        raise BodyError(
            key,
            f"{BY_KEY[key].label} ({{value}}) must be {{least}} or more.",
            {"value": value, "least": least},
        )


def _refuse_down_the_front(taken: Mapping[str, float]) -> None:
    """Bust point, underbust and waist on the tape from the shoulder, with the upper chest above them."""
    there = [(place, key) for place, key in enumerate(_DOWN_THE_FRONT) if key in taken]
    for place, key in there:
        _refuse_less(key, taken[key], (place + 2) * LEAST_GAP_MM)
    for (above, upper), (below, lower) in pairwise(there):
        gap = (below - above) * LEAST_GAP_MM
        if taken[lower] - taken[upper] < gap - _HAIR:
            raise BodyError(
                upper,
                f"{BY_KEY[upper].label} ({{value}}) must be shorter than {BY_KEY[lower].label.lower()} "
                "({other}), by {gap} or more.",
                {"value": taken[upper], "other": taken[lower], "gap": gap},
            )


def _refuse_side(taken: Mapping[str, float]) -> None:
    """The underarm between the shoulder and the bust, as far as these are known above the waist."""
    if "underarm_to_waist" not in taken:
        return
    side, to_waist = taken["underarm_to_waist"], taken.get("shoulder_to_waist", inf)
    if side > to_waist - LEAST_GAP_MM + _HAIR:
        raise BodyError(
            "underarm_to_waist",
            "Underarm to waist ({value}) must be shorter than shoulder to waist ({other}), by {gap} or more.",
            {"value": side, "other": to_waist, "gap": LEAST_GAP_MM},
        )
    least, level = max(_least_sides(taken))
    if side < least - _HAIR:
        raise BodyError(
            "underarm_to_waist",
            f"Underarm to waist ({{value}}) must be {{least}} or more, to reach above the {level}.",
            {"value": side, "least": least},
        )


def _least_sides(taken: Mapping[str, float]) -> Iterator[tuple[float, str]]:
    """Underarm to waist that each known level asks for, with the level's name."""
    yield 3 * LEAST_GAP_MM, "waist"
    if "shoulder_to_waist" in taken:
        for key, level, steps in _ABOVE_WAIST:
            if key in taken:
                yield taken["shoulder_to_waist"] - taken[key] + steps * LEAST_GAP_MM, level

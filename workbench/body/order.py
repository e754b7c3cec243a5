"""Levels that lie out of order, or too close to be told apart, cannot be drafted."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.body.levels import LEAST_GAP_MM, LEVEL_LABEL, LEVELS, walks_of
from workbench.body.table import BY_KEY
from workbench.body.trouble import BodyError

_DOWN_THE_FRONT = ("shoulder_to_bust", "shoulder_to_underbust", "shoulder_to_waist")
_ABOVE_WAIST = (("shoulder_to_underbust", 2), ("shoulder_to_bust", 1))
_HAIR = 1e-6
"""Rounding of a difference of two lengths, mm."""


def refuse_order_taken(taken: Mapping[str, float]) -> None:
    """Raise BodyError where two measurements taken leave no room for the levels at and between them."""
    _refuse_down_the_front(taken)
    _refuse_short_side(taken)
    if taken.get("waist_to_top_hip", LEAST_GAP_MM) < LEAST_GAP_MM - _HAIR:
        raise BodyError(
            "waist_to_top_hip",
            "Waist to top hip of {value} must be {gap} or more.",
            {"value": taken["waist_to_top_hip"], "gap": LEAST_GAP_MM},
        )


def _refuse_down_the_front(taken: Mapping[str, float]) -> None:
    """Bust point, underbust and waist on the tape that hangs from the shoulder."""
    there = [(place, key) for place, key in enumerate(_DOWN_THE_FRONT) if key in taken]
    for (above, upper), (below, lower) in zip(there, there[1:], strict=False):
        gap = (below - above) * LEAST_GAP_MM
        if taken[lower] - taken[upper] < gap - _HAIR:
            raise BodyError(
                upper,
                f"{BY_KEY[upper].label} of {{value}} must be at least {{gap}} less than "
                f"{BY_KEY[lower].label.lower()}, {{other}}.",
                {"value": taken[upper], "other": taken[lower], "gap": gap},
            )


def _refuse_short_side(taken: Mapping[str, float]) -> None:
    """The underarm above bust and underbust, as far as these are known above the waist."""
    side = taken.get("underarm_to_waist")
    if side is None:
        return
    heights = {"waist": 3 * LEAST_GAP_MM}
    if "shoulder_to_waist" in taken:
        for key, steps in _ABOVE_WAIST:
            if key in taken:
                level = key.removeprefix("shoulder_to_")
                heights[level] = taken["shoulder_to_waist"] - taken[key] + steps * LEAST_GAP_MM
    level, least = max(heights.items(), key=lambda item: item[1])
    if side < least - _HAIR:
        raise BodyError(
            "underarm_to_waist",
            f"Underarm to waist of {{value}} must be {{least}} or more, to reach above the {level}.",
            {"value": side, "least": least},
        )


def refuse_disorder(values: Mapping[str, float]) -> None:
    """Raise BodyError where two neighbouring levels of the complete body are out of order or too close."""
    walk = walks_of(values)
    for lower, upper in zip(LEVELS, LEVELS[1:], strict=False):
        if walk[upper] - walk[lower] < LEAST_GAP_MM - _HAIR:
            raise BodyError(
                "shoulder_to_waist",
                f"{LEVEL_LABEL[upper]}, {{upper}} from the waist, must lie above {LEVEL_LABEL[lower].lower()}, "
                "{lower} from it: check the lengths.",
                {"upper": walk[upper], "lower": walk[lower]},
            )

"""The five lines round the body, and their height above the waist as the tape walks it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

LevelName = Literal["top_hip", "waist", "underbust", "bust", "upper_chest"]

LEVELS: tuple[LevelName, ...] = ("top_hip", "waist", "underbust", "bust", "upper_chest")
"""Bottom to top."""

LEVEL_LABEL: Mapping[LevelName, str] = {
    "top_hip": "Top hip",
    "waist": "Waist",
    "underbust": "Underbust",
    "bust": "Bust",
    "upper_chest": "Upper chest",
}

LEVEL_GIRTH: Mapping[LevelName, str] = {
    "top_hip": "top_hip_girth",
    "waist": "waist_girth",
    "underbust": "underbust_girth",
    "bust": "bust_girth",
    "upper_chest": "upper_chest_girth",
}
"""The measurement that is the body's girth at a level."""

LEAST_GAP_MM = 5.0
"""Two levels closer than this along the body cannot be told apart with a tape (own choice)."""


def walks_of(values: Mapping[str, float]) -> dict[LevelName, float]:
    """Walk of every level from the waist, mm along the body, up positive, from complete measurements."""
    to_waist = values["shoulder_to_waist"]
    return {
        "top_hip": -values["waist_to_top_hip"],
        "waist": 0.0,
        "underbust": to_waist - values["shoulder_to_underbust"],
        "bust": to_waist - values["shoulder_to_bust"],
        "upper_chest": values["underarm_to_waist"],
    }

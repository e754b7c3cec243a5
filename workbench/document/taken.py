"""Measurements of an earlier day, kept beside those the bodice is drafted from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Any, ClassVar

from workbench.body import Length
from workbench.frozen import dataclass


@dataclass(frozen=True)
class Taken:
    """One sitting with the tape. The date is ISO, empty where nobody wrote it down."""

    date: str = ""
    measured_by: str = ""
    worn: str = ""
    """What she wore under the tape: it decides how close the figures are to her."""
    measurements: Mapping[str, Length] = field(default_factory=dict)
    """As they were typed, by key. Never changed in place."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}

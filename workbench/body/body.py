"""One body, complete: what was taken, what had to be estimated, what to check."""

from __future__ import annotations

from collections.abc import Mapping
from math import isfinite

from workbench.body.checks import Check, checks_of
from workbench.body.estimate import estimated_girths, estimated_lengths
from workbench.body.levels import LEVEL_GIRTH, LEVELS, LevelName, walks_of
from workbench.body.order import refuse_disorder
from workbench.body.table import BY_KEY
from workbench.body.trouble import BodyError
from workbench.frozen import dataclass


@dataclass(frozen=True)
class Body:
    """Measurements in millimetres by key, enough of them to draft from. Never changed in place."""

    values: Mapping[str, float]
    estimated: frozenset[str]
    """Keys of the values that were not taken."""
    checks: tuple[Check, ...]

    def value(self, key: str) -> float:
        """A measurement in mm, taken or estimated; KeyError where it is neither."""
        return self.values[key]

    def taken(self, key: str) -> float | None:
        """A measurement in mm, or None where it was not taken."""
        return None if key in self.estimated else self.values.get(key)


def complete(taken: Mapping[str, float]) -> Body:
    """The body with everything a draft needs: measurements taken, in mm by key, and estimates for the rest.

    Waist, and one of bust, underbust and upper chest, must be among them. Raises BodyError,
    which names the measurement, for what cannot be drafted.
    """
    for key, mm in taken.items():
        _refuse_unusable(key, mm)
    taken = {key: float(mm) for key, mm in taken.items()}
    _refuse_missing(taken)
    refuse_disorder(taken)
    girths_found = estimated_girths(taken)
    found = {**girths_found, **estimated_lengths(taken, girths_found["bust_girth"])}
    known = {**found, **taken}
    values = {key: known[key] for key in BY_KEY if key in known}
    return Body(values, frozenset(found.keys() - taken.keys()), checks_of(taken))


def walks(body: Body) -> dict[LevelName, float]:
    """Walk of every level from the waist, mm along the body, up positive; bottom to top."""
    return walks_of(body.values)


def girths(body: Body) -> dict[LevelName, float]:
    """The body's own girth at every level, mm; bottom to top."""
    return {level: body.values[LEVEL_GIRTH[level]] for level in LEVELS}


def _refuse_unusable(key: str, mm: float) -> None:
    row = BY_KEY.get(key)
    if row is None:
        raise BodyError(key, "There is no such measurement.")
    if not isfinite(mm):
        raise BodyError(key, f"{row.label} is not a number.")
    if mm <= 0:
        raise BodyError(
            key, f"{row.label} must be more than nothing: {{value}} is not.", {"value": float(mm)}
        )


def _refuse_missing(taken: Mapping[str, float]) -> None:
    if "waist_girth" not in taken:
        raise BodyError("waist_girth", "Waist is missing: nothing else can stand in for it.")
    stand_ins = ("bust_girth", "underbust_girth", "upper_chest_girth", "underbust_exhale", "underbust_inhale")
    if not any(key in taken for key in stand_ins):
        raise BodyError(
            "bust_girth", "Bust is missing: take it, or underbust or upper chest to estimate it from."
        )

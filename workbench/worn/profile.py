"""Girths by height: the body's own, finished, laced shut, and the breath at the ribs, as smooth curves.

It says how far she is drawn in and where most. How hard the cloth presses it does not say:
that hangs on how she is built and how it gives, and measured garments do not bear out what
a formula says of them. Figures are own choice, how finely it is drawn.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from workbench.body import LevelName, Limits
from workbench.draft import Level, Outcome, breath, comfort_of, hermite_weights, slopes_of_few
from workbench.worn.torso import Array

_STEP_MM = 4.0
_HAIR = 1e-6
"""mm: sums of fractions of an inch are off by less."""
"""Own choice: mm between two rows."""


@dataclass(frozen=True, eq=False, repr=False)
class Profile:
    """Girths in mm at walks from the lowest to the uppermost level of the style."""

    walks: Array
    """(n,) rising."""
    body: Array
    finished: Array
    shut: Array
    """With the laces drawn together."""
    breath: tuple[Array, Array, Array]
    """Walks, girths at full exhale and at full inhale: widest at the ribs, nothing at waist and bust."""
    breath_assumed: bool
    """Whether either of them was not taken."""
    levels: tuple[Level, ...]
    limits: Mapping[LevelName, float]
    """The smallest girth that keeps the limit, at the levels that have one."""

    @property
    def draws_in_most(self) -> Level | None:
        """The level at which she is drawn in by the largest part of her girth; None where nowhere."""
        most = max(self.levels, key=lambda level: level.percent)
        return most if most.percent > 0 else None

    @property
    def over(self) -> tuple[Level, ...]:
        """The levels at which she is drawn in further than the limit that was set."""
        return tuple(
            level
            for level in self.levels
            if level.name in self.limits and level.finished < self.limits[level.name] - _HAIR
        )

    @property
    def span(self) -> tuple[float, float]:
        """The smallest and the largest girth of all."""
        all_of_them = np.concatenate((self.body, self.finished, self.shut, *self.breath[1:]))
        return float(all_of_them.min()), float(all_of_them.max())


def profile_of(outcome: Outcome, limits: Limits) -> Profile | None:
    """The girths of an outcome by height; None without a draft."""
    draft = outcome.draft
    if draft is None:
        return None
    at = [level.walk for level in outcome.levels]
    walks = np.unique(np.concatenate((np.arange(at[0], at[-1], _STEP_MM), at)))
    shut = 2 * draft.surface.chords(walks).sum(axis=0)
    comfort = comfort_of(outcome, limits)
    kept = {
        level.name: level.body - judgement.most
        for level, judgement in zip(outcome.levels, comfort.judgements, strict=True)
        if judgement.most is not None
    }
    own = [level.body for level in outcome.levels]
    body = _smooth(at, own, walks)
    band, assumed = _breath(outcome, limits, walks, body)
    return Profile(walks, body, shut + outcome.design.opening_mm, shut, band, assumed, outcome.levels, kept)


def _breath(
    outcome: Outcome, limits: Limits, walks: Array, body: Array
) -> tuple[tuple[Array, Array, Array], bool]:
    """The band between full exhale and full inhale, and whether it is assumed.

    Both are known at the ribs alone. That the breath moves nothing at waist and bust is an
    assumption, no source: it is drawn to die away there.
    """
    out, full, assumed = breath(outcome.body, limits)
    rest = outcome.body.value("underbust_girth")
    by_name = {level.name: level.walk for level in outcome.levels}
    low, ribs, high = by_name["waist"], by_name["underbust"], by_name["bust"]
    inside = (walks >= low) & (walks <= high)
    at = walks[inside]
    part = np.where(at < ribs, (at - low) / (ribs - low), (high - at) / (high - ribs))
    part = part * part * (3 - 2 * part)
    girth = body[inside]
    return (at, girth + part * (out - rest), girth + part * (full - rest)), assumed


def _smooth(places: list[float], values: list[float], at: Array) -> Array:
    """A monotone cubic through some places, at others between them."""
    x, y, slope = np.array(places), np.array(values), np.array(slopes_of_few(places, values))
    low = np.clip(np.searchsorted(x, at, side="right") - 1, 0, len(x) - 2)
    step = x[low + 1] - x[low]
    start, end, out, back = hermite_weights((at - x[low]) / step)
    found: Array = start * y[low] + end * y[low + 1] + step * (out * slope[low] + back * slope[low + 1])
    return found

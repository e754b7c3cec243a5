"""What the gaps of the opening say, and the changes that would bring its edges parallel.

Laced until it holds, a garment opens wider than planned where it is too small for the body
under it, and closes further where it is too large. A gap that is wider by so much means a
garment that is too small by so much round the body, at that height.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple

import numpy as np

from workbench.body import LEVEL_LABEL, Fraction, LevelName, Unit, say_closely
from workbench.draft import Draft, Outcome
from workbench.fitting.records import Change, Gaps
from workbench.fitting.shares import seam_parts

TOLERANCE_MM = 6.35
"""Gaps this close count as equal: a quarter inch (common practice, no source)."""
_HAIR = 1e-6
"""mm: sums of fractions of an inch are off by less (own choice)."""
_NOTHING = 0.05
"""mm: a change smaller than this is none (own choice)."""

Shape = Literal["as_planned", "wide", "narrow", "top", "hem", "both_ends", "waist"]

_NAMES: Mapping[Shape, str] = {
    "as_planned": "As planned",
    "wide": "Parallel, but wide",
    "narrow": "Parallel, but narrow",
    "top": "A V, wide at the top",
    "hem": "A V upside down, wide at the hem",
    "both_ends": "An hourglass, wide at both ends",
    "waist": "A leaf, wide at the waist",
}
_PARTS: tuple[tuple[str, str], ...] = (("top", "the top"), ("waist", "the waist"), ("hem", "the hem"))


class Over(NamedTuple):
    """How much wider than planned the opening is at each height, in mm; less than nothing is narrower."""

    top: float
    waist: float
    hem: float


@dataclass(frozen=True)
class Reading:
    """What the opening looks like, and what it means, as sentences in the user's unit."""

    shape: Shape
    over: Over

    @property
    def name(self) -> str:
        """The shape in words."""
        return _NAMES[self.shape]

    def text(self, unit: Unit, fraction: Fraction = 8) -> str:
        """What the shape means: where the garment is too small for her, and where too large."""
        if self.shape == "as_planned":
            within = say_closely(TOLERANCE_MM, unit, fraction)
            return f"{self.name}: the edges lie within {within} of where they were meant to."
        small = self._said(1, unit, fraction)
        large = self._said(-1, unit, fraction)
        meant = [f"too small by {small}"] if small else []
        meant += [f"too large by {large}"] if large else []
        return f"{self.name}: for this body the garment is {', and '.join(meant)}."

    def _said(self, sign: int, unit: Unit, fraction: Fraction) -> str:
        """The places where the opening is off to one side, with how much: ``1 in at the top``."""
        found = [(where, sign * getattr(self.over, key)) for key, where in _PARTS]
        said = [(where, say_closely(mm, unit, fraction)) for where, mm in found if mm > _NOTHING]
        nothing = say_closely(0.0, unit, fraction)
        said = [(where, amount) for where, amount in said if amount != nothing]
        amounts = {amount for _, amount in said}
        if len(said) == len(_PARTS) and len(amounts) == 1:
            return f"{said[0][1]} all the way"
        return _listed([f"{amount} at {where}" for where, amount in said])


def reading_of(gaps: Gaps, planned_mm: float) -> Reading | None:
    """What the gaps measured say, against the opening that was planned; None until all three are there.

    Equal within :data:`TOLERANCE_MM` counts as parallel.
    """
    if gaps.top is None or gaps.waist is None or gaps.hem is None:
        return None
    over = Over(gaps.top - planned_mm, gaps.waist - planned_mm, gaps.hem - planned_mm)
    return Reading(_shape(over), over)


def _shape(over: Over) -> Shape:
    equal = TOLERANCE_MM + _HAIR
    if max(over) - min(over) <= equal:
        if max(map(abs, over)) <= equal:
            return "as_planned"
        return "wide" if sum(over) > 0 else "narrow"
    top, hem = over.top - over.waist, over.hem - over.waist
    if top > equal and hem > equal:
        return "both_ends"
    if top < -equal and hem < -equal:
        return "waist"
    return "top" if over.top > over.hem else "hem"


def over_at_levels(reading: Reading, outcome: Outcome) -> dict[LevelName, float]:
    """How much wider than planned the opening is at every level, mm: interpolated by walk.

    Top and hem were measured at the centre back; a level beyond them takes what is there.
    The outcome must have a draft.
    """
    draft: Draft | None = outcome.draft
    assert draft is not None
    walks = [draft.hem.seam_walks[-1], 0.0, draft.neckline.seam_walks[-1]]
    over = [reading.over.hem, reading.over.waist, reading.over.top]
    order = np.argsort(walks, kind="stable")
    at, known = np.array(walks)[order], np.array(over)[order]
    return {level.name: float(np.interp(level.walk, at, known)) for level in outcome.levels}


def proposal(reading: Reading, outcome: Outcome) -> tuple[Change, ...]:
    """The changes that bring the edges parallel at the planned gap, spread over the seams by weight.

    Half of what is wanted round the body falls to each half; a seam takes its part of that,
    as it takes its part of the intake. The outcome must have a draft. Exact sums: what is shown
    may be rounded, the parts add up.
    """
    if reading.shape == "as_planned":
        return ()
    return tuple(
        Change("seam", -0.5 * over * part, level=level, seam=seam)
        for level, over in reversed(over_at_levels(reading, outcome).items())
        for seam, part in seam_parts(outcome.design, level).items()
        if abs(0.5 * over * part) > _NOTHING
    )


def proposal_words(reading: Reading, outcome: Outcome, unit: Unit, fraction: Fraction = 8) -> str:
    """What the proposal comes to round the body, level by level: one sentence."""
    if reading.shape == "as_planned":
        return "Nothing to change."
    nothing = say_closely(0.0, unit, fraction)
    out: list[str] = []
    taken: list[str] = []
    for level, over in reversed(over_at_levels(reading, outcome).items()):
        said = say_closely(abs(over), unit, fraction)
        if said != nothing:
            (out if over > 0 else taken).append(f"{said} at the {LEVEL_LABEL[level].lower()}")
    parts = [f"let out {_listed(out)}"] if out else []
    parts += [f"take in {_listed(taken)}"] if taken else []
    done = "; ".join(parts)
    return f"To bring the edges parallel at the planned opening, {done}, round the body." if done else ""


def _listed(said: list[str]) -> str:
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}" if said else ""

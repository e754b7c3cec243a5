"""How the garment is got into: eyelets or loops and their cord, or a zip in the side instead.

Pitches, ends and cord are common practice, no source.
"""

from __future__ import annotations

import numpy as np

from workbench.draft import Draft, Finding, Outcome, Place
from workbench.pieces.making import Making, Opening
from workbench.pieces.result import BackOpening
from workbench.pieces.side_zip import zip_trouble

WAIST_REACH_MM = 38.1
"""Within 1 1/2 in of the waist they stand closer (common practice, no source)."""

Findings = tuple[Finding, ...]


def opening_of(outcome: Outcome, making: Making) -> tuple[BackOpening | None, Findings]:
    """The lacing at the centre back, the same on both sides, and what to look at.

    None without a draft, with a zip in the side, or where ends or pitch leave no place for it.
    """
    draft, opening = outcome.draft, making.opening
    if draft is None:
        return None, ()
    if opening.closing == "side_zip":
        return None, zip_trouble(outcome, draft)
    low, high = _ends(draft, opening)
    found = _lacing_trouble(outcome, draft, opening, high - low)
    if high - low <= 0 or min(opening.pitch_mm, opening.waist_pitch_mm) <= 0:
        return None, found
    return _laced(spread(low, high, opening.pitch_mm, opening.waist_pitch_mm), opening), found


def spread(low: float, high: float, pitch: float, waist_pitch: float) -> tuple[float, ...]:
    """Walks in mm from ``low`` to ``high``, both taken, ``pitch`` apart and ``waist_pitch`` near the waist.

    Both pitches are stretched or shrunk by the same small part, so that the spread fits exactly.
    """
    near = [walk for walk in (-WAIST_REACH_MM, WAIST_REACH_MM) if low < walk < high]
    knots = np.array([low, *near, high])
    at_waist = np.abs(0.5 * (knots[1:] + knots[:-1])) < WAIST_REACH_MM
    steps = np.diff(knots) / np.where(at_waist, waist_pitch, pitch)
    counted = np.concatenate(([0.0], np.cumsum(steps)))
    count = max(round(float(counted[-1])), 1)
    walks = np.interp(np.linspace(0.0, counted[-1], count + 1), counted, knots)
    return tuple(walks.tolist())


def gap_of(opening: Opening) -> float:
    """What the cord spans at the widest, mm: eyelets stand back from the edge, loops reach out to it."""
    set_in = opening.set_in_mm if opening.closing == "eyelets" else 0.0
    return opening.step_in_gap_mm + 2 * set_in


def _ends(draft: Draft, opening: Opening) -> tuple[float, float]:
    """Walks of the first and the last one; the centre-back edge is straight, so walks are its lengths."""
    return draft.hem.seam_walks[-1] + opening.end_mm, draft.neckline.seam_walks[-1] - opening.end_mm


def _laced(walks: tuple[float, ...], opening: Opening) -> BackOpening:
    """Crossed lacing: from every pair to the next, both strands cross the gap."""
    pitches, gap = np.diff(walks), gap_of(opening)
    strands = 2 * float(np.hypot(gap, pitches).sum())
    crossings = 2 * len(pitches)
    standing = " (from eyelet to eyelet)" if opening.closing == "eyelets" else ""
    return BackOpening(
        walks,
        tuple(pitches.tolist()),
        strands + opening.tying_mm,
        crossings,
        f"{crossings} crossings of a gap of {{gap}}{standing}, each one place up, {{strands}} together, "
        "and {tying} for tying.",
        {"gap": gap, "strands": strands, "tying": opening.tying_mm},
    )


def _lacing_trouble(outcome: Outcome, draft: Draft, opening: Opening, room: float) -> Findings:
    place = Place(seam=outcome.design.panel_count, panel=outcome.design.panel_count - 1)
    holder: dict[str, str] = {"holder": opening.closing}
    found = []
    if min(opening.pitch_mm, opening.waist_pitch_mm) <= 0:
        found.append(_no_pitch(place, holder))
    elif room <= 0:
        found.append(_no_ends(place, holder, opening, room))
    elif room < opening.pitch_mm:
        found.append(_no_second(place, holder, opening, room))
    if opening.step_in_gap_mm < outcome.design.opening_mm:
        found.append(_gap_below_worn(place, opening, outcome.design.opening_mm))
    return tuple(found)


def _no_pitch(place: Place, holder: dict[str, str]) -> Finding:
    return Finding(
        "attend",
        "opening_pitch",
        "The {holder} have no distance from one to the next, so none are placed.",
        words=holder,
        place=place,
        remedy="Enter a pitch above nothing.",
    )


def _no_ends(place: Place, holder: dict[str, str], opening: Opening, room: float) -> Finding:
    return Finding(
        "attend",
        "opening_ends",
        "The centre back is {length} long; with {end} kept free at each end there is no place for {holder}.",
        {"length": room + 2 * opening.end_mm, "end": opening.end_mm},
        holder,
        place,
        "Begin nearer to the edge, or lengthen the centre back.",
    )


def _no_second(place: Place, holder: dict[str, str], opening: Opening, room: float) -> Finding:
    return Finding(
        "attend",
        "opening_short",
        "The {holder} are to stand {pitch} apart, but from the first to the last there is only {room}.",
        {"pitch": opening.pitch_mm, "room": room},
        holder,
        place,
        "Choose a smaller pitch.",
        opening.pitch_mm,
        room,
    )


def _gap_below_worn(place: Place, opening: Opening, worn: float) -> Finding:
    return Finding(
        "attend",
        "step_in_gap",
        "She steps in by an opening of {gap}, but it is worn {worn} open: the cord would be too short.",
        {"gap": opening.step_in_gap_mm, "worn": worn},
        place=place,
        remedy="Enter the widest opening she steps in by.",
        value_mm=opening.step_in_gap_mm,
        limit_mm=worn,
    )

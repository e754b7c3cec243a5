"""A front busk: the stock length that fits the centre front."""

from __future__ import annotations

from math import floor

from workbench.draft import Draft, Finding, Outcome, Place
from workbench.pieces.making import INCH, Making

SHORTEST_BUSK_MM, LONGEST_BUSK_MM = 6 * INCH, 14 * INCH
"""Common practice, no source."""
BUSK_STEP_MM = 0.5 * INCH
"""Sold from 6 to 14 in by the half inch (common practice, no source)."""
_HAIR = 1e-9
"""Own choice: rounding of sums."""
_CENTRE_FRONT = Place(seam=0, panel=0)

Findings = tuple[Finding, ...]


def busk_of(outcome: Outcome, making: Making) -> tuple[float | None, Findings]:
    """Length in mm of the busk, and what to look at; None without a busk, a draft, or one that fits.

    A busk she has is kept even where it does not fit; the finding says so.
    """
    draft = outcome.draft
    if draft is None or making.front != "busk":
        return None, ()
    room = centre_front_length(draft) - 2 * making.boning.clearance_mm
    if making.busk_mm is not None:
        return making.busk_mm, _own_trouble(draft, making, making.busk_mm, room)
    longest = longest_busk(room)
    return longest, _stock_trouble(draft, making, longest, room)


def centre_front_length(draft: Draft) -> float:
    """Finished length of the centre front in mm, hem to neckline."""
    return draft.neckline.seam_walks[0] - draft.hem.seam_walks[0]


def longest_busk(room: float) -> float | None:
    """The longest busk in mm that is sold and goes into the room; None where even the shortest does not."""
    if room < SHORTEST_BUSK_MM - _HAIR:
        return None
    return min(round(floor(room / BUSK_STEP_MM + _HAIR) * BUSK_STEP_MM, 6), LONGEST_BUSK_MM)


def _own_trouble(draft: Draft, making: Making, busk: float, room: float) -> Findings:
    if busk <= room + _HAIR:
        return ()
    fits = longest_busk(room)
    return (
        Finding(
            "attend",
            "busk_too_long",
            "Your busk is {busk} long; the centre front is {front}, which less {clearance} at each end "
            "leaves {room}.",
            {**_lengths(draft, making, room), "busk": busk, "fits": fits or 0.0},
            place=_CENTRE_FRONT,
            remedy="Take one of {fits}, or lengthen the centre front."
            if fits
            else "Lengthen the centre front.",
            value_mm=busk,
            limit_mm=max(room, 0.0),
        ),
    )


def _stock_trouble(draft: Draft, making: Making, longest: float | None, room: float) -> Findings:
    if longest is None:
        return (_none_fits(draft, making, room),)
    bare = room - longest
    return (_bare(longest, bare),) if bare >= BUSK_STEP_MM else ()


def _none_fits(draft: Draft, making: Making, room: float) -> Finding:
    return Finding(
        "attend",
        "no_busk_fits",
        "No busk fits: the centre front is {front}, less {clearance} at each end leaves {room}, "
        "and the shortest one sold is {shortest}.",
        {**_lengths(draft, making, room), "shortest": SHORTEST_BUSK_MM},
        place=_CENTRE_FRONT,
        remedy="Lengthen the centre front, or make it on the fold.",
        value_mm=max(room, 0.0),
        limit_mm=SHORTEST_BUSK_MM,
    )


def _bare(busk: float, bare: float) -> Finding:
    return Finding(
        "note",
        "busk_shorter",
        "The longest busk sold, {busk}, leaves {bare} of the centre front without one.",
        {"busk": busk, "bare": bare},
        place=_CENTRE_FRONT,
        remedy="Hook or tie the rest, or order a longer one.",
    )


def _lengths(draft: Draft, making: Making, room: float) -> dict[str, float]:
    return {
        "front": centre_front_length(draft),
        "clearance": making.boning.clearance_mm,
        "room": max(room, 0.0),
    }

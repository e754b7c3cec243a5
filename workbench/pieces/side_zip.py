"""A zip in the left side seam, where the back is not laced: the stock length that goes in."""

from __future__ import annotations

from math import floor

from workbench.draft import Draft, Finding, Outcome, Place
from workbench.pieces.making import INCH, Making

ZIP_STEP_MM = INCH
"""Common practice, no source."""
SHORTEST_ZIP_MM, LONGEST_ZIP_MM = 4 * INCH, 24 * INCH
"""Sold by the inch (common practice, no source)."""
_HAIR = 1e-9
"""Own choice: rounding of sums."""

Findings = tuple[Finding, ...]


def zip_of(outcome: Outcome, making: Making) -> float | None:
    """Length in mm of the longest zip sold that the side seam takes; None where there is none, or no zip."""
    if outcome.draft is None or making.opening.closing != "side_zip":
        return None
    return zip_for(_side_length(outcome, outcome.draft))


def zip_for(seam: float) -> float | None:
    """The longest zip in mm that is sold and not longer than the seam."""
    if seam < SHORTEST_ZIP_MM - _HAIR:
        return None
    return min(round(floor(seam / ZIP_STEP_MM + _HAIR) * ZIP_STEP_MM, 6), LONGEST_ZIP_MM)


def zip_trouble(outcome: Outcome, draft: Draft) -> Findings:
    """What to look at when the garment closes with a zip."""
    side = outcome.design.front.panel_count
    seam = _side_length(outcome, draft)
    found = []
    if zip_for(seam) is None:
        found.append(_no_zip(Place(seam=side), seam))
    elif seam - LONGEST_ZIP_MM >= ZIP_STEP_MM:
        found.append(_zip_shorter(Place(seam=side), seam))
    if outcome.design.opening_mm > 0:
        found.append(_gap_without_lacing(outcome))
    return tuple(found)


def _no_zip(place: Place, seam: float) -> Finding:
    return Finding(
        "attend",
        "no_zip_fits",
        "No zip fits: the side seam is {seam} long, and the shortest one sold is {shortest}.",
        {"seam": seam, "shortest": SHORTEST_ZIP_MM},
        place=place,
        remedy="Lengthen the side seam, or close the back with loops or eyelets.",
        value_mm=seam,
        limit_mm=SHORTEST_ZIP_MM,
    )


def _zip_shorter(place: Place, seam: float) -> Finding:
    return Finding(
        "attend",
        "zip_shorter",
        "The longest zip sold, {longest}, leaves {closed} of the side seam closed.",
        {"longest": LONGEST_ZIP_MM, "closed": seam - LONGEST_ZIP_MM},
        place=place,
        remedy="See whether she can step in, or order a longer one.",
    )


def _gap_without_lacing(outcome: Outcome) -> Finding:
    return Finding(
        "attend",
        "gap_without_lacing",
        "The garment closes with a zip in the side, but the draft leaves {gap} open at the centre back.",
        {"gap": outcome.design.opening_mm},
        place=Place(field="opening_mm", seam=outcome.design.panel_count),
        remedy="Set the opening to nothing, or close the back with loops or eyelets.",
    )


def _side_length(outcome: Outcome, draft: Draft) -> float:
    return draft.seams[outcome.design.front.panel_count - 1].left_length

"""The bodice on her body as a view: what is seen from one side, with her outline before and as worn."""

from __future__ import annotations

import numpy as np

from workbench.body import Fraction, Unit, say_length
from workbench.draft import Outcome
from workbench.pieces import Cutting
from workbench.sheets.drawing import Array, Role, Stroke
from workbench.sheets.garment import View, garment_views
from workbench.worn import FRONT, Eye, Inside, LineRole, Seen, Torso, Worn, inside_of, seen_from, worn_of

AROUND_MM = 110.0
"""So much of her is drawn above the neckline and below the hem, where she is not drawn whole."""
_HAIR_MM = 1.5
"""An outline that is no further from the other one is not drawn twice."""
_ROLES: dict[LineRole, Role] = {
    "seam": "stitch",
    "centre": "stitch",
    "edge": "cut",
    "hem": "cut",
    "neckline": "cut",
    "bone": "bone",
    "lacing": "tape",
}
_WHOLE = (-np.inf, np.inf)


def worn_for(outcome: Outcome, torso: Torso, cutting: Cutting | None = None) -> Worn | None:
    """The bodice on her body, with bones and lacing where there is a cutting; None without a draft."""
    if cutting is None:
        return worn_of(outcome, torso)
    return worn_of(outcome, torso, _inside_of(outcome, cutting))


def _inside_of(outcome: Outcome, cutting: Cutting) -> Inside:
    """Bones and eyelets of a cutting, at their places on the body."""
    bones = tuple((bone.panel, bone.line) for bone in cutting.bones)
    return inside_of(outcome, bones, cutting.opening.walks if cutting.opening is not None else ())


def worn_view(worn: Worn, name: str, degrees: float = FRONT, *, whole: bool = True) -> View:
    """What is seen from one side; unless ``whole``, no more of her than round the garment."""
    shown = seen_from(worn, Eye(degrees))
    low, high = _WHOLE if whole else _reach(worn)
    strokes = [
        *_outline(shown.worn, "frame", low, high),
        *_ends(shown, low, high),
        *_before(shown, low, high),
        *(Stroke(_ROLES[line.role], line.points) for line in shown.lines),
    ]
    return View(name, tuple(panel.ring for panel in shown.panels), tuple(strokes))


def quote_views(
    outcome: Outcome, cutting: Cutting | None, torso: Torso | None, unit: Unit, fraction: Fraction
) -> tuple[View, ...]:
    """What is drawn on a quote: front, back, and with a torso as worn; nothing without a draft.

    The last is called by the waist before and as worn, in the unit given.
    """
    views = garment_views(outcome, cutting)
    worn = worn_for(outcome, torso, cutting) if torso is not None else None
    if worn is None:
        return views
    return (*views, worn_view(worn, _waist_said(outcome, unit, fraction), whole=False))


def _waist_said(outcome: Outcome, unit: Unit, fraction: Fraction) -> str:
    waist = outcome.level("waist")
    before, after = (say_length(mm, unit, fraction) for mm in (waist.body, waist.finished))
    return (
        f"As worn: waist {after} {unit}" if before == after else f"As worn: waist {before} to {after} {unit}"
    )


def _reach(worn: Worn) -> tuple[float, float]:
    """Heights between which she is drawn."""
    rows, heights = np.arange(len(worn.stand.heights)), worn.stand.heights
    low = float(np.interp(worn.lines["hem"].row.min(), rows, heights))
    high = float(np.interp(worn.lines["neckline"].row.max(), rows, heights))
    return low - AROUND_MM, high + AROUND_MM


def _outline(sides: tuple[Array, Array], role: Role, low: float, high: float) -> list[Stroke]:
    return [Stroke(role, kept) for side in sides if len(kept := _between(side, low, high)) > 1]


def _between(line: Array, low: float, high: float) -> Array:
    kept: Array = line[(line[:, 1] >= low) & (line[:, 1] <= high)]
    return kept


def _ends(shown: Seen, low: float, high: float) -> list[Stroke]:
    """Straight across at either end, where she is drawn whole."""
    left, right = shown.worn
    if np.isfinite(low) or np.isfinite(high):
        return []
    return [Stroke("frame", np.stack((left[end], right[end]))) for end in (0, -1)]


def _before(shown: Seen, low: float, high: float) -> list[Stroke]:
    """Her outline as it was, wherever it was another."""
    strokes = []
    for was, now in zip(shown.before, shown.worn, strict=True):
        apart = (np.abs(was[:, 0] - now[:, 0]) > _HAIR_MM) & (was[:, 1] >= low) & (was[:, 1] <= high)
        turns = np.flatnonzero(np.diff(np.concatenate(([False], apart, [False])).astype(np.int8)))
        strokes += [
            Stroke("fold", was[first:last])
            for first, last in zip(turns[::2].tolist(), turns[1::2].tolist(), strict=True)
            if last - first > 1
        ]
    return strokes

"""Two sittings with the tape side by side: what each says, and what has become of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from workbench.body import BY_KEY, LEVEL_LABEL, LEVELS, MEASUREMENTS, BodyError, Kind, complete, walks
from workbench.document.taken import Taken

NOTABLE_MM: Mapping[Kind, float] = {"girth": 9.0, "length": 5.0}
"""A difference of this much is no longer the hand that measured: two measurers may be apart by
9 mm in a large girth and 5 mm in a length of the body (ISO 20685, from memory)."""
_HAIR = 1e-6
"""Own choice: mm, rounding of sums."""

WALK = "walk."
"""How the keys of the heights begin that are worked out from the lengths taken."""
Part = Literal["measurement", "walk"]


@dataclass(frozen=True)
class MeasureChange:
    """One line of the comparison, in mm; None where it was not taken that day."""

    key: str
    label: str
    part: Part
    kind: Kind
    then: float | None
    now: float | None

    @property
    def difference(self) -> float | None:
        """mm that it is more now than it was then; None where one of the two is not there."""
        return self.now - self.then if self.then is not None and self.now is not None else None

    @property
    def notable(self) -> bool:
        """Whether the two differ by more than two measurements of one body do."""
        return self.difference is not None and abs(self.difference) >= NOTABLE_MM[self.kind] - _HAIR


def measure_changes(then: Taken, now: Taken) -> tuple[MeasureChange, ...]:
    """Every measurement taken on either day in the order of the table, then the levels above the waist.

    The height of a level is worked out as the draft does, and said only where no estimate is
    in it; girths of levels are measurements.
    """
    return (*_measured(then, now), *_walked(then, now))


def _measured(then: Taken, now: Taken) -> list[MeasureChange]:
    rows = []
    for row in MEASUREMENTS:
        old, new = then.measurements.get(row.key), now.measurements.get(row.key)
        if old is not None or new is not None:
            mm = (length.mm if length is not None else None for length in (old, new))
            rows.append(MeasureChange(row.key, row.label, "measurement", row.kind, *mm))
    return rows


def _walked(then: Taken, now: Taken) -> list[MeasureChange]:
    old, new = _heights(then), _heights(now)
    return [
        MeasureChange(f"{WALK}{level}", LEVEL_LABEL[level], "walk", "length", old.get(level), new.get(level))
        for level in reversed(LEVELS)
        if level in old or level in new
    ]


_FROM = {
    "top_hip": ("waist_to_top_hip",),
    "underbust": ("shoulder_to_waist", "shoulder_to_underbust"),
    "bust": ("shoulder_to_waist", "shoulder_to_bust"),
    "upper_chest": ("underarm_to_waist",),
}
"""The lengths that the height of a level comes from."""


def _heights(taken: Taken) -> dict[str, float]:
    """Walk of each level from the waist, up positive, where every length behind it was taken."""
    try:
        body = complete({key: length.mm for key, length in taken.measurements.items() if key in BY_KEY})
    except BodyError:
        return {}
    return {
        level: mm
        for level, mm in walks(body).items()
        if level in _FROM and all(body.taken(key) is not None for key in _FROM[level])
    }

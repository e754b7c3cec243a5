"""Two drafts of one bodice against each other: what a fitting did to the rest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from workbench.body import LEVEL_LABEL
from workbench.draft import Draft, LineName, Outcome, Place, seam_name

What = Literal["girth", "walk", "width", "seam", "neckline", "hem"]
NOTABLE_MM = 0.2
"""What differs by less is the same: a tape reads no closer than five times that (own choice)."""


@dataclass(frozen=True)
class Difference:
    """One figure that differs, in mm; names are as sentences begin."""

    what: What
    name: str
    before: float
    after: float
    place: Place

    @property
    def change(self) -> float:
        """How much more there is now; less than nothing is less."""
        return self.after - self.before


def differences(before: Outcome, after: Outcome) -> tuple[Difference, ...]:
    """Girths and heights of the levels from the top down, widths, seams, lines; none without two drafts.

    The two must be of one design.
    """
    if before.draft is None or after.draft is None:
        return ()
    found = (
        *_girths(before, after),
        *_walks(before, after),
        *_widths(before.draft, after.draft),
        *_seams(before.draft, after.draft),
        *_line("neckline", before, after),
        *_line("hem", before, after),
    )
    return tuple(one for one in found if abs(one.change) >= NOTABLE_MM)


def _girths(before: Outcome, after: Outcome) -> Iterator[Difference]:
    for one, other in zip(reversed(before.levels), reversed(after.levels), strict=True):
        place = Place(level=one.name)
        yield Difference("girth", LEVEL_LABEL[one.name], one.finished, other.finished, place)


def _walks(before: Outcome, after: Outcome) -> Iterator[Difference]:
    for one, other in zip(reversed(before.levels), reversed(after.levels), strict=True):
        yield Difference("walk", LEVEL_LABEL[one.name], one.walk, other.walk, Place(level=one.name))


def _widths(before: Draft, after: Draft) -> Iterator[Difference]:
    for one, other in zip(before.panels, after.panels, strict=True):
        for level in reversed(tuple(one.widths)):
            place = Place(panel=one.index, level=level)
            name = f"{one.name}, {LEVEL_LABEL[level].lower()}"
            yield Difference("width", name, one.widths[level], other.widths[level], place)


def _seams(before: Draft, after: Draft) -> Iterator[Difference]:
    for one, other in zip(before.seams, after.seams, strict=True):
        name = f"{one.name[:1].upper()}{one.name[1:]}"
        yield Difference("seam", name, one.left_length, other.left_length, Place(seam=one.index))


def _line(name: LineName, before: Outcome, after: Outcome) -> Iterator[Difference]:
    """How high a line runs at the centre lines and seams, from the waist."""
    if before.draft is None or after.draft is None:
        return
    walks = zip(before.draft.line(name).seam_walks, after.draft.line(name).seam_walks, strict=True)
    for seam, (one, other) in enumerate(walks):
        said = f"{name.capitalize()}, {seam_name(seam, after.design)}"
        yield Difference(name, said, one, other, Place(line=name, seam=seam))

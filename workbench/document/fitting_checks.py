"""What the fittings of a project may hold; that a change no longer suits the bodice is a finding.

Figures are own choice: they keep out slips of the key and files that are none.
"""

from __future__ import annotations

from collections.abc import Sequence

from workbench.document.problem import Place, Problems, text_problems
from workbench.document.taken_checks import date_problems
from workbench.draft import FEWEST_PANELS, MOST_PANELS
from workbench.fitting import Change, Fitting, Gaps

MOST_FITTINGS = 40
MOST_CHANGES = 80
"""Of one fitting: every seam at every level, and the lines."""
MOST_MM = 200.0
"""Of one change, either way: more than a hand's breadth is another garment."""
WIDEST_GAP_MM = 1000.0
FITTING_TEXTS = {"cloth": 80, "notes": 4000, "picture": 200}
"""Characters that each text of a fitting may have."""
LONGEST_NOTE = 400
"""Characters of the note beside one change."""


def fitting_problems(fittings: Sequence[Fitting]) -> Problems:
    """Figures and texts out of bounds, dates that are none, and changes that do not say where."""
    place: Place = ("fittings",)
    if len(fittings) > MOST_FITTINGS:
        yield place, f"are more than {MOST_FITTINGS}"
    for number, fitting in enumerate(fittings):
        yield from _one_problems(fitting, (*place, number))


def _one_problems(fitting: Fitting, place: Place) -> Problems:
    yield from date_problems(fitting.date, (*place, "date"))
    for name, most in FITTING_TEXTS.items():
        yield from text_problems(getattr(fitting, name), most, (*place, name))
    for number, count in enumerate(fitting.panels):
        if not FEWEST_PANELS <= count <= MOST_PANELS:
            yield (*place, "panels", number), f"must be {FEWEST_PANELS} to {MOST_PANELS}"
    yield from gap_problems(fitting.gaps, (*place, "gaps"))
    if len(fitting.changes) > MOST_CHANGES:
        yield (*place, "changes"), f"are more than {MOST_CHANGES}"
    for number, change in enumerate(fitting.changes):
        yield from change_problems(change, sum(fitting.panels), (*place, "changes", number))


def gap_problems(gaps: Gaps, place: Place) -> Problems:
    """Gaps out of their bounds."""
    for name in ("top", "waist", "hem"):
        gap = getattr(gaps, name)
        if gap is not None and not 0 <= gap <= WIDEST_GAP_MM:
            yield (*place, name), "must be between 0 and 40 in (100 cm)"


def change_problems(change: Change, panel_count: int, place: Place) -> Problems:
    """What is wrong with one change by itself, at a fitting of so many panels."""
    if not -MOST_MM <= change.amount_mm <= MOST_MM:
        yield (*place, "amount_mm"), "must be at most 8 in (20 cm) either way"
    yield from text_problems(change.note, LONGEST_NOTE, (*place, "note"))
    wanted = {"seam": ("level", "seam"), "length": ("level",)}.get(change.kind, ("u",))
    for name in ("level", "seam", "u"):
        given = getattr(change, name) is not None
        if given != (name in wanted):
            yield (*place, name), f"is {'missing' if name in wanted else 'not for a change'} of this kind"
    if change.seam is not None and not 1 <= change.seam < panel_count:
        yield (*place, "seam"), f"must be 1 to {panel_count - 1}"
    if change.u is not None and not 0 <= change.u <= panel_count:
        yield (*place, "u"), f"must be between 0 and {panel_count}"

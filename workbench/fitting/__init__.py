"""Fittings: what was pinned on a first make-up, carried into the draft as corrections.

Pure numbers, like the draft. Lengths are millimetres; what is pinned is the flat amount on
one half, which its mirror image repeats.
"""

from typing import TYPE_CHECKING

from workbench.doors import when_asked
from workbench.fitting.records import CHANGE_KINDS, Change, ChangeKind, Fitting, Gaps

if TYPE_CHECKING:
    from workbench.fitting.carry import Carried, carried, field_of, line_said, seam_now, u_now
    from workbench.fitting.compare import Difference, differences
    from workbench.fitting.reading import (
        TOLERANCE_MM,
        Over,
        Reading,
        over_at_levels,
        proposal,
        proposal_words,
        reading_of,
    )
    from workbench.fitting.shares import seam_parts
    from workbench.fitting.words import (
        change_said,
        comes_to,
        date_said,
        fitted_note,
        fitted_words,
        fitting_said,
        place_said,
        seam_said,
        verb_of,
        where_said,
    )
else:
    __getattr__ = when_asked(
        __name__,
        {
            "carry": "Carried carried field_of line_said seam_now u_now",
            "compare": "Difference differences",
            "reading": "TOLERANCE_MM Over Reading over_at_levels proposal proposal_words reading_of",
            "shares": "seam_parts",
            "words": "change_said comes_to date_said fitted_note fitted_words fitting_said "
            "place_said seam_said verb_of where_said",
        },
    )

__all__ = [
    "CHANGE_KINDS",
    "TOLERANCE_MM",
    "Carried",
    "Change",
    "ChangeKind",
    "Difference",
    "Fitting",
    "Gaps",
    "Over",
    "Reading",
    "carried",
    "change_said",
    "comes_to",
    "date_said",
    "differences",
    "field_of",
    "fitted_note",
    "fitted_words",
    "fitting_said",
    "line_said",
    "over_at_levels",
    "place_said",
    "proposal",
    "proposal_words",
    "reading_of",
    "seam_now",
    "seam_parts",
    "seam_said",
    "u_now",
    "verb_of",
    "where_said",
]

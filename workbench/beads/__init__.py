"""Pearls and beads on the panels: runs, scatters, what they keep out of, how many to buy."""

from typing import TYPE_CHECKING

from workbench.beads.records import (
    Along,
    BeadBands,
    BeadKind,
    BeadMark,
    BeadPlan,
    BeadRun,
    BeadScatter,
    BeadWeight,
    ThinFrom,
    Towards,
    per_inch_of,
    per_strand_of,
    usual_kinds,
)
from workbench.doors import when_asked

if TYPE_CHECKING:
    from workbench.beads.drawn import drawn_parts
    from workbench.beads.result import (
        Band,
        BandWhy,
        BeadCount,
        Beaded,
        Beading,
        KindCount,
        RowCount,
        Strewn,
    )
    from workbench.beads.thinning import thin_line
    from workbench.beads.trouble import MOST_HALF, WHY_WORDS
    from workbench.beads.work import bands_of, beading_of
else:
    # placing beads is for the place, the quote and the sheets of one who plans some
    __getattr__ = when_asked(
        __name__,
        {
            "drawn": "drawn_parts",
            "result": "Band BandWhy BeadCount Beaded Beading KindCount RowCount Strewn",
            "thinning": "thin_line",
            "trouble": "MOST_HALF WHY_WORDS",
            "work": "bands_of beading_of",
        },
    )

__all__ = [
    "MOST_HALF",
    "WHY_WORDS",
    "Along",
    "Band",
    "BandWhy",
    "BeadBands",
    "BeadCount",
    "BeadKind",
    "BeadMark",
    "BeadPlan",
    "BeadRun",
    "BeadScatter",
    "BeadWeight",
    "Beaded",
    "Beading",
    "KindCount",
    "RowCount",
    "Strewn",
    "ThinFrom",
    "Towards",
    "bands_of",
    "beading_of",
    "drawn_parts",
    "per_inch_of",
    "per_strand_of",
    "thin_line",
    "usual_kinds",
]

"""How pieces are marked straight on the cloth with a tape and chalk, lengths rounded so that sums close."""

from workbench.marking.records import (
    Across,
    Curve,
    GirthRow,
    Guide,
    Mark,
    Offset,
    PieceGuide,
    SeamRow,
    Squared,
    Step,
)
from workbench.marking.rounding import ROUNDINGS, Rounding, RoundingName, rounding_of, shared_out
from workbench.marking.work import guide_of

__all__ = [
    "ROUNDINGS",
    "Across",
    "Curve",
    "GirthRow",
    "Guide",
    "Mark",
    "Offset",
    "PieceGuide",
    "Rounding",
    "RoundingName",
    "SeamRow",
    "Squared",
    "Step",
    "guide_of",
    "rounding_of",
    "shared_out",
]

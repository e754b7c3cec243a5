"""Pearls and beads on the panels: runs, scatters, what they keep out of, how many to buy."""

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

__all__ = [
    "Along",
    "BeadBands",
    "BeadKind",
    "BeadMark",
    "BeadPlan",
    "BeadRun",
    "BeadScatter",
    "BeadWeight",
    "ThinFrom",
    "Towards",
    "per_inch_of",
    "per_strand_of",
    "usual_kinds",
]

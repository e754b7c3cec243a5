"""Fittings: what was pinned on a first make-up, carried into the draft as corrections.

Pure numbers, like the draft. Lengths are millimetres; what is pinned is the flat amount on
one half, which its mirror image repeats.
"""

from workbench.fitting.records import CHANGE_KINDS, Change, ChangeKind, Fitting, Gaps

__all__ = [
    "CHANGE_KINDS",
    "Change",
    "ChangeKind",
    "Fitting",
    "Gaps",
]

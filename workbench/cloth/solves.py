"""Which way a plan is sought, and what the picture says of it."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.cloth.plan import Copy
from workbench.cloth.records import Cloth, Placed


def library_can(copies: Sequence[Copy], cloth: Cloth, pinned: Sequence[Placed]) -> bool:
    """Whether the packing library can do it: it knows a plain strip, and no place that is fixed."""
    fixed = bool(pinned) or cloth.remnant is not None or cloth.repeat_mm > 0
    return bool(copies) and not fixed and not any(copy.on_fold for copy in copies)


def how_solved(copies: Sequence[Copy], cloth: Cloth) -> str:
    """Said of a plan of the packing library."""
    turned = "" if cloth.run == "one_way" else ", end for end where it helps"
    return f"Packed as closely as was found in the time given{turned}{cut_words(copies, cloth)}."


def how_laid(copies: Sequence[Copy], cloth: Cloth, pinned: bool) -> str:
    """Said of a plan laid one piece after the other."""
    around = " round the pinned pieces" if pinned else ""
    rows = ", waist lines at whole repeats of the print" if cloth.repeat_mm > 0 else ""
    return f"Laid one after the other{around}, each as far down as it goes{rows}{cut_words(copies, cloth)}."


def cut_words(copies: Sequence[Copy], cloth: Cloth) -> str:
    """What has to be known to cut it: opened out, on the fold, through both layers."""
    words = ""
    if any(copy.opened for copy in copies):
        words += "; pieces on the fold are opened out"
    if cloth.laid == "folded":
        words += "; cut through both layers"
    if any(copy.on_fold for copy in copies):
        words += ", halves on the fold"
    if cloth.laid == "folded" and any(copy.gives == 1 and not copy.on_fold for copy in copies):
        words += ", what is needed once from the upper layer only"
    return words
